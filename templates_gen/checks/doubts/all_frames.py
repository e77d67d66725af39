"""Doubts about all frames of a job at once: sizes on another tape than the rest."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from statistics import median

from templates_gen.base.units import INCH, MM, show, show_both
from templates_gen.checks.doubts.doubt import Doubt, Written, frame_place
from templates_gen.checks.doubts.frames import EDGE, weight_by_area
from templates_gen.checks.doubts.other_tape import by_the_inch, in_tenths, no_inches, read_off_inches
from templates_gen.job.model import Frame, Job

BIG, TIGHT = 28 * INCH, 0.12
"""mm that the longer sides of frames are that may all be centimetres in a job of inches, and what part of a shorter
side their gap then is at most.  Our own, by the samples: they have 0.16 to 0.3."""

SMALL, LONGER, WIDE, AS_USUAL = 450.0, 700.0, 0.3, 0.22
"""mm, more where they are too heavy, and part of a shorter side, for frames that may all be inches in a job of
centimetres; and of the height, a drop that tells that they are not.  Likewise."""

PARTS = 25.0
"""mm, a gap that is tight on purpose, as between the parts of one picture.  Our own, no source."""

LITTLE_DROP, MUCH_DROP, DEEP_DROP, MUCH_WEIGHT = 0.065, 0.29, 0.345, 36.0
"""Of the height, of a taut wire's drop: with sides too large it is too little, with sides too small too much, or surely
too much; and kg/m² that hardly any frames weigh but for sides that are too small.  Our own, no source."""


def all_frames(job: Job, known: Written) -> Iterator[Doubt]:
    """All frames measured in the other system: each by itself could be right, but gap and drops tell."""
    frames, unit = job.frames, job.unit
    places = [frame_place(frame.id, side) for frame in frames[:1] for side in ("width", "height")]
    if unit == "mm" or len(frames) < 2 or any(known.explicit(place) for place in places):
        return
    longer = median(max(frame.width, frame.height) for frame in frames)
    share = max(job.group.gap_across, job.group.gap_down) / median(min(f.width, f.height) for f in frames)
    odd = sum(in_tenths(frame) for frame in frames) * 2 > len(frames)
    alone = all(in_tenths(frame) and frame.drop and not no_inches(frame.drop) for frame in frames)
    split = max(job.group.gap_across, job.group.gap_down) < PARTS
    large = longer > BIG and share < TIGHT and not split and not any(map(read_off_inches, frames))
    if unit == "in" and (alone or (large and (odd or 0.0 < _share_of_drops(frames) < LITTLE_DROP))):
        yield _all_in(job, "cm", MM["cm"] / INCH)
    inches = all(by_the_inch(frame) for frame in frames)
    heavy, sure = _heavy(frames)
    drop = _share_of_drops(frames)
    small, deep, wide = longer < SMALL, drop > MUCH_DROP, share > WIDE and not 0.0 < drop <= AS_USUAL
    told = _alike_and_unweighed(frames) and (drop > DEEP_DROP or (deep and share > WIDE))
    solid = any(frame.fixing.kind == "screw" for frame in frames)  # as reliefs of bronze or stone hang
    weighed = (heavy and deep and longer < LONGER) or (small and not solid and (sure or (heavy and wide)))
    if unit == "cm" and (weighed or (small and ((wide and inches) or (deep and inches) or told))):
        yield _all_in(job, "in", INCH / MM["cm"])


def _share_of_drops(frames: Sequence[Frame]) -> float:
    """Of their heights, the middle one of the drops of all wires; 0 where there are none."""
    shares = [frame.drop / frame.height for frame in frames if frame.drop and frame.hanger.traits.on_wire]
    return median(shares) if shares else 0.0


def _alike_and_unweighed(frames: Sequence[Frame]) -> bool:
    """True where no weight tells how large they are, and the drops are all about as deep for their height."""
    shares = [frame.drop / frame.height for frame in frames if frame.drop]
    return not any(map(weight_by_area, frames)) and max(shares, default=0.0) <= ONE_MAKE * min(shares, default=0.0)


ONE_MAKE = 1.3
"""So many times the least is the most of drops that are as one person makes them.  Our own, no source."""


def _heavy(frames: Sequence[Frame]) -> tuple[bool, bool]:
    """Whether frames are heavy for what they measure, and whether they surely are: small ones are mostly moulding."""
    masses = [(mass, EDGE / min(frame.width, frame.height)) for frame in frames if (mass := weight_by_area(frame))]
    heavy = bool(masses) and median(mass for mass, _ in masses) > MUCH_WEIGHT
    return heavy, heavy and all(mass > MUCH_WEIGHT + edge for mass, edge in masses)


def _all_in(job: Job, other: str, times: float) -> Doubt:
    first, unit = job.frames[0], job.unit
    size = f"{show(first.width * times, unit)} × {show(first.height * times, unit)}"
    return Doubt(
        rule="doubtful-size", place="all frames, width and height", shown=f"frame {first.id} "
        f"{show_both(first.width, unit)}", about=tuple(frame.id for frame in job.frames),
        uses=tuple(frame_place(first.id, side) for side in ("width", "height")),
        why=f"which goes ill with the gap of {show_both(job.group.gap_across, unit)}",
        ask=f"Are all frames measured in {other}? Then it is {size}.",
    )  # fmt: skip
