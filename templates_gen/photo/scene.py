"""What is fitted: the tags that were seen on one or more photographs, each with the sheet that it is printed on.

Limits and sizes without a source beside them are our own, no source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from templates_gen.base.record import Record
from templates_gen.photo.vision import Array, View, np

Printed = Mapping[int, tuple[str, Array]]
"""Every tag by its number: its sheet, and its corners on the wall (mm), the upper left one first, clockwise."""

DEGREE = 5
"""Of the polynomials for what no formula of a lens holds.  Our own design, no source."""

PER_WIDTH = 4000.0
"""Pixels across a picture of 12 megapixels: limits in pixels are for that, and others in proportion."""

USUAL_OFF, NOTED_OFF = 0.06, 0.02
"""How far the usual focal length is off, and one that the camera noted, which is rounded to a millimetre of some 26 and
takes no account of what is cut off when the lens is straightened (shares, deviations).  Our own, no source."""

USUAL_FOCAL = 3000.0
"""Pixels of focal length on such a picture: 27 mm on the film of 36 mm, a telephone's main camera.  Common practice, no
source."""


class Scene(Record, frozen=True):
    """The tags that were seen, a row each: `view`, `tag` and `sheet` are their indices, `seen` their corners (pixels),
    `on_sheet` their corners from the middle of their sheet's cell, `middle` that from the middle of all (mm).

    `size` is that of the pictures in pixels, `basis` the polynomials at every corner, `alike` the tags of each sheet,
    `stands` how far each tag is known to stand off the wall, and `unsure` how surely (mm, a deviation); `coarse` is how
    many times as coarsely as usual a tag's corners are seen; `focal` is the focal length to begin with (pixels), and
    `focal_off` how far it usually is off, as a share.
    """

    size: tuple[int, int]
    sheets: tuple[str, ...]
    tags: tuple[int, ...]
    view: Array
    tag: Array
    sheet: Array
    seen: Array
    on_sheet: Array
    middle: Array
    basis: Array
    alike: tuple[Array, ...]
    views: int
    stands: Array
    unsure: Array
    coarse: Array
    focal: float
    focal_off: float

    @property
    def unit(self) -> float:
        """Pixels here for one on a picture of 12 megapixels."""
        return max(self.size) / PER_WIDTH


def scene(
    views: Sequence[View], size: tuple[int, int], printed: Printed, middles: Mapping[str, Array], centre: Array,
    stands: Mapping[int, float] | None = None, unsure: Mapping[int, float] | None = None,
    coarse: Mapping[int, float] | None = None, focal: float | None = None,
) -> Scene:  # fmt: skip
    """The scene of these views, all of pictures of one size; tags that are not printed on a sheet are left out."""
    rows = [(at, number) for at, view in enumerate(views) for number in sorted(view) if number in printed]
    tags = tuple(sorted({number for _, number in rows}))
    sheets = tuple(sorted({printed[number][0] for number in tags}))
    seen = np.array([views[at][number] for at, number in rows])
    sheet = np.array([sheets.index(printed[number][0]) for _, number in rows])
    tag = np.array([tags.index(number) for _, number in rows])
    middle = np.array([middles[name] for name in sheets])
    corners = np.array([printed[number][1] for _, number in rows])
    return Scene(
        size=size, sheets=sheets, tags=tags, view=np.array([at for at, _ in rows]), tag=tag, sheet=sheet, seen=seen,
        on_sheet=corners - middle[sheet][:, None], middle=(middle - centre)[sheet], basis=basis(seen, size),
        alike=tuple(np.array([at for at, number in enumerate(tags) if printed[number][0] == name]) for name in sheets),
        views=len(views), stands=np.array([(stands or {}).get(number, 0.0) for number in tags]),
        unsure=np.array([(unsure or {}).get(number, 0.0) for number in tags]),
        coarse=np.array([(coarse or {}).get(number, 1.0) for number in tags]),
        focal=focal or USUAL_FOCAL * max(size) / PER_WIDTH, focal_off=NOTED_OFF if focal else USUAL_OFF,
    )  # fmt: skip


def basis(pixels: Array, size: tuple[int, int]) -> Array:
    """Chebyshev polynomials of degree 2 to `DEGREE` over a picture, at these pixels."""
    half = np.array(size) / 2
    across, down = (2 * (pixels[..., k] - (size[k] - 1) / 2) / (2 * half[k]) for k in (0, 1))
    value, one = np.polynomial.chebyshev.chebval, np.eye(DEGREE + 1)
    pairs = [(i, j) for i in range(DEGREE + 1) for j in range(DEGREE + 1) if 2 <= i + j <= DEGREE]
    return np.stack([value(across, one[i]) * value(down, one[j]) for i, j in pairs], -1)
