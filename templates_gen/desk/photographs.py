"""Photographs at the desk: the group on one of the wall, taped sheets read from some, frames that hang read from one.

What a photograph needs comes with an extra: the rooms that read one are asked for only when one is there.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

import templates_gen as tg
from templates_gen.base.errors import InputError
from templates_gen.desk.messages import Answer, Asked
from templates_gen.desk.opened import Opened, planned

CARD = "a4"
"""The paper of the photo card where the page does not say.  Our own default."""


def on_the_wall(opened: Opened, asked: Asked) -> dict[str, Any]:
    """The group drawn on a photograph of the wall.

    Raises InputError for what is no photograph, or shows no photo card."""
    from templates_gen.documents.photo_card import cards_of
    from templates_gen.documents.photographed import faces
    from templates_gen.photo.cards import see_wall
    from templates_gen.photo.on_wall import drawn, placed, told_of
    from templates_gen.photo.picture import photo_of

    plan = planned(opened)
    photo = photo_of(_names(asked)[0], asked.body)
    wall = see_wall(photo, cards_of(asked.query.get("card", CARD), "the photo card"))
    middle, fronts = (plan.centre_line, plan.level_line), faces(plan)
    opened.shown["on-wall"] = drawn(photo.colours(), wall, fronts, middle, "jpg")
    return {"picture": "on-wall", "said": _plain(told_of(wall, list(placed(wall, fronts, middle))))}


def taped(opened: Opened, asked: Asked) -> dict[str, Any]:
    """How taped sheets lie, by photographs that come one after the other; the first one again with the joins marked.

    Raises InputError for what is no photograph, or shows too few tags."""
    from templates_gen.documents.making import on_paper, template_marks
    from templates_gen.documents.on_wall import by_job
    from templates_gen.photo.picture import photo_of
    from templates_gen.photo.taped import read_taped
    from templates_gen.photo.taped_picture import marked
    from templates_gen.photo.taped_words import heading, sentences, table

    job = tg.read_job(opened.path)
    there = by_job(opened.path, job, None, {}, lambda: template_marks(on_paper(job, photo=True)))
    marks, photos, start = there.papers, [], 0
    for name, size in zip(_names(asked), _listed(asked, "sizes"), strict=False):
        photos.append(photo_of(name, asked.body[start : start + int(size)]))
        start += int(size)
    if not photos:
        raise InputError("", "the page sent no photograph", "load the page again")
    found = read_taped(photos, marks, there.name)
    opened.shown["taped"] = marked(photos[0], found, marks, "jpg")
    said = [{"level": level, "text": text} for level, text in filter(None, [there.said])]
    said += [{"level": one.level, "text": one.text} for one in sentences(found, marks.scaled, there.name)]
    lines = [line.strip() for line in table(found)]
    return {"picture": "taped", "said": [*_plain([heading(found, marks)]), *said], "table": lines}


def hanging(opened: Opened, asked: Asked) -> dict[str, Any]:
    """What a photograph tells of the frames that somebody pointed at, as readings to correct by.

    Raises InputError for what is no photograph, shows no photo card, or for fewer than two frames."""
    from templates_gen.documents.photo_card import cards_of
    from templates_gen.documents.photographed import depths, faces
    from templates_gen.photo.hung import RELATIVE, not_read, read_hung, reading, without_depth
    from templates_gen.photo.picture import photo_of
    from templates_gen.photo.vision import np

    plan = planned(opened)
    photo = photo_of(_names(asked)[0], asked.body)
    pointed = {name: np.array(points, float) for name, points in _pointed(asked).items()}
    cards = cards_of(asked.query.get("card", CARD), "the photo card")
    known = depths(plan)
    found = read_hung(photo, faces(plan), known, pointed, cards)
    return {
        "rows": {one.id: reading(one, plan.centre_line) for one in found.frames},
        "said": [
            *_plain(f"Frame {one.id} is read within {one.sure:.1f} mm, 19 times in 20." for one in found.frames),
            *({"level": "note", "text": text} for text in without_depth(pointed, known)),
            *({"level": "warn", "text": text} for text in not_read(found)),
            {"level": "note", "text": RELATIVE},
        ],
    }


def _pointed(asked: Asked) -> Mapping[str, Any]:
    """Four corners for every frame, as the page has them."""
    try:
        found = json.loads(asked.query.get("corners", "{}"))
        whole = all(len(points) == 4 and all(len(point) == 2 for point in points) for points in found.values())
    except (ValueError, AttributeError, TypeError):
        found, whole = {}, False
    if not whole:
        raise InputError("", "the page sent no corners", "load the page again")
    return dict(found)


def _names(asked: Asked) -> list[str]:
    return [Path(name).name or "photograph" for name in _listed(asked, "names")] or ["photograph"]


def _listed(asked: Asked, name: str) -> list[str]:
    found = [one for one in asked.query.get(name, "").split("|") if one]
    if name == "sizes" and not all(one.isdecimal() for one in found):
        raise InputError("", "the page sent no sizes", "load the page again")
    return found


def _plain(lines: Iterable[str]) -> list[dict[str, str]]:
    return [{"level": "", "text": line} for line in lines]


def shown(opened: Opened, asked: Asked) -> Answer | None:
    """A picture that was made of a photograph; it is kept nowhere but here, until the next one."""
    content = opened.shown.get(asked.query.get("picture", ""))
    return None if content is None else Answer(kind="image/jpeg", content=content)
