"""Frames of any sizes as one group: even gaps, compact, balanced, found by trying many arrangements.

An arrangement is a line of blocks (`blocks.py`); simulated annealing changes it a little at a time and keeps what
scores better (S. Kirkpatrick, C. D. Gelatt and M. P. Vecchi, Optimization by simulated annealing, Science 220, 1983,
from memory).  Where frames come in pairs of a size, arrangements that mirror each other left and right are tried, too.
The best of these and of all plain rows, columns and grids is taken; the same input and seed give the same result.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from random import Random
from typing import NamedTuple

from templates_gen.arranging.rows import arrange
from templates_gen.arranging.search.blocks import SHARES, Cut, Line, built, chained, changed, joined, place
from templates_gen.arranging.search.free_wall import FreeWall, settled
from templates_gen.arranging.search.orderly import orderly
from templates_gen.arranging.search.regret import regret
from templates_gen.arranging.search.score import total
from templates_gen.arranging.search.watch import Watch, unwatched
from templates_gen.base.geometry import TOLERANCE, Rect, Size, bounds
from templates_gen.job.model import Group

HOT, COLD = 0.02, 0.001
"""Of the score, that a change for the worse may cost at the start and at the end.  Our own design, no source."""

STEPS, STEPS_PER_FRAME, MOST_WORK = 2000, 650, 50e6
"""How many arrangements are tried: enough for a dozen frames in a second; the last bounds them by the square of the
number of frames, which is what scoring one takes.  Our own design, measured on one machine."""

NO_ROOM = 10.0
"""What an arrangement without room costs at least: more than any with room.  Our own design, no source."""

SPINE_CHANGES, SPINE_SWAPS = 0.15, 0.1
"""Shares of the changes of a mirrored sketch that are to its spine, and that swap two frames there.  Our own design."""

MOST_SINGLES = 4
"""Frames without a twin that a mirrored arrangement may stack in its middle.  Our own design, no source."""

WISH_WEIGHT, LOW_WEIGHT = 3.0, 0.25
"""What wishes count for beside the score.  Our own design, no source."""


SHARES_UP = {"bottom": 0.0, "above": 0.0, "centre": 0.5, "top": 1.0}
"""How far up a group, or a frame, the point is that its height is given for, by the ways to give it."""


class Pile(NamedTuple):
    """What is to be arranged in a room, about an upright line at x = `centre`, at this `height` (wall mm).

    The group says what goes there: its middle, an edge, or those of a frame.  `pinned` frames have their place already
    (wall mm); `masses` weigh the frames for the wish to have heavy ones low.
    """

    names: tuple[str, ...]
    sizes: tuple[Size, ...]
    group: Group
    room: FreeWall
    centre: float
    height: float
    pinned: Mapping[str, Rect]
    masses: Mapping[str, float]

    def off(self, rects: Mapping[str, Rect]) -> tuple[float, float]:
        """How far all frames have to be moved to hang where the group says (mm to the right, and up)."""
        group, box = self.group, bounds(rects.values())
        across, up = rects.get(group.anchor, box), rects.get(group.height.of, box)
        return self.centre - across.cx, self.height - up.y0 - SHARES_UP[group.height.by] * up.height


class Arranged(NamedTuple):
    """An arrangement on the wall (mm, by frame id), and what it costs: 1 less the score, and wishes not met.

    Without `rects` it found no room, and the cost says how far it is from having some.
    """

    cost: float
    rects: dict[str, Rect]


class Sketch(NamedTuple):
    """A line of blocks; for a mirrored one, of the left half, with the `spine` of single frames down the middle.

    `twins` gives for every frame of the half the one of the same size that mirrors it.
    """

    line: Line
    spine: tuple[int, ...] = ()
    share: float = 0.5
    twins: Mapping[int, int] | None = None


def salon(pile: Pile, watch: Watch | None = None) -> Arranged | None:
    """The best arrangement found; None when none has room on the wall."""
    return min(search(pile, watch or unwatched), key=lambda found: found.cost, default=None)


def search(pile: Pile, watch: Watch) -> Iterator[Arranged]:
    """Arrangements with room on the wall as they are found: the plain ones, then each that is the best of its run."""
    if not pile.names:
        yield Arranged(cost(pile.pinned, pile), dict(pile.pinned))
        return
    plain = plain_arrangements(pile)
    yield from (found for found, _ in plain if found.rects)
    starts = _starts(pile, [group for _, group in sorted(plain, key=lambda item: item[0].cost)])
    steps = _steps(len(pile.names)) // len(starts)
    for number, start in enumerate(starts):
        for done, found in enumerate(_anneal(start, pile, Random(f"{pile.group.seed}/{number}"), steps)):
            if found is not None and found.rects:
                yield found
            if not watch((number + done / steps) / len(starts)):
                return


def _steps(count: int) -> int:
    return int(min(STEPS + STEPS_PER_FRAME * count, MOST_WORK / count**2))


def plain_arrangements(pile: Pile) -> list[tuple[Arranged, Group]]:
    """All plain rows, columns and grids on the wall, with the groups that they are; some without room."""
    sizes = dict(zip(pile.names, pile.sizes, strict=True))
    found = []
    for group in orderly(pile.group, sizes) if sizes else ():
        rects = arrange(group, sizes)
        found.append((_on_wall({at: rects[name] for at, name in enumerate(pile.names)}, pile), group))
    return found


def _starts(pile: Pile, best: Sequence[Group]) -> list[Sketch]:
    """Sketches to begin with: the best rows and the best columns as they are, and mirrored halves."""
    number = {name: at for at, name in enumerate(pile.names)}
    found = []
    for kind in ("rows", "columns"):
        group = next(item for item in best if item.arrangement == kind)
        rows = [[number[name] for name in row] for row in group.rows]
        found.append(Sketch(chained(rows, beside=kind == "rows")))
    mirrored = _mirrored(pile)
    return found + ([mirrored] if mirrored else [])


def _mirrored(pile: Pile) -> Sketch | None:
    """Half of the twins in a column, the frames without a twin down the middle; None when too many have none."""
    by_size: dict[Size, list[int]] = {}
    for at, size in enumerate(pile.sizes):
        by_size.setdefault(size, []).append(at)
    twins = {one: two for same in by_size.values() for one, two in zip(same[::2], same[1::2], strict=False)}
    spine = tuple(same[-1] for same in by_size.values() if len(same) % 2)
    if not twins or len(spine) > MOST_SINGLES:
        return None
    return Sketch(chained([list(twins)], beside=False), spine, 0.5, twins)


def _anneal(sketch: Sketch, pile: Pile, random: Random, steps: int) -> Iterator[Arranged | None]:
    """One run: at every step the arrangement if it is the best of the run so far, else None."""
    best = now = _drawn(sketch, pile)
    yield best
    for step in range(1, steps):
        warmth = HOT * (COLD / HOT) ** (step / steps)
        trial = _varied(sketch, pile.sizes, random)
        most = now.cost - warmth * math.log(1 - random.random())
        found = _drawn(trial, pile, most)
        if found.cost < most:
            sketch, now = trial, found
        better = found.cost < best.cost
        best = found if better else best
        yield found if better else None


def _varied(sketch: Sketch, sizes: Sequence[Size], random: Random) -> Sketch:
    chance = random.random()
    if sketch.twins is not None and chance < SPINE_CHANGES:
        if len(sketch.spine) > 1 and chance < SPINE_SWAPS:
            spine = list(sketch.spine)
            one, two = random.sample(range(len(spine)), 2)
            spine[one], spine[two] = spine[two], spine[one]
            return sketch._replace(spine=tuple(spine))
        return sketch._replace(share=random.choice(SHARES))
    return sketch._replace(line=changed(sketch.line, sizes, random))


def _drawn(sketch: Sketch, pile: Pile, most: float = math.inf) -> Arranged:
    """The arrangement of a sketch; one that costs more than `most` may be said to cost less than it does."""
    across, down = pile.group.gap_across, pile.group.gap_down
    block = built(sketch.line, pile.sizes, across, down)
    axis = block.width + across / 2
    if sketch.spine:
        spine = built(chained([[at] for at in sketch.spine]), pile.sizes, across, down)
        block = joined(Cut(True, sketch.share), block, spine, across)
        axis = block.width - spine.width / 2
    rects: dict[int, Rect] = {}
    place(block, 0.0, 0.0, block.width, block.height, rects)
    for one, two in (sketch.twins or {}).items():
        rect = rects[one]
        rects[two] = Rect(2 * axis - rect.x1, rect.y0, 2 * axis - rect.x0, rect.y1)
    return _on_wall(rects, pile, most)


def _on_wall(rects: Mapping[int, Rect], pile: Pile, most: float = math.inf) -> Arranged:
    """The rectangles on the wall, moved out of the way of what is on it."""
    dx, dy = pile.off({pile.names[at]: rect for at, rect in rects.items()})
    wall, box = pile.room.wall.rect, bounds(rects.values()).shifted(dx, dy)
    beyond = max(0.0, wall.x0 - box.x0) + max(0.0, box.x1 - wall.x1) + max(0.0, -box.y0) + max(0.0, box.y1 - wall.y1)
    if beyond > TOLERANCE:
        return Arranged(NO_ROOM + 1 + beyond / (wall.width + wall.height), {})
    placed = settled({at: rect.shifted(dx, dy) for at, rect in rects.items()}, tuple(pile.pinned.values()), pile.room)
    if isinstance(placed, int):
        return Arranged(NO_ROOM + placed / len(rects), {})
    named = {pile.names[at]: rect for at, rect in placed.items()} | dict(pile.pinned)
    return Arranged(cost(named, pile, most), named)


def cost(rects: Mapping[str, Rect], pile: Pile, most: float = math.inf) -> float:
    """What an arrangement costs: 1 less its score, and what is wished and not met.

    Where that is more than `most`, some number above `most`, which is sooner known.
    """
    group, wishes, extra = pile.group, pile.group.wishes, 0.0
    if wishes is not None:
        extra = WISH_WEIGHT * regret(wishes, rects, max(group.gap_across, group.gap_down))
        extra += LOW_WEIGHT * _high(rects, pile.masses) if wishes.heavy_low else 0.0
    least = 1 - most + extra
    return 1 - total(list(rects.values()), group.gap_across, group.gap_down, pile.centre, least) + extra


def _high(rects: Mapping[str, Rect], masses: Mapping[str, float]) -> float:
    """How high the weight sits in the group: 0 at its bottom edge, 1 at its top."""
    box = bounds(rects.values())
    mean = sum(masses[name] * rect.cy for name, rect in rects.items()) / sum(masses[name] for name in rects)
    return (mean - box.y0) / box.height
