"""Where the studs of a wall are, as far as they were measured.  All in mm from the wall's left end.

Nothing is guessed: the usual spacing counts from the framing's corner, which no one sees from inside the room, so a
stud is only where one was measured, and where a measured spacing puts the next ones.
"""

from __future__ import annotations

import math

from templates_gen.base.geometry import TOLERANCE, exceeds
from templates_gen.job.model import Studs, Wall


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


def nearest_stud(x: float, wall: Wall) -> float | None:
    """The centre of the wall's stud nearest to x; None when the studs are not known or the wall has none."""
    return min(centres(wall.studs, wall.rect.x0, wall.rect.x1), key=lambda centre: abs(centre - x), default=None)


def on_stud(x: float, wall: Wall) -> bool | None:
    """True when x is within half a stud's width of its centre; None where that is not known."""
    studs = wall.studs
    if studs is None or studs.first is None:
        return None
    near = nearest_stud(x, wall)
    # the measured one is one, whatever the spacing
    if any(not exceeds(abs(x - centre), studs.width / 2) for centre in (studs.first, near) if centre is not None):
        return True
    return None if near is None else False
