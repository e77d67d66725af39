"""What a job needs besides the usual tools."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.base.words import counted, some
from templates_gen.checks.ladder import stood_on
from templates_gen.hanging.studs import on_stud
from templates_gen.hanging.weight_classes import on_bare_nails, wants_two

_FIXINGS = {"nail": "nail", "hook": "picture hook", "screw": "screw"}


def own_tools(plan: Plan) -> Iterator[str]:
    """What this job needs besides the usual: what goes into the wall, those for frames not measured yet too, and what
    drives it.
    """
    if plan.slope:
        yield "straight batten"
    kinds = Counter(hung.frame.fixing.kind for hung in plan.frames for _ in hung.bearings)
    for kind, count in kinds.items():
        yield counted(count, _FIXINGS[kind])
    yield from dict.fromkeys("screwdriver" if kind == "screw" else "hammer" for kind in kinds)
    if kinds["screw"]:
        yield "drill and bits"
    if plugs := _plugs(plan):
        yield "1 plug or anchor" if plugs == 1 else f"{plugs} plugs or anchors"
    if unrated := [frame.id for frame in plan.job.frames if on_bare_nails(frame)]:
        yield f"rated fixings in place of nails ({some(unrated)})"
    if steps := stood_on(plan):
        yield steps
    if two := [frame.id for frame in plan.job.frames if wants_two(frame)]:
        yield f"second person ({some(two)})"


def _plugs(plan: Plan) -> int:
    """How many screws may have nothing but masonry, plaster or board around them."""
    wall = plan.job.wall
    screwed = [hung for hung in plan.frames if hung.frame.fixing.kind == "screw" and wall.build != "timber"]
    return sum(not on_stud(bearing.x, wall) for hung in screwed for bearing in hung.bearings)
