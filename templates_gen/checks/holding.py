"""Will it hold: hooks and their ratings, nails in wood.  Never a yes: each says who decides."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import exceeds
from templates_gen.base.units import GRAVITY, show_both, show_mass_both
from templates_gen.base.words import capital, counted
from templates_gen.checks.finding import NOTE, WARN, Finding
from templates_gen.checks.lifting import RATING_SOURCE, rating_wanted
from templates_gen.checks.sentences import WHO_DECIDES, listed, same_words
from templates_gen.hanging.fixings import (
    LEAST_DIAMETERS,
    hooks_needed,
    lasting_withdrawal,
    length_in_stud,
    outward_pull,
)
from templates_gen.hanging.studs import on_stud
from templates_gen.hanging.weight_classes import HEAVY_WORDS, is_heavy, on_bare_nails
from templates_gen.job.weights import weight_words

SHORT_SOURCE = "common practice"
NAIL_SOURCE = "NDS 2005: equation 11.2-3, nails; Appendix B, permanent load"
SCREW_SOURCE = "NDS 2018: 12.2.2, wood screws; Table 2.3.2, permanent load"

UNEVEN = 0.05
"""From how much more of the weight on one fixing than on the other it is told: common practice, no source."""


def _rating_exceeded(plan: Plan) -> Iterator[Finding]:
    said = ((hung.frame.id, _too_weak(hung, plan.job.unit)) for hung in plan.frames)
    for names, text in same_words(said):
        yield Finding(WARN, "rating-exceeded", names, text, RATING_SOURCE)


def _too_weak(hung: Hung, unit: str) -> str:
    """That the frame's fixings are rated too low, as a sentence; "" when they are not, or it is not known."""
    frame, has, rating = hung.frame, len(hung.bearings), hung.frame.fixing.rating
    if frame.weight is None or rating is None or hooks_needed(frame.weight * max(hung.shares), rating) <= 1:
        return ""
    each = " each" if has > 1 else ""
    wanted = f"rated {show_mass_both(rating_wanted(hung, unit), unit)} or more{each}"
    # a wire goes on two fixings instead of one; what bears at its own points has as many as those
    may_be_two = has == 1 and frame.hanger.traits.on_wire and hooks_needed(frame.weight, rating) == 2
    two = "two of these, or one " if may_be_two else ""
    return (
        f"a weight of {weight_words(frame, unit)} on {counted(has, frame.fixing.kind)} rated "
        f"{show_mass_both(rating, unit)}{each}{bears_most(hung, unit)}. The trade asks for 4 times the weight: "
        f"{two or ('one ' if has == 1 else f'{frame.fixing.kind}s ')}{wanted}. {WHO_DECIDES}"
    )


def uneven(hung: Hung) -> bool:
    """True when one of a frame's fixings bears so much more than another that it matters."""
    return max(hung.shares) - min(hung.shares) > UNEVEN


def bears_most(hung: Hung, unit: str) -> str:
    """What the fixing bears that bears most, as a part of a sentence; "" where they bear alike."""
    if not uneven(hung):
        return ""
    return f", one of which bears {show_mass_both((hung.frame.weight or 0.0) * max(hung.shares), unit)} of it"


def _rating_unknown(plan: Plan) -> Iterator[Finding]:
    """One for all heavy frames; the screws of a cleat have no rating of their own, and bare nails a finding."""
    names = tuple(
        hung.frame.id
        for hung in plan.frames
        if is_heavy(hung.frame.weight) and not hung.frame.hanger.traits.rail
        if hung.frame.fixing.rating is None and not on_bare_nails(hung.frame)
    )
    if names:
        text = (
            f"{capital(listed(names))}: {HEAVY_WORDS}, and no rating of the fixings is given. The trade uses fixings "
            "that the maker rates for 4 times their share of the weight: choose such, and give it as fixing.rating. "
            f"{WHO_DECIDES}"
        )
        yield Finding(NOTE, "rating-unknown", names, text, RATING_SOURCE)


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
            by_source.setdefault(source, []).append((hung.frame.id, f"{words}. Use a longer one."))
    for source, said in by_source.items():
        for names, text in same_words(said):
            yield Finding(WARN, "nail-short", names, text, source)


def _why_short(hung: Hung, in_wood: float, unit: str) -> tuple[str, str]:
    """Too little for a load from the side, or for what a deep frame pulls with, and who says so; "" for neither."""
    frame, fixing = hung.frame, hung.frame.fixing
    least = LEAST_DIAMETERS * fixing.diameter
    if exceeds(least, in_wood):
        return f"6 of its diameters, {show_both(least, unit)}, are commonly the least", SHORT_SOURCE
    if frame.weight is None or frame.depth is None:
        return "", ""
    load = frame.weight * GRAVITY * max(hung.shares) / fixing.nails
    pull = outward_pull(load, frame.depth, frame.height - max(hung.drops, default=frame.height))
    allowed = lasting_withdrawal(fixing, in_wood)
    if pull <= allowed:
        return "", ""
    pulls, bears = (f"{force:.1f} N ({show_mass_both(force / GRAVITY, unit)})" for force in (pull, allowed))
    leaning = f"the frame leans out and pulls at it with {'est. ' if frame.estimated else ''}{pulls}"
    allows = f"the US timber code (NDS) allows a permanent pull of {bears} in the lightest usual stud wood"
    return f"{leaning}, and {allows}", SCREW_SOURCE if fixing.kind == "screw" else NAIL_SOURCE


RULES = (_rating_exceeded, _nail_short, _rating_unknown)
