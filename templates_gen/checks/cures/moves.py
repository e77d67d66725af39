"""Cures that move the group, or a frame that was placed by hand, to the nearest place where nothing is in its way."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any

from templates_gen.arranging.kept import placed_values, regrouped
from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import TOLERANCE, Rect, same
from templates_gen.base.record import Record
from templates_gen.base.units import DIVISION, show
from templates_gen.checks.cables.wiring import entries, zones
from templates_gen.checks.cures.clear_moves import (
    Span,
    barred_by,
    barred_by_lines,
    barred_outside,
    nearest_clear,
    turned,
)
from templates_gen.checks.cures.trial import Trial
from templates_gen.checks.finding import STOP, Cure, Finding
from templates_gen.job.changes import Change
from templates_gen.job.model import Group

CURED_BY_MOVING = (
    "frame-off-wall", "wall-clearance", "frame-over-feature", "feature-clearance", "below-nosings", "near-nosings",
    "cable-zone", "frames-overlap", "frames-close",
)  # fmt: skip
"""The rules about where something is that may not be there."""

MORE = 2.0
"""So many times further than it has to, something is moved to keep clear of all that is wanted.  Our own, no source."""

WAYS = (("across", True, "right"), ("across", False, "left"), ("up", True, "up"), ("up", False, "down"))

HEIGHTS = {"above": "by"}
"""The field of a group's height that says how high, where it is not called as the height is."""


class Care(Record, frozen=True):
    """What a move keeps clear of: all that the job wants clear, and the zones where cables may run."""

    clear: bool
    zones: bool


ALL, WISHES, BARE = Care(True, True), Care(True, False), Care(False, False)


class Moved(Record, frozen=True):
    """What is moved: frames by their ids, and what stays (mm); `said` is what it is called.

    `changes` gives what to change in the job file for a move (mm).
    """

    said: str
    frames: tuple[str, ...]
    others: tuple[Rect, ...]
    start: tuple[float, float]
    changes: Callable[[float, float], tuple[Change, ...]]


def moves(trial: Trial, finding: Finding) -> Iterator[Cure]:
    """For each thing that may be moved the nearest clear place to a side, and the nearest up or down."""
    plan = trial.plan
    if finding.rule not in CURED_BY_MOVING or plan.job.group.arrangement == "around":
        return
    for moved in _movable(plan, finding, trial.group):
        found = [cure for way in WAYS if (cure := _nearest(trial, finding, moved, way))]
        for axis in ("across", "up"):
            if ways := [item for item in found if item[1] == axis]:
                yield min(ways, key=lambda item: item[0])[2]
        if found:
            return


def _movable(plan: Plan, finding: Finding, own: Mapping[str, Any]) -> Iterator[Moved]:
    """A frame that was placed by hand, if this is about it; else the group."""
    pair = finding.rule in ("frames-overlap", "frames-close")
    if plan.job.group.arrangement == "placed":
        for name in finding.about[:2] if pair or len(finding.about) == 1 else ():
            yield _placed(plan, name)
    if not pair:
        yield whole(plan, own)


def whole(plan: Plan, own: Mapping[str, Any]) -> Moved:
    """The whole group, of whose `own` table the changes are."""
    group, unit = plan.job.group, plan.job.unit

    found, level = group.arrangement == "salon", group.height.at

    def changes(across: float, up: float) -> tuple[Change, ...]:
        if across:
            moved = _centred_on(group, show(plan.centre_line + across, unit))
        else:
            moved = (Change(("group", "height", "centre") if found else height_place(group), show(level + up, unit)),)
        return (*kept, *moved)

    kept: tuple[Change, ...] = ()
    if found:  # another search would find other places
        kept, level = keeping(plan, own), plan.level_line
    names = tuple(hung.frame.id for hung in plan.frames)
    return Moved("the group", names, (), (plan.centre_line, level), changes)


def keeping(plan: Plan, own: Mapping[str, Any]) -> tuple[Change, ...]:
    """What keeps every frame where it is, for places that were found."""
    return tuple(regrouped(own, placed_values(plan, plan.rects)))


def _centred_on(group: Group, where: str) -> tuple[Change, ...]:
    """The group's middle, or that of the frame that it goes by, at a distance from the wall's left end."""
    place = ("group", "centre_on")
    if not group.anchor:
        return (Change(place, where),)
    return Change(place, None), Change((*place, "frame"), group.anchor), Change((*place, "over"), where)


def height_place(group: Group) -> tuple[str, ...]:
    """Where the job file says how high the group hangs."""
    return "group", "height", HEIGHTS.get(group.height.by, group.height.by)


