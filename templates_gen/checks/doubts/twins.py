"""Doubts about frames that ought to be alike: drops unlike those of twins or of all others, and copies."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from statistics import median

from templates_gen.base.units import MM, show, show_both
from templates_gen.checks.doubts.doubt import Doubt, Written, frame_place, written
from templates_gen.checks.doubts.fellows import MOST_COMPARED
from templates_gen.checks.doubts.hangers import drops, insets
from templates_gen.checks.doubts.readings import Reading, Usual, doubled_figure, probably
from templates_gen.checks.doubts.twin_sides import twin_sides
from templates_gen.job.hangers import TAUT_AGAIN
from templates_gen.job.model import Frame, Job

TWIN_DROPS, OF_DROP, STIFF, SCATTERED = 17.6, 0.1, 13.5, 3.5
"""mm that twins' drops differ by at most, and of a deep one how much; mm where nothing can stretch; or so many times as
much as the middle one of several differs.  Our own, no source: wires of one make are cut to one length, and 3/4 in is
not a stretched wire."""

SWAPPED, NEAR, AGREE = 9.0, 4.0, 8.0
"""mm that a drop whose two figures changed places is off at least; that it is then from its twins'; and that theirs
differ by at most.  Our own, no source: 9 times the figures' difference is what is off."""

FEW, SEVERAL, MANY, OFF_FEW, OFF_ALL, OFF_AGREED, APART = 2, 4, 5, 15.0, 12.5, 7.0, 1.6
"""So many twins whose drops agree tell what theirs is to be, and so many surely; so many how widely theirs differ; mm
that one is off a few, and off several, at least: 5/8 in and 1/2 in; and mm, and so many times as much as theirs differ,
that one is off more.  Our own, no source."""

CLEARLY, OFF_CLEARLY = 1.35, 8.5
"""So many times more or less than the most of several is a small drop that is off by fewer mm.  Our own, no source."""

FEWEST = 3
"""So many others tell what is usual in a job.  Our own, no source."""


def twin_doubts(job: Job, only: str = "") -> Iterator[Doubt]:
    """What is doubtful about frames of one size, and about the drops of one kind of hanger: of all, or of one frame."""
    known, frames = written(job), job.frames[:MOST_COMPARED]
    alike, kinds = defaultdict(list), defaultdict(list)
    for frame in frames:
        size = round(frame.width, 1), round(frame.height, 1)
        alike[(*size, frame.hanger.kind, frame.type)].append(frame)
        kinds[frame.hanger.kind, bool(frame.hanger.apart)].append(frame)
    doubted = set()
    for twins in alike.values():
        for doubt in (*_twin_drops(twins, known), *twin_sides(twins, known)):
            doubted.add(doubt.place)
            yield doubt
    for same in kinds.values():
        yield from (doubt for doubt in _alone(same, known, only) if doubt.place not in doubted)
    yield from _drop_as_depth(frames, known, only)
    yield from _copied(frames, job.unit)


def _beyond_its_sides(frame: Frame) -> bool:
    """True for plates at its sides: these are put as far down as one likes, and differ from those over its top."""
    return min(insets(frame)) < 0


def _twin_drops(twins: Sequence[Frame], known: Written) -> Iterator[Doubt]:
    """The drop that differs most from the middle one of all twins; of two, the second."""
    level = [frame for frame in twins if not _beyond_its_sides(frame)]
    measured = [(frame, place, drop) for frame in level for place, drop in drops(frame, known)]
    count = len({frame.id for frame, _, _ in measured})
    if count < 2:
        return
    middle = median(drop for _, _, drop in measured) if len(measured) > 2 else measured[0][2]
    room = max(TWIN_DROPS, OF_DROP * middle) if twins[0].hanger.traits.gives else STIFF
    if len(twins) >= MANY:
        room = max(room, SCATTERED * median(abs(drop - middle) for _, _, drop in measured))
    for frame, place, drop in measured:
        theirs = [drop for other, _, drop in measured if other.id != frame.id]
        sides = [drop for other, at, drop in measured if at != place and other.id == frame.id]
        swapped = (
            None if any(abs(drop - each) <= NEAR for each in sides) else _swapped(drop, theirs, known.unit_of(place))
        )
        alone = count > FEW and _stands_off(drop, theirs, count)
        if drop == middle or (abs(drop - middle) <= room and not swapped and not alone):
            continue
        others = [other.id for other, _, _ in measured if other.id != frame.id]
        likely = swapped or probably(drop, known.unit_of(place), Usual(middle - room, middle + room))
        yield Doubt(
            rule="doubtful-drop", place=place, shown=show(drop, known.unit),
            about=(frame.id, others[0]), uses=(frame_place(others[0], "drop"),),
            why=f"{show_both(abs(drop - middle), known.unit)} {'more' if drop > middle else 'less'} than that of frame "
            f"{others[0]}, of the same size",
            ask=likely.ask or (TAUT_AGAIN if frame.hanger.traits.on_wire else "Measure both again, from the top edge."),
            meant=likely.meant(place),
        )  # fmt: skip


