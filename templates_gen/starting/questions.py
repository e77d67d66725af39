"""The questions of a job in a person's order: which comes next depends on what was answered before.

Nothing here reads or writes anything.  An answer goes into the tables of a job file as it was typed.
"""

from __future__ import annotations

import re
import string
from collections.abc import Generator, Iterable, Sequence
from typing import Any

from templates_gen.errors import InputError
from templates_gen.jobfile.framing import PAIRS
from templates_gen.jobfile.grouping import ALIGNMENTS, DEFAULT_GAP
from templates_gen.jobfile.tables import FeatureTable, FixingTable, FrameTable, JobTable, WallTable
from templates_gen.jobfile.typed import choices
from templates_gen.jobfile.whereabouts import DEFAULT_CENTRE
from templates_gen.record import Record
from templates_gen.starting.words import FIELDS
from templates_gen.units import show_both

OFFERED = ("row", "rows", "column", "columns", "grid")
"""The arrangements that a few answers can tell; the others take a place for every frame, or a wall with stairs."""

PAPER = {"in": "letter", "cm": "a4", "mm": "a4"}
"""What is in most printers where people measure in a unit.  Common practice, no source."""

ON_FLOOR = ("door", "furniture")
"""Features that begin at the floor unless something else is said."""

Tables = dict[str, Any]
"""The tables of a job file as they are written, and under "file" where it goes."""


class Question(Record, frozen=True, kw_only=True):
    """What is asked for the field `key`: `means` explains it in a line, `choices`, if any, are the only answers,
    and `example` shows how to write one.

    When nothing is typed, `default` is the answer; without one the field is left open where `open` says what that
    means, and else an answer is needed.  `begins` is set where one thing is told and the next begins.
    """

    key: str
    ask: str
    means: str
    example: str = ""
    choices: tuple[str, ...] = ()
    default: str = ""
    open: str = ""
    begins: bool = False


Asking = Generator[Question, str, None]


def interview(tables: Tables, file: str) -> Asking:
    """Every question of a job; the answers sent back fill the tables.  `file` is where the job goes, if it is known."""
    yield from _job(tables.setdefault("job", {}))
    yield from _wall(tables.setdefault("wall", {}))
    yield from _features(tables["wall"])
    yield from _frames(tables.setdefault("frame", []))
    yield from _fixing(tables.setdefault("fixing", {}))
    yield from _group(tables.setdefault("group", {}), tables)
    default = PAPER[tables["job"]["unit"]]
    yield from _fill(tables.setdefault("paper", {}), "paper.size", default=default, begins=True)
    tables["file"] = yield _question("file", default=file or _file_name(tables["job"]["title"]), begins=True)


def _question(key: str, names: Tables | None = None, **more: Any) -> Question:
    words = FIELDS[key]
    return Question(**{"key": key, "ask": words.ask.format(**names or {}), "means": words.means, **more})


def _fill(table: Tables, key: str, names: Tables | None = None, **more: Any) -> Asking:
    """Ask for one field of a table, and put what was typed into it."""
    text = yield _question(key, names, **more)
    if text:
        table[key.partition(".")[2]] = text


def _job(job: Tables) -> Asking:
    yield from _fill(job, "job.title")
    yield from _fill(job, "job.client", open="no client")
    yield from _fill(job, "job.unit", choices=choices(JobTable, "unit"))


def _wall(wall: Tables) -> Asking:
    yield from _fill(wall, "wall.width")
    yield from _fill(wall, "wall.height")
    yield from _fill(wall, "wall.build", choices=choices(WallTable, "build"), open="not known")
    yield from _fill(wall, "wall.wiring", choices=choices(WallTable, "wiring"), open="not said")


def _features(wall: Tables) -> Asking:
    while kind := (yield _kind_of_feature(wall)):
        feature = {"kind": kind}
        wall.setdefault("feature", []).append(feature)
        yield from _fill(feature, "feature.name", open=kind)
        yield from _fill(feature, "feature.left")
        yield from _fill(feature, "feature.bottom", default="0" if kind in ON_FLOOR else "")
        yield from _fill(feature, "feature.width")
        yield from _fill(feature, "feature.height")
        yield from _fill(feature, "feature.clear", open="no clearance")


def _kind_of_feature(wall: Tables) -> Question:
    open = "nothing more" if wall.get("feature") else "nothing"
    return _question("feature.kind", choices=choices(FeatureTable, "kind"), open=open, begins=True)


def _frames(frames: list[Tables]) -> Asking:
    yield from _frame(frames, None)
    while (more := (yield _question("more", choices=("same", "other", "no"), begins=True))) != "no":
        yield from _frame(frames, frames[-1] if more == "same" else None)