def _placed(plan: Plan, name: str) -> Moved:
    group, unit = plan.job.group, plan.job.unit
    spot = dict(group.spots)[name]

    def changes(across: float, up: float) -> tuple[Change, ...]:
        at = ("group", "place", name, spot.point)
        return (Change((*at, 0), show(spot.x + across, unit)) if across else Change((*at, 1), show(spot.y + up, unit)),)

    gaps = group.gap_across, group.gap_down
    others = tuple(_grown(hung.rect, *gaps) for hung in plan.frames if hung.frame.id != name)
    return Moved(f"frame {name}", (name,), others, (spot.x, spot.y), changes)


def _grown(rect: Rect, across: float, up: float) -> Rect:
    return Rect(rect.x0 - across, rect.y0 - up, rect.x1 + across, rect.y1 + up)


def _nearest(
    trial: Trial, finding: Finding, moved: Moved, way: tuple[str, bool, str]
) -> tuple[float, str, Cure] | None:
    """How far it has to move this way, along which axis, and the cure; None where that is none.

    What is wanted clear is kept clear if that does not take it much further.
    """
    axis, onward, word = way
    unit, start = trial.plan.job.unit, moved.start[0 if axis == "across" else 1]
    far = math.inf
    found: list[float] = []
    for care in cares(finding):
        move = nearest_clear(barred(trial.plan, moved, axis, care), onward, start, DIVISION[unit])
        if move is not None and abs(move) <= far:
            far = min(far, MORE * abs(move))
            found.append(move)
    for move in reversed(found):
        across, up = (move, 0.0) if axis == "across" else (0.0, move)
        said = f"move {moved.said} {show(max(abs(move), DIVISION[unit]), unit)} {word}"
        cure = Cure(said, moved.changes(across, up))
        if trial.cures(finding, cure) and moved_so(trial, moved, cure, across, up):
            return abs(move), axis, cure
    return None


def cares(finding: Finding) -> Sequence[Care]:
    """What is kept clear of, the least first; the first is what the finding is about."""
    if finding.rule == "cable-zone":
        return (ALL,)
    return (BARE, WISHES, ALL) if finding.level == STOP else (WISHES, ALL)


def moved_so(trial: Trial, moved: Moved, cure: Cure, across: float, up: float) -> bool:
    """True when the changes move what they are to move, so far, and nothing else."""
    after = trial.after(cure.changes)
    if after is None:
        return False
    now = after[0].rects
    for hung in trial.plan.frames:
        name = hung.frame.id
        dx, dy = (across, up) if name in moved.frames else (0.0, 0.0)
        if not (same(now[name].x0, hung.rect.x0 + dx) and same(now[name].y0, hung.rect.y0 + dy)):
            return False
    return True


def barred(plan: Plan, moved: Moved, axis: str, care: Care) -> list[Span]:
    """The moves of it along an axis that something bars."""
    wall, turn = plan.job.wall, turned if axis == "up" else lambda rect: rect
    clear = wall.clear if care.clear else 0.0
    rects = [hung.rect for hung in plan.frames if hung.frame.id in moved.frames]
    features = [item.rect.grown(item.clear if care.clear else 0.0) for item in wall.features]
    spans = barred_by(map(turn, rects), [turn(rect) for rect in (*features, *moved.others)])
    spans += barred_outside(map(turn, rects), turn(wall.rect.grown(-clear)))
    spans += barred_by_lines((turn(rect.grown(clear)) for rect in rects), _edges(wall.outline, axis))
    if axis == "up" and wall.stairs:
        above = wall.stairs.clear if care.clear else 0.0
        spans += [(-math.inf, above - wall.least_above_ground(rect)) for rect in rects]
    return spans + _in_zones(plan, moved.frames, turn) if care.zones else spans


def _edges(outline: Sequence[tuple[float, float]], axis: str) -> list[tuple[float, float, float, float]]:
    points = [(x, y) if axis == "across" else (y, x) for x, y in outline]
    return [(*one, *two) for one, two in zip(points, points[1:] + points[:1], strict=True)] if points else []


def _in_zones(plan: Plan, frames: Sequence[str], turn: Callable[[Rect], Rect]) -> list[Span]:
    """The moves after which a nail is where cables may run; a nail on a zone's edge is in it."""
    bands = [turn(zone.rect) for zone in zones(plan.job.wall)]
    nails = [Rect(nail.x, nail.low, nail.x, nail.high) for nail in entries(plan) if nail.frame in frames]
    # a line has a little width, so that it can share area
    return barred_by((turn(nail.grown(2 * TOLERANCE)) for nail in nails), bands)
