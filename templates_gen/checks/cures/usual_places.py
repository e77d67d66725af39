"""Cures that bring a group to where it is usual, or its frames to a stud; those around a feature nearer or further."""

from __future__ import annotations

import math
from collections.abc import Iterator

from templates_gen.base.geometry import same
from templates_gen.base.units import DIVISION, show
from templates_gen.checks.board import off_stud
from templates_gen.checks.cures.clear_moves import Span, nearest_clear
from templates_gen.checks.cures.moves import CURED_BY_MOVING, Care, Moved, barred, cares, moved_so, whole
from templates_gen.checks.cures.trial import Trial
from templates_gen.checks.finding import Cure, Finding
from templates_gen.checks.furniture import USUAL_ABOVE
from templates_gen.job.arrangements import SIDES
from templates_gen.job.changes import Change


def to_usual_room(trial: Trial, finding: Finding) -> Iterator[Cure]:
    """The group moved up or down to hang as far above the furniture under it as is usual."""
    plan = trial.plan
    under = [feature for feature in plan.job.wall.features if feature.kind == "furniture"]
    if finding.rule == "furniture-clearance" and len(under) == 1 and plan.job.group.around is None:
        (least, most), gap = USUAL_ABOVE, plan.group.y0 - under[0].rect.y1
        yield from _group_moved(trial, finding, 0.0, (least if gap < least else most) - gap)


def to_stud(trial: Trial, finding: Finding) -> Iterator[Cure]:
    """The group moved to the side, so that a heavy frame's fixing comes to the stud nearest to it."""
    plan = trial.plan
    if finding.rule == "stud-missed" and plan.job.group.around is None:
        hung = next(each for each in plan.frames if each.frame.id in finding.about)
        yield from _group_moved(trial, finding, off_stud(hung, plan) or 0.0, 0.0)


def _group_moved(trial: Trial, finding: Finding, across: float, up: float) -> Iterator[Cure]:
    """The group moved so far, to the nearest mark of a tape measure, if that cures it."""
    moved, unit = whole(trial.plan, trial.group), trial.plan.job.unit
    ways = (across, moved.start[0], "right", "left"), (up, moved.start[1], "up", "down")
    (move, start, more, less) = ways[0] if across else ways[1]
    step = DIVISION[unit]
    move = math.floor((start + move) / step + 0.5) * step - start
    if same(move, 0.0):
        return
    across, up = (move, 0.0) if across else (0.0, move)
    cure = Cure(f"move the group {show(abs(move), unit)} {more if move > 0 else less}", moved.changes(across, up))
    if trial.cures(finding, cure) and moved_so(trial, moved, cure, across, up):
        yield cure


OUTWARD = {"left": ("across", False), "right": ("across", True), "above": ("up", True), "below": ("up", False)}
"""The axis that frames around a feature go away from it along, by their side, and whether that grows then."""


def further(trial: Trial, finding: Finding) -> Iterator[Cure]:
    """Frames around a feature that something is in the way of: all of them so far from it that nothing is."""
    group = trial.plan.job.group
    if group.around is None or finding.rule not in CURED_BY_MOVING:
        return
    unit, at = trial.plan.job.unit, group.gap_around
    for onward in (True, False):
        for care in cares(finding):
            move = nearest_clear(_barred_around(trial, care), onward, at, DIVISION[unit])
            if move is None:
                continue
            away = show(at + move, unit)
            how_far = "right up to" if same(at + move, 0.0) else f"{away} from"
            said = f"hang the frames {how_far} the {group.around.name}"
            cure = Cure(said, (Change(("group", "gap_around"), away),))
            if trial.cures(finding, cure):
                yield cure
                break


def _barred_around(trial: Trial, care: Care) -> list[Span]:
    """The distances more (mm), less where negative, at which something bars a frame or the feature is reached."""
    plan = trial.plan
    sides = dict(zip(SIDES, plan.job.group.rows, strict=True))
    spans: list[Span] = [(-math.inf, -plan.job.group.gap_around)]
    for side, names in sides.items():
        axis, outward = OUTWARD[side]
        moved = Moved(side, names, (), (0.0, 0.0), lambda across, up: ())
        found = barred(plan, moved, axis, care)
        spans += [(low, high) if outward else (-high, -low) for low, high in found]
    return spans
