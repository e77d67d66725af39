"""The questions about the frames, one by one: their sizes, and what is measured behind each."""

from __future__ import annotations

import string
from collections.abc import Sequence

from templates_gen.base.errors import InputError
from templates_gen.cli.interview.question import YES_NO, Asking, Tables, fill, fill_sides, question_for
from templates_gen.job.hangers import HANGERS, WIRE
from templates_gen.job.reading.other_words import TWO_HOOKS
from templates_gen.job.tables.contents import field_of


def ask_frames(frames: list[Tables]) -> Asking:
    """Every frame with what is measured behind it, and in the end their pictures."""
    yield from _frame(frames, None)
    while (more := (yield question_for("more", choices=("same", "other", "no"), begins=True))) != "no":
        yield from _frame(frames, frames[-1] if more == "same" else None)
    if (yield question_for("pictures", choices=YES_NO, default="no")) == "yes":
        for frame in frames:
            yield from fill(frame, "frame.image", {"id": frame["id"]}, open="none yet")


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
        yield from _hanger(frame, kind_of(last), last["hanger"])
        return
    yield from fill_sides(frame, "frame", names)
    yield from fill(frame, "frame.weight", names, open="not weighed")
    hangers = field_of("frame.hanger").choices
    yield from _hanger(frame, (yield question_for("frame.hanger", choices=hangers, also=TWO_HOOKS, default=WIRE.name)))


def _free_name(frames: Sequence[Tables]) -> str:
    taken = {frame.get("id") for frame in frames}
    letters = (letter * times for times in range(1, len(frames) + 2) for letter in string.ascii_uppercase)
    return next(name for name in letters if name not in taken)


def kind_of(frame: Tables) -> str:
    """The kind of a frame's hanger."""
    hanger = frame["hanger"]
    return str(hanger["kind"] if isinstance(hanger, dict) else hanger)


def _hanger(frame: Tables, kind: str, last: object = None) -> Asking:
    """What has to be measured behind each frame, even behind one that has a twin, whose hanger was the `last`."""
    apart = last.get("apart") if isinstance(last, dict) else None
    if kind in TWO_HOOKS or apart is not None:
        yield from ask_on_two(frame, apart)
        return
    traits = HANGERS[kind]
    hanger = {"kind": kind, "seen_from": "back"}
    frame["hanger"] = hanger if traits.pair else kind
    for key in traits.asks:
        table = frame if key.startswith("frame.") else hanger
        yield from fill(table, key, open="not measured yet" if ".drop" in key else "")


def ask_on_two(frame: Tables, apart: str | None) -> Asking:
    """A wire on two fixings: how far apart they are, unless that is known, and how far down it bears on both."""
    frame["hanger"] = hanger = {"kind": WIRE.name}
    if apart is None:
        yield from fill(hanger, "hanger.apart", {"id": frame["id"]})
    else:
        hanger["apart"] = apart
    yield from fill(hanger, "hanger.drop_at_two", {"id": frame["id"]}, open="not measured yet")
