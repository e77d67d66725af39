"""What is behind the wall, where people are, the building: for every rule a job that breaks it and one that does not.

A frame is 400 × 500 mm with its middle 2000 across and 1450 up, so its nail is 2000 across and 1700 − 80 − 0.9 =
1619.1 up: worked out by hand here.  The limits are worked out from the sources beside them.
"""

from __future__ import annotations

from typing import Any

from templates_gen.base.geometry import Rect
from templates_gen.job.model import Feature, Fixing, Frame, Height, Job, Wall
from tests.jobs import frame, group, job

INCH, POUND = 25.4, 0.45359237  # mm, kg exactly (international yard and pound agreement, 1959)


def feature(kind: str, left: float, bottom: float, width: float = 80.0, height: float = 80.0, **more: Any) -> Feature:
    return Feature(**({"kind": kind, "name": kind, "rect": Rect.sized(left, bottom, width, height)} | more))


SWITCH = feature("switch", 300.0, 1050.0)
"""Far from the nail, level and upright."""


def wall(*features: Feature, **more: Any) -> Wall:
    """A wall of which the rules about cables have nothing to say at the nail, unless a test changes it."""
    values: dict[str, Any] = {"name": "", "width": 4000.0, "height": 2600.0, "wiring": "uk", "features": features}
    return Wall(**(values | more))


def on(
    *features: Feature, frames: tuple[Frame, ...] = (), unit: str = "mm", centre: float = 1450.0, **more: Any
) -> Job:
    """A job on such a wall, with a switch far from its frames."""
    frames = frames or (frame(),)
    rows = (tuple(item.id for item in frames),)
    asked = group(rows, height=Height(by="centre", at=centre))
    return job(*frames, wall=wall(SWITCH, *features, **more), unit=unit, group=asked)


def nailed(length: float, angle: float | None = None, **more: Any) -> Job:
    fixing = Fixing(kind="screw", diameter=1.8, length=length, angle=angle)
    return on(frames=(frame(fixing=fixing),), **more)


def deep(inches: float, bottom: float, public: bool = True) -> Job:
    """A frame so deep with its lower edge so high, both in inches, on a public path or not."""
    tall = frame(height=20 * INCH, depth=inches * INCH)
    return on(frames=(tall,), unit="in", centre=(bottom + 10) * INCH, height=4000.0, public=public)


def metric(depth: float | None, bottom: float) -> Job:
    return on(frames=(frame(depth=depth),), centre=bottom + 250.0, height=4000.0, public=True)


def over(
    name: str, walled: dict[str, Any] | None = None, left: float = 1500.0, use: str = "", kind: str = "furniture",
    **more: Any,
) -> Job:  # fmt: skip
    """A frame from 1800 to 2200 across above furniture of 400 mm."""
    return on(feature(kind, left, 0.0, 400.0, 500.0, name=name, use=use), frames=(frame(**more),), **walled or {})


def shaken(pounds: float | None, earthquake: bool = True, **more: Any) -> Job:
    return on(frames=(frame(weight=None if pounds is None else pounds * POUND),), earthquake=earthquake, **more)


def small(side: float, centre: float, public: bool = True, unit: str = "mm") -> Job:
    return on(frames=(frame(width=side, height=200.0),), centre=centre, public=public, unit=unit)


