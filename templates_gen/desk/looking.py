"""What the page asks for besides the wall: findings, ways to print, backs of frames, pictures."""

from __future__ import annotations

from http import HTTPStatus
from pathlib import Path
from typing import Any

import templates_gen as tg
from templates_gen.base.errors import InputError
from templates_gen.base.output import write_results
from templates_gen.base.words import capital
from templates_gen.desk.folder import free_name, within
from templates_gen.desk.messages import Answer, Asked, GoneError, refused
from templates_gen.desk.opened import Opened, hash_of
from templates_gen.desk.places import frame_number
from templates_gen.desk.telling import state
from templates_gen.documents.check import Checked, check_plan
from templates_gen.documents.measuring.pictures import back_picture, kind_picture
from templates_gen.documents.proof.on_screen import picture_bytes, zones_on_screen
from templates_gen.documents.ways import print_way, shop_words
from templates_gen.job.changes import Change
from templates_gen.job.hangers import HANGERS
from templates_gen.tolerance.statement import fine

PIXELS = 900
"""Pixels across or down of a picture on the page: sharp where a frame fills a projector's third.  Our own design."""

PICTURES = {b"\xff\xd8\xff": ".jpg", b"\x89PNG": ".png", b"II*\0": ".tif", b"MM\0*": ".tif", b"GIF8": ".gif",
            b"BM": ".bmp", b"RIFF": ".webp"}  # fmt: skip
"""How the files of pictures begin, and the ending that each is kept under (their formats' specifications)."""

SHOP = "one piece"
"""The way that is a print shop's."""

_LARGEST_KEPT = 64  # pictures that are kept small in the memory


def _read(opened: Opened) -> tuple[str, tg.Plan | None]:
    with opened.lock:
        return opened.text, opened.read.plan if opened.read else None


def found(opened: Opened, whole: bool) -> dict[str, Any]:
    """Everything found about the job; the `whole` has what cures it, the error to expect and what was not checked, and
    takes longer."""
    number = opened.number
    text, plan = _read(opened)
    told: dict[str, Any] = {"number": number, "text": hash_of(text), "whole": whole, "unchecked": [], "expected": ""}
    if plan is None:
        return told | {"findings": []}
    if not whole:
        return told | {"findings": [_finding(one) for one in tg.find(plan)]}
    checked = check_plan(plan, opened.path)
    return told | {
        "findings": [_finding(one) for one in checked.findings],
        "unchecked": checked.unchecked,
        "expected": _expected(checked, plan.job.unit),
    }


def _expected(checked: Checked, unit: str) -> str:
    if checked.expected is None:
        return ""
    step = fine(checked.expected.step, unit)
    return f"Neighbours hang within {step} of one line, 95 times in 100, if paper, tape and drops are as usual."


def _finding(one: tg.Finding) -> dict[str, Any]:
    cures = [
        {"words": capital(cure.said), "changes": [{"place": part.place, "value": part.value} for part in cure.changes]}
        for cure in one.cures
    ]
    return {
        "level": one.level, "rule": one.rule, "about": one.about, "text": one.text, "source": one.source,
        "cures": cures,
    }  # fmt: skip


def way(opened: Opened, cover: str) -> dict[str, Any]:
    """One way to have the paper, by its cover, with what it takes and its map; or a print shop's."""
    number = opened.number
    _, plan = _read(opened)
    told: dict[str, Any] = {"number": number, "cover": cover, "way": None}
    if plan is None:
        return told
    if cover == SHOP:
        return told | {"shop": shop_words(plan)}
    found = print_way(plan, cover)
    if found is None:
        return told
    return told | {"way": {
        "sheets": found.sheets, "joins": found.joins, "pieces": found.pieces, "minutes": max(1, round(found.minutes)),
        "exact": found.exact, "windows": found.windows,
    }}  # fmt: skip


def zones(opened: Opened) -> dict[str, Any]:
    """Where cables may run, drawn."""
    _, plan = _read(opened)
    return {"drawn": zones_on_screen(plan) if plan else ""}


def back(opened: Opened, name: str) -> dict[str, Any]:
    """A frame from behind, and what is to be measured on it.  Raises GoneError."""
    read = opened.read
    frame = next((frame for frame in read.job.frames if frame.id == name), None) if read else None
    if read is None or frame is None:
        raise GoneError
    drawn, measures = back_picture(frame, read.job.unit)
    listed = [
        {"letter": letter, "name": one.name, "words": one.words, "known": one.exactly(read.job.unit),
         "shown": one.shown(read.job.unit)}
        for letter, one in measures
    ]  # fmt: skip
    return {"drawn": drawn, "measures": listed}


def hanger_drawing(kind: str) -> Answer:
    """How a kind of hanger looks on the back of a frame."""
    if kind not in HANGERS:
        return refused(HTTPStatus.NOT_FOUND, "There is no such hanger.")
    kept = (("cache-control", "private, max-age=3600"),)
    return Answer(kind="image/svg+xml", content=kind_picture(kind).encode(), headers=kept)


def picture(opened: Opened, name: str) -> Answer:
    """A frame's picture, small enough for the page."""
    read = opened.read
    frame = next((frame for frame in read.job.frames if frame.id == name), None) if read else None
    if frame is None or not frame.image or frame.image_missing:
        return refused(HTTPStatus.NOT_FOUND, "This frame has no picture.")
    place = within(opened.folder, frame.image, f"frame {name}, image")
    key = (str(place), place.stat().st_mtime_ns)
    if key not in _KEPT:
        while len(_KEPT) >= _LARGEST_KEPT:
            _KEPT.pop(next(iter(_KEPT)))
        _KEPT[key] = picture_bytes(place, PIXELS)
    return Answer(kind="image/jpeg", content=_KEPT[key], headers=(("cache-control", "private, max-age=3600"),))


_KEPT: dict[tuple[str, int], bytes] = {}


def put_picture(opened: Opened, asked: Asked) -> dict[str, Any]:
    """A picture that was dropped on a frame: kept beside the job file, and named in it.

    Raises InputError for what is no picture that can be read.
    """
    name, given = asked.query.get("frame", ""), Path(asked.query.get("name", "picture"))
    ending = next((ending for start, ending in PICTURES.items() if asked.body.startswith(start)), None)
    if ending is None:
        hint = "save it as JPEG or PNG; a phone does that when it shares a picture by mail"
        raise InputError(given.name, "is no picture that can be read here", hint)
    images = opened.folder / "images"
    folder = images if images.is_dir() and not images.is_symlink() else opened.folder
    place = folder / free_name(folder, given.stem, ending)
    write_results({place: asked.body})
    try:
        picture_bytes(place, PIXELS)
        at = place.relative_to(opened.folder).as_posix()
        opened.change(lambda read: [Change(("frame", frame_number(read, name), "image"), at)])
    except BaseException:
        place.unlink()  # nothing names it
        raise
    return state(opened)
