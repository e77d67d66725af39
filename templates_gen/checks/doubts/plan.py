"""Doubts that only the finished plan shows: fixings on top of each other, a group beside what it hangs above, and one
frame that spoils a group's symmetry."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.base.units import exact, show, show_both
from templates_gen.checks.doubts.doubt import Doubt
from templates_gen.checks.doubts.fellows import turned
from templates_gen.checks.doubts.readings import Usual
from templates_gen.checks.hanging import MOST_PAIRS, near_fixings
from templates_gen.job.model import Group

ASIDE = 0.4
"""Of a piece of furniture's width that the group above it may be off its middle.  Our own, no source."""

FEWEST, MOST = 2, 200
"""Pairs of other sizes that mirror each other where one does not, and frames of a group that is looked at.  Our own,
no source."""

MIRRORED = 2.0
"""mm that two frames which mirror each other may be off.  Our own, no source."""


def plan_doubts(plan: Plan) -> Iterator[Doubt]:
    """What is doubtful about where frames and nails are."""
    yield from _wall_sides(plan)
    yield from _close_nails(plan)
    yield from _beside_furniture(plan)
    yield from _spoils_symmetry(plan)


ROOM_HEIGHT, HIGH_GROUP = Usual(2100.0, 3300.0), 1900.0
"""mm.  A wall's width that could be its height, and a group's middle as high as only high walls have it.  Our own."""

TALL, HIGHER = 3500.0, 1.15
"""mm, and so many times its width, that a wall is high whose sides may have changed places: old houses have rooms up to
3.5 m high, from memory.  Our own."""


def _wall_sides(plan: Plan) -> Iterator[Doubt]:
    """Width and height that changed places, but not where the group hangs as high as on a high wall."""
    wall, unit = plan.job.wall, plan.job.unit
    if wall.stairs or wall.outline or wall.height <= wall.width or not ROOM_HEIGHT.holds(wall.width):
        return
    if wall.height > max(TALL, HIGHER * wall.width) and plan.group.cy < HIGH_GROUP:
        yield Doubt(
            rule="doubtful-wall", place="wall, height", shown=show(wall.height, unit), uses=("wall, width",),
            why=f"more than its width of {show(wall.width, unit)}", ask="Are width and height the other way round?",
            meant=(("wall, width", exact(wall.height, unit)), ("wall, height", exact(wall.width, unit))),
        )  # fmt: skip


def _close_nails(plan: Plan) -> Iterator[Doubt]:
    """Two fixings of one frame that are nearer than their holes may be."""
    own = (pair for pair in near_fixings(plan) if pair[0].frame == pair[1].frame)
    for nail, other, away in islice(own, MOST_PAIRS):
        yield Doubt(
            rule="doubtful-fixing",
            place=f"nails {other.name} and {nail.name}",
            shown=f"{show_both(away, plan.job.unit)} apart",
            about=(nail.frame,),
            why="so near that one hole may break into the other",
            ask="Is each measured from its own side, and in one unit?",
        )


def _beside_furniture(plan: Plan) -> Iterator[Doubt]:
    height, job = plan.job.group.height, plan.job
    feature = next((each for each in job.wall.features if each.name == height.feature), None)
    if height.by != "above" or feature is None or feature.rect.width <= 0:
        return
    off = (plan.centre_line if job.group.anchor else plan.group.cx) - feature.rect.cx
    whose = f"frame {job.group.anchor}'s" if job.group.anchor else "the group's"
    if abs(off) > ASIDE * max(feature.rect.width, plan.group.width):
        yield Doubt(
            rule="doubtful-place", place="group, height, above", shown=feature.name,
            why=f"but {whose} middle is {show_both(abs(off), job.unit)} to the {'right' if off > 0 else 'left'} of "
            "its middle",
            ask="Was its left side measured from the other end, or to its middle? Or what is the group centred on?",
            meant=(("group, centre_on", feature.name),),
        )  # fmt: skip


def _spoils_symmetry(plan: Plan) -> Iterator[Doubt]:
    """The one frame that, turned, would be the mirror image of another, in a group that mirrors itself elsewhere."""
    frames = {hung.frame.id: hung for hung in plan.frames}
    if plan.job.group.arrangement not in ("rows", "columns", "row") or len(frames) > MOST:
        return
    pairs = mirrored(plan.job.group)
    rects = [(frames[one].rect, frames[two].rect) for one, two in pairs]
    alike = [_alike(one, two) for one, two in rects]
    across = [_alike(one, two, turn=True) and not same for (one, two), same in zip(rects, alike, strict=True)]
    if sum(across) != 1:
        return
    one, two = (frames[name] for name in pairs[across.index(True)])
    others = [first for (first, _), same in zip(rects, alike, strict=True) if same and not _of_a_make(first, one.rect)]
    if len(others) >= FEWEST:
        doubt, lines = _which(one, two, plan), plan.job.group.arrangement
        yield replace(doubt, uses=(*doubt.uses, f"group, {'arrangement' if lines == 'row' else lines}"))


def mirrored(group: Group) -> list[tuple[str, str]]:
    """The pairs of frames that are to each other's left and right of the group's middle."""
    if group.arrangement == "columns":
        lines = list(zip(group.rows, reversed(group.rows), strict=True))
        pairs = [pair for one, two in lines if len(one) == len(two) for pair in zip(one, two, strict=True)]
    else:
        pairs = [pair for line in group.rows for pair in zip(line, reversed(line), strict=True)]
    return sorted({(min(pair), max(pair)) for pair in pairs if pair[0] != pair[1]})


def _of_a_make(one: Rect, two: Rect) -> bool:
    """True for one size, upright or on its side: frames of it are hung either way."""
    return _alike(one, two) or _alike(one, two, turn=True)


def _alike(one: Rect, two: Rect, turn: bool = False) -> bool:
    width, height = (two.height, two.width) if turn else (two.width, two.height)
    return abs(one.width - width) <= MIRRORED and abs(one.height - height) <= MIRRORED


def _which(one: Hung, two: Hung, plan: Plan) -> Doubt:
    """Of two, the one that has a size of its own; else the second."""
    sizes = [(round(hung.rect.width), round(hung.rect.height)) for hung in plan.frames]
    rare = min((two, one), key=lambda hung: sizes.count((round(hung.rect.width), round(hung.rect.height))))
    other = one if rare is two else two
    return turned(rare.frame, plan.job.unit, f"while frame {other.frame.id} on the other side stands the other way")