A = ("A",)
CASES = [  # rule, level, about, a job that raises it, the job with one thing changed
    # BS 7671, 522.6.202: as wide as the accessory, upright and level; 150 mm of the top and of a corner
    ("cable-zone", "warn", A, on(feature("outlet", 2000.0, 400.0)), on(feature("outlet", 2000.1, 400.0))),
    ("cable-zone", "warn", A, on(feature("outlet", 500.0, 1619.0)), on(feature("outlet", 500.0, 1619.2))),
    ("cable-zone", "warn", A, on(height=1769.0), on(height=1770.0)),
    ("cable-zone", "warn", A, on(width=300.0), on(width=301.0)),  # 300 / 2 = 150
    # DIN 18015-3: 150 to 450 mm below the ceiling, 100 to 300 mm beside a window; 2600 − 450 = 2150
    ("cable-zone", "warn", A, on(wiring="de", height=2069.0), on(wiring="de", height=2070.0)),
    (
        "cable-zone", "warn", A,
        on(feature("window", 2100.0, 900.0), wiring="de"), on(feature("window", 2099.0, 900.0), wiring="de"),
    ),
    # our reading of common practice: the stud of 38 mm on either side of a box; 2000 − 80 − 38 = 1882
    (
        "cable-zone", "warn", A,
        on(feature("outlet", 1882.0, 400.0), wiring="us"), on(feature("outlet", 1881.9, 400.0), wiring="us"),
    ),
    ("cable-zone", "warn", A, on(feature("outlet", 2000.0, 400.0)), on(feature("vent", 2000.0, 400.0))),
    # NEC 300.4: board + 1 1/4 in, 1/2 + 1 1/4 = 1 3/4 in = 44.45 mm
    (
        "nail-deep", "warn", A,
        nailed(44.45, wiring="us", board=12.7), nailed(44.44, wiring="us", board=12.7),
    ),
    ("nail-deep", "warn", A, nailed(50.0), nailed(49.99)),  # BS 7671, 522.6.202: 50 mm
    ("nail-deep", "warn", A, nailed(60.0, wiring="uk"), nailed(60.0, wiring="de")),
    # common practice, no source: 150 mm beside; 2000 + 150
    ("pipes-near", "note", A, on(feature("radiator", 2150.0, 100.0)), on(feature("radiator", 2150.1, 100.0))),
    ("pipes-near", "note", A, on(feature("pipe", 1770.0, 0.0)), on(feature("pipe", 1769.9, 0.0))),
    ("pipes-near", "note", A, on(feature("pipe", 2150.0, 2400.0)), on(feature("pipe", 2150.1, 2400.0))),  # above it
    ("pipes-near", "note", (), on(behind=("bathroom",)), on(behind=("other",))),
    # BS 7671, 522.6.202: the zones hold on the other side of a wall up to 100 mm thick
    ("other-side", "note", (), on(behind=("other",)), on()),
    ("other-side", "note", (), on(behind=("other",)), on(behind=("other",), wiring="de")),
    ("wiring-unknown", "note", (), on(wiring=""), on(wiring="uk")),
    ("wiring-unknown", "note", (), on(wiring="none"), on(wiring="de")),
    ("wiring-unknown", "note", (), on(wiring="us"), on(wiring="uk")),
    ("wiring-unknown", "note", (), job(wall=wall()), job(wall=wall(SWITCH))),
    # 2010 ADA Standards, 307.2: over 4 in deep, above 27 in and not above 80 in
    ("sticks-out", "warn", A, deep(4.5, 45.0), deep(1.5, 45.0)),
    ("sticks-out", "warn", A, deep(4.5, 27.01), deep(4.5, 27.0)),
    ("sticks-out", "warn", A, deep(4.5, 80.0), deep(4.5, 80.01)),
    ("sticks-out", "warn", A, deep(4.01, 45.0), deep(4.0, 45.0)),
    ("sticks-out", "warn", A, deep(4.5, 45.0), deep(4.5, 45.0, public=False)),
    # the same in metric, as 307.2 prints it: 100, 685 and 2030 mm
    ("sticks-out", "warn", A, metric(100.1, 1000.0), metric(100.0, 1000.0)),
    ("sticks-out", "warn", A, metric(120.0, 685.1), metric(120.0, 685.0)),
    ("sticks-out", "warn", A, metric(120.0, 2030.0), metric(120.0, 2030.1)),
    ("depth-missing", "note", A, metric(None, 1000.0), metric(90.0, 1000.0)),
    ("depth-missing", "note", A, metric(None, 2030.0), metric(None, 2031.0)),
    # FEMA, Mount Framed Pictures and Mirrors Securely, April 2008: not over beds, chairs, couches
    ("over-bed", "warn", A, over("sofa", glazing="glass"), over("sofa", glazing="none", weight=2.0)),
    ("over-bed", "warn", A, over("bed", left=2199.0, glazing="glass"), over("bed", left=2200.0, glazing="glass")),
    ("over-bed", "warn", A, over("couch", glazing="glass"), over("counter", glazing="glass")),
    ("over-bed", "warn", A, over("pallets", use="bed", glazing="glass"), over("pallets", glazing="glass")),
    ("over-bed", "warn", A, over("bench", glazing="glass"), over("bench", use="other", glazing="glass")),
    # nothing heavy over a cot (nursery-safety texts)
    ("over-bed", "warn", A, over("cot", glazing="none", weight=2.0), over("sofa", glazing="none", weight=2.0)),
    # Earthquake Country Alliance, step 1: 20 lb, where a hook alone is no longer the advice
    (
        "over-bed", "warn", A,
        over("sofa", glazing="none", weight=20 * POUND), over("sofa", glazing="none", weight=19.99 * POUND),
    ),
    ("over-bed", "note", A, over("sofa"), over("sofa", glazing="none", weight=2.0)),
    ("over-bed", "note", A, over("sofa", weight=2.0), over("chart", weight=2.0)),
    ("earthquake", "note", A, shaken(22.0), shaken(22.0, earthquake=False)),
    # FEMA, April 2008, of large pictures; nothing of what a professional hangs
    ("earthquake-hooks", "note", A, shaken(22.0), shaken(22.0, build="masonry")),
    ("earthquake-hooks", "note", A, shaken(50.0), shaken(50.01)),
    ("earthquake-hooks", "note", A, shaken(20.0), shaken(19.99)),
    # EPA, 40 CFR 745: before 1978; home-safety texts: before about 1980
    ("old-house", "note", (), on(built=1965, wiring="us"), on(built=1990, wiring="us")),
    ("old-house", "note", (), on(built=1979, wiring="us"), on(built=1980, wiring="us")),
    # asbestos was used until it was forbidden, in Germany in 1993 and in Britain in 1999 (from memory)
    ("old-house", "note", (), on(built=1993, wiring="de"), on(built=1994, wiring="de")),
    ("old-house", "note", (), on(built=1999), on(built=2000)),
    ("old-house", "note", (), on(built=1999, wiring="none"), on(built=1999, wiring="de")),
    ("ladder", "note", A, on(centre=1831.0), on(centre=1830.8)),  # 2000 mm, common practice: 1830.9 − 1450 + 1619.1
    ("step-stool", "note", A, on(centre=1631.0), on(centre=1630.8)),  # 1800 mm, our own: 1630.9 − 1450 + 1619.1
    ("step-stool", "note", A, on(centre=1830.8), on(centre=1831.0)),
    # Smithsonian Guidelines for Accessible Exhibition Design: 1015 mm, 40 in; small: our own reading, 200 mm
    ("viewing-height", "note", A, small(200.0, 1015.1), small(200.0, 1015.0)),
    ("viewing-height", "note", A, small(200.0, 1016.1, unit="in"), small(200.0, 1016.0, unit="in")),
    ("viewing-height", "note", A, small(200.0, 1220.0), small(201.0, 1220.0)),
    # the same: labels' middles from 1220 to 1675 mm, 48 to 66 in, which 1675 mm are, not the 67 quoted beside it
    ("viewing-height", "note", (), small(201.0, 1219.9), small(201.0, 1220.0)),
    ("viewing-height", "note", (), small(201.0, 1675.1), small(201.0, 1675.0)),
    ("viewing-height", "note", (), small(201.0, 48 * INCH - 0.1, unit="in"), small(201.0, 48 * INCH, unit="in")),
    ("viewing-height", "note", (), small(201.0, 66 * INCH + 0.1, unit="in"), small(201.0, 66 * INCH, unit="in")),
    ("viewing-height", "note", (), small(201.0, 1700.0), small(201.0, 1700.0, public=False)),
    ("viewing-height", "note", A, small(200.0, 1200.0), small(200.0, 1200.0, public=False)),
]  # fmt: skip
