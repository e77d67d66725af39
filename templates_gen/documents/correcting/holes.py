"""What to do about a nail that would move: first the wire's length, then another hole, and a hook that is sold.

The order is the trade's.  A frame on a wire that is only too high or too low keeps its nail, and its wire is made
longer or shorter.  A new hole that would break into the old one is made farther away, and the wire takes up the
difference; or the wire goes on two fixings, the frame on another hook, a rail on other screws; or the old hole is
filled.  What `check` would stop or warn of is never advised.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from templates_gen.arranging.plan import Hung
from templates_gen.base.record import Record, replace
from templates_gen.base.units import DIVISION
from templates_gen.checks.wire import LEAST_PAIR, RING_ROOM
from templates_gen.documents.correcting.changing import Checked, passes
from templates_gen.documents.correcting.moves import Correction, Move
from templates_gen.documents.correcting.wires import Rewired, rewired
from templates_gen.hanging.hooks import Sold, clear_hooks, exchanged
from templates_gen.hanging.statics import moved_apart
from templates_gen.hanging.wire import hung_wire
from templates_gen.job.model import Fixing, Frame

LEAST_APART = 10.0
"""mm between two holes in plaster or board, whose edges crumble.  Common practice, no source."""

DIAMETERS = 5.0
"""The same in diameters of the fixing, for thick screws and their plugs.  Our own design, no source."""


class Cure(Record, frozen=True):
    """What to do where a new hole would break into the old one.

    `way` is "hook" (this size that is `sold`; the move is then that of its seat), "rail" (through a new hole in the
    rail), or "fill" (the old hole is filled first); "" where the holes are far enough apart.
    """

    way: str
    sold: Sold | None = None


class Cured(Record, frozen=True):
    """A correction whose holes were looked at, with a cure for every move.

    `frame` is the frame as the job would have it when all is done.  `wire` is what its wire is to be, where its length
    changes; `apart` the new distance of two fixings under the wire (mm), where it is hung wider, or on two instead of
    one.
    """

    correction: Correction
    cures: tuple[Cure, ...]
    frame: Frame
    wire: Rewired | None = None
    apart: float | None = None

    @property
    def hung(self) -> Hung:
        return self.correction.pose.hung

    @property
    def left_alone(self) -> bool:
        """True when nothing is to be done."""
        return self.correction.left_alone


def from_old_hole(move: Move, cure: Cure, frame: Frame) -> Move:
    """The move as it is measured on the wall: of another hook, from the old hole to its seat, which is where the old
    fixing bore, and moves with it."""
    return replace(move, up=move.up - frame.fixing.rise) if cure.way == "hook" else move


def least_between(fixing: Fixing) -> float:
    """How far a new hole keeps from an old one (mm)."""
    return max(LEAST_APART, DIAMETERS * fixing.diameter)


def cured(correction: Correction, now: Checked) -> Cured:
    """The correction by the first way that can be gone, in the order of the trade."""
    frame = correction.hung.frame
    if not correction.moves:
        return Cured(correction, (), frame)
    if frame.hanger.traits.on_wire:
        return next(_wire_ways(correction, now))
    return _each(correction, now)


def _wire_ways(correction: Correction, now: Checked) -> Iterator[Cured]:
    """Every way for a frame on a wire, all of whose fixings move alike."""
    frame, step = correction.hung.frame, DIVISION[now.plan.job.unit]
    needed = least_between(frame.fixing)
    right, up = correction.moves[0].right, correction.moves[0].up
    if abs(right) <= correction.limits.step:
        yield from _rewired(correction, now, up, ())
    if math.hypot(right, up) >= needed:
        yield _in_new_holes(correction, frame)
    else:
        beside = math.ceil(math.sqrt(max(0.0, needed**2 - right**2)) / step) * step
        for at in sorted((beside, -beside), key=lambda at: abs(up - at)):
            moves = tuple(replace(move, up=at) for move in correction.moves)
            yield from _rewired(correction, now, up - at, moves)
        yield from _wider(correction, now, needed)
    yield _each(correction, now)


def _rewired(correction: Correction, now: Checked, longer: float, moves: tuple[Move, ...]) -> Iterator[Cured]:
    """The wire made so that its drop is so much longer, and these moves beside; nothing where that does not pass."""
    wire = rewired(correction.hung.frame, longer)
    if wire is not None and passes(now, wire.frame):
        yield Cured(replace(correction, moves=moves), tuple(Cure("") for _ in moves), wire.frame, wire)


def _in_new_holes(correction: Correction, frame: Frame, apart: float | None = None) -> Cured:
    return Cured(correction, tuple(Cure("") for _ in correction.moves), frame, None, apart)


def _wider(correction: Correction, now: Checked, needed: float) -> Iterator[Cured]:
    """On two fixings so much farther apart, as little as can be, that their holes keep clear of the old ones.

    Nothing where the rings are not known, or leave no room.
    """
    frame, step = correction.hung.frame, DIVISION[now.plan.job.unit]
    wire = hung_wire(frame)
    if wire is None:
        return
    for number in range(1, math.floor((wire.separation - 2 * RING_ROOM - wire.apart) / (2 * step)) + 1):
        moves, apart = hung_wider(correction, number * step), wire.apart + 2 * number * step
        if apart < LEAST_PAIR or min(move.distance for move in moves) < needed:
            continue
        after = _on_two(frame, apart, moved_apart(wire, apart).rise)
        if passes(now, after):
            yield _in_new_holes(replace(correction, moves=moves), after, apart)
            return


def hung_wider(correction: Correction, out: float) -> tuple[Move, ...]:
    """The moves to two fixings, each so much farther out (mm), of a wire whose rings are known.

    A wire rises less over fixings farther apart, so they go down by the difference.  To the side of a single one the
    frame would hang crooked: its centre of mass has to be under it; under the middle of two it is level.
    """
    frame, old = correction.hung.frame, correction.moves
    wire = hung_wire(frame)
    if wire is None:
        raise ValueError(f"the wire of {frame.id} is not known")
    down = wire.rise - moved_apart(wire, wire.apart + 2 * out).rise
    return tuple(
        Move(move.old, f"{frame.id} {side}", move.right + way * out, move.up - down)
        for move, side, way in zip((old[0], old[-1]), ("left", "right"), (-1.0, 1.0), strict=True)
    )


def _on_two(frame: Frame, apart: float, rise: float) -> Frame:
    """The frame with its wire on two fixings so far apart, over which it rises by so much."""
    hanger = replace(frame.hanger, apart=apart)
    if hanger.drop_at_two is not None and hanger.ring_depth is not None:
        hanger = replace(hanger, drop_at_two=hanger.ring_depth - rise)
    return replace(frame, hanger=hanger)


def _each(correction: Correction, now: Checked) -> Cured:
    """Every nail by its own way: other screws of a rail, another hook, or a filled hole."""
    frame = correction.hung.frame
    needed = least_between(frame.fixing)
    if frame.hanger.traits.rail and (rail := next(_rails(correction, now, needed), None)):
        return rail
    sold = _hook(correction, now, needed)
    cure = Cure("fill") if sold is None else Cure("hook", sold)
    cures = tuple(cure if move.distance < needed else Cure("") for move in correction.moves)
    after = frame if sold is None else replace(frame, fixing=exchanged(frame.fixing, sold))
    return Cured(correction, cures, after)


def _hook(correction: Correction, now: Checked, needed: float) -> Sold | None:
    """The one hook for all nails of a frame whose new holes are too near; None where none that is sold will do."""
    frame = correction.hung.frame
    if not frame.hanger.traits.hooks or frame.fixing.kind == "screw" or not _hides(frame):
        return None
    near = [move for move in correction.moves if move.distance < needed]
    sizes = [tuple(clear_hooks(frame.fixing, move.right, move.up, needed)) for move in near]
    for sold in sizes[0] if sizes else ():
        exchange = replace(frame, fixing=exchanged(frame.fixing, sold))
        if all(sold in own for own in sizes) and passes(now, exchange):
            return sold
    return None


def _hides(frame: Frame) -> bool:
    """True when it is known how far under its top edge the frame hangs, so that a hook over it can be judged."""
    own = [drop for drop in (frame.hanger.drop_left, frame.hanger.drop_right, frame.hanger.drop_at_two) if drop]
    return frame.drop is not None or bool(own)


def _rails(correction: Correction, now: Checked, needed: float) -> Iterator[Cured]:
    """The screws of a rail through new holes in it: as far inward as both want, or else outward."""
    frame, step = correction.hung.frame, DIVISION[now.plan.job.unit]
    near = [move for move in correction.moves if move.distance < needed]
    if not near:
        return
    aside = max(math.ceil(math.sqrt(needed**2 - move.up**2) / step) * step for move in near)
    for inward in (aside, -aside):
        moves, hanger = list[Move](), frame.hanger
        for move in correction.moves:
            left = move.old.endswith(" left")
            if move in near:
                move = replace(move, right=inward if left else -inward)
                if left:
                    hanger = replace(hanger, left=(hanger.left or 0.0) + inward)
                else:
                    hanger = replace(hanger, right=(hanger.right or 0.0) + inward)
            moves.append(move)
        after = replace(frame, hanger=hanger)
        if passes(now, after):
            cures = tuple(Cure("rail") if move in near else Cure("") for move in correction.moves)
            yield Cured(replace(correction, moves=tuple(moves)), cures, after)
