"""What was found and what to do about it, in plain words: for the terminal, the patch pages, and a machine."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from templates_gen.arranging.plan import Hung
from templates_gen.base.csv_cells import NOTHING
from templates_gen.base.units import DIVISION, show_both
from templates_gen.checks.sentences import by_how_much
from templates_gen.documents.correcting.afterwards import afterwards_words
from templates_gen.documents.correcting.holes import DIAMETERS, LEAST_APART, Cure, Cured, from_old_hole, least_between
from templates_gen.documents.correcting.levelling import LEVEL_FIRST, tilted_words
from templates_gen.documents.correcting.moves import Correction, Limits, Move
from templates_gen.documents.schedule.distances import facing
from templates_gen.hanging.hooks import Sold
from templates_gen.job.accuracy import SEEN_ANGLE, SEEN_SOURCE
from templates_gen.job.model import Frame
from templates_gen.tolerance.statement import fine

TOOTH = 3.0
"""mm from one tooth of a sawtooth hanger to the next, about.  From memory; it differs by maker."""

CAUTIONS = (
    "Before a frame comes down: two people for one that is large, heavy or glazed, and nobody under it. On a ladder: "
    "not on its top or its top step, three points of contact while climbing; someone takes the frame from you, so that "
    "you never climb with it.",
    "Cables and pipes may run behind a new hole too. Look with a detector, and where in doubt ask a "
    "licensed electrician or plumber. The maker says what a hook is rated for.",
)

AS_PLANNED = "as planned"

SEEN_WORDS = (
    f"A tilt of {SEEN_ANGLE:g}° is recognised on average ({SEEN_SOURCE}); between edges apart, that is "
    f"gap × tan {SEEN_ANGLE:g}°: a working threshold, not a measured value; never less than a tape shows"
)


def found_words(correction: Correction, unit: str) -> str:
    """How the frame was found, against its place on the plan."""
    pose = correction.pose
    said = [*_shifted(pose.up, "high", "low", unit), *_shifted(pose.right, "far right", "far left", unit)]
    said += tilted_words(pose, unit)
    return "; ".join(said) or AS_PLANNED


def _shifted(mm: float | None, positive: str, negative: str, unit: str) -> Iterator[str]:
    if mm is not None and abs(mm) >= DIVISION[unit] / 2:
        yield f"{show_both(abs(mm), unit)} too {positive if mm > 0 else negative}"


def moved_words(move: Move, cure: Cure, frame: Frame, unit: str) -> tuple[str, str]:
    """How far the new hole is from the old one, or the seat of another hook: up or down, and to the side as someone
    sees it who faces the wall."""
    move, what = from_old_hole(move, cure, frame), "seat " if cure.way == "hook" else ""
    return what + _way(move.up, "up", "down", unit), _way(move.right, "right", "left", unit)


def _way(mm: float, positive: str, negative: str, unit: str) -> str:
    if abs(mm) < DIVISION[unit] / 2:
        return NOTHING
    return f"{positive if mm > 0 else negative} {show_both(abs(mm), unit)}"


def what_to_do(cured: Cured, unit: str) -> Iterator[str]:
    """Sentences: the wire's length, what is done by hand, what is left alone, what to do where holes are near, and what
    the job should say of it for the next paper."""
    correction = cured.correction
    yield from _unsure(cured, unit)
    yield from wire_words(cured, unit)
    yield from _by_hand(cured, unit)
    if cured.apart is not None:
        kinds = kinds_of(cured)
        hooks = f"two {kinds} instead of one" if len(correction.hung.bearings) == 1 else f"its {kinds}"
        yield (
            f"So that the new holes keep clear of the old: hang the wire on {hooks}, {show_both(cured.apart, unit)} "
            "apart. The moves allow for the flatter wire."
        )
    pairs = list(zip(correction.moves, cured.cures, strict=True))
    for cure in dict.fromkeys(cure for cure in cured.cures if cure.way):
        moves = [move for move, own in pairs if own == cure]
        yield _cure_words(cure, moves, len(moves) == len(pairs), cured, unit)
    if cured.wire is not None and len(correction.hung.bearings) > 1:
        kinds = kinds_of(cured)
        yield f"Then measure its left edge again: on two {kinds} of different height it shifts sideways."
    if cured.left_alone and found_words(correction, unit) != AS_PLANNED:
        yield "Leave it: too little for most people to see."
    yield from _doubts(correction, unit)
    yield from afterwards_words(cured, unit)


def _unsure(cured: Cured, unit: str) -> Iterator[str]:
    """That a frame is off by no more than its readings may be, where something is to be done about it all the same."""
    pose = cured.correction.pose
    off = max(abs(pose.up or 0.0), abs(pose.right or 0.0))
    if pose.within is not None and off <= pose.within and (cured.wire or cured.correction.moves):
        within = show_both(pose.within, unit)
        yield f"That is no more than its readings may be off ({within}): measure it by hand before anything moves."


def kinds_of(cured: Cured) -> str:
    """What a frame's fixings are called together: "nails"."""
    return f"{cured.hung.frame.fixing.kind}s"


