"""Rows of stacks: frames stand on each other in stacks, stacks beside each other in rows, rows above each other.

A cell of a stack is one frame or two side by side.  What is shorter than the longest beside it ends flush with it where
its gaps need not grow by more than `STRETCH`; else it is set in the middle, or towards the rows between.  The same with
rows for columns, by sizes that are turned.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from templates_gen.arranging.search.boxes import AS_LARGE, Box, Gaps
from templates_gen.base.adding import added
from templates_gen.base.geometry import Size

Cell = tuple[int, ...]
Stack = tuple[Cell, ...]
Row = tuple[Stack, ...]
Rows = tuple[Row, ...]

STRETCH = 0.6
"""Of a gap, that it may grow for frames to end flush.  Our own design, no source."""

FLUSH = 0.2
"""What blank wall counts for that goes into gaps that grow, beside 1 for other.  Our own design, no source."""

INNER, OUTER, LEAN, UP, DOWN, CENTRAL, BIG, WRONG, UNLIKE = 1.2, 0.7, 1.6, 0.15, 0.5, 0.12, 0.08, 0.25, 0.25
"""What counts: blank wall between frames and at the outside, over the frames' area; the weight off the middle, above
it, and below it by more than `LOW`; large frames far out, and the largest; a group too wide or too high; stacks that
differ from their mirror image.  Our own design, by looking, no source: a quick likeness of what the looks cost."""

LOW, WIDEST, NARROWEST = 0.04, 2.4, 1 / 1.1
"""Shares of the height, and widths over heights, that are as they should be.  Our own design, no source."""

BEYOND, UNEVEN, STACK = 4.0, 0.3, 0.7
"""What it counts for that a group is larger than its room; that columns have different numbers of stacks, in frames;
and that their stacks differ.  Our own design, no source."""

MOST_KNOWN = 200_000
"""Rows that are remembered.  Our own design, no source."""


class _Stack(NamedTuple):
    width: float
    height: float
    blank: float
    area: float
    frames: int
    cells: int
    largest: float


class _Row(NamedTuple):
    """A row, x counted from its middle: sums of area, of area by x, by |x|, of |x|, and how far out the largest is."""

    width: float
    height: float
    area: float
    aside: float
    far: float
    all_far: float
    blank: float
    short: float
    frames: int
    largest: float | None
    unlike: float
    stacks: int


class Stacks:
    """Rows of stacks of these frames; `turned` has columns for rows.  What a row costs is remembered."""

    def __init__(self, sizes: Sequence[Size], gaps: Gaps, turned: bool, most: Size) -> None:
        self.sizes = [(height, width) if turned else (width, height) for width, height in sizes]
        self.gaps = Gaps(gaps.down, gaps.across) if turned else gaps
        self.turned = turned
        self.most = (most[1], most[0]) if turned else most
        self.areas = [width * height for width, height in sizes]
        self.area, self.largest = added(self.areas), max(self.areas) * AS_LARGE
        self._stacks: dict[Stack, _Stack] = {}
        self._rows: dict[Row, _Row] = {}

    def cell(self, cell: Cell) -> tuple[float, float, float]:
        """Width, height and blank area of a cell."""
        if len(cell) == 1:
            return *self.sizes[cell[0]], 0.0
        sizes = [self.sizes[at] for at in cell]
        height = max(size[1] for size in sizes)
        width = added(size[0] for size in sizes) + self.gaps.across * (len(cell) - 1)
        return width, height, added((height - size[1]) * size[0] for size in sizes)

    def stack(self, stack: Stack) -> _Stack:
        """What is known of a stack."""
        known = self._stacks.get(stack)
        if known is None:
            known = self._stacks[stack] = self._stack(stack)
        return known

    def _stack(self, stack: Stack) -> _Stack:
        cells = [self.cell(cell) for cell in stack]
        width = max(cell[0] for cell in cells)
        height = added(cell[1] for cell in cells) + self.gaps.down * (len(cells) - 1)
        blank = added(
            cell[2] + _blank(width - cell[0], cell[1], len(frames) - 1, self.gaps.across)
            for cell, frames in zip(cells, stack, strict=True)
        )
        areas = [self.areas[at] for cell in stack for at in cell]
        return _Stack(width, height, blank, added(areas), len(areas), len(cells), max(areas))

    def row(self, row: Row) -> _Row:
        """What is known of a row."""
        known = self._rows.get(row)
        if known is None:
            if len(self._rows) > MOST_KNOWN:
                self._rows.clear()
            known = self._rows[row] = self._row(row)
        return known

    def _row(self, row: Row) -> _Row:
        stacks, gap = [self.stack(stack) for stack in row], self.gaps.across
        width = added(stack.width for stack in stacks) + gap * (len(stacks) - 1)
        height = max(stack.height for stack in stacks)
        aside = far = all_far = blank = short = unlike = 0.0
        largest, left = None, -width / 2
        for stack in stacks:
            x = left + stack.width / 2
            left += stack.width + gap
            aside, far, all_far = aside + stack.area * x, far + stack.area * abs(x), all_far + stack.frames * abs(x)
            blank += stack.blank
            short += _blank(height - stack.height, stack.width, stack.cells - 1, self.gaps.down)
            if stack.largest >= self.largest and (largest is None or abs(x) < largest):
                largest = abs(x)
        for one, two in zip(stacks[: len(stacks) // 2], stacks[::-1], strict=False):
            unlike += abs(one.width - two.width) * min(one.height, two.height)
            unlike += abs(one.height - two.height) * min(one.width, two.width)
        area, frames = added(stack.area for stack in stacks), sum(stack.frames for stack in stacks)
        return _Row(width, height, area, aside, far, all_far, blank, short, frames, largest, unlike, len(stacks))

    def cost(self, rows: Rows) -> float:
        """A quick likeness of what the group's looks cost."""
        known = [self.row(row) for row in rows]
        width = max(row.width for row in known)
        height = added(row.height for row in known) + self.gaps.down * (len(known) - 1)
        inner = outer = aside = far = all_far = up = up_far = all_up = 0.0
        largest, top = 2.0, height / 2
        for at, row in enumerate(known):
            between = 0 < at < len(known) - 1
            blank = row.short + _blank(width - row.width, row.height, row.stacks - 1, self.gaps.across)
            inner += row.blank + (blank if between else 0.0)
            outer += 0.0 if between else blank
            y = top - row.height / 2
            top -= row.height + self.gaps.down
            aside, far, all_far = aside + row.aside, far + row.far, all_far + row.all_far
            up, up_far, all_up = up + row.area * y, up_far + row.area * abs(y), all_up + row.frames * abs(y)
            if row.largest is not None:
                largest = min(largest, row.largest / width + abs(y) / height)
        spread = (far / width + up_far / height) / self.area / (all_far / width + all_up / height + 1e-9)
        lean, rise = (up / height, -aside / width) if self.turned else (aside / width, up / height)
        blank = (INNER * inner + OUTER * outer + UNLIKE * self._unlike(rows, known)) / self.area
        weight = LEAN * abs(lean) + UP * max(0.0, rise) + DOWN * max(0.0, -rise - LOW * self.area)
        return (
            blank + weight / self.area + CENTRAL * len(self.sizes) * spread + BIG * 2 * largest
            + self._wrong(width, height)
        )  # fmt: skip

    def _wrong(self, width: float, height: float) -> float:
        aspect = height / width if self.turned else width / height
        beyond = max(0.0, width / self.most[0] - 1) + max(0.0, height / self.most[1] - 1)
        return WRONG * max(0.0, math.log(aspect / WIDEST), math.log(NARROWEST / aspect)) + BEYOND * beyond

    def _unlike(self, rows: Rows, known: Sequence[_Row]) -> float:
        """How far the group is from its mirror image; columns mirror each other one by one."""
        if not self.turned:
            return added(row.unlike for row in known)
        total = 0.0
        for one, two, a, b in zip(rows[: len(rows) // 2], rows[::-1], known, known[::-1], strict=False):
            total += abs(a.height - b.height) * min(a.width, b.width)
            total += abs(len(one) - len(two)) * UNEVEN * self.area / len(self.sizes)
            for left, right in zip(one, two, strict=False):
                s, t = self.stack(left), self.stack(right)
                total += STACK * abs(s.width - t.width) * min(s.height, t.height)
                total += STACK * abs(s.height - t.height) * min(s.width, t.width)
        return total

    def boxes(self, rows: Rows) -> list[Box]:
        """Where every frame is, the group's middle at (0, 0)."""
        known = [self.row(row) for row in rows]
        width = max(row.width for row in known)
        top = (added(row.height for row in known) + self.gaps.down * (len(known) - 1)) / 2
        placed: dict[int, Box] = {}
        for at, (row, sums) in enumerate(zip(rows, known, strict=True)):
            share = 0.5 if len(rows) == 1 or 0 < at < len(rows) - 1 else 0.0 if at else 1.0  # towards the rows between
            self._place_row(row, sums, width, top, share, placed)
            top -= sums.height + self.gaps.down
        found = [placed[at] for at in range(len(self.sizes))]
        return [(y0, x0, y1, x1) for x0, y0, x1, y1 in found] if self.turned else found

    def _place_row(
        self, row: Row, sums: _Row, width: float, top: float, share: float, placed: dict[int, Box]
    ) -> None:  # fmt: skip
        x, gap = _set(sums.width, width, len(row) - 1, self.gaps.across)
        for stack in row:
            known = self.stack(stack)
            down, gap_down = _set(known.height, sums.height, len(stack) - 1, self.gaps.down)
            y = top - 2 * share * (down + sums.height / 2)
            for cell in stack:
                cell_width, cell_height, _ = self.cell(cell)
                left, between = _set(cell_width, known.width, len(cell) - 1, self.gaps.across)
                left += x + known.width / 2
                for at in cell:
                    frame_width, frame_height = self.sizes[at]
                    low = y - (cell_height + frame_height) / 2
                    placed[at] = (left, low, left + frame_width, low + frame_height)
                    left += frame_width + between
                y -= cell_height + gap_down
            x += known.width + gap


def _blank(short: float, length: float, gaps: int, gap: float) -> float:
    """What a blank strip counts for: less where growing gaps take it up."""
    return short * length * (FLUSH if gaps > 0 and short <= STRETCH * gap * gaps else 1.0)


def _set(own: float, whole: float, gaps: int, gap: float) -> tuple[float, float]:
    """Where what is set in a whole length begins, from the middle, and its gap: it fills the whole where it can."""
    spare = whole - own
    if gaps > 0 and spare <= STRETCH * gap * gaps + 1e-9:
        return -whole / 2, gap + spare / gaps
    return -own / 2, gap
