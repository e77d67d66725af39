"""How exactly sheets that are not cut are brought together: two slanting lines that have to go on straight.

Each line shows a piece on either sheet, `length` long, the middles of the two `apart` mm along it, with what is hidden
between them.  A ruler is laid along both.  It lies at every end of a piece with an error of its own, sd r, across the
line.  As long as the turn is held by the other pair of lines, the pieces' common direction is known to r / length, and
one piece then stands off the other's line with the sd

    c = r · √(1 + (apart / length)²)                                        (least squares, worked out by hand here)

Two lines that slant by ±φ from straight across the join leave c / (√2 · sin φ) across it and c / (√2 · cos φ) along
it: at 45°, as they are drawn (`Covered`), c both ways.  What else keeps two registration marks apart, `match`, comes
on top.

One pair alone has to hold the turn too, by the directions of its short pieces: to √2 · r / length, which is what two
marks matched to c would do when only √(length² + apart²) apart (`Covered.held`).
"""

from __future__ import annotations

import math

from templates_gen.job.accuracy import Accuracy
from templates_gen.tiling.covered import ARM, Covered


def crossing_sd(reading: float, depth: float) -> float:
    """The sd (mm), across a join as along it, of two lines that slant by ±45° over a strip `depth` mm deep."""
    return reading * math.hypot(1.0, (depth + ARM) / ARM)  # the slant stretches `apart` and `length` alike


def crossing_match(accuracy: Accuracy, hides: Covered) -> float:
    """What `match` is (mm, either axis) for pairs of slanting lines, over the deeper of the two hidden strips."""
    depth = max(hides.depth(True), hides.depth(False))
    return math.hypot(accuracy.match, crossing_sd(accuracy.reading, depth))


def meeting_sd(accuracy: Accuracy, hides: Covered | None) -> float:
    """The sd (mm, either axis) to which two sheets are brought together: by marks, or by lines where nothing is cut."""
    return accuracy.match if hides is None else crossing_match(accuracy, hides)
