"""Doubts about a number in inches that no tape in inches shows, in a job whose other ones are on it."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.base.record import Record
from templates_gen.base.units import INCH
from templates_gen.base.words import feature_place
from templates_gen.checks.doubts.doubt import Doubt, Written, frame_place, written
from templates_gen.checks.doubts.hangers import drops, sides
from templates_gen.checks.doubts.other_tape import typed_in_tenths
from templates_gen.checks.doubts.readings import other_readings
from templates_gen.job.model import Frame, Job

WHOLE = 0.01
"""in; a number that is nearer to a whole one tells nothing of its tape.  Our own, no source."""

SOME = 2
"""So many lengths in tenths may be one frame's sides.  Our own, no source."""


class Typed(Record, frozen=True):
    """A length without a unit of its own: the rule that it is doubted by, its field, its frames, and mm."""

    rule: str
    place: str
    about: tuple[str, ...]
    mm: float


def off_tape(job: Job) -> Iterator[Doubt]:
    """Tenths of an inch where all else is in halves to sixteenths: of centimetres, mostly.

    Whoever types in tenths throughout has worked them out, and nothing is asked.
    """
    if job.unit != "in":
        return
    known = written(job)
    typed = [each for each in _typed(job, known) if not known.explicit(each.place)]
    parted = {each.mm for each in typed if abs(each.mm / INCH - round(each.mm / INCH)) > WHOLE}
    tenths = {mm for mm in parted if typed_in_tenths(mm)}
    worked_out = len(tenths) > SOME and 2 * len(tenths) > len(parted)
    for each in () if worked_out else typed:
        # a small length may mean nothing in any other unit
        likely = next(other_readings(each.mm, "in"), None) if each.mm in tenths else None
        if likely is not None:
            yield Doubt(
                rule=each.rule, place=each.place, shown=f"{each.mm / INCH:.4g} in", about=each.about,
                why="in tenths, which no tape in inches shows", ask=likely.ask, meant=likely.meant(each.place),
            )  # fmt: skip


def _typed(job: Job, known: Written) -> Iterator[Typed]:
    wall, group, height = job.wall, job.group, job.group.height
    yield Typed("doubtful-wall", "wall, width", (), wall.width)
    yield Typed("doubtful-wall", "wall, height", (), wall.height)
    for at, feature in enumerate(wall.features, 1):
        rect = feature.rect
        lengths = (("left", rect.x0), ("bottom", rect.y0), ("width", rect.width), ("height", rect.height))
        for name, mm in lengths:
            yield Typed("doubtful-feature", f"{feature_place(at, feature.name)}, {name}", (), mm)
    names = ("gap",) if group.gap_across == group.gap_down else ("gap_across", "gap_down")
    for name, mm in zip(names, (group.gap_across, group.gap_down), strict=False):
        yield Typed("doubtful-gap", f"group, {name}", (), mm)
    yield Typed("doubtful-place", f"group, height, {'by' if height.by == 'above' else height.by}", (), height.at)
    for frame in job.frames:
        yield from _of_frame(frame, known)


def _of_frame(frame: Frame, known: Written) -> Iterator[Typed]:
    about = (frame.id,)
    for name, mm in (("width", frame.width), ("height", frame.height)):
        yield Typed("doubtful-size", frame_place(frame.id, name), about, mm)
    for place, drop in drops(frame, known):
        yield Typed("doubtful-drop", place, about, drop)
    if frame.hanger.left is not None and frame.hanger.right is not None:
        for name, mm in sides(frame, known):
            yield Typed("doubtful-hanger", frame_place(frame.id, "hanger", name), about, mm)
