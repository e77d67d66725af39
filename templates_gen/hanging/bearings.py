"""Where a frame bears on the wall's fixings, and where those fixings enter the wall.

All in mm.  A drop runs down from the frame's top edge; heights run up from the floor.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.base.units import GRAVITY
from templates_gen.hanging.wire import check_wire, drop_at_two, hung_wire
from templates_gen.job.model import Frame


class Bearing(Record, frozen=True):
    """A point where a frame's hanger bears: `side` is "", "left" or "right"; `drop` is None when not measured."""

    side: str
    x: float
    drop: float | None

    def nail_of(self, frame: str) -> str:
        """The name of the nail under it, given its frame's id: "A", "B left"."""
        return f"{frame} {self.side}".rstrip()


class Nail(Record, frozen=True):
    """A fixing and its nail point (x, y) on the wall; `bears_y` is the height at which the hanger bears on it.

    `load` is this fixing's share of the frame's weight in N, None when the weight is not known.  `pull` is the whole
    force on it in N: more than `load` on two fixings under a wire, which also pulls them together; None when the wire
    is not known.
    """

    name: str
    frame: str
    side: str
    x: float
    y: float
    bears_y: float
    load: float | None
    pull: float | None = None


def bearings(frame: Frame, rect: Rect) -> tuple[Bearing, ...]:
    """The bearing points of a frame that hangs at `rect` on the wall.

    A wire or sawtooth bears at the frame's middle, a wire on two fixings at half their distance to either side of
    it; a hanger with a left and a right part, such as rings, at their distances from the frame's sides.  Raises
    InputError when a wire cannot be as it is described.
    """
    hanger = frame.hanger
    if hanger.left is not None and hanger.right is not None:
        return (
            Bearing("left", rect.x0 + hanger.left, _first(hanger.drop_left, frame.drop)),
            Bearing("right", rect.x1 - hanger.right, _first(hanger.drop_right, frame.drop)),
        )
    check_wire(frame)
    if hanger.apart:
        drop = drop_at_two(hanger, frame.drop)
        return Bearing("left", rect.cx - hanger.apart / 2, drop), Bearing("right", rect.cx + hanger.apart / 2, drop)
    return (Bearing("", rect.cx, frame.drop),)


def _first(own: float | None, common: float | None) -> float | None:
    return common if own is None else own


def nail_rise(frame: Frame) -> float:
    """How far the nail point lies above the bearing point (mm, negative when below).

    That is the fixing's own rise; but the screws of a cleat are `screw_below` under the edge it bears on, and a plate
    bears on its screw at the nail point itself.
    """
    return frame.hanger.traits.rise(frame.fixing.rise, frame.hanger.screw_below)


def nails(frame: Frame, rect: Rect) -> tuple[Nail, ...]:
    """The nail points of a frame that hangs at `rect`; none for a bearing without a drop."""
    points = bearings(frame, rect)
    loads = [None if frame.weight is None else frame.weight * GRAVITY * part for part in shares(points, rect.cx)]
    return tuple(
        Nail(
            name=point.nail_of(frame.id),
            frame=frame.id,
            side=point.side,
            x=point.x,
            y=rect.y1 - point.drop + nail_rise(frame),
            bears_y=rect.y1 - point.drop,
            load=load,
            pull=_pull(frame, load),
        )
        for point, load in zip(points, loads, strict=True)
        if point.drop is not None
    )


def shares(points: Sequence[Bearing], middle: float) -> tuple[float, ...]:
    """The part of a frame's weight on each of its points, the frame's middle being at the x `middle` (mm).

    Of two, the nearer to the middle carries more: W b / (a + b) at a distance a, where the other's is b, for the
    moments about each of them balance (statics; the centre of mass is taken to be in the middle).  Where both are on
    one side of it, the nearer carries all.
    """
    if len(points) != 2 or points[0].x >= points[1].x:  # the second is stopped: nothing hangs so
        return (1 / len(points),) * len(points)
    left = min(1.0, max(0.0, (points[1].x - middle) / (points[1].x - points[0].x)))
    return left, 1 - left


def _pull(frame: Frame, load: float | None) -> float | None:
    """The whole force on each fixing of a frame, of which each carries `load` (N)."""
    wire = hung_wire(frame)
    if load is None or not frame.hanger.apart:
        return load
    return None if wire is None else 2 * load * math.hypot(*wire.fixing_load)
