"""What is fed with odd files: each target makes one from a seed and says how it was taken."""

from __future__ import annotations

import math
import random
import shutil
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import templates_gen as tg
from templates_gen.base.errors import InputError
from templates_gen.base.units import HEAVIEST, LONGEST, parse_length, parse_mass, parse_offset
from templates_gen.documents.check import check_plan
from templates_gen.documents.schedule.table import as_csv, as_data, as_text
from templates_gen.job.paper_sizes import paper_size, roll_width
from templates_gen.job.reading.building import read_job
from templates_gen.job.reading.other_wall import read_job_on
from templates_gen.printer.store import load
from templates_gen.tolerance.tape_check import read_taped
from tests.fuzzing import BASES, document, garbled, mutated, odd, scribble, spreadsheet
from tests.jobs import SAMPLES

SECONDS = 1.0
"""A small file is taken or refused within so many, of a processor's time.  Our own design, no source."""

WHOLE = 20.0
"""Seconds, likewise, for a whole template of a job a little off a sample.  Our own design, no source."""

FEW = 60
"""Frames of a job that is worked through, not only read."""

ROWS = [["1", "Wheat sheaf", "320", "310", "18", "1.2 kg", "wire", ""], ["2", "", "9 in", "8", "1 1/2", "", "", "nail"]]
SHEET_NAMES = ["id", "title", "width", "height", "drop", "weight", "hanger.kind", "fixing.kind"]
SHEET = '[job]\nframes = "frames.csv"\nunit = "in"\n[wall]\nwidth = "40 m"\nheight = 90\n'

PROFILE: dict[str, Any] = {
    "format": 1, "name": "study", "paper": "a4", "date": "2026-03-01", "asked_across": 180.0, "asked_along": 261.0,
    "across": 179.4, "along": 260.4, "diagonals": [316.2, 316.3], "reading_error": 0.2,
}  # fmt: skip
READ = [
    ["A", "66 13/16", "66 13/16", "", "", "", "-22", "", ""], ["B", "70", "69 3/4", "", "", "", "", "", ""],
    ["C", "66 15/16", "67 1/8", "", "", "", "", "2 1/2", "B"], ["D", "", "", "-9", "-9", "4", "", "", ""],
]  # fmt: skip
READ_NAMES = ["frame", "left", "right", "left_from_level", "right_from_level", "tilt", "left_edge", "gap", "beside"]


class FaultError(Exception):
    """What must not happen, with the file that made it happen."""


def job_file(rng: random.Random, folder: Path) -> bool:
    content = document(mutated(rng, rng.choice(BASES))).encode("utf-8", "surrogatepass")
    return _job(garbled(rng, content) if rng.random() < 0.15 else content, folder)


def template(rng: random.Random, folder: Path) -> bool:
    """A job near to one of the samples, made into a template where nothing stops it."""
    (folder / "job.toml").write_bytes(document(mutated(rng, rng.choice(BASES), rough=False)).encode())
    return _taken(lambda: _made(read_job(folder / "job.toml")), folder / "job.toml", WHOLE)


def _made(job: tg.Job) -> None:
    plan = tg.plan_wall(job)
    if not any(finding.level == "stop" for finding in tg.find(plan)):
        tg.make_template(job)


def job_bytes(rng: random.Random, folder: Path) -> bool:
    samples = sorted(SAMPLES.glob("*.toml"))
    return _job(garbled(rng, rng.choice(samples).read_bytes()), folder)


def job_sheet(rng: random.Random, folder: Path) -> bool:
    (folder / "frames.csv").write_bytes(spreadsheet(rng, SHEET_NAMES, ROWS))
    return _job(SHEET.encode(), folder)


def other_wall(rng: random.Random, folder: Path) -> bool:
    (folder / "hall.toml").write_bytes(document(mutated(rng, rng.choice(BASES))).encode("utf-8", "surrogatepass"))
    return _taken(lambda: read_job_on(SAMPLES / "fern-prints.toml", folder / "hall.toml"), folder / "hall.toml")


