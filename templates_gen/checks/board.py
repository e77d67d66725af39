"""Board or stud: what a frame's fixings go into, as far as the studs were measured."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import exceeds
from templates_gen.base.units import METRE, show_both, show_mass_both
from templates_gen.base.words import capital, counted
from templates_gen.checks.finding import NOTE, WARN, Finding
from templates_gen.checks.holding import bears_most, uneven
from templates_gen.checks.sentences import WHO_DECIDES, listed, once, same_words
from templates_gen.hanging.fixings import (
    DEEPEST_ON_BOARD,
    MOST_ON_BOARD,
    MOST_PER_METRE,
    PER_BOARD_HOOK,
    board_hooks_needed,
    heaviest_metre,
    hooks_in_board,
    is_board,
    too_deep_for_board,
)
from templates_gen.hanging.studs import centres, known, nearest_stud, on_stud
from templates_gen.hanging.weight_classes import is_heavy
from templates_gen.job.weights import weight_words

BOARD_SOURCE = "common practice in Germany: hausjournal"
METRE_SOURCE = f"{BOARD_SOURCE}; DIN 4103-1, as a gypsum trade sheet quotes it: 0.4 kN a metre"
STUD_SOURCE = "common practice"

NEAR_STUD = 100.0
"""mm to a stud's centre within which a heavy frame's nails may be worth moving.  Our own design, no source."""


def _off_stud(hung: Hung, plan: Plan) -> list[float]:
    """The x of the frame's fixings that are not known to be in a stud."""
    return [bearing.x for bearing in hung.bearings if not on_stud(bearing.x, plan.job.wall)]


def _too_heavy_for_board(hung: Hung, plan: Plan) -> bool:
    """True when a frame hangs on board with fewer hooks than board wants."""
    frame, wall = hung.frame, plan.job.wall
    if frame.weight is None or not hooks_in_board(frame, wall, (bearing.x for bearing in hung.bearings)):
        return False
    if frame.hanger.traits.rail and known(wall.studs):
        return False  # that its rail misses the studs is said instead
    needed = board_hooks_needed(frame.weight, frame.depth)
    if needed is None or needed > len(hung.bearings):
        return True
    return uneven(hung) and board_hooks_needed(frame.weight * max(hung.shares)) != 1


def _board_heavy(plan: Plan) -> Iterator[Finding]:
    unit, place = plan.job.unit, "" if known(plan.job.wall.studs) else ", unless in a stud"
    heavy = [hung for hung in plan.frames if _too_heavy_for_board(hung, plan)]
    said = (
        f"a weight of {weight_words(hung.frame, unit)} on {counted(len(hung.bearings), hung.frame.fixing.kind)} in "
        f"board{place}{bears_most(hung, unit)}. {_board_advice(hung, unit)}{_where_stud(hung, plan)}"
        for hung in heavy
    )
    for names, text in same_words(zip((hung.frame.id for hung in heavy), said, strict=True)):
        yield Finding(WARN, "board-heavy", names, text, BOARD_SOURCE)


def _metre_heavy(plan: Plan) -> Iterator[Finding]:
    """Once for a wall of board: the metre of it that carries most."""
    unit = plan.job.unit
    shares = sorted(
        (bearing.x, hung.frame.weight * share, hung.frame.id)
        for hung in plan.frames
        if hung.frame.weight is not None and is_board(plan.job.wall)
        for bearing, share in zip(hung.bearings, hung.shares, strict=True)
        if not on_stud(bearing.x, plan.job.wall)
    )
    first, end, weight = heaviest_metre([share[:2] for share in shares])
    if exceeds(weight, MOST_PER_METRE):
        names = once(name for _, _, name in shares[first:end])
        text = (
            f"{capital(listed(names))}: together {show_mass_both(weight, unit)} on {show_both(METRE, unit)} of board, "
            f"not known to be in studs. Common practice there is at most {show_mass_both(MOST_PER_METRE, unit)}, "
            f"nothing deeper than {show_both(DEEPEST_ON_BOARD, unit)}. Spread them, or use studs. {WHO_DECIDES}"
        )
        yield Finding(WARN, "metre-heavy", names, text, METRE_SOURCE)


