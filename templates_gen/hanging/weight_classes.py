"""Weights by what they ask for where something may fall on people: how a frame is held, and who lifts it."""

from __future__ import annotations

from templates_gen.base.geometry import exceeds
from templates_gen.base.units import KG
from templates_gen.job.model import Frame

LIGHT, MEDIUM = 20 * KG["lb"], 50 * KG["lb"]
"""kg: under the first, and up to the second, a piece is held in one way; above, in another (Earthquake Country
Alliance, step 1: under 20 lb, to 50 lb, over 50 lb)."""

ONE_PERSON = 1200.0
"""mm; a frame with a longer side is lifted by two people, for one cannot hold both its ends and see what it is hung on.
Our own choice, no source."""

HEAVY_WORDS = "20 lb (9.1 kg) or more"
LIGHT_WORDS = "under 20 lb (9.1 kg)"

ROUNDING = 1e-9
"""kg; far below any scale's reading, far above the rounding of floats."""


def is_heavy(kg: float | None) -> bool:
    """True from 20 lb on, where a hook alone is no longer the advice; False for a weight not known."""
    return kg is not None and kg >= LIGHT - ROUNDING


def weight_class(kg: float | None) -> str:
    """One of "light" (under 20 lb), "medium" (to 50 lb), "heavy" (over 50 lb), and "" for a weight not known."""
    if kg is None or not is_heavy(kg):
        return "" if kg is None else "light"
    return "medium" if kg <= MEDIUM + ROUNDING else "heavy"


def wants_two(frame: Frame) -> bool:
    """True for a frame that two people lift: from 20 lb on, where a hook alone is no longer the advice, or large."""
    return is_heavy(frame.weight) or exceeds(max(frame.width, frame.height), ONE_PERSON)


def on_bare_nails(frame: Frame) -> bool:
    """True for a heavy frame on plain nails of no given rating; the screws of a cleat are none."""
    return is_heavy(frame.weight) and frame.fixing.kind == "nail" and frame.fixing.rating is None
