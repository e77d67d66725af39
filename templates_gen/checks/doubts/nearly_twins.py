"""Doubts about a frame that would be the twin of others but for one slip: turned, or of their drop alone."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import log
from statistics import median

from templates_gen.base.units import INCH, MM, exact, show
from templates_gen.checks.doubts.doubt import Doubt, Written, frame_place, written
from templates_gen.checks.doubts.fellows import AMONG, NO_SQUARE, Others, drops_of, each_beside, near, turned, uses_of
from templates_gen.checks.doubts.frames import ratio
from templates_gen.checks.doubts.plan import mirrored
from templates_gen.checks.doubts.readings import other_readings, swapped_figures, tenfold
from templates_gen.job.model import Frame, Job

KEPT, KEPT_AMONG, AGREE, USUAL_SHARE = 1.05, 1.02, 1.15, 0.15
"""So many times more or less than those of its twins is a drop that is one of theirs, with no other frames and among
others; so many times the least is their most, where they agree; and of the height what the drop of a wire mostly is.  A
frame that is turned has its wire or its rings put on anew.  Our own, no source."""

FIGURE = 0.05
"""mm by which two lengths differ less that were written with the same figures.  Our own, no source."""

ONE_WEIGHT = 1.1
"""So many times more or less than its twins a frame weighs at most.  Our own, no source."""

EXACTLY = 1.0
"""mm that two sides may differ by to be one length.  Our own, no source."""

SIDES = ("width", "height")


def nearly_twins(job: Job, only: str = "") -> Iterator[Doubt]:
    """What is doubtful about a frame that is nearly the twin of others; about one alone, if it is named."""
    known = written(job)
    mixed = [name for name in (*SIDES, "drop") if len({known.unit_of(frame_place(f.id, name)) for f in job.frames}) > 1]
    for frame, others in each_beside(job, only):
        yield from _one_side_else(frame, others, known, job.group.arrangement == "grid")
        yield from _figures_alike(frame, others, known, mixed)
        yield from _kept_its_drop(frame, others, job)
        yield from _depth(frame, others, known)


def _exactly(one: float, other: float) -> bool:
    return abs(one - other) <= EXACTLY


def _ratio(frame: Frame) -> float:
    return ratio(frame.width, frame.height)


def _one_side_else(frame: Frame, others: Others, known: Written, grid: bool) -> Iterator[Doubt]:
    """The twin of others but for one side: two of its figures changed places, or it was copied, or a figure is lost."""
    for name, kept in (SIDES, SIDES[::-1]):
        place, mm, own = frame_place(frame.id, name), getattr(frame, name), getattr(frame, kept)
        twins = [
            each for each in others.frames
            if abs(own - getattr(each, kept)) <= EXACTLY and _hangs_as(frame, each)  # asked of each with each
        ]  # fmt: skip
        if not twins or any(_exactly(mm, getattr(each, name)) for each in twins):
            continue
        swapped = [
            (each, meant.ask) for meant in swapped_figures(mm, known.unit_of(place)) for each in twins
            if abs(getattr(each, name) - meant.mm) < FIGURE and (len(twins) > 1 or _ratio(frame) > _ratio(each))
        ]  # fmt: skip
        other = _copied_or_lost(frame, others, twins, name, known.unit_of(place) == "in")
        even = len(twins) == len(others.frames) >= IN_A_ROW and all(_same_size(each, twins[0]) for each in twins)
        if grid and even and _ratio(frame) > OF_GRID * _ratio(twins[0]):
            other = "Is it in another unit, or another frame's?"
        for twin, ask in (*swapped, *([(twins[0], other)] if other else []))[:1]:
            meant = getattr(twin, name)
            yield Doubt(
                rule="doubtful-size", place=place, shown=show(mm, known.unit), about=(frame.id, twin.id),
                uses=uses_of(frame, *SIDES),
                why=f"but frame {twin.id}, else of the same size, has {show(meant, known.unit)}",
                ask=ask, meant=((place, exact(meant, known.unit)),),
            )  # fmt: skip
            return


ALIKE, LONG, VERY_LONG = 2, 1.3, 2.1
"""So many twins tell of a side; and so many times as long as any other is a frame with a side of the one beside it, or
so many times as long as wide is one with a figure lost.  Our own, no source."""


def _copied_or_lost(frame: Frame, others: Others, twins: Sequence[Frame], name: str, inches: bool) -> str:
    """What is asked about a frame with a drop of its twins, but with one side that makes it square, or long."""
    weighed = frame.weight is not None and not frame.estimated and len({frame.weight, *(t.weight for t in twins)}) == 1
    room = ALONE_AGREE if not frame.hanger.traits.by_height else KEPT
    alike = drops_of(frame) and all(_hangs_as(frame, each, room) and _same_size(each, twins[0]) for each in twins)
    beside = [others.frames[at] for at in (others.at - 1, others.at) if 0 <= at < len(others.frames)]
    next_one = any(_exactly(getattr(frame, name), getattr(each, name)) for each in beside)
    enough = len(twins) >= ALIKE or weighed or (next_one and _ratio(frame) > VERY_LONG)
    if not alike or not enough or not _may_weigh_the_same(frame, twins):
        return ""
    long = _ratio(frame) > LONG * max(map(_ratio, others.frames))
    all_others = len(twins) == len(others.frames) >= ALIKE
    if _exactly(frame.width, frame.height) and (all_others or _as_heavy(frame, twins)):
        return "Was it copied from its other side?"
    off = abs(getattr(frame, name) - getattr(twins[0], name))
    if inches and abs(off - INCH) < FIGURE and all_others:
        return "Was it misread by a whole inch?"
    if long and next_one:
        return "Was it copied from the next frame?"
    return "Is a figure missing, or one too many?" if long and _ratio(frame) > VERY_LONG else ""


OF_GRID = 1.5
"""So many times as long as all others of a grid, which are of one size, is a frame with a slip.  Our own, no source."""


def _figures_alike(frame: Frame, others: Others, known: Written, mixed: Sequence[str]) -> Iterator[Doubt]:
    """A length of those in `mixed` units with its twins' figures, but the only one with another unit beside it."""
    for name in mixed:
        place, mm = frame_place(frame.id, name), getattr(frame, name)
        unit, theirs = known.unit_of(place), {known.unit_of(frame_place(each.id, name)) for each in others.frames}
        if not mm or len(theirs) > 1 or unit in theirs:
            continue
        (other,) = theirs
        meant = mm / MM[unit] * MM[other]
        room = KEPT if name == "drop" else 1.0 + FIGURE / meant
        if sum(near(meant, (getattr(each, name) or mm,), room) for each in others.frames) >= ALIKE:
            yield Doubt(
                rule="doubtful-size" if name != "drop" else "doubtful-drop", place=place,
                shown=show(mm, known.unit), about=(frame.id,),
                why=f"in {unit}, with the figures that others have in {other}",
                ask=f"Is it in {other}? Then it is {show(meant, known.unit)}.", meant=((place, exact(meant, other)),),
            )  # fmt: skip


