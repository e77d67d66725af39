"""The plain fixed grid of sheets, and an exhaustive search, to measure the sheet plan against."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from math import ceil

from templates_gen.base.geometry import TOLERANCE, Rect, bounds
from templates_gen.tiling.cells import Clearance, Printable


def fixed_grid(items: Sequence[Rect], printables: Sequence[Printable], overlap: float) -> int:
    """Rows times columns over the bounding box, in the better orientation."""
    box = bounds(items)
    steps = [(p.width - overlap, p.height - overlap) for p in printables]
    return min(_steps(box.width, w) * _steps(box.height, h) for w, h in steps)


def fixed_grid_occupied(items: Sequence[Rect], printables: Sequence[Printable], overlap: float) -> int:
    """The same grid from the corner of the bounding box with its blank sheets left out."""
    box = bounds(items)
    return min(len(occupied(items, p, overlap, box.x0, box.y0)) for p in printables)


def best_offset(
    whole: Sequence[Rect],
    divisible: Sequence[Rect],
    printables: Sequence[Printable],
    overlap: float,
    clear: Clearance,
    most: int = 1_000_000,
) -> tuple[int | None, int | None]:
    """The fewest sheets of a grid at any critical offset that keeps whole items whole.

    First with every sheet of the bounding box, then with blank sheets left out; None when no offset does.  At
    most `most` offsets along each axis are tried, evenly taken from the critical ones.
    """
    firm = [Rect(r.x0 - clear.left, r.y0 - clear.bottom, r.x1 + clear.right, r.y1 + clear.top) for r in whole]
    every = [*firm, *divisible]
    box = bounds(every)
    full: list[int] = []
    some: list[int] = []
    for page in printables:
        w, h = page.width - overlap, page.height - overlap
        ys = _offsets([(r.y0, r.y1) for r in every], [(r.y0, r.y1) for r in firm], h, most)
        high = {y: _steps(box.y1 - _below(box.y0, y, h), h) for y in ys}
        bits = {y: [_bits(_reached(r.y0 - y, r.y1 - y, h), box.y0, h) for r in every] for y in ys}
        for x in _offsets([(r.x0, r.x1) for r in every], [(r.x0, r.x1) for r in firm], w, most):
            columns = [_reached(r.x0 - x, r.x1 - x, w) for r in every]
            wide = _steps(box.x1 - _below(box.x0, x, w), w)
            full += [wide * n for n in high.values()]
            some += [_held(columns, masks) for masks in bits.values()]
    return min(full, default=None), min(some, default=None)


Ends = Sequence[tuple[float, float]]


def _offsets(every: Ends, firm: Ends, step: float, most: int) -> list[float]:
    """The offsets from 0 to `step` at which a side of some item is on a cut and no firm item crosses one."""
    found = [
        t
        for t in sorted({round(v % step, 6) for pair in every for v in pair})
        if all(ceil((hi - t - 1e-5) / step) - (lo - t + 1e-5) // step <= 1 for lo, hi in firm)
    ]
    return found[:: ceil(len(found) / most) or 1]


def _bits(rows: range, base: float, step: float) -> int:
    """The rows as the bits of a number, counted from two below the row that `base` is in."""
    shift = int(base // step) - 2
    return sum(1 << (row - shift) for row in rows)


def _held(columns: Sequence[range], masks: Sequence[int]) -> int:
    """How many sheets hold something, from the columns and the rows of every item."""
    found: dict[int, int] = {}
    for reach, mask in zip(columns, masks, strict=True):
        for column in reach:
            found[column] = found.get(column, 0) | mask
    return sum(mask.bit_count() for mask in found.values())


def occupied(items: Sequence[Rect], page: Printable, overlap: float, x: float, y: float) -> set[tuple[int, int]]:
    """The columns and rows of the sheets that hold something, in a grid with a corner at (x, y)."""
    w, h = page.width - overlap, page.height - overlap
    found = set()
    for r in items:
        for i in _reached(r.x0 - x, r.x1 - x, w):
            found.update((i, j) for j in _reached(r.y0 - y, r.y1 - y, h))
    return found


def _below(t: float, offset: float, step: float) -> float:
    """The cut at or just before `t` in a grid with this offset."""
    return t - (t - offset + TOLERANCE) % step + TOLERANCE


def _steps(length: float, step: float) -> int:
    return max(1, ceil((length - TOLERANCE * 10) / step))


def _reached(lo: float, hi: float, step: float) -> range:
    first = int((lo + TOLERANCE * 10) // step)
    return range(first, max(first + 1, ceil((hi - TOLERANCE * 10) / step)))


Units = list[tuple[int, int, int, int]]
"""Left, bottom, right, top of boxes in whole units, all from 0 to `FAR`."""

FAR = 15


def fewest_along(firm: Units, soft: Units, width: int) -> float:
    """The fewest cells for one strip, trying every cell at every place."""

    @cache
    def after(x: int) -> float:
        if x >= FAR:
            return 0
        blank = not any(b[0] <= x < b[2] for b in firm + soft)
        tries = [after(x + 1)] if blank else []
        for end in range(x + 1, x + width + 1):
            if not any(f[0] < c < f[2] for f in firm for c in (x, end)):
                tries.append(1 + after(end))
        return min(tries, default=float("inf"))

    return after(0)


def fewest(firm: Units, soft: Units, width: int, height: int) -> float:
    """The fewest cells for the wall, trying every strip at every height."""

    @cache
    def above(y: int) -> float:
        if y >= FAR:
            return 0
        tries = [] if any(b[1] <= y < b[3] for b in firm + soft) else [above(y + 1)]
        for top in range(y + 1, y + height + 1):
            if any(f[1] < c < f[3] for f in firm for c in (y, top)):
                continue
            inside = [[b for b in boxes if b[1] < top and b[3] > y] for boxes in (firm, soft)]
            tries.append(fewest_along(inside[0], inside[1], width) + above(top))
        return min(tries, default=float("inf"))

    return above(0)
