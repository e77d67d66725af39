"""How exactly made photographs are read, of taped paper, walls and hanging frames: a line for each setting.

python tests/bench/photographs.py [COUNT [SETTING ...]]: 50 of each without a count, an hour on a quiet machine.  On a
busy one OMP_NUM_THREADS=1 is quicker.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable, Mapping, Sequence
from functools import partial
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[2]))

from tests.photo.made.hung_runs import hung_run
from tests.photo.made.runs import Setting, covered, rms, run
from tests.photo.made.wall_runs import wall_run

GOOD, WRONG = 1.25, 1.5
"""mm: a join that is off by less is not to be named, and one that is off by more must be."""

NEAR, FAR = 20.0, 3.0
"""mm: 1 % of two metres, and what is wrong of a frame that hangs."""

USUAL = 50
"""Photographs of each setting: with the odd ones a hundred of each kind of paper."""

FIRST = 7100
"""The first number of the pictures: none was looked at while the program was made."""


def spread(errors: Sequence[np.ndarray]) -> str:
    """The distribution of the lengths of errors."""
    far = np.linalg.norm(errors, axis=1)
    return f"rms {rms(errors):.3f} mm, 95 % within {np.quantile(far, 0.95):.2f}, worst {far.max():.2f}"


def taped(setting: Setting, count: int) -> str:
    done = run(setting, count, first=FIRST)
    found, true = np.array(done.offs).T
    named = np.array(done.named)
    bad, good = true > WRONG, true <= GOOD
    claimed = np.abs(found - true) <= np.array(done.join_sure)
    return (
        f"{done.unread} not read; {len(found)} joins: {spread(done.joins)}; of {bad.sum()} over {WRONG} mm "
        f"{(bad & (named == '')).sum()} not named, {(bad & (named == 'doubtful')).sum()} named as doubtful; of "
        f"{good.sum()} within {GOOD} mm {(good & (named == 'bad')).sum()} named; {(named == 'doubtful').sum()} "
        f"doubtful; 95 % covers {claimed.mean():.1%} of joins, {covered(done.nails, done.nail_sure):.1%} of nails; "
        f"nails: {spread(done.nails)}"
    )


def wall(setting: Setting, noted: bool, count: int) -> str:
    done = wall_run(setting, count, FIRST, noted)
    off, sure = np.array(done.off), np.array(done.sure)
    return (
        f"two metres away: median {np.median(off):.1f} mm, 95 % {np.quantile(off, 0.95):.1f}, most {off.max():.1f}; "
        f"within {NEAR:.0f} mm {(off <= NEAR).mean():.0%}; 95 % covers {(off <= sure).mean():.0%}, and is "
        f"{np.median(sure):.0f} mm in the middle"
    )


def hung(setting: Setting, count: int) -> str:
    read = hung_run(setting, count, FIRST)
    across, up = np.sqrt((np.array(read.corners) ** 2).mean(0))
    claimed = np.abs(np.array(read.corners)) <= np.array(read.sure)[:, None]
    return (
        f"{len(read.tilts)} of {read.frames} frames read ({len(read.tilts) / read.frames:.0%}); rms {across:.2f} mm "
        f"across, {up:.2f} up; tilt rms {np.sqrt(np.mean(np.square(read.tilts))):.3f} degrees; "
        f"{sum(one.far > FAR for one in read.worst)} wrong by more than {FAR:.0f} mm, "
        f"{sum(one.far > max(FAR, one.sure) for one in read.worst)} of them more than was said; "
        f"95 % covers {claimed.mean():.1%}"
    )


SETTINGS: Mapping[str, Callable[[int], str]] = {
    "taped flat": partial(taped, Setting()),
    "taped flat, odd": partial(taped, Setting(odd=True)),
    "taped bulging": partial(taped, Setting(off=3.0)),
    "taped bulging, odd": partial(taped, Setting(odd=True, off=3.0, loose=False)),
    "taped lifting": partial(taped, Setting(off=3.0, loose=True)),
    "taped lifting, odd": partial(taped, Setting(odd=True, off=3.0, loose=True)),
    "taped two, bulging": partial(taped, Setting(off=3.0, views=2)),
    "taped two, bulging, odd": partial(taped, Setting(odd=True, off=3.0, views=2)),
    "wall one card": partial(wall, Setting(), True),
    "wall one card, odd": partial(wall, Setting(odd=True), True),
    "wall one card, focal length not noted": partial(wall, Setting(odd=True), False),
    "wall two cards": partial(wall, Setting(views=2), True),
    "wall two cards, odd": partial(wall, Setting(odd=True, views=2), True),
    "hung": partial(hung, Setting()),
    "hung, odd": partial(hung, Setting(odd=True)),
}
"""What is measured; the odd ones are by cameras, blurs, noise and paper that the program was not made with."""


def main(count: int, names: list[str]) -> None:
    for name in names or SETTINGS:
        began = time.process_time()
        told = SETTINGS[name](count)
        print(
            f"{name}: {count} photographs, {told}; {(time.process_time() - began) / count:.1f} s of CPU each",
            flush=True,
        )


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else USUAL, sys.argv[2:])
