"""Will it hold: hooks and their ratings, board, studs, nails in wood.  Never a yes: each says who decides."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from templates_gen.findings.finding import NOTE, WARN, Finding
from templates_gen.findings.words import capital, listed, same_words
from templates_gen.geometry import TOLERANCE
from templates_gen.hanging import GRAVITY
from templates_gen.holding.fixings import (
    LEAST_DIAMETERS,
    LIGHT_STUD,
    MOST_ON_BOARD,
    PER_BOARD_HOOK,
    TOE_NAILED,
    allowable_withdrawal,
    board_hooks_needed,
    hooks_needed,
    is_board,
    length_in_stud,
    outward_pull,
)
from templates_gen.holding.studs import centres, known, near_stud, on_stud
from templates_gen.holding.weighing import weight_words
from templates_gen.holding.weightclasses import HEAVY_WORDS, is_heavy
from templates_gen.planning import Hung, Plan
from templates_gen.units import show_both, show_mass_both

RATING_SOURCE = "C. A. Paschke, Hardware: Wall Hangers and Cleats, trade column, April 2013"
BOARD_SOURCE = "common practice in trade texts on plasterboard"
STUD_SOURCE = "common practice"
SHORT_SOURCE = "common practice"
NDS_SOURCE = "NDS, withdrawal of nails from side grain"

NEAR_STUD = 100.0
"""mm to a stud's centre within which a heavy frame's nails may be worth moving.  Our own design, no source."""

WHO_DECIDES = "The maker's rating and the wall decide; where in doubt, ask a professional."


def _rating_exceeded(plan: Plan) -> Iterator[Finding]:
    said = ((hung.frame.id, _too_weak(hung, plan.job.unit)) for hung in plan.frames)
    for names, text in same_words((name, words) for name, words in said if words):
        yield Finding(WARN, "rating-exceeded", names, text, RATING_SOURCE)


def _too_weak(hung: Hung, unit: str) -> str:
    """That the frame's fixings are rated too low, as a sentence; "" when they are not, or it is not known."""
    frame, has, rating = hung.frame, len(hung.bearings), hung.frame.fixing.rating
    if frame.weight is None or rating is None or hooks_needed(frame.weight, rating) <= has:
        return ""
    return (
        f"a weight of {weight_words(frame, unit)} on {_count(has, frame.fixing.kind)} rated "
        f"{show_mass_both(rating, unit)}{' each' if has > 1 else ''}. The trade counts with 4 times the weight: "
        f"{hooks_needed(frame.weight, rating)} of these, or stronger ones. {WHO_DECIDES}"
    )


def _count(number: int, what: str) -> str:
    return f"{number} {what}" if number == 1 else f"{number} {what}s"


def _rating_unknown(plan: Plan) -> Iterator[Finding]:
    """One for all heavy frames; the screws of a cleat have no rating of their own."""
    names = tuple(
        hung.frame.id
        for hung in plan.frames
        if hung.frame.weight is not None and is_heavy(hung.frame.weight) and hung.frame.hanger.kind != "cleat"
        if hung.frame.fixing.rating is None
    )
    if names:
        text = (
            f"{capital(listed(names))}: {HEAVY_WORDS}, and no rating of the fixings is given. Take fixings whose maker "
            f"rates each for 4 times its share of the weight, as the trade counts, and give that as fixing.rating. "
            f"{WHO_DECIDES}"
        )
        yield Finding(NOTE, "rating-unknown", names, text, RATING_SOURCE)


def _off_stud(hung: Hung, plan: Plan) -> list[float]:
    """The x of the frame's fixings that are not known to be in a stud."""
    return [bearing.x for bearing in hung.bearings if not on_stud(bearing.x, plan.job.wall)]


def _too_heavy_for_board(hung: Hung, plan: Plan) -> bool:
    """True when a frame hangs on board with fewer hooks than board wants; a rated screw is an anchor, by its rating."""
    frame, wall = hung.frame, plan.job.wall
    anchored = frame.fixing.kind == "screw" and frame.fixing.rating is not None
    if frame.weight is None or anchored or not is_board(wall) or not _off_stud(hung, plan):
        return False
    if frame.hanger.kind == "cleat" and known(wall.studs):
        return False  # that its rail misses the studs is said instead
    needed = board_hooks_needed(frame.weight)
    return needed is None or needed > len(hung.bearings)


def _board_heavy(plan: Plan) -> Iterator[Finding]:
    unit, place = plan.job.unit, "" if known(plan.job.wall.studs) else ", unless in a stud"
    heavy = [hung for hung in plan.frames if _too_heavy_for_board(hung, plan)]
    said = (
        f"a weight of {weight_words(hung.frame, unit)} on {_count(len(hung.bearings), hung.frame.fixing.kind)} in board"
        f"{place}. {_board_advice(hung, unit)}{_where_stud(hung, plan)}"
        for hung in heavy
    )
    for names, text in same_words(zip((hung.frame.id for hung in heavy), said, strict=True)):
        yield Finding(WARN, "board-heavy", names, text, BOARD_SOURCE)


