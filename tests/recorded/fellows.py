"""More measures that are let grow: of one frame among so many others, and of what single rules ask about."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache, partial
from itertools import product
from typing import Any

from templates_gen.job.model import Fixing, Hanger, Height, Job, Studs
from tests.jobs import frame, group, job
from tests.made import HOOK, SAWTOOTH
from tests.recorded.measures import (
    ALL,
    AT,
    BED,
    EVEN,
    GAP,
    HOOKS,
    KG,
    MM,
    NAIL,
    PLACED,
    SCREW,
    SIDES,
    SOFA,
    Sweep,
    above,
    far_from,
    placed,
    room,
    row,
    stair,
)  # fmt: skip

NAMES = "ABCDEFGH"

AGREEING, SCATTERED = (70.0, 72.0, 71.0, 73.0, 70.0, 72.0, 71.0), (70.0, 60.0, 82.0, 90.0, 55.0, 75.0)
"""Drops of twins: alike as those of one make, and not."""


def _twins(drops: Sequence[float], hanger: Hanger | None = None, **more: Any) -> Job:
    """Frames of one size in a row, with these drops."""
    kind = hanger or Hanger(kind="wire")
    frames = [frame(name, 300.0, 400.0, drop, hanger=kind, **more) for name, drop in zip(NAMES, drops, strict=False)]
    return job(*frames, group=group((tuple(each.id for each in frames),), "row"))


def _pairs(drops: Sequence[float], left: float = 40.0, kind: str = "rings", front: bool = False) -> Job:
    """Frames of one size on two points each, the first of them so far from its side."""
    frames = [
        frame(name, 300.0, 400.0, None, hanger=Hanger(
            kind=kind, left=41.0 if at else left, right=43.0, drop_left=drop, drop_right=drop + 1.0))
        for at, (name, drop) in enumerate(zip(NAMES, drops, strict=False))
    ]  # fmt: skip
    written = (("frame A, hanger, seen_from", "front" if front else "back"),)
    return job(*frames, group=group((tuple(each.id for each in frames),), "row"), written=written)


def _unlike(count: int, hanger: Hanger | None = None, share: float = 0.17, **more: Any) -> Job:
    """Frames of sizes that are all unlike, each with its drop in proportion."""
    sides = [(200.0 + 60.0 * at, 250.0 + 70.0 * at) for at in range(count)]
    frames = [
        frame(name, wide, high, round(share * high), hanger=hanger or Hanger(kind="wire"), weight=wide * high * 1e-5,
              **more)
        for name, (wide, high) in zip(NAMES, sides, strict=False)
    ]  # fmt: skip
    return job(*frames, group=group((tuple(each.id for each in frames),), "row"))


def _deep(count: int) -> Job:
    """Twins of which the first has a depth and no drop, and the others drops and no depth."""
    frames = [frame(n, 300.0, 400.0, 70.0 + at if at else None) for at, n in enumerate(NAMES[:count])]
    deep = frame("A", 300.0, 400.0, None, depth=70.0)
    return job(deep, *frames[1:], group=group((tuple(NAMES[:count]),), "row"))


def _weighed(masses: Sequence[float], glazing: str = "", written: Any = ()) -> Job:
    """Twins that weigh so much."""
    frames = [
        frame(n, 300.0, 400.0, 70.0, weight=mass, glazing=glazing) for n, mass in zip(NAMES, masses, strict=False)
    ]
    return job(*frames, group=group((tuple(each.id for each in frames),), "row"), written=written)


def _among_twins() -> Iterator[Sweep]:
    for count in range(2, 8):
        units = ALL if count == 3 else MM
        yield Sweep(f"{count} twins", "frames.0.drop", cache(partial(_twins, AGREEING[:count])), units, 3.0)
    for count in (4, 5, 6):
        yield Sweep(f"{count} scattered", "frames.0.drop", cache(partial(_twins, SCATTERED[:count])), MM, 3.0)
    for count, off in product((3, 5), (90.0, 60.0)):
        make = cache(partial(_twins, (off, *AGREEING[1:count])))
        yield Sweep(f"{count} twins, one of {off:g}", "frames.1.drop", make, MM, 2.0)
    yield Sweep("deep twins", "frames.0.drop", cache(partial(_twins, (230.0, 231.0, 232.0))), MM, 1.5)
    yield Sweep("sawtooth twins", "frames.0.drop", cache(partial(_twins, (12.0, 13.0, 12.0), SAWTOOTH)), MM, 4.0)
    both = "frames.0.hanger.drop_left+frames.0.hanger.drop_right"
    for kind, count in product(("rings", "keyholes", "plates"), (2, 4)):
        make = cache(partial(_pairs, AGREEING[:count], kind=kind))
        yield Sweep(f"{count} on {kind}", both, make, MM, 3.0)
        yield Sweep(f"{count} on {kind}", "frames.0.hanger.left", make, MM, 6.0)
    aside = cache(partial(_pairs, AGREEING[:3], 90.0))
    yield Sweep("one aside", "frames.1.hanger.left", aside, MM, 3.0)
    for path in ("left", "drop_left"):
        yield Sweep("from the front", f"frames.0.hanger.{path}", cache(partial(_pairs, (70.0,), front=True)), ALL, 4.0)
    for count in (2, 3, 4):
        yield Sweep(f"depth of {count}", "frames.0.depth", cache(partial(_deep, count)), MM, 3.0)
    for masses in ((2.0, 2.1), (2.0, 2.1, 2.2), (2.0, 2.1, 2.2, 2.0), (2.0, 2.1, 2.9, 2.0)):
        yield Sweep(f"twins of {masses} kg", "frames.0.weight", cache(partial(_weighed, masses)), KG, 12.0)
    mixed = (("frame A, weight", "2 kg"), *((f"frame {name}, weight", "4.4 lb") for name in "BCD"))
    yield Sweep("one in kg", "frames.0.weight", cache(partial(_weighed, (2.0,) * 4, written=mixed)), KG, 12.0)
    yield Sweep("others alike", "frames.1.weight", cache(partial(_weighed, (6.0, 2.0, 2.0, 2.0))), KG, 3.0)


def _among_unlike() -> Iterator[Sweep]:
    for count in (2, 3, 4):
        for path in ("drop", "width", "weight", "width+frames.0.height"):
            units = KG if path == "weight" else MM
            yield Sweep(f"{count} unlike", f"frames.0.{path}", cache(partial(_unlike, count)), units, 8.0)
    for hanger, share in ((SAWTOOTH, 0.03), (Hanger(kind="wire", apart=100.0), 0.17)):
        make = cache(partial(_unlike, 5, hanger, share))
        yield Sweep(f"unlike on {hanger.kind}, {hanger.apart}", "frames.0.drop", make, MM, 8.0)
    for count in (2, 3):
        spread = cache(partial(row, count, gap=300.0))
        yield Sweep(f"{count} spread out", "wall.width", spread, ("cm", "in"), 4.0)
    wide_row = cache(partial(row, 2, wall=room(width=9000.0)))
    yield Sweep("two on a wide wall", GAP, wide_row, ("in",), 9.0)
    for name, spots in PLACED.items():
        yield Sweep(f"{name} placed", "frames.1.width", cache(partial(placed, spots)), ("mm", "cm"), 2.5)


def _groups() -> Iterator[Sweep]:
    for count, gap in product((2, 3, 4, 5, 6, 7), (300.0, 700.0)):
        yield Sweep(f"row of {count}, {gap:g} apart", "wall.width", cache(partial(row, count, gap=gap)), MM, 5.0)
    for by, at in (("top", 2000.0), ("bottom", 600.0), ("centre", 1100.0)):
        make = cache(partial(row, 2, height=Height(by=by, at=at)))
        yield Sweep(f"two by their {by}", "frames.0.height+frames.1.height", make, MM, 6.0)
        yield Sweep(f"two by their {by}", "wall.height", make, MM, 3.0)
    for gap, reach in ((20.0, 8.0), (200.0, 5.0)):
        yield Sweep(f"above a sofa, {gap:g} apart", AT, cache(partial(row, 3, wall=room(SOFA), gap=gap, height=Height(
            by="above", at=100.0, feature="sofa"))), MM, reach)  # fmt: skip
    yield Sweep("above a bed", GAP, cache(partial(above, BED)), MM, 9.0)
    door = room(("door", "door", 1550.0, 0.0, 900.0, 2000.0))
    for path in ("width", "left"):
        make = cache(partial(row, 2, wall=door, gap=1000.0))
        yield Sweep("either side of a door", f"wall.features.0.rect.{path}", make, MM, 4.0)
    for at in (1450.0, 2000.0):
        make = cache(partial(row, 2, wall=room(width=2600.0, height=3600.0), height=Height(by="centre", at=at)))
        for path in ("wall.width", "wall.height", AT):
            yield Sweep(f"high wall, {at:g}", path, make, MM, 2.0)
    clear = cache(partial(row, 2, wall=room(clear=50.0), centre_on=2000.0))
    for path in ("group.centre_on", AT):
        yield Sweep("near the edges", path, clear, MM, 2.0 if path == AT else 20.0)
    public = cache(partial(row, 2, wall=room(public=True), height=Height(by="centre", at=1500.0)))
    for path in (AT, SIDES):
        yield Sweep("public path", path, public, MM, 3.0)


def _walls() -> Iterator[Sweep]:
    outlet, switch = ("outlet", "outlet", 900.0, 100.0, 80.0, 120.0), ("switch", "switch", 900.0, 1050.0, 80.0, 120.0)
    yield Sweep("low outlet", "wall.features.0.rect.width", cache(partial(far_from, outlet)), MM, 8.0)
    for thing in (outlet, switch):
        yield Sweep(f"{thing[1]} from the end", "wall.features.0.rect.left", cache(partial(far_from, thing)), MM, 100.0)
        near_end = cache(partial(row, wall=room(thing)))
        for path in ("bottom", "left"):
            yield Sweep(f"{thing[1]} in a room", f"wall.features.0.rect.{path}", near_end, MM, 5.0)
    for first, spacing in (
        (200.0, 400.0),
        (263.0, 378.0),
        (410.0, 610.0),
        (100.0, 305.0),
        (263.0, 450.0),
        (263.0, 500.0),
        (263.0, 625.0),
    ):
        studs = Studs(first=first, spacing=spacing, width=40.0)
        make = cache(partial(row, wall=room(build="drywall", studs=studs)))
        for path in ("spacing", "first"):
            yield Sweep(f"studs of {spacing:g}", f"wall.studs.{path}", make, MM, 2.0)
    for path in ("wall.stairs.top", "wall.stairs.y", "wall.height", "frames.0.height+frames.1.height+frames.2.height"):
        yield Sweep("flight", path, cache(stair), MM, 3.0)


def _heavy(build: str, fixing: Fixing, weight: float = 9.0) -> Job:
    """Four frames in a row that weigh so much each."""
    frames = [frame(name, 300.0, 400.0, 70.0, weight=weight, depth=30.0, fixing=fixing) for name in "ABCD"]
    wall = room(build=build, board=12.5) if build == "drywall" else room(build=build)
    return job(*frames, wall=wall, group=group((tuple("ABCD"),), "row"))


def _held() -> Iterator[Sweep]:
    for build, (name, fixing) in product(("drywall", "masonry", "timber"), {"hook": HOOKS, "screw": SCREW}.items()):
        of = f"four on {name}s in {build}"
        make = cache(partial(_heavy, build, fixing))
        yield Sweep(of, "+".join(f"frames.{at}.weight" for at in range(4)), make, KG, 8.0)
        yield Sweep(of, GAP, make, MM, 10.0)
    yield Sweep("nails of a hook", "frames.0.fixing.nails", cache(partial(_heavy, "drywall", HOOKS)), KG, 5.0)
    for path in ("width", "height", "depth"):
        make = cache(partial(_heavy, "drywall", NAIL, 3.0))
        yield Sweep("heavy", f"frames.0.{path}", make, MM, 6.0)
    for height in (2000.0, 2900.0):
        high = cache(partial(row, 2, wall=room(height=4000.0), height=Height(by="top", at=height)))
        yield Sweep(f"top at {height:g}", "frames.0.drop", high, MM, 6.0)
    cleat = Hanger(kind="cleat", left=100.0, right=64.0, screw_below=20.0)
    wide = job(frame(width=1400.0, drop=60.0, hanger=cleat, fixing=SCREW))
    yield Sweep("wide cleat", "frames.0.hanger.left", lambda: wide, MM, 13.0)
    rings = job(frame(drop=None, hanger=EVEN, fixing=HOOK), wall=room(build="masonry"))
    yield Sweep("rings in masonry", "frames.0.width", lambda: rings, MM, 6.0)


MORE = (*_among_twins(), *_among_unlike(), *_groups(), *_walls(), *_held())
"""Every measure."""
