"""Doubts about what is on the wall or in front of it: beyond the wall, of no size, or of a size that none has."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from templates_gen.base.geometry import Rect, exceeds
from templates_gen.base.units import exact, show, show_both
from templates_gen.base.words import feature_place, with_article
from templates_gen.checks.doubts import usual
from templates_gen.checks.doubts.doubt import Doubt, Written, unusual, written
from templates_gen.checks.doubts.readings import NO_READING, Usual, other_readings, swapped_figures
from templates_gen.job.model import Feature, Job
from templates_gen.job.seats import use_by_name

RULE = "doubtful-feature"

APART = ("door", "window", "switch", "outlet", "thermostat", "vent", "radiator")
"""Kinds of which none is where another is, but for what is under a window.  Our own list, no source."""

SHARED = 0.25
"""Of the smaller of two features that the other covers, where both cannot be there.  Our own, no source."""


def feature_doubts(job: Job) -> Iterator[Doubt]:
    """What is doubtful about each feature, and about two of them."""
    known = written(job)
    for number, feature in enumerate(job.wall.features, 1):
        place = feature_place(number, feature.name)
        yield from _beyond(feature, place, job)
        yield from _at_the_end(feature, place, job)
        yield from _sizes(feature, place, known)
        yield from _bottom(feature, place, job, known)
        clear = f"{place}, clear"
        yield from unusual(RULE, clear, feature.clear, usual.CLEAR, known, "the room that frames keep from something")
    yield from _in_each_other(job)


def _beyond(feature: Feature, place: str, job: Job) -> Iterator[Doubt]:
    rect, wall, unit = feature.rect, job.wall, job.unit
    if exceeds(rect.x1, wall.width):
        yield Doubt(
            rule=RULE, place=f"{place}, left", shown=show(rect.x0, unit),
            uses=(f"{place}, width", "wall, width"),
            why=f"which puts its right side {show(rect.x1 - wall.width, unit)} beyond the wall's right end",
            ask="Was it measured from the other end, to its middle, or in another unit?",
        )  # fmt: skip
    if exceeds(rect.y1, wall.height):
        yield Doubt(
            rule=RULE, place=f"{place}, height", shown=show(rect.height, unit),
            uses=(f"{place}, bottom", "wall, height"),
            why=f"which puts its top {show(rect.y1 - wall.height, unit)} above the wall",
            ask="Was its top measured from the floor, or one of them in another unit?",
        )  # fmt: skip


def _at_the_end(feature: Feature, place: str, job: Job) -> Iterator[Doubt]:
    """A plate that nearly touches an end of the wall, where no box can be set."""
    rect, unit = feature.rect, job.unit
    near = min(rect.x0, job.wall.width - rect.x1)
    if feature.kind in ("switch", "outlet", "thermostat") and 0.0 <= near < CORNER and not job.wall.outline:
        yield Doubt(
            rule=RULE,
            place=f"{place}, left",
            shown=show(rect.x0, unit),
            uses=(f"{place}, width", "wall, width"),
            why=f"which puts it only {show(near, unit)} from the wall's end",
            ask="Is a figure missing, or is it in another unit?",
        )


CORNER = 18.0
"""mm from a corner that a switch or an outlet is at least.  Our own, no source."""


def _sizes(feature: Feature, place: str, known: Written) -> Iterator[Doubt]:
    """Width and height against what such a thing has; what has none at all is doubted whatever it is."""
    rect, sides = feature.rect, _usual_sizes(feature)
    if rect.height > TURNED * rect.width and _turned(rect, sides):
        yield Doubt(
            rule=RULE, place=f"{place}, height", shown=show(rect.height, known.unit), uses=(f"{place}, width",),
            why=f"and only {show(rect.width, known.unit)} wide", ask="Are width and height the other way round?",
            meant=((f"{place}, width", exact(rect.height, known.unit)),
                   (f"{place}, height", exact(rect.width, known.unit))),
        )  # fmt: skip
        return
    for name, mm, expected in zip(("width", "height"), (rect.width, rect.height), sides, strict=True):
        where = f"{place}, {name}"
        if mm <= 0:
            yield Doubt(
                rule=RULE, place=where, shown=show(0.0, known.unit), why="so there is nothing to keep frames away from",
                ask=f"What is its {name}?",
            )  # fmt: skip
        elif expected is not None:
            yield from unusual(RULE, where, mm, expected, known, f"the {name} of {with_article(feature.called)}")


TURNED = 1.3
"""So many times as high as wide is what was turned by a slip: chests of drawers are as high as 1.25.  Our own."""


def _turned(rect: Rect, sides: tuple[Usual | None, Usual | None]) -> bool:
    """True for a size that is unusual as it is, and usual with its sides the other way round."""
    wide, high = sides
    if wide is None or high is None or (wide.holds(rect.width) and high.holds(rect.height)):
        return False
    return wide.holds(rect.height) and high.holds(rect.width)


def _usual_sizes(feature: Feature) -> tuple[Usual | None, Usual | None]:
    """What its width and its height usually are, by its kind, and for furniture by its name and by where it stands."""
    named = usual.named(feature.name) if not exceeds(feature.rect.y0, 0.0) else None
    if named and feature.kind in ("furniture", "other"):
        return named[:2]
    known = usual.SIZES.get(feature.kind)
    if known is None:
        return None, None
    if feature.kind == "furniture" and exceeds(feature.rect.y0, 0.0) and usual.words_of(feature.name) & usual.SHELVES:
        return known[0], usual.SHELF_HEIGHT
    if feature.kind != "furniture" or exceeds(feature.rect.y0, 0.0):
        return known
    if _is_seat(feature):
        return usual.SEAT_WIDTH, usual.SEAT_HEIGHT
    if _is_table(feature):
        return usual.TABLE_WIDTH, usual.table_height(feature.name)
    return known[0], usual.FLOOR_HEIGHT


def _is_seat(feature: Feature) -> bool:
    return use_by_name(feature.name) == "seat"


def _is_table(feature: Feature) -> bool:
    return usual.table_by_name(feature.name)


def _bottom(feature: Feature, place: str, job: Job, known: Written) -> Iterator[Doubt]:
    """How high above the floor it begins."""
    bottom, where = feature.rect.y0, f"{place}, bottom"
    if job.wall.stairs is not None:
        return
    if feature.kind in ("switch", "thermostat"):
        yield from unusual(RULE, where, bottom, usual.SWITCH_BOTTOM, known, f"a {feature.kind} above the floor")
    if feature.kind == "outlet":
        yield from unusual(RULE, where, bottom, usual.OUTLET_BOTTOM, known, "an outlet above the floor")
        if feature.rect.width > PLATE_WIDE * feature.rect.height and usual.PLATE_HEIGHT.holds(bottom):
            yield Doubt(
                rule=RULE, place=where, shown=show(bottom, known.unit), uses=(f"{place}, width",),
                why=f"and it is {show(feature.rect.width, known.unit)} wide", ask="Did width and bottom change places?",
                meant=((f"{place}, width", exact(bottom, known.unit)), (where, exact(feature.rect.width, known.unit))),
            )  # fmt: skip
    if feature.kind == "radiator":
        yield from unusual(RULE, where, bottom, usual.RADIATOR_BOTTOM, known, "a radiator above the floor")
    stands = feature.kind == "door" or (feature.kind == "furniture" and (_is_seat(feature) or _is_table(feature)))
    if feature.kind == "window":
        yield from _low_window(feature, where, known)
    if stands and bottom > (usual.STEPS if feature.kind == "door" else usual.FROM_FLOOR):
        yield Doubt(
            rule=RULE, place=where, shown=show(bottom, known.unit), uses=(f"{place}, left",),
            why=f"but {with_article(feature.called)} stands on the floor",
            ask="Is it 0? Or did left and bottom, or bottom and height, change places?",
        )  # fmt: skip


LOW_HEAD, HEADS = 1500.0, Usual(1800.0, 2500.0)
"""mm above the floor that hardly any window ends at, and at which most do.  Our own, no source."""


def _low_window(feature: Feature, where: str, known: Written) -> Iterator[Doubt]:
    """A window that ends lower than a door, near the floor, or where its lower edge read otherwise is as most are."""
    bottom, top, unit = feature.rect.y0, feature.rect.y1, known.unit_of(where)
    readings = (*other_readings(bottom, unit), *swapped_figures(bottom, unit)) if top < LOW_HEAD else ()
    likely = next((each for each in readings if HEADS.holds(each.mm + top - bottom)), NO_READING)
    if likely.ask or (bottom < usual.WINDOW_TO_FLOOR and top < usual.WINDOW_HEAD):
        yield Doubt(
            rule=RULE, place=where, shown=show(bottom, known.unit), uses=(f"{where.rpartition(', ')[0]}, height",),
            why=f"so the window ends {show_both(top, known.unit)} above the floor, where few do",
            ask=likely.ask or "How high above the floor does it begin?", meant=likely.meant(where),
        )  # fmt: skip


PLATE_WIDE = 2.9
"""So many times as wide as high is hardly any plate right above a skirting: that is three in a row.  Our own."""


def _in_each_other(job: Job) -> Iterator[Doubt]:
    """Two things that cannot be in one place, and the same thing twice."""
    numbered = list(enumerate(job.wall.features, 1))[:MOST_FEATURES]
    for (one, first), (other, second) in combinations(numbered, 2):
        if not _cannot_share(first, second):
            continue
        places = feature_place(one, first.name), feature_place(other, second.name)
        yield Doubt(
            rule=RULE, place=f"{places[1]}, left", shown=show(second.rect.x0, job.unit),
            uses=tuple(f"{place}, {name}" for place in places for name in ("left", "bottom", "width", "height")),
            why=f"where the {first.called} is already",
            ask="Was one of them measured from the other end, or entered twice?",
        )  # fmt: skip


MOST_FEATURES = 60
"""So many features are compared with each other.  Our own, no source."""


IN_DOOR = 100.0
"""mm that furniture may stand before a door, with its frame.  Our own, no source."""


HIDDEN = 0.5
"""Of a switch: nobody puts furniture before more of it.  Our own, no source."""


def _cannot_share(one: Feature, two: Feature) -> bool:
    if one.kind == two.kind and one.rect == two.rect:
        return True
    across = min(one.rect.x1, two.rect.x1) - max(one.rect.x0, two.rect.x0)
    up = min(one.rect.y1, two.rect.y1) - max(one.rect.y0, two.rect.y0)
    kinds = {one.kind, two.kind}
    if across <= 0 or up <= 0 or (kinds & {"window"} and kinds & {"radiator", "vent"}):
        return False
    if kinds == {"outlet", "radiator"}:  # behind it, for what heats it
        return False
    if kinds == {"door", "furniture"}:
        return across > IN_DOOR
    solid = one.kind in APART and two.kind in APART
    share = HIDDEN if kinds in ({"switch", "furniture"}, {"thermostat", "furniture"}) else SHARED
    smaller = min(each.rect.width * each.rect.height for each in (one, two))
    return (solid or share == HIDDEN) and across * up > share * smaller
