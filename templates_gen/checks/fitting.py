"""Does it fit: frames to each other, to the wall and to what is on it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect, exceeds, same
from templates_gen.base.units import show_both
from templates_gen.base.words import capital
from templates_gen.checks.finding import NOTE, STOP, WARN, Finding
from templates_gen.checks.sentences import by_how_much, listed, short_of

MOST_PAIRS = 50
"""So many pairs of frames that overlap, or are too close, are named.  Our own design, no source."""


def _too_close(plan: Plan) -> tuple[list[tuple[Hung, Hung]], list[tuple[Hung, Hung]]]:
    """Pairs of frames that overlap, and pairs nearer than the gap, the left one first; not many more than are named.

    A sweep along the group's longer side, so that far frames are never compared.
    """
    group = plan.job.group
    start, end = ("x0", "x1") if plan.group.width >= plan.group.height else ("y0", "y1")
    reach = max(group.gap_across, group.gap_down)
    overlapping, close, near = [], [], list[Hung]()
    for hung in sorted(plan.frames, key=lambda item: getattr(item.rect, start)):
        before = getattr(hung.rect, start) - reach
        near = [other for other in near if getattr(other.rect, end) > before]
        for other in near:
            if other.rect.overlaps(hung.rect):
                overlapping.append((other, hung))
            elif reach and not _clear(other.rect, hung.rect, group.gap_across, group.gap_down):
                close.append((other, hung))
        near.append(hung)
        if len(overlapping) > MOST_PAIRS:
            break
        if len(close) > MOST_PAIRS:
            reach = 0.0  # enough of these; the sweep goes on for what overlaps
    return _from_left(overlapping), _from_left(close)


def _from_left(pairs: list[tuple[Hung, Hung]]) -> list[tuple[Hung, Hung]]:
    ordered = [(one, two) if one.rect.x0 <= two.rect.x0 else (two, one) for one, two in pairs]
    return sorted(ordered, key=lambda pair: (pair[1].rect.x0, pair[0].rect.x0))


def _frames_too_close(plan: Plan) -> Iterator[Finding]:
    unit, group = plan.job.unit, plan.job.group
    overlapping, close = _too_close(plan)
    for one, two in overlapping[:MOST_PAIRS]:
        names = (one.frame.id, two.frame.id)
        depth = by_how_much(-one.rect.gap_to(two.rect), unit)
        yield Finding(STOP, "frames-overlap", names, f"Frames {names[0]} and {names[1]} overlap by {depth}.")
    if len(overlapping) > MOST_PAIRS:
        yield Finding(STOP, "frames-overlap", (), "More frames overlap than are named here.")
    wanted = " and ".join(show_both(each, unit) for each in dict.fromkeys((group.gap_across, group.gap_down)))
    for one, two in close[:MOST_PAIRS]:
        names = (one.frame.id, two.frame.id)
        gap = short_of(max(group.gap_across, group.gap_down), max(0.0, one.rect.gap_to(two.rect)), unit)
        text = f"Frames {names[0]} and {names[1]} are {gap} apart; the gap wanted is {wanted}."
        yield Finding(WARN, "frames-close", names, text)
    if len(close) > MOST_PAIRS:
        yield Finding(WARN, "frames-close", (), f"More frames are less than {wanted} apart than are named here.")


def _clear(one: Rect, two: Rect, across: float, down: float) -> bool:
    """True when the gap is kept to the side or below; frames that only meet at a corner keep it either way."""
    sideways, upward = one.gaps_to(two)
    return not exceeds(across, sideways) or not exceeds(down, upward)


def _frame_off_wall(plan: Plan) -> Iterator[Finding]:
    names = tuple(hung.frame.id for hung in plan.frames if not on_wall(plan, hung.rect))
    if names:
        verb = "reaches" if len(names) == 1 else "reach"
        text = f"{capital(listed(names))} {verb} beyond the wall{_how_far_off(plan)}."
        yield Finding(STOP, "frame-off-wall", names, text)


def _how_far_off(plan: Plan) -> str:
    """By how much the group reaches beyond each edge of the wall; nothing of that for a wall with an outline."""
    wall, group = plan.job.wall, plan.group
    if wall.outline:
        return ""
    beyond = {
        "at the left": -group.x0, "at the right": group.x1 - wall.width,
        "at the top": group.y1 - wall.height, "at the floor": -group.y0,
    }  # fmt: skip
    told = [f"{by_how_much(mm, plan.job.unit)} {edge}" for edge, mm in beyond.items() if exceeds(mm, 0.0)]
    return f": {', '.join(told)}"


def on_wall(plan: Plan, rect: Rect) -> bool:
    """True for a rectangle (mm) that lies on the wall whole."""
    wall = plan.job.wall
    if not wall.outline:
        return wall.rect.holds(rect)
    from templates_gen.job.outline import outline_holds  # only a wall with an outline needs a geometry library

    return outline_holds(wall.outline, rect)


def _outline_begins(plan: Plan) -> Iterator[Finding]:
    """An outline whose lowest left corner has other numbers than 0, 0: what else was measured may count from there."""
    wall, unit = plan.job.wall, plan.job.unit
    across, up = wall.begins
    if same(across, 0.0) and same(up, 0.0):
        return
    sides = (across, "to the right of it", "to the left of it"), (up, "above it", "below it")
    told = [f"{show_both(abs(mm), unit)} {more if mm > 0 else less}" for mm, more, less in sides if not same(mm, 0.0)]
    counted = wall.features or wall.stairs or wall.studs or isinstance(plan.job.group.centre_on, float)
    text = (
        f"The outline's lowest left corner is not given as [0, 0] but {' and '.join(told)}. That corner is taken for "
        "the wall's left end, on the floor: what is on the wall, distances and heights are measured from it. If "
        "that is right, write the outline from [0, 0]; if the wall begins above the floor, take its corners down to "
        "the floor."
    )
    yield Finding(WARN if counted or not same(up, 0.0) else NOTE, "outline-begins", (), text)


def _wall_clearance(plan: Plan) -> Iterator[Finding]:
    """Frames on the wall that are nearer to one of its edges than the job wants."""
    wall, unit = plan.job.wall, plan.job.unit
    for hung in plan.frames if wall.clear else ():
        if on_wall(plan, hung.rect) and exceeds(wall.clear, away := _room(plan, hung.rect)):
            name, far = hung.frame.id, short_of(wall.clear, away, unit)
            text = f"Frame {name} is {far} from an edge of the wall, nearer than {show_both(wall.clear, unit)}."
            yield Finding(WARN, "wall-clearance", (name,), text)


def _room(plan: Plan, rect: Rect) -> float:
    """How far a rectangle on the wall is from the wall's nearest edge (mm)."""
    wall = plan.job.wall
    if not wall.outline:
        return min(rect.x0, rect.y0, wall.width - rect.x1, wall.height - rect.y1)
    from templates_gen.job.outline import room_inside  # only a wall with an outline needs a geometry library

    return room_inside(wall.outline, rect)


