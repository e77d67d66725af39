"""The measures that are let grow, each in a small job: of a wall and what is on it, of a group and its frames, of their
hangers and fixings.  All made up, in mm and kg."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache, partial
from itertools import product
from typing import Any, NamedTuple

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.job.model import Feature, Fixing, Hanger, Height, Job, Spot, Studs, Wall
from templates_gen.job.stairs import Stairs
from tests.jobs import frame, group, job
from tests.made import HOOK, KEYHOLES, RINGS, SAWTOOTH, TWO_HOOKS

ALL, MM, KG = ("mm", "cm", "in"), ("mm",), ("",)
"""Units of a job: what a figure could be on another tape is another in each.  Weights, angles and years have none."""


class Sweep(NamedTuple):
    """A measure by the field of the model that has it, and how many times less and more it is than in its job.

    Of several fields all change by as much, one after a minus by as much the other way.
    """

    of: str
    path: str
    make: Callable[[], Job]
    units: tuple[str, ...] = ALL
    reach: float = 12.0

    @property
    def name(self) -> str:
        return f"{self.of}, {self.path}"

    @property
    def usual(self) -> float:
        """The measure as it is in the job."""
        return float(_get(self.make(), self.path.split("+")[0].split(".")))

    def ladder(self, steps: float) -> Iterator[float]:
        """Measures from the least to the most of them."""
        value, most = self.usual / self.reach, self.usual * self.reach
        while value < most * steps:
            yield value
            value *= steps

    def put(self, job: Job, value: float) -> Job:
        """The job with this measure."""
        more = value - self.usual
        for path in self.path.split("+"):
            steps = path.removeprefix("-").split(".")
            before = _get(job, steps)
            after = before - more if path.startswith("-") else before + more
            job = _put(job, steps, round(after) if isinstance(before, int) else after)
        return job


def _get(of: Any, steps: list[str]) -> Any:
    for step in steps:
        if isinstance(of, Rect) and step in ("left", "bottom"):
            return of.x0 if step == "left" else of.y0
        of = of[int(step)] if isinstance(of, tuple) else getattr(of, step)
    return of


def _put(of: Any, steps: list[str], value: Any) -> Any:
    step, *rest = steps
    if isinstance(of, Rect):
        sides = {"left": of.x0, "bottom": of.y0, "width": of.width, "height": of.height} | {step: value}
        return Rect.sized(*sides.values())
    inner = of[int(step)] if isinstance(of, tuple) else getattr(of, step)
    inner = _put(inner, rest, value) if rest else value
    if isinstance(of, tuple):
        return (*of[: int(step)], inner, *of[int(step) + 1 :])
    return replace(of, **{step: inner})


Thing = tuple[str, str, float, float, float, float]
"""What is on a wall: its kind and name, its left, bottom, width and height."""

THINGS: tuple[Thing, ...] = (
    ("outlet", "outlet", 900.0, 300.0, 80.0, 120.0), ("switch", "switch", 900.0, 1050.0, 80.0, 120.0),
    ("light", "lamp", 900.0, 1700.0, 200.0, 300.0), ("vent", "vent", 800.0, 200.0, 300.0, 250.0),
    ("radiator", "radiator", 300.0, 100.0, 1000.0, 600.0), ("door", "door", 300.0, 0.0, 850.0, 2000.0),
    ("window", "window", 300.0, 800.0, 900.0, 1200.0), ("furniture", "cabinet", 400.0, 0.0, 900.0, 800.0),
    ("furniture", "sofa", 300.0, 0.0, 1900.0, 800.0), ("furniture", "bed", 300.0, 0.0, 1600.0, 900.0),
    ("furniture", "mantel", 400.0, 0.0, 1300.0, 1100.0), ("furniture", "sideboard", 300.0, 0.0, 1700.0, 850.0),
    ("furniture", "piano", 300.0, 0.0, 1450.0, 1150.0), ("furniture", "table", 300.0, 0.0, 1400.0, 750.0),
    ("furniture", "bench", 300.0, 0.0, 1200.0, 450.0), ("furniture", "shelf", 500.0, 900.0, 800.0, 250.0),
)  # fmt: skip
"""One of every kind, and of every name that has a size of its own."""

PLATES = ("outlet", "switch")

FROM_FLOOR = ("outlet", "switch", "door", "window", "cabinet", "sofa", "table")
"""What is asked about by how high it begins."""

DOOR: Thing = ("door", "door", 900.0, 0.0, 850.0, 2000.0)
SWITCH: Thing = ("switch", "switch", 600.0, 1050.0, 80.0, 120.0)
SOFA: Thing = ("furniture", "sofa", 1000.0, 0.0, 2000.0, 800.0)
BED: Thing = ("furniture", "bed", 1100.0, 0.0, 1800.0, 600.0)
PASSED: dict[str, tuple[Thing, Thing]] = {
    "switch by a door": (DOOR, SWITCH),
    "switch by a wardrobe": (("furniture", "wardrobe", 900.0, 0.0, 900.0, 1900.0), SWITCH),
    "cabinet by a door": (DOOR, ("furniture", "cabinet", 300.0, 0.0, 500.0, 800.0)),
    "window by a door": (DOOR, ("window", "window", 300.0, 800.0, 900.0, 1200.0)),
    "two outlets": (("outlet", "one", 900.0, 300.0, 80.0, 80.0), ("outlet", "two", 600.0, 300.0, 80.0, 80.0)),
}
"""Of two things the second is moved along the wall, past the first."""


def room(*things: Thing, **more: Any) -> Wall:
    features = tuple(Feature(kind=kind, name=name, rect=Rect.sized(*at)) for kind, name, *at in things)
    return Wall(**{"name": "", "width": 4000.0, "height": 2600.0, "features": features} | more)


def far_from(*things: Thing) -> Job:
    """One frame far from what is on the wall."""
    wall = room(*things, width=12_000.0, height=12_000.0)  # no limit of theirs is hidden by the wall's
    return job(frame(), wall=wall, group=group((("A",),), centre_on=6000.0))


def _things() -> Iterator[Sweep]:
    for thing in THINGS:
        kind, name, make = thing[0], thing[1], cache(partial(far_from, thing))
        for side in ("width", "height"):
            yield Sweep(name, f"wall.features.0.rect.{side}", make, ALL, 20.0)
        if name in FROM_FLOOR:
            lifted = cache(partial(far_from, (*thing[:3], thing[3] or 1.0, *thing[4:])))
            units, reach = (MM, 20.0) if thing[3] else (MM, 600.0)
            yield Sweep(name, "wall.features.0.rect.bottom", lifted, ALL if kind in PLATES else units, reach)
    for name, two in PASSED.items():
        yield Sweep(name, "wall.features.1.rect.left", cache(partial(far_from, *two)), MM, 20.0)


GAP, AT = "group.gap_across+group.gap_down", "group.height.at"


def row(count: int = 3, written: Any = (), wall: Wall | None = None, **more: Any) -> Job:
    """So many frames in a row, each a little larger than the one before."""
    names = tuple("ABCDEFGHI"[:count])
    frames = [frame(name, 300.0 + 10.0 * at, 400.0 + 5.0 * at, 70.0 + at) for at, name in enumerate(names)]
    asked = group((names,), **{"arrangement": "row"} | more)
    return job(*frames, wall=wall or room(), written=written, group=asked)


def above(thing: Thing) -> Job:
    """Three frames above something."""
    return row(wall=room(thing), height=Height(by="above", at=200.0, feature=thing[1]))


def _grid(lower: float = 0.0, **more: Any) -> Job:
    """Four frames of one size, the first so much lower, of one kind of hanger, weighed."""
    frames = [
        frame(name, 300.0, 400.0 if at else 400.0 - lower, None, weight=2.0 + at / 10,
              depth=25.0, face=30.0, mat=(50.0, 50.0, 50.0, 50.0),
              hanger=Hanger(kind="rings", left=40.0 + at, right=41.0 + at, drop_left=80.0 + at, drop_right=81.0 + at))
        for at, name in enumerate("ABCD")
    ]  # fmt: skip
    return job(*frames, group=group((("A", "B"), ("C", "D")), "grid"), **more)


def _wires(turned: bool = False) -> Job:
    """Frames of one size on wires, one of them on its side where it is asked for, and one larger."""
    frames = [frame(name, 300.0, 400.0, 70.0 + at, weight=1.5) for at, name in enumerate("ABCD")]
    first = frame("A", 400.0, 300.0, 70.0, weight=1.5) if turned else frames[0]
    return job(first, *frames[1:], frame("E", 500.0, 600.0, 110.0), group=group((tuple("ABC"), tuple("DE"))))


def _pair(side: float = 300.0) -> Job:
    """Two heavy frames beside each other."""
    frames = [frame(name, side, side * 1.27, 70.0, weight=4.0) for name in "AB"]
    return job(*frames, group=group((("A", "B"),), "row"))


def _mirrored() -> Job:
    """Rows that mirror themselves, but for the last pair."""
    sizes = {"A": (300, 400), "B": (300, 400), "C": (250, 200), "D": (250, 200), "E": (280, 350), "F": (350, 280)}
    frames = [frame(name, float(wide), float(high), 60.0) for name, (wide, high) in sizes.items()]
    return job(*frames, group=group((("A", "B"), ("C", "D"), ("E", "F"))))


PLACED = {
    "three": ((-300.0, 200.0), (300.0, 200.0), (1.0, 180.0)),
    "five": ((-500.0, 100.0), (500.0, 100.0), (-250.0, 120.0), (250.0, 120.0), (1.0, 90.0)),
    "two": ((-200.0, 100.0), (200.0, 90.0)),
}
"""Frames of one size placed by hand, by their middles."""


def placed(spots: tuple[tuple[float, float], ...]) -> Job:
    names = tuple("ABCDE"[: len(spots)])
    where = tuple((name, Spot(point="centre", x=x, y=y)) for name, (x, y) in zip(names, spots, strict=True))
    frames = [frame(name, 200.0, 250.0, 50.0) for name in names]
    return job(*frames, group=group((names,), "placed", spots=where, gap=150.0))


NEAR: dict[str, tuple[int, tuple[Thing, ...], str, float]] = {
    "frieze": (7, (), "centre", 1500.0),
    "under a shelf": (3, (("furniture", "shelf", 1500.0, 1100.0, 1000.0, 200.0),), "top", 1000.0),
    "over a door": (2, (("door", "door", 1500.0, 0.0, 900.0, 2000.0),), "bottom", 2100.0),
    "beside a lamp": (3, (("light", "lamp", 300.0, 1500.0, 200.0, 300.0),), "centre", 1500.0),
}
"""So many frames in a row, what is near them, and what of the group is how high."""


def _tall(by: str, at: float, high: float = 1000.0) -> Job:
    """Two tall frames."""
    frames = [frame(name, 400.0, high, 60.0) for name in "AB"]
    return job(*frames, group=group((("A", "B"),), "row", height=Height(by=by, at=at)))


def _groups() -> Iterator[Sweep]:
    for by, at in (("centre", 1500.0), ("top", 1900.0), ("bottom", 1200.0)):
        height = Height(by=by, at=at)
        yield Sweep(f"row by its {by}", AT, cache(partial(row, height=height)), ALL, 4.0)
        high = cache(partial(row, wall=room(height=5000.0), height=height))
        yield Sweep(f"row by its {by} on a high wall", AT, high, MM, 4.0)
    for name in ("sofa", "cooker", "desk", "chest"):
        thing = ("furniture", name, 1000.0, 0.0, 2000.0, 450.0 if name == "chest" else 800.0)
        yield Sweep(f"above a {name}", AT, cache(partial(above, thing)))
    for thing, path in product((SOFA, BED), ("width", "left")):
        yield Sweep(f"above a {thing[1]}", f"wall.features.0.rect.{path}", cache(partial(above, thing)), MM, 4.0)
    for count, wide in ((2, 4000.0), (3, 4000.0), (3, 6500.0), (4, 5200.0), (6, 9000.0)):
        make = cache(partial(row, count, wall=room(width=wide)))
        yield Sweep(f"row of {count} on {wide:g} mm", GAP, make, MM if count > 2 else ALL, 30.0)
    between = cache(partial(row, 2, wall=room(("door", "door", 1550.0, 0.0, 900.0, 2000.0)), gap=1000.0))
    yield Sweep("either side of a door", GAP, between, MM, 6.0)
    windows: tuple[Thing, ...] = (
        ("window", "one", 1120.0, 800.0, 700.0, 900.0),
        ("window", "two", 2190.0, 800.0, 700.0, 900.0),
    )
    yield Sweep("between windows", GAP, cache(partial(row, wall=room(*windows), gap=760.0)), MM, 3.0)
    for of, (count, thing, by, at) in NEAR.items():
        make = cache(partial(row, count, wall=room(*thing), height=Height(by=by, at=at)))
        yield Sweep(of, AT, make, ("cm",) if thing else ALL, 4.0)
    yield Sweep("tall row", AT, cache(partial(_tall, "bottom", 500.0)), ("cm",), 6.0)
    yield Sweep("banners", AT, cache(partial(_tall, "top", 2400.0, 2100.0)), ("cm",), 2.0)
    yield Sweep("row", "wall.width", cache(row), ALL, 9.0)
    yield Sweep("row", "wall.height", cache(row), ALL, 5.0)
    yield Sweep("row", "wall.clear", cache(partial(row, wall=room(clear=50.0))), ALL, 40.0)
    yield Sweep("wide row", "wall.width", cache(partial(row, gap=300.0)), ALL, 9.0)
    yield Sweep("row of 4 m as written", "wall.width", cache(partial(row, written=(("wall, width", "4 m"),))), MM, 20.0)
    yield Sweep("narrow wall", "wall.height", cache(partial(row, 2, wall=room(width=2400.0))), ALL, 3.0)
    yield Sweep("rows", GAP, cache(_wires))
    yield Sweep("grid", GAP, cache(_grid), MM)
    for (name, spots), side in product(PLACED.items(), ("x", "y")):
        yield Sweep(f"{name} placed", f"group.spots.1.1.{side}", cache(partial(placed, spots)), MM, 9.0)
    yield Sweep("mirrored", "frames.5.width", cache(_mirrored), MM, 2.0)
    yield Sweep("mirrored", "frames.0.height", cache(_mirrored), MM, 2.0)
    for of, side, units in (
        ("pair", 300.0, ("cm", "in")),
        ("large pair", 900.0, ("in",)),
        ("small pair", 200.0, ("cm",)),
    ):
        for path in (SIDES, "frames.0.drop+frames.1.drop", GAP):
            yield Sweep(of, path, cache(partial(_pair, side)), units, 6.0)


SIDES = "frames.0.width+frames.0.height+frames.1.width+frames.1.height"

TRADED = "frames.0.face+-frames.0.mat.0+-frames.0.mat.1+-frames.0.mat.2+-frames.0.mat.3"
"""A moulding that is wider by as much as the mat is less."""

POUNDS = tuple((f"frame {name}, weight", "4.4 lb") for name in "BCD")


def _alone(**of_frame: Any) -> Job:
    return job(frame(weight=3.0, depth=30.0, image_size=(300, 400), **of_frame))


def _unlike() -> Job:
    """Frames of one size that weigh more and less."""
    frames = [frame(name, 300.0, 400.0, 70.0, weight=1.0 + at / 2) for at, name in enumerate("ABCD")]
    return job(*frames, group=group((("A", "B", "C", "D"),)))


def _sizes() -> Job:
    """Frames of sizes that are all unlike, small and large ones."""
    sizes = ((200.0, 250.0, 40.0), (300.0, 400.0, 70.0), (400.0, 300.0, 60.0), (500.0, 700.0, 130.0))
    frames = [frame(name, *size, weight=size[0] / 100) for name, size in zip("ABCD", sizes, strict=True)]
    return job(*frames, group=group((("A", "B"), ("C", "D"))))


def _frames() -> Iterator[Sweep]:
    one = "frames.0"
    for path in ("width", "height", "hanger.left", "hanger.drop_right"):
        yield Sweep("grid", f"{one}.{path}", cache(_grid))
    parts = cache(partial(_alone, face=30.0, mat=(50.0, 50.0, 50.0, 50.0)))
    for path in ("face", "mat.0", "depth"):
        yield Sweep("parts", f"{one}.{path}", parts)
    yield Sweep("grid", f"{one}.width+{one}.height", cache(_grid), MM, 2.0)
    yield Sweep("grid", TRADED, cache(_grid), MM)
    yield Sweep("one lower", TRADED, cache(partial(_grid, 20.0)), MM)
    yield Sweep("grid", f"{one}.weight", cache(_grid), KG, 50.0)
    yield Sweep("grid in pounds", f"{one}.weight", cache(partial(_grid, written=POUNDS)), KG, 50.0)
    for name, turned in (("rows", False), ("rows, one turned", True)):
        for path in ("width", "height", "drop"):
            yield Sweep(name, f"{one}.{path}", cache(partial(_wires, turned)), ALL, 6.0)
        yield Sweep(name, f"{one}.weight", cache(partial(_wires, turned)), KG, 50.0)
    yield Sweep("unlike weights", f"{one}.weight", cache(_unlike), KG, 50.0)
    for path in (f"{one}.drop", f"{one}.width", f"{one}.height", "frames.3.drop"):
        yield Sweep("sizes", path, cache(_sizes), ALL, 6.0)
    yield Sweep("sizes", f"{one}.weight", cache(_sizes), KG, 50.0)
    for glazing in ("glass", "none"):
        make = cache(partial(_alone, glazing=glazing))
        yield Sweep(f"glazing {glazing}", f"{one}.weight", make, KG, 60.0)
        yield Sweep(f"glazing {glazing}", f"{one}.width", make, ALL if glazing == "none" else MM, 14.0)


NAIL = Fixing(length=38.0)
HOOKS = Fixing(kind="hook", below=22.0, rating=9.0, nails=2, length=32.0, angle=45.0)
SCREW = Fixing(kind="screw", diameter=4.5, length=40.0, rating=12.0)
WIRE, CLEAT = Hanger(kind="wire"), Hanger(kind="cleat", left=60.0, right=64.0, screw_below=20.0)
MIRROR = Hanger(kind="plates", left=20.0, right=22.0, drop_left=90.0, drop_right=91.0)
EVEN = Hanger(kind="rings", left=40.0, right=40.0, drop_left=70.0, drop_right=70.0)
HANGERS: dict[str, tuple[Hanger, float | None, Fixing, tuple[str, ...]]] = {
    "wire": (WIRE, 80.0, HOOK, ("drop",)),
    "two hooks": (TWO_HOOKS, 90.0, HOOK, ("drop", "hanger.apart", "hanger.ring_separation", "hanger.ring_depth")),
    "two drops": (Hanger(kind="wire", apart=160.0, drop_at_two=70.0), 90.0, HOOK, ("hanger.drop_at_two",)),
    "sawtooth": (SAWTOOTH, 12.0, HOOK, ("drop",)),
    "rings": (RINGS, None, HOOK, ("hanger.left", "hanger.right", "hanger.drop_left", "hanger.drop_right")),
    "keyholes": (KEYHOLES, 25.0, SCREW, ("drop", "hanger.left")),
    "cleat": (CLEAT, 60.0, SCREW, ("drop", "hanger.left", "hanger.screw_below")),
    "plates": (MIRROR, None, SCREW, ("hanger.right", "hanger.drop_left")),
}
"""Every kind, its drop, its fixing, and what is measured of it."""


def _hung(hanger: Hanger, drop: float | None, fixing: Fixing, *written: tuple[str, str]) -> Job:
    return job(frame(drop=drop, hanger=hanger, fixing=fixing), written=written)


def _hangers() -> Iterator[Sweep]:
    for name, (hanger, drop, fixing, paths) in HANGERS.items():
        make = cache(partial(_hung, hanger, drop, fixing))
        for path in paths:
            yield Sweep(name, f"frames.0.{path}", make)
        yield Sweep(name, "frames.0.height", make, MM, 9.0)
    for side, path in product(("front", "back"), ("left", "drop_left")):
        make = cache(partial(_hung, EVEN, None, HOOK, ("frame A, hanger, seen_from", side)))
        yield Sweep(f"rings, from the {side}", f"frames.0.hanger.{path}", make, MM)


BUILDS: dict[str, dict[str, Any]] = {
    "drywall": {
        "build": "drywall",
        "board": 12.5,
        "studs": Studs(first=400.0, spacing=400.0, width=40.0),
        "wiring": "us",
    },
    "plaster": {"build": "plaster", "wiring": "uk", "behind": ("bathroom",), "earthquake": True},
    "masonry": {"build": "masonry", "wiring": "de", "worktop": True, "public": True},
}
"""Walls of three countries."""

OUTLET: Thing = ("outlet", "outlet", 300.0, 300.0, 80.0, 120.0)


def _on(build: str, fixing: Fixing, hanger: Hanger = WIRE, *things: Thing) -> Job:
    """One frame over a bed on a wall of this build."""
    one = frame(weight=4.0, depth=40.0, fixing=fixing, hanger=hanger)
    return job(one, wall=room(BED, *things, **BUILDS[build], built=1960), group=group((("A",),), centre_on=2000.0))


def _fixings() -> Iterator[Sweep]:
    for build, (name, fixing) in product(BUILDS, {"nail": NAIL, "hook": HOOKS, "screw": SCREW}.items()):
        make, of = cache(partial(_on, build, fixing)), f"{name} in {build}"
        yield Sweep(of, "frames.0.weight", make, KG, 30.0)
        yield Sweep(of, "frames.0.fixing.length", make, ALL if build == "drywall" else MM)
    for name, fixing in {"nail": NAIL, "hook": HOOKS, "screw": SCREW}.items():
        make, of = cache(partial(_on, "drywall", fixing)), f"{name} in drywall"
        yield Sweep(of, "frames.0.fixing.diameter", make)
        if name != "nail":
            yield Sweep(of, "frames.0.fixing.rating", make, KG, 60.0)
    yield Sweep("hook in drywall", "frames.0.fixing.angle", cache(partial(_on, "drywall", HOOKS)), KG, 9.0)
    yield Sweep("hook in drywall", "frames.0.fixing.below", cache(partial(_on, "drywall", HOOKS)))
    for path in ("group.centre_on", "wall.studs.first", "wall.board", "wall.studs.spacing", "wall.studs.width"):
        units = MM if path in ("group.centre_on", "wall.studs.first") else ALL
        yield Sweep("nail in drywall", path, cache(partial(_on, "drywall", NAIL)), units)
    for build in BUILDS:
        yield Sweep(f"two in {build}", "frames.0.hanger.apart", cache(partial(_on, build, HOOKS, TWO_HOOKS)), MM, 3.0)
        make = cache(partial(_on, build, NAIL, WIRE, OUTLET))
        for path in ("wall.features.1.rect.left", AT, "group.centre_on", "frames.0.height"):
            yield Sweep(f"outlet in {build}", path, make, MM)
        yield Sweep(f"outlet in {build}", "frames.0.depth", make, ("mm", "in"))
        yield Sweep(f"outlet in {build}", "wall.built", make, KG, 1.3)


def stair() -> Job:
    """Three frames up a flight of stairs."""
    flight = Stairs(x=500.0, y=180.0, slope=0.7, run=250.0, rise=175.0, top=2800.0, clear=600.0)
    asked = group((("A", "B", "C"),), "stairs", slope=0.7, height=Height(by="above_nosings", at=1500.0))
    wall = room(width=4600.0, height=5000.0, stairs=flight)
    return job(*(frame(name, 250.0, 300.0, 50.0) for name in "ABC"), wall=wall, group=asked)


def _stairs() -> Iterator[Sweep]:
    for path in ("wall.stairs.run", "wall.stairs.rise", "wall.stairs.clear", AT):
        yield Sweep("stairs", path, cache(stair), ALL, 5.0)
    yield Sweep("stairs", "wall.stairs.slope+group.slope", cache(stair), KG, 6.0)
    for path in ("wall.stairs.x", "wall.stairs.y", "wall.width", "wall.height"):
        yield Sweep("stairs", path, cache(stair), MM, 6.0)


def _papers() -> Iterator[Sweep]:
    for path in ("paper.width", "paper.height", "paper.margin.0", "accuracy.match"):
        yield Sweep("paper", path, cache(job), ALL, 25.0)


SWEEPS = (*_things(), *_groups(), *_frames(), *_hangers(), *_fixings(), *_stairs(), *_papers())
"""Every measure."""
