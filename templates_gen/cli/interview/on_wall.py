"""The questions about the wall: what it is, what is behind it, a stair along it, and what is on it."""

from __future__ import annotations

from templates_gen.base.errors import InputError
from templates_gen.cli.interview.question import (
    YES_NO,
    Asking,
    Question,
    Tables,
    count,
    fill,
    fill_sides,
    is_length,
    question_for,
)
from templates_gen.job.reading.other_words import meant
from templates_gen.job.seats import use_by_name
from templates_gen.job.tables.contents import field_of

ON_FLOOR = ("door", "furniture")
"""Features that begin at the floor unless something else is said."""

ON_STUDS = ("drywall", "plasterboard", "plaster")
"""What hangs on studs, of what walls are built of."""

KINDS = field_of("feature.kind").choices


def ask_wall(wall: Tables) -> Asking:
    """What the wall is, and what is behind it."""
    yield from fill_sides(wall, "wall")
    yield from fill(wall, "wall.build", choices=field_of("wall.build").choices, open="not known")
    if wall.get("build") in ON_STUDS:
        yield from _studs(wall)
    yield from fill(wall, "wall.wiring", choices=field_of("wall.wiring").choices, open="not said")
    if built := (yield question_for("wall.built", open="not known")):
        wall["built"] = count(built)
    for name in ("earthquake", "public"):
        if said := (yield question_for(f"wall.{name}", choices=YES_NO, open="not said")):
            wall[name] = said == "yes"
    if (yield question_for("stairs", choices=YES_NO, default="no")) == "yes":
        yield from _stairs(wall)


def _studs(wall: Tables) -> Asking:
    """The middles of two studs, as far as they were found."""
    studs: Tables = {}
    yield from fill(studs, "studs.first", open="not found yet")
    if studs:
        wall["studs"] = studs
        yield from fill(studs, "studs.second", open="not found yet")


def _stairs(wall: Tables) -> Asking:
    """A stair by one step, its lowest nosing, and the way it climbs."""
    wall["stairs"] = stairs = Tables()
    yield from fill(stairs, "stairs.up", choices=field_of("stairs.up").choices)
    yield from fill(stairs, "stairs.run")
    yield from fill(stairs, "stairs.rise")
    across = yield question_for("nosing.across")
    stairs["nosing"] = [across, "0"]
    stairs["nosing"] = [across, (yield question_for("nosing.up", default=stairs["rise"]))]
    if steps := (yield question_for("stairs.steps", open="it goes on to the wall's end")):
        stairs["steps"] = count(steps)


def ask_features(wall: Tables) -> Asking:
    """What is on the wall or in front of it, one after the other."""
    while word := (yield _kind_of_feature(wall)):
        kind = meant("feature.kind", word, KINDS)
        feature = {"kind": kind}
        wall.setdefault("feature", []).append(feature)
        # a couch is furniture, and called a couch
        yield from fill(feature, "feature.name", default="" if word == kind else word, open=kind)
        _check_name(feature.get("name", ""))
        if kind == "furniture" and not use_by_name(feature.get("name", "")):
            yield from fill(feature, "feature.use", choices=field_of("feature.use").choices, open="not said")
        yield from fill(feature, "feature.left")
        yield from fill(feature, "feature.bottom", default="0" if kind in ON_FLOOR else "")
        yield from fill_sides(feature, "feature")
        yield from fill(feature, "feature.clear", open="no clearance")


def _check_name(name: str) -> None:
    """Raises InputError for a name that reads as a length: its question was passed over, and all after it would be."""
    if is_length(name, "mm"):
        raise InputError("", f"found {name!r}, a length, expected what it is called; how far it is away is asked next")


def _kind_of_feature(wall: Tables) -> Question:
    open = "nothing more" if wall.get("feature") else "nothing"
    return question_for("feature.kind", choices=KINDS, open=open, begins=True)
