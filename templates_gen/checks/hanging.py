"""Does what is measured of the hangers fit their frames, is it all there, and will any hook show."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import islice

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import TOLERANCE, Rect, exceeds
from templates_gen.base.grid_index import Near
from templates_gen.base.units import DIVISION, show_both
from templates_gen.checks.finding import NOTE, STOP, WARN, Finding
from templates_gen.checks.fitting import on_wall
from templates_gen.checks.sentences import listed, no_drop_words, once, same_words
from templates_gen.hanging.bearings import Nail
from templates_gen.hanging.hooks import SOLD
from templates_gen.hanging.weight_classes import is_heavy
from templates_gen.job.model import Frame

LEAST_NAIL = 1.8
"""mm; a common picture nail, which lies under what bears on it by half of that.  Common practice, no source."""

HOOK_MARGIN = 6.0
"""mm that a nail point stays behind the frame's top and lower edges, so that it does not show.  Common practice, no
source."""


def _drop_beyond_frame(plan: Plan) -> Iterator[Finding]:
    unit = plan.job.unit
    for hung in plan.frames:
        name, high = hung.frame.id, hung.rect.height
        beyond = hung.frame.hanger.traits.beyond
        wrong = [drop for drop in hung.drops if not -beyond <= drop < high + beyond]
        if wrong:
            drop = max(wrong, key=abs)
            text = (
                f"Frame {name} is {show_both(high, unit)} high but its drop is {show_both(drop, unit)}. Measure again, "
                "from the top edge down to the hanger."
            )
            yield Finding(STOP, "drop-beyond-frame", (name,), text)


def _hanger_beyond_frame(plan: Plan) -> Iterator[Finding]:
    for hung in plan.frames:
        name, beyond = hung.frame.id, hung.frame.hanger.traits.beyond
        reach = hung.rect.grown(beyond + TOLERANCE)
        if not all(reach.x0 <= bearing.x <= reach.x1 for bearing in hung.bearings):
            outside = f"more than {show_both(beyond, plan.job.unit)} outside" if beyond else "outside"
            text = (
                f"The hanger of frame {name} lies {outside} the frame's sides. Measure again how far apart its "
                "parts are, or how far in from the sides."
            )
            yield Finding(STOP, "hanger-beyond-frame", (name,), text)


def _hangers_crossed(plan: Plan) -> Iterator[Finding]:
    for hung in plan.frames:
        if len(hung.bearings) == 2 and hung.bearings[0].x >= hung.bearings[1].x:
            name = hung.frame.id
            text = (
                f"The left hanger of frame {name} is not left of its right one. Measure again, the left one from the "
                "left side, the right one from the right side."
            )
            yield Finding(STOP, "hangers-crossed", (name,), text)


def _hangers_one_side(plan: Plan) -> Iterator[Finding]:
    for hung in plan.frames:
        left, right = hung.bearings[0].x, hung.bearings[-1].x
        if left < right and not left - TOLERANCE <= hung.rect.cx <= right + TOLERANCE:
            name, side = hung.frame.id, "left" if right < hung.rect.cx else "right"
            text = (
                f"Both hangers of frame {name} are {side} of its middle, so it would lift off the farther one and hang "
                "crooked (weight assumed at its centre). Measure again, the left one from the left side, the right one "
                "from the right side; or fix one on each side of the middle."
            )
            yield Finding(WARN, "hangers-one-side", (name,), text, "statics")


def _hook_would_show(plan: Plan) -> Iterator[Finding]:
    shows = {
        nail.name: (nail.frame, words)
        for hung in plan.frames
        for nail in hung.nails
        if not hung.frame.hanger.traits.shows
        if (words := _would_show(hung, nail, plan.job.unit))
    }
    for names, text in same_words(((name, words) for name, (_, words) in shows.items()), "nail"):
        about = once(shows[name][0] for name in names)
        yield Finding(STOP, "hook-would-show", about, text, "common practice: 6 mm", names)


def _would_show(hung: Hung, nail: Nail, unit: str) -> str:
    """That a nail point is not well behind its frame, as a sentence; "" where it is, or the drop itself is wrong."""
    under, over = hung.rect.y1 - nail.y, nail.y - hung.rect.y0
    if exceeds(HOOK_MARGIN, under):
        where = f"{show_both(abs(under), unit)} {'below' if under >= 0 else 'above'} the top edge of the frame"
        return f"{where}, so the hook would show. {_hidden_by(hung.frame, hung.rect.y1 - nail.bears_y, under, unit)}"
    if exceeds(HOOK_MARGIN, over) and nail.bears_y > hung.rect.y0:
        where = f"{show_both(abs(over), unit)} {'above' if over >= 0 else 'below'} the lower edge of the frame"
        return f"{where}, so it would show. Measure the drop again, or use a fixing that sits higher."
    return ""


def _hidden_by(frame: Frame, drop: float, under: float, unit: str) -> str:
    """What hides a nail so little `under` the top edge: the wire first, then a fixing that can be had (mm)."""
    step, lack = DIVISION[unit], HOOK_MARGIN - under
    other = _lower_fixing(frame, lack, unit)
    if frame.hanger.traits.on_wire:
        least = show_both(math.ceil((drop + lack) / step - TOLERANCE) * step, unit)
        over = " over both" if frame.hanger.apart else ""
        return f"Shorten the wire until its taut drop{over} is {least} or more{f', or use {other}' if other else ''}."
    by = show_both(math.ceil(lack / step - TOLERANCE) * step, unit)
    return f"{f'Use {other}, or fix' if other else 'Fix'} its hanger {by} or more lower on the frame."


def seat_that_hides(hung: Hung) -> float | None:
    """How far (mm) below its nail the seat of a frame's hook may be, so that no nail shows at the top edge; None where
    no hook that shops sell is as short."""
    return _seat(hung.frame, max((HOOK_MARGIN - (hung.rect.y1 - nail.y) for nail in hung.nails), default=0.0))


def _seat(frame: Frame, lack: float) -> float | None:
    """Likewise for a nail that is to lie so much lower (mm)."""
    most = (frame.fixing.below or 0.0) - lack
    return most if frame.fixing.kind == "hook" and most >= SOLD[0].below else None


def _lower_fixing(frame: Frame, lack: float, unit: str) -> str:
    """A fixing that has its nail so much lower (mm): a hook that shops sell, or a bare nail where the frame is light.

    "" where there is none.
    """
    fixing, step = frame.fixing, DIVISION[unit]
    if fixing.kind != "hook":
        return ""
    if (seat := _seat(frame, lack)) is not None:
        return (
            f"a hook with its seat {show_both(math.floor(seat / step + TOLERANCE) * step, unit)} or less below its nail"
        )
    most = (fixing.below or 0.0) - lack
    return "a bare nail" if most >= -LEAST_NAIL / 2 and not is_heavy(frame.weight) else ""


def _hole_on_frame(plan: Plan) -> Iterator[Finding]:
    """The holes of plates, which may lie beyond their own frame, and so on another."""
    showing = [hung for hung in plan.frames if hung.frame.hanger.traits.shows]
    places = Near((hung.rect.grown(HOOK_MARGIN), hung) for hung in plan.frames) if showing else Near[Hung]()
    for hung in showing:
        for nail in hung.nails:
            spot = Rect(nail.x, nail.y, nail.x, nail.y)
            beside = [other for other in places.about(spot) if other is not hung and _covers(other, nail)]
            for other in beside:
                names = (hung.frame.id, other.frame.id)
                text = (
                    f"The plate of {nail.name} has its hole on frame {names[1]}, or less than "
                    f"{show_both(HOOK_MARGIN, plan.job.unit)} from it. Leave a wider gap, or put the plate elsewhere."
                )
                yield Finding(STOP, "hole-on-frame", names, text, nails=(nail.name,))


def _hole_off_wall(plan: Plan) -> Iterator[Finding]:
    """The holes of plates beyond their frames where there is no wall for the screw."""
    for nail in (nail for hung in plan.frames if hung.frame.hanger.traits.shows for nail in hung.nails):
        spot = Rect(nail.x, nail.y, nail.x, nail.y).grown(HOOK_MARGIN - TOLERANCE)
        places = ["beyond the wall"] if not on_wall(plan, spot) else []
        places += [f"on the {each.called}" for each in plan.job.wall.features if each.rect.overlaps(spot)]
        if places:
            text = (
                f"The plate of {nail.name} has its hole {places[0]}, or less than "
                f"{show_both(HOOK_MARGIN, plan.job.unit)} from there. Move the group, or put the plate elsewhere."
            )
            yield Finding(STOP, "hole-off-wall", (nail.frame,), text, nails=(nail.name,))


CLOSE_NAILS, CLOSE_HOLES, OF_TWO = 25.0, 30.0, 0.66
"""mm from one fixing of a frame to the next at least, in board or wood, and in masonry or plaster, where what is
between two drilled holes breaks out; and so much of it to another frame's, where plates or keyholes are at the edges.
Our own, no source: makers of plugs ask for more."""

BREAKING = ("masonry", "plaster")

MOST_PAIRS, BESIDE = 10, 20
"""Pairs that are named, and nails beside one that it is compared with.  Our own, no source."""


def near_fixings(plan: Plan) -> Iterator[tuple[Nail, Nail, float]]:
    """Fixings that are nearer than their holes may be (mm); of frames that overlap that is said anyway."""
    least = CLOSE_HOLES if plan.job.wall.build in BREAKING else CLOSE_NAILS
    rects = plan.rects
    nails = sorted(plan.nails, key=lambda nail: (nail.x, nail.y))
    for at, nail in enumerate(nails):
        for other in reversed(nails[max(0, at - BESIDE) : at]):
            away = math.hypot(nail.x - other.x, nail.y - other.y)
            apart = nail.frame == other.frame or not rects[nail.frame].overlaps(rects[other.frame])
            if apart and away < (least if nail.frame == other.frame else OF_TWO * least):
                yield nail, other, away


def _holes_close(plan: Plan) -> Iterator[Finding]:
    """Fixings of two frames beside each other: nothing was measured wrongly, but the wall may break between them."""
    pairs = (pair for pair in near_fixings(plan) if pair[0].frame != pair[1].frame)
    for nail, other, away in islice(pairs, MOST_PAIRS):
        text = (
            f"Nails {other.name} and {nail.name} are {show_both(away, plan.job.unit)} apart, so near that one hole "
            "may break into the other. Leave a wider gap."
        )
        yield Finding(WARN, "holes-close", (other.frame, nail.frame), text, nails=(other.name, nail.name))


def _covers(other: Hung, nail: Nail) -> bool:
    return other.rect.grown(HOOK_MARGIN - TOLERANCE).has_point(nail.x, nail.y)


def _drop_missing(plan: Plan) -> Iterator[Finding]:
    missing = [(bearing.nail_of(hung.frame.id), hung.frame.id) for hung in plan.frames for bearing in hung.unmeasured]
    if missing:
        nails, frames = (once(names) for names in zip(*missing, strict=True))
        text = f"No nail yet for {listed(frames)}: {no_drop_words(plan.job.paper.cover)}."
        yield Finding(NOTE, "drop-missing", frames, text, nails=nails)


MEASURES = (_drop_beyond_frame, _hanger_beyond_frame, _hangers_crossed)
"""Those about one frame's own measures, however it hangs."""

RULES = (*MEASURES, _hangers_one_side, _hook_would_show, _hole_on_frame, _hole_off_wall, _holes_close, _drop_missing)
