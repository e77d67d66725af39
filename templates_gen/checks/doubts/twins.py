"""Doubts about frames that ought to be alike: drops unlike those of twins, and copies."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from statistics import median

from templates_gen.base.units import MM, show, show_both
from templates_gen.checks.doubts.doubt import Doubt, Written, frame_place, written
from templates_gen.checks.doubts.fellows import MOST_COMPARED
from templates_gen.checks.doubts.hangers import drops, insets
from templates_gen.checks.doubts.readings import Reading, Usual, probably
from templates_gen.checks.doubts.twin_sides import seen_alone, twin_sides
from templates_gen.job.hangers import TAUT_AGAIN
from templates_gen.job.model import Frame, Job

TWIN_DROPS, CLEAR_DROPS, TWICE, OF_DROP, STIFF, SCATTERED = 22.4, 17.6, 1.45, 0.1, 13.5, 3.5
"""mm that twins' drops differ by at most, and less where one is so many times the others; of a deep one how much; mm
where nothing can stretch; or so many times as much as the middle one of several differs.  Our own, no source: wires of
one make are cut to one length, those that were made anew are not, and 3/4 in is not a stretched wire."""

SWAPPED, NEAR, AGREE = 15.0, 4.0, 8.0
"""mm that a drop whose two figures changed places is off at least; that it is then from its twins'; and that theirs
differ by at most.  Our own, no source: 9 times the figures' difference is what is off."""

EXACT, OFF_EXACT = 3.0, 15.0
"""mm that three twins agree by exactly, and that a fourth is off them then.  Our own, no source."""

FEW, SEVERAL, MANY, OFF_FEW, OFF_STIFF, OFF_ALL, OFF_AGREED, APART = 2, 4, 5, 22.2, 10.5, 12.5, 7.0, 1.6
"""So many twins whose drops agree tell what theirs is to be, and so many surely; so many how widely theirs differ; mm
that one is off a few, off a few slots or teeth, and off several, at least: 7/8, 7/16 and 1/2 in; and mm, and so many
times as much as theirs differ, that one is off more.  Our own, no source."""

CLEARLY, OFF_CLEARLY = 1.35, 8.5
"""So many times more or less than the most of several is a small drop that is off by fewer mm.  Our own, no source."""

FEWEST = 3
"""So many others tell what is usual in a job.  Our own, no source."""


def twin_doubts(job: Job) -> Iterator[Doubt]:
    """What is doubtful about frames of one size, and about copies."""
    known, frames = written(job), job.frames[:MOST_COMPARED]
    alike = defaultdict(list)
    for frame in frames:
        size = round(frame.width, 1), round(frame.height, 1)
        alike[(*size, frame.hanger.kind, frame.type)].append(frame)
    for twins in alike.values():
        yield from _twin_drops(twins, known)
        yield from twin_sides(twins, known)
    yield from seen_alone(frames, known)
    yield from _copied(frames, job.unit)


