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
from templates_gen.desk.papers import paper, written
from templates_gen.desk.photographs import hanging, on_the_wall, shown, taped
from templates_gen.desk.printers import printer_named, printers, record
from templates_gen.desk.reading_back import corrected
from templates_gen.desk.telling import state

Answering = Callable[[Desk, Asked], Answer]

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
        if route := ROUTES.get((asked.method, asked.path)):
            return route(desk, asked)
        return refused(HTTPStatus.NOT_FOUND, "There is nothing at this address.")
    except GoneError:
        changed = {"gone": True, "problem": "This was changed in another window meanwhile. Look again."}
        return told(changed, HTTPStatus.CONFLICT)
    except TemplatesError as error:
        return wrong(error)
    except OSError as error:  # the folder is gone, full or write-protected
        return wrong(InputError(str(error.filename or ""), f"cannot be read or written: {error.strerror or error}"))


def _page(path: str) -> Answer | None:
    """A file of the page itself: none but those that lie there."""
    name = PAGES.get(path) or (path.removeprefix("/page/") if path.startswith("/page/") else "")
    if name not in _files():
        return None
    place = HOME / name
    return Answer(kind=PAGE_KINDS[place.suffix], content=place.read_bytes())


def _files() -> set[str]:
    return {place.name for place in HOME.iterdir() if place.suffix in PAGE_KINDS}


def _name(asked: Asked) -> str:
    return asked.query.get("job", "")


def _state(desk: Desk, asked: Asked) -> Answer:
    opened = desk.opened(_name(asked))
    opened.look()
    return told(state(opened))


def _change(desk: Desk, asked: Asked) -> Answer:
    opened, data = desk.opened(_name(asked)), asked.data()
    opened.change(lambda read: changes(read, data))
    return told(state(opened))


def _undo(desk: Desk, asked: Asked) -> Answer:
    opened = desk.opened(_name(asked))
    opened.redo() if asked.path == "/redo" else opened.undo()
    return told(state(opened))


def _again(desk: Desk, asked: Asked) -> Answer:
    opened = desk.opened(_name(asked))
    opened.write_again()
    return told(state(opened))


def _stop(desk: Desk, asked: Asked) -> Answer:
    desk.opened(_name(asked)).found.stop()
    desk.choosing(_name(asked)).stop()
    return told({})


def _choose(desk: Desk, asked: Asked) -> Answer:
    read = desk.opened(_name(asked)).read
    if read is not None:
        desk.choosing(_name(asked)).begin(read.job)
    return told({})


def _chosen(desk: Desk, asked: Asked) -> Answer:
    choosing = desk.choosing(_name(asked))
    return told({"done": choosing.done, **choosing.told})


def _paper(desk: Desk, asked: Asked) -> Answer:
    data = asked.data()
    printer = printer_named(desk.doors.printers(), data["printer"]) if data.get("printer") else None
    files, said = paper(desk.opened(_name(asked)), str(data.get("kind")), printer, data)
    return told({"files": files, "said": said})


def _written(desk: Desk, asked: Asked) -> Answer:
    found = written(desk.opened(_name(asked)), asked.query.get("file", ""))
    return found or refused(HTTPStatus.NOT_FOUND, "There is no such paper of this job.")


def _shown(desk: Desk, asked: Asked) -> Answer:
    found = shown(desk.opened(_name(asked)), asked)
    return found or refused(HTTPStatus.NOT_FOUND, "There is no such picture.")


def _new(desk: Desk, asked: Asked) -> Answer:
    return told({"job": desk.new(asked.data())})


def _another_wall(desk: Desk, asked: Asked) -> Answer:
    return told({"job": desk.another_wall(_name(asked), asked.data())})


def _sample(desk: Desk, asked: Asked) -> Answer:
    return told({"job": desk.from_sample(str(asked.data().get("name")))})


def _from_template(desk: Desk, asked: Asked) -> Answer:
    return told({"job": desk.from_template(asked.body, asked.query.get("name", "template.pdf"))})


ROUTES: Mapping[tuple[str, str], Answering] = {
    ("GET", "/jobs"): lambda desk, asked: told(desk.jobs()),
    ("GET", "/fields"): lambda desk, asked: told(field_words()),
    ("GET", "/state"): _state,
    ("GET", "/found"): lambda desk, asked: told(found(desk.opened(_name(asked)), "whole" in asked.query)),
    ("GET", "/way"): lambda desk, asked: told(way(desk.opened(_name(asked)), asked.query.get("cover", ""))),
    ("GET", "/zones"): lambda desk, asked: told(zones(desk.opened(_name(asked)))),
    ("GET", "/back"): lambda desk, asked: told(back(desk.opened(_name(asked)), asked.query.get("frame", ""))),
    ("GET", "/hanger"): lambda desk, asked: hanger_drawing(asked.query.get("kind", "")),
    ("GET", "/picture"): lambda desk, asked: picture(desk.opened(_name(asked)), asked.query.get("frame", "")),
    ("GET", "/options"): _chosen,
    ("GET", "/written"): _written,
    ("POST", "/new"): _new,
    ("POST", "/another-wall"): _another_wall,
    ("POST", "/sample"): _sample,
    ("POST", "/from-template"): _from_template,
    ("POST", "/change"): _change,
    ("POST", "/undo"): _undo,
    ("POST", "/redo"): _undo,
    ("POST", "/again"): _again,
    ("POST", "/stop"): _stop,
    ("POST", "/options"): _choose,
    ("POST", "/picture"): lambda desk, asked: told(put_picture(desk.opened(_name(asked)), asked)),
    ("POST", "/paper"): _paper,
    ("GET", "/photo"): _shown,
    ("POST", "/photo/wall"): lambda desk, asked: told(on_the_wall(desk.opened(_name(asked)), asked)),
    ("POST", "/photo/taped"): lambda desk, asked: told(taped(desk.opened(_name(asked)), asked)),
    ("POST", "/photo/hung"): lambda desk, asked: told(hanging(desk.opened(_name(asked)), asked)),
    ("GET", "/printers"): lambda desk, asked: told(printers(desk.doors.printers())),
    ("POST", "/printers"): lambda desk, asked: told(record(desk.doors.printers(), asked.data())),
    ("POST", "/correct"): lambda desk, asked: told(corrected(desk.opened(_name(asked)), asked.data())),
}
"""All there is to ask for."""


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
