"""A frame changed as an advice says, and what `check` would find about it then."""

from __future__ import annotations

from templates_gen.errors import InputError
from templates_gen.findings import NOTE, find
from templates_gen.hanging import bearings, nails
from templates_gen.holding.studs import on_stud
from templates_gen.model import Frame
from templates_gen.planning import Hung, Plan
from templates_gen.record import replace


def changed_plan(plan: Plan, frame: Frame) -> Plan:
    """The plan with another frame of the same id and size in its place.  Raises InputError for an impossible wire."""
    frames = tuple(frame if own.id == frame.id else own for own in plan.job.frames)
    hung = tuple(_rehung(own, frame) if own.frame.id == frame.id else own for own in plan.frames)
    return replace(plan, job=replace(plan.job, frames=frames), frames=hung)


def _rehung(hung: Hung, frame: Frame) -> Hung:
    return Hung(frame, hung.rect, bearings(frame, hung.rect), nails(frame, hung.rect))


def passes(plan: Plan, frame: Frame) -> bool:
    """True when a frame so changed has no stop and no warn that it had not before, and no nail leaves its stud."""
    try:
        after = changed_plan(plan, frame)
    except InputError:
        return False
    return _found(after, frame.id) <= _found(plan, frame.id) and _in_studs(after, frame.id) >= _in_studs(plan, frame.id)


def _found(plan: Plan, name: str) -> set[tuple[str, str]]:
    """The stops and warns about a frame, by level and rule."""
    return {(found.level, found.rule) for found in find(plan) if name in found.about and found.level != NOTE}


def _in_studs(plan: Plan, name: str) -> set[str]:
    """The names of a frame's nails that are known to be in a stud."""
    return {nail.name for nail in plan.nails if nail.frame == name and on_stud(nail.x, plan.job.wall)}
