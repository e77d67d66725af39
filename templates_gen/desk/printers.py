"""Printers that were measured: chosen for the paper, and recorded by what was read on the scale page."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.documents.recorded import RULERS, recorded
from templates_gen.printer.profile import Printer, doubts
from templates_gen.printer.store import every, load, save


def printers(folder: Path) -> dict[str, Any]:
    """Every printer that was recorded, the ones that cannot be read, and what is to be measured for another one."""
    try:
        found = list(every(folder))
    except InputError as error:
        found = [error]
    known = [_told(one) for one in found if isinstance(one, Printer)]
    return {"printers": known, "damaged": [str(one) for one in found if isinstance(one, InputError)], "rulers": RULERS}


def _told(one: Printer) -> dict[str, Any]:
    about = f"{one.paper}, {one.across:.2%} across, {one.along:.2%} along, measured {one.date}"
    return {"name": one.name, "paper": one.paper, "about": about, "doubts": list(doubts(one))}


def record(folder: Path, data: Mapping[str, Any]) -> dict[str, Any]:
    """Keep what was measured, and tell of all printers.  Raises InputError for what no printer does."""
    measures = {name: str(data.get(name) or "").strip() for name in RULERS}
    today = datetime.date.today().isoformat()
    known = recorded(str(data.get("name") or ""), str(data.get("paper") or ""), measures, RULERS, today)
    save(folder, known)
    return printers(folder) | {"name": known.name}


def printer_named(folder: Path, name: Any) -> Printer:
    """The profile to print by.  Raises InputError for one that is not there."""
    return load(folder, str(name))
