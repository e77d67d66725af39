"""Time and memory for each sheet stay as they are when the sheets become many.  Run by hand; the table: `growth.py`.

The reach for 100 to 2,000 frames on ever wider walls is an exponent of 1.03; fewer are searched for fewer minutes,
which takes seconds.  Measured on a busy machine, 100 to 2,000 frames: whole 0.98, sheets 1.01, drawing 1.02, writing
0.94, drawing and writing 1.00, memory 1.01 (51 kB a sheet).
"""

from __future__ import annotations

from typing import Any

import pytest

from tests.bench.growth import PHASES, exponent, measured

COUNTS = (100, 300, 1000)

MOST = 1.05  # the exponent, of time and of memory; our own design, no source


@pytest.fixture(scope="module")
def runs() -> list[dict[str, Any]]:
    return [measured(count) for count in COUNTS]


@pytest.mark.parametrize("parts", [PHASES, ("draw", "write"), ("memory",)], ids=["whole", "draw and write", "memory"])
def test_what_a_sheet_takes_does_not_grow(runs: list[dict[str, Any]], parts: tuple[str, ...]) -> None:
    assert runs[-1]["count"] > 8 * runs[0]["count"]
    assert exponent(runs, parts) <= MOST