def _frame_over_feature(plan: Plan) -> Iterator[Finding]:
    for hung, feature in product(plan.frames, plan.job.wall.features):
        name = hung.frame.id
        if hung.rect.overlaps(feature.rect):
            yield Finding(STOP, "frame-over-feature", (name,), f"Frame {name} covers the {feature.called}.")
        elif hung.rect.overlaps(feature.rect.grown(feature.clear)):
            clear = show_both(feature.clear, plan.job.unit)
            text = f"Frame {name} is nearer than {clear} to the {feature.called}."
            yield Finding(WARN, "feature-clearance", (name,), text)


def _group_off_centre(plan: Plan) -> Iterator[Finding]:
    off = plan.group.cx - plan.centre_line
    if abs(off) >= 1.0:  # mm, what a tape measure can show: common practice, no source
        where = f"{show_both(abs(off), plan.job.unit)} to the {'right' if off > 0 else 'left'}"
        why = f"Frame {anchor} is on the centre line, so" if (anchor := plan.job.group.anchor) else ""
        text = f"{why} the group's middle is {where} of its centre line.".strip()
        yield Finding(NOTE, "group-off-centre", (), text[0].upper() + text[1:])


RULES = (_frames_too_close, _frame_off_wall, _outline_begins, _wall_clearance, _frame_over_feature, _group_off_centre)
