"""What the job should say of a frame once it is put right, so that the next paper does not repeat the error.

Readings tell where a frame hangs, not why: its drop may have been measured wrong, or its nail may be beside its mark.
Whoever drove the nail knows.  Was it on its mark, then what bears on it is now as far below the frame's top edge as the
new hole is, so the drop is the old one less the hole's way up.  Was it not, then the drop is the job's, and as much
longer as the wire was shortened for.  What hangs on other fixings hangs on them either way.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from templates_gen.base.adding import added
from templates_gen.base.record import Record
from templates_gen.base.units import DIVISION, exact_mass, show
from templates_gen.base.words import capital
from templates_gen.documents.correcting.holes import Cured
from templates_gen.documents.correcting.wires import with_longer_drop
from templates_gen.hanging.statics import moved_apart
from templates_gen.hanging.wire import hung_wire
from templates_gen.job.model import Fixing, Frame

Measures = Mapping[str, float]
"""By field of a frame or of its hanger, in mm, left and right as seen from the front."""

_CALLED = {
    "drop": "drop", "drop_left": "left drop (facing)", "drop_right": "right drop (facing)",
    "left": "left one (facing) in by", "right": "right one (facing) in by", "apart": "its two fixings apart by",
    "drop_at_two": "drop on both",
}  # fmt: skip


class Afterwards(Record, frozen=True):
    """What the job should say of a frame from now on, as far as that is something else than it says.

    `on_mark` where its old nails were on their marks, `off_mark` where they were not; `fixing` is another one either
    way.
    """

    on_mark: Measures
    off_mark: Measures
    fixing: Fixing | None


def afterwards(cured: Cured, unit: str) -> Afterwards:
    """What the job should say of a frame once all is done that it is cured by."""
    frame = cured.hung.frame
    fixing = cured.frame.fixing if cured.frame.fixing != frame.fixing else None
    if not cured.correction.moves and cured.wire is None:
        return Afterwards({}, {}, fixing)
    by_mark = _by_wire(cured) if frame.hanger.traits.swings else _by_holes(cured)
    off_mark = _other(_of(cured.frame), frame, unit)
    on_mark = off_mark if by_mark is None else _other({**_of(cured.frame), **by_mark}, frame, unit)
    return Afterwards(on_mark, off_mark, fixing)


def _by_wire(cured: Cured) -> Measures | None:
    """The drops of a frame that swings and whose nails were on their marks, which all move alike; None where it has no
    such drop."""
    frame, moves, wire = cured.hung.frame, cured.correction.moves, hung_wire(cured.hung.frame)
    drop, up = cured.hung.bearings[0].drop, moves[0].up if moves else 0.0
    if drop is None:
        return None
    two = {"drop_at_two": drop - up} if frame.hanger.drop_at_two is not None else {}
    if cured.apart is not None and wire is not None:  # over fixings farther apart it rises less, and so they go down
        up += wire.rise - moved_apart(wire, cured.apart).rise
    real = with_longer_drop(frame, -up)
    return None if real is None else {**two, **({} if real.drop is None else {"drop": real.drop})}


def _by_holes(cured: Cured) -> Measures:
    """Where each part of a pair is on a frame whose nails were on their marks: where its new hole is."""
    hung, traits = cured.hung, cured.hung.frame.hanger.traits
    moves = {move.old: move for move in cured.correction.moves}
    found: dict[str, float] = {}
    for bearing in hung.bearings:
        move = moves.get(bearing.nail_of(hung.frame.id))
        if move is None or bearing.drop is None:
            continue
        if traits.rail:  # the frame bears on it at one height, and slides along it
            found["drop"] = bearing.drop - added(one.up for one in moves.values()) / len(hung.bearings)
            continue
        found[f"drop_{bearing.side}"] = bearing.drop - move.up
        x = bearing.x + move.right
        found[bearing.side] = x - hung.rect.x0 if bearing.side == "left" else hung.rect.x1 - x
    return found


def _of(frame: Frame) -> dict[str, float]:
    """What is known of a frame of all that may be another."""
    found = {name: getattr(frame.hanger, name) for name in _CALLED if name != "drop"} | {"drop": frame.drop}
    return {name: value for name, value in found.items() if value is not None}


def _other(measures: Measures, frame: Frame, unit: str) -> Measures:
    """Those that a tape shows to be another than the job says."""
    known = _of(frame)
    if frame.drop is not None:
        known = {"drop_left": frame.drop, "drop_right": frame.drop, **known}
    least = DIVISION[unit] / 2
    return {name: mm for name, mm in measures.items() if name not in known or abs(mm - known[name]) >= least}


def afterwards_words(cured: Cured, unit: str) -> Iterator[str]:
    """What to put into the job for the next paper; nothing where it stays as it is."""
    after, kind = afterwards(cured, unit), cured.hung.frame.fixing.kind
    said = [] if after.fixing is None else [f"put the new {after.fixing.kind} into the job."]
    many = len(cured.hung.bearings) > 1
    were, on_marks, they = (f"were the old {kind}s", "their marks", "they were") if many else (
        f"was the old {kind}", "its mark", "it was")  # fmt: skip
    if after.on_mark != after.off_mark:
        said.append(f"{were} on {on_marks}? Then {_said(after.on_mark, unit)}.")
        said.append(f"If {they} not, {_said(after.off_mark, unit)}.")
    elif after.on_mark:
        said.append(f"{_said(after.on_mark, unit)}.")
    if said:
        yield f"For the next paper: {' '.join([said[0], *map(capital, said[1:])])}"


def _said(measures: Measures, unit: str) -> str:
    return f"put into the job: {measures_words(measures, unit)}" if measures else "the job is right as it is"


def measures_words(measures: Measures, unit: str) -> str:
    """Measures as somebody would say them: "drop 2 15/16 in"."""
    return ", ".join(f"{_CALLED[name]} {show(mm, unit)}" for name, mm in measures.items())


def fixing_table(fixing: Fixing, unit: str) -> dict[str, Any]:
    """A fixing as the job file has it, with all that is known of the one that was bought."""
    told = {"kind": fixing.kind, "below": None if fixing.below is None else show(fixing.below, unit)}
    return told | {"rating": None if fixing.rating is None else exact_mass(fixing.rating, unit)}
