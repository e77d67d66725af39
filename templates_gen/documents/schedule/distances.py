"""Distances from the centre line and the level line, and a stair's pitch line, in words: on paper and on screen."""

from __future__ import annotations

from collections.abc import Callable

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import TOLERANCE
from templates_gen.base.units import show, show_both
from templates_gen.job.model import Fixing, Hanger
from templates_gen.tiling.long_lines import wall_edges

BARS_AND_RINGS = frozenset("Il|!/\\-–—Oo0°.·")
"""What a stroke, a dot or a ring on a wall could be, too.  Our own choice."""

OTHER_SIDE = {"left": "right", "right": "left"}
"""What is on one side of a frame seen from the front is on the other seen from behind."""


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


def stood_on(plan: Plan, x: float) -> tuple[str, float]:
    """What one stands on under x, in a word, and how high it is (mm): what a height on a stair is measured from.

    The nosings where nothing is known of the steps.
    """
    stairs = plan.job.wall.stairs
    if stairs is None or stairs.ground_at(x) <= 0.0:
        return "floor", 0.0
    if stairs.ground_at(x) == stairs.top:
        return "landing", stairs.top
    return ("tread" if stairs.run and stairs.rise else "nosings"), stairs.tread_at(x)


def left_end(plan: Plan) -> str:
    """What distances across the wall are measured from, in words; where its left side leans, that is one corner."""
    wall = plan.job.wall
    upright = [end for edge in wall_edges(wall) if max(abs(edge[0]), abs(edge[2])) <= TOLERANCE for end in edge[1::2]]
    if not wall.outline or max(upright, default=0.0) >= plan.level_line:
        return "the wall's left end"
    return "the lowest left corner, along the floor"


def drop_words(drop: float, hung: Hung, shown: Callable[[float], str]) -> str:
    """A drop as a label says it: of a hole that stands beyond the frame, how far beyond which edge."""
    below = drop - hung.rect.height
    if drop < 0.0:
        return f"hole {shown(-drop)} above the top edge"
    return f"hole {shown(below)} below the lower edge" if below > 0.0 else f"drop {shown(drop)}"


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


def facing(side: str, fixing: Fixing) -> str:
    """What one of a frame's two nails is called: "left nail (facing)", as seen by someone who faces the wall.

    So nobody takes it for the one on that side of the frame's back.  "nail" is a frame's only one; of screws "screw".
    """
    noun = "screw" if fixing.kind == "screw" else "nail"
    return f"{side} {noun} (facing)" if side else noun


def unmistakable(name: str) -> str:
    """A frame's or nail's name as it stands alone on paper: "frame I" where it could be taken for a bar or a ring.

    Such are names that begin with a word of nothing but these letters and signs.
    """
    return f"frame {name}" if set(name.partition(" ")[0]) <= BARS_AND_RINGS else name


FACING = " (facing)"
"""What stands behind the left or the right nail of a frame: as someone sees it who faces the wall."""


def nail_called(name: str, frame: str) -> str:
    """A nail's name in a table: "B left (facing)" for one of a frame's two; the name alone for its only one."""
    return name if name == frame else name + FACING


def from_behind(side: str, hanger: Hanger) -> str:
    """What bears on that nail, as someone sees it who has turned the frame over: "right ring from behind"."""
    return f"{OTHER_SIDE[side]} {hanger.traits.part} from behind"
