"""After hanging: what was measured is typed into the page, and comes back as what to move."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from templates_gen.base.csv_cells import as_csv
from templates_gen.base.errors import InputError
from templates_gen.desk.opened import Opened
from templates_gen.documents.correcting import correct
from templates_gen.documents.correcting.readings import COLUMNS, PRINTED
from templates_gen.documents.correcting.table import as_text

FILE = Path("readings")
"""What stands in a message for the file that readings come from at a terminal."""


def corrected(opened: Opened, data: Mapping[str, Any]) -> dict[str, Any]:
    """What to do about every frame that something was read of.  Raises InputError at the reading that cannot be."""
    read = opened.read
    plan = read.plan if read is not None else None
    if plan is None:
        raise InputError("", "the places of the frames are not known yet")
    rows = data.get("rows")
    if not isinstance(rows, Mapping):
        raise InputError("", "the page sent no readings", "load the page again")
    columns = ("frame", *COLUMNS[len(PRINTED) :])
    cells = ([name, *(str(row.get(column) or "") for column in columns[1:])] for name, row in rows.items())
    content = as_csv(columns, cells)
    done = correct(plan, FILE, content.encode())
    return {"text": as_text(plan, done), "moves": [_moved(cured) for cured in done]}


def _moved(cured: Any) -> dict[str, Any]:
    moves = cured.correction.moves
    return {"frame": cured.correction.hung.frame.id, "nails": [
        {"name": move.nail, "from": move.old, "right": move.right, "up": move.up} for move in moves
    ]}  # fmt: skip
