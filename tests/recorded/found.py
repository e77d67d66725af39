"""What is found of many jobs: slips in sound jobs, and the smallest jobs that raise every rule; a line a finding."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

import tomlkit

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import TemplatesError
from templates_gen.base.units import MM
from templates_gen.checks import Finding, find
from templates_gen.checks.cures.curing import cured
from templates_gen.checks.doubts.other_tape import by_the_inch
from templates_gen.job.reading.building import build_job, read_job
from tests.checks.test_findings import CASES
from tests.jobs import SAMPLES, frame
from tests.odd_jobs import odd_jobs
from tests.recorded.listing import wrapped
from tests.slips import Raw, tables
from tests.slips_by_hand import SLIPS
from tests.slips_of_fields import field_slips

EACH = 5
"""Of the slips one in so many is cured: that takes long.  Our own choice."""


LONGEST = 125
"""The sides of sizes are less, in either unit.  Our own choice."""


def of_slips() -> Iterator[str]:
    """What is said of every slip, and was not said of the job that it was put into."""
    before: dict[str, set[str]] = {}
    for slip in SLIPS:
        base = before.setdefault(slip.base, set(_lines(tables(slip.base))))
        raw = tables(slip.base)
        slip.put(raw)
        yield f"{slip.base}: {slip.words}"
        yield from (f"    {line}" for line in _lines(raw) if line not in base)


def of_rules() -> Iterator[str]:
    """What is said of every rule's job, and of the same with one thing changed."""
    for rule, _, _, wrong, right in CASES:
        yield rule
        one, two = list(map(said, find(plan_wall(wrong)))), list(map(said, find(plan_wall(right))))
        yield from (f"    {line}" for line in one if line not in two)
        yield from (f"    right: {line}" for line in two if line not in one)


def of_odd_jobs() -> Iterator[str]:
    """What is said of jobs that look wrong and are right."""
    for name, raw in odd_jobs().items():
        yield name
        yield from (f"    {line}" for line in _lines(raw))


def _lines(raw: Raw) -> list[str]:
    try:
        return list(map(said, find(plan_wall(build_job(raw, SAMPLES / "job.toml")))))
    except TemplatesError as error:
        return [f"refused: {' / '.join(str(error).splitlines())}"]


def said(found: Finding) -> str:
    """A finding in a line."""
    nails = f" nails {', '.join(found.nails)}" if found.nails else ""
    asks = f" confirm {', '.join(found.confirm)}" if found.confirm else ""
    meant = f" meant {'; '.join(map(' '.join, found.meant))}" if found.meant else ""
    return f"{found.level} {found.rule} {', '.join(found.about)}{nails}{asks}{meant}: {found.text}"


def of_cures() -> Iterator[str]:
    """With what slips in job files are said to be cured."""
    for slip in (*list(field_slips())[::EACH], *SLIPS[1::EACH]):
        raw = tables(slip.base)
        slip.put(raw)
        yield f"{slip.base}: {slip.words}"
        with TemporaryDirectory() as folder:
            path = Path(folder) / "job.toml"
            path.write_text(tomlkit.dumps(raw), encoding="utf-8")
            for sheet in SAMPLES.glob("*.csv"):
                shutil.copy(sheet, folder)
            yield from (f"    {line}" for line in cures_of(path))


def of_sizes() -> Iterator[str]:
    """Which whole figures in centimetres are those of a size that is sold by the inch."""
    pairs = [(wide, high) for wide in range(1, LONGEST) for high in range(wide, LONGEST)]
    found = (pair for pair in pairs if by_the_inch(frame("A", *(side * MM["cm"] for side in pair))))
    yield from wrapped("cm: ", (f"{wide} {high}" for wide, high in found))


def cures_of(path: Path) -> Iterator[str]:
    """What cures the findings of a job file, and what that changes in it."""
    try:
        plan = plan_wall(read_job(path))
    except TemplatesError as error:
        yield f"refused: {str(error).splitlines()[0].replace(str(path.parent), '…')}"
        return
    for found in cured(plan, find(plan), path):
        for cure in found.cures:
            changes = "; ".join(f"{'.'.join(map(str, change.place))} = {change.value}" for change in cure.changes)
            yield f"{found.rule} {', '.join(found.about)}: {cure.said}: {changes}"


FOUND = {"slips": of_slips, "rules": of_rules, "odd jobs": of_odd_jobs, "cures": of_cures, "sizes": of_sizes}
"""What is recorded, by its title."""
