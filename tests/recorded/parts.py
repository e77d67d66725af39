"""What single parts of planning give for many made-up cases, a line each: sheets lying anyhow, rulers, marks, rolls."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import product
from random import Random

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.checks.cables.edges import edge_pieces
from templates_gen.job.model import Wall
from templates_gen.job.paper_sizes import SIZES
from templates_gen.tiling.branches import near_misses
from templates_gen.tiling.covered import covered, cross_points, uncut_clearance
from templates_gen.tiling.laid import Laid
from templates_gen.tiling.large_pages import comes_off_a_roll
from templates_gen.tiling.page import page_of
from templates_gen.tiling.parting import lighter
from templates_gen.tiling.patches import Ground, Patch, Wanted
from templates_gen.tiling.quickest import marks_bits
from templates_gen.tiling.registering import end_marks
from templates_gen.tiling.regrowing import Growing
from templates_gen.tiling.rulers import rulers
from templates_gen.tiling.searching import Found, Judged, quicker
from templates_gen.tiling.sheet import clearance
from tests.jobs import frame, job, paper
from tests.recorded.listing import numbers
from tests.tiling.runs import put_into_runs

PATCHES = 120
"""So many walls of sheets that lie anyhow.  Our own choice."""

STEPS = 30
"""Steps of search on each.  Our own choice."""

A4 = ((186.0, 273.0), (273.0, 186.0))
"""Width and height of a cell on a page of A4, upright and on its side (mm)."""


def of_patches() -> Iterator[str]:
    """Sheets that lie anyhow: what they take, how they hang together, and what a short search makes of them."""
    for seed in range(PATCHES):
        chance = Random(seed)
        patches = _anyhow(chance)
        ground = _ground(chance, patches)
        laid = Laid.of(ground, patches)
        if laid is None:
            yield f"{seed}: may not lie so"
            continue
        spare = [at for at, patch in enumerate(patches) if laid.spare(patch)]
        names = list(laid.names().values())
        yield (
            f"{seed}: {laid.seconds:.3f} s, {len(laid.weak)} short, one piece {laid.one_piece}, pieces {names}, "
            f"spare {spare}, missing {laid.missing()}, near {near_misses([Rect(*p) for p in patches[:3]], [])}"
        )
        yield f"    woven {_woven(patches, seed)}"
        yield f"    searched {_searched(laid, seed)}"


def _anyhow(chance: Random) -> list[Patch]:
    """Sheets one beside the other on a grid, some of them smaller, some shifted, some left out."""
    found: list[Patch] = []
    for column, row in product(range(chance.randint(2, 4)), range(chance.randint(1, 4))):
        wide, high = 186.0, 273.0
        x, y = column * wide, row * high + (chance.choice((0.0, 90.0)) if column else 0.0)
        if chance.random() < 0.8 or not found:
            found.append((x, y, x + wide, y + chance.choice((high, high, 200.0))))
    return found


def _ground(chance: Random, patches: list[Patch]) -> Ground:
    """Something to hold on about every other sheet, and frames' edges along which no join may run."""
    items = []
    for x0, y0, x1, y1 in patches[:: chance.choice((1, 2))]:
        x, y = chance.uniform(x0, x1 - 50.0), chance.uniform(y0, y1 - 50.0)
        items.append((x, y, x + chance.choice((0.0, 40.0)), y + 44.0))
    edge = chance.uniform(50.0, 400.0)
    upright = (Rect(edge, 0.0, edge + 3.0, 500.0),)
    return Ground(Wanted(tuple(items), upright, (Rect(0.0, edge, 500.0, edge + 3.0),), A4, cut=chance.random() < 0.7))


def _woven(patches: list[Patch], seed: int) -> str:
    """The strips that these sheets are put into, from the first, with the line through its middle."""
    cells = [Rect(*patch) for patch in patches]
    line = cells[0].cy
    found = put_into_runs(cells, 0, lambda cell: cell.y0 < line < cell.y1, bool(seed % 2), A4[0])
    return " ".join(f"{cell.strip}.{cell.place}{'t' * cell.turned}@{cells.index(cell.rect)}" for cell in found)


def _searched(laid: Laid, seed: int) -> str:
    """What a short search finds, for which sheets far to the right err most, and what can then be left out."""

    def excess(some: Laid, _: float = 0.0) -> Judged:
        right = max(some.patches, key=lambda patch: patch[2])
        return Judged(max(0.0, right[2] / 1000.0 - 0.6), (right[2:],))

    if not laid.all_held or not laid.one_piece:
        grown = Growing(laid.ground, Random(seed)).braced(laid, laid.patches[0])
        return f"braced {_sums(grown)}"
    start = Found(laid, excess(laid))
    best = quicker(start, STEPS, excess, seed)
    less = lighter(start, excess)
    return f"{_sums(best.laid)} {best.excess:.4f}; lighter {_sums(less.laid)}"


def _sums(laid: Laid | None) -> str:
    if laid is None:
        return "nothing"
    sums = (sum(side) for side in zip(*laid.patches, strict=True))
    return f"{len(laid.patches)} in {laid.seconds:.3f} s, {numbers(*sums)}"


