"""For every rule about arrangements that are found the smallest job that raises it, and one thing changed."""

from __future__ import annotations

from templates_gen.job.model import Group, Job
from templates_gen.job.wishes import Wishes
from tests.jobs import Height, frame, job


def found(apart: float = 0.0, arrangement: str = "salon", **wishes: object) -> Job:
    """Two frames of 400 mm, pinned with their middles so far apart, or not pinned."""
    pins = (("A", -apart / 2, 0.0), ("B", apart / 2, 0.0)) if apart else ()
    asked = Group(
        arrangement=arrangement, rows=(("A", "B"),) if arrangement == "row" else (), gap_across=60.0, gap_down=60.0,
        wishes=Wishes(pins=pins, **wishes), height=Height(by="centre", at=1450.0),
    )  # fmt: skip
    return job(frame("A"), frame("B", height=400.0), group=asked)


# Worked out by hand here: together are frames with at most 1.6 gaps between them, and 0.5 mm: 400 + 96 + 0.5
TOGETHER = (("A", "B"),)
CASES = [  # rule, level, about, a job that raises it, the job with one thing changed
    ("wish-unmet", "warn", ("A", "B"), found(496.6, together=TOGETHER), found(496.4, together=TOGETHER)),
    ("arrangement-found", "note", (), found(), found(arrangement="row")),
]
