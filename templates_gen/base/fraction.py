"""Whether a fraction is one that a tape or a rule shows, and what it may have been before its space was lost."""

from __future__ import annotations

PARTS = frozenset((*range(2, 11), 12, 16, 20, 32, 64, 100, 128))
"""What an inch is divided into on a tape or a rule, and the fractions that keyboards have.  Common practice, no
source."""


def fraction_problem(over: int, under: int, after_whole: bool) -> str:
    """Why this is no measure as people write it, with what was expected; "" for one that is."""
    if under == 0 or (after_whole and over >= under):
        return "expected a fraction below one after a whole number, such as 14 3/8"
    if over >= under:
        return f"expected a fraction below one{_perhaps(over, under)}"
    if under not in PARTS:
        return f"and no tape has parts of 1/{under}: expected 1/2, 1/4, 1/8, 1/16, 1/32"
    return ""


def _perhaps(over: int, under: int) -> str:
    """How it may have been meant: `31/8` is `3 1/8`."""
    text = str(over)
    parts = [(text[:at], text[at:]) for at in range(1, len(text))]
    meant = [f"{whole} {part}/{under}" for whole, part in parts if 0 < int(part) < under and part[0] != "0"]
    return f"; was {' or '.join(meant)} meant?" if meant else ", such as 3/8"
