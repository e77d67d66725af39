"""Where the studs of a wall are, as far as they were measured.  All in mm from the wall's left end.

Nothing is guessed: the usual spacing counts from the framing's corner, which no one sees from inside the room, so a
stud is only where one was measured, and where a measured spacing puts the next ones.
"""

from __future__ import annotations

import math

from templates_gen.geometry import TOLERANCE
from templates_gen.model import Studs, Wall
from templates_gen.record import Record


class NearStud(Record, frozen=True):
    """The stud nearest to a point: its centre, how far right of the point it is (left: negative), and if it is hit."""

    centre: float
    off: float
    hit: bool


def known(studs: Studs | None) -> bool:
    """True when a first centre and the spacing were both measured."""
    return studs is not None and studs.first is not None and studs.confirmed


def centres(studs: Studs | None, start: float, end: float) -> tuple[float, ...]:
    """The centres from `start` to `end`, from the left; none when they are not known."""
    if studs is None or studs.first is None or not studs.confirmed:
        return ()
    least = math.ceil((start - studs.first - TOLERANCE) / studs.spacing)
    most = math.floor((end - studs.first + TOLERANCE) / studs.spacing)
    return tuple(studs.first + number * studs.spacing for number in range(least, most + 1))


def near_stud(x: float, wall: Wall) -> NearStud | None:
    """The stud of the wall nearest to x; None when the studs are not known or the wall has none."""
    studs = wall.studs
    found = centres(studs, 0.0, wall.width)
    if studs is None or not found:
        return None
    centre = min(found, key=lambda stud: abs(stud - x))
    return NearStud(centre, centre - x, abs(centre - x) <= studs.width / 2 + TOLERANCE)


def on_stud(x: float, wall: Wall) -> bool | None:
    """True when x is within half a stud's width of its centre; None where that is not known."""
    studs = wall.studs
    if studs is None or studs.first is None:
        return None
    if abs(x - studs.first) <= studs.width / 2 + TOLERANCE:
        return True  # the measured one, whatever the spacing
    near = near_stud(x, wall)
    return None if near is None else near.hit
