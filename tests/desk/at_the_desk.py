"""A desk in a folder of its own: in this process, or as the program that people start."""

from __future__ import annotations

import contextlib
import http.client
import json
import re
import signal
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from templates_gen.cli.desk import doors
from templates_gen.desk.desk import Desk
from templates_gen.desk.messages import Answer, Asked
from templates_gen.desk.routes import answer

LIBRARY = """\
# the stair hall of a village library   (kept as it is)
[job]
title = "Moss cards"
unit = "in"

[wall]
width = "14'"
height = "8'"
build = "drywall"

# where people wait for the bus
[[wall.feature]]
kind = "furniture"
name = "settle"
left = "42"
bottom = 0
width = "84"
height = "33"

[[wall.feature]]
kind = "switch"
left = "6"
bottom = "46"
width = "2 3/4"
height = "4 1/2"

[group]
arrangement = "rows"
rows = [["A", "B"], ["C"]]
gap = "2 1/2"
height = { above = "settle", by = "7" }

[[frame]]
id = "A"
title = "Bog moss"
width = "11"
height = "14"
drop = "2 1/2"   # wire pulled taut
weight = "3 lb"

[[frame]]
id = "B"
width = "11"
height = "14"
drop = "2 5/8"
weight = "3 lb"

[[frame]]
id = "C"
width = "16"
height = "20"
drop = "3 1/8"
weight = "5 lb"

# the hooks from the ironmonger's
[fixing]
kind = "hook"
below = "7/8"
rating = "30 lb"

[paper]
size = "letter"
"""


class AtDesk:
    """A desk in this process, with one job in its folder."""

    def __init__(self, folder: Path, text: str = LIBRARY, name: str = "moss.toml") -> None:
        self.folder, self.job, self.path = folder, name, folder / name
        self.path.write_text(text, encoding="utf-8")
        self.desk = Desk(folder, doors())

    @property
    def text(self) -> str:
        return self.path.read_text(encoding="utf-8")

    def ask(self, method: str, path: str, body: bytes = b"", **query: str) -> Answer:
        """What the desk answers, past the guard."""
        query = {"job": self.job, **query}
        return answer(self.desk, Asked(method=method, path=path, query=query, headers={}, body=body))

    def got(self, path: str, **query: str) -> Any:
        found = self.ask("GET", path, **query)
        assert found.status == 200, found
        return json.loads(found.content)

    def brought(self, path: str, data: object, status: int = 200, **query: str) -> Any:
        body = data if isinstance(data, bytes) else json.dumps(data).encode()
        found = self.ask("POST", path, body, **query)
        assert found.status == status, found
        return json.loads(found.content)

    def change(self, do: str, status: int = 200, **data: Any) -> Any:
        return self.brought("/change", {"do": do, **data}, status)

    def put(self, *at: str, value: Any, status: int = 200) -> Any:
        """A value typed into a field."""
        return self.change("set", status, sets=[{"at": at, "value": value}])


class Running:
    """The program itself, with a browser's cookie."""

    def __init__(self, folder: Path, *arguments: str) -> None:
        self.folder = folder
        command = [sys.executable, "-m", "templates_gen", "desk", "--no-browser", *arguments]
        self.process = subprocess.Popen(command, cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
        assert self.process.stdout is not None
        self.address = self.process.stdout.readline().strip()
        self.host, self.key = re.search(r"http://([\d.:]+)/\?key=([\w-]+)", self.address).groups()
        self.cookie = self.asked("GET", f"/?key={self.key}", cookie="").getheader("set-cookie").partition(";")[0]

    def asked(
        self, method: str, path: str, body: bytes | None = None, cookie: str | None = None, **headers: str
    ) -> http.client.HTTPResponse:
        """What the server answers; as its own page asks, unless other headers are given (with _ for -)."""
        told = {"Host": self.host, "Cookie": self.cookie if cookie is None else cookie}
        if method == "POST":
            told["Origin"] = f"http://{self.host}"
        told |= {name.replace("_", "-"): value for name, value in headers.items()}
        line = http.client.HTTPConnection(self.host, timeout=30)
        line.putrequest(method, path, skip_host=True, skip_accept_encoding=True)
        for name, value in told.items():
            if value:
                line.putheader(name, value)
        if body is not None:
            line.putheader("Content-Length", str(len(body)))
        line.endheaders(body)
        return line.getresponse()

    def change(self, job: str, **data: Any) -> Any:
        found = self.asked("POST", f"/change?job={job}", json.dumps(data).encode())
        return found.status, json.loads(found.read())

    def end(self, number: signal.Signals = signal.SIGINT) -> tuple[int, str]:
        """End it by a signal: its exit code, and what it said."""
        self.process.send_signal(number)
        _, told = self.process.communicate(timeout=30)
        return self.process.returncode, told


@contextlib.contextmanager
def running(folder: Path, *arguments: str) -> Iterator[Running]:
    """The program while a test needs it."""
    desk = Running(folder, *arguments)
    try:
        yield desk
    finally:
        if desk.process.poll() is None:
            desk.process.kill()
            desk.process.communicate()
