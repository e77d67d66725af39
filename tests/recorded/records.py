"""Which records there are, what is in each, and how what is there now is held against one."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path

from templates_gen.tiling import quickest
from tests.recorded.cells import of_cells
from tests.recorded.crowds import of_crowds, of_spines
from tests.recorded.cured import of_cured
from tests.recorded.errors import of_errors
from tests.recorded.found import FOUND
from tests.recorded.jobs import DRAWN, PLANNED, Recorded
from tests.recorded.limits import of_limits
from tests.recorded.listing import drawn, planned, sheets_of, told
from tests.recorded.parts import PARTS
from tests.recorded.tampered import of_tampered
from tests.recorded.taped import of_pages, of_taped
from tests.recorded.updates import of_updates
from tests.recorded.usuals import of_usuals

FOLDER = Path(__file__).parent

HEAD = (
    "# What the program planned, drew and found when somebody last looked at it: not what is right by itself.",
    "# A change on purpose is recorded anew by `python -m tests.recorded`, and its diff is read.  mm.",
)

SHARE = 5
"""A fifth of a user's steps of search are enough for most records, as they are in all tests."""

LAST = 0.02
"""mm, the most that a number may be off: what is rounded to tenths is exactly as it was.  Our own choice."""

TITLE = "=== "
"""What stands before the title of a record in its file."""

NUMBER = re.compile(r"-?\d+\.\d+")


def _of_job(of: Recorded, whole: bool, usual: int) -> Iterator[str]:
    """The lines about the sheets of a job, by a search of which `usual` is a user's number of steps for each sheet."""
    with _steps(usual if of.as_usual else usual // SHARE):
        plan, sheets = sheets_of(of.make(), of.printer)
    yield from planned(plan, sheets)
    if whole:
        yield from told(plan, sheets)
        yield from drawn(plan, sheets, of.printer is not None)


LEAST_STEPS = quickest.LEAST_STEPS
"""As in a user's run, in the tests, too."""


def _of_updates(usual: int) -> Iterator[str]:
    with _steps(usual // SHARE):
        yield from of_updates()


def _little(lines: Callable[[], Iterator[str]], _: int) -> Iterator[str]:
    with _steps(LITTLE):
        yield from lines()


LITTLE = 20
"""Steps of search for each sheet are enough for what is told of any sheets.  Our own choice."""


@contextmanager
def _steps(count: int) -> Iterator[None]:
    """A search of so many steps for each sheet meanwhile."""
    before = quickest.STEPS_A_SHEET, quickest.LEAST_STEPS
    quickest.STEPS_A_SHEET, quickest.LEAST_STEPS = count, LEAST_STEPS
    try:
        yield
    finally:
        quickest.STEPS_A_SHEET, quickest.LEAST_STEPS = before


FILES: dict[str, dict[str, Callable[[int], Iterable[str]]]] = {
    **{name: {name: partial(_of_job, of, True)} for name, of in DRAWN.items()},
    "plans": {name: partial(_of_job, of, False) for name, of in PLANNED.items()},
    "odd": {
        "cells": lambda _: of_cells(),
        "updates": _of_updates,
        "crowds": lambda _: of_crowds(),
        "spines": lambda _: of_spines(),
    },
    "parts": {name: lambda _, lines=lines: lines() for name, lines in PARTS.items()},
    "found": {name: lambda _, lines=lines: lines() for name, lines in FOUND.items()},
    "tampered": {"tampered": lambda _: of_tampered(), "cured": lambda _: of_cured()},
    "taped": {"taped": partial(_little, of_taped), "pages": partial(_little, of_pages)},
    "limits": {"limits": lambda _: of_limits(), "usuals": lambda _: of_usuals(), "errors": lambda _: of_errors()},
}
"""The records in each file, by their titles in it, and what writes their lines from a user's number of steps."""

RECORDS = {title: file for file, records in FILES.items() for title in records}
"""The file of every record."""


def recorded(title: str, usual: int) -> list[str]:
    """The lines of a record, by a search of which `usual` is a user's number of steps for each sheet."""
    return "\n".join(FILES[RECORDS[title]][title](usual)).split("\n")


def as_kept(title: str, usual: int) -> list[str]:
    """The same lines, where what is kept of a record tells where to look first."""
    return "\n".join(of_limits(kept(title))).split("\n") if title == "limits" else recorded(title, usual)


def kept(title: str) -> list[str]:
    """The lines of a record as they stand in its file."""
    lines = place(RECORDS[title]).read_text(encoding="utf-8").splitlines()
    if f"{TITLE}{title}" not in lines:
        return ["nothing is recorded of it yet: python -m tests.recorded"]
    first = lines.index(f"{TITLE}{title}") + 1
    return lines[first : next((at for at in range(first, len(lines)) if lines[at].startswith(TITLE)), len(lines))]


def record_all() -> None:
    """Write every record anew, as the program is now."""
    usual = quickest.STEPS_A_SHEET
    for file, records in FILES.items():
        lines = list(HEAD)
        for title in records:
            lines += [f"{TITLE}{title}", *recorded(title, usual)]
        place(file).write_text("\n".join([*lines, ""]), encoding="utf-8")


def place(file: str) -> Path:
    """Where a file of records is."""
    return FOLDER / f"{file}.txt"


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
