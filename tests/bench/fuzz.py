"""Odd files for some minutes: how many were taken and refused, and every one that met neither.

Run by hand: `python tests/bench/fuzz.py --minutes 5 [--seed 1] [--only "job file"]`.  Exit code 1 when something is
wrong; what is printed of it is the file that showed it.
"""

from __future__ import annotations

import argparse
import random
import sys
import tempfile
import time
import traceback
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from tests.fuzz_targets import TARGETS, FaultError


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--minutes", type=float, default=5.0)
    options.add_argument("--seed", type=int, default=1)
    options.add_argument("--only", choices=list(TARGETS))
    asked = options.parse_args()
    names = [asked.only] if asked.only else list(TARGETS)
    counts: Counter[tuple[str, str]] = Counter()
    faults: dict[str, str] = {}
    slowest = dict.fromkeys(names, 0.0)
    number, end = 0, time.monotonic() + 60 * asked.minutes
    with tempfile.TemporaryDirectory() as folder:
        while time.monotonic() < end:
            name = names[number % len(names)]
            rng = random.Random(f"{asked.seed} {name} {number}")
            start = time.process_time()
            try:
                counts[name, "taken" if TARGETS[name](rng, Path(folder)) else "refused"] += 1
            except FaultError as fault:
                counts[name, "faults"] += 1
                faults.setdefault(_place(fault), f"{name} {number}: {fault}"[:3000])
            slowest[name] = max(slowest[name], time.process_time() - start)
            number += 1
    for name in names:
        told = ", ".join(f"{counts[name, kind]:,} {kind}" for kind in ("taken", "refused", "faults"))
        print(f"{name:12} {told}, slowest {slowest[name] * 1000:.0f} ms")
    for place, fault in faults.items():
        print(f"\n{place}\n  {fault}")
    return 1 if faults else 0


def _place(fault: FaultError) -> str:
    """Where it went wrong, so that each fault is shown once."""
    if fault.__cause__ is None:
        return str(fault)[:25]
    *_, last = traceback.extract_tb(fault.__cause__.__traceback__)
    return f"{type(fault.__cause__).__name__} in {Path(last.filename).name}, line {last.lineno}"


if __name__ == "__main__":
    sys.exit(main())
