"""Time and memory for each sheet stay as they are when the sheets become many.  Run by hand; the table: `growth.py`.

The reach for 5 to 2,000 frames on ever wider walls is an exponent of 1.05 for the whole, and of 1.03 for drawing and
writing.  Measured from 50 frames on: whole 1.00, drawing and writing 1.01, memory 0.98 (37 kB a sheet); from 500 to
2,000 frames alone 1.07, for longer numbers find room less easily.  On square walls the sheet plan has an exponent of
1.10 (the whole 1.02), for it is an exact search over strips, and both the strips and what is in each become more.
"""

from __future__ import annotations

from typing import Any

import pytest

from tests.bench.growth import PHASES, exponent, measured

COUNTS = (50, 150, 500)

MOST = 1.05  # the exponent, of time and of memory; our own design, no source


@pytest.fixture(scope="module")
def runs() -> list[dict[str, Any]]:
    return [measured(count) for count in COUNTS]


@pytest.mark.parametrize("parts", [PHASES, ("draw", "write"), ("memory",)], ids=["whole", "draw and write", "memory"])
def test_what_a_sheet_takes_does_not_grow(runs: list[dict[str, Any]], parts: tuple[str, ...]) -> None:
    assert runs[-1]["count"] > 8 * runs[0]["count"]
    assert exponent(runs, parts) <= MOST
