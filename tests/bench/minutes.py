"""Minutes, sheets and expected errors of every cover, over the walls of `sheet_counts.py`, beside the strips they began
from.

Run by hand: `python tests/bench/minutes.py [walls [first]] [random N [SEED]] [a4] [letter] [linked] [marks] [bound]`;
`random` takes so many of the walls by a seeded chance, without `random` it is every wall.  The sums so far are told
after every wall.  A wall is hung as a job of frames placed by hand, each on a wire, and planned as `template` plans it:
a few seconds each.  Beside the sheets is a number that no paper can do with less of: nails of which no two fit on one
sheet, taken greedily; with `bound`, and with scipy installed by hand (nothing else here needs it), a linear programme
over all places of a sheet that could matter.  `bounds` tells these alone, of all walls in less than a minute.
"""

from __future__ import annotations

import importlib
import random
import sys
import time
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[2]))

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import replace
from templates_gen.job.model import Group, Height, Job, Spot, Wall
from templates_gen.tiling.demand import demand
from templates_gen.tiling.planning import tiled
from templates_gen.tiling.sheet import SheetPlan, given
from templates_gen.tolerance.effort import effort
from templates_gen.tolerance.expected import worst_error
from templates_gen.tolerance.holding import WITH_STRING, plan_sheets
from templates_gen.tolerance.neighbours import neighbours
from tests.bench.sheet_counts import wall
from tests.jobs import frame, job, paper

DROP = 47.3  # mm; our own choice
ROUND_THE_GROUP = 1000.0  # mm of wall more than the group both ways; our own choice
APART = 60.0  # mm between the points of lines that the bound asks for; our own choice
COVERS = (("linked", "cut"), ("marks", "cut"), ("marks", "none"))

AS_ONCE = {"a4": 24401.5, "letter": 25512.6}
"""Minutes of the 200 walls with every mark on sheets that are cut, as commit d1bbcae planned them: computed there
once."""


def hung(frames: list[Rect], size: str, cover: str, trim: str) -> Job:
    """A wall's frames as a job."""
    around = bounds(frames)
    named = [frame(f"{at}", r.width, r.height, DROP) for at, r in enumerate(frames, 1)]
    spots = tuple(
        (each.id, Spot(point="centre", x=r.cx - around.cx, y=r.cy - around.cy))
        for each, r in zip(named, frames, strict=True)
    )
    wide, high = around.width + ROUND_THE_GROUP, around.height + ROUND_THE_GROUP
    placed = Group(
        arrangement="placed", rows=(tuple(each.id for each in named),), gap_across=0.0, gap_down=0.0, spots=spots,
        centre_on="wall", height=Height(by="centre", at=high / 2),
    )  # fmt: skip
    on = paper(size, cover=cover, trim=trim)
    return job(*named, group=placed, wall=Wall(name="", width=wide, height=high), paper=on)


def fewest(plan: Plan, sheets: SheetPlan) -> int:
    """A number of sheets that holding all nails takes at least: so many nails of which no two fit on one sheet."""
    area = sheets.page.printable
    short, long = sorted((area.width - sheets.paper.overlap, area.height - sheets.paper.overlap))
    best = 0
    for key in (lambda nail: (nail.x, nail.y), lambda nail: (nail.y, nail.x)):
        alone: list[tuple[float, float]] = []
        for nail in sorted(plan.nails, key=key):
            apart = [(abs(nail.x - x), abs(nail.y - y)) for x, y in alone]
            if all(max(both) > long or min(both) > short for both in apart):
                alone.append((nail.x, nail.y))
        best = max(best, len(alone))
    return best


def bound(plan: Plan, sheets: SheetPlan) -> float:
    """A number of sheets that holding what the cover asks for takes at least: the least sum of shares of sheets that
    holds every box, whether they hang together or not (D. S. Hochbaum and W. Maass, Journal of the ACM 32(1), 1985, for
    the places: a sheet can be moved until it begins with some box).  Of lines and scales only some points are asked."""
    optimize, sparse = (importlib.import_module(f"scipy.{name}") for name in ("optimize", "sparse"))
    asked = given(plan, sheets.paper, sheets.printer, mixed=True)
    need = demand(plan, sheets.paper.cover, asked.clear)
    clear = asked.clear
    boxes = [
        (r.x0 - clear.left, r.y0 - clear.bottom, r.x1 + clear.right, r.y1 + clear.top) for r in need.whole
    ]  # fmt: skip
    for r in need.divisible:
        count = int(max(r.width, r.height) / APART) + 1
        ends = [(at + 0.5) / count for at in range(count)]
        boxes += [(r.x0 + r.width * at, r.y0 + r.height * at) * 2 for at in ends]
    every = np.array(boxes)
    area = asked.pages[False].printable
    held: set[bytes] = set()
    for wide, high in ((area.width, area.height), (area.height, area.width)):  # a window shows more than a cell
        for left in np.unique(every[:, 0]):
            column = np.flatnonzero((every[:, 0] >= left) & (every[:, 2] <= left + wide))
            bottoms, tops = every[column, 1], every[column, 3]
            held.update(column[(bottoms >= low) & (tops <= low + high)].tobytes() for low in np.unique(bottoms))
    sets = [np.frombuffer(one, column.dtype) for one in held]
    rows, columns = np.concatenate(sets), np.repeat(np.arange(len(sets)), [len(one) for one in sets])
    asks = sparse.csr_matrix((-np.ones(len(rows)), (rows, columns)), shape=(len(every), len(sets)))
    found = optimize.linprog(np.ones(len(sets)), A_ub=asks, b_ub=-np.ones(len(every)), method="highs")
    return float(found.fun)