def _board_advice(hung: Hung, unit: str) -> str:
    deepest, instead = show_both(DEEPEST_ON_BOARD, unit), "use a stud, or anchors by their maker's rating."
    if too_deep_for_board(hung.frame.depth):
        return f"Usual figures for hooks in board hold for frames up to {deepest} deep; this one is deeper: {instead}"
    needed = board_hooks_needed(hung.frame.weight or 0.0)
    if needed is None:
        return f"Above {show_mass_both(MOST_ON_BOARD, unit)}, common practice hangs nothing on hooks there: {instead}"
    more = f": {needed} would be wanted. Use more hooks, a stud"
    if needed <= len(hung.bearings):
        more = ". Put its hangers equally far from its middle, use a stud"
    return (
        f"Common practice is about {show_mass_both(PER_BOARD_HOOK, unit)} on each, for frames up to {deepest} deep"
        f"{more}, or an anchor by its maker's rating."
    )


def _where_stud(hung: Hung, plan: Plan) -> str:
    """Which way the nearest stud is, as a sentence; "" when it is not known."""
    off = off_stud(hung, plan)
    return "" if off is None else f" The nearest stud's centre is {_sideways(off, hung, plan.job.unit)}."


def off_stud(hung: Hung, plan: Plan) -> float | None:
    """How far the nearest stud's centre is right of a fixing that misses it (mm, left: negative), if it is known."""
    nearest = ((x, nearest_stud(x, plan.job.wall)) for x in _off_stud(hung, plan))
    return min((centre - x for x, centre in nearest if centre is not None), key=abs, default=None)


def _sideways(off: float, hung: Hung, unit: str) -> str:
    nail = "its nail" if len(hung.bearings) == 1 else "one of its nails"
    return f"{show_both(abs(off), unit)} to the {'right' if off > 0 else 'left'} of {nail}"


def _stud_missed(plan: Plan) -> Iterator[Finding]:
    for hung in plan.frames:
        frame = hung.frame
        if not is_heavy(frame.weight) or frame.hanger.traits.rail:
            continue
        off = off_stud(hung, plan)
        if off is not None and not exceeds(abs(off), NEAR_STUD) and not _too_heavy_for_board(hung, plan):
            text = (
                f"Frame {frame.id} weighs {weight_words(frame, plan.job.unit)} and misses a stud: the nearest one's "
                f"centre is {_sideways(off, hung, plan.job.unit)}. See if the group can move that far."
            )
            yield Finding(NOTE, "stud-missed", (frame.id,), text, STUD_SOURCE)


def _studs_unmeasured(plan: Plan) -> Iterator[Finding]:
    studs = plan.job.wall.studs
    if studs is not None and not known(studs):
        first = "" if studs.first is not None else "the centre of one stud from the wall's left end (studs.first) and "
        text = (
            f"Where the studs are is not known, and is not guessed: measure {first}the centre of a second one "
            "(studs.second), which tells their spacing."
        )
        yield Finding(NOTE, "studs-unmeasured", (), text, STUD_SOURCE)


def _cleat_off_studs(plan: Plan) -> Iterator[Finding]:
    wall, unit = plan.job.wall, plan.job.unit
    for hung in plan.frames:
        off = _off_stud(hung, plan)
        if not hung.frame.hanger.traits.rail or not known(wall.studs) or not off:
            continue
        ends = sorted(bearing.x for bearing in hung.bearings)
        crossed = [show_both(x, unit) for x in centres(wall.studs, ends[0], ends[-1])]
        at = f"{'the stud' if len(crossed) == 1 else 'the studs'} at {', '.join(crossed)} from the wall's left end"
        screws = "1 screw is" if len(off) == 1 else f"{len(off)} screws are"
        text = (
            f"Cleat of frame {hung.frame.id}: {screws} not in a stud. Between its screws the rail crosses "
            f"{at if crossed else 'no stud'}: put its screws in studs, or use anchors by their maker's rating."
        )
        yield Finding(WARN, "cleat-off-studs", (hung.frame.id,), text, STUD_SOURCE)


RULES = (_board_heavy, _metre_heavy, _cleat_off_studs, _stud_missed, _studs_unmeasured)
