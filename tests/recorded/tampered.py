"""What is found of many jobs of which one or two measures were tampered with by chance, and how they are cured.

Nobody reads a sum of words.  It shows that something is said otherwise, in which job; `told` then says what.
"""

from __future__ import annotations

import copy
import shutil
from collections.abc import Iterator
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from typing import Any

import tomlkit

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.errors import TemplatesError
from templates_gen.base.units import MM, parse_length
from templates_gen.checks import NOTE, STOP, WARN, find
from templates_gen.checks.cures.curing import cured
from templates_gen.job.reading.building import build_job, read_job
from templates_gen.tolerance.corners import measures
from templates_gen.tolerance.diagonals import measured, telling
from templates_gen.tolerance.neighbours import neighbours
from tests.jobs import SAMPLES
from tests.recorded.found import said
from tests.recorded.limits import summed
from tests.recorded.listing import wrapped
from tests.slip_bases import BASES
from tests.slips import Raw, tables
from tests.sound_jobs import Maker

JOBS, LINE, EACH = 600, 10, 30
"""So many jobs, so many of them to a line, and one in so many is cured.  Our own choice."""

TIMES = (0.1, 0.394, 0.5, 0.8, 0.95, 1.05, 1.25, 2.0, 2.54, 10.0)
"""So many times more or less a measure is: in another unit, with its point elsewhere, or a little off."""

SAMPLE = (
    "fern-prints", "loom-drawings", "tile-rubbings", "alphabet-column", "kiln-tiles", "lock-keepers", "seed-drawers",
    "tram-tickets", "paste-papers",
)  # fmt: skip
"""Samples that are tampered with beside the jobs that slips are put into."""

WALL: dict[str, tuple[Any, ...]] = {
    "wiring": ("us", "uk", "de"), "public": (True,), "worktop": (True,), "earthquake": (True,),
    "built": (1890, 1965, 1985, 2010), "behind": (["bathroom"], ["kitchen"]), "clear": ("2 in", "100 mm"),
    "build": ("drywall", "plaster", "masonry", "timber"),
}  # fmt: skip
FRAME: dict[str, tuple[Any, ...]] = {
    "glazing": ("glass", "acrylic", "none"), "depth": ("20 mm", "1 3/4 in", "110 mm"),
    "weight": ("1.2 kg", "9 kg", "14 lb", "26 kg"),
    "hanger": (
        {"kind": "wire", "apart": "110 mm"},
        {"kind": "cleat", "left": "60 mm", "right": "64 mm", "screw_below": "20 mm", "seen_from": "back"},
        {"kind": "plates", "left": "9 mm", "right": "9 mm", "drop_left": "40 mm", "drop_right": "41 mm"},
    ),
}  # fmt: skip
"""What is told besides, now and then."""


def tampered(seed: int) -> Raw:
    """A job of which one or two measures, or what else is told, were changed."""
    chance = Random(seed)
    raw = copy.deepcopy(Maker(seed).job() if seed % 2 else tables(chance.choice((*BASES, *SAMPLE))))
    _told_besides(chance, raw)
    unit = raw["job"].get("unit", "mm")
    for _ in range(chance.randint(1, 2)):
        places = list(_lengths(raw))
        table, key = chance.choice(places)
        _put_otherwise(chance, table, key, unit, places)
    return raw


def _told_besides(chance: Random, raw: Raw) -> None:
    for name in chance.sample(list(WALL), 2):
        raw["wall"].setdefault(name, copy.deepcopy(chance.choice(WALL[name])))
    for frame in raw.get("frame", []):
        for name in FRAME:
            if chance.random() < 0.15:
                frame.setdefault(name, copy.deepcopy(chance.choice(FRAME[name])))
        if isinstance(frame.get("hanger"), dict) and "left" in frame["hanger"]:
            frame["hanger"] = {"seen_from": chance.choice(("front", "back"))} | frame["hanger"]


def _lengths(table: Any) -> Iterator[tuple[Any, Any]]:
    """Every table or list and every key of it that has a length."""
    for key, value in list(table.items() if isinstance(table, dict) else enumerate(table)):
        if isinstance(value, (dict, list)):
            yield from _lengths(value)
        elif not isinstance(value, bool) and key not in ("id", "title", "name", "date", "across", "steps", "built"):
            if _mm(value, "mm") is not None:
                yield table, key


def _mm(value: Any, unit: str) -> float | None:
    try:
        return parse_length(value, unit)
    except (TemplatesError, ValueError, TypeError):
        return None


def _put_otherwise(chance: Random, table: Any, key: Any, unit: str, places: list[tuple[Any, Any]]) -> None:
    """Another number there, as much as one elsewhere, or nothing."""
    way, mm = chance.random(), _mm(table[key], unit) or 0.0
    if way < 0.15:
        other, name = chance.choice(places)
        table[key], other[name] = other[name], table[key]
    elif way < 0.2 and key in ("drop", "weight", "depth", "board", "clear", "gap", "height"):
        table.pop(key)
    else:
        table[key] = f"{round(mm * chance.choice(TIMES) / MM[unit], 2 if unit == 'in' else 1):g}"


def of_tampered() -> Iterator[str]:
    """For every so many jobs: stops, warnings and notes of each, a sum of their words and of the numbers in them."""
    for first in range(0, JOBS, LINE):
        yield from wrapped(f"{first}: ", (_summed(seed) for seed in range(first, first + LINE)))


def _summed(seed: int) -> str:
    found = told(seed)
    levels = "/".join(str(sum(line.startswith(level) for line in found)) for level in (STOP, WARN, NOTE))
    return f"{levels} {summed(found).replace(', all numbers', '')}"


def told(seed: int) -> list[str]:
    """What is said of a job, what is measured on its paper, and which of its frames are neighbours."""
    try:
        plan = plan_wall(build_job(tampered(seed), SAMPLES / "job.toml"))
    except TemplatesError as error:
        return [str(error)]
    return [*map(said, find(plan)), *_measured(plan), *_cures(seed)]


def _measured(plan: Plan) -> Iterator[str]:
    if plan.nails and plan.frames:
        spans = measured(plan)
        yield f"{telling(spans)}: " + ", ".join(f"{span.start} to {span.end} {span.length:.2f}" for span in spans)
    for pair in neighbours(plan):
        yield f"{pair.one.frame.id} {'beside' if pair.beside else 'over'} {pair.two.frame.id} {pair.gap:.2f}"
        of = measures(pair)
        for part in (*of.step, *(each for gap in of.gaps for each in gap)):
            yield f"{part.frame} {part.number} {part.x:.2f} {part.y:.2f} {part.right:.2f} {part.up:.2f} {part.tilt:.2f}"


def _cures(seed: int) -> Iterator[str]:
    if seed % EACH:
        return
    with TemporaryDirectory() as folder:
        path = Path(folder) / "job.toml"
        path.write_text(tomlkit.dumps(tampered(seed)), encoding="utf-8")
        for sheet in SAMPLES.glob("*.csv"):
            shutil.copy(sheet, folder)
        plan = plan_wall(read_job(path))
        for found in cured(plan, find(plan), path):
            for cure in found.cures:
                yield f"{cure.said}: {'; '.join(f'{change.place} {change.value}' for change in cure.changes)}"
