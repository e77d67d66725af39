"""Doubts about frames that ought to be alike: drops unlike those of twins or of all others, weights, and copies."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from statistics import median

from templates_gen.findings.doubt import Doubt, Usual, Written, frame_place, probably, shown_mass, written
from templates_gen.findings.doubts_fellows import MOST_COMPARED
from templates_gen.findings.doubts_hangers import SLACK, drops
from templates_gen.model import Frame, Job
from templates_gen.units import show, show_both

TWIN_DROPS = 0.07, 12.0, 24.0
"""Twins' drops differ by at most this share of their height, but never less or more than so many mm.  Our own, no
source: wires of one make are cut to one length, and 1 in is not a stretched wire."""

TWIN_WEIGHT = 1.8
"""So many times heavier than its twin.  A kilogram is 2.2 times a pound.  Our own, no source."""

ALONE = {"wire": (1.4, 1.7), "rings": (1.8, 2.2)}
"""So many times more, or less, than those of all others of one kind is a drop that stands alone, by its share of the
height and in mm.  Our own, no source."""

FEWEST = 3
"""So many others tell what is usual in a job.  Our own, no source."""


def twin_doubts(job: Job) -> Iterator[Doubt]:
    """What is doubtful about frames of one size, and about the drops of one kind of hanger."""
    known, frames = written(job), job.frames[:MOST_COMPARED]
    alike, kinds = defaultdict(list), defaultdict(list)
    for frame in frames:
        size = round(frame.width, 1), round(frame.height, 1)
        alike[(*size, frame.hanger.kind)].append(frame)
        kinds[frame.hanger.kind, bool(frame.hanger.apart)].append(frame)
    doubted = set()
    for twins in alike.values():
        for doubt in (*_twin_drops(twins, known), *_twin_weights(twins, job.unit)):
            doubted.add(doubt.place)
            yield doubt
    for same in kinds.values():
        yield from (doubt for doubt in _alone(same, known) if doubt.place not in doubted)
    yield from _copied(frames, job.unit)


def _twin_drops(twins: Sequence[Frame], known: Written) -> Iterator[Doubt]:
    """The drop that differs most from the middle one of all twins; of two, the second."""
    measured = [(frame, place, drop) for frame in twins for place, drop in drops(frame, known)]
    if len({frame.id for frame, _, _ in measured}) < 2:
        return
    share, least, most = TWIN_DROPS
    room = max(least, min(most, share * twins[0].height))
    middle = median(drop for _, _, drop in measured) if len(measured) > 2 else measured[0][2]
    for frame, place, drop in measured:
        if abs(drop - middle) <= room:
            continue
        others = [other.id for other, _, _ in measured if other.id != frame.id]
        ask = probably(drop, known.unit_of(place), Usual(middle - room, middle + room, 0.0, 0.0))
        yield Doubt(
            rule="doubtful-drop", place=place, shown=show(drop, known.unit),
            about=(frame.id, others[0]), uses=(frame_place(others[0], "drop"),),
            why=f"{show_both(abs(drop - middle), known.unit)} {'more' if drop > middle else 'less'} than that of frame "
            f"{others[0]}, of the same size",
            ask=ask or (SLACK if frame.hanger.kind == "wire" else "Measure both again, from the top edge."),
        )  # fmt: skip


def _twin_weights(twins: Sequence[Frame], unit: str) -> Iterator[Doubt]:
    weighed = [(frame, frame.weight) for frame in twins if frame.weight and not frame.estimated]
    if len(weighed) < 2:
        return
    middle = median(weight for _, weight in weighed) if len(weighed) > 2 else weighed[0][1]
    for frame, weight in weighed:
        if not middle / TWIN_WEIGHT <= weight <= middle * TWIN_WEIGHT:
            other = next(one.id for one, _ in weighed if one is not frame)
            yield Doubt(
                rule="doubtful-weight", place=frame_place(frame.id, "weight"), about=(frame.id, other),
                shown=shown_mass(weight, unit), uses=(frame_place(other, "weight"),),
                why=f"but frame {other}, of the same size, weighs {shown_mass(middle, unit)}",
                ask="Is one of them in kg and the other in lb?",
            )  # fmt: skip


def _alone(frames: Sequence[Frame], known: Written) -> Iterator[Doubt]:
    """A drop that is more or less than all others of one kind of hanger, both by height and in mm."""
    measured = [(frame, place, drop) for frame in frames for place, drop in drops(frame, known)]
    for frame, place, drop in measured:
        others = [(drop, drop / other.height) for other, _, drop in measured if other is not frame]
        if len(others) < FEWEST or frame.hanger.kind not in ALONE:
            continue
        share, (longer, shorter) = drop / frame.height, ALONE[frame.hanger.kind]
        more = drop > longer * max(mm for mm, _ in others) and share > longer * max(part for _, part in others)
        less = shorter * drop < min(mm for mm, _ in others) and shorter * share < min(part for _, part in others)
        if more or less:
            usual = median(part for _, part in others) * frame.height
            fits = Usual(usual / longer, usual * longer, 0.0, 0.0)
            yield Doubt(
                rule="doubtful-drop", place=place, shown=show(drop, known.unit), about=(frame.id,),
                uses=(frame_place(frame.id, "height"),),
                why=f"{'more' if more else 'less'} than all other drops of this job, for its height too",
                ask=probably(drop, known.unit_of(place), fits) or "Measure it again, from the top edge down.",
            )  # fmt: skip


def _copied(frames: Sequence[Frame], unit: str) -> Iterator[Doubt]:
    """A frame that was copied and only its id changed: title or image, size and drop are another's."""
    first: dict[object, Frame] = {}
    titles = [frame.title for frame in frames]
    for frame in frames:
        named = frame.title and titles.count(frame.title) < max(len(frames), 3)
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
