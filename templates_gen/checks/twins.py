"""Frames of one size may change places: whether their nails then fit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.units import INCH, show_both
from templates_gen.base.words import MOST_NAMED, capital, some
from templates_gen.checks.finding import NOTE, Finding
from templates_gen.checks.sentences import listed

SEEN = INCH / 32
"""mm; nails less apart than half of 1/16 in, the finest on a tape measure, are alike.  Common practice, no source."""


def _twins(plan: Plan) -> Iterator[Finding]:
    """One for each set of frames of one size that hang in the same way."""
    alike: dict[object, list[Hung]] = {}
    for hung in plan.frames:
        alike.setdefault(_make(hung), []).append(hung)
    for twins in alike.values():
        if len(twins) > 1:
            names = tuple(hung.frame.id for hung in twins)
            other = len({hung.frame.fixing for hung in twins}) > 1
            own = " Their fixings differ: each frame keeps its own." if other else ""
            text = f"{capital(listed(names))} are of one size{_swapped(twins, plan.job.unit)}{own}"
            yield Finding(NOTE, "twins", names, text)


def _make(hung: Hung) -> tuple[object, ...]:
    """What two frames share that can stand in for each other: size, and where across their back they hang."""
    rect = hung.rect
    across = tuple(round(bearing.x - rect.x0, 3) for bearing in hung.bearings)
    return round(rect.width, 3), round(rect.height, 3), hung.frame.hanger.kind, across


def _swapped(twins: Sequence[Hung], unit: str) -> str:
    """What becomes of the nails when two of them change places."""
    measured = [hung for hung in twins if not hung.unmeasured]
    missing = [hung.frame.id for hung in twins if hung.unmeasured]
    change, its = ("changes places", "its drop") if len(missing) == 1 else ("change places", "their drops")
    first_measure = f" Before {listed(missing)} {change}, measure {its}." if missing else ""
    if len(measured) < 2:
        return f": each nail is for its own frame.{first_measure}"
    first, *others = measured
    moves = {hung.frame.id: _lower(hung, first) for hung in others}
    moved = {name: lower for name, lower in moves.items() if max(map(abs, lower)) >= SEEN}
    same = listed([first.frame.id, *(name for name in moves if name not in moved)])
    if not moved:
        alike = f", of which {same}" if missing else " and"
        return f"{alike} hang alike: these may change places, and no nail moves.{first_measure}"
    if len(moved) >= MOST_NAMED:
        most = max(max(0.0, *nail) - min(0.0, *nail) for nail in zip(*moves.values(), strict=True))
        goes = f"Changing places, a nail moves by up to {show_both(most, unit)}"
    else:
        goes = f"In the place of {same}, {'; '.join(_going(moved, unit))}"
    return f": each nail is for its own frame. {goes}.{first_measure}"


def _lower(hung: Hung, first: Hung) -> tuple[float, ...]:
    """How much lower each nail of a frame is under its top edge than the other's (mm)."""
    return tuple(
        (hung.rect.y1 - nail.y) - (first.rect.y1 - other.y) for nail, other in zip(hung.nails, first.nails, strict=True)
    )


def _going(moved: Mapping[str, Sequence[float]], unit: str) -> Iterator[str]:
    """How far the nails of frames go, those together that go alike."""
    ways: dict[str, list[str]] = {}
    for name, lower in moved.items():
        ways.setdefault(_goes(lower, unit), []).append(name)
    for way, names in ways.items():
        one = len(names) == 1 and len(moved[names[0]]) == 1
        yield f"the nail{'' if one else 's'} of {some(names)} {'goes' if one else 'go'} {way}"


def _goes(lower: Sequence[float], unit: str) -> str:
    """How far the nail of a frame goes, or both: one after the other unless they go alike."""
    words = [f"{show_both(abs(mm), unit)} {'lower' if mm > 0 else 'higher'}" for mm in lower]
    if len(set(words)) == 1:
        return words[0]
    sides = zip(words, lower, ("left", "right"), strict=True)
    return " and ".join(f"{word} at the {side} nail (facing)" for word, mm, side in sides if abs(mm) >= SEEN)


RULES = (_twins,)