def wire_words(cured: Cured, unit: str) -> Iterator[str]:
    """How much shorter or longer the wire is to be, and what that does to the drop; nothing where it stays."""
    wire, frame = cured.wire, cured.hung.frame
    if wire is None:
        return
    verb = "Shorten" if wire.longer > 0 else "Lengthen"
    by = f" by {by_how_much(abs(wire.wire), unit)}, half of it at each ring," if wire.wire is not None else ""
    over = f" over its two {frame.fixing.kind}s" if frame.hanger.apart else ""
    drop = f"{by_how_much(abs(wire.longer), unit)} {'more' if wire.longer > 0 else 'less'}"
    until = "so that" if by else "until"
    yield f"{verb} the wire{by} {until} its taut drop{over} is {drop} than now.{_holes_of(cured)}"


def _holes_of(cured: Cured) -> str:
    """What becomes of the holes when the wire is made another length."""
    count, kind = len(cured.hung.bearings), cured.hung.frame.fixing.kind
    if cured.correction.moves:
        return f" The new hole{'s keep' if count > 1 else ' keeps'} clear of the old."
    return f" Its {kind}{'s stay' if count > 1 else ' stays'} where {'they are' if count > 1 else 'it is'}."


def _by_hand(cured: Cured, unit: str) -> Iterator[str]:
    correction = cured.correction
    high = "right" if correction.pose.turn > 0 else "left"
    enough = "" if correction.moves or cured.wire else " That is enough."
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


def _cure_words(cure: Cure, moves: Sequence[Move], whole: bool, cured: Cured, unit: str) -> str:
    """What to do for the nails (the `whole` frame, or one of a pair) whose new holes would break into the old ones."""
    whose = "" if whole else f" of the {side_words(moves[0], cured.hung.frame)}"
    if cure.way == "rail":
        return (
            f"Straight above or below, a new hole may break into the old one{whose}: screw the rail through a new "
            "hole in it, to the side as told."
        )
    near = show_both(min(move.distance for move in moves), unit)
    start = f"Too near to the old hole{whose} ({near}):"
    if cure.sold is not None:
        return f"{start} take {hook_words(cure.sold, unit)}."
    return f"{start} fill it with a glued-in dowel or hard filler, and let that set."


def hook_words(sold: Sold, unit: str) -> str:
    """A picture hook to buy, as shops sell it."""
    kg = f"{sold.rating:.0f} kg"
    rated = f"{sold.pounds} lb ({kg})" if unit == "in" else f"{kg} ({sold.pounds} lb)"
    return f"a {rated} picture hook, its seat about {show_both(sold.below, unit)} below its nail"


def side_words(move: Move, frame: Frame) -> str:
    """Which of a frame's nails a move is of, as someone who faces the wall sees it."""
    return facing(move.nail.removeprefix(frame.id).strip(), frame.fixing)


def near_words(done: Iterable[Cured], unit: str) -> Iterator[str]:
    """What is the same for all holes that are too near to the old ones; nothing where there are none."""
    near = [cured for cured in done if any(cure.way for cure in cured.cures)]
    if near:
        wants = sorted({least_between(cured.hung.frame.fixing) for cured in near})
        yield (
            f"A new hole nearer than {' or '.join(show_both(mm, unit) for mm in wants)} to the old may break into it "
            f"({LEAST_APART:g} mm, or {DIAMETERS:g} times the thickness: common practice, no source)."
        )
    if any(cure.way == "hook" for cured in near for cure in cured.cures):
        yield (
            "With another hook, its seat, on which the frame bears, goes that far from the old hole. How far the "
            "seats of sold hooks are below their nails differs by maker: that is from memory, measure yours."
        )


def wires_words(done: Iterable[Cured]) -> Iterator[str]:
    """What is the same for all wires that get another length where their rings are not known."""
    if any(cured.wire is not None and cured.wire.wire is None for cured in done):
        yield (
            "How much wire that takes depends on how steep it is: half as much as the drop changes at 15°, as much at "
            "30°, 1.4 times at 45° (statics: 2 sin of the angle). With ring_separation and ring_depth, which say where "
            "its rings are, it is worked out."
        )


def _doubts(correction: Correction, unit: str) -> Iterator[str]:
    """What the readings cannot tell."""
    pose = correction.pose
    if not correction.moves:
        return
    if correction.by_hand == "teeth" and abs(math.degrees(pose.turn)) > LEVEL_FIRST:
        yield "It hangs so crooked that its height changes as it is levelled: level it first, then measure again."
    elif correction.by_hand == "slide" and pose.right is not None and len(pose.hung.bearings) == 1:
        doubt = abs(pose.hung.rect.height / 2 * math.sin(pose.turn))
        if doubt > correction.limits.step:
            yield f"Level it before you trust the move to the side: that brings it up to {show_both(doubt, unit)} over."
    if pose.up is None:
        yield "Its height was not measured: it is assumed to be right in the middle."


def limits_words(limits: Limits, unit: str) -> str:
    """What is taken for too small to be seen."""
    return f"a tilt under {math.degrees(limits.turn):g}°, a step under {fine(limits.step, unit)}"


def hanger_words(hung: Hung) -> str:
    """What the frame hangs by."""
    frame = hung.frame
    if frame.hanger.traits.on_wire:
        fixing = f"two {frame.fixing.kind}s" if frame.hanger.apart else f"one {frame.fixing.kind}"
        return f"{frame.hanger.kind} on {fixing}"
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
            f"All frames hang too {'high' if read[0] > 0 else 'low'}, by {show_both(off, unit)} or more; they differ "
            f"by {show_both(apart, unit)} at most. Where nothing level is near, that shows less than new holes would."
        )
