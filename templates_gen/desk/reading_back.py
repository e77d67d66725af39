"""After hanging: what was measured is typed into the page, and comes back as what to move."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from templates_gen.arranging.plan import Plan
from templates_gen.base.csv_cells import NOTHING, as_csv
from templates_gen.base.errors import InputError
from templates_gen.base.units import show
from templates_gen.base.words import capital
from templates_gen.desk.opened import Opened
from templates_gen.documents.correcting import correct
from templates_gen.documents.correcting.afterwards import afterwards, fixing_table, measures_words
from templates_gen.documents.correcting.holes import Cured
from templates_gen.documents.correcting.readings import COLUMNS, PRINTED
from templates_gen.documents.correcting.sentences import found_words, moved_words, side_words, what_to_do
from templates_gen.documents.correcting.table import foot, name_of

FILE = Path("readings")
"""What stands in a message for the file that readings come from at a terminal."""

_WHERE = re.compile(r"readings, line \d+ |readings$")
"""What the page does not know: it has no file and no lines."""


def corrected(opened: Opened, data: Mapping[str, Any]) -> dict[str, Any]:
    """What to do about every frame that was read and what goes into the job; what goes for all, and whether nails move.

    Raises InputError as `cured` does.
    """
    plan, done = cured(opened, data)
    unit = plan.job.unit
    frames = [_told(one, unit) for one in done]
    return {"frames": frames, "foot": foot(plan, done), "moves": any(one.correction.moves for one in done)}


def _told(done: Cured, unit: str) -> dict[str, Any]:
    lines, keeps = list(_lines(done, unit)), list(_keeps(done, unit))
    return {"name": name_of(done), "id": done.hung.frame.id, "lines": lines, "keeps": keeps}


def _lines(done: Cured, unit: str) -> Iterator[str]:
    """How a frame was found, how its nails move, and what else to do."""
    yield capital(f"found: {found_words(done.correction, unit)}")
    frame = done.hung.frame
    for move, cure in zip(done.correction.moves, done.cures, strict=True):
        ways = moved_words(move, cure, frame, unit)
        yield capital(f"{side_words(move, frame)}: {', '.join(way for way in ways if way != NOTHING)}")
    yield from what_to_do(done, unit)


def _keeps(done: Cured, unit: str) -> Iterator[dict[str, Any]]:
    """What can be put into the job of a frame that was put right: what it is, when it holds, and values by field."""
    after = afterwards(done, unit)
    if after.fixing is not None:
        yield {"what": f"the new {after.fixing.kind}", "when": "", "fixing": fixing_table(after.fixing, unit)}
    same = after.on_mark == after.off_mark
    for when, measures in (("On the mark", after.on_mark), ("Off the mark", {} if same else after.off_mark)):
        if measures:
            values = {name: show(mm, unit) for name, mm in measures.items()}
            yield {"what": measures_words(measures, unit), "when": "" if same else when, "measures": values}


def cured(opened: Opened, data: Mapping[str, Any]) -> tuple[Plan, tuple[Cured, ...]]:
    """The plan, and what cures every frame of which the `data` have rows.

    Raises InputError at the reading that cannot be: where is the frame's id in brackets, and the column.
    """
    read = opened.read
    plan = read.plan if read is not None else None
    if plan is None:
        raise InputError("", "the places of the frames are not known yet")
    rows = data.get("rows")
    if not isinstance(rows, Mapping):
        raise InputError("", "the page sent no readings", "load the page again")
    columns = ("frame", *COLUMNS[len(PRINTED) :])
    cells = ([name, *(str(row.get(column) or "") for column in columns[1:])] for name, row in rows.items())
    try:
        return plan, correct(plan, FILE, as_csv(columns, cells).encode())
    except InputError as error:
        raise InputError(_WHERE.sub("", error.where), error.problem, error.hint) from None
