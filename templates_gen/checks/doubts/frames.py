"""Doubts about one frame by itself: its sides, its depth, what it weighs for its size, and its picture's shape."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.base.units import KG, show, show_mass
from templates_gen.checks.doubts import usual
from templates_gen.checks.doubts.doubt import Doubt, Written, frame_place, shown_mass, unusual, written
from templates_gen.job.model import Frame, Job

LIGHT, HEAVY = 1.8, 55.0
"""kg/m² of a framed piece.  A canvas has 2 to 4, glass of 2 mm alone 5 (EN 572-1: 2.5 kg/m² for each mm), a framed
mirror 20 to 35.  The limits are our own."""

GLAZED = 4.0
"""kg/m² at least where the glazing is glass: 2 mm of it, in a frame that is a little larger.  Our own."""

EDGE = 2500.0
"""mm·kg/m²: so much more, divided by its shorter side, may a small frame weigh, which is mostly moulding.  Our own."""

MASSES = (("kg", "lb"), ("lb", "kg"), ("g", "kg"), ("kg", "g"), ("oz", "lb"), ("lb", "oz"))
"""The unit that a weight was written in, and the one it may have been meant in, the likeliest first."""

TENFOLD = ((10.0, "Is a figure missing?"), (0.1, "Is a decimal point missing?"))
"""So many times as much may have been meant."""


def frame_doubts(job: Job) -> Iterator[Doubt]:
    """What is doubtful about each frame by itself."""
    known = written(job)
    for frame in job.frames:
        yield from _sides(frame, known)
        yield from _weight(frame, known)
        yield from _turned(frame, job.unit)


def _sides(frame: Frame, known: Written) -> Iterator[Doubt]:
    about = (frame.id,)
    for name, mm in (("width", frame.width), ("height", frame.height)):
        place = frame_place(frame.id, name)
        yield from unusual("doubtful-size", place, mm, usual.FRAME_SIDE, known, "a frame", about)
    parts = [
        ("depth", frame.depth, usual.DEPTH, "a frame's depth"),
        ("moulding, face", frame.face, usual.FACE, "a moulding"),
    ]
    parts += [("mat", shown, usual.MAT, "what shows of a mat") for shown in sorted(set(frame.mat or ()))]
    for name, length, expected, what in parts:
        if length is not None:
            yield from unusual("doubtful-size", frame_place(frame.id, name), length, expected, known, what, about)


def most_heavy(frame: Frame) -> float:
    """kg/m² that a frame hardly weighs more than."""
    return HEAVY + EDGE / min(frame.width, frame.height)


def weight_by_area(frame: Frame) -> float | None:
    """What a frame weighs by its outside (kg/m²); None where its weight is not known, or only estimated."""
    if frame.weight is None or frame.estimated:
        return None
    return frame.weight / (frame.width * frame.height * 1e-6)


def _weight(frame: Frame, known: Written) -> Iterator[Doubt]:
    by_area, unit = weight_by_area(frame), known.unit
    if by_area is None or frame.weight is None:
        return
    least, most = GLAZED if frame.glazing == "glass" else LIGHT, most_heavy(frame)
    if least <= by_area <= most:
        return
    much = "less" if by_area < least else "more"
    ask = other_mass(by_area, 2 * LIGHT, HEAVY, known.mass_unit(frame.id))
    glazed = " and glass" if frame.glazing == "glass" and by_area > LIGHT else ""
    yield Doubt(
        rule="doubtful-weight", place=frame_place(frame.id, "weight"), shown=shown_mass(frame.weight, unit),
        about=(frame.id,), uses=(frame_place(frame.id, "width"), frame_place(frame.id, "height")),
        why=f"{much} than frames of this size{glazed} weigh ({_range(frame, least, most, unit)})",
        ask=ask or "Weigh it again. Are its width and height right?",
    )  # fmt: skip


def _range(frame: Frame, least: float, most: float, unit: str) -> str:
    area = frame.width * frame.height * 1e-6
    return f"{show_mass(least * area, unit)} to {show_mass(most * area, unit)}"


def other_mass(found: float, least: float, most: float, unit: str) -> str:
    """The question whether a weight was meant otherwise, in the first way that lies between these; "" for none.

    `unit` is what it was written in, "" where that is not known: nobody mistakes ounces for pounds in kilograms.
    """
    units = ((KG[meant] / KG[was], f"Is it in {meant}, not {was}?") for was, meant in MASSES if unit in ("", was))
    return next((ask for factor, ask in (*units, *TENFOLD) if least <= found * factor <= most), "")


UPRIGHT = 1.1
"""A side this many times the other makes a picture upright or wide; nearer to square it may be framed either way.
Our own, no source."""


def _turned(frame: Frame, unit: str) -> Iterator[Doubt]:
    """An upright picture in a wide frame, or the other way round."""
    if frame.image_size is None:
        return
    across, up = frame.image_size
    picture, outside = up / across, frame.height / frame.width
    if max(picture, 1 / picture) < UPRIGHT or max(outside, 1 / outside) < UPRIGHT or (picture > 1) == (outside > 1):
        return
    stands, lies = ("upright", "wide") if outside > 1 else ("wide", "upright")
    yield Doubt(
        rule="doubtful-shape", place=frame_place(frame.id, "width"), shown=show(frame.width, unit),
        about=(frame.id,), uses=(frame_place(frame.id, "height"), frame_place(frame.id, "image")),
        why=f"so the frame is {stands}, but its image is {lies}",
        ask="Are width and height the other way round?",
    )  # fmt: skip
