"""How time and memory grow with the sheets: templates of 5 to 2,000 frames, about 10,000 sheets.

Run by hand: `python tests/bench/growth.py [most frames] [square]`.  The walls are five rows of frames, ever wider; or,
with `square`, as many rows as columns.  Each template is made in a process of its own.  Seconds are those of the
processor, so that other work on the machine matters little.
"""

from __future__ import annotations

import json
import math
import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]
PHASES = ("plan", "find", "sheets", "error", "draw", "write")
COUNTS = (5, 20, 50, 100, 200, 500, 1000, 2000)

FEWEST = 100
"""Frames from which on the exponents are fitted: fewer are searched for fewer minutes, and of very few what every
template costs (fonts, the first pages) hides how it grows.  Our own design, no source."""

ONE = """
import json, sys
from tests.bench.growing import Made
from tests.jobs import many
count, across = int(sys.argv[1]), int(sys.argv[2])
Made(many(5))  # what is imported and read once
print(json.dumps(Made(many(count, across or None)).told()))
"""

SMALL = "import subprocess, sys; sys.exit(subprocess.run(sys.argv[1:]).returncode)"
"""A small process that starts the other one: peak memory counts from what its parent took when it was forked."""


def measured(count: int, square: bool = False) -> dict[str, Any]:
    """What a template of so many frames takes: seconds for each phase, kB of memory, and the number of sheets."""
    across = math.isqrt(count) if square else 0
    command = [sys.executable, "-c", SMALL, sys.executable, "-c", ONE, str(count), str(across)]
    path = os.pathsep.join([str(ROOT), os.environ.get("PYTHONPATH", "")])
    done = subprocess.run(command, env={**os.environ, "PYTHONPATH": path}, check=True, capture_output=True, text=True)
    return {"frames": count, **json.loads(done.stdout)}


def exponent(runs: Sequence[dict[str, Any]], parts: Sequence[str]) -> float:
    """The b of `parts ~ sheets ** b`: the slope of the least-squares line through the logarithms."""
    xs = [math.log(run["count"]) for run in runs]
    ys = [math.log(sum(run[part] for part in parts)) for run in runs]
    x, y = sum(xs) / len(xs), sum(ys) / len(ys)
    return sum((a - x) * (b - y) for a, b in zip(xs, ys, strict=True)) / sum((a - x) ** 2 for a in xs)


def line(run: dict[str, Any]) -> str:
    """A line of the table."""
    parts = [run[phase] for phase in PHASES]
    seconds = " ".join(f"{part:8.3f}" for part in parts)
    each = f"{1000 * sum(parts) / run['count']:9.2f} {run['memory'] / run['count']:9.1f}"
    return f"{run['frames']:6} {run['count']:7} {seconds} {each} {run['pdf'] / 1000 / run['count']:9.2f}"


def main(most: int, square: bool) -> None:
    """Print the table and the exponents."""
    names = " ".join(f"{phase + ' s':>8}" for phase in PHASES)
    print(f"frames  sheets {names}  ms/sheet  kB/sheet    pdf kB", flush=True)
    runs = []
    for count in (count for count in COUNTS if count <= most):
        runs.append(measured(count, square))
        print(line(runs[-1]), flush=True)
    large = [run for run in runs if run["frames"] >= FEWEST]
    wanted = {"whole": PHASES, "sheets": ("sheets",), "draw and write": ("draw", "write"), "memory": ("memory",)}
    for name, parts in wanted.items():
        print(f"{name:15} exponent {exponent(runs, parts):.3f}; from {FEWEST} frames on {exponent(large, parts):.3f}")


if __name__ == "__main__":
    numbers = [int(word) for word in sys.argv[1:] if word.isdigit()]
    main(numbers[0] if numbers else COUNTS[-1], "square" in sys.argv)
