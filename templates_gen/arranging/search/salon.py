"""Frames of any sizes as one group: compact, about its centre line, found by trying many arrangements.

What an arrangement costs is how it looks (`looks.py`) and what is wished and not met.  Rows of stacks are searched
(`stacking.py`), groups grow from the middle (`growing.py`), halves that mirror each other where frames come in pairs
(`mirrored.py`); of the best, frames are taken out and set again (`improving.py`), and slid a little (`sliding.py`).
All plain rows, columns and grids are tried as well.  The same input and seed give the same result: steps are counted.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from random import Random
from typing import NamedTuple

from templates_gen.arranging.rows import arrange
from templates_gen.arranging.search.boxes import Box, shifted
from templates_gen.arranging.search.free_wall import settled
from templates_gen.arranging.search.ground import boxed
from templates_gen.arranging.search.growing import grown
from templates_gen.arranging.search.improving import Found, hung, improved
from templates_gen.arranging.search.mirrored import Mirrored, mirrored, twins
from templates_gen.arranging.search.orderly import orderly
from templates_gen.arranging.search.sliding import MOST as MOST_SLIDES
from templates_gen.arranging.search.sliding import slid
from templates_gen.arranging.search.stacking import CHUNK, stacked
from templates_gen.arranging.search.stacks import Rows
from templates_gen.arranging.search.task import Pile, Task, Watch, no_room, unwatched
from templates_gen.base.geometry import Rect, bounds
from templates_gen.job.model import Group

STEPS, WORK = 1250, 26_000
"""How many times frames are taken out and set again, by all parts of a search: at most the first, and for many frames
the second over their number.  Enough for a dozen frames in a second.  Our own design, measured on one machine."""

CHANGES = 1.3
"""Changes of rows of stacks that take as long as a step, for every frame.  Our own design, measured on one machine."""

STACKED, GROWN, IMPROVED, MIRRORED = 0.25, 0.25, 0.25, 0.25
"""The shares of the steps: rows of stacks, groups that grow, taking out and setting again (of the best of either), and
groups that mirror each other, for which the others are cut.  Our own design, no source."""

NO_ROOM = 10.0
"""What an arrangement without room costs at least: more than any with room.  Our own design, no source."""

MANY, OF_MANY, FEW = 40, (0.6, 0.1, 0.15), 4
"""Frames from which on rows of stacks get most of the steps, the shares then, and frames that are too few for halves
that mirror each other.  Our own design, measured, no source."""

SLIDES = 0.01
"""The share of the whole that small slides take.  Our own design, no source."""


class Arranged(NamedTuple):
    """An arrangement on the wall (mm, by frame id), what it costs, and its kind: how it was found.

    Without `rects` it found no room.
    """

    cost: float
    rects: dict[str, Rect]
    kind: str = ""


class _Part(NamedTuple):
    """A part of the search: its kind, what it finds, and how many times it is asked."""

    kind: str
    steps: Iterable[Found | None]
    times: int


def arranged(pile: Pile, watch: Watch | None = None) -> dict[str, Rect]:
    """The rectangle of every frame of a pile (wall mm), found by a search that takes a second for a dozen frames.

    Raises InputError when there is no room.
    """
    found = salon(pile, watch)
    if found is None:
        raise no_room("group, arrangement")
    return found.rects


def salon(pile: Pile, watch: Watch | None = None) -> Arranged | None:
    """The best arrangement found; None when none has room on the wall."""
    return min(search(pile, watch or unwatched), key=lambda found: found.cost, default=None)


def search(pile: Pile, watch: Watch) -> Iterator[Arranged]:
    """Arrangements with room on the wall as they are found: the plain ones, then each that is the best of its part."""
    if not pile.names:
        yield Arranged(Task(pile).judge([]), dict(pile.pinned))
    plain = plain_arrangements(pile)
    yield from (found for found, _ in plain if found.rects)
    yield from searched(pile, plain, watch)


def searched(pile: Pile, plain: Sequence[tuple[Arranged, Group]], watch: Watch) -> Iterator[Arranged]:
    """What `search` finds beside the plain ones, which it begins from, too; nothing where no frame is to be placed."""
    if pile.names:
        yield from _Search(Task(pile), plain, watch).found()


class _Search:
    """One search: its parts one after the other, and the best of each."""

    def __init__(self, task: Task, plain: Sequence[tuple[Arranged, Group]], watch: Watch) -> None:
        self._task, self._watch, self._goes_on = task, watch, True
        self._plain = sorted(plain, key=lambda item: item[0].cost)
        self._steps = max(1, _steps(len(task.pile.names)))
        self._done = 0.0
        self._best: dict[str, Found] = {}

    def found(self) -> Iterator[Arranged]:
        """Everything that is the best of its part when it is found."""
        for part, share in self._parts():
            yield from self._run(part, share)
            if not self._goes_on:
                return

    def _run(self, part: _Part, share: float) -> Iterator[Arranged]:
        for at, found in enumerate(part.steps):
            if found is not None and found.cost < self._best.get(part.kind, Found(NO_ROOM, [])).cost:
                self._best[part.kind] = found
                yield Arranged(found.cost, self._task.named(found.boxes), part.kind)
            self._goes_on = self._watch(min(1.0, self._done + share * min(1.0, at / part.times)))
            if not self._goes_on:
                return
        self._done += share

    def _parts(self) -> Iterator[tuple[_Part, float]]:
        """The parts, each with its share of the whole; each begins with what those before it found."""
        count = len(self._task.pile.names)
        halves = None if self._task.ground.fixed else twins(self._task.pile.sizes, self._task.ground.across)
        part = 1 - MIRRORED if halves and count > FEW else 1.0
        many = count >= MANY
        stack, grow, better = OF_MANY if many else (STACKED, GROWN, IMPROVED)
        if not self._task.ground.fixed:
            yield self._stacked(round(part * stack * self._steps)), part * stack
        yield self._grown(round(part * grow * self._steps)), part * grow
        for kind in (ROWS, GROWING):
            if kind in self._best:
                yield self._improved(kind, round(part * better * self._steps)), part * better
        if halves and part < 1:
            half = Mirrored(self._task.ground.sizes, self._task.ground.gaps, halves)
            yield self._mirrored(half, round(MIRRORED * self._steps)), MIRRORED
        best = sorted(self._best, key=lambda kind: self._best[kind].cost)
        for kind in best[:1]:
            yield _Part(kind, slid(self._best[kind], self._task.ground, self._task.judge), MOST_SLIDES), SLIDES

    def _random(self, name: str) -> Random:
        return Random(f"{self._task.pile.group.seed}/{name}")

    def _hung(self, boxes: Sequence[Box]) -> Found | None:
        """The frames on the wall, and what they cost there."""
        placed = hung(self._task.ground, boxes)
        return Found(self._task.judge(placed), placed) if placed else None

    def _stacked(self, steps: int) -> _Part:
        ground, changes = self._task.ground, round(steps * CHANGES * len(self._task.pile.names))

        def cost(boxes: Sequence[Box]) -> float:
            found = self._hung(boxes)
            return found.cost if found else NO_ROOM

        left, low, right, high = ground.within
        rows = stacked(ground.sizes, ground.gaps, (right - left, high - low), changes,
                       str(self._task.pile.group.seed), cost, [*self._begun()])  # fmt: skip
        return _Part(ROWS, (self._hung(boxes) if boxes else None for boxes in rows), max(1, changes // CHUNK))

    def _begun(self) -> Iterator[tuple[bool, Rows]]:
        """The best plain rows and columns, every frame a stack of its own."""
        number = {name: at for at, name in enumerate(self._task.pile.names)}
        for turned, kind in ((False, "rows"), (True, "columns")):
            group = next((group for _, group in self._plain if group.arrangement == kind), None)
            if group is not None:
                yield turned, tuple(tuple(((number[name],),) for name in row) for row in group.rows)

    def _grown(self, steps: int) -> _Part:
        random, task = self._random("grown"), self._task
        times = max(3, round(steps * GROWTHS / len(task.pile.names)))

        def groups() -> Iterator[Found | None]:
            for _ in range(times):
                boxes = grown(task.ground, task.pull, random)
                yield self._hung([boxes[at] for at in range(len(boxes))]) if boxes else None

        return _Part(GROWING, groups(), times)

    def _improved(self, kind: str, steps: int) -> _Part:
        task = self._task
        run = improved(self._best[kind], task.ground, task.judge, task.pull, task.wished, steps, self._random(kind))
        return _Part(kind, run, max(1, steps))

    def _mirrored(self, half: Mirrored, steps: int) -> _Part:
        runs = mirrored(half, _about_zero(self._task), steps, self._random("mirrored"))
        return _Part(MIRROR, (self._hung(found.boxes) if found else None for found in runs), max(1, steps))


ROWS, GROWING, MIRROR = "rows of stacks", "from the middle out", "mirrored"
"""The kinds of what is found, in words."""

GROWTHS = 4
"""Frames set in growing groups that take as long as a step.  Our own design, measured on one machine."""


def _about_zero(task: Task) -> Callable[[Sequence[Box], float], float]:
    """What groups cost that mirror each other about the upright at 0, wherever they are."""

    def judge(boxes: Sequence[Box], most: float) -> float:
        dx, dy = task.ground.off(boxes)
        return task.judge([shifted(box, dx, dy) for box in boxes], most)

    return judge


def _steps(count: int) -> int:
    return int(min(STEPS, WORK / count))


def plain_arrangements(pile: Pile) -> list[tuple[Arranged, Group]]:
    """All plain rows, columns and grids on the wall, with the groups that they are; some without room."""
    sizes, task = dict(zip(pile.names, pile.sizes, strict=True)), Task(pile)
    found = []
    for group in orderly(pile.group, sizes) if sizes else ():
        rects = arrange(group, sizes)
        found.append((_on_wall({at: rects[name] for at, name in enumerate(pile.names)}, task), group))
    return found


def _on_wall(rects: Mapping[int, Rect], task: Task) -> Arranged:
    """The rectangles on the wall, moved out of the way of what is on it."""
    dx, dy = task.ground.off([boxed(rects[at]) for at in range(len(rects))])
    moved = {at: rect.shifted(dx, dy) for at, rect in rects.items()}
    whole, wall = bounds(moved.values()), task.pile.room.wall.rect
    if not wall.holds(whole):
        return Arranged(math.inf, {})
    placed = settled(moved, tuple(task.pile.pinned.values()), task.pile.room)
    if isinstance(placed, int):
        return Arranged(math.inf, {})
    boxes = [boxed(placed[at]) for at in range(len(placed))]
    return Arranged(task.judge(boxes), task.named(boxes))
