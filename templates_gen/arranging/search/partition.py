"""Dividing things in order into runs that are as even as can be."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate


def partition(lengths: Sequence[float], runs: int) -> list[list[int]]:
    """The places 0 … n-1 as `runs` runs in order, the largest sum as small as can be; n is at least `runs`.

    The linear partition of S. Skiena, The Algorithm Design Manual, section 8.5 (from memory): M[n, k] is the least
    over i of the larger of M[i, k-1] and the sum from i to n.
    """
    sums = [0.0, *accumulate(lengths)]
    count = len(lengths)
    best = [[sums[end]] + [float("inf")] * (runs - 1) for end in range(count + 1)]
    last = [[0] * runs for _ in range(count + 1)]
    for k in range(1, runs):
        for end in range(k + 1, count + 1):
            best[end][k], last[end][k] = min(
                (max(best[start][k - 1], sums[end] - sums[start]), start) for start in range(k, end)
            )
    found, end = [], count
    for k in reversed(range(runs)):
        start = last[end][k] if k else 0
        found.append(list(range(start, end)))
        end = start
    return found[::-1]