def _board_advice(hung: Hung, unit: str) -> str:
    needed = board_hooks_needed(hung.frame.weight or 0.0)
    if needed is None:
        most = show_mass_both(MOST_ON_BOARD, unit)
        return f"Above {most}, trade texts hang nothing on hooks there: use a stud, or anchors by their maker's rating."
    return (
        f"Trade texts hang about {show_mass_both(PER_BOARD_HOOK, unit)} on each: {needed} would be wanted. Use more "
        "hooks, a stud, or an anchor by its maker's rating."
    )


def _where_stud(hung: Hung, plan: Plan) -> str:
    """Which way the nearest stud is, as a sentence; "" when it is not known."""
    off = _nearest(hung, plan)
    return "" if off is None else f" The nearest stud's centre is {_sideways(off, hung, plan.job.unit)}."


def _nearest(hung: Hung, plan: Plan) -> float | None:
    """How far the nearest stud's centre is right of a fixing that misses it (mm, left: negative), if it is known."""
    misses = [near for x in _off_stud(hung, plan) if (near := near_stud(x, plan.job.wall))]
    return min((near.off for near in misses), key=abs, default=None)


def _sideways(off: float, hung: Hung, unit: str) -> str:
    nail = "its nail" if len(hung.bearings) == 1 else "one of its nails"
    return f"{show_both(abs(off), unit)} to the {'right' if off > 0 else 'left'} of {nail}"


def _stud_missed(plan: Plan) -> Iterator[Finding]:
    for hung in plan.frames:
        frame = hung.frame
        if frame.weight is None or not is_heavy(frame.weight) or frame.hanger.kind == "cleat":
            continue
        off = _nearest(hung, plan)
        if off is not None and abs(off) <= NEAR_STUD + TOLERANCE and not _too_heavy_for_board(hung, plan):
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


def _nail_short(plan: Plan) -> Iterator[Finding]:
    by_source: dict[str, list[tuple[str, str]]] = {}
    for hung in plan.frames:
        in_wood = length_in_stud(hung.frame.fixing, plan.job.wall.board)
        if in_wood is None or not any(on_stud(bearing.x, plan.job.wall) for bearing in hung.bearings):
            continue
        why, source = _why_short(hung, in_wood, plan.job.unit)
        if why:
            nail = "screw" if hung.frame.fixing.kind == "screw" else "nail"
            words = f"only {show_both(in_wood, plan.job.unit)} of the {nail} is in the stud; {why}"
            by_source.setdefault(source, []).append((hung.frame.id, f"{words}. Take a longer one."))
    for source, said in by_source.items():
        for names, text in same_words(said):
            yield Finding(WARN, "nail-short", names, text, source)


def _why_short(hung: Hung, in_wood: float, unit: str) -> tuple[str, str]:
    """Too little for a load from the side, or for what a deep frame pulls with, and who says so; "" for neither."""
    frame, fixing = hung.frame, hung.frame.fixing
    least = LEAST_DIAMETERS * fixing.diameter
    if in_wood < least - TOLERANCE:
        return f"6 of its diameters, {show_both(least, unit)}, are commonly the least", SHORT_SOURCE
    if frame.weight is None or frame.depth is None:
        return "", ""
    load = frame.weight * GRAVITY / len(hung.bearings) / fixing.nails
    drops = [frame.height - bearing.drop for bearing in hung.bearings if bearing.drop is not None]
    pull = outward_pull(load, frame.depth, min(drops, default=0.0))
    allowed = allowable_withdrawal(LIGHT_STUD, fixing.diameter, in_wood, TOE_NAILED if fixing.angle else 1.0)
    if pull <= allowed:
        return "", ""
    pulls, bears = (f"{force:.1f} N ({show_mass_both(force / GRAVITY, unit)})" for force in (pull, allowed))
    leaning = f"the frame leans out and pulls at it with {'est. ' if frame.estimated else ''}{pulls}"
    return f"{leaning}, and the NDS allows {bears} in a spruce stud", NDS_SOURCE


def _cleat_off_studs(plan: Plan) -> Iterator[Finding]:
    wall, unit = plan.job.wall, plan.job.unit
    for hung in plan.frames:
        off = _off_stud(hung, plan)
        if hung.frame.hanger.kind != "cleat" or not known(wall.studs) or not off:
            continue
        ends = sorted(bearing.x for bearing in hung.bearings)
        crossed = [show_both(x, unit) for x in centres(wall.studs, ends[0], ends[-1])]
        at = f"{'the stud' if len(crossed) == 1 else 'the studs'} at {', '.join(crossed)} from the wall's left end"
        screws = "1 screw is" if len(off) == 1 else f"{len(off)} screws are"
        text = (
            f"Of the cleat of frame {hung.frame.id}, {screws} not in a stud. Between its screws the rail crosses "
            f"{at if crossed else 'no stud'}: put its screws in studs, or use anchors by their maker's rating."
        )
        yield Finding(WARN, "cleat-off-studs", (hung.frame.id,), text, STUD_SOURCE)


RULES: tuple[Callable[[Plan], Iterator[Finding]], ...] = (
    _rating_exceeded,
    _board_heavy,
    _nail_short,
    _cleat_off_studs,
    _rating_unknown,
    _stud_missed,
    _studs_unmeasured,
)
