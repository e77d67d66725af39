"""Doubts about one frame beside the others of its job: alone in another unit, turned, or unlike its twin."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from templates_gen.base.record import Record
from templates_gen.base.units import exact, show
from templates_gen.checks.doubts.doubt import Doubt, Written, frame_place, swapped_sides, written
from templates_gen.checks.doubts.frames import ratio, weight_by_area
from templates_gen.checks.doubts.other_tape import typed_as
from templates_gen.checks.doubts.readings import Reading, doubled_figure, other_readings, swapped_figures, tenfold
from templates_gen.job.model import Frame, Job

MOST_COMPARED = 400
"""Frames that are compared with each other: it takes a tenth of a second.  Our own, no source."""

ALONE, UNLIKE = 1.4, 1.15
"""So many times larger or smaller than the next of the others is a frame that stands alone, if its drop or its weight
says so too; and one that is no other's size, but is when it is read otherwise.  Our own, no source."""

AMONG = 1.25
"""A size that is read otherwise is among the others when it is not more than this times outside them.  Our own."""

EXACT = 0.012
"""Of a side that two sizes may differ by to be one: a measure rounded in another unit.  Our own, no source."""

LONG, PLAIN = 2.2, 1.7
"""Sides of one frame: more than so many times, and less than so many times, the other.  Most frames are plain: 4:5,
3:4, 5:7, 2:3 are 1.25 to 1.5.  Our own, no source."""

SWAPPED = 1.2
"""So many times larger or smaller a side is with two figures the other way round, where that is looked for: frames of
nearly one size there are many.  Our own, no source."""

MASS_APART = 3.2
"""So many times more or less by area than all others is a weight that stands alone.  Our own, no source."""


class Others(Record, frozen=True):
    """The other frames of a job, and what their own measures are beside one frame, which is number `at` of them."""

    frames: tuple[Frame, ...]
    at: int = 0

    def between(self, name: str) -> tuple[float, float]:
        """The least and the most of one of their sides (mm)."""
        sides = [getattr(frame, name) for frame in self.frames]
        return min(sides), max(sides)

    def hold(self, width: float, height: float) -> bool:
        """True for a size that is about as theirs."""
        return all(
            low / AMONG <= side <= high * AMONG
            for side, (low, high) in ((width, self.between("width")), (height, self.between("height")))
        )

    def has(self, width: float, height: float) -> bool:
        """True for a size that one of them has, as far as rounding tells."""
        for other in self.frames:  # written out, for it is asked of every frame and every way to read its size
            if abs(width - other.width) <= EXACT * other.width and abs(height - other.height) <= EXACT * other.height:
                return True
        return False


def _same(one: float, two: float) -> bool:
    return abs(one - two) <= EXACT * two


def fellow_doubts(job: Job, only: str = "") -> Iterator[Doubt]:
    """What is doubtful about a frame's size beside all others; about one alone, if it is named."""
    known = written(job)
    for frame, others in each_beside(job, only):
        size = list(_other_unit(frame, others, known))
        yield from size or _one_side(frame, others, known)
        yield from _quarter_turn(frame, others, job)


def each_beside(job: Job, only: str) -> Iterator[tuple[Frame, Others]]:
    """Every frame with the others, or the one that is named with them."""
    frames = job.frames[:MOST_COMPARED]
    for at, frame in enumerate(frames if len(frames) > 1 else ()):
        if only in ("", frame.id):
            yield frame, Others((*frames[:at], *frames[at + 1 :]), at)


def uses_of(frame: Frame, *names: str) -> tuple[str, ...]:
    """The places of a frame's fields that a doubt rests on."""
    return tuple(frame_place(frame.id, name) for name in names)


def _other_unit(frame: Frame, others: Others, known: Written) -> Iterator[Doubt]:
    """Both sides in another unit: a frame that stands alone, and among the others when it is read otherwise."""
    place = frame_place(frame.id, "width")
    away = _nearest(frame.width * frame.height, others)
    if known.explicit(place) or away <= UNLIKE:
        return
    readings = (*other_readings(frame.width, known.unit_of(place)), *tenfold(frame.width, known.unit_of(place)))
    for reading in readings:
        times = reading.mm / frame.width
        width, height = frame.width * times, frame.height * times
        nearer = typed_as(frame, known.unit) and _nearest(width * height, others) < away
        fits = away > ALONE and (
            (others.hold(width, height) and _fits_better(frame, others, times))
            or (nearer and _weighs_as(frame, others, times))
        )
        if fits or others.has(width, height):
            yield Doubt(
                rule="doubtful-size", place=place, shown=show(frame.width, known.unit), about=(frame.id,),
                uses=uses_of(frame, "height"),
                why=f"and {show(frame.height, known.unit)} high, which is unlike the other frames "
                f"({_sizes(others.frames, known.unit)})",
                ask=reading.ask, meant=_both_sides(frame, reading, known),
            )  # fmt: skip
            return


def _nearest(area: float, others: Others) -> float:
    """So many times larger or smaller is the nearest of the others than a square of this area (mm²), by its side."""
    return math.sqrt(min(max(area / theirs, theirs / area) for theirs in (f.width * f.height for f in others.frames)))


def _both_sides(frame: Frame, reading: Reading, known: Written) -> tuple[tuple[str, str], ...]:
    """Width and height read likewise; nothing where the height has a unit of its own."""
    place = frame_place(frame.id, "height")
    times, unit = reading.mm / frame.width, reading.text.rpartition(" ")[2]
    if known.explicit(place):
        return ()
    return (*reading.meant(frame_place(frame.id, "width")), (place, exact(frame.height * times, unit)))


