"""From a print to the outside of its frame: mat, rabbet, sight and outside sizes.  All in mm, (width, height).

The contents (mat or print, glass, backing) lie in the moulding's rabbet; frames are ordered by the contents' size.
"""

from __future__ import annotations

from templates_gen.base.geometry import Size
from templates_gen.base.record import Record
from templates_gen.base.units import INCH

MAT_OVERLAP = INCH / 4
"""mm by which a mat's window covers each edge of the print: 1/4 in, common practice of framers."""

RABBET = INCH / 4
"""mm by which the moulding's lip covers each edge of the contents: usually 1/4 in, common practice of framers (3/8,
5/16 and 1/2 in are made too)."""

ALLOWANCE = INCH / 8
"""mm by which a frame is cut larger than its contents, in all: 1/8 in, common practice of framers."""


class Mat(Record, frozen=True, kw_only=True):
    """The board round the print: its sides top, right, bottom, left, and how far it covers the print's edges."""

    sides: tuple[float, float, float, float]
    overlap: float = MAT_OVERLAP


class Moulding(Record, frozen=True, kw_only=True):
    """The stick a frame is made of, in section (mm): `face` as seen from the front, `depth` from front to back.

    `rabbet` and `rabbet_depth` are the step that the contents lie in: how far the lip covers them, and how deep it is.
    """

    face: float
    rabbet: float = RABBET
    allowance: float = ALLOWANCE
    wood: str = ""
    depth: float | None = None
    rabbet_depth: float | None = None


def contents_size(printed: Size, mat: Mat | None) -> Size:
    """The size of what lies in the rabbet: the print, or the mat's window with the mat's sides about it."""
    if mat is None:
        return printed
    top, right, bottom, left = mat.sides
    return printed[0] - 2 * mat.overlap + left + right, printed[1] - 2 * mat.overlap + top + bottom


def window_size(contents: Size, mat: Mat) -> Size:
    """The opening that the sides of a mat leave in contents of this size; not above nought where they leave none."""
    top, right, bottom, left = mat.sides
    return contents[0] - left - right, contents[1] - top - bottom


def outside_size(contents: Size, moulding: Moulding) -> Size:
    """The outside of the frame: G + a + 2 (m - r), with the moulding m wide (common practice of framers)."""
    return _grown(contents, _border(moulding))


def contents_within(outside: Size, moulding: Moulding) -> Size:
    """The size of the contents of a frame with this outside: `outside_size` turned round."""
    return _grown(outside, -_border(moulding))


def mat_shown(mat: Mat, moulding: Moulding | None) -> tuple[float, float, float, float]:
    """How much of the mat's sides (top, right, bottom, left) the moulding leaves to see: w - r + a/2.

    Where no moulding is given, of one with the usual rabbet and allowance (common practice of framers).
    """
    hidden = moulding.rabbet - moulding.allowance / 2 if moulding else RABBET - ALLOWANCE / 2
    top, right, bottom, left = (side - hidden for side in mat.sides)
    return top, right, bottom, left


def _border(moulding: Moulding) -> float:
    return moulding.allowance + 2 * (moulding.face - moulding.rabbet)


def _grown(size: Size, by: float) -> Size:
    return size[0] + by, size[1] + by
