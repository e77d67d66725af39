"""Doubts about one frame by itself: its sides, its depth, what it weighs for its size, and its picture's shape."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.base.record import Record
from templates_gen.base.units import FINEST, KG, show, show_mass
from templates_gen.checks.doubts import usual
from templates_gen.checks.doubts.doubt import Doubt, Written, frame_place, shown_mass, swapped_sides, unusual, written
from templates_gen.job.model import Frame, Job

LIGHT, HEAVY = 1.8, 45.0
"""kg/m² of a framed piece.  A canvas has 2 to 4, glass of 2 mm alone 5 (EN 572-1: 2.5 kg/m² for each mm), a framed
mirror 20 to 35.  The limits are our own."""

GLAZED = 4.0
"""kg/m² at least where the glazing is glass: 2 mm of it, in a frame that is a little larger.  Our own."""

MIRRORS = frozenset(("mirror", "spiegel", "miroir", "espejo"))
"""What is of glass, by a word of its name.  Our own list, no source."""

BARE = 1.1
"""kg/m² at least where there is no glazing: a canvas on light bars.  Our own."""

SOLID, PAPER, NO_GLASS = 3.0, 0.25, 0.75
"""So many times as heavy may be what hangs on screws, a relief of bronze or stone; and kg/m² of bare paper or silk
between two slats, and of a large frame without glass.  Our own: bronze of 15 mm has 130, from memory."""

BANNER = 800.0
"""mm of a longer side from which a picture may be bare paper.  Our own, no source."""

SQUARE_METRE = 1e6
"""In mm²."""

EDGE = 2500.0
"""mm·kg/m²: so much more, divided by its shorter side, may a small frame weigh, which is mostly moulding.  Our own."""

MASSES = (("kg", "lb"), ("lb", "kg"), ("g", "kg"), ("kg", "g"), ("oz", "lb"), ("lb", "oz"))
"""The unit that a weight was written in, and the one it may have been meant in, the likeliest first."""

TENFOLD = ((10.0, "Is a figure missing?"), (0.1, "Is a decimal point missing?"))
"""So many times as much may have been meant."""


class OtherMass(Record, frozen=True):
    """What a weight was probably meant to be, so many `times` as much: as a question, and the unit it is then in."""

    ask: str = ""
    times: float = 1.0
    unit: str = ""

    def meant(self, frame: Frame) -> tuple[tuple[str, str], ...]:
        """What the frame's weight is to say; nothing where it is not known."""
        if not self.unit or frame.weight is None:
            return ()
        number = round(frame.weight * self.times / KG[self.unit], FINEST)
        return ((frame_place(frame.id, "weight"), f"{number:g} {self.unit}"),)


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


def _most_heavy(frame: Frame) -> float:
    """kg/m² that a frame hardly weighs more than."""
    most = HEAVY + EDGE / min(frame.width, frame.height)
    return SOLID * most if frame.fixing.kind == "screw" else most


def square_metres(frame: Frame) -> float:
    """How much of the wall a frame takes (m²)."""
    return frame.width * frame.height / SQUARE_METRE


def ratio(one: float, other: float) -> float:
    """How many times the smaller the larger is."""
    return max(one, other) / min(one, other)


def weight_by_area(frame: Frame) -> float | None:
    """What a frame weighs by its outside (kg/m²); None where its weight is not known, or only estimated."""
    if frame.weight is None or frame.estimated:
        return None
    return frame.weight / square_metres(frame)


def _weight(frame: Frame, known: Written) -> Iterator[Doubt]:
    by_area, unit = weight_by_area(frame), known.unit
    if by_area is None or frame.weight is None:
        return
    least, most = {"glass": GLAZED, "none": BARE}.get(frame.glazing, LIGHT), _most_heavy(frame)
    bare = frame.glazing == "none" or (not frame.glazing and frame.hanger.traits.by_hand == "teeth")
    least = min(least, BARE) if bare else least
    if usual.words_of(f"{frame.id} {frame.title} {frame.type}") & MIRRORS:
        least = max(least, GLAZED)
    if max(frame.width, frame.height) >= BANNER and least < GLAZED:
        least = PAPER if bare else NO_GLASS
    if least <= by_area <= most:
        return
    much = "less" if by_area < least else "more"
    likely = other_mass(by_area, 2 * LIGHT, HEAVY, known.mass_unit(frame.id))
    glazed = " and glass" if frame.glazing == "glass" and by_area > LIGHT else ""
    yield Doubt(
        rule="doubtful-weight", place=frame_place(frame.id, "weight"), shown=shown_mass(frame.weight, unit),
        about=(frame.id,), uses=(frame_place(frame.id, "width"), frame_place(frame.id, "height")),
        why=f"{much} than frames of this size{glazed} weigh ({_range(frame, least, most, unit)})",
        ask=likely.ask or "Weigh it again. Are its width and height right?", meant=likely.meant(frame),
    )  # fmt: skip


def _range(frame: Frame, least: float, most: float, unit: str) -> str:
    least, most = least * square_metres(frame), most * square_metres(frame)
    return f"{show_mass(least, unit)} to {show_mass(most, unit)}"


def other_mass(found: float, least: float, most: float, unit: str) -> OtherMass:
    """How a weight was meant otherwise, in the first way that lies between these; without a question for none.

    `unit` is what it was written in, "" where that is not known: nobody mistakes ounces for pounds in kilograms.
    """
    units = [
        OtherMass(f"Is it in {meant}, not {was}?", KG[meant] / KG[was], meant if unit else "")
        for was, meant in MASSES
        if unit in ("", was)
    ]
    readings = (*units, *(OtherMass(ask, times, unit) for times, ask in TENFOLD))
    return next((each for each in readings if least <= found * each.times <= most), OtherMass())


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
        ask="Are width and height the other way round?", meant=swapped_sides(frame, unit),
    )  # fmt: skip