def _twin_drops(twins: Sequence[Frame], known: Written) -> Iterator[Doubt]:
    """The drop that differs most from the middle one of all twins; of two, the second."""
    # plates beyond a frame's sides are put as far down as one likes, and differ from those over its top
    level = [frame for frame in twins if min(insets(frame)) >= 0]
    measured = [(frame, place, drop) for frame in level for place, drop in drops(frame, known)]
    count = len({frame.id for frame, _, _ in measured})
    if count < 2:
        return
    middle = median(drop for _, _, drop in measured) if len(measured) > 2 else measured[0][2]
    far = CLEAR_DROPS if max(drop for _, _, drop in measured) > TWICE * middle else TWIN_DROPS
    room = max(far, OF_DROP * middle) if twins[0].hanger.traits.gives else STIFF
    if len(twins) >= MANY:
        room = max(room, SCATTERED * median(abs(drop - middle) for _, _, drop in measured))
    for frame, place, drop in measured:
        theirs = [drop for other, _, drop in measured if other.id != frame.id]
        sides = [drop for other, at, drop in measured if at != place and other.id == frame.id]
        swapped = (
            None if any(abs(drop - each) <= NEAR for each in sides) else _swapped(drop, theirs, known.unit_of(place))
        )
        alone = count > FEW and _stands_off(drop, theirs, count, frame.hanger.traits.gives)
        scattered = count > FEW and max(theirs) - min(theirs) > room and not swapped  # each by another maker
        if (drop == middle and not swapped) or scattered or (abs(drop - middle) <= room and not swapped and not alone):
            continue
        others = [other.id for other, _, _ in measured if other.id != frame.id]
        usual = middle if drop != middle else theirs[0]
        likely = swapped or probably(drop, known.unit_of(place), Usual(middle - room, middle + room))
        yield Doubt(
            rule="doubtful-drop", place=place, shown=show(drop, known.unit),
            about=(frame.id, others[0]), uses=(frame_place(others[0], "drop"),),
            why=f"{show_both(abs(drop - usual), known.unit)} {'more' if drop > usual else 'less'} than that of frame "
            f"{others[0]}, of the same size",
            ask=likely.ask or (TAUT_AGAIN if frame.hanger.traits.on_wire else "Measure both again, from the top edge."),
            meant=likely.meant(place),
        )  # fmt: skip


def _stands_off(drop: float, others: Sequence[float], count: int, gives: bool) -> bool:
    """True for a drop that is off those of its twins, of `count` frames with its own, which agree; less where nothing
    `gives`."""
    differ, away = max(others) - min(others), _away(drop, others)
    off = OFF_ALL if count > SEVERAL else OFF_FEW if gives else OFF_STIFF
    if count == SEVERAL and differ <= EXACT:
        off = min(off, OFF_EXACT)
    if count > SEVERAL and max(drop, max(others)) > CLEARLY * min(drop, max(others)):
        off = OFF_CLEARLY
    if count > MANY:
        off = min(off, max(OFF_AGREED, APART * differ, OF_DROP * median(others)))
    return differ <= AGREE and away >= off


def _away(drop: float, others: Sequence[float]) -> float:
    """How far a drop is from the nearest of the others (mm)."""
    return min(abs(drop - each) for each in others)


def _swapped(drop: float, others: Sequence[float], unit: str) -> Reading | None:
    """The drop with two figures that changed places, where that makes it one as all its twins have, who agree."""
    number = f"{drop / MM[unit]:.4g}"
    figures = number.replace(".", "")
    agree = max(others) - min(others) <= AGREE
    if len(figures) != 2 or not figures.isdigit() or figures[1] == "0" or not agree or _away(drop, others) <= SWAPPED:
        return None
    meant = float(number.translate(str.maketrans(figures, figures[::-1]))) * MM[unit]
    near = min(others) - NEAR <= meant <= max(others) + NEAR
    return Reading(meant, "Did two figures change places? Then it is {}.", unit, unit) if near else None


def _copied(frames: Sequence[Frame], unit: str) -> Iterator[Doubt]:
    """A frame that was copied and only its id changed: title or image, size and drop are another's."""
    first: dict[object, Frame] = {}
    titles = Counter(frame.title for frame in frames)
    if len(titles) < len(frames) - 1:  # who names many alike does so on purpose
        return
    for frame in frames:
        named = frame.title and len(frames) > 2
        if not named or (frame.drop is None and frame.hanger.drop_left is None):
            continue
        same = (frame.title, frame.image, frame.width, frame.height, frame.drop, frame.hanger, frame.weight)
        other = first.setdefault(same, frame)
        if other is not frame:
            yield Doubt(
                rule="doubtful-copy", place=frame_place(frame.id, "title"), shown=frame.title, about=(frame.id,),
                uses=(frame_place(frame.id, "drop"),),
                why=f"and its size and drop are those of frame {other.id}",
                ask="Was it copied? Give it a title of its own, and measure its drop.",
            )  # fmt: skip
