"""Requests become plain values and answers go back: the only file that imports starlette."""

from __future__ import annotations

import asyncio
import json
from collections.abc import AsyncIterator, Callable
from http import HTTPStatus
from typing import Any

from starlette.concurrency import run_in_threadpool
from starlette.requests import ClientDisconnect, Request
from starlette.responses import Response, StreamingResponse

from templates_gen.base.files import MB
from templates_gen.desk.guard import HEADERS, Guard
from templates_gen.desk.messages import Answer, Asked, refused

MOST_BODY = 60_000_000
"""Bytes that one request may bring: a picture of 60 megapixels, or a template.  Our own design, no source."""

LOOK = 0.4
"""Seconds between two looks at the job file, and so how long an edit from elsewhere goes unseen.  Our own design."""

EVENTS = "/events"
"""Where a page listens for what changes (server-sent events, HTML Living Standard, 9.2)."""

Answering = Callable[[Asked], Answer]
Listening = Callable[[str], dict[str, Any]]


class Presence:
    """How many pages are open, and whether the server is to end."""

    def __init__(self) -> None:
        self.open, self.ever, self.ending = 0, False, False

    def come(self) -> None:
        """A page was opened."""
        self.open, self.ever = self.open + 1, True

    def go(self) -> None:
        """A page was closed."""
        self.open -= 1


class Web:
    """The ASGI application: guards every path, then asks `answer`; `listen` gives what pages are kept told of."""

    def __init__(self, guard: Guard, answer: Answering, listen: Listening, presence: Presence) -> None:
        self._guard, self._answer, self._listen, self._presence = guard, answer, listen, presence

    async def __call__(self, scope: Any, receive: Any, send: Any) -> None:
        """Answer one request (ASGI 3)."""
        if scope["type"] != "http":
            return
        request = Request(scope, receive)
        try:
            response = await self._response(request)
        except ClientDisconnect:  # the page is gone, and with it who would read an answer
            return
        for name, value in HEADERS:
            response.headers.setdefault(name, value)
        await response(scope, receive, send)

    async def _response(self, request: Request) -> Response:
        asked = _asked(request, b"")
        if stopped := self._guard.stopped(asked):
            return _as_response(stopped)
        if asked.path == EVENTS and asked.method == "GET":
            return StreamingResponse(self._events(asked.query.get("job", "")), media_type="text/event-stream")
        if asked.method == "POST":
            body = await _body(request)
            if body is None:
                return _as_response(refused(HTTPStatus.REQUEST_ENTITY_TOO_LARGE, _TOO_MUCH))
            asked = _asked(request, body)
        return _as_response(await run_in_threadpool(self._answer, asked))

    async def _events(self, job: str) -> AsyncIterator[str]:
        """What is new, whenever it is: a line for each state that differs from the last one told."""
        last = ""
        self._presence.come()
        try:
            while not self._presence.ending:
                now = json.dumps(await run_in_threadpool(self._listen, job))
                yield f"data: {now}\n\n" if now != last else ": still here\n\n"
                last = now
                await asyncio.sleep(LOOK)
        finally:
            self._presence.go()


_TOO_MUCH = f"That is more than {MOST_BODY // MB} MB. Save the picture smaller."


def _as_response(answer: Answer) -> Response:
    return Response(answer.content, answer.status, dict(answer.headers), answer.kind)


def _asked(request: Request, body: bytes) -> Asked:
    return Asked(
        method=request.method, path=request.url.path, query=dict(request.query_params),
        headers={name.lower(): value for name, value in request.headers.items()}, body=body,
    )  # fmt: skip


async def _body(request: Request) -> bytes | None:
    """What a request brings; None where it is too much, of which no more is read."""
    if (
        request.headers.get("content-length", "0").isdigit()
        and int(request.headers.get("content-length", "0")) > MOST_BODY
    ):
        return None
    parts, size = [], 0
    async for part in request.stream():
        size += len(part)
        if size > MOST_BODY:
            return None
        parts.append(part)
    return b"".join(parts)
