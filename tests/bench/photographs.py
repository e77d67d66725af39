"""How exactly taped paper is read from made photographs: python tests/bench/photographs.py COUNT [SETTING …].

On a busy machine OMP_NUM_THREADS=1 is quicker.
"""

from __future__ import annotations

import os
import sys
import time
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[2]))

from tests.photo.made.runs import Setting, covered, rms, run

SETTINGS = {
    "flat": Setting(),
    "flat, odd": Setting(odd=True),
    "bulging": Setting(off=3.0),
    "bulging, odd": Setting(odd=True, off=3.0),
    "two, bulging": Setting(off=3.0, views=2),
    "two, bulging, odd": Setting(odd=True, off=3.0, views=2),
}
NAMED = 1.25  # mm: what is said
WRONG = 1.5  # mm: what must be said


def main(count: int, names: list[str]) -> None:
    for name in names or SETTINGS:
        began = time.time()
        done = run(SETTINGS[name], count, first=1000)
        if folder := os.environ.get("KEEP"):
            np.savez(
                Path(folder) / f"{name}.npz",
                joins=done.joins,
                sure=done.join_sure,
                offs=done.offs,
                nails=done.nails,
                nsure=done.nail_sure,
            )
        found, true = np.array(done.offs).T
        lengths = np.hypot(*np.array(done.joins).T)
        print(
            f"{name}: {count} photographs, {done.unread} not read; {len(found)} joins: rms {rms(done.joins):.3f} mm, "
            f"median {np.median(lengths):.3f}, 95 % {np.quantile(lengths, 0.95):.3f}, most {lengths.max():.2f}; "
            f"missed {((found <= NAMED) & (true > WRONG)).sum()} of {(true > WRONG).sum()} over {WRONG} mm; "
            f"named {((found > NAMED) & (true <= NAMED)).sum()} of {(true <= NAMED).sum()} within {NAMED} mm, "
            f"{((found > NAMED) & (true <= 1.0)).sum()} of {(true <= 1.0).sum()} within 1 mm; "
            f"95 % covers {covered(done.joins, done.join_sure):.1%} of joins, "
            f"{covered(done.nails, done.nail_sure):.1%} of nails; nails rms {rms(done.nails):.3f} mm; "
            f"{(time.time() - began) / count:.1f} s each",
            flush=True,
        )


if __name__ == "__main__":
    main(int(sys.argv[1]), sys.argv[2:])