def _stands_off(drop: float, others: Sequence[float], count: int) -> bool:
    """True for a drop that is off those of its twins, of `count` frames with its own, which agree."""
    differ, away = max(others) - min(others), _away(drop, others)
    off = OFF_ALL if count > SEVERAL else OFF_FEW
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
    if len(figures) != 2 or not figures.isdigit() or not agree or _away(drop, others) <= SWAPPED:
        return None
    meant = float(number.translate(str.maketrans(figures, figures[::-1]))) * MM[unit]
    near = min(others) - NEAR <= meant <= max(others) + NEAR
    return Reading(meant, "Did two figures change places? Then it is {}.", unit, unit) if near else None


UNEXPLAINED = 1.4
"""How much farther from all others a drop may be that is right on no other tape either: a frame of another make.  Our
own, no source."""


def _alone(frames: Sequence[Frame], known: Written, only: str) -> Iterator[Doubt]:
    """A drop that is more or less than all others of one kind of hanger, both by height and in mm."""
    measured = [(frame, place, drop) for frame in frames for place, drop in drops(frame, known)]
    for frame, place, drop in measured:
        if only not in ("", frame.id):
            continue
        others = [(drop, drop / other.height) for other, _, drop in measured if other is not frame]
        times = frame.hanger.traits.alone
        if not others or times is None:
            continue
        share, usual = drop / frame.height, median(part for _, part in others) * frame.height
        fits = Usual(usual / times[0], usual * times[0])
        as_theirs = Usual(min(usual, *(mm for mm, _ in others)) / times[0], fits.most)
        twice = [each for each in doubled_figure(drop, known.unit_of(place)) if as_theirs.holds(each.mm)]
        if len(others) < FEWEST and not twice:
            continue
        likely = twice[0] if twice else probably(drop, known.unit_of(place), fits)
        longer, shorter = (each * (1.0 if likely.ask else UNEXPLAINED) for each in times)
        more = drop > longer * max(mm for mm, _ in others) and share > longer * max(part for _, part in others)
        less = shorter * drop < min(mm for mm, _ in others) and shorter * share < min(part for _, part in others)
        if more or less:
            yield Doubt(
                rule="doubtful-drop", place=place, shown=show(drop, known.unit), about=(frame.id,),
                uses=(frame_place(frame.id, "height"),),
                why=f"{'more' if more else 'less'} than all other drops of this job, for its height too",
                ask=likely.ask or "Measure it again, from the top edge down.", meant=likely.meant(place),
            )  # fmt: skip


AMONG = 1.25
"""So many times less or more than the drops of its twins is a depth that may be one.  Our own, no source."""


def _drop_as_depth(frames: Sequence[Frame], known: Written, only: str) -> Iterator[Doubt]:
    """The one frame that has no drop, and the only one that has a depth, of about what the drops of its twins are."""
    undropped = [frame for frame in frames if not drops(frame, known)]
    deep = [frame for frame in frames if frame.depth is not None]
    if len(undropped) != 1 or deep != undropped or len(frames) < FEWEST or only not in ("", undropped[0].id):
        return
    frame, depth = undropped[0], undropped[0].depth
    twins = [each for each in frames if (each.width, each.height) == (frame.width, frame.height)]
    measured = [drop for each in twins for _, drop in drops(each, known)]
    if depth is not None and measured and min(measured) / AMONG <= depth <= max(measured) * AMONG:
        yield Doubt(
            rule="doubtful-drop", place=frame_place(frame.id, "depth"), shown=show(depth, known.unit),
            about=(frame.id,), uses=(frame_place(frame.id, "drop"),),
            why="and it has no drop, where all others have one and no depth", ask="Is it the drop?",
        )  # fmt: skip


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
