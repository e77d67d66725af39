"""Frames put together two by two into blocks, blocks into larger blocks: an arrangement written as a line of signs.

The line is read from the left: a frame's number is a block; a `Cut` takes the last two blocks and sets the first left
of the second, or on top of it.  Every arrangement that can be cut apart by straight cuts is such a line, and small
changes of it lead from any one to any other (D. F. Wong and C. L. Liu, A new algorithm for floorplan design, DAC 1986,
from memory).  Frames keep their sizes; of two blocks that differ, the shorter is spread until its ends are flush with
the longer one, where its gaps need not grow by more than `MOST_SPREAD`, and else set at one end or in the middle.
"""

from __future__ import annotations

from collections.abc import Sequence
from random import Random
from typing import NamedTuple

from templates_gen.base.geometry import TOLERANCE, Rect, Size

MOST_SPREAD = 0.6
"""Of a gap, that it may grow for two blocks to end flush.  Our own design, no source."""


class Cut(NamedTuple):
    """Two blocks become one: side by side or one above the other, the shorter one at `share` of the spare room.

    `share` is 0 at the left or the top, 0.5 in the middle, 1 at the right or the bottom.
    """

    beside: bool
    share: float


Line = tuple[int | Cut, ...]


class Block(NamedTuple):
    """One or more frames: width and height (mm), how far it may be spread each way, and what it is made of."""

    width: float
    height: float
    spare_across: float
    spare_down: float
    frame: int = -1
    cut: Cut | None = None
    first: Block | None = None
    second: Block | None = None


def built(line: Line, sizes: Sequence[Size], gap_across: float, gap_down: float) -> Block:
    """The block that a line describes."""
    stack: list[Block] = []
    for sign in line:
        if isinstance(sign, Cut):
            second, first = stack.pop(), stack.pop()
            stack.append(joined(sign, first, second, gap_across if sign.beside else gap_down))
        else:
            stack.append(Block(*sizes[sign], 0.0, 0.0, frame=sign))
    (whole,) = stack
    return whole


def joined(cut: Cut, one: Block, two: Block, gap: float) -> Block:
    """Two blocks as one, with the gap between them."""
    if cut.beside:
        height = max(one.height, two.height)
        spare = one.spare_across + two.spare_across + MOST_SPREAD * gap
        down = _common(height, one.height, one.spare_down, two.height, two.spare_down)
        return Block(one.width + gap + two.width, height, spare, down, -1, cut, one, two)
    width = max(one.width, two.width)
    spare = one.spare_down + two.spare_down + MOST_SPREAD * gap
    across = _common(width, one.width, one.spare_across, two.width, two.spare_across)
    return Block(width, one.height + gap + two.height, across, spare, -1, cut, one, two)


def _common(length: float, one: float, spare_one: float, two: float, spare_two: float) -> float:
    """How far both can be spread beyond their common length."""
    return max(0.0, min(one + spare_one, two + spare_two) - length)


def place(block: Block, left: float, top: float, width: float, height: float, out: dict[int, Rect]) -> None:
    """Put the rectangle of every frame of a block into `out`, the block filling this width and height (mm)."""
    if block.cut is None or block.first is None or block.second is None:
        out[block.frame] = Rect(left, top - height, left + width, top)
        return
    one, two, share = block.first, block.second, block.cut.share
    if block.cut.beside:
        part = (width - block.width) / block.spare_across if block.spare_across else 0.0
        first, second = one.width + part * one.spare_across, two.width + part * two.spare_across
        for child, x, length in ((one, left, first), (two, left + width - second, second)):
            fits = height - child.height <= child.spare_down + TOLERANCE
            down = 0.0 if fits else share * (height - child.height)
            place(child, x, top - down, length, height if fits else child.height, out)
    else:
        part = (height - block.height) / block.spare_down if block.spare_down else 0.0
        first, second = one.height + part * one.spare_down, two.height + part * two.spare_down
        for child, y, length in ((one, top, first), (two, top - height + second, second)):
            fits = width - child.width <= child.spare_across + TOLERANCE
            right = 0.0 if fits else share * (width - child.width)
            place(child, left + right, y, width if fits else child.width, length, out)


def chained(rows: Sequence[Sequence[int]], beside: bool = True, share: float = 0.5) -> Line:
    """The line of rows under each other (or, not `beside`, of columns beside each other)."""
    line: list[int | Cut] = []
    for at, row in enumerate(rows):
        for place_in_row, frame in enumerate(row):
            line += [frame] if place_in_row == 0 else [frame, Cut(beside, share)]
        if at:
            line.append(Cut(not beside, share))
    return tuple(line)


SHARES = (0.0, 0.5, 0.5, 1.0)
"""The middle twice as often as an end: it suits most groups.  Our own design, no source."""


SWAPS, TURNS, KEPT = 0.35, 0.3, 0.7
"""Shares of the changes that swap two frames, and that turn or reset a cut (the rest swap a frame and a cut); and how
often a cut that is turned keeps its share.  Our own design, no source."""


def changed(line: Line, sizes: Sequence[Size], random: Random) -> Line:
    """The line with one small change: two frames swapped, a cut turned or reset, or a frame and a cut swapped."""
    if len(line) < 3:
        return line
    signs = list(line)
    kind = random.random()
    if kind < SWAPS:
        frames = {at: sizes[sign] for at, sign in enumerate(signs) if not isinstance(sign, Cut)}
        one = random.choice(list(frames))
        others = [at for at, size in frames.items() if size != frames[one]]
        two = random.choice(others or list(frames))
        signs[one], signs[two] = signs[two], signs[one]
    elif kind < SWAPS + TURNS:
        cuts = [at for at, sign in enumerate(signs) if isinstance(sign, Cut)]
        at, cut = random.choice(cuts), random.choice(SHARES)
        old = signs[at]
        assert isinstance(old, Cut)
        turned = random.random() < 0.5
        signs[at] = Cut(old.beside != turned, old.share if turned and random.random() < KEPT else cut)
    else:
        _swap_frame_and_cut(signs, random)
    return tuple(signs)


def _swap_frame_and_cut(signs: list[int | Cut], random: Random) -> None:
    """Swap two neighbours of different kind where the line stays one: every cut finds two blocks before it."""
    borders = [
        at for at in range(len(signs) - 1) if isinstance(signs[at], Cut) != isinstance(signs[at + 1], Cut)
    ]  # fmt: skip
    at = random.choice(borders)
    signs[at], signs[at + 1] = signs[at + 1], signs[at]
    if not is_whole(signs):
        signs[at], signs[at + 1] = signs[at + 1], signs[at]


def is_whole(signs: Sequence[int | Cut]) -> bool:
    """True when every cut finds two blocks before it, and one is left at the end."""
    depth = 0
    for sign in signs:
        depth += -1 if isinstance(sign, Cut) else 1
        if depth < 1:
            return False
    return depth == 1
