"""How good found arrangements are, and how long they take: `python tests/bench/arrangements.py`.

Random piles of frames against the best of plain rows, columns and grids by the same score; a dozen and sixty frames by
the clock; and packing problems without gaps, of which the best density is known to be 1.
"""

from __future__ import annotations

import statistics
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from templates_gen.arranging.plan import plan_wall
from templates_gen.arranging.rows import arrange
from templates_gen.arranging.search.orderly import orderly
from templates_gen.arranging.search.score import score
from templates_gen.job.model import Group, Height, Job, Wall
from tests.arranging.test_salon import GAP, found, pile
from tests.jobs import frame, job
from tests.packing_data import PROBLEMS


def compared(asked: Job) -> tuple[float, float]:
    """The score of the arrangement found, and that of the best plain one."""
    sizes = {item.id: (item.width, item.height) for item in asked.frames}
    plain = max(score(list(arrange(group, sizes).values()), GAP, GAP).total for group in orderly(asked.group, sizes))
    rects = [hung.rect for hung in plan_wall(asked).frames]
    return score(rects, GAP, GAP, 2000.0).total, plain


def piles() -> None:
    """Fifty piles of 5 to 14 frames of 3 to 6 sizes."""
    rows = []
    for seed in range(50):
        asked = found(pile(seed, 5 + seed % 10, 3 + seed % 4), wishes=None)
        kinds = len({(item.width, item.height) for item in asked.frames})
        rows.append((kinds, *compared(asked)))
    many = [(mine, plain) for kinds, mine, plain in rows if kinds >= 4]
    print(f"50 piles: found {statistics.mean(row[1] for row in rows):.3f}, best plain "
          f"{statistics.mean(row[2] for row in rows):.3f} on average; never worse: "
          f"{all(mine >= plain - 1e-9 for _, mine, plain in rows)}")  # fmt: skip
    better = sum(mine > plain + 1e-9 for mine, plain in many)
    print(f"  of {len(many)} with four or more sizes {better} are better ({better / len(many):.0%})")


def clock() -> None:
    """CPU seconds for a dozen and for sixty frames."""
    for count, wall in ((12, (4000.0, 2600.0)), (60, (12_000.0, 3200.0))):
        asked = found(pile(5, count), Wall(name="", width=wall[0], height=wall[1]), seed=count)
        start = time.process_time()
        plan_wall(asked)
        print(f"{count} frames: {time.process_time() - start:.2f} s")


def packings() -> None:
    """Densities reached in a container a third larger than the best needs."""
    for name, ((width, height), items) in PROBLEMS.items():
        frames = [frame(f"i{at}", 30.0 * w, 30.0 * h) for at, (w, h) in enumerate(items)]
        wall = Wall(name="", width=40.0 * width, height=40.0 * height)
        asked = Group(arrangement="salon", rows=(), gap_across=0.0, gap_down=0.0,
                      height=Height(by="centre", at=wall.height / 2))  # fmt: skip
        plan = plan_wall(job(*frames, group=asked, wall=wall))
        filled = sum(hung.rect.width * hung.rect.height for hung in plan.frames)
        print(f"{name}: {len(frames)} items, density {filled / (plan.group.width * plan.group.height):.3f} of 1")


if __name__ == "__main__":
    piles()
    clock()
    packings()
