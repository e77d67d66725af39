"""A frame changed as an advice says, and what `check` would find about it then."""

from __future__ import annotations

from collections.abc import Iterable

from templates_gen.arranging.plan import Plan, hung_at
from templates_gen.base.errors import InputError
from templates_gen.base.record import Record, replace
from templates_gen.checks import NOTE, Finding, find, find_about
from templates_gen.hanging.studs import on_stud
from templates_gen.job.model import Frame


def changed_plan(plan: Plan, frame: Frame) -> Plan:
    """The plan with another frame of the same id and size in its place.  Raises InputError for an impossible wire."""
    frames = tuple(frame if own.id == frame.id else own for own in plan.job.frames)
    hung = tuple(hung_at(frame, own.rect) if own.frame.id == frame.id else own for own in plan.frames)
    return replace(plan, job=replace(plan.job, frames=frames), frames=hung)


class Checked(Record, frozen=True):
    """A plan with what is found about it, which is looked for once for all its frames."""

    plan: Plan
    found: tuple[Finding, ...]


def checked(plan: Plan) -> Checked:
    """The plan and what `check` finds about it."""
    return Checked(plan, find(plan))


def passes(now: Checked, frame: Frame) -> bool:
    """True when a frame so changed has no stop and no warn that it had not before, and no nail leaves its stud."""
    try:
        after = changed_plan(now.plan, frame)
    except InputError:
        return False
    if not _in_studs(after, frame.id) >= _in_studs(now.plan, frame.id):
        return False
    new = _about(find_about(after, frame.id), frame.id) - _about(now.found, frame.id)
    # one doubt of a field hides another, and less is looked at above than in what was found first
    return not new or new <= _about(find_about(now.plan, frame.id), frame.id)


def _about(all_found: Iterable[Finding], name: str) -> set[tuple[str, str]]:
    """The stops and warns about a frame, by level and rule."""
    return {(found.level, found.rule) for found in all_found if name in found.about and found.level != NOTE}


def _in_studs(plan: Plan, name: str) -> set[str]:
    """The names of a frame's nails that are known to be in a stud."""
    return {nail.name for nail in plan.nails if nail.frame == name and on_stud(nail.x, plan.job.wall)}
