"""The questions of a job in a person's order: which comes next depends on what was answered before.

Nothing here reads or writes anything.  An answer goes into the tables of a job file as it was typed.
"""

from __future__ import annotations

import re
import string
from collections.abc import Iterable, Sequence

from templates_gen.base.errors import InputError
from templates_gen.base.units import show_both
from templates_gen.cli.interview.question import Asking, Question, Tables, fill, fill_sides, question_for
from templates_gen.job.hangers import HANGERS, WIRE
from templates_gen.job.reading.grouping import ALIGNMENTS, DEFAULT_GAP
from templates_gen.job.reading.other_words import TWO_HOOKS, meant
from templates_gen.job.reading.place import DEFAULT_CENTRE
from templates_gen.job.seats import use_by_name
from templates_gen.job.tables.contents import field_of

OFFERED = ("row", "rows", "column", "columns", "grid")
"""The arrangements that a few answers can tell; the others take a place for every frame, or a wall with stairs."""

PRINTED = {"linked": {"cover": "linked"}, "outlines": {}, "shop": {"print_shop": True}}
"""How a template may be printed, in the words of the question, and what stands in the job's paper for it."""

PRINTED_MEANS = (
    "linked: on your printer, the nails on a strip of sheets, the quickest to tape; outlines: on your printer, with "
    "every frame's outline; shop: in one piece at a print shop, nothing to tape"
)

PAPER = {"in": "letter", "cm": "a4", "mm": "a4"}
"""What is in most printers where people measure in a unit.  Common practice, no source."""

ON_FLOOR = ("door", "furniture")
"""Features that begin at the floor unless something else is said."""

KINDS = field_of("feature.kind").choices

YES_NO = ("yes", "no")

LONGEST_NAME = 60
"""Letters of a title that go into a file's name.  Our own design, no source."""


def interview(tables: Tables, file: str) -> Asking:
    """Every question of a job; the answers sent back fill the tables.  `file` is where the job goes, if it is known."""
    yield from _job(tables.setdefault("job", {}))
    yield from _wall(tables.setdefault("wall", {}))
    yield from _features(tables["wall"])
    yield from _frames(tables.setdefault("frame", []))
    yield from _fixing(tables.setdefault("fixing", {}), tables["frame"])
    yield from _group(tables.setdefault("group", {}), tables)
    default = PAPER[tables["job"]["unit"]]
    paper = tables.setdefault("paper", {})
    printed = yield question_for(
        "paper.print_shop", means=PRINTED_MEANS, choices=tuple(PRINTED), default="outlines", begins=True
    )
    yield from fill(paper, "paper.size", default=default)
    paper |= PRINTED[printed]
    tables["file"] = yield question_for("file", default=file or _file_name(tables["job"]["title"]), begins=True)


def _job(job: Tables) -> Asking:
    yield from fill(job, "job.title")
    yield from fill(job, "job.client", open="no client")
    yield from fill(job, "job.unit", choices=field_of("job.unit").choices)


def _wall(wall: Tables) -> Asking:
    yield from fill_sides(wall, "wall")
    yield from fill(wall, "wall.build", choices=field_of("wall.build").choices, open="not known")
    yield from fill(wall, "wall.wiring", choices=field_of("wall.wiring").choices, open="not said")
    if built := (yield question_for("wall.built", open="not known")):
        wall["built"] = _count(built)
    for name in ("earthquake", "public"):
        if said := (yield question_for(f"wall.{name}", choices=YES_NO, open="not said")):
            wall[name] = said == "yes"


def _features(wall: Tables) -> Asking:
    while word := (yield _kind_of_feature(wall)):
        kind = meant("feature.kind", word, KINDS)
        feature = {"kind": kind}
        wall.setdefault("feature", []).append(feature)
        # a couch is furniture, and called a couch
        yield from fill(feature, "feature.name", default="" if word == kind else word, open=kind)
        if kind == "furniture" and not use_by_name(feature.get("name", "")):
            yield from fill(feature, "feature.use", choices=field_of("feature.use").choices, open="not said")
        yield from fill(feature, "feature.left")
        yield from fill(feature, "feature.bottom", default="0" if kind in ON_FLOOR else "")
        yield from fill_sides(feature, "feature")
        yield from fill(feature, "feature.clear", open="no clearance")


def _kind_of_feature(wall: Tables) -> Question:
    open = "nothing more" if wall.get("feature") else "nothing"
    return question_for("feature.kind", choices=KINDS, open=open, begins=True)


def _frames(frames: list[Tables]) -> Asking:
    yield from _frame(frames, None)
    while (more := (yield question_for("more", choices=("same", "other", "no"), begins=True))) != "no":
        yield from _frame(frames, frames[-1] if more == "same" else None)


