"""Adding up numbers with fractions so that every Python gives the same sum, to the last bit."""

from __future__ import annotations

from collections.abc import Iterable
from functools import reduce
from operator import add
from typing import TypeVar

T = TypeVar("T", float, complex)


def added(values: Iterable[T]) -> T:
    """The values added one after the other, 0.0 where there are none.

    Since Python 3.12 `sum` rounds floats otherwise (What's New In Python 3.12, "Other Language Changes"), and a search
    that weighs ways by such sums then takes another: on another Python the same job would have other sheets, or even
    other places for its frames.
    """
    return reduce(add, values, 0.0)
