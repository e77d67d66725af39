"""How many hooks a frame wants, and how a nail sits in wood: rules of the trade and published equations.

Weights in kg, lengths in mm, forces in N.  Nothing here says what a wall or a nail bears: the maker's rating does.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from templates_gen.base.geometry import exceeds
from templates_gen.base.units import GRAVITY, INCH, KG, METRE
from templates_gen.hanging.studs import on_stud
from templates_gen.hanging.weight_classes import ROUNDING
from templates_gen.job.model import Fixing, Frame, Wall

TRADE_FACTOR = 4.0
"""A hook's rating is to be so many times the weight on it: a hanger of 10 lb for 2 1/2 lb (C. A. Paschke, Hardware:
Wall Hangers and Cleats, trade column, April 2013)."""

PER_BOARD_HOOK, MOST_ON_BOARD = 5.0, 15.0
"""kg on one hook in plasterboard without a stud, and on all of a frame's: common practice in Germany (hausjournal)."""

MOST_PER_METRE = 40.0
"""kg in board on a metre of a wall's length: common practice in Germany (hausjournal); DIN 4103-1, as a gypsum
trade sheet quotes it, has a light wall bear 0.4 kN on each metre."""

DEEPEST_ON_BOARD = 300.0
"""mm that a load may reach into the room where these figures for board are to hold (the same two)."""

NDS_NAIL, NDS_POWER, NDS_SCREW = 1380.0, 5 / 2, 2850.0
"""lb per inch in the wood for G = 1 and a diameter of 1 in: allowable withdrawal from side grain, of a smooth nail
1380 G^(5/2) D (NDS 2005, equation 11.2-3, as others quote it), of a wood screw 2850 G² D (NDS 2018, 12.2.2)."""

LASTING = 0.90
"""The factor C_D on both for a load that stays, or lasts more than 10 years (American Wood Council, Table 2.3.2;
NDS 2005, Appendix B)."""

TOE_NAILED = 0.67
"""Factor on the allowable withdrawal of a nail driven at an angle (NDS, as others quote it)."""

LIGHT_STUD = 0.36
"""Specific gravity of spruce-pine-fir (South), Eastern softwoods and Western woods, the lightest usual wood of studs
(NDS 2018, Table 12.3.3A, as a public copy has it)."""

LEAST_DIAMETERS = 6.0
"""Diameters that a nail loaded from the side goes into the wood at the least (NDS, from memory)."""

POUND_FORCE = KG["lb"] * GRAVITY
"""N in one of it."""


def hooks_needed(weight: float, rating: float) -> int:
    """How many fixings of one rating a frame wants by the trade's factor; at least one."""
    return _at_least_one(TRADE_FACTOR * weight / rating)


def too_deep_for_board(depth: float | None) -> bool:
    """True for a frame that reaches further into the room (mm) than the figures for board hold; False if not known."""
    return depth is not None and exceeds(depth, DEEPEST_ON_BOARD)


def board_hooks_needed(weight: float, depth: float | None = None) -> int | None:
    """How many hooks in plasterboard without a stud a frame wants; None for one too heavy or deep for that."""
    if weight > MOST_ON_BOARD + ROUNDING or too_deep_for_board(depth):
        return None
    return _at_least_one(weight / PER_BOARD_HOOK)


def _at_least_one(hooks: float) -> int:
    return max(1, math.ceil(hooks - ROUNDING))  # a float sum just over a whole number is that number


def heaviest_metre(loads: Sequence[tuple[float, float]]) -> tuple[int, int, float]:
    """Of (x, kg) pairs from left to right: the first and one past the last on the heaviest metre, and their kg."""
    best, start, on_it = (0, 0, 0.0), 0, 0.0
    for end, (x, kg) in enumerate(loads, 1):
        on_it += kg
        while exceeds(x - loads[start][0], METRE):
            on_it -= loads[start][1]
            start += 1
        best = max(best, (start, end, on_it), key=lambda part: part[2])
    return best


