"""Where the spare paper goes: strips and cells shift until what is left over lies evenly at both ends.

Nothing here changes how many cells there are.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Sequence
from itertools import pairwise

from templates_gen.base.geometry import TOLERANCE, Span
from templates_gen.tiling.strips import Boxes, Line

HALVINGS = 30
"""Bisection steps: a slack of 1 m is then known to a millionth of a mm.  Plain arithmetic."""

NEAR, STEEPEST, STEPS = 1e-9, 2.0, 12
"""mm by which what is looked for is passed, so that rounding keeps nobody from it; how much less is lacking for each
of them at most; and steps after which halving goes on.  Plain arithmetic, and our own choice."""

SHARES = (1.0, 0.75, 0.5, 0.25)
"""Parts of the best shift of a stack of strips to try, largest first.  Common practice, no source."""


def runs_of(cells: Sequence[Span]) -> list[list[Span]]:
    """The cells of a strip in groups that join one another without a gap."""
    runs: list[list[Span]] = []
    for cell in cells:
        if runs and runs[-1][-1][1] == cell[0]:
            runs[-1].append(cell)
        else:
            runs.append([cell])
    return runs


def settle_run(line: Line, cells: list[Span], width: float, room: Span, lean: int) -> list[Span]:
    """The same number of cells for the same content, as wide as paper allows, inside `room`.

    `lean` 0 puts equal spare paper at both ends, -1 all that goes to the left, 1 to the right.
    """
    begin, end = cells[0][0], line.content_end(cells[-1][1])

    def lacks(start: float) -> float:
        """By how much a start is too far left (mm); it is good where that is not more than 0."""
        beyond = _reach(line, start, width, len(cells)) - end
        return max(-beyond, begin - start - beyond) if lean == 0 else -beyond

    low, high = max(room[0], end - len(cells) * width), begin
    if lean <= 0 and low < high:
        high = _least(lacks, low, high, even=lean == 0)
    return _fill(line, high, width, len(cells), room[1])


def settle_strip(
    line: Line, runs: Sequence[list[Span]], width: float, sides: Span, leans: Sequence[int]
) -> list[list[Span]]:
    """Every run of a strip settled; two neighbouring runs each have the gap between them up to its middle."""
    rooms = _rooms([(run[0][0], line.content_end(run[-1][1])) for run in runs], sides)
    # of an empty strip there is a room, but no run
    every = zip(runs, rooms, leans, strict=False)
    return [settle_run(line, run, width, room, lean) for run, room, lean in every]


def _rooms(contents: Sequence[Span], sides: Span) -> list[Span]:
    """The room around each of these stretches, between the sides and the middles of the gaps between them."""
    middles = [(one[1] + two[0]) / 2 for one, two in pairwise(contents)]
    return list(pairwise([sides[0], *middles, sides[1]]))


def settle_heights(
    boxes: Boxes, strips: list[Span], width: float, height: float, gaps: bool, sides: Span
) -> list[Span]:
    """The strips with the spare height spread over both ends of each stack, at the same number of cells."""
    stacks = runs_of(strips)
    tops = [_content_top(boxes, stack) for stack in stacks]
    rooms = _rooms([(stack[0][0], top) for stack, top in zip(stacks, tops, strict=True)], sides)
    moved = [
        _shift_stack(boxes, stack, top, floor, width, height, gaps)
        for stack, top, (floor, _) in zip(stacks, tops, rooms, strict=True)
    ]
    for stack, (floor, ceiling) in zip(moved, rooms, strict=True):
        spare = max(0.0, height - (stack[0][1] - stack[0][0]))  # a rounding must not uncover a line
        if len(stack) == 1:
            spare /= 2
        stack[0] = (max(stack[0][0] - spare, floor), stack[0][1])
        stack[-1] = (stack[-1][0], min(stack[-1][0] + height, ceiling))
    return [strip for stack in moved for strip in stack]


def _content_top(boxes: Boxes, stack: list[Span]) -> float:
    return max(stack[-1][0], *(b.y1 for b in boxes.within(*stack[-1])))


def _shift_stack(
    boxes: Boxes, stack: list[Span], end: float, floor: float, width: float, height: float, gaps: bool
) -> list[Span]:
    """A stack with its inner cuts moved down so that its last strip is not the only one with spare height.

    The first strip stays above `floor`, where the stack below may reach up to.
    """
    tight = [*stack[:-1], (stack[-1][0], end)]
    spare = max(0.0, height - (tight[-1][1] - tight[-1][0])) / 2
    cost = sum(boxes.cells(width, gaps, *strip) for strip in stack)
    for share in SHARES if len(stack) > 1 else ():
        down = spare * share
        cuts = [stack[0][0] - down, *[s[1] - down for s in stack[:-1]], tight[-1][1]]
        trial = list(pairwise(cuts))
        closed = [*trial[:-1], (trial[-1][0], stack[-1][1])]  # a line on the very top stays in
        if cuts[1] <= floor + TOLERANCE or any(boxes.upright.cut_at_most(t) != t for t in cuts[1:-1]):
            continue
        if sum(boxes.cells(width, gaps, *strip) for strip in closed) <= cost:
            return trial
    return tight


def _least(lacks: Callable[[float], float], low: float, high: float, even: bool) -> float:
    """The least number that lacks nothing, when `high` does not and no more is lacking further up."""
    if (missing := lacks(low)) <= 0.0:
        return low
    short, enough = _straits(lacks, low, missing, high) if even else (low, high)
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        if middle >= enough or (middle > short and lacks(middle) <= 0.0):
            high = middle
        else:
            low = middle
    return high


def _straits(lacks: Callable[[float], float], low: float, missing: float, high: float) -> Span:
    """Numbers near each other of which the lower lacks something and the upper nothing.

    Where the spare is to be even, what is lacking falls by 1 or 2 from number to number, but where a cut jumps over
    something firm: so a few steps from below come near.
    """
    slope, over = STEEPEST, False
    for _ in range(STEPS):
        at = low + missing / slope + NEAR
        if over or at >= high:
            at = (low + high) / 2
        if high - low < 4 * NEAR:
            break
        left = lacks(at)
        if over := left <= 0.0:
            high = at
        else:
            slope = min(max((missing - left) / (at - low), 1.0), STEEPEST)
            low, missing = at, left
    return low, high


def _reach(line: Line, start: float, width: float, cells: int) -> float:
    """How far this many cells get from `start`; the last may end anywhere."""
    firm_lo, firm_hi, j = line.firm_lo, line.firm_hi, 0
    for _ in range(cells - 1):
        start += width
        j = bisect_left(firm_lo, start, j)
        if j and start < firm_hi[j - 1]:
            start = firm_lo[j - 1]
    return start + width


def _fill(line: Line, start: float, width: float, cells: int, most: float) -> list[Span]:
    cuts = [start]
    for _ in range(cells - 1):
        cuts.append(line.cut_at_most(cuts[-1] + width))
    cuts.append(min(cuts[-1] + width, most))
    return list(pairwise(cuts))
