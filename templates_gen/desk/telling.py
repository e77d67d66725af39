"""What the page is told of a job: what it says, where everything is, and how it is drawn.  Lengths are in mm."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

import templates_gen as tg
from templates_gen.base.errors import InputError
from templates_gen.base.units import DIVISION, INCH, exact, show, show_both, show_mass
from templates_gen.checks.furniture import USUAL_ABOVE
from templates_gen.desk.opened import Opened, Read, hash_of
from templates_gen.documents.proof.on_screen import Part, Screen, on_screen
from templates_gen.documents.schedule.distances import above_floor, sideways, upward
from templates_gen.job.paper_sizes import own_paper
from templates_gen.job.reading.place import DEFAULT_CENTRE

LARGE_STEP = {"in": INCH, "cm": 10.0, "mm": 10.0}
"""mm that an arrow key moves with Shift: an inch or a centimetre.  Our own design, no source."""


def state(opened: Opened) -> dict[str, Any]:
    """Everything the page shows of a job but what was found about it, which may take longer."""
    with opened.lock:
        read, told = opened.read, {
            "job": opened.path.name, "number": opened.number, "text": hash_of(opened.text), **opened.can,
            "gone": opened.gone,
            "problem": words(opened.problem), "noPlaces": words(opened.no_places), "finding": opened.found.done,
        }  # fmt: skip
    return told | (_told(read) if read is not None else {})


def words(error: InputError | None) -> dict[str, str] | None:
    """What is wrong, in the parts that a message has."""
    return {"where": error.where, "problem": error.problem, "hint": error.hint} if error else None


def _told(read: Read) -> dict[str, Any]:
    job, plan, unit = read.job, read.plan, read.job.unit
    return {
        "raw": read.raw,
        "unit": unit,
        "title": job.title,
        "step": DIVISION[unit],
        "largeStep": LARGE_STEP[unit],
        "gap": [job.group.gap_across, job.group.gap_down],
        "arrangement": job.group.arrangement,
        "paper": own_paper(job).name,
        "features": [
            {"name": one.name, "kind": one.kind, "called": one.called, "key": f"{number} {one.name}"}
            for number, one in enumerate(job.wall.features)
        ],
        "frames": [_frame(frame, unit, read.raw) for frame in job.frames],
        "lines": {"centre": plan.centre_line, "level": plan.level_line, "slope": job.group.slope} if plan else None,
        "levelSaid": f"The level line is {show_both(plan.level_line, unit)} {above_floor(plan)}." if plan else "",
        "group": plan.group.sides if plan else None,
        "said": tuple(_said(plan)) if plan else (),
        "now": hanging_now(job, plan),
        "nails": list(_nails(plan)) if plan else [],
        "planned": _planned(plan) if plan else {},
        "screen": screen(on_screen(job, plan)),
    }


def hanging_now(job: tg.Job, plan: tg.Plan | None) -> dict[str, str]:
    """How it hangs now, in every way that a job may say it, so that nothing moves when it is said in another: what the
    centre line is on, the fields of a height, and "above bench"; a frame that goes by itself counts alone."""
    usual = {"centre": DEFAULT_CENTRE, "above_nosings": DEFAULT_CENTRE}
    if plan is None:
        return {name: show(value, job.unit) for name, value in usual.items()}
    of = next((hung.rect for hung in plan.frames if hung.frame.id == job.group.height.of), plan.group)
    found = usual | {"centre_on": plan.centre_line, "centre": of.cy, "top": of.y1, "bottom": of.y0}
    if job.group.height.by == "above_nosings":
        found["above_nosings"] = job.group.height.at
    for one in job.wall.features:
        found[f"above {one.name}"] = of.y0 - one.rect.y1 if of.y0 > one.rect.y1 else USUAL_ABOVE[0]
    return {name: exact(value, job.unit) for name, value in found.items()}


def _frame(frame: Any, unit: str, raw: Mapping[str, Any]) -> dict[str, Any]:
    """A frame with what is known of it, which the page shows where the file leaves it open."""
    known = {
        "width": show(frame.width, unit), "height": show(frame.height, unit),
        "drop": show(frame.drop, unit) if frame.drop is not None else "",
        "depth": show(frame.depth, unit) if frame.depth is not None else "",
        "weight": show_mass(frame.weight, unit) if frame.weight is not None else "",
        "weightIs": frame.weight_is,
    }  # fmt: skip
    own = next((at for at, table in enumerate(raw.get("frame", [])) if table.get("id") == frame.id), None)
    return {
        "id": frame.id, "title": frame.title, "own": own, "known": known, "hanger": frame.hanger.kind,
        "fixing": frame.fixing.called, "image": bool(frame.image), "imageMissing": frame.image_missing,
        "imageFile": frame.image,
    }  # fmt: skip


def _said(plan: tg.Plan) -> Iterator[str]:
    """What a person wants to know first of a group, in short sentences."""
    group, unit = plan.group, plan.job.unit
    yield f"The group is {show(group.width, unit)} wide and {show(group.height, unit)} high."
    yield f"Its lowest edge is {show_both(group.y0, unit)} {above_floor(plan)}, its highest {show(group.y1, unit)}."
    yield f"The centre line is {show_both(plan.centre_line, unit)} from the wall's left end."


def _planned(plan: tg.Plan) -> dict[str, dict[str, str]]:
    """What would be read of every frame if it hung as planned, by its id: from the floor, or the level line."""
    unit, level, centre = plan.job.unit, plan.level_line, plan.centre_line
    return {
        hung.frame.id: {
            "floor": show(hung.rect.y1, unit), "level line": upward(hung.rect.y1 - level, unit),
            "left_edge": sideways(hung.rect.x0 - centre, unit),
        }
        for hung in plan.frames
    }  # fmt: skip


def _nails(plan: tg.Plan) -> Iterator[dict[str, Any]]:
    unit = plan.job.unit
    for nail in plan.nails:
        words = (
            f"{sideways(nail.x - plan.centre_line, unit)} of the centre line, {show(nail.y, unit)} {above_floor(plan)}"
        )
        yield {"name": nail.name, "frame": nail.frame, "x": nail.x, "y": nail.y, "words": words,
               "up": upward(nail.y - plan.level_line, unit)}  # fmt: skip


def screen(drawn: Screen) -> dict[str, Any]:
    """A wall that is drawn, for the page."""
    return {
        "scale": drawn.scale, "box": drawn.box, "wall": drawn.wall,
        "features": [_part(part) for part in drawn.features], "frames": [_part(part) for part in drawn.frames],
    }  # fmt: skip


def _part(part: Part) -> dict[str, Any]:
    seen = part.window.sides if part.window else None
    return {"name": part.name, "rect": part.rect.sides, "drawn": part.drawn, "window": seen}
