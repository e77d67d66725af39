"""Where frames may hang, and where a group of them hangs, in plain numbers for a search."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cached_property

from templates_gen.arranging.search.boxes import Box, Gaps, around, shifted
from templates_gen.arranging.search.free_wall import FreeWall
from templates_gen.base.geometry import TOLERANCE, Rect, Size
from templates_gen.job.model import Group

SHARES_UP = {"bottom": 0.0, "above": 0.0, "centre": 0.5, "top": 1.0}
"""How far up a group, or a frame, the point is that its height is given for, by the ways to give it."""


class Ground:
    """The wall for frames of these sizes: what is free of it, and where the group goes (wall mm).

    `axis` and `height` are where the middle, or an edge, of the group goes, or of a frame of it: `across` and `up` are
    the places of those frames in the list of sizes, -1 for the group itself.  `fixed` frames have their place;
    `level_with` are the frames that each is wished to be level with, `first` is the one that is wished in the middle.
    """

    def __init__(
        self, names: Sequence[str], sizes: Sequence[Size], group: Group, room: FreeWall, at: tuple[float, float],
        fixed: Iterable[Rect],
    ) -> None:  # fmt: skip
        self.sizes = [(float(width), float(height)) for width, height in sizes]
        self.gaps = Gaps(room.gap_across, room.gap_down)
        self.axis, self.height = at
        self.share = SHARES_UP.get(group.height.by, 0.5)
        self.across = names.index(group.anchor) if group.anchor in names else -1
        self.up = names.index(group.height.of) if group.height.of in names else -1
        self.fixed = [boxed(rect) for rect in fixed]
        self.room = room
        self.level_with: dict[int, list[int]] = {}
        self.first = -1
        self.within = self._limited(boxed(room.within))
        self._known: dict[Box, bool] = {}

    def _limited(self, within: Box) -> Box:
        """What frames have to be within: above, or below, the edge of the group that hangs at a height."""
        left, low, right, high = within
        if self.fixed or self.up >= 0 or self.share == SHARES_UP["centre"]:
            return within
        if self.share == SHARES_UP["top"]:
            return left, low, right, min(high, self.height)
        return left, max(low, self.height), right, high

    @cached_property
    def taken(self) -> list[Box]:
        """What is on the wall, with what it wants clear."""
        return [boxed(rect) for rect in self.room.taken]

    def off(self, boxes: Sequence[Box]) -> tuple[float, float]:
        """How far all frames have to be moved to hang where the group says (mm to the right, and up)."""
        whole = around([*boxes, *self.fixed])
        across = boxes[self.across] if self.across >= 0 else whole
        up = boxes[self.up] if self.up >= 0 else whole
        return self.axis - (across[0] + across[2]) / 2, self.height - up[1] - self.share * (up[3] - up[1])

    def free(self, box: Box) -> bool:
        """True when a box lies on the wall, in what is to be clear at its edges, and clear of its features."""
        x0, y0, x1, y1 = box
        left, low, right, high = self.within
        if x0 < left - TOLERANCE or y0 < low - TOLERANCE or x1 > right + TOLERANCE or y1 > high + TOLERANCE:
            return False
        for a0, b0, a1, b1 in self.taken:
            if x0 < a1 - TOLERANCE and a0 < x1 - TOLERANCE and y0 < b1 - TOLERANCE and b0 < y1 - TOLERANCE:
                return False
        return not self.room.wall.outline or self._inside(box)

    def _inside(self, box: Box) -> bool:
        """True when the box lies inside the wall's outline; the same is often asked again."""
        if box not in self._known:
            self._known[box] = self.room.inside(Rect(*box))
        return self._known[box]

    def clear(self, box: Box, others: Iterable[Box]) -> bool:
        """True when the box keeps the gap to all others, across or down."""
        x0, y0, x1, y1 = box
        across, down = self.gaps.across - TOLERANCE, self.gaps.down - TOLERANCE
        return not any(
            x0 - a1 < across and a0 - x1 < across and y0 - b1 < down and b0 - y1 < down for a0, b0, a1, b1 in others
        )

    def astray(self, boxes: Sequence[Box]) -> list[int]:
        """The places in the list of frames that are not free."""
        # all within a box is free: that is sooner known than of every frame
        quick = not self.fixed and not self.room.wall.outline and self.free(around(boxes))
        return [] if quick else [at for at, box in enumerate(boxes) if not self.takes(box)]

    def takes(self, box: Box) -> bool:
        """True when a box is free, and keeps the gap to the frames that have their place."""
        return self.free(box) and (not self.fixed or self.clear(box, self.fixed))

    def moved(self, boxes: Sequence[Box]) -> list[Box]:
        """All frames where the group says, whether or not that is free; with fixed frames they stay where they are."""
        dx, dy = (0.0, 0.0) if self.fixed else self.off(boxes)
        return [shifted(box, dx, dy) for box in boxes]


def boxed(rect: Rect) -> Box:
    """A rectangle as plain numbers."""
    return rect.sides
