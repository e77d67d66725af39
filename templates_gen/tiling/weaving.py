"""Sheets in no common strips, put into strips all the same: the runs of sheets that are taped first, by themselves.

The first run lies along the level line, to both sides of the target.  Every other is a row or a column of sheets, no
longer than a person can hold, and they are numbered from the first one outwards.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from templates_gen.base.geometry import Rect
from templates_gen.tiling.cells import Cell

HELD = 2000.0
"""mm that a run of sheets is long at the most, so that one person can carry it by its ends: an arm's span is about as
much.  Common practice, no source."""

Run = tuple[int, ...]


class Meet(NamedTuple):
    """Two cells by their numbers, the second to the right or above, at an upright side or a level one, along so much
    (mm)."""

    one: int
    two: int
    upright: bool
    length: float


def woven(
    cells: Sequence[Rect], start: int, on_line: Callable[[Rect], bool], rows: bool, upright: tuple[float, float],
    meets: Sequence[Meet],
) -> tuple[Cell, ...]:  # fmt: skip
    """The cells (mm) with the numbers of their strips, the one of `start` and of what lies along the line first.

    The other strips are rows or columns of cells that `meets` says are taped to each other.  `upright` is the width and
    height of a cell on an upright page (mm): what is larger is turned.
    """
    across = [meet for meet in meets if meet.upright]
    upward = [meet for meet in meets if not meet.upright]
    spine = _spine(cells, start, on_line, across)
    others = _runs(cells, set(range(len(cells))) - set(spine), across if rows else upward, rows)
    return tuple(
        Cell(cells[at], strip, place, turned(cells[at], upright))
        for strip, run in enumerate(_outwards([spine, *others], meets))
        for place, at in enumerate(run)
    )


def turned(cell: Rect, upright: tuple[float, float]) -> bool:
    """Whether a cell fits a page on its side better than one that stands, with so wide and high a cell at the most."""
    wide, high = upright
    as_it_stands = max(cell.width - wide, cell.height - high, 0.0)
    return as_it_stands > max(cell.width - high, cell.height - wide, 0.0)


def _spine(cells: Sequence[Rect], start: int, on_line: Callable[[Rect], bool], across: Sequence[Meet]) -> Run:
    """The cells along the line from left to right, the start among them."""
    after: dict[int, tuple[float, int]] = {}
    before: dict[int, tuple[float, int]] = {}
    for one, two, _, length in across:
        if on_line(cells[one]) and on_line(cells[two]):
            after[one] = max(after.get(one, (0.0, 0)), (length, two))
            before[two] = max(before.get(two, (0.0, 0)), (length, one))
    found = [start]
    while found[-1] in after:
        found.append(after[found[-1]][1])
    while found[0] in before:
        found.insert(0, before[found[0]][1])
    return tuple(found)


def _runs(cells: Sequence[Rect], free: set[int], along: Sequence[Meet], rows: bool) -> Iterator[Run]:
    """Rows (from the left) or columns (from the foot) of free cells, put together by their longest joins first."""
    following: dict[int, int] = {}
    led: dict[int, int] = {}
    for one, two, *_ in sorted(along, key=lambda meet: (-meet.length, cells[meet.one], cells[meet.two])):
        if one in free and two in free and one not in following and two not in led:
            following[one], led[two] = two, one
    for first in sorted(free - led.keys(), key=cells.__getitem__):
        run = [first]
        while run[-1] in following:
            run.append(following[run[-1]])
        yield from _held(run, cells, rows)


def _held(run: Sequence[int], cells: Sequence[Rect], rows: bool) -> Iterator[Run]:
    """The run in parts that one person can hold."""
    part: list[int] = []
    for at in run:
        begin = cells[part[0]] if part else cells[at]
        long = cells[at].x1 - begin.x0 if rows else cells[at].y1 - begin.y0
        if long > HELD:
            yield tuple(part)
            part = []
        part.append(at)
    yield tuple(part)


def _outwards(runs: Sequence[Run], meets: Sequence[Meet]) -> list[Run]:
    """The runs by how many there are between them and the first; those below or left of it from there on outwards."""
    run_of = {at: number for number, run in enumerate(runs) for at in run}
    beside: dict[int, set[int]] = defaultdict(set)
    for one, two, *_ in meets:
        if run_of[one] != run_of[two]:
            beside[run_of[one]].add(run_of[two])
            beside[run_of[two]].add(run_of[one])
    order = [0]
    for number in order:
        order += sorted(beside[number] - set(order))
    order += sorted(set(range(len(runs))) - set(order))
    return [runs[number] for number in order]
