"""Where what is found changes as one measure of a small job grows: a line for each measure in each unit.

In millimetres that is everything, on other tapes mostly the doubts alone: the other rules do not know of tapes.  A
measure is tried on a ladder at first and then, between two steps of which not the same is said, figure by figure, so
that its limit is recorded to the last one.  A limit that may be the line itself below its figure is tried there, too: a
length that is just as long is either still as before, or as after.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from functools import cache
from itertools import pairwise
from zlib import crc32

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.errors import TemplatesError
from templates_gen.base.record import replace
from templates_gen.base.units import MM
from templates_gen.checks import NOTE, STOP, WARN, Finding, find
from templates_gen.checks.doubts.all_doubts import doubtful
from templates_gen.job.model import Job
from tests.recorded.fellows import MORE
from tests.recorded.listing import wrapped
from tests.recorded.measures import ALL, SWEEPS, Sweep

STEPS = 1.8
"""By what factor a measure grows on the ladder.  Our own choice."""

LINES = {
    "mm": ((20.0, 0.1), (1000.0, 0.5), (1e9, 1.0)), "cm": ((1e9, 0.05),), "in": ((1e9, 0.05),), "": ((1e9, 0.01),),
}  # fmt: skip
"""From one figure that is tried to the next, up to which figure.  Our own choice."""

OFF = {"mm": 0.03}
"""By how much figures lie off every line of a tape: what is usual goes further where no other tape could be meant."""

NUMBERS = re.compile(r"\d+(?:\.\d+)?")

LIMIT = re.compile(r"\| (\d+(?:\.\d+)?) [-+]")


def of_limits(kept: Iterable[str] = ()) -> Iterator[str]:
    """For every measure, in every unit, what is found at its least figure, and from which figures on that changes.

    Where a limit was before (in the lines `kept`), both sides of it are asked first.  It is searched for where it is
    there no more: so each limit is asked for as strictly, in a third of the time.
    """
    before = _limits(kept)
    for sweep in (*SWEEPS, *MORE):
        for unit in sweep.units:
            begin = f"{sweep.name} in {unit or 'kg'}: "
            yield from wrapped(begin, _along(sweep, unit, before.get(begin, ())))


def _limits(kept: Iterable[str]) -> dict[str, list[float]]:
    """The limits in the lines of a record, by what its line begins with."""
    whole = "\n".join(kept).replace("\n    ", " ").split("\n")
    parted = (re.match(r"(.* in (?:mm|cm|in|kg): )(.*)", line) for line in whole)
    return {found[1]: [float(each) for each in LIMIT.findall(found[2])] for found in parted if found}


def _along(sweep: Sweep, unit: str, limits: Iterable[float]) -> Iterator[str]:
    """What changes along one measure, and the sums of what is said on the ladder alone, not of the usual job."""
    likely = sorted(_figure(limit * (MM[unit] if unit else 1.0), unit) for limit in limits)
    tried: dict[int, frozenset[str]] = {}
    job = sweep.make() if not unit else replace(sweep.make(), unit=unit)
    words: list[Finding | str] = []
    rules = find if unit == "mm" or sweep.units != ALL else doubtful

    def found(figure: int) -> frozenset[str]:
        if figure not in tried:
            said = _found(sweep, job, _value(figure, unit), rules)
            tried[figure] = frozenset(map(_short, said))
            words.extend(said)
        return tried[figure]

    def on_line(value: float) -> frozenset[str]:
        return frozenset(map(_short, _found(sweep, job, value, rules)))

    ladder = sorted({_figure(mm, unit) for mm in (*sweep.ladder(STEPS), sweep.usual)})
    usual = found(_figure(sweep.usual, unit))
    always = set(words)
    list(map(found, ladder))
    told = _sums([each for each in words if each not in always])
    yield f"{_shown(ladder[0], unit)} {_changed(found(ladder[0]), usual)}"
    for low, high in pairwise(ladder):
        while found(low) != found(high):
            before, at = next(
                ((at - 1, at) for at in likely if low < at <= high and found(at - 1) == found(low) != found(at)),
                (low, high),
            )
            while at - before > 1:
                middle = (before + at) // 2
                before, at = (middle, at) if found(middle) == found(low) else (before, middle)
            yield from _at_limit(_on_line(at, unit), _shown(at, unit), found(at), found(low), on_line)
            low = at
    yield told


def _at_limit(
    line: float, shown: str, after: frozenset[str], before: frozenset[str], found: Callable[[float], frozenset[str]]
) -> Iterator[str]:
    """What changes at a figure, or on the line just below it, where it does so there already or for the line alone."""
    on_line = found(line) if f"{line:g}" != shown else after
    if on_line != before:
        yield f"{line:g} {_changed(on_line, before)}"
    if after != on_line:
        yield f"{shown} {_changed(after, on_line)}"


def _found(sweep: Sweep, job: Job, value: float, rules: Callable[[Plan], Iterable[Finding]]) -> list[Finding | str]:
    """What these rules find with a measure that is so long."""
    try:
        return list(rules(plan_wall(sweep.put(job, value))))
    except TemplatesError as error:
        return [str(error)]


def _short(found: Finding | str) -> str:
    """A finding by its rule and the fields that it doubts."""
    if isinstance(found, str):
        return "refused"
    fields = [text.rpartition(": ")[0].split(", ") for text in found.confirm]
    where = (f"{first.removeprefix('frame ')}.{rest[-1]}" if rest else first for first, *rest in fields)
    return " ".join((found.rule, *where))


def _changed(now: frozenset[str], before: frozenset[str]) -> str:
    return " ".join([*sorted(f"+{each}" for each in now - before), *sorted(f"-{each}" for each in before - now)])


def _sums(words: list[Finding | str]) -> str:
    """How many of each level, a sum of their words, and all numbers in them added up."""
    found = [each for each in words if isinstance(each, Finding)]
    levels = "/".join(str(sum(each.level == level for each in found)) for level in (STOP, WARN, NOTE))
    text = [each if isinstance(each, str) else f"{each.text} {each.meant}" for each in words]
    return f"{levels} found, their words {summed(text)}"


def summed(texts: list[str]) -> str:
    """A sum of words, and all numbers in them added up."""
    text = "\n".join(texts)
    numbers = sum(map(float, NUMBERS.findall(text)))
    return f"{crc32(NUMBERS.sub('', text).encode()):08x}, all numbers {numbers:.2f}"


@cache
def _starts(unit: str) -> tuple[tuple[int, float, float], ...]:
    """The first figure of every part of the scale, where it begins, and its line's width (in the unit)."""
    found, start, first = [], 0.0, 0
    for most, line in LINES[unit]:
        found.append((first, start, line))
        first, start = first + round((most - start) / line), most
    return tuple(found)


def _value(figure: int, unit: str) -> float:
    """The length of a figure in mm, or the weight in kg, or whatever else a measure is in."""
    return round(_on_line(figure, unit) + OFF.get(unit, 0.0), 6) * (MM[unit] if unit else 1.0)


def _on_line(figure: int, unit: str) -> float:
    """The line of the tape that a figure lies on or just above, in the unit."""
    first, start, line = next(part for part in reversed(_starts(unit)) if figure >= part[0])
    return round(start + (figure - first) * line, 6)


def _figure(value: float, unit: str) -> int:
    """The figure nearest to a value."""
    number = value / (MM[unit] if unit else 1.0)
    first, start, line = next(part for part in reversed(_starts(unit)) if number >= part[1])
    return first + round((number - start) / line)


def _shown(figure: int, unit: str) -> str:
    return f"{_value(figure, unit) / (MM[unit] if unit else 1.0):g}"
