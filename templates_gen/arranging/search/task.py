"""What is to be arranged, and what an arrangement of it costs."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise
from typing import NamedTuple

from templates_gen.arranging.search.boxes import Box, around
from templates_gen.arranging.search.free_wall import FreeWall, free_wall
from templates_gen.arranging.search.ground import Ground
from templates_gen.arranging.search.growing import Pull
from templates_gen.arranging.search.looks import cost
from templates_gen.arranging.search.regret import IN_LINE, TOGETHER, regret
from templates_gen.base.adding import added
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect, Size, bounds
from templates_gen.job.model import Group, Job
from templates_gen.job.wishes import Wishes

WISH_WEIGHT, LOW_WEIGHT = 3.0, 0.25
"""What wishes count for beside the looks.  Our own design, no source."""

OFF_WEIGHT = 1.5
"""What a group costs that does not hang quite where it should, for something is in its way.  Our own design."""

PULL = 2.0
"""What a wish counts for when a frame is set.  Our own design, no source."""


MASS_PER_AREA = 1e-5
"""kg per mm² (10 kg/m²) of a frame whose weight is not known, to compare with those that are.  Our own design."""


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


class Task:
    """A pile in plain numbers: the ground, and what is wished of the frames by their places in the pile."""

    def __init__(self, pile: Pile) -> None:
        self.pile = pile
        self.ground = Ground(
            pile.names, pile.sizes, pile.group, pile.room, (pile.centre, pile.height), pile.pinned.values()
        )
        number = {name: at for at, name in enumerate(pile.names)}
        wishes = pile.group.wishes or Wishes()
        asked = (*wishes.together, *wishes.same_height)
        wished = [[number[name] for name in names if name in number] for names in asked]
        self.wished = [each for each in wished if each]
        for names in wishes.same_height:
            for name in names:
                others = [number[other] for other in names if other != name and other in number]
                if name in number:
                    self.ground.level_with.setdefault(number[name], []).extend(others)
        pinned = max((rect.width * rect.height for rect in pile.pinned.values()), default=0.0)
        if wishes.largest == "centre" and max((w * h for w, h in pile.sizes), default=0.0) > pinned:
            self.ground.first = max(number.values(), key=lambda at: pile.sizes[at][0] * pile.sizes[at][1])
            self.wished.append([self.ground.first])
        self._beside = _neighbours(wishes, number)
        self.pull: Pull | None = self._pull if self.wished else None

    def named(self, boxes: Sequence[Box]) -> dict[str, Rect]:
        """The rectangle of every frame by its id, pinned ones too (wall mm)."""
        found = {name: Rect(*box) for name, box in zip(self.pile.names, boxes, strict=True)}
        return found | dict(self.pile.pinned)

    def judge(self, boxes: Sequence[Box], most: float = math.inf) -> float:
        """What frames on the wall cost; where that is more than `most`, some number above it, which is sooner known."""
        extra = self._off(boxes) + self._unmet(boxes)
        if extra > most:
            return extra
        return extra + cost([*boxes, *self.ground.fixed], self.ground.gaps, self.ground.axis, most - extra)

    def _off(self, boxes: Sequence[Box]) -> float:
        """What it costs that the group does not hang where it should."""
        dx, dy = self.ground.off(boxes)
        if abs(dx) + abs(dy) < 2 * IN_LINE:
            return 0.0
        x0, y0, x1, y1 = around([*boxes, *self.ground.fixed])
        return OFF_WEIGHT * (abs(dx) / (x1 - x0) + abs(dy) / (y1 - y0))

    def _unmet(self, boxes: Sequence[Box]) -> float:
        """What wishes cost that are not met."""
        wishes = self.pile.group.wishes
        if wishes is None or wishes == PLAIN:
            return 0.0
        rects = self.named(boxes)
        unmet = WISH_WEIGHT * regret(wishes, rects, max(self.ground.gaps))
        return unmet + (LOW_WEIGHT * self._high(rects) if wishes.heavy_low else 0.0)

    def _high(self, rects: Mapping[str, Rect]) -> float:
        """How high the weight sits in the group: 0 at its bottom edge, 1 at its top."""
        box, masses = bounds(rects.values()), self.pile.masses
        mean = added(masses[name] * rect.cy for name, rect in rects.items()) / added(masses[name] for name in rects)
        return (mean - box.y0) / box.height

    def _pull(self, at: int, box: Box, hung: Mapping[int, Box]) -> float:
        """What a place costs for what is wished of the frame and of those that hang already."""
        x0, y0, x1, y1 = box
        missed = 0.0
        for other in self._beside.get(at, ()):
            if other in hung:
                a0, b0, a1, b1 = hung[other]
                apart = math.hypot(max(0.0, a0 - x1, x0 - a1), max(0.0, b0 - y1, y0 - b1))
                missed += max(0.0, apart - TOGETHER * max(self.ground.gaps))
        for other in self.ground.level_with.get(at, ()):
            if other in hung:
                off = abs(hung[other][1] + hung[other][3] - y0 - y1) / 2
                missed += off + y1 - y0 if off > IN_LINE else 0.0
        if at == self.ground.first and hung:
            _, low, _, high = around([*hung.values(), *self.ground.fixed])
            x, y = self.ground.axis, (low + high) / 2
            missed += 0.0 if x0 <= x <= x1 and y0 <= y <= y1 else math.hypot((x0 + x1) / 2 - x, (y0 + y1) / 2 - y)
        return PULL * missed / (x1 - x0 + y1 - y0)


PLAIN = Wishes()
"""Nothing is wished."""


def _neighbours(wishes: Wishes, number: Mapping[str, int]) -> dict[int, list[int]]:
    """The frames that each frame is wished to be beside."""
    found: dict[int, list[int]] = {}
    for names in wishes.together:
        for one, two in pairwise(names):
            if one in number and two in number:
                found.setdefault(number[one], []).append(number[two])
                found.setdefault(number[two], []).append(number[one])
    return found


def pile_of(job: Job, group: Group, centre: float, height: float) -> Pile:
    """What there is to arrange for a job, with this group's gaps and wishes, about an upright line at x = `centre`, its
    middle or the edge that the group says at this height (wall mm)."""
    room = free_wall(job.wall, group.gap_across, group.gap_down)
    pins = group.wishes.pins if group.wishes else ()
    sizes = {frame.id: (frame.width, frame.height) for frame in job.frames}
    pinned = {name: Rect.about(centre + x, height + y, *sizes[name]) for name, x, y in pins}
    loose = tuple(name for name in sizes if name not in pinned)
    masses = {
        frame.id: frame.weight if frame.weight is not None else frame.width * frame.height * MASS_PER_AREA
        for frame in job.frames
    }
    return Pile(loose, tuple(sizes[name] for name in loose), group, room, centre, height, pinned, masses)


def no_room(where: str) -> InputError:
    """What is said where no arrangement was found."""
    problem = "no arrangement of these frames with their gaps has room on this wall"
    hint = "smaller gaps, fewer frames, less clear space around features, or another height or centre_on"
    return InputError(where, problem, hint)


Watch = Callable[[float], bool]
"""A function that a search is handed, and asks again and again how to go on.

It is told how much of the search's steps is done, from 0 to 1, never less than before.  When it gives True the search
goes on; when it gives False the search ends at once with the best arrangement so far (plain rows and columns are tried
before it is first asked).  It is asked at least every tenth of a second or so, in the thread that searches, so it must
be quick; one that raises ends the search with that.  `plan_wall(job, watch)` and `options(job, count, watch)` hand it
on.  Steps are counted, not timed: a search that is not ended finds the same whether it is watched or not.
"""


def unwatched(_: float) -> bool:
    """A watch that lets every search go on to its end."""
    return True
