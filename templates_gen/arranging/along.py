"""Lengths set one after another with a gap between them."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate


def starts(lengths: Sequence[float], gap: float) -> list[float]:
    """Where each of several lengths (mm) begins; nothing for none."""
    return [0.0, *accumulate(each + gap for each in lengths[:-1])][: len(lengths)]


def length(lengths: Sequence[float], gap: float) -> float:
    """How long they are together with their gaps (mm)."""
    return sum(lengths) + gap * (len(lengths) - 1)
