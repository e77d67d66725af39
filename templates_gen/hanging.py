"""Where a frame bears on the wall's fixings, and where those fixings enter the wall.

All in mm.  A drop runs down from the frame's top edge; heights run up from the floor.
"""

from __future__ import annotations

import math

from templates_gen.errors import InputError
from templates_gen.geometry import Rect
from templates_gen.model import Fixing, Frame, Hanger
from templates_gen.record import Record

GRAVITY = 9.80665
"""N/kg, the standard acceleration of free fall (3rd CGPM, 1901)."""


class Bearing(Record, frozen=True):
    """A point where a frame's hanger bears: `side` is "", "left" or "right"; `drop` is None when not measured."""

    side: str
    x: float
    drop: float | None


class Nail(Record, frozen=True):
    """A fixing and its nail point (x, y) on the wall; `bears_y` is the height at which the hanger bears on it.

    `load` is this fixing's share of the frame's weight in N, None when the weight is not known.
    """

    name: str
    frame: str
    side: str
    x: float
    y: float
    bears_y: float
    load: float | None


def bearings(frame: Frame, rect: Rect) -> tuple[Bearing, ...]:
    """The bearing points of a frame that hangs at `rect` on the wall.

    A wire or sawtooth bears at the frame's middle, a wire on two fixings at half their distance to either side of
    it; rings, keyholes and the screws of a cleat at their distances from the frame's sides.  Raises InputError when
    two fixings under a wire would stand wider than its rings.
    """
    hanger = frame.hanger
    if hanger.left is not None and hanger.right is not None:
        return (
            Bearing("left", rect.x0 + hanger.left, _first(hanger.drop_left, frame.drop)),
            Bearing("right", rect.x1 - hanger.right, _first(hanger.drop_right, frame.drop)),
        )
    if hanger.kind == "wire" and hanger.apart:
        drop = drop_at_two(hanger, frame.drop, f"frame {frame.id}, hanger")
        return Bearing("left", rect.cx - hanger.apart / 2, drop), Bearing("right", rect.cx + hanger.apart / 2, drop)
    return (Bearing("", rect.cx, frame.drop),)


def _first(own: float | None, common: float | None) -> float | None:
    return common if own is None else own


def drop_at_two(hanger: Hanger, drop_at_one: float | None, where: str) -> float | None:
    """The drop of a wire on two fixings `apart` (s): as measured, or worked out from its drop on one.

    With rings D apart and `ring_depth` below the top edge, the wire on one fixing rises h1 above the rings, so it is
    L = √(4 h1² + D²) long; on two it rises h2 = ½ √((L − D)(L + D − 2 s)), and the drop is `ring_depth` − h2.
    Derived from the triangle and the trapezium that an inextensible wire forms.  None when it cannot be known.
    """
    apart, separation, depth = hanger.apart, hanger.ring_separation, hanger.ring_depth
    if apart is not None and separation is not None and apart > separation:
        raise InputError(
            where, f"found fixings {apart:g} mm apart, expected at most the {separation:g} mm of the rings"
        )
    if hanger.drop_at_two is not None:
        return hanger.drop_at_two
    if apart is None or drop_at_one is None or separation is None or depth is None:
        return None
    if drop_at_one >= depth:
        raise InputError(
            where, f"found a drop of {drop_at_one:g} mm, expected less than the ring depth of {depth:g} mm"
        )
    wire = math.hypot(2 * (depth - drop_at_one), separation)
    rise = math.sqrt((wire - separation) * (wire + separation - 2 * apart)) / 2
    return depth - rise


def nail_rise(frame: Frame) -> float:
    """How far the nail point lies above the bearing point (mm, negative when below).

    A hook's nail is `below` above its seat; the screws of a cleat are `screw_below` under the edge it bears on; what
    bears on a bare nail or screw rests on its upper side, half a diameter above its centre.
    """
    fixing: Fixing = frame.fixing
    if frame.hanger.kind == "cleat":
        return -(frame.hanger.screw_below or 0.0)
    return fixing.below or 0.0 if fixing.kind == "hook" else -fixing.diameter / 2


def nails(frame: Frame, rect: Rect) -> tuple[Nail, ...]:
    """The nail points of a frame that hangs at `rect`; none for a bearing without a drop."""
    points = bearings(frame, rect)
    load = None if frame.weight is None else frame.weight * GRAVITY / len(points)
    return tuple(
        Nail(
            name=f"{frame.id} {point.side}".rstrip(),
            frame=frame.id,
            side=point.side,
            x=point.x,
            y=rect.y1 - point.drop + nail_rise(frame),
            bears_y=rect.y1 - point.drop,
            load=load,
        )
        for point in points
        if point.drop is not None
    )
