"""How good found arrangements are, and how long they take: `python tests/bench/arrangements.py`.

Random piles of frames against the best of plain rows, columns and grids by their looks; a dozen and sixty frames by
the clock; and packing problems without gaps, of which the best density is known to be 1.
"""

from __future__ import annotations

import statistics
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from templates_gen.arranging.plan import plan_wall
from templates_gen.arranging.search.ground import boxed
from templates_gen.arranging.search.looks import Looks, looks
from templates_gen.arranging.search.salon import plain_arrangements
from templates_gen.arranging.search.task import Task, pile_of
from templates_gen.job.model import Group, Height, Job, Wall
from tests.arranging.test_salon import found, pile
from tests.jobs import frame, job
from tests.packing_data import PROBLEMS


def compared(asked: Job) -> tuple[Looks, float, float, float]:
    """The looks of the arrangement found, its cost, that of the best plain one, and the seconds of CPU."""
    about = pile_of(asked, asked.group, 2000.0, 1400.0)
    plain = min(arranged.cost for arranged, _ in plain_arrangements(about))
    start = time.process_time()
    rects = {hung.frame.id: hung.rect for hung in plan_wall(asked).frames}
    taken = time.process_time() - start
    boxes = [boxed(rects[name]) for name in about.names]
    return looks(boxes, Task(about).ground.gaps, 2000.0), Task(about).judge(boxes), plain, taken


def piles() -> None:
    """Thirty piles of 5 to 30 frames of 3 to 6 sizes."""
    rows = [compared(found(pile(seed, 5 + 5 * seed % 26, 3 + seed % 4), Wall(name="", width=4000.0, height=2600.0),
                           wishes=None)) for seed in range(30)]  # fmt: skip
    seen, mine, plain, taken = zip(*rows, strict=True)
    print(
        f"30 piles: looks cost {statistics.mean(mine):.3f}, of the best plain one {statistics.mean(plain):.3f}; never "
        f"worse: {all(one <= two + 1e-9 for one, two in zip(mine, plain, strict=True))}; {sum(taken):.1f} s of CPU"
    )
    print(
        f"  voids above 0.02 in {sum(each.void > 0.02 for each in seen)}, narrow at the top or foot in "
        f"{sum(each.crown > 0 for each in seen)}, mirror images missing: {statistics.mean(e.unlike for e in seen):.3f}"
    )


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
