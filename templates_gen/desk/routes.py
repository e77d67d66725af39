"""Every request that the page makes, by method and path, and what answers it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from http import HTTPStatus
from pathlib import Path
from typing import Any

from templates_gen.base.errors import InputError, TemplatesError
from templates_gen.desk.changes import changes
from templates_gen.desk.desk import Desk
from templates_gen.desk.fields import field_words
from templates_gen.desk.looking import back, found, hanger_drawing, picture, put_picture, way, zones
from templates_gen.desk.messages import Answer, Asked, GoneError, refused, told, wrong
from templates_gen.desk.opened import Opened
from templates_gen.desk.papers import paper, written
from templates_gen.desk.photographs import hanging, on_the_wall, shown, taped
from templates_gen.desk.printers import printer_named, printers, record
from templates_gen.desk.reading_back import corrected
from templates_gen.desk.telling import state

PAGES = {"/": "home.html", "/wall": "wall.html", "/proof": "proof.html"}
"""The pages by what stands in the address."""

PAGE_KINDS = {
    ".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8", ".svg": "image/svg+xml",
}  # fmt: skip
"""Media types of the pages' own files (HTML Living Standard; RFC 9239)."""

HOME = Path(__file__).parent / "page"


def answer(desk: Desk, asked: Asked) -> Answer:
    """The answer to one request that was let in."""
    try:
        if asked.method in ("GET", "HEAD") and (page := _page(asked.path)):
            return page
        at = asked.method, asked.path
        if of_job := OF_A_JOB.get(at):
            return _answered(of_job(desk.opened(_name(asked)), asked))
        if route := ROUTES.get(at):
            return _answered(route(desk, asked))
        return refused(HTTPStatus.NOT_FOUND, "There is nothing at this address.")
    except GoneError:
        changed = {"gone": True, "problem": "This was changed in another window meanwhile. Look again."}
        return told(changed, HTTPStatus.CONFLICT)
    except TemplatesError as error:
        return wrong(error)
    except OSError as error:  # the folder is gone, full or write-protected
        return wrong(InputError(str(error.filename or ""), f"cannot be read or written: {error.strerror or error}"))


def _answered(made: Mapping[str, Any] | Answer) -> Answer:
    return made if isinstance(made, Answer) else told(made)


def _page(path: str) -> Answer | None:
    """A file of the page itself: none but those that lie there."""
    name = PAGES.get(path) or (path.removeprefix("/page/") if path.startswith("/page/") else "")
    if name not in _files():
        return None
    place = HOME / name
    return Answer(kind=PAGE_KINDS[place.suffix], content=place.read_bytes())


def _files() -> set[str]:
    return {place.name for place in HOME.iterdir() if place.suffix in PAGE_KINDS}


def _state(opened: Opened, asked: Asked) -> dict[str, Any]:
    opened.look()
    return state(opened)


def _change(opened: Opened, asked: Asked) -> dict[str, Any]:
    data = asked.data()
    opened.change(lambda read: changes(read, data))
    return state(opened)


def _undo(opened: Opened, asked: Asked) -> dict[str, Any]:
    opened.redo() if asked.path == "/redo" else opened.undo()
    return state(opened)


def _again(opened: Opened, asked: Asked) -> dict[str, Any]:
    opened.write_again()
    return state(opened)


def _nothing(what: str) -> Answer:
    return refused(HTTPStatus.NOT_FOUND, f"There is no such {what} of this job.")


OF_A_JOB: Mapping[tuple[str, str], Callable[[Opened, Asked], Mapping[str, Any] | Answer]] = {
    ("GET", "/state"): _state,
    ("GET", "/found"): lambda opened, asked: found(opened, "whole" in asked.query),
    ("GET", "/way"): lambda opened, asked: way(opened, asked.query.get("cover", "")),
    ("GET", "/zones"): lambda opened, asked: zones(opened),
    ("GET", "/back"): lambda opened, asked: back(opened, asked.query.get("frame", "")),
    ("GET", "/picture"): lambda opened, asked: picture(opened, asked.query.get("frame", "")),
    ("GET", "/written"): lambda opened, asked: written(opened, asked.query.get("file", "")) or _nothing("paper"),
    ("GET", "/photo"): lambda opened, asked: shown(opened, asked) or _nothing("picture"),
    ("POST", "/change"): _change,
    ("POST", "/undo"): _undo,
    ("POST", "/redo"): _undo,
    ("POST", "/again"): _again,
    ("POST", "/picture"): put_picture,
    ("POST", "/photo/wall"): on_the_wall,
    ("POST", "/photo/taped"): taped,
    ("POST", "/photo/hung"): hanging,
    ("POST", "/correct"): lambda opened, asked: corrected(opened, asked.data()),
}
"""What there is to ask for of the job that the address names."""


def _name(asked: Asked) -> str:
    return asked.query.get("job", "")


def _stop(desk: Desk, asked: Asked) -> dict[str, Any]:
    desk.opened(_name(asked)).found.stop()
    desk.choosing(_name(asked)).stop()
    return {}


def _choose(desk: Desk, asked: Asked) -> dict[str, Any]:
    read = desk.opened(_name(asked)).read
    if read is not None:
        desk.choosing(_name(asked)).begin(read.job)
    return {}


def _chosen(desk: Desk, asked: Asked) -> dict[str, Any]:
    choosing = desk.choosing(_name(asked))
    return {"done": choosing.done, **choosing.told}


def _paper(desk: Desk, asked: Asked) -> dict[str, Any]:
    data = asked.data()
    printer = printer_named(desk.doors.printers(), data["printer"]) if data.get("printer") else None
    files, said = paper(desk.opened(_name(asked)), str(data.get("kind")), printer, data)
    return {"files": files, "said": said}


ROUTES: Mapping[tuple[str, str], Callable[[Desk, Asked], Mapping[str, Any] | Answer]] = {
    ("GET", "/jobs"): lambda desk, asked: desk.jobs(),
    ("GET", "/fields"): lambda desk, asked: field_words(),
    ("GET", "/hanger"): lambda desk, asked: hanger_drawing(asked.query.get("kind", "")),
    ("GET", "/options"): _chosen,
    ("POST", "/options"): _choose,
    ("POST", "/new"): lambda desk, asked: {"job": desk.new(asked.data())},
    ("POST", "/another-wall"): lambda desk, asked: {"job": desk.another_wall(_name(asked), asked.data())},
    ("POST", "/sample"): lambda desk, asked: {"job": desk.from_sample(str(asked.data().get("name")))},
    ("POST", "/from-template"): lambda desk, asked: {
        "job": desk.from_template(asked.body, asked.query.get("name", "template.pdf"))
    },
    ("POST", "/stop"): _stop,
    ("POST", "/paper"): _paper,
    ("GET", "/printers"): lambda desk, asked: printers(desk.doors.printers()),
    ("POST", "/printers"): lambda desk, asked: record(desk.doors.printers(), asked.data()),
}
"""What else there is to ask for."""


def news(desk: Desk, job: str) -> dict[str, Any]:
    """What an open page is kept told of: which state its job is in, and how far searches are."""
    if not job:
        return dict(desk.search())
    try:
        opened = desk.opened(job)
        opened.look()
        return {"number": opened.number, "finding": opened.found.done, "options": desk.choosing(job).done}
    except TemplatesError as error:
        return {"gone": str(error)}
