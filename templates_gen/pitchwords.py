"""A stair's pitch line in words, the same on paper and on screen."""

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
