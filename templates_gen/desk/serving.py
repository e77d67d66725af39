"""A server on this machine alone, from the first line printed until it ends: the only file that imports uvicorn."""

from __future__ import annotations

import os
import socket
import threading
import time
from collections.abc import Callable

import uvicorn

from templates_gen.base.errors import InputError
from templates_gen.desk.guard import LOOPBACK, Guard, new_key
from templates_gen.desk.web import Answering, Listening, Presence, Web

LINGER = 60.0
"""Seconds after the last page was closed until the server ends: a page that is loaded again is back long before.  Our
own design, no source."""

LOOK = 0.25
"""Seconds between two looks at how many pages are open.  Our own design, no source."""

GRACE = 2
"""Seconds that an answer under way is given when the server ends.  Our own design, no source."""


def serve(answer: Answering, listen: Listening, port: int, ready: Callable[[str], None]) -> None:
    """Serve until Ctrl+C, or until all pages have been closed for a while; `ready` is told the address with its key.

    Raises InputError for a port that another program has.
    """
    presence = Presence()
    with _listening(port) as listener:
        guard = Guard(new_key(), listener.getsockname()[1])
        config = uvicorn.Config(
            Web(guard, answer, listen, presence), log_level="critical", lifespan="off", ws="none", http="h11",
            loop="asyncio", access_log=False, server_header=False, proxy_headers=False,
            timeout_graceful_shutdown=GRACE,
        )  # fmt: skip
        server = _Server(config, presence)
        ready(guard.address)
        threading.Thread(target=_end_when_left, args=(server, presence), daemon=True).start()
        server.run([listener])


class _Server(uvicorn.Server):
    """Tells the pages that listen that it ends, for they would keep it open."""

    def __init__(self, config: uvicorn.Config, presence: Presence) -> None:
        super().__init__(config)
        self._presence = presence

    async def shutdown(self, sockets: list[socket.socket] | None = None) -> None:
        self._presence.ending = True
        await super().shutdown(sockets)


def _listening(port: int) -> socket.socket:
    listener = socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP)
    if os.name == "posix":  # elsewhere this would let two programs have one port
        listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listener.bind((LOOPBACK, port))
        listener.listen()  # whoever opens the address from now on is answered
    except (OSError, OverflowError):
        listener.close()
        hint = "leave --port out, and any free one is taken"
        raise InputError("--port", f"{port} is taken by another program, or not allowed", hint) from None
    return listener


def _end_when_left(server: uvicorn.Server, presence: Presence) -> None:
    left: float | None = None
    while not server.should_exit:
        time.sleep(min(LOOK, LINGER))
        if presence.open or not presence.ever:
            left = None
            continue
        left = left if left is not None else time.monotonic()
        server.should_exit = time.monotonic() - left >= LINGER
