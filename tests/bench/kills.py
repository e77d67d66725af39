"""Runs of `template` killed at random moments: what is then under the result's name, and beside it.

Run by hand: `python tests/bench/kills.py 400`.  It stops with an error as soon as a file is not whole.
"""

from __future__ import annotations

import argparse
import signal
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from tests.killing import Killing


def main(kills: int) -> None:
    with tempfile.TemporaryDirectory() as name:
        killing = Killing(Path(name))
        print(f"a run takes {killing.seconds:.2f} s")
        for number in (signal.SIGKILL, signal.SIGTERM, signal.SIGHUP, signal.SIGINT):
            times = kills if number == signal.SIGKILL else kills // 5
            for early in (0.0, 0.85):
                counts = killing.kill(times // 2, seed=number, number=number, early=early)
                print(f"{number.name}, from {early:.0%}: {', '.join(f'{n} {what}' for what, n in counts.items() if n)}")
        print(f"parts left at the end: {[path.name for path in killing.parts()]}")


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("kills", type=int, nargs="?", default=400)
    main(parser.parse_args().kills)
