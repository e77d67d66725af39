"""What a job does not tell, and what was therefore not checked: said once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.words import some
from templates_gen.checks.over import is_over, use_of
from templates_gen.checks.sentences import once


def not_checked(plan: Plan) -> tuple[str, ...]:
    """What was not checked for want of being told, each with the field of the job that would tell."""
    return tuple(_unchecked(plan))


def not_checked_words(parts: Sequence[str]) -> str:
    """The same as a sentence; "" where all is told."""
    return f"Not told in the job, so not checked: {'; '.join(parts)}." if parts else ""


def _unchecked(plan: Plan) -> Iterator[str]:
    wall = plan.job.wall
    if unweighed := [hung.frame.id for hung in plan.frames if hung.frame.weight is None]:
        which = "any frame" if len(unweighed) == len(plan.frames) else some(unweighed)
        yield f"what holds {which}, and who lifts what (weight)"
    furniture = (feature for feature in wall.features if feature.kind == "furniture" and not use_of(feature))
    if unknown := once(each.called for each in furniture if any(is_over(hung, each) for hung in plan.frames)):
        yield f"whether people sit or lie at the {', the '.join(unknown)} (use)"
    if wall.built is None:
        yield "lead and asbestos (wall.built)"
    if wall.earthquake is None:
        yield "earthquakes (wall.earthquake)"
    if wall.public is None:
        yield "what sticks out into a public path (wall.public)"
