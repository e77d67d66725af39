"""Slips of every usual kind in sound jobs by chance: how many are noticed, and how many sound jobs are doubted.

Run by hand: `python tests/bench/slips_at_random.py [FIRST [JOBS]]`: so many jobs from this seed on, each with four
slips, of the kinds in turn, so that each is tried about equally often where a job has what it needs.  No slip is chosen
for being seen: some leave no trace, as a frame alone whose sides changed places.
"""

from __future__ import annotations

import random
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from tests.bench.jobs_at_random import Maker
from tests.bench.unseen_jobs import doubted, found, said, share
from tests.bench.usual_slips import KINDS, NoPlaceError, slipped


def main(first: int, jobs: int) -> None:
    names, tried = list(KINDS), {name: [0, 0] for name in KINDS}
    sound = doubts = 0
    for seed in range(first, first + jobs):
        raw = Maker(seed).job()
        if raw is None:
            continue
        before = found(raw)
        sound, doubts = sound + 1, doubts + bool(doubted(before))
        for text in doubted(before):
            print(f"doubted, {seed}: {text}")
        for turn in range(4):
            name, chance = names[(4 * seed + turn) % len(names)], random.Random(4 * seed + turn)
            try:
                wrong = slipped(raw, name, chance)
            except NoPlaceError:
                continue
            if wrong != raw:
                tried[name][0] += bool(said(found(wrong)) - said(before))
                tried[name][1] += 1
    for name, (noticed, of) in tried.items():
        print(f"{name:36} {share(noticed, of)}")
    every = [noticed / of for noticed, of in tried.values() if of]
    print("slips noticed:", share(*(sum(each) for each in zip(*tried.values(), strict=True))))
    print(f"  of the kinds, each counted alike: {100 * sum(every) / len(every):.1f} %")
    print("sound jobs doubted:", share(doubts, sound))


if __name__ == "__main__":
    numbers = [int(word) for word in sys.argv[1:]]
    main(*numbers[:1] or [0], *numbers[1:] or [500])
