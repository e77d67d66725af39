"""The search among rows of stacks: small changes by chance, many numbers of rows at first, the best of them longest."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from random import Random
from typing import NamedTuple

from templates_gen.arranging.search.boxes import Box, Gaps
from templates_gen.arranging.search.stacks import Rows, Stack, Stacks
from templates_gen.base.adding import added
from templates_gen.base.geometry import Size

ROUNDS = ((1.0, 0.06, 0.006), (0.34, 0.02, 0.002), (0.0, 0.01, 0.0005))
"""Of the numbers of rows, how many are tried in each round (one at least), and what a change for the worse may cost at
its start and its end: successive halving.  Our own design, no source."""

ASPECT = 1.6
"""Width over height that tells how many rows are likely.  Our own design, no source."""

SWAPPED, SET_ELSEWHERE, STACKS_SWAPPED, STACK_MOVED = 0.45, 0.75, 0.88, 0.95
"""Shares of the changes, each with those before it: two frames swapped, a frame set elsewhere, two stacks swapped, a
stack set elsewhere; the rest orders a stack or the rows anew.  Our own design, measured, no source."""

BESIDE, ON_TOP = 0.4, 0.8
"""Shares of the frames set elsewhere that become a stack, and with those a cell; the rest goes into a cell.  Ours."""

STRAY, ROWS_ORDERED, TRIES = 60.0, 0.3, 4
"""mm of chance in the order of frames by height, the share of new orders that are of rows, and how often a frame of
another size is looked for.  Our own design, no source."""

CHUNK = 60
"""Changes from one look at the watch to the next.  Our own design, no source."""


class _Run(NamedTuple):
    stacks: Stacks
    rows: Rows
    cost: float
    random: Random


def stacked(
    sizes: Sequence[Size], gaps: Gaps, most: Size, changes: int, seed: str,
    judge: Callable[[Sequence[Box]], float], begun: Sequence[tuple[bool, Rows]] = (),
) -> Iterator[list[Box] | None]:  # fmt: skip
    """The best rows of stacks about (0, 0): for every number of rows that was tried, as it ends; None now and then.

    `judge` tells what frames cost; the rows that cost least by it are tried longest.  `most` is the room (mm); `begun`
    are rows, or where turned columns, to begin with as well.
    """
    runs = [_begun(Stacks(sizes, gaps, turned, most), rows, f"{seed}/{turned}/{rows}")
            for turned in (False, True) for rows in _numbers(sizes, gaps, turned)]  # fmt: skip
    for number, (turned, rows) in enumerate(begun):
        stacks = Stacks(sizes, gaps, turned, most)
        runs.append(_Run(stacks, rows, stacks.cost(rows), Random(f"{seed}/begun/{number}")))
    for share, hot, cold in ROUNDS:
        ranked = sorted(runs, key=lambda run: judge(run.stacks.boxes(run.rows)))
        runs = []
        for run in ranked[: max(1, round(share * len(ranked)))]:
            steps = changes // len(ROUNDS) // max(1, round(share * len(ranked)))
            for done in range(0, steps, CHUNK):
                warm, cool = (hot * (cold / hot) ** (at / steps) for at in (done, min(done + CHUNK, steps)))
                run = _annealed(run, min(CHUNK, steps - done), warm, cool)
                yield None
            runs.append(run)
            yield run.stacks.boxes(run.rows)


def _numbers(sizes: Sequence[Size], gaps: Gaps, turned: bool) -> list[int]:
    """The likely numbers of rows, or of columns."""
    side = 0 if turned else 1
    area = added((width + gaps.across) * (height + gaps.down) for width, height in sizes)
    mean = added(size[side] + gaps[side] for size in sizes) / len(sizes)
    likely = max(1, round(math.sqrt(area * ASPECT if turned else area / ASPECT) / mean))
    return sorted({number for number in (1, 2, likely - 2, likely - 1, likely) if 0 < number <= len(sizes)})


def _begun(stacks: Stacks, count: int, seed: str) -> _Run:
    """The frames dealt to rows of about one length, high ones first."""
    random = Random(seed)
    sizes = stacks.sizes
    rows: list[list[Stack]] = [[] for _ in range(count)]
    lengths = [0.0] * count
    for at in sorted(range(len(sizes)), key=lambda at: -sizes[at][1] + STRAY * random.random()):
        row = min(range(count), key=lengths.__getitem__)
        rows[row].insert(random.randint(0, len(rows[row])), ((at,),))
        lengths[row] += sizes[at][0] + stacks.gaps.across
    whole = tuple(tuple(row) for row in rows if row)
    return _Run(stacks, whole, stacks.cost(whole), random)


def _annealed(run: _Run, steps: int, hot: float, cold: float) -> _Run:
    """The best of a short run from there."""
    stacks, rows, now, random = run
    best, least = rows, now
    for step in range(steps):
        trial = varied(rows, stacks.sizes, random)
        cost = stacks.cost(trial)
        if cost < now - hot * (cold / hot) ** (step / steps) * math.log(1 - random.random()):
            rows, now = trial, cost
            if cost < least:
                best, least = trial, cost
    return _Run(stacks, best, least, random)


def varied(rows: Rows, sizes: Sequence[Size], random: Random) -> Rows:
    """The rows with one small change by chance; each frame stays in them once."""
    lists: list[list[Stack]] = [list(row) for row in rows]
    kind = random.random()
    if kind < SWAPPED:
        _swap(lists, sizes, random)
    elif kind < SET_ELSEWHERE:
        _set_elsewhere(lists, random)
    elif kind < STACKS_SWAPPED:
        one, two = (_any(lists, random) for _ in range(2))
        lists[one[0]][one[1]], lists[two[0]][two[1]] = lists[two[0]][two[1]], lists[one[0]][one[1]]
    elif kind < STACK_MOVED:
        row, at = _any(lists, random)
        stack = lists[row].pop(at)
        other = random.choice(lists)
        other.insert(random.randint(0, len(other)), stack)
    elif random.random() < ROWS_ORDERED and len(lists) > 1:
        random.shuffle(lists)
    else:
        row, at = _any(lists, random)
        cells = list(lists[row][at])
        random.shuffle(cells)
        lists[row][at] = tuple(cells)
    return tuple(tuple(row) for row in lists if row)


def _any(rows: Sequence[Sequence[Stack]], random: Random) -> tuple[int, int]:
    """Any stack: its row, and its place in it."""
    row = random.randrange(len(rows))
    return row, random.randrange(len(rows[row]))


def _frame(rows: Sequence[Sequence[Stack]], random: Random) -> tuple[int, int, int, int]:
    """Any frame: its row, stack, cell, and place in that."""
    row, at = _any(rows, random)
    cell = random.randrange(len(rows[row][at]))
    return row, at, cell, random.randrange(len(rows[row][at][cell]))


def _swap(rows: list[list[Stack]], sizes: Sequence[Size], random: Random) -> None:
    """Two frames change places, most often of different sizes."""
    one, two = _frame(rows, random), _frame(rows, random)
    for _ in range(TRIES):
        if sizes[_at(rows, one)] != sizes[_at(rows, two)]:
            break
        two = _frame(rows, random)
    first, second = _at(rows, one), _at(rows, two)
    _put(rows, one, second)
    _put(rows, two, first)


def _at(rows: Sequence[Sequence[Stack]], place: tuple[int, int, int, int]) -> int:
    row, stack, cell, at = place
    return rows[row][stack][cell][at]


def _put(rows: list[list[Stack]], place: tuple[int, int, int, int], frame: int) -> None:
    row, stack, cell, at = place
    cells = list(rows[row][stack])
    cells[cell] = (*cells[cell][:at], frame, *cells[cell][at + 1 :])
    rows[row][stack] = tuple(cells)


def _set_elsewhere(rows: list[list[Stack]], random: Random) -> None:
    """A frame leaves its cell and becomes a stack, a cell of a stack, or one of two in a cell."""
    place = _frame(rows, random)
    frame = _at(rows, place)
    _drop(rows, place)
    if not rows:
        rows.append([((frame,),)])
        return
    row, kind = random.choice(rows), random.random()
    if kind < BESIDE or not row:
        row.insert(random.randint(0, len(row)), ((frame,),))
        return
    at = random.randrange(len(row))
    cells = list(row[at])
    cell = random.randint(0, len(cells) - (kind >= ON_TOP))
    if kind >= ON_TOP and len(cells[cell]) == 1:
        cells[cell] = (*cells[cell], frame)
    else:
        cells.insert(cell, (frame,))
    row[at] = tuple(cells)


def _drop(rows: list[list[Stack]], place: tuple[int, int, int, int]) -> None:
    """Take a frame out, with its cell, stack and row where they are empty then."""
    row, stack, cell, at = place
    cells = list(rows[row][stack])
    left = (*cells[cell][:at], *cells[cell][at + 1 :])
    cells[cell : cell + 1] = [left] if left else []
    rows[row][stack : stack + 1] = [tuple(cells)] if cells else []
    if not rows[row]:
        rows.pop(row)
