"""What was found and what to do about it, in plain words: for the terminal, the patch pages, and a machine."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from templates_gen.correcting.holes import DIAMETERS, LEAST_APART, Cure, Cured, least_between
from templates_gen.correcting.moves import Correction, Limits, Move
from templates_gen.model import Fixing
from templates_gen.planning import Hung, Plan
from templates_gen.spreadsheet import NOTHING
from templates_gen.units import DIVISION, INCH, show_both

LEVEL_FIRST = 2.0
"""Degrees; a frame on a wire that hangs more crooked is to be levelled and measured again, because its height then
changes by more than a tape shows: φ²/2 · (D (D − s) / (4 h) − c), 0.3 mm at 2° for 434 and 0 mm.  Our own choice."""

TOOTH = 3.0
"""mm from one tooth of a sawtooth hanger to the next, about.  From memory; it differs by maker."""

CAUTIONS = (
    "Before a frame comes down: two people for one that is large, heavy or glazed, and nobody under it. On a ladder: "
    "not on the top steps, three points of contact; someone takes the frame from you, so that you never climb with it.",
    "A new hole is a new hole: cables and pipes may run behind it. Look with a detector, and where in doubt ask a "
    "licensed electrician or plumber. What a hook is rated for is its maker's to say.",
)

AS_PLANNED = "as planned"

SEEN_SOURCE = (
    'A tilt of 0.6° is recognised on average ("Recognition of stimulus orientation", Vision Research 30(10), 1990); '
    "between edges apart, that is gap × tan 0.6°: a working threshold, no measured value; never less than a tape shows"
)


def found_words(correction: Correction, unit: str) -> str:
    """How the frame was found, against its place on the plan."""
    pose = correction.pose
    said = [*_shifted(pose.up, "high", "low", unit), *_shifted(pose.right, "far right", "far left", unit)]
    rise = pose.hung.rect.width * math.sin(pose.turn)
    if abs(rise) >= DIVISION[unit] / 2:
        side = "right" if rise > 0 else "left"
        said.append(f"{side} end {show_both(abs(rise), unit)} higher ({abs(math.degrees(pose.turn)):.1f}°)")
    return "; ".join(said) or AS_PLANNED


def _shifted(mm: float | None, positive: str, negative: str, unit: str) -> Iterator[str]:
    if mm is not None and abs(mm) >= DIVISION[unit] / 2:
        yield f"{show_both(abs(mm), unit)} too {positive if mm > 0 else negative}"


def up_words(move: Move, unit: str) -> str:
    """How far the hole moves up or down."""
    return _way(move.up, "up", "down", unit)


def aside_words(move: Move, unit: str) -> str:
    """How far the hole moves to the side, seen by someone who faces the wall."""
    return _way(move.right, "right", "left", unit)


def _way(mm: float, positive: str, negative: str, unit: str) -> str:
    if abs(mm) < DIVISION[unit] / 2:
        return NOTHING
    return f"{positive if mm > 0 else negative} {show_both(abs(mm), unit)}"


def what_to_do(cured: Cured, unit: str) -> Iterator[str]:
    """Sentences: what is done by hand, what is left alone, and what to do where holes are too near."""
    correction = cured.correction
    yield from _by_hand(correction, unit)
    if cured.apart is not None:
        kinds = f"{correction.hung.frame.fixing.kind}s"
        hooks = f"two {kinds} instead of one" if len(correction.hung.bearings) == 1 else f"its {kinds}"
        yield (
            f"So that the new holes keep clear of the old: hang the wire on {hooks}, {show_both(cured.apart, unit)} "
            "apart. What the wire then rises less is in the moves."
        )
    pairs = list(zip(correction.moves, cured.cures, strict=True))
    for way in dict.fromkeys(cure.way for cure in cured.cures if cure.way):
        nails = [(move, cure) for move, cure in pairs if cure.way == way]
        yield _cure_words(way, nails, len(nails) == len(pairs), correction.hung.frame.fixing, unit)
    if correction.left_alone and found_words(correction, unit) != AS_PLANNED:
        yield "Leave it: too little for most people to see."
    yield from _doubts(correction, unit)


def _by_hand(correction: Correction, unit: str) -> Iterator[str]:
    high = "right" if correction.pose.turn > 0 else "left"
    enough = "" if correction.moves else " That is enough."
    if correction.by_hand == "slide":
        kind = correction.hung.frame.fixing.kind
        hook = kind if len(correction.hung.bearings) == 1 else f"{kind}s"
        if abs(correction.pose.turn) > correction.limits.turn:
            yield f"Slide the wire on the {hook}, the {high} side down, until a level on its top edge is level.{enough}"
        else:
            yield f"Once it hangs again, slide the wire on the {hook} until a level on its top edge is level."
    elif correction.by_hand == "teeth":
        side, teeth = ("right" if correction.aside > 0 else "left"), round(abs(correction.aside) / TOOTH)
        far = show_both(abs(correction.aside), unit)
        if teeth:
            about = f"about {teeth} {'teeth' if teeth > 1 else 'tooth'}, if they are {TOOTH:g} mm apart"
            yield f"Lift it, and set it down {far} further {side} on its teeth ({about}): it then hangs level.{enough}"
        else:
            yield f"Less than a tooth off: press the {high} side down until a level on its top edge is level.{enough}"
    elif correction.by_hand == "along":
        side = "right" if correction.aside > 0 else "left"
        yield f"Slide it {show_both(abs(correction.aside), unit)} to the {side} along its rail.{enough}"


def _cure_words(way: str, pairs: list[tuple[Move, Cure]], whole: bool, fixing: Fixing, unit: str) -> str:
    """What to do for the nails (the `whole` frame, or one of a pair) whose new holes would break into the old ones."""
    near = show_both(min(move.distance for move, _ in pairs), unit)
    start = f"Too near to the old hole{'' if whole else f' of {pairs[0][0].nail}'} ({near}):"
    step = DIVISION[unit]
    at_least = math.ceil(max(cure.at_least for _, cure in pairs) / step) * step
    if way == "hook":
        than = f", this one's is {show_both(fixing.below, unit)}" if fixing.below else ""
        larger = "larger hook" if than else "picture hook"
        return f"{start} take a {larger}, with its seat {show_both(at_least, unit)} or more below its nail{than}."
    if way == "rail":
        return f"{start} screw the rail through a new hole in it, {show_both(at_least, unit)} or more to the side."
    return f"{start} fill it with a glued-in dowel or hard filler, and let that set."


def near_words(done: Iterable[Cured], unit: str) -> Iterator[str]:
    """What is the same for all holes that are too near to the old ones; nothing where there are none."""
    near = [cured for cured in done if any(cure.way for cure in cured.cures)]
    if near:
        wants = sorted({least_between(cured.hung.frame.fixing) for cured in near})
        yield (
            f"A new hole nearer than {' or '.join(show_both(mm, unit) for mm in wants)} to the old would break into it "
            f"({LEAST_APART:g} mm, or {DIAMETERS:g} times the thickness: common practice, no source)."
        )
    if any(cure.way == "hook" for cured in near for cure in cured.cures):
        yield "With another hook, it is the seat, on which the frame bears, that moves so far."
    hooks = [c.hung.frame.hanger for c in near if any(cure.way == "hook" for cure in c.cures)]
    if any(hanger.kind == "wire" for hanger in hooks):
        yield (
            "A wire may go on two hooks instead: give the job ring_separation and ring_depth, and they are worked out "
            "to both sides of the old hole."
        )


def _doubts(correction: Correction, unit: str) -> Iterator[str]:
    """What the readings cannot tell."""
    pose = correction.pose
    if correction.by_hand == "slide" and pose.right is not None and len(pose.hung.bearings) > 1:
        on = f"On two {pose.hung.frame.fixing.kind}s"
        yield f"{on} it goes to one side as it is levelled: only a left edge measured when it is level counts."
    if not correction.moves:
        return
    if correction.by_hand in ("slide", "teeth") and abs(math.degrees(pose.turn)) > LEVEL_FIRST:
        yield "It hangs so crooked that its height changes as it is levelled: level it first, then measure again."
    elif correction.by_hand == "slide" and pose.right is not None and len(pose.hung.bearings) == 1:
        doubt = abs(pose.hung.rect.height / 2 * math.sin(pose.turn))
        if doubt > correction.limits.step:
            yield f"Level it before you trust the move to the side: that brings it up to {show_both(doubt, unit)} over."
    if pose.up is None:
        yield "Its height was not measured, and is taken to be right in the middle."


def limits_words(limits: Limits, unit: str) -> str:
    """What is taken for too small to be seen."""
    return f"a tilt under {math.degrees(limits.turn):g}°, a step under {limits.step:.1f} mm" + (
        f" ({limits.step / INCH:.2f} in)" if unit == "in" else ""
    )


def hanger_words(hung: Hung) -> str:
    """What the frame hangs by."""
    frame = hung.frame
    if frame.hanger.kind == "wire":
        return f"wire on {f'two {frame.fixing.kind}s' if frame.hanger.apart else f'one {frame.fixing.kind}'}"
    return frame.hanger.kind


def together(done: Sequence[Cured], unit: str) -> Iterator[str]:
    """That all frames hang too high, or too low: then it shows only beside something level, and may stay so."""
    ups = [cured.correction.pose.up for cured in done]
    read = [up for up in ups if up is not None]
    if len(read) < 2 or len(read) < len(ups):
        return
    least = max(cured.correction.limits.step for cured in done)
    if min(read) > least or max(read) < -least:
        off, apart = min(map(abs, read)), max(read) - min(read)
        yield (
            f"All of them hang too {'high' if read[0] > 0 else 'low'}, by {show_both(off, unit)} or more; between them "
            f"it is {show_both(apart, unit)} at most. Where nothing level is near, that shows less than new holes do."
        )


def not_read(plan: Plan, done: tuple[Cured, ...]) -> list[str]:
    """The frames of which nothing was read."""
    read = {cured.hung.frame.id for cured in done}
    return [hung.frame.id for hung in plan.frames if hung.frame.id not in read]
