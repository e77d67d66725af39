"""Crowded jobs by chance: frames of many sizes and hangers close together, for what must hold on the fullest sheets."""

from __future__ import annotations

import random

from templates_gen.job.model import Fixing, Frame, Hanger, Job, Paper
from tests.jobs import frame, group, job

TITLES = ("Wall rue", "Hart's-tongue", "The fern house in winter, seen from the north", "Spleenwort")


def crowded(seed: int, on: Paper, unit: str = "in") -> Job:
    """Twelve frames in three rows, 10 to 45 mm apart."""
    chance = random.Random(seed)
    frames = [_frame(f"{number}", chance) for number in range(1, 13)]
    names = [item.id for item in frames]
    rows = tuple(tuple(names[start : start + 4]) for start in (0, 4, 8))
    gap = chance.uniform(10.0, 45.0)
    return job(*frames, group=group(rows, gap=gap), paper=on, unit=unit, title="Crowded ferns")


def _frame(name: str, chance: random.Random) -> Frame:
    width, height = (round(chance.uniform(100.0, 420.0)) for _ in "wh")
    drop = chance.uniform(10.0, height / 3)
    hanger, fixing = Hanger(kind="wire"), Fixing()
    kind = chance.choice(("wire", "wire", "sawtooth", "rings", "hook"))
    if kind == "rings":
        aside = chance.uniform(20.0, width / 3)
        hanger = Hanger(kind="rings", left=aside, right=aside, drop_left=drop, drop_right=drop + 2.0)
    elif kind == "sawtooth":
        hanger = Hanger(kind="sawtooth")
    elif drop > 35.0:
        fixing = Fixing(kind="hook", below=22.0)
    measured = None if chance.random() < 0.1 or kind == "rings" else drop
    return frame(name, width, height, measured, title=chance.choice(TITLES), hanger=hanger, fixing=fixing)
