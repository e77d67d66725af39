"""The new hole against the old one: when they are too near to each other, and what to do then."""

from __future__ import annotations

import math

from templates_gen.correcting.moves import Correction, Move
from templates_gen.findings.hanging import HOOK_MARGIN
from templates_gen.findings.wire import RING_ROOM
from templates_gen.holding.statics import moved_apart
from templates_gen.holding.wire import hung_wire
from templates_gen.model import Fixing, Frame
from templates_gen.planning import Hung
from templates_gen.record import Record, replace
from templates_gen.units import DIVISION

LEAST_APART = 10.0
"""mm between two holes in plaster or board, whose edges crumble.  Common practice, no source."""

DIAMETERS = 5.0
"""The same in diameters of the fixing, for thick screws and their plugs.  Our own design, no source."""


class Cure(Record, frozen=True):
    """What to do where a new hole would break into the old one.

    `way` is "hook" (one whose seat lies `at_least` mm below its nail), "rail" (holes that much to the side), or "fill"
    (the old hole is filled first); "" where the holes are far enough apart.
    """

    way: str
    at_least: float = 0.0


class Cured(Record, frozen=True):
    """A correction whose holes were looked at, with a cure for every move.

    `apart` is the new distance of two hooks under the wire (mm), where the wire is hung wider, or on two hooks instead
    of one, so that the new holes keep clear of the old; None elsewhere.
    """

    correction: Correction
    cures: tuple[Cure, ...]
    apart: float | None = None

    @property
    def hung(self) -> Hung:
        return self.correction.pose.hung


def least_between(fixing: Fixing) -> float:
    """How far a new hole keeps from an old one (mm)."""
    return max(LEAST_APART, DIAMETERS * fixing.diameter)


def cured(correction: Correction, unit: str) -> Cured:
    """The correction with what to do where its holes are too near; on a wire whose rings are known it is hung wider."""
    frame = correction.hung.frame
    needed = least_between(frame.fixing)
    if all(move.distance >= needed for move in correction.moves):
        return Cured(correction, tuple(Cure("") for _ in correction.moves))
    wider = _wider(correction, needed, DIVISION[unit])
    if wider is not None:
        moves, apart = wider
        return Cured(replace(correction, moves=moves), tuple(Cure("") for _ in moves), apart)
    return Cured(correction, tuple(_cure(move, frame, correction, needed) for move in correction.moves))


def _wider(correction: Correction, needed: float, step: float) -> tuple[tuple[Move, ...], float] | None:
    """The moves to two hooks so much farther apart, as little as can be, that their holes keep clear of the old ones.

    A wire rises less over hooks farther apart, so they go down by the difference.  To the side of a single hook the
    frame would hang crooked: its centre of mass has to be under the hook; under the middle of two it is level.
    None where the rings are not known, or leave no room.
    """
    frame = correction.hung.frame
    wire = hung_wire(frame)
    if wire is None:
        return None
    old = correction.moves
    for number in range(1, math.floor((wire.separation - 2 * RING_ROOM - wire.apart) / (2 * step)) + 1):
        out = number * step
        apart = wire.apart + 2 * out
        down = wire.rise - moved_apart(wire, apart).rise
        moves = tuple(
            Move(move.old, f"{frame.id} {side}", move.right + way * out, move.up - down)
            for move, side, way in zip((old[0], old[-1]), ("left", "right"), (-1.0, 1.0), strict=True)
        )
        if min(move.distance for move in moves) >= needed:
            return moves, apart
    return None


def _cure(move: Move, frame: Frame, correction: Correction, needed: float) -> Cure:
    if move.distance >= needed:
        return Cure("")
    kind, fixing = frame.hanger.kind, frame.fixing
    if kind == "cleat":
        return Cure("rail", needed)
    # from the old nail up to the new one: as far as the bearing goes up, and as much more as the seat lies lower
    below = math.sqrt(needed**2 - move.right**2) - move.up + fixing.rise
    drops = [bearing.drop for bearing in correction.hung.bearings if bearing.drop is not None]
    hidden = bool(drops) and min(drops) - below >= HOOK_MARGIN
    return Cure("hook", below) if hidden and kind != "keyholes" and fixing.kind != "screw" else Cure("fill")
