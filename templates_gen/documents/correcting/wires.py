"""Another length for a frame's wire: what comes before any new hole, and how much wire it takes.

A shorter wire rises less over its fixings, so its drop is longer and the frame hangs higher; a longer wire lets it
down.  Its length goes with its rise by L = s + √((D − s)² + 4 h²) (statics), which needs the rings' places.  Where
only the drop is known, only the change of the drop is: 2 sin θ times as much wire, θ being how steep the wire is.
"""

from __future__ import annotations

from templates_gen.base.record import Record, replace
from templates_gen.base.units import INCH
from templates_gen.checks.wire import VERY_FLAT
from templates_gen.hanging.statics import HungWire, moved_apart
from templates_gen.hanging.wire import hung_wire
from templates_gen.job.model import Frame

MOST = INCH
"""mm that a drop is changed by the wire at most: more is planned anew rather than twisted.  Our own design, no
source."""

SHARE = 0.5
"""Of its rise, the most that a wire is shortened by.  One of unknown rings is taken to rise as much as its drop is long
(half-way from rings to top edge: a household guide).  Our own design."""


class Rewired(Record, frozen=True):
    """A frame on a wire of another length: its drop is `longer` (mm, negative: shorter) over the fixings it hangs on.

    `wire` is how much longer the wire is (mm, negative: shorter); None where the rings are not known.
    """

    frame: Frame
    longer: float
    wire: float | None


def rewired(frame: Frame, longer: float) -> Rewired | None:
    """The frame with its wire so long that its drop is `longer` by so many mm; None where no wire does that."""
    hanger = frame.hanger
    on_two = hanger.drop_at_two if hanger.apart else None
    if not hanger.traits.on_wire or abs(longer) > MOST or (frame.drop is None and on_two is None):
        return None
    wire = hung_wire(frame)
    if wire is None:
        drop = on_two if on_two is not None else frame.drop
        most = SHARE * (drop or 0.0)
        return Rewired(_with_drops(frame, longer, longer), longer, None) if -most < longer < most else None
    if longer >= SHARE * wire.rise:
        return None
    after = HungWire(wire.separation, wire.rise - longer, wire.apart)
    if longer > 0 and after.angle < VERY_FLAT:
        return None
    return Rewired(_with_drops(frame, _on_one(wire, after), longer), longer, after.length - wire.length)


def with_longer_drop(frame: Frame, longer: float) -> Frame | None:
    """A frame on a wire whose drop over what it hangs on is `longer` by so many mm (negative: shorter), and with it the
    one on a single fixing; None where its wire has no such drop."""
    wire = hung_wire(frame)
    if wire is None:
        return _with_drops(frame, longer, longer)
    after = HungWire(wire.separation, wire.rise - longer, wire.apart)
    return _with_drops(frame, _on_one(wire, after), longer) if after.rise > 0 else None


def _on_one(wire: HungWire, after: HungWire) -> float:
    """How much longer the drop on one fixing is for another wire (mm)."""
    return moved_apart(wire, 0.0).rise - moved_apart(after, 0.0).rise


def _with_drops(frame: Frame, on_one: float, on_two: float) -> Frame:
    """The frame with both its drops so much longer, those that are given."""
    hanger = frame.hanger
    if hanger.drop_at_two is not None:
        hanger = replace(hanger, drop_at_two=hanger.drop_at_two + on_two)
    return replace(frame, hanger=hanger, drop=None if frame.drop is None else frame.drop + on_one)