def bounds_alone(seeds: list[int], sizes: list[str], covers: list[str]) -> None:
    """The bound of every paper and cover, summed over the walls, of which nothing is planned but strips."""
    for size in sizes:
        least = dict.fromkeys(covers, 0.0)
        for seed in seeds:
            plan = plan_wall(hung(wall(seed), size, "marks", "cut"))
            strips = tiled(plan, plan.job.paper)
            for cover in covers:
                least[cover] += bound(plan, replace(strips, paper=replace(strips.paper, cover=cover)))
        told = ", ".join(f"{cover} {sheets:.1f}" for cover, sheets in least.items())
        print(f"{size}, {len(seeds)} walls take at least so many sheets: {told}", flush=True)


class Sums:
    """What the walls of one paper and one cover come to."""

    def __init__(self, name: str, bounded: bool) -> None:
        self.name, self.walls, self.bounded = name, 0, bounded
        self.errors: list[str] = []
        self.taken = [0.0] * 4
        self.before = 0.0
        self.worst = 0.0
        self.above: list[int] = []
        self.short = 0
        self.seconds: list[float] = []
        self.refused: list[int] = []
        self.least = 0.0

    def add(self, seed: int, plan: Plan, limit: float, strips: float) -> None:
        """One wall; `limit` is the error that it may have (mm), `strips` the minutes of strips with whole edges."""
        start = time.process_time()
        sheets = plan_sheets(plan, plan.job.paper)
        self.seconds.append(time.process_time() - start)
        took = effort(sheets)
        self.walls += 1
        for at, value in enumerate((took.sheets, took.joins, took.cuts, took.minutes)):
            self.taken[at] += value
        self.before += strips
        self.least += bound(plan, sheets) if self.bounded else fewest(plan, sheets)
        self.short += sum(join.length < 106.0 for join in sheets.joins)  # mm: what holds firmly, by accuracy.py
        error = worst_error(plan, sheets, neighbours(plan))
        self.errors.append(f"{error:.1f}/{limit / WITH_STRING:.1f}")
        self.worst = max(self.worst, error / limit)
        if error > limit * 1.0001:
            self.above.append(seed)

    def __str__(self) -> str:
        sheets, joins, cuts, minutes = self.taken
        middle = sorted(self.seconds)[len(self.seconds) // 2] if self.seconds else 0.0
        once = AS_ONCE[self.name.split()[0]]
        share = f"{minutes / self.before if self.before else 0:.3f} of cut strips, {minutes / once:.3f} of all once"
        return (
            f"{self.name:14} {self.walls:3} walls {sheets:7.0f} sheets (no less than {self.least:.1f}) "
            f"{joins:7.0f} joins {cuts:7.0f} cuts {minutes:8.0f} min, {share}; {self.short} joins under 106 mm; "
            f"error at most {self.worst:.2f} of its limit, above it {self.above}; "
            f"{middle:.1f} s, at most {max(self.seconds, default=0.0):.1f} s; refused {self.refused}\n"
            f"  errors beside those of the strips (mm): {' '.join(self.errors)}"
        )


def main(seeds: list[int], sizes: list[str], covers: list[str], bounded: bool) -> None:
    every = {
        size: {way: Sums(f"{size} {' '.join(way)}", bounded) for way in COVERS if way[0] in covers} for size in sizes
    }
    for done, seed in enumerate(seeds, 1):
        for size, sums in every.items():
            strips = plan_wall(hung(wall(seed), size, "marks", "cut"))
            drawn = tiled(strips, strips.job.paper)
            limit = WITH_STRING * worst_error(strips, drawn, neighbours(strips))
            for way, of in sums.items():
                plan = replace(strips, job=hung(wall(seed), size, *way))
                try:
                    of.add(seed, plan, limit, effort(drawn).minutes)
                except InputError:
                    of.refused.append(seed)
        print(done, seed, *(f"\n{of}" for sums in every.values() for of in sums.values()), flush=True)


if __name__ == "__main__":
    words = sys.argv[1:]
    walls = list(range(200))
    if "random" in words:
        at = words.index("random") + 1
        some = [int(words.pop(at)) for _ in range(2) if words[at:] and words[at].isdigit()]
        walls = random.Random((*some[1:], 1)[0]).sample(walls, some[0])
    numbers = [int(word) for word in words if word.isdigit()]
    if numbers:
        first = (*numbers[1:], 0)[0]
        walls = walls[first : first + numbers[0]]
    sizes = [word for word in words if word in AS_ONCE] or [*AS_ONCE]
    covers = [cover for cover, _ in COVERS if cover in words] or [*dict(COVERS)]
    if "bounds" in words:
        bounds_alone(walls, sizes, covers)
    else:
        main(walls, sizes, covers, "bound" in words)
