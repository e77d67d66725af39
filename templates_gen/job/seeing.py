"""What an eye sees: the least tilt of one edge, and the least step between two edges apart."""

from __future__ import annotations

import math

SEEN_ANGLE = 0.6
"""Degrees off level or plumb that people recognise on average ("Recognition of stimulus orientation", Vision Research
30(10), 1990, 1429-37)."""

SEEN_SOURCE = '"Recognition of stimulus orientation", Vision Research 30(10), 1990'


def seen_step(gap: float) -> float:
    """The step (mm) between two edges `gap` mm apart that an eye sees: gap · tan 0.6°.

    A working threshold: a model, not a measured value.
    """
    return gap * math.tan(math.radians(SEEN_ANGLE))
