"""Stairs, edges of the wall, twins: the smallest job that raises each rule, and the same with one thing changed."""

from __future__ import annotations

from templates_gen.job.model import Frame, Hanger, Job, Wall
from templates_gen.job.stairs import Stairs
from tests.jobs import Height, frame, group, job

SLOPED = ((0.0, 0.0), (4000.0, 0.0), (4000.0, 2600.0), (1000.0, 2600.0), (0.0, 1600.0))
"""Corners of a wall with a roof that climbs 1 in 1 over its first metre: the roof is on the line y = x + 1600."""


def climbing(above: float, clear: float = 0.0, nosing: float = 1000.0, top: float | None = None, **more: object) -> Job:
    """A frame of 400 x 500 with its middle 2000 across, `above` the nosings of a stair of 30 in 40.

    Its lower right corner is 200 right of its middle, where the stair is 200 · 3 / 4 = 150 higher, and 250 below it:
    that corner is `above` − 400 over the nosing line.
    """
    stairs = Stairs(x=nosing, y=180.0, slope=0.75, top=top, clear=clear)
    wall = Wall(name="", width=4000.0, height=9000.0, stairs=stairs, **more)
    asked = group((("A",),), "stairs", height=Height(by="above_nosings", at=above), slope=0.75)
    return job(frame("A"), wall=wall, group=asked)


def near_edge(centre: float, clear: float) -> Job:
    wall = Wall(name="", width=4000.0, height=2600.0, clear=clear)
    return job(wall=wall, group=group((("A",),), height=Height(by="centre", at=centre)))


def under_roof(centre_on: float, clear: float) -> Job:
    """A frame whose upper left corner is 200 left of its middle and at 1700 up."""
    wall = Wall(name="", width=4000.0, height=2600.0, outline=SLOPED, clear=clear)
    asked = group((("A",),), height=Height(by="centre", at=1450.0), centre_on=centre_on)
    return job(wall=wall, group=asked)


def two(**more: object) -> Job:
    return job(frame("A", 400.0, 500.0, 80.0), Frame(**{"id": "B", "width": 400.0, "height": 500.0} | more))


A, BOTH = ("A",), ("A", "B")
CASES = [
    ("wall-clearance", "warn", A, near_edge(2251.0, 100.0), near_edge(2250.0, 100.0)),  # 2600 − 250 − 100
    ("wall-clearance", "warn", A, near_edge(349.0, 100.0), near_edge(350.0, 100.0)),  # 250 + 100
    # the corner (x, 1700) is (x − 100) / √2 from the roof: 141.4 gives 100 mm; x is 200 left of the middle
    ("wall-clearance", "warn", A, under_roof(441.4, 100.0), under_roof(441.5, 100.0)),
    ("wall-clearance", "warn", A, under_roof(341.4, 100.0), under_roof(341.4, 29.2)),  # 41.4 / √2 = 29.3
    ("below-nosings", "stop", A, climbing(399.0), climbing(400.0)),
    ("near-nosings", "warn", A, climbing(1199.0, clear=800.0), climbing(1200.0, clear=800.0)),
    ("handrail", "note", A, climbing(1364.0), climbing(1365.0)),  # 400 + 965 (2010 ADA Standards, 505.4, from memory)
    ("stair-footing", "warn", (), climbing(1500.0), climbing(1500.0, nosing=2200.1)),  # it starts right of the frame
    # the landing at 600 is reached (600 − 180) / 0.75 = 560 right of the first nosing; the frame begins at 1800
    (
        "stair-footing", "warn", (),
        climbing(1500.0, nosing=1241.0, top=600.0), climbing(1500.0, nosing=1240.0, top=600.0),
    ),
    # the frame's middle, at 2000, is 760 right of the first nosing; the pitch line is 180 + 760 · 3 / 4 = 750 up there
    ("climbing-on", "note", A, climbing(1500.0, nosing=1240.0, top=749.0), climbing(1500.0, nosing=1240.0, top=750.0)),
    ("stair-cables", "note", (), climbing(1500.0, wiring="uk"), climbing(1500.0, wiring="us")),
    # 2000 mm above the stair, common practice: the nail is 169.1 above the frame's middle
    ("ladder", "note", A, climbing(1831.0), climbing(1830.8)),
    ("twins", "note", BOTH, two(drop=80.0), two(drop=80.0, width=401.0)),
    ("twins", "note", BOTH, two(drop=90.0), two(drop=90.0, hanger=Hanger(kind="sawtooth"))),
]  # fmt: skip
