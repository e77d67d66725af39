"""For every rule about wires the smallest job that raises it, and the same with one number changed."""

from __future__ import annotations

from templates_gen.job.model import Hanger, Job
from tests.jobs import frame, job


def wired(drop: float | None = 100.0, height: float = 500.0, depth: float = 200.0, **more: float | None) -> Job:
    """A frame 400 mm wide on a wire between rings 300 mm apart."""
    rings = {"ring_separation": 300.0, "ring_depth": depth} | more
    return job(frame(drop=drop, height=height, hanger=Hanger(kind="wire", **rings)))


def two(drop: float | None = 80.0, apart: float | None = 100.0, **more: float) -> Job:
    """A frame on a wire about whose rings nothing is told."""
    return job(frame(drop=drop, hanger=Hanger(kind="wire", apart=apart, **more)))


def ringed(at_two: float) -> Job:
    """Both drops measured, and the rings."""
    return two(ring_separation=300.0, ring_depth=150.0, drop_at_two=at_two)


# Worked out by hand here, D = 300: at 15° a wire rises 150 tan 15° = 40.19, at 30° 86.60.  Rising 100, it is steady
# when the middle lies more than 300² / (4 · 100) = 225 under rings 200 deep: in a frame more than 850 high.
CASES = [  # rule, level, about, a job that raises it, the job with one number changed
    ("wire-flat", "warn", ("A",), wired(drop=159.9), wired(drop=159.7)),
    ("wire-flat", "note", ("A",), wired(drop=113.5, height=1000.0), wired(drop=113.3, height=1000.0)),
    ("wire-slips", "note", ("A",), wired(height=849.0), wired(height=851.0)),
    ("drop-needs-both-hooks", "warn", ("A",), two(), two(apart=None)),
    ("drop-needs-both-hooks", "warn", ("A",), two(), two(drop_at_two=85.0)),
    ("drop-needs-both-hooks", "warn", ("A",), two(ring_separation=300.0), two(ring_separation=300.0, ring_depth=150.0)),
    ("drop-needs-both-hooks", "note", ("A",), two(drop=None), two(drop=None, drop_at_two=85.0)),
    # two hooks lift the frame, so the drop on them is longer, by at most half their distance; 3 mm for the measuring
    ("drops-disagree", "warn", ("A",), two(drop_at_two=76.9), two(drop_at_two=77.1)),
    ("drops-disagree", "warn", ("A",), two(drop_at_two=133.1), two(drop_at_two=132.9)),  # 80 + 100 / 2 + 3
    # rising 70 on one: L = 2 √(150² + 70²) = 331.06; on two 100 apart ½ √(31.06 · 431.06) = 57.85: 150 − 57.85 = 92.15
    ("drops-disagree", "warn", ("A",), ringed(89.0), ringed(89.3)),
    ("drops-disagree", "warn", ("A",), ringed(95.3), ringed(95.0)),
    ("drops-disagree", "warn", ("A",), ringed(80.0), two(drop=None, drop_at_two=80.0)),
]