def readings(rng: random.Random, folder: Path) -> bool:
    path = folder / "hung.csv"
    path.write_bytes(spreadsheet(rng, READ_NAMES, READ))
    return _taken(lambda: tg.correct(_fern(), path), path)


def printer(rng: random.Random, folder: Path) -> bool:
    content = document(mutated(rng, PROFILE, rng.random() < 0.8)).encode("utf-8", "surrogatepass")
    path = folder / "study.toml"
    path.write_bytes(garbled(rng, content) if rng.random() < 0.2 else content)
    return _taken(lambda: load(folder, "study"), path)


def lengths(rng: random.Random, folder: Path) -> bool:
    """A text or other value as a length, a distance, a weight, a paper and what was measured on it."""
    value = scribble(rng) if rng.random() < 0.7 else odd(rng)
    unit = rng.choice(("in", "cm", "mm"))
    taken = False
    for parse, limit in ((parse_length, LONGEST), (parse_offset, LONGEST), (lambda v, _: parse_mass(v), HEAVIEST)):
        taken |= _number(parse, value, unit, limit)
    if isinstance(value, str):
        for read in (paper_size, roll_width):
            taken |= _taken(lambda read=read: read(value, "paper"), value)
        taken |= _taken(lambda: read_taped(f"a={value},b={value}; width={value}", unit), value)
    return taken


def _number(parse: Callable[[Any, str], float], value: object, unit: str, limit: float) -> bool:
    try:
        number = parse(value, unit)
    except ValueError as error:
        if not str(error).startswith("found ") or len(str(error)) > 400:
            raise FaultError(f"{value!r}: {error}") from error
        return False
    if not (math.isfinite(number) and abs(number) <= limit):
        raise FaultError(f"{value!r}: {number}")
    return True


def _job(content: bytes, folder: Path) -> bool:
    """Whether a job file is taken; the job of one that is goes through all that a user may ask of it."""
    path = folder / "job.toml"
    path.write_bytes(content)
    shutil.copy(SAMPLES / "tile-rubbings.csv", folder)
    return _taken(lambda: read_job(path), path) and _taken(lambda: _worked(read_job(path)), path, WHOLE)


def _worked(job: tg.Job) -> None:
    if len(job.frames) > FEW:
        return
    plan = tg.plan_wall(job)
    found = tg.find(plan)
    for show in (as_text, as_csv, as_data):
        show(plan, found)
    if not any(finding.level == "stop" for finding in found):
        check_plan(plan)


def _taken(what: Callable[[], object], given: object, most: float = SECONDS) -> bool:
    """True when it is taken, False when it is refused as it should be; a FaultError for anything else."""
    start = time.process_time()
    try:
        what()
        taken = True
    except InputError as error:
        _check_said(error, given)
        taken = False
    except Exception as error:
        raise FaultError(f"{type(error).__name__}: {error}: {_shown(given)}") from error
    if (took := time.process_time() - start) > most:
        raise FaultError(f"took {took:.1f} s: {_shown(given)}")
    return taken


def _check_said(error: InputError, given: object) -> None:
    said = str(error)
    if not error.problem.strip() or len(said) > 2000 or any(ord(char) < 32 and char != "\n" for char in said):
        raise FaultError(f"said {said!r}: {_shown(given)}")
    said.encode("utf-8")


def _shown(given: object) -> str:
    return repr(given.read_bytes() if isinstance(given, Path) else given)


_PLANS: list[tg.Plan] = []


def _fern() -> tg.Plan:
    if not _PLANS:
        _PLANS.append(tg.plan_wall(read_job(SAMPLES / "fern-prints.toml")))
    return _PLANS[0]


TARGETS: dict[str, Callable[[random.Random, Path], bool]] = {
    "job file": job_file, "job bytes": job_bytes, "frames.csv": job_sheet, "other wall": other_wall,
    "readings": readings, "printer": printer, "lengths": lengths, "template": template,
}  # fmt: skip
