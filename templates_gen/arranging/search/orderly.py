"""The plain arrangements of a pile of frames: every sensible way to make rows, columns or a grid of them."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import accumulate

from templates_gen.base.geometry import Size
from templates_gen.base.record import replace
from templates_gen.job.model import Group

MOST_RUNS = 6
"""Rows or columns beyond those that make the group square that are tried.  Our own design, no source."""


def orderly(group: Group, sizes: Mapping[str, Size]) -> Iterator[Group]:
    """Groups of the same frames in rows, columns and grids: as listed and by size, set each way that fits."""
    done = set()
    for names in _orders(sizes):
        for kind, rows in _divided(names, sizes, group):
            for align, set_ in _settings(kind, len(rows)):
                found = replace(group, arrangement=kind, rows=rows, align=align, set=set_)
                if found not in done:
                    done.add(found)
                    yield found


def _orders(sizes: Mapping[str, Size]) -> Iterator[list[str]]:
    """As listed; from the highest to the lowest; the largest in the middle."""
    listed = list(sizes)
    yield listed
    yield sorted(listed, key=lambda name: (-sizes[name][1], -sizes[name][0]))
    by_area = sorted(listed, key=lambda name: -sizes[name][0] * sizes[name][1])
    yield [*reversed(by_area[1::2]), *by_area[0::2]]


def _divided(
    names: Sequence[str], sizes: Mapping[str, Size], group: Group
) -> Iterator[tuple[str, tuple[tuple[str, ...], ...]]]:
    """The names in one to several rows, columns and grid rows, in order, the runs as long as each other."""
    most = min(len(names), math.isqrt(len(names)) + MOST_RUNS)
    for runs in range(1, most + 1):
        for kind, axis, gap in (("rows", 0, group.gap_across), ("columns", 1, group.gap_down)):
            lengths = [sizes[name][axis] + gap for name in names]
            yield kind, tuple(tuple(names[at] for at in run) for run in partition(lengths, runs))
        across = math.ceil(len(names) / runs)
        yield "grid", tuple(tuple(names[at : at + across]) for at in range(0, len(names), across))


def _settings(kind: str, runs: int) -> Iterator[tuple[str, str]]:
    """How the frames of a run are aligned, and the runs set to each other."""
    aligned = ("left", "centre", "right") if kind == "columns" else ("top", "centre", "bottom")
    for align in aligned:
        yield align, "centre"
        if kind in ("rows", "columns") and runs > 1:
            yield align, "spread"


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
