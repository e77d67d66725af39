"""The order of taping: which sheets are taped into one block, and which marks each block is laid on.

The sheets of a strip that hang together are taped first, one after the other, and make a block; then every block is
laid on what is there already, by the two register marks farthest apart.  A block that meets nothing of it begins a
new piece.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby, pairwise, permutations

from templates_gen.record import Record
from templates_gen.sheets.covered import Covered
from templates_gen.sheets.sheet import Join, SheetPlan

Meeting = tuple[float, float, int, int]
"""A register mark (x, y) on the wall, the sheet there already that carries it, and the one laid on that."""

Links = dict[int, dict[int, tuple[tuple[float, float], tuple[float, float]]]]
"""For every sheet the sheets it is joined to, each with the two marks that they share."""

FIRM = 106.0
"""mm between two marks by which a block is held firmly: on fewer it turns by more than the 0.6° that people recognise
("Recognition of stimulus orientation", Vision Research 30(10), 1990) in one case of twenty, when marks are matched to
0.4 mm (1.96 · 0.4 · √2 / tan 0.6°, worked out by hand here).  Blocks wait for a longer join.  Our own design."""


class Fit(Record, frozen=True):
    """Two register marks that are brought to meet; sheets by their number in the plan."""

    first: Meeting
    last: Meeting


class Block(Record, frozen=True):
    """Sheets taped one after the other: `inner` has a fit for each but the first.

    `laid` is how the block lies on earlier ones, None when it begins a piece.
    """

    sheets: tuple[int, ...]
    inner: tuple[Fit, ...]
    laid: Fit | None
    piece: int


def strips(sheets: SheetPlan) -> list[list[list[str]]]:
    """The names of the sheets by strip, and in each strip by what hangs together."""
    joined = {(join.under, join.over) for join in sheets.joins} | {(join.over, join.under) for join in sheets.joins}
    found: list[list[list[str]]] = []
    for _, names in groupby(_in_strips(sheets), key=lambda pair: pair[0]):
        runs: list[list[str]] = []
        for _, name in names:
            if runs and (runs[-1][-1], name) in joined:
                runs[-1].append(name)
            else:
                runs.append([name])
        found.append(runs)
    return found


def _in_strips(sheets: SheetPlan) -> list[tuple[str, str]]:
    def split(name: str) -> tuple[str, str]:
        letters = name.rstrip("0123456789")
        return letters, name[len(letters) :]

    order = []
    for sheet in sheets.sheets:
        letters, number = split(sheet.name)
        strip, place = (number, letters) if sheets.rows else (letters, number)
        order.append(((len(strip), strip, len(place), place), strip, sheet.name))
    return [(strip, name) for _, strip, name in sorted(order)]


def blocks(sheets: SheetPlan) -> tuple[Block, ...]:
    """Every block in the order in which it is laid: from the bottom row up, or from the left column on."""
    number = {sheet.name: at for at, sheet in enumerate(sheets.sheets)}
    runs = [tuple(number[name] for name in run) for strip in strips(sheets) for run in strip]
    cells = [sheet.cell for sheet in sheets.sheets]
    corners = {run: (cells[run[0]].x0, cells[run[0]].y0) for run in runs}
    runs.sort(key=lambda run: corners[run][::-1] if sheets.rows else corners[run])
    return tuple(_laid(runs, _links(sheets, number), sheets.rows))


def _links(sheets: SheetPlan, number: Mapping[str, int]) -> Links:
    """For every sheet its neighbours, and the two marks farthest apart that both carry, or what stands for them."""
    shared: dict[tuple[str, str], list[tuple[float, float]]] = defaultdict(list)
    for mark in sheets.marks:
        for pair in permutations(mark.sheets, 2):
            shared[pair].append((mark.x, mark.y))
    links: Links = defaultdict(dict)
    for join in sheets.joins:
        found = sorted(shared[join.under, join.over], key=lambda point: point[::-1] if join.upright else point)
        ends = (found[0], found[-1]) if len(found) > 1 else _stand_ins(join, found, sheets.hides)
        one, two = number[join.under], number[join.over]
        links[one][two] = links[two][one] = ends
    return links


def _stand_ins(
    join: Join, found: Sequence[tuple[float, float]], hides: Covered | None
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Two points for a join that has not got two marks: its ends, where it is cut.

    Where nothing is cut they are as far apart as makes up for the one pair of crossing lines; and half of that where
    there is none, for only lines of the wall cross such a join (our own guess, no source).
    """
    if hides is None:
        return (join.x0, join.y0), (join.x1, join.y1)
    x, y = found[0] if found else ((join.x0 + join.x1) / 2, (join.y0 + join.y1) / 2)
    half = hides.held(join.upright) / (2 if found else 4)
    return ((x, y - half), (x, y + half)) if join.upright else ((x - half, y), (x + half, y))


def _laid(runs: Sequence[tuple[int, ...]], links: Links, rows: bool) -> Iterator[Block]:
    """The blocks, each laid when it meets enough of what is there; the marks of a row count by x, of a column by y."""
    run_of = {sheet: run for run in runs for sheet in run}
    waiting = {run: at for at, run in enumerate(runs)}
    met: dict[tuple[int, ...], list[Meeting]] = {}  # of every block that could be laid now
    pieces = 0
    while waiting:
        run = _next(waiting, met, rows)
        del waiting[run]
        laid = _outermost(met.pop(run, ()), rows)
        pieces += laid is None
        yield Block(run, tuple(_fit(links, one, two) for one, two in pairwise(run)), laid, pieces)
        for under in run:
            for over, ends in links[under].items():
                if run_of[over] in waiting:
                    met.setdefault(run_of[over], []).extend((x, y, under, over) for x, y in ends)


def _next(
    waiting: Mapping[tuple[int, ...], int], met: Mapping[tuple[int, ...], Sequence[Meeting]], rows: bool
) -> tuple[int, ...]:
    """The first block in order that is held firmly; else the one with its marks farthest apart; else a new piece."""
    axis = 0 if rows else 1
    apart = {run: max(at[axis] for at in marks) - min(at[axis] for at in marks) for run, marks in met.items()}
    if firm := [run for run in met if apart[run] >= FIRM]:
        return min(firm, key=lambda run: waiting[run])
    return max(apart, key=lambda run: apart[run]) if apart else next(iter(waiting))


def _fit(links: Links, under: int, over: int) -> Fit:
    first, last = links[under][over]
    return Fit((*first, under, over), (*last, under, over))


def _outermost(met: Sequence[Meeting], rows: bool) -> Fit | None:
    axis = 0 if rows else 1
    return Fit(min(met, key=lambda at: at[axis]), max(met, key=lambda at: at[axis])) if met else None
