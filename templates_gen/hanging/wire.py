"""The wire of a frame as it is described in the job: its shape and forces as hung, and its drop on two fixings."""

from __future__ import annotations

from templates_gen.base.errors import InputError
from templates_gen.base.record import replace
from templates_gen.base.units import as_found
from templates_gen.hanging.statics import HungWire, moved_apart
from templates_gen.job.model import Frame, Hanger


def check_wire(frame: Frame) -> None:
    """Raises InputError for a frame's wire that cannot be as it is described: a slip of the measuring."""
    hanger, where = frame.hanger, f"frame {frame.id}, hanger"
    apart, separation, depth = hanger.apart, hanger.ring_separation, hanger.ring_depth
    if separation is not None and not 0 < separation <= frame.width:
        expected = f"more than 0 and at most the {as_found(frame.width)} of the frame's width"
        raise InputError(where, f"found rings {as_found(separation)} apart, expected {expected}")
    if apart is not None and separation is not None and apart > separation:
        expected = f"at most the {as_found(separation)} of the rings"
        raise InputError(where, f"found fixings {as_found(apart)} apart, expected {expected}")
    if depth is not None and depth >= frame.height:
        expected = f"less than the frame's height of {as_found(frame.height)}"
        raise InputError(where, f"found a ring depth of {as_found(depth)}, expected {expected}")
    for drop in (frame.drop, hanger.drop_at_two):
        if depth is not None and drop is not None and drop >= depth:
            expected = f"less than the ring depth of {as_found(depth)}"
            raise InputError(where, f"found a drop of {as_found(drop)}, expected {expected}")


def hung_wire(frame: Frame) -> HungWire | None:
    """A frame's wire as it hangs, on one fixing or on two; None where the frame has no wire or too little is given.

    A drop measured as it hangs goes before one worked out.
    """
    if not frame.hanger.traits.on_wire:
        return None
    return _hung_on_two(frame.hanger, frame.drop) if frame.hanger.apart else _hung(frame.hanger, frame.drop)


def mass_depth(frame: Frame) -> float | None:
    """How far a frame's centre of mass, taken at its middle, lies under its rings (mm); None when it is not known."""
    depth = frame.hanger.ring_depth
    return None if depth is None else frame.height / 2 - depth


def drop_at_two(hanger: Hanger, drop_at_one: float | None) -> float | None:
    """The drop of a wire on two fixings `apart`: as measured, or worked out from its drop on one (mm).

    It is `ring_depth` less the wire's rise over the two.  None when it cannot be known.
    """
    if hanger.drop_at_two is not None:
        return hanger.drop_at_two
    wire = _hung_on_two(hanger, drop_at_one)
    return None if wire is None or hanger.ring_depth is None else hanger.ring_depth - wire.rise


def drop_at_two_limits(frame: Frame) -> tuple[float, float] | None:
    """The least and the most drop of a wire on two fixings, by its drop on one (mm); None where that is not known.

    With the rings known it is the drop worked out, twice.  Else it is no shorter than on one, as two fixings lift a
    frame, and longer by at most half their distance s: with u = ((D − s) / 2, h₂) the part of the wire to one ring, a
    wire that rises h₂ + s / 2 over one fixing is 2 |u + (s, s) / 2| >= 2 |u| + s = L long, so h₁ <= h₂ + s / 2.
    """
    hanger, drop = frame.hanger, frame.drop
    if hanger.apart is None or drop is None:
        return None
    worked_out = drop_at_two(replace(hanger, drop_at_two=None), drop)
    return (drop, drop + hanger.apart / 2) if worked_out is None else (worked_out, worked_out)


def _hung_on_two(hanger: Hanger, drop_at_one: float | None) -> HungWire | None:
    if hanger.apart is None:
        return None
    if hanger.drop_at_two is not None:
        return _hung(hanger, hanger.drop_at_two, hanger.apart)
    on_one = _hung(hanger, drop_at_one)
    return None if on_one is None else moved_apart(on_one, hanger.apart)


def _hung(hanger: Hanger, drop: float | None, apart: float = 0.0) -> HungWire | None:
    if drop is None or hanger.ring_separation is None or hanger.ring_depth is None:
        return None
    return HungWire(hanger.ring_separation, hanger.ring_depth - drop, apart)
