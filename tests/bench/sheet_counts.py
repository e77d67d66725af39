"""How many sheets the plan takes beside the plain grid, over 200 seeded walls.

Run by hand: `python tests/bench/sheet_counts.py [walls]`.
"""

from __future__ import annotations

import random
import sys
import time
from collections.abc import Callable
from pathlib import Path
from statistics import mean, median

sys.path.insert(0, str(Path(__file__).parents[2]))

from templates_gen.base.geometry import Rect, bounds
from templates_gen.tiling.cells import Clearance, Printable, plan_cells
from tests.sheet_baselines import best_offset, fixed_grid, fixed_grid_occupied

INCH = 25.4
SIZES = [(5, 7), (8, 10), (11, 14), (12, 12), (12, 16), (16, 20), (18, 24), (20, 20), (24, 36)]
PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
OVERLAP = 12.0
CLEAR = Clearance(13, 13, 6, 11)
CORNER = 40.0
OFFSETS = 20


def pages(paper: str) -> tuple[Printable, ...]:
    w, h = PAPERS[paper]
    return Printable(w - 14, h - 20, False), Printable(h - 14, w - 20, True)


def size(rng: random.Random) -> tuple[float, float]:
    w, h = rng.choice(SIZES)
    if rng.random() < 0.5:
        w, h = h, w
    return w * INCH, h * INCH


def grid(rng: random.Random, n: int, gap: float) -> list[Rect]:
    columns = rng.randint(2, max(2, round(n**0.5 * 1.6)))
    w, h = size(rng)
    return [Rect.sized(i % columns * (w + gap), -(i // columns) * (h + gap), w, h) for i in range(n)]


def rows(rng: random.Random, n: int, gap: float) -> list[Rect]:
    """Rows of unlike frames, centred on one another, each hung on its middle line."""
    found: list[Rect] = []
    count, y = rng.randint(1, 1 + n // 6), 0.0
    for k in range(count):
        sizes = [size(rng) for _ in range(n // count + (k < n % count))]
        x = -sum(w + gap for w, _ in sizes) / 2
        high = max(h for _, h in sizes)
        for w, h in sizes:
            found.append(Rect.sized(x, y - high / 2 - h / 2, w, h))
            x += w + gap
        y -= high + gap
    return found


def loose(rng: random.Random, n: int, gap: float) -> list[Rect]:
    """Each frame as near the middle as it can go without coming nearer than the gap to another."""
    found: list[Rect] = []
    for _ in range(n):
        w, h = size(rng)
        tries = []
        while not tries:
            spread = 300 + 140 * len(found)
            for _ in range(150):
                r = Rect.about(rng.gauss(0, spread), rng.gauss(0, spread / 2), w, h)
                if all(r.gap_to(o) >= gap for o in found):
                    tries.append(r)
        found.append(min(tries, key=lambda r: abs(r.cx) + 2 * abs(r.cy)))
    return found


def wall(seed: int) -> list[Rect]:
    rng = random.Random(seed)
    return rng.choice([grid, rows, loose])(rng, rng.randint(6, 40), rng.uniform(2, 3) * INCH)


def demands(frames: list[Rect], seed: int) -> tuple[list[Rect], list[Rect]]:
    rng = random.Random(seed)
    around = bounds(frames)
    whole = [Rect.about(f.cx, f.y1 - rng.uniform(20, 60) - 30, 22, 60) for f in frames]
    whole.append(Rect.about(around.cx, around.cy, 30, 30))
    thin = [Rect(around.x0, around.cy - 0.5, around.x1, around.cy + 0.5)]
    thin.append(Rect(around.cx - 0.5, around.y0, around.cx + 0.5, around.y1))
    for f in frames:
        thin += [Rect(f.x0, f.y0, f.x0 + 1, f.y1), Rect(f.x1 - 1, f.y0, f.x1, f.y1)]
        thin += [Rect(f.x0, f.y0, f.x1, f.y0 + 1), Rect(f.x0, f.y1 - 1, f.x1, f.y1)]
    return whole, thin


def corners(frames: list[Rect]) -> list[Rect]:
    """The corners of every frame instead of its whole edges."""
    a = CORNER
    return [Rect.sized(x, y, a, a) for f in frames for x in (f.x0, f.x1 - a) for y in (f.y0, f.y1 - a)]


def counts(frames: list[Rect], seed: int, page: tuple[Printable, ...]) -> dict[str, Callable[[], int]]:
    """What to measure on one wall: a name, and how to get the number of sheets."""
    whole, thin = demands(frames, seed)

    def plan(w: list[Rect], d: list[Rect], one: bool) -> Callable[[], int]:
        return lambda: len(plan_cells(w, d, page, OVERLAP, CLEAR, one).cells)

    return {
        "grid, blank sheets left out": lambda: fixed_grid_occupied(thin, page, OVERLAP),
        "the same at its best offset *": lambda: best_offset([], thin, page, OVERLAP, CLEAR, OFFSETS)[1] or 0,
        "all": plan(whole, [bounds(frames)], True),
        "marks, one piece": plan(whole, thin, True),
        "marks, pieces": plan(whole, thin, False),
        "corners and lines, one piece": plan(whole, thin[:2] + corners(frames), True),
        "nails": plan(whole, [], False),
    }


def main(walls: int) -> None:
    for paper in PAPERS:
        page = pages(paper)
        parts: dict[str, list[float]] = {}
        times: dict[str, list[float]] = {}
        for seed in range(walls):
            frames = wall(seed)
            base = fixed_grid(frames, page, OVERLAP)
            for name, count in counts(frames, seed, page).items():
                start = time.perf_counter()
                parts.setdefault(name, []).append(count() / base)
                times.setdefault(name, []).append(time.perf_counter() - start)
        print(f"{paper}: {walls} walls; fixed grid over the bounding box = 1.00")
        for name, values in parts.items():
            t = times[name]
            print(f"  {name:30} {mean(values):.3f}   median {median(t):.3f} s   max {max(t):.3f} s")
    print(f"* {OFFSETS} × {OFFSETS} offsets tried, whole items ignored")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 and sys.argv[1].isdigit() else 200)
