"""What was worked out of a large frozen value is kept while the same one is asked about again."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import TypeVar

A = TypeVar("A")
B = TypeVar("B")

KEPT = 2
"""Values whose results are kept: the one at hand, and one that it is compared with.  Our own design."""


def remembered(work: Callable[[A], B]) -> Callable[[A], B]:
    """The same function, which keeps what it last gave: for frozen values too large to be compared, known by being the
    same one."""
    kept: tuple[tuple[A, B], ...] = ()

    @wraps(work)
    def found(value: A) -> B:
        nonlocal kept
        for known, result in kept:
            if known is value:
                return result
        result = work(value)
        kept = ((value, result), *kept[: KEPT - 1])
        return result

    return found