def _kept_its_drop(frame: Frame, others: Others, job: Job) -> Iterator[Doubt]:
    """A frame that lies among frames of its sides that stand, or stands among such that lie, with a drop of theirs."""
    if _ratio(frame) < NO_SQUARE or others.has(frame.width, frame.height):
        return
    twins = [
        each for each in others.frames
        if each.hanger.kind == frame.hanger.kind and _exactly(each.width, frame.height)
        and _exactly(each.height, frame.width)
    ]  # fmt: skip
    own, theirs = drops_of(frame), [drop for twin in twins for drop in drops_of(twin)]
    most = 2 * len(twins) >= len(others.frames) or (
        twins and (min(frame.id, twins[0].id), max(frame.id, twins[0].id)) in mirrored(job.group)
    )
    told = frame.hanger.traits.by_height
    if not own or not most or not theirs or not (told or _off_middle(frame, others, twins, job)):
        return
    agree = max(theirs) <= (AGREE if told else ALONE_AGREE) * min(theirs)
    kept = near(median(own), theirs, KEPT if len(twins) == len(others.frames) else KEPT_AMONG)
    if agree and kept and _may_weigh_the_same(frame, twins) and (len(twins) > 1 or _odder(frame, twins[0])):
        yield turned(frame, job.unit, f"while frame {twins[0].id}, of its sides and its drop, is turned the other way")


ALONE_AGREE, IN_A_ROW = 1.25, 3
"""As AGREE where a drop tells little, as on teeth or slots; then so many must stand in a row where one lies off its
middle.  Our own, no source."""


def _off_middle(frame: Frame, others: Others, twins: Sequence[Frame], job: Job) -> bool:
    """True for the one in a row, or up a stair, that lies while all others stand, where nothing mirrors it."""
    alone = job.group.arrangement in ("row", "stairs") and len(others.frames) == len(twins) >= IN_A_ROW
    return alone and 2 * job.group.rows[0].index(frame.id) != len(twins)


def _as_heavy(frame: Frame, twins: Sequence[Frame]) -> bool:
    """True for a square that was weighed like its twins, of which there are some, and which are far from square."""
    weighed = all(each.weight and not each.estimated for each in (frame, *twins))
    return weighed and len(twins) >= ALIKE and _ratio(twins[0]) > LONG


def _may_weigh_the_same(frame: Frame, twins: Sequence[Frame]) -> bool:
    """False for a frame that was weighed, as its twins were, and weighs else: it is not one of them turned."""
    theirs = [twin.weight for twin in twins if twin.weight and not twin.estimated]
    if not theirs or not frame.weight or frame.estimated:
        return True
    return near(frame.weight, theirs, ONE_WEIGHT)


DEEP, OF_DEPTH = 80.0, 3.0
"""mm of a frame's depth that is asked about where it is so many times that of any other.  Our own, no source."""


def _depth(frame: Frame, others: Others, known: Written) -> Iterator[Doubt]:
    """A frame that stands out from the wall far more than all others, and as they do in another unit."""
    place, depths = frame_place(frame.id, "depth"), [each.depth for each in others.frames if each.depth]
    if frame.depth is None or frame.depth < DEEP or not depths or frame.depth < OF_DEPTH * max(depths):
        return
    unit = known.unit_of(place)
    for meant in (*other_readings(frame.depth, unit), *tenfold(frame.depth, unit)):
        if near(meant.mm, depths, AMONG):
            yield Doubt(
                rule="doubtful-size", place=place, shown=show(frame.depth, known.unit), about=(frame.id,),
                why=f"more than {show(max(depths), known.unit)}, the most of all others", ask=meant.ask,
                meant=meant.meant(place),
            )  # fmt: skip
            return


def _same_size(one: Frame, two: Frame) -> bool:
    return _exactly(one.width, two.width) and _exactly(one.height, two.height)


def _odder(one: Frame, other: Frame) -> bool:
    """True for that of two whose drop is further from what most have of their height."""
    far, near = (abs(log(median(drops_of(each)) / each.height / USUAL_SHARE)) for each in (one, other))
    return far > near


def _hangs_as(one: Frame, other: Frame, room: float = AGREE) -> bool:
    """True for one kind of hanger, and drops that are alike, or not measured."""
    drops = [drop for each in (one, other) for drop in drops_of(each)]
    return one.hanger.kind == other.hanger.kind and (not drops or max(drops) <= room * min(drops))
