"""The questions about what goes into the wall: by how the frames hang, and for some of them by themselves."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.base.errors import InputError
from templates_gen.base.words import some
from templates_gen.cli.interview.on_frames import ask_on_two, kind_of
from templates_gen.cli.interview.question import Asking, Tables, fill, names_in, question_for
from templates_gen.job.hangers import HANGERS
from templates_gen.job.reading.other_words import TWO_HOOKS
from templates_gen.job.tables.contents import field_of


def ask_fixings(tables: Tables) -> Asking:
    """The fixing of the frames of the first kind of hanger, which is that of all who have none of their own; those of
    other kinds; and of frames that need another."""
    frames = tables["frame"]
    kinds: dict[str, list[Tables]] = {}
    for frame in frames:
        kinds.setdefault(kind_of(frame), []).append(frame)
    usual = tables.setdefault("fixing", {})
    first, *_ = kinds
    own = {kind: usual if kind == first else {"kind": _fitting(those)} for kind, those in kinds.items()}
    for kind, those in kinds.items():  # until it is asked about, each has what fits it
        for frame in those if own[kind] is not usual else ():
            frame["fixing"] = own[kind]
    for kind, those in kinds.items():
        about = f"{_named(those)} ({kind})" if len(kinds) > 1 else ""
        yield from _of(own[kind], those, about, usual)
    while len(frames) > 1 and (text := (yield question_for("others", open="none", begins=True))):
        those = _picked(text, frames)
        yield from _of({}, those, _named(those), usual)


def _picked(text: str, frames: Sequence[Tables]) -> list[Tables]:
    """The frames that are named.  Raises InputError for a name that none has."""
    ids = [frame["id"] for frame in frames]
    names = names_in(text, ids)
    if unknown := [name for name in names if name not in ids]:
        raise InputError("", f"found {unknown[0]!r}, expected names of frames: {some(ids)}")
    return [frame for frame in frames if frame["id"] in names]


def _fitting(frames: Sequence[Tables]) -> str:
    """What is offered for these frames: a nail, unless none of them hangs on one."""
    return "nail" if any("nail" in HANGERS[kind_of(frame)].fixings for frame in frames) else "screw"


def _named(frames: Sequence[Tables]) -> str:
    return f"frame{'s' if len(frames) > 1 else ''} {some([frame['id'] for frame in frames])}"


def _of(fixing: Tables, frames: Sequence[Tables], about: str, usual: Tables) -> Asking:
    """The fixing of these frames, in a table of its own where it is not the usual one."""
    if fixing is not usual:
        for frame in frames:
            frame["fixing"] = fixing
    kinds = field_of("fixing.kind").choices
    default = _fitting(frames)
    kind = yield question_for("fixing.kind", choices=kinds, also=TWO_HOOKS, default=default, begins=True, about=about)
    fixing["kind"] = kind if kind in kinds else "nail" if "nail" in kind else "hook"
    if fixing["kind"] == "hook":
        yield from fill(fixing, "fixing.below")
        if any("weight" in frame for frame in frames):
            yield from fill(fixing, "fixing.rating", open="not known")
    if kind in TWO_HOOKS:
        for frame in frames:
            if isinstance(frame["hanger"], str) and HANGERS[kind_of(frame)].on_wire:
                yield from ask_on_two(frame, None)
    if fixing is not usual and fixing == usual:
        for frame in frames:
            del frame["fixing"]