def is_board(wall: Wall) -> bool:
    """True for plasterboard, and for a wall of which only its studs are told."""
    return wall.build == "drywall" or (wall.build == "" and wall.studs is not None)


def hooks_in_board(frame: Frame, wall: Wall, across: Iterable[float]) -> bool:
    """True when a fixing at one of these x is in board and not known to be in a stud.

    A rated screw is no hook but an anchor, which goes by its rating.
    """
    anchored = frame.fixing.kind == "screw" and frame.fixing.rating is not None
    return is_board(wall) and not anchored and not all(on_stud(x, wall) for x in across)


def wanted_hooks(frame: Frame, wall: Wall, across: Sequence[float]) -> int | None:
    """How many hooks a frame with fixings at these x wants, by their rating and by what board bears.

    None where neither is known, or where board bears no hook."""
    weight, rating = frame.weight, frame.fixing.rating
    if weight is None:
        return None
    by_rating = None if rating is None else hooks_needed(weight, rating)
    if not hooks_in_board(frame, wall, across):
        return by_rating
    in_board = board_hooks_needed(weight, frame.depth)
    return None if in_board is None else max(in_board, by_rating or 0)


def nail_withdrawal(gravity: float, diameter: float, length: float) -> float:
    """N that a smooth nail with so much of its length (mm) in side grain may be pulled with, before any factor.

    1380 G^(5/2) D by the inch: NDS 2005, equation 11.2-3, as others quote it.
    """
    per_inch: float = NDS_NAIL * gravity**NDS_POWER * diameter / INCH * POUND_FORCE
    return per_inch * length / INCH


def screw_withdrawal(gravity: float, diameter: float, length: float) -> float:
    """N that a wood screw with so much of its thread (mm) in side grain may be pulled with, before any factor.

    2850 G² D by the inch: NDS 2018, 12.2.2.
    """
    per_inch = NDS_SCREW * gravity**2 * diameter / INCH * POUND_FORCE
    return per_inch * length / INCH


def lasting_withdrawal(fixing: Fixing, length: float) -> float:
    """N that a fixing with so much of its length (mm) in a stud of the lightest usual wood may be pulled with for good.

    All of a screw in the wood is taken for thread.  The factor for toe nails is for nails alone.
    """
    if fixing.kind == "screw":
        return screw_withdrawal(LIGHT_STUD, fixing.diameter, length) * LASTING
    toe_nailed = TOE_NAILED if fixing.angle else 1.0
    return nail_withdrawal(LIGHT_STUD, fixing.diameter, length) * LASTING * toe_nailed


def depth_of(fixing: Fixing) -> float | None:
    """How deep a fixing goes behind the face of the wall (mm); None when its length is not known.

    That is its length times the cosine of its angle from straight in; without an angle it is taken as straight in,
    the deepest.  Derived from the right triangle that the nail is the long side of.
    """
    return None if fixing.length is None else fixing.length * math.cos(math.radians(fixing.angle or 0.0))


def tip_below(fixing: Fixing) -> float:
    """How far a slanting nail's tip lies below its nail point (mm); 0 when that is not known."""
    return (fixing.length or 0.0) * math.sin(math.radians(fixing.angle or 0.0))


def length_in_stud(fixing: Fixing, board: float | None) -> float | None:
    """How much of a fixing's length is in the stud behind a board of this thickness; None where either is not told."""
    depth = depth_of(fixing)
    if depth is None or board is None:
        return None
    return max(0.0, depth - board) / math.cos(math.radians(fixing.angle or 0.0))


def outward_pull(load: float, depth: float, drop_to_foot: float) -> float:
    """N that a frame pulls at its fixing away from the wall: it leans on its foot, its weight half its depth out.

    Moments about the foot: load · depth / 2 = pull · height of the bearing above the foot.  Plane statics.
    """
    return load * depth / 2 / drop_to_foot if drop_to_foot > 0 else 0.0
