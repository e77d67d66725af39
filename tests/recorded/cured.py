"""What cures small jobs in which something is in the way, that hang too low, or whose nails are short or long."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from itertools import product
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import tomlkit

from templates_gen.base.units import MM
from tests.recorded.found import cures_of
from tests.slips import Raw, set_to

Puts = tuple[tuple[str, Any], ...]
"""Fields of a job and what each is in mm, or as it is written."""

FRAME: Raw = {"width": 400.0, "height": 500.0, "drop": 80.0}
THING: Raw = {"kind": "thermostat", "left": 1900.0, "bottom": 1400.0, "width": 100.0, "height": 100.0}


def _job(unit: str, names: str = "AB", wall: Raw | None = None, group: Raw | None = None, **frame: Any) -> Raw:
    """A few frames on a wall, with something in their way."""
    asked = {"arrangement": "row", "gap": 60.0, "height": {"centre": 1500.0}} | (group or {})
    if asked["arrangement"] == "around":
        del asked["height"], asked["gap"]
    room = {"width": 4000.0, "height": 2600.0, "wiring": "none", "feature": [dict(THING)]} | (wall or {})
    job = {"title": "Tile rubbings", "unit": unit, "date": "2026-03-01"}
    return {"job": job, "wall": room, "group": asked, "frame": [{"id": name, **FRAME, **frame} for name in names]}


def _in_unit(table: Any, unit: str) -> Any:
    """All lengths of a table, which are floats, in a unit."""
    if isinstance(table, dict):
        return {key: _in_unit(value, unit) for key, value in table.items()}
    if isinstance(table, list):
        return [_in_unit(value, unit) for value in table]
    return f"{table / MM[unit]:.4f} {unit}" if isinstance(table, float) else table


PLACED: Raw = {
    "arrangement": "placed", "place": {"A": {"centre": [-230.0, 0.0]}, "B": {"centre": [230.0, 0.0]}},
}  # fmt: skip
WINDOW: Raw = {"kind": "window", "name": "window", "left": 1500.0, "bottom": 900.0, "width": 1000.0, "height": 1000.0}
AROUND: Raw = {
    "arrangement": "around", "around": "window", "left": ["A"], "right": ["B"], "above": ["C"], "below": ["D"],
    "gap_around": 70.0, "gap_across": 60.0, "gap_down": 60.0,
}  # fmt: skip
SOFA: Raw = {"kind": "furniture", "name": "sofa", "left": 1000.0, "bottom": 0.0, "width": 2000.0, "height": 800.0}
STAIRS: Raw = {"run": 250.0, "rise": 175.0, "up": "right", "nosing": [500.0, 175.0], "steps": 12, "clear": 600.0}


Jobs = Iterator[tuple[str, Raw, Puts]]


def _in_the_way() -> Jobs:
    for unit in ("mm", "cm", "in"):
        for left, bottom in product((1480.0, 1580.0, 1700.0, 1905.0, 2210.0, 2420.0), (1180.0, 1400.0, 1700.0)):
            yield unit, _job(unit), (("wall.feature.0.left", left), ("wall.feature.0.bottom", bottom))
    for clear, gap in product((0.0, 30.0, 50.0, 80.0), (120.0, 200.0, 260.0)):
        yield "mm", _job("mm"), (("wall.feature.0.clear", clear), ("group.gap", gap))
        yield "cm", _job("cm", group=PLACED), (("wall.feature.0.clear", clear), ("group.place.A.centre.0", -gap))
    for on in ("A", {"frame": "B", "over": "wall"}, 1700.0):
        yield "mm", _job("mm"), (("group.centre_on", on),)


def _off_the_wall() -> Jobs:
    for centre, on in product((200.0, 700.0, 2200.0, 2500.0), (300.0, 2000.0, 3700.0)):
        wall = {"feature": [], "clear": 40.0}
        yield "mm", _job("mm", wall=wall), (("group.height.centre", centre), ("group.centre_on", on))
    for a, b, up in product((-150.0, -215.0), (150.0, 235.0), (0.0, 470.0)):
        puts = (("group.place.A.centre.0", a), ("group.place.B.centre.0", b), ("group.place.B.centre.1", up))
        yield "in", _job("in", group=PLACED, wall={"feature": []}), puts


def _around_and_above() -> Jobs:
    for left, bottom in ((1000.0, 1200.0), (1340.0, 1200.0), (2580.0, 1300.0), (2900.0, 1300.0), (2150.0, 500.0),
                         (1900.0, 740.0), (1950.0, 2000.0), (1950.0, 2200.0)):  # fmt: skip
        thing = THING | {"left": left, "bottom": bottom}
        for unit in ("mm", "in"):
            yield unit, _job(unit, "ABCD", {"feature": [WINDOW, thing]}, AROUND, height=300.0), ()
    for by, name in product((20.0, 90.0, 300.0, 420.0), ("sofa", "chest")):
        height = {"above": name, "by": by}
        yield "mm", _job("mm", wall={"feature": [SOFA | {"name": name}]}), (("group.height", height),)


def _where_studs_are() -> Jobs:
    studs = {"first": 400.0, "spacing": 400.0, "width": 40.0}
    for on in (1900.0, 2010.0, 2100.0, 2190.0):
        wall = {"feature": [], "build": "drywall", "board": 12.5, "studs": studs}
        yield "mm", _job("mm", "A", wall, weight="22 kg"), (("group.centre_on", on),)
    for on in (1760.0, 1790.0, 1815.0, 1980.0, 2000.0):
        wall = {"feature": [], "build": "drywall", "board": 12.5, "studs": studs}
        yield "cm", _job("cm", "A", wall, weight="12 kg"), (("group.centre_on", on),)


def _other_walls() -> Jobs:
    outline = [[0.0, 0.0], [4000.0, 0.0], [4000.0, 1500.0], [2500.0, 2600.0], [0.0, 2600.0]]
    for on in (2400.0, 2900.0, 3300.0):
        yield "cm", _job("cm", wall={"feature": [], "outline": outline}), (("group.centre_on", on),)
    for on, centre in product((900.0, 1500.0), (1200.0, 1700.0, 2000.0)):
        yield "mm", _job("mm", wall={"feature": [], "stairs": STAIRS, "height": 4500.0}), (
            ("group.centre_on", on), ("group.height.centre", centre))  # fmt: skip
    for wiring, build in (("de", "masonry"), ("uk", "plaster"), ("us", "drywall")):
        outlet = THING | {"kind": "outlet", "left": 1650.0, "bottom": 300.0}
        for left in (1650.0, 1740.0, 1790.0):
            puts: Puts = (("wall.feature.0.left", left),)
            yield "mm", _job("mm", "A", {"feature": [outlet], "wiring": wiring, "build": build}), puts


def _fixings() -> Jobs:
    for kind, (length, unit) in product(
        ("nail", "screw"), ((16.0, "mm"), (17.7, "mm"), (21.0, "cm"), (26.0, "in"), (97.0, "mm"))
    ):
        for build in ("drywall", "masonry", "timber"):
            fixing = {"kind": kind, "length": length, "diameter": 3.0}
            wall: Raw = {"feature": [], "build": build, "wiring": "us"}
            if build == "drywall":
                wall |= {"board": 12.5, "studs": {"first": 390.0, "spacing": 460.0, "width": 40.0}}
            yield unit, _job(unit, wall=wall, weight="6 kg", fixing=fixing), ()
    for length in (15.0, 9.9):  # 72.5 mm reach 60 into the stud behind 12.5: twelve steps of 5 mm more, or thirteen
        thick = {"kind": "screw", "length": length, "diameter": 10.0}
        wall = {"feature": [], "build": "drywall", "board": 12.5, "wiring": "us"}
        yield (
            "mm",
            _job("mm", "A", wall | {"studs": {"first": 400.0, "spacing": 400.0, "width": 40.0}}, fixing=thick),
            (),
        )
    for rating, weight in product(("2 kg", "5 kg"), ("3 kg", "7.5 kg")):
        fixing = {"kind": "hook", "below": 22.0, "rating": rating, "length": 32.0, "nails": 1, "angle": 45}
        yield "cm", _job("cm", wall={"feature": []}, weight=weight, fixing=fixing), ()
    for drop, below in product((-5.0, 4.0, 9.0, 19.0, 470.0, 520.0), (12.0, 22.0)):
        yield "mm", _job("mm", wall={"feature": []}, drop=drop, fixing={"kind": "hook", "below": below}), ()
    for measured in (380.0, 396.9, 403.1):
        parts = {"print": [300.0, 400.0], "mat": 30.0, "moulding": {"face": 25.0, "rabbet": 6.0}}
        yield "mm", _job("mm", wall={"feature": []}, **parts), (("frame.0.width", measured),)


JOBS = (_in_the_way, _off_the_wall, _around_and_above, _where_studs_are, _other_walls, _fixings)


def of_cured() -> Iterator[str]:
    """For each, by what was put into it, its findings' cures and what they change in the job file."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / "job.toml"
        for unit, raw, puts in (job for jobs in JOBS for job in jobs()):
            job = copy.deepcopy(raw)
            for field, value in puts:
                set_to(field, value)(job)
            yield f"{unit}, {job['group']['arrangement']}: {', '.join(f'{field} {value}' for field, value in puts)}"
            path.write_text(tomlkit.dumps(_in_unit(job, unit)), encoding="utf-8")
            yield from (f"    {line}" for line in cures_of(path) if "it is right as it is" not in line)
