"""Distances from the centre line and the level line, and a stair's pitch line, in words: on paper and on screen."""

from __future__ import annotations

from templates_gen.planning import Plan
from templates_gen.units import show, show_both


def pitch_words(plan: Plan) -> tuple[str, ...]:
    """Where the pitch line is, and its angle with the step that it is from, if the job gives one; nothing without a
    pitch line."""
    stairs, unit = plan.job.wall.stairs, plan.job.unit
    if stairs is None or not plan.slope:
        return ()
    high, how = show_both(plan.job.group.height.at, unit), f"climbing at {stairs.pitch:.1f}°"
    step = f", {show(stairs.rise, unit)} up for {show(stairs.run, unit)} along" if stairs.run and stairs.rise else ""
    return f"pitch line {high} above the nosings", f"{how}{step}"


def above_floor(plan: Plan) -> str:
    """What heights are measured from, in words; beside a stair there is more than one floor."""
    return "above the lower floor" if plan.job.wall.stairs else "above the floor"


def sideways(mm: float, unit: str) -> str:
    """A distance from the centre line in words: `12 3/8 in left`."""
    return _directed(mm, unit, "right", "left")


def upward(mm: float, unit: str) -> str:
    """A distance from the level line in words: `3 in above`."""
    return _directed(mm, unit, "above", "below")


def _directed(mm: float, unit: str, positive: str, negative: str) -> str:
    text = show(abs(mm), unit)
    if text.partition(" ")[0] in ("0", "0.0"):
        return "on the line"
    return f"{text} {positive if mm > 0 else negative}"


def facing(side: str, noun: str = "nail") -> str:
    """What one of a frame's two nails is called, so that nobody takes it for the one on that side of the frame's back:
    "left nail (facing)", as seen by someone who faces the wall; the noun alone for a frame's only one."""
    return f"{side} {noun} (facing)" if side else noun


def nail_called(name: str, side: str) -> str:
    """A nail's name with the same said: "B left (facing)"; the name alone for a frame's only one."""
    return f"{name} (facing)" if side else name
