"""Running the program itself: `main()` with its arguments, its two streams and its exit code."""

from __future__ import annotations

import contextlib
import http.client
import io
import os
import select
import signal
import subprocess
import sys
import threading
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from unittest import mock
from urllib.parse import SplitResult, urlsplit

from templates_gen.__main__ import main
from tests.shared import made_once


@dataclass(frozen=True)
class Ran:
    """What a run left: its exit code, and what it wrote to stdout and stderr."""

    code: int
    out: str
    err: str


def run(*arguments: str | Path, typed: str = "") -> Ran:
    """The program run in this process, from the current folder, with this on its standard input."""
    out, err = io.StringIO(), io.StringIO()
    code = 0
    handlers = {number: signal.getsignal(number) for number in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP)}
    with (
        mock.patch.object(sys, "argv", ["templates-gen", *map(str, arguments)]),
        mock.patch.object(sys, "stdin", io.StringIO(typed)),
        contextlib.redirect_stdout(out),
        contextlib.redirect_stderr(err),
        mock.patch("webbrowser.open", look_in),
        mock.patch.dict(os.environ, {"DISPLAY": os.environ.get("DISPLAY", ":0")}),
        mock.patch("templates_gen.desk.serving.LINGER", 0.05),
    ):
        try:
            main()
        except SystemExit as ended:
            code = ended.code if isinstance(ended.code, int) else 1
        finally:
            for number, handler in handlers.items():  # those of the tests themselves
                signal.signal(number, handler)
    return Ran(code, out.getvalue(), err.getvalue())


def look_in(address: str) -> bool:
    """In place of a browser: the page is opened, listens once, and is closed again, which ends the desk."""
    threading.Thread(target=_visit, args=(urlsplit(address),), daemon=True).start()
    return True


def _visit(address: SplitResult) -> None:
    place = address.netloc
    welcome = http.client.HTTPConnection(place, timeout=20)
    welcome.request("GET", f"{address.path}?{address.query}")
    cookie = (welcome.getresponse().getheader("set-cookie") or "").partition(";")[0]
    page = http.client.HTTPConnection(place, timeout=20)
    page.request("GET", "/events", headers={"cookie": cookie})
    page.getresponse().readline()
    page.close()


def spawn(*arguments: str | Path, cwd: Path, env: Mapping[str, str] | None = None) -> Ran:
    """The program run as a process of its own, as `python -m templates_gen`."""
    done = subprocess.run(
        [sys.executable, "-m", "templates_gen", *map(str, arguments)],
        cwd=cwd,
        env={**os.environ, **(env or {})},
        capture_output=True,
        encoding="utf-8",
        timeout=60,
        check=False,
    )
    return Ran(done.returncode, done.stdout, done.stderr)


MEASURED = [
    sys.executable,
    "-c",
    """
import sys
from templates_gen.__main__ import main
try:
    main()
finally:
    with open("/proc/self/status") as status:
        print(*(line.split()[1] for line in status if line.startswith("VmHWM:")), file=sys.stderr)
""",
]
"""The program, which says at its end how many kilobytes it took at most (Linux, proc(5)); not what its parent took when
it was forked, as the resources of a process do."""

WAITING = [
    sys.executable,
    "-c",
    """
import os
from templates_gen.__main__ import main
from templates_gen.job.reading import building

def read(path):
    pipe = os.open(path, os.O_RDONLY)
    return b"".join(iter(lambda: os.read(pipe, 65536), b""))

building.read_bytes = read
main()
""",
]
"""The program, but to read a job out of a pipe it waits for whoever writes to it: so a test knows where it is.  With
`open`, Python 3.11 loses an interrupt now and then: 1 of 70 on a busy machine."""


def read_terminal(terminal: int) -> bytes:
    """The next bytes from a terminal; none when its other end has gone, or has been silent for half a minute."""
    try:
        return os.read(terminal, 4096) if select.select([terminal], [], [], 30.0)[0] else b""
    except OSError:
        return b""


def listing(folder: Path) -> dict[str, bytes | None]:
    """Every file below a folder with its content, and every folder."""
    return {
        str(path.relative_to(folder)): path.read_bytes() if path.is_file() else None
        for path in sorted(folder.rglob("*"))
    }


_begun: dict[object, dict[str, bytes | None]] = {}


def begun(folder: Path, key: object, make: Callable[[], object]) -> None:
    """An empty folder filled as `make` fills it, which is run only once for a key, by one process of this run."""

    def files() -> dict[str, bytes | None]:
        make()
        return listing(folder)

    if key not in _begun:
        _begun[key] = made_once(("folder", key), files)
    for name, content in _begun[key].items():
        if content is None:
            (folder / name).mkdir(exist_ok=True)
        else:
            (folder / name).write_bytes(content)


MINIMAL = """
[job]
title = "Tile rubbings"
unit = "mm"
date = "2026-03-01"

[wall]
width = 4000
height = 2600
wiring = "uk"

[[wall.feature]]
kind = "switch"
left = 100
bottom = 1050
width = 86
height = 86

[[frame]]
id = "A"
width = 300
height = 200
drop = 60
"""
"""The least a job file says: one frame on a plain wall."""
