"""Doubts about what a frame weighs beside the others of its job: another unit, a decimal point out of place."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from statistics import median

from templates_gen.base.units import KG
from templates_gen.checks.doubts.doubt import Doubt, Written, frame_place, shown_mass, written
from templates_gen.checks.doubts.fellows import MASS_APART, Others, each_beside, near, uses_of
from templates_gen.checks.doubts.frames import OtherMass, other_mass, ratio, square_metres, weight_by_area
from templates_gen.job.model import Frame, Job

MASS_MIXED, MASS_SURE, MASS_TWIN = 1.6, 2.15, 1.95
"""So many times more or less by area than all others is a weight in another system than theirs that stands alone; and
one where theirs are alike; and of two of one size and make.  A pound is 2.2 times less than a kilogram.  Our own, no
source."""

MASS_ALIKE = 1.3
"""The heaviest of several, by area, is so many times the lightest where they are alike.  Our own, no source."""

AS_LARGE = 3.0
"""So many times the smallest, by area, is the largest of frames that weigh by area alone: small ones are mostly
moulding.  Our own, no source."""

ASKED = 1.5
"""How many times lighter or heavier than its fellows a weight may be to be what was meant.  Our own, no source."""


def fellow_weights(job: Job, only: str = "") -> Iterator[Doubt]:
    """What is doubtful about a frame's weight beside those of all others; about one alone, if it is named."""
    known = written(job)
    for frame, others in each_beside(job, only):
        yield from _weighs_alone(frame, others, known)
    yield from _two_systems(job, known)


def _two_systems(job: Job, known: Written) -> Iterator[Doubt]:
    """The fewer weights of a job in kilograms and in pounds, but those that are nearer to the others by area, or to
    those of their own size, than they would be on the other scale: who weighs uses one."""
    metric = [frame for frame in job.frames if known.metric_mass(frame.id) is True]
    pounds = [frame for frame in job.frames if known.metric_mass(frame.id) is False]
    fewer, more = sorted((pounds, metric), key=len)
    for frame in fewer if more else ():
        own, other = weight_by_area(frame), OTHER_SCALE[known.mass_unit(frame.id)]
        times = KG[other] / KG[known.mass_unit(frame.id)]
        twins = [each for each in more if (each.width, each.height) == (frame.width, frame.height)]
        theirs = [mass for each in twins or more if (mass := weight_by_area(each))]
        if own and theirs and ratio(own, median(theirs)) <= ratio(own * times, median(theirs)):
            continue
        likely = OtherMass(f"Is it in {other}?", times, other)
        yield Doubt(
            rule="doubtful-weight", place=frame_place(frame.id, "weight"), about=(frame.id,),
            shown=shown_mass(frame.weight or 0.0, known.unit), uses=(frame_place(more[0].id, "weight"),),
            why=f"in {known.mass_unit(frame.id)}, but frame {more[0].id} is weighed in {known.mass_unit(more[0].id)}",
            ask=likely.ask, meant=likely.meant(frame),
        )  # fmt: skip


OTHER_SCALE = {"kg": "lb", "g": "oz", "lb": "kg", "oz": "g"}
"""The unit that a number is read in on the other scale."""


def mass_room(frame: Frame, others: Sequence[Frame], masses: Sequence[float], known: Written) -> float:
    """So many times more or less than these masses of the others the frame's own may be."""
    own, theirs = known.metric_mass(frame.id), {known.metric_mass(other.id) for other in others}
    if own is not None and theirs == {not own}:
        return MASS_MIXED
    if len(others) == 1 and (frame.width, frame.height) == (others[0].width, others[0].height):
        return MASS_TWIN if (frame.hanger.kind, frame.depth) == (others[0].hanger.kind, others[0].depth) else MASS_APART
    enough = len(masses) > (1 if len({(other.width, other.height) for other in (frame, *others)}) == 1 else 2)
    areas = [square_metres(each) for each in (frame, *others)]
    enough = enough and max(areas) <= AS_LARGE * min(areas)
    return MASS_SURE if enough and max(masses) <= MASS_ALIKE * min(masses) else MASS_APART


def glazed_alike(one: Frame, other: Frame) -> bool:
    """False for a canvas beside glass: what they weigh is not compared."""
    return not one.glazing or not other.glazing or one.glazing == other.glazing


def _weighs_alone(frame: Frame, others: Others, known: Written) -> Iterator[Doubt]:
    """A weight unlike that of its twins, or by area of all others; of but two twins the second's."""
    weighed = [other for other in others.frames if weight_by_area(other) and glazed_alike(frame, other)]
    twins = [other for other in weighed if (other.width, other.height) == (frame.width, frame.height)]
    own = weight_by_area(frame)
    if own is None or frame.weight is None:
        return
    for those in (twins, weighed if len(twins) < 2 else []):
        theirs = [mass for other in those if (mass := weight_by_area(other))]
        second = those is twins and len(theirs) == 1 and others.frames.index(those[0]) < others.at
        if not (len(theirs) > 1 or second) or near(own, theirs, mass_room(frame, those, theirs, known)):
            continue
        likely = other_mass(own, min(theirs) / ASKED, max(theirs) * ASKED, known.mass_unit(frame.id))
        if those is weighed and not likely.ask and near(own, theirs, MASS_APART):
            continue
        usual = median(theirs) * square_metres(frame)
        yield Doubt(
            rule="doubtful-weight", place=frame_place(frame.id, "weight"), shown=shown_mass(frame.weight, known.unit),
            about=(frame.id,), uses=uses_of(frame, "width", "height"),
            why=f"where {'the others' if len(those) > 1 else f'frame {those[0].id}'} would weigh about "
            f"{shown_mass(usual, known.unit)} at its size",
            ask=likely.ask or "Weigh it again.", meant=likely.meant(frame),
        )  # fmt: skip
        return