def of_rulers() -> Iterator[str]:
    """Both rulers of every paper, upright and on its side, in every unit; with marks at their ends on one of them."""
    marks = [Rect(x, y, x + 18.4, y + 5.0) for x, y in ((170.0, 18.0), (140.0, 24.0))]
    for name, unit, turned in product(SIZES, ("mm", "in"), (False, True)):
        page = page_of(paper(name), turned)
        for overlap, some in ((12.0, ()), (20.0, marks)):
            level, plumb = rulers(page, overlap, unit, some)
            ends = numbers(level.x0, level.y0, level.x1, plumb.x0, plumb.y0, plumb.y1)
            yield f"{name} {unit}{' turned' * turned} {overlap}: {ends}"


def of_joins() -> Iterator[str]:
    """The marks of joins of every length, cut and not, and how much stays clear."""
    for size in ("a4", "letter"):
        hides = covered([page_of(paper(size), turned).printable for turned in (False, True)], 12.0)
        clear = uncut_clearance(clearance(12.0), hides)
        sides = numbers(clear.left, clear.bottom, clear.right, clear.top)
        yield f"{size}: clear {sides}, held {numbers(hides.held(True), hides.held(False))}"
        for length in range(20, 220, 9):
            ends = [(100.0, 50.0, 100.0, 50.0 + length), (100.0, 50.0, 100.0 + length, 50.0)]
            points = [[numbers(*at) for at in (*end_marks(line), *cross_points(line, hides, clear))] for line in ends]
            yield f"{size} {length}: {' | '.join(map(', '.join, points))}"
    for size, at in product((8.0, 39.0, 41.0, 130.0), (0.0, 95.0, 180.0)):
        cells = [Rect(0.0, 0.0, 186.0, 100.0), Rect(186.0, 0.0, 372.0, 100.0), Rect(0.0, 100.0, 372.0, 200.0)]
        bits = [*marks_bits([Rect(at, at, at + size, at + 4.0), Rect(at, 20.0, at + 4.0, 20.0 + size)], cells, 12.0)]
        sums = (sum(getattr(bit, side) for bit in bits) for side in ("x0", "y0", "x1", "y1"))
        yield f"bits {size} {at}: {len(bits)}, {numbers(*sums)}"


def of_rolls() -> Iterator[str]:
    """From what size of a frame on one page of it comes off no usual roll, in every unit."""
    for unit, shape in product(("mm", "cm", "in"), (0.4, 1.0, 2.5)):
        sizes = range(300, 1700, 2)
        fits = [_off_a_roll(unit, float(size), size * shape) for size in sizes]
        changes = [size for size, now, before in zip(sizes[1:], fits[1:], fits, strict=False) if now != before]
        yield f"{unit} {shape}: {fits[0]}, changes at {changes}"


def _off_a_roll(unit: str, wide: float, high: float) -> bool:
    return comes_off_a_roll(plan_wall(job(frame("A", wide, high, 50.0), unit=unit)))


OUTLINES: dict[str, tuple[tuple[float, float], ...]] = {
    "level": ((0.0, 0.0), (4000.0, 0.0), (4000.0, 2600.0), (0.0, 2600.0)),
    "under a roof": ((0.0, 0.0), (4000.0, 0.0), (4000.0, 1500.0), (2500.0, 2600.0), (0.0, 2600.0)),
    "the other way round": ((0.0, 2600.0), (2500.0, 2600.0), (4000.0, 1500.0), (4000.0, 0.0), (0.0, 0.0)),
    "steep": ((0.0, 0.0), (3000.0, 0.0), (2880.0, 2400.0), (120.0, 2520.0), (0.0, 2400.0)),
    "a long slope": ((0.0, 0.0), (9000.0, 0.0), (9000.0, 900.0), (0.0, 4000.0)),
    "a pitch of 45°": ((0.0, 0.0), (2000.0, 0.0), (2000.0, 1000.0), (1000.0, 2000.0), (0.0, 2000.0)),
}
"""Walls by their corners."""


def of_edges() -> Iterator[str]:
    """The edges of walls, and the bands along them: how many pieces each side has, and sums of their places."""
    for name, outline in OUTLINES.items():
        wall = Wall(name="", width=4000.0, height=2600.0, outline=outline)
        edges = edge_pieces(wall)
        for side in ("floor", "right", "top", "left"):
            pieces = [edge for edge in edges if edge.side == side]
            bands = [edge.band(30.0, 150.0) for edge in pieces]
            sums = [sum(getattr(rect, at) for rect in bands) for at in ("x0", "y0", "x1", "y1")]
            first = [f"{edge.rect.x0:.2f} {edge.rect.y0:.2f} x{edge.stretch:.4f}" for edge in pieces[:2]]
            yield f"{name}, {side}: {len(pieces)} {numbers(*sums)} {', '.join(first)}"


PARTS: dict[str, Callable[[], Iterator[str]]] = {
    "patches": of_patches, "rulers": of_rulers, "joins": of_joins, "rolls": of_rolls, "edges": of_edges,
}  # fmt: skip
"""What is recorded, by its title."""
