"""Minutes of linked paper beside those of paper with every mark, over the walls of `sheet_counts.py`.

Run by hand: `python tests/bench/minutes.py [walls]`.  A wall's minutes are those of its sheets, joins and cuts.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Sequence
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).parents[2]))

from templates_gen.base.geometry import Rect, bounds
from templates_gen.tiling.cells import plan_cells
from templates_gen.tiling.joins import shared_sides
from templates_gen.tiling.minutes import minutes
from templates_gen.tiling.spine import Asked, spine
from tests.bench.sheet_counts import CLEAR, OVERLAP, PAPERS, demands, pages, wall

LEAST = 20.0  # mm of a side along which two sheets are taped
EDGE = 1.5  # mm that a cut keeps from a frame's edge


def taken(cells: Sequence[Rect]) -> tuple[int, int, int, float]:
    """Sheets, joins, cut sides and minutes of these cells; the sheet to the right or above is cut."""
    joins = [(one, two) for one, two, length in shared_sides(cells) if length >= LEAST]
    sides = {(two, cells[one].x1 == cells[two].x0) for one, two in joins}
    return len(cells), len(joins), len(sides), minutes(len(cells), len(joins), len(sides), 1)


def asked(frames: list[Rect], whole: list[Rect]) -> Asked:
    around = bounds(frames)
    edges = [(f, f.grown(EDGE)) for f in frames]
    reach = min(300.0, around.width / 2)
    return Asked(
        tuple(Rect(r.x0 - CLEAR.left, r.y0 - CLEAR.bottom, r.x1 + CLEAR.right, r.y1 + CLEAR.top) for r in whole),
        around.cx - reach, around.cx + reach, lambda _: around.cy, 7.0 + CLEAR.bottom, 7.0 + CLEAR.top,
        tuple(Rect(x - EDGE, o.y0, x + EDGE, o.y1) for f, o in edges for x in (f.x0, f.x1)),
        tuple(Rect(o.x0, y - EDGE, o.x1, y + EDGE) for f, o in edges for y in (f.y0, f.y1)),
    )  # fmt: skip


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    for paper in PAPERS:
        page = pages(paper)
        upright = (page[0].width - OVERLAP, page[0].height - OVERLAP)
        both, seconds, without = [], [], []
        for seed in range(count):
            frames = wall(seed)
            whole, thin = demands(frames, seed)
            start = time.process_time()
            found = spine(asked(frames, whole), [upright, upright[::-1]])
            seconds.append(time.process_time() - start)
            if found is None:
                without.append((seed, len(frames)))
                continue
            cells = [c for s in found for c in (s.cell, *(p for b in s.branches for p in b.cells))]
            marks = [c.rect for c in plan_cells(whole, thin, page, OVERLAP, CLEAR, True).cells]
            both.append((taken(cells), taken(marks)))
        linked, marks_ = ([sum(column) for column in zip(*rows, strict=True)] for rows in zip(*both, strict=True))
        print(f"{paper}: {len(both)} walls; minutes linked / marks {linked[3] / marks_[3]:.3f}")
        print(f"  linked {linked[:3]} {linked[3]:.0f} min; marks {marks_[:3]} {marks_[3]:.0f} min")
        print(f"  spine: median {median(seconds):.2f} s, max {max(seconds):.2f} s; none for {without}")


if __name__ == "__main__":
    main()
