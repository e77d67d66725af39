"""Which records there are, what is in each, and how what is there now is held against one."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from templates_gen.tiling import quickest
from tests.recorded.jobs import DRAWN, PLANNED, Recorded
from tests.recorded.listing import drawn, planned, sheets_of, told

FOLDER = Path(__file__).parent

HEAD = (
    "# What the program planned and drew when somebody last looked at it: not what is right by itself.",
    "# A change on purpose is recorded anew by `python -m tests.recorded`, and its diff is read.  mm on the wall.",
)

SHARE = 5
"""A fifth of a user's steps of search are enough for most records, as they are in all tests."""

PLANS = "plans"
"""The name of the record of jobs of which only the plan is recorded."""

LAST = 0.02
"""mm, the most that a number may be off: what is rounded to tenths is exactly as it was.  Our own choice."""

TITLE = "=== "
"""What stands before the name of a job where a file has several."""

NUMBER = re.compile(r"-?\d+\.\d+")


def names() -> tuple[str, ...]:
    """The jobs of which there are records."""
    return (*DRAWN, *PLANNED)


def recorded(name: str, usual: int) -> list[str]:
    """The lines about a job, by a search of which `usual` is a user's number of steps for each sheet."""
    return list(_lines({**DRAWN, **PLANNED}[name], usual, whole=name in DRAWN))


def _lines(of: Recorded, usual: int, whole: bool) -> Iterator[str]:
    steps = quickest.STEPS_A_SHEET
    quickest.STEPS_A_SHEET = usual if of.as_usual else usual // SHARE
    try:
        plan, sheets = sheets_of(of.make(), of.printer)
    finally:
        quickest.STEPS_A_SHEET = steps
    yield from planned(plan, sheets)
    if whole:
        yield from told(plan, sheets)
        yield from drawn(plan, sheets, of.printer is not None)


def kept(name: str) -> list[str]:
    """The lines about a job as they stand in a file."""
    lines = _file(name if name in DRAWN else PLANS).read_text(encoding="utf-8").splitlines()
    if name in DRAWN:
        return lines[len(HEAD) :]
    first = lines.index(f"{TITLE}{name}") + 1
    return lines[first : next((at for at in range(first, len(lines)) if lines[at].startswith(TITLE)), len(lines))]


def record_all() -> None:
    """Write every record anew, as the program is now."""
    usual, plans = quickest.STEPS_A_SHEET, list(HEAD)
    for name in DRAWN:
        _write(name, [*HEAD, *recorded(name, usual)])
    for name in PLANNED:
        plans += [f"{TITLE}{name}", *recorded(name, usual)]
    _write(PLANS, plans)


def files() -> set[Path]:
    """The files of all records."""
    return {_file(name) for name in (*DRAWN, PLANS)}


def _file(name: str) -> Path:
    return FOLDER / f"{name}.txt"


def _write(name: str, lines: list[str]) -> None:
    _file(name).write_text("\n".join([*lines, ""]), encoding="utf-8")


def moved(was: list[str], now: list[str]) -> list[str]:
    """What is not as it was: pairs of lines, the first few of them."""
    found = [f"- {old}\n+ {new}" for old, new in zip(was, now, strict=False) if not same(old, new)]
    if len(was) != len(now):
        found.append(f"{len(was)} lines were, {len(now)} are now")
    return found[:20]


def same(was: str, now: str) -> bool:
    """Whether two lines say the same, but for the last digit of numbers that have decimals."""
    if was == now:
        return True
    if NUMBER.sub("", was) != NUMBER.sub("", now):
        return False
    pairs = list(zip(NUMBER.findall(was), NUMBER.findall(now), strict=True))
    return all(_near(old, new) for old, new in pairs)


def _near(was: str, now: str) -> bool:
    digits = len(was.partition(".")[2])
    return digits == len(now.partition(".")[2]) and abs(float(was) - float(now)) < min(LAST, 1.5 * 10**-digits)