def _frame(frames: list[Tables], last: Tables | None) -> Asking:
    """One frame; of the size and weight and with the kind of hanger of the last, or all asked anew."""
    frame: Tables = {}
    frames.append(frame)
    names = {"number": len(frames), "id": ""}
    yield from fill(frame, "frame.id", names, default=_free_name(frames))
    if any(sign in frame["id"] for sign in ",/"):
        raise InputError(
            "frame, id", f"found {frame['id']!r}, expected a name without , and /, which separate names later"
        )
    names["id"] = frame["id"]
    yield from fill(frame, "frame.title", open="no title")
    if last is not None:
        frame |= {name: last[name] for name in ("width", "height", "weight") if name in last}
        yield from _hanger(frame, _kind(last), last["hanger"])
        return
    yield from fill_sides(frame, "frame", names)
    yield from fill(frame, "frame.weight", names, open="not weighed")
    hangers = field_of("frame.hanger").choices
    yield from _hanger(frame, (yield question_for("frame.hanger", choices=hangers, also=TWO_HOOKS, default=WIRE.name)))


def _free_name(frames: Sequence[Tables]) -> str:
    taken = {frame.get("id") for frame in frames}
    letters = (letter * times for times in range(1, len(frames) + 2) for letter in string.ascii_uppercase)
    return next(name for name in letters if name not in taken)


def _kind(frame: Tables) -> str:
    hanger = frame["hanger"]
    return str(hanger["kind"] if isinstance(hanger, dict) else hanger)


def _hanger(frame: Tables, kind: str, last: object = None) -> Asking:
    """What has to be measured behind each frame, even behind one that has a twin, whose hanger was the `last`."""
    apart = last.get("apart") if isinstance(last, dict) else None
    if kind in TWO_HOOKS or apart is not None:
        yield from _on_two(frame, apart)
        return
    traits = HANGERS[kind]
    hanger = {"kind": kind, "seen_from": "back"}
    frame["hanger"] = hanger if traits.pair else kind
    for key in traits.asks:
        table = frame if key.startswith("frame.") else hanger
        yield from fill(table, key, open="not measured yet" if ".drop" in key else "")


def _on_two(frame: Tables, apart: str | None) -> Asking:
    """A wire on two fixings: how far apart they are, unless that is known, and how far down it bears on both."""
    frame["hanger"] = hanger = {"kind": WIRE.name}
    if apart is None:
        yield from fill(hanger, "hanger.apart", {"id": frame["id"]})
    else:
        hanger["apart"] = apart
    yield from fill(hanger, "hanger.drop_at_two", {"id": frame["id"]}, open="not measured yet")


def _fixing(fixing: Tables, frames: Sequence[Tables]) -> Asking:
    kinds = field_of("fixing.kind").choices
    default = "nail" if any("nail" in HANGERS[_kind(frame)].fixings for frame in frames) else "screw"
    kind = yield question_for("fixing.kind", choices=kinds, also=TWO_HOOKS, default=default, begins=True)
    fixing["kind"] = kind if kind in kinds else "nail" if "nail" in kind else "hook"
    if fixing["kind"] == "hook":
        yield from fill(fixing, "fixing.below")
    if kind in TWO_HOOKS:
        for frame in frames:
            if isinstance(frame["hanger"], str) and HANGERS[_kind(frame)].on_wire:
                yield from _on_two(frame, None)


def _group(group: Tables, tables: Tables) -> Asking:
    frames = tables["frame"]
    if len(frames) > 1:
        yield from fill(group, "group.arrangement", choices=OFFERED, default="row", begins=True)
        yield from _listing(group, frames)
        usual = show_both(DEFAULT_GAP, tables["job"]["unit"])
        yield from fill(group, "group.gap", open=f"{usual}, the usual gap")
    features = [feature.get("name", feature["kind"]) for feature in tables["wall"].get("feature", [])]
    once = [name for name in features if features.count(name) == 1]
    yield from fill(group, "group.centre_on", default="wall")
    yield from _height(group, once, tables["job"]["unit"])


def _listing(group: Tables, frames: Sequence[Tables]) -> Asking:
    kind, ids = group["arrangement"], [frame["id"] for frame in frames]
    if kind in ("rows", "columns"):
        means = f"names with a comma between them, and a slash between {kind}: {_example(ids)}"
        text = yield question_for(f"group.{kind}", means=means, example=_example(ids))
        group[kind] = [_names(part, ids) for part in text.split("/")]
    elif kind == "grid":
        text = yield question_for("group.across")
        group["across"] = _count(text)
    side = 0 if kind in ("column", "columns") else 1
    if len({(frame["width"], frame["height"])[side] for frame in frames}) > 1:
        line = {"line": "row" if side else "column"}
        yield from fill(group, "group.align", line, choices=ALIGNMENTS[kind], default="centre")


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
    way = yield question_for("group.height", means=usual, choices=ways, default="eye")
    if way == "eye":
        return
    height: Tables = {}
    group["height"] = height
    if way != "above":
        yield from fill(height, f"height.{way}")
        return
    height["above"] = features[0]
    if len(features) > 1:
        yield from fill(height, "height.above", choices=tuple(features))
    yield from fill(height, "height.by")


def _file_name(title: str) -> str:
    return f"{re.sub(r'[^a-z0-9]+', '-', title.casefold())[:LONGEST_NAME].strip('-') or 'job'}.toml"
