"""From where a frame was found to what brings it to its place: by hand, or by a nail that moves.

All moves are of the hole: from the old one to the new one, right and up as someone facing the wall sees them (mm).
They do not rest on where the nail was planned: a drop that was measured wrong is put right like a nail driven wrong.

A wire on one hook, and a sawtooth, let the frame swing: its centre of mass, taken at its middle, comes to hang under
the hook.  A frame with the height H found turned by φ bears at u = (H/2 − d) tan φ from the middle of its hanger, d
being the drop, so the hook is H/2 · sin φ to the right of the middle of the top edge and d cos φ − u sin φ under it.
Once it is level it is d under it.  (A wire that slid by u is lower there by no more than 2 h (u/L)², for h the wire's
rise and L its length: 0.1 mm for 80 mm of rise, 8 mm in 430.  It is left out.)

A wire on two hooks lets the frame come to rest level however high each of them is: turned by φ, its centre of mass
lies √((L − a)²/4 − (D cos φ − s)²/4) + c cos φ under the middle between the hooks, a apart, s of that across; that is
the same for φ and for −φ.  So a difference of their heights is no reason for a tilt, and both move alike: how high
the frame hangs goes by the middle between them.  What tilt there is comes from friction, and is undone by hand; the
frame goes to one side by that, so it is measured only once it is level (`levelling.py`).

Rings, keyholes and cleats hold the frame at two points that move with it: each has its own way to its place.
"""

from __future__ import annotations

import math

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.adding import added
from templates_gen.base.record import Record
from templates_gen.base.units import DIVISION
from templates_gen.documents.correcting.poses import Pose
from templates_gen.hanging.bearings import nail_rise
from templates_gen.job.accuracy import SEEN_ANGLE, seen_step
from templates_gen.job.hangers import ByHand
from templates_gen.tolerance.neighbours import neighbours


class Limits(Record, frozen=True):
    """What is too small to be seen: a turn (radians), and a step to the side or upward beside the next frame (mm)."""

    turn: float
    step: float


class Move(Record, frozen=True):
    """From an old hole to a new one (mm); `old` and `nail` are the old and the new nail's names."""

    old: str
    nail: str
    right: float
    up: float

    @property
    def distance(self) -> float:
        return math.hypot(self.right, self.up)


class Correction(Record, frozen=True):
    """What brings one frame to its place: `by_hand` first ("", "slide", "teeth", "along"), then the nails that move.

    `aside` is how far it goes to the right by hand: along a cleat's rail ("along"), or to another tooth ("teeth").
    """

    pose: Pose
    limits: Limits
    by_hand: ByHand
    aside: float
    moves: tuple[Move, ...]

    @property
    def hung(self) -> Hung:
        return self.pose.hung

    @property
    def left_alone(self) -> bool:
        """True when nothing is to be done."""
        return not (self.by_hand or self.moves)


def limits_of(plan: Plan) -> dict[str, Limits]:
    """What is too small to be seen, by frame.

    A turn of `SEEN_ANGLE` is seen, and `seen_step` over the gap; where that is less than a tape measure shows, it is
    that.  The nearest neighbour counts; without one, the group's gap does.
    """
    turn = math.radians(SEEN_ANGLE)
    gaps: dict[str, float] = {}
    for pair in neighbours(plan) if len(plan.frames) > 1 else ():
        for hung in (pair.one, pair.two):
            gaps[hung.frame.id] = min(pair.gap, gaps.get(hung.frame.id, pair.gap))
    usual, least = plan.job.group.gap_across, DIVISION[plan.job.unit]
    return {hung.frame.id: Limits(turn, max(least, seen_step(gaps.get(hung.frame.id, usual)))) for hung in plan.frames}


def correction(pose: Pose, limits: Limits, least: float) -> Correction:
    """What brings a frame to its place; a nail that would move by less than `least` mm stays.

    What was not measured is taken to be right.
    """
    kind = pose.hung.frame.hanger.traits
    tilted = abs(pose.turn) > limits.turn
    if kind.swings:
        moves = tuple(move for move in _swung(pose) if max(abs(move.right), abs(move.up)) > limits.step)
        by_hand = kind.by_hand if tilted or (moves and kind.levelled_anew) else ""
        return Correction(pose, limits, by_hand, _off_middle(pose) if by_hand == "teeth" else 0.0, moves)
    if not tilted and max(abs(pose.up or 0.0), abs(pose.right or 0.0)) <= limits.step:
        return Correction(pose, limits, "", 0.0, ())
    moves, aside = _rigid(pose), 0.0
    if kind.rail:  # its frame slides along the rail
        aside = added(move.right for move in moves) / 2
        moves = tuple(Move(move.old, move.nail, 0.0, move.up) for move in moves)
    by_hand = kind.by_hand if abs(aside) > limits.step else ""
    moves = tuple(move for move in moves if move.distance >= least)
    return Correction(pose, limits, by_hand, aside if by_hand else 0.0, moves)


def _off_middle(pose: Pose) -> float:
    """How far from the middle of its hanger a frame that swings freely bears, to the right (mm)."""
    drop = pose.hung.bearings[0].drop or 0.0
    return (pose.hung.rect.height / 2 - drop) * math.tan(pose.turn)


def _swung(pose: Pose) -> tuple[Move, ...]:
    """The moves of the hooks under a wire or a sawtooth, all alike."""
    hung, turn = pose.hung, pose.turn
    right, up = -(pose.right or 0.0), -(pose.up or 0.0)
    if len(hung.bearings) == 1:
        drop = hung.bearings[0].drop or 0.0
        up -= _off_middle(pose) * math.sin(turn) + drop * (1 - math.cos(turn))
        if pose.right is not None:
            right -= hung.rect.height / 2 * math.sin(turn)
    return tuple(Move(name, name, right, up) for name in _names(hung))


def _rigid(pose: Pose) -> tuple[Move, ...]:
    """The moves of two fixings that are turned and moved with the frame, each to where its own point should be."""
    hung, rect = pose.hung, pose.hung.rect
    cos, sin = math.cos(pose.turn), math.sin(pose.turn)
    moves = []
    for name, bearing in zip(_names(hung), hung.bearings, strict=True):
        # from the middle of the top edge to what turns with the frame: where it bears, or a cleat's screw
        x, y = bearing.x - rect.cx, -(bearing.drop or 0.0)
        y += nail_rise(hung.frame) if hung.frame.hanger.traits.rail else 0.0
        right = x - (x * cos - y * sin) - (pose.right or 0.0)
        up = y - (x * sin + y * cos) - (pose.up or 0.0)
        moves.append(Move(name, name, right if pose.right is not None else 0.0, up))
    return tuple(moves)


def _names(hung: Hung) -> list[str]:
    """The names of a frame's nails, those too that were marked by hand for want of a drop."""
    return [bearing.nail_of(hung.frame.id) for bearing in hung.bearings]
