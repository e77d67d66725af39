"""A stair's pitch line in words, the same on paper and on screen."""

from __future__ import annotations

from templates_gen.planning import Plan
from templates_gen.units import show, show_both


def pitch_words(plan: Plan) -> tuple[str, ...]:
    """The pitch line's name with its height above the nosings, its angle and the step; then shorter ones."""
    stairs, unit = plan.job.wall.stairs, plan.job.unit
    if stairs is None or not plan.slope:
        return ()
    high, angle = show_both(plan.job.group.height.at, unit), f"{stairs.pitch:.1f}°"
    step = f" ({show(stairs.rise, unit)} up for {show(stairs.run, unit)} along)" if stairs.run and stairs.rise else ""
    return (
        f"pitch line {angle}{step}, {high} above the nosings", f"pitch line {angle}, {high} above the nosings",
        f"pitch line {angle}", "pitch line",
    )  # fmt: skip
