"""Weights by what they ask for, where something may fall on people."""

from __future__ import annotations

from templates_gen.base.units import KG

LIGHT, MEDIUM = 20 * KG["lb"], 50 * KG["lb"]
"""kg: under the first, and up to the second, a piece is held in one way; above, in another (Earthquake Country
Alliance, step 1: under 20 lb, to 50 lb, over 50 lb)."""

HEAVY_WORDS = "20 lb (9.1 kg) or more"
LIGHT_WORDS = "under 20 lb (9.1 kg)"

_ROUNDING = 1e-9  # kg; far below any scale's reading, far above the rounding of floats


def is_heavy(kg: float) -> bool:
    """True from 20 lb on, where a hook alone is no longer the advice."""
    return kg >= LIGHT - _ROUNDING


def weight_class(kg: float | None) -> str:
    """One of "light" (under 20 lb), "medium" (to 50 lb), "heavy" (over 50 lb), and "" for a weight not known."""
    if kg is None:
        return ""
    if kg < LIGHT - _ROUNDING:
        return "light"
    return "medium" if kg <= MEDIUM + _ROUNDING else "heavy"