def _sizes(frames: Sequence[Frame], unit: str) -> str:
    sides = sorted({(frame.width, frame.height) for frame in frames}, key=lambda side: side[0] * side[1])
    shown = list(dict.fromkeys(f"{show(width, unit)} × {show(height, unit)}" for width, height in sides))
    return " to ".join(dict.fromkeys((shown[0], shown[-1])))


def _fits_better(frame: Frame, others: Others, times: float) -> bool:
    """True where drop or weight speak for the size being `times` what is given: as it is they are unlike all others',
    so they are like them."""
    alike = [other for other in others.frames if other.hanger.kind == frame.hanger.kind]
    shares = [drop / other.height for other in alike for drop in drops_of(other)]
    own_drops = [drop / frame.height for drop in drops_of(frame)]
    told = frame.hanger.traits.by_height  # a slot's or a tooth's drop is no part of the height
    if told and own_drops and shares and not near(own_drops[0], shares, DROP_APART):
        return near(own_drops[0] / times, shares, DROP_APART)
    masses = [mass for other in others.frames if (mass := weight_by_area(other))]
    own = weight_by_area(frame)
    if own and masses and not near(own, masses, MASS_APART):
        return near(own / times**2, masses, MASS_APART)
    return False


def _weighs_as(frame: Frame, others: Others, times: float) -> bool:
    """False for a frame whose weight tells that its size is not `times` what is given."""
    own, masses = weight_by_area(frame), [mass for other in others.frames if (mass := weight_by_area(other))]
    return not own or not masses or near(own / times**2, masses, MASS_APART)


DROP_APART = 1.5
"""So many times more or less of the height than all others' is a drop that stands alone.  Our own, no source."""


def near(value: float, others: Sequence[float], room: float) -> bool:
    """True for a value that is no more than so many times (`room`) outside those of the others."""
    return min(others) / room <= value <= max(others) * room


def _one_side(frame: Frame, others: Others, known: Written) -> Iterator[Doubt]:
    """One side that makes the size another's when it is read otherwise; or a long frame among plain ones, which is
    plain and among them with its decimal point elsewhere."""
    if others.has(frame.width, frame.height):
        return
    long = ratio(frame.width, frame.height) > LONG
    among = long and not any(ratio(other.width, other.height) > PLAIN for other in others.frames)
    for name in ("width", "height"):
        place = frame_place(frame.id, name)
        unit, mm = known.unit_of(place), getattr(frame, name)
        shifted = tuple(tenfold(mm, unit))
        swapped = tuple(each for each in swapped_figures(mm, unit) if ratio(each.mm, mm) > SWAPPED)
        figures = (*shifted, *swapped, *doubled_figure(mm, unit))
        for reading in figures if known.explicit(place) else (*other_readings(mm, unit), *figures):
            width, height = (reading.mm, frame.height) if name == "width" else (frame.width, reading.mm)
            plain = ratio(width, height) < PLAIN
            likely = among and plain and reading in shifted  # nobody takes the other tape for one side alone
            trusted = reading not in swapped or (long and plain)
            if (trusted and others.has(width, height)) or (likely and others.hold(width, height)):
                yield Doubt(
                    rule="doubtful-size",
                    place=place,
                    shown=show(mm, known.unit),
                    about=(frame.id,),
                    uses=uses_of(frame, "width", "height"),
                    why=f"which makes it {ratio(frame.width, frame.height):.1f} times as {_long(frame)}, unlike the "
                    "other frames",
                    ask=reading.ask,
                    meant=reading.meant(place),
                )
                return


def _long(frame: Frame) -> str:
    return "wide as high" if frame.width > frame.height else "high as wide"


NO_SQUARE = 1.08
"""A side so many times the other is longer.  Our own, no source."""


def _quarter_turn(frame: Frame, others: Others, job: Job) -> Iterator[Doubt]:
    """The one frame on its side in a grid, or around something, of frames that all stand; or the one of its type."""
    whole = others.frames if job.group.arrangement in ("grid", "around") else ()
    of_type = [one for one in others.frames if frame.type and one.type == frame.type]
    for alike, which in ((whole, "of the group"), (of_type, f'of type "{frame.type}"')):
        turned_all = all(_same(one.width, frame.height) and _same(one.height, frame.width) for one in alike)
        first = alike is of_type and len(alike) == 1 and others.frames.index(alike[0]) >= others.at
        enough = len(alike) > 1 or (first and _hang_alike(frame, alike[0]))
        if enough and turned_all and ratio(frame.width, frame.height) > NO_SQUARE:
            yield turned(frame, job.unit, f"while all others {which} stand the other way")
            return


def _hang_alike(one: Frame, other: Frame) -> bool:
    """True for two with the weight, and about the drop, of each other."""
    mine, theirs = drops_of(one), drops_of(other)
    return one.weight == other.weight and bool(mine and theirs) and near(mine[0], theirs, OF_TYPE)


OF_TYPE = 1.1
"""So many times more or less is a drop that a frame of the same type may have.  Our own, no source."""


def drops_of(frame: Frame) -> list[float]:
    """The drops of a frame that are known (mm): of its two sides, or its own."""
    sides = [drop for drop in (frame.hanger.drop_left, frame.hanger.drop_right) if drop is not None]
    return sides or ([] if frame.drop is None else [frame.drop])


def turned(frame: Frame, unit: str, why: str) -> Doubt:
    """The doubt whether a frame's width and height changed places."""
    return Doubt(
        rule="doubtful-shape", place=frame_place(frame.id, "width"), shown=show(frame.width, unit), about=(frame.id,),
        uses=uses_of(frame, "height"), why=f"and {show(frame.height, unit)} high, {why}",
        ask="Are width and height the other way round?", meant=swapped_sides(frame, unit),
    )  # fmt: skip