def _frame(frames: list[Tables], last: Tables | None) -> Asking:
    """One frame; of the size and with the kind of hanger of the last, or all asked anew."""
    frame: Tables = {}
    frames.append(frame)
    names = {"number": len(frames), "id": ""}
    yield from _fill(frame, "frame.id", names, default=_free_name(frames))
    if any(sign in frame["id"] for sign in ",/"):
        raise InputError(
            "frame, id", f"found {frame['id']!r}, expected a name without , and /, which separate names later"
        )
    names["id"] = frame["id"]
    yield from _fill(frame, "frame.title", open="no title")
    if last is not None:
        frame |= {"width": last["width"], "height": last["height"]}
        yield from _hanger(frame, _kind(last))
        return
    yield from _fill(frame, "frame.width", names)
    yield from _fill(frame, "frame.height", names)
    yield from _hanger(frame, (yield _question("frame.hanger", choices=choices(FrameTable, "hanger"), default="wire")))


def _free_name(frames: Sequence[Tables]) -> str:
    taken = {frame.get("id") for frame in frames}
    letters = (letter * times for times in range(1, len(frames) + 2) for letter in string.ascii_uppercase)
    return next(name for name in letters if name not in taken)


def _kind(frame: Tables) -> str:
    hanger = frame["hanger"]
    return str(hanger["kind"] if isinstance(hanger, dict) else hanger)


def _hanger(frame: Tables, kind: str) -> Asking:
    """What has to be measured behind each frame, even behind one that has a twin."""
    frame["hanger"] = kind
    if kind in PAIRS:
        frame["hanger"] = hanger = {"kind": kind, "seen_from": "back"}
        yield from _fill(hanger, "hanger.left")
        yield from _fill(hanger, "hanger.right")
    if kind in ("rings", "keyholes"):
        yield from _fill(hanger, "hanger.drop_left", open="not measured yet")
        yield from _fill(hanger, "hanger.drop_right", open="not measured yet")
    else:
        yield from _fill(frame, "frame.drop", open="not measured yet")
    if kind == "cleat":
        yield from _fill(hanger, "hanger.screw_below")


def _fixing(fixing: Tables) -> Asking:
    yield from _fill(fixing, "fixing.kind", choices=choices(FixingTable, "kind"), default="nail", begins=True)
    if fixing["kind"] == "hook":
        yield from _fill(fixing, "fixing.below")


def _group(group: Tables, tables: Tables) -> Asking:
    frames = tables["frame"]
    if len(frames) > 1:
        yield from _fill(group, "group.arrangement", choices=OFFERED, default="row", begins=True)
        yield from _listing(group, frames)
        usual = show_both(DEFAULT_GAP, tables["job"]["unit"])
        yield from _fill(group, "group.gap", open=f"{usual}, the usual gap")
    features = [feature.get("name", feature["kind"]) for feature in tables["wall"].get("feature", [])]
    once = [name for name in features if features.count(name) == 1]
    yield from _fill(group, "group.centre_on", default="wall")
    yield from _height(group, once, tables["job"]["unit"])


def _listing(group: Tables, frames: Sequence[Tables]) -> Asking:
    kind, ids = group["arrangement"], [frame["id"] for frame in frames]
    if kind in ("rows", "columns"):
        means = f"names with a comma between them, and a slash between {kind}: {_example(ids)}"
        text = yield _question(f"group.{kind}", means=means, example=_example(ids))
        group[kind] = [_names(part, ids) for part in text.split("/")]
    elif kind == "grid":
        text = yield _question("group.across")
        group["across"] = _count(text)
    side = 0 if kind in ("column", "columns") else 1
    if len({(frame["width"], frame["height"])[side] for frame in frames}) > 1:
        line = {"line": "row" if side else "column"}
        yield from _fill(group, "group.align", line, choices=ALIGNMENTS[kind], default="centre")


def _example(ids: Sequence[str]) -> str:
    half = (len(ids) + 1) // 2
    return f"{', '.join(ids[:half])} / {', '.join(ids[half:])}"


def _names(text: str, ids: Iterable[str]) -> list[str]:
    """Names with a comma between, or a space where that can mean nothing else."""
    parts = [" ".join(part.split()) for part in text.split(",")]
    return parts if len(parts) > 1 or parts[0] in ids else parts[0].split()


def _count(text: str) -> int:
    if not re.fullmatch(r"[0-9]{1,6}", text):
        raise InputError("", f"found {text!r}, expected a whole number")
    return int(text)


def _height(group: Tables, features: Sequence[str], unit: str) -> Asking:
    ways = ("eye", *(["above"] if features else []), "centre", "top", "bottom")
    usual = f"eye: the middle of the group at {show_both(DEFAULT_CENTRE, unit)}, common practice"
    way = yield _question("group.height", means=usual, choices=ways, default="eye")
    if way == "eye":
        return
    height: Tables = {}
    group["height"] = height
    if way != "above":
        yield from _fill(height, f"height.{way}")
        return
    height["above"] = features[0]
    if len(features) > 1:
        yield from _fill(height, "height.above", choices=tuple(features))
    yield from _fill(height, "height.by")


def _file_name(title: str) -> str:
    return f"{re.sub(r'[^a-z0-9]+', '-', title.casefold())[:60].strip('-') or 'job'}.toml"
