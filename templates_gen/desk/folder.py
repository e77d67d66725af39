"""What the desk may touch: the files of one folder and of the folders in it, and none elsewhere."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.base.file_names import is_device

ENDING = ".toml"
"""Of a job file (TOML 1.0.0)."""

MOST_JOBS = 500
"""Jobs that are listed, the newest first.  Our own design, no source."""

OUTSIDE = "lies outside the job's folder, which is all that the desk reads and writes"


def within(folder: Path, name: str, where: str) -> Path:
    """The place of a file that is named from the folder.  Raises InputError for one that leads out of it."""
    try:
        place = (folder / name).resolve()
        inside = place.is_relative_to(folder.resolve()) and place != folder.resolve()
    except (OSError, ValueError, RuntimeError):  # a name that no system has, or links that lead in a circle
        inside = False
    if not inside:
        raise InputError(where, f"found {name!r}: it {OUTSIDE}", "copy the file beside the job file first")
    return place


def job_place(folder: Path, name: str) -> Path:
    """The place of a job file in the folder itself.  Raises InputError for any other name."""
    plain = Path(name).name == name and name.lower().endswith(ENDING) and not name.startswith(".")
    if not plain or "\0" in name or "\\" in name:
        raise InputError("job", f"found {name!r}, expected the name of a job file in this folder, ending in {ENDING}")
    within(folder, name, "job")
    return folder / name


def job_names(folder: Path) -> list[str]:
    """The files in the folder that may be jobs, the one changed last first."""
    found = [path for path in folder.glob(f"*{ENDING}") if path.is_file() and not path.name.startswith(".")]
    found = [path for path in found if path.name != "pyproject.toml"]  # of Python projects (PEP 518), never a job
    return [path.name for path in sorted(found, key=lambda path: -path.stat().st_mtime)[:MOST_JOBS]]


def free_name(folder: Path, stem: str, ending: str = ENDING) -> str:
    """A name in the folder that no file has yet, as near to this one as possible."""
    plain = "".join(sign if sign.isalnum() else "-" for sign in stem.strip().lower()).strip("-")
    plain = "-".join(filter(None, plain.split("-")))[:60] or "wall"
    plain = f"{plain}-wall" if is_device(plain) else plain
    taken = {path.name.casefold() for path in folder.iterdir()}
    number, name = 1, f"{plain}{ending}"
    while name.casefold() in taken:
        number += 1
        name = f"{plain}-{number}{ending}"
    return name


def check_named(folder: Path, raw: Mapping[str, Any]) -> None:
    """Raises InputError where the tables of a job file name a file outside the folder."""
    for where, name in _named(raw):
        if isinstance(name, str) and name:
            within(folder, name, where)


def _named(raw: Mapping[str, Any]) -> Iterator[tuple[str, Any]]:
    """Every field of a job file that names another file, with where it stands."""
    job, paper = _table(raw.get("job")), _table(raw.get("paper"))
    yield from (("job, frames", job.get("frames")), ("job, measured", job.get("measured")))
    yield "paper, font", paper.get("font")
    frames, types = raw.get("frame"), _table(raw.get("frame_type"))
    for frame in [*(frames if isinstance(frames, list) else []), *types.values()]:
        yield f"frame {_table(frame).get('id', '')}, image", _table(frame).get("image")


def _table(value: Any) -> Mapping[str, Any]:
    return value if isinstance(value, Mapping) else {}
