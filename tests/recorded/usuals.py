"""How long is still usual: for every measure that has usual lengths, where a doubt begins, and what it asks."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from templates_gen.base.units import MM
from templates_gen.checks.doubts import usual
from templates_gen.checks.doubts.doubt import Doubt, Written, unusual
from templates_gen.checks.doubts.readings import Usual
from tests.recorded.limits import summed
from tests.recorded.listing import wrapped

STEP = 0.01
"""mm from a limit to what is just outside it.  Our own choice."""

PLACE = "wall, clear"
"""Any field would do."""

UNITS = ("mm", "cm", "in")


def usuals() -> Iterator[tuple[str, Usual]]:
    """All usual lengths, found by the names they have in their module, so that a new one is among them."""
    for name, found in vars(usual).items():
        if name.isupper():
            yield from _in(name, found)


def _in(name: str, found: Any) -> Iterator[tuple[str, Usual]]:
    if isinstance(found, Usual):
        yield name, found
    elif isinstance(found, dict):
        for key, inner in found.items():
            yield from _in(f"{name} {key}", inner)
    elif isinstance(found, tuple):
        for at, inner in enumerate(found):
            yield from _in(f"{name} {at}", inner)


def of_usuals() -> Iterator[str]:
    """For each, between which lengths nothing is said: of any unit's figures, and of a length with its unit written.

    Then what is said well outside, and in each unit a sum of all that is said at the limits, just inside and outside,
    and of their figures read in another unit.
    """
    for name, each in usuals():
        quiet = [f"{low:.2f} to {high:.2f}" for low, high in (_quiet(each, {}), _quiet(each, {PLACE: "1 mm"}))]
        sums = []
        for unit in UNITS:
            said = [_said(each, mm, Written(unit, {})) for mm in _lengths(each, unit) if mm >= 0]
            sums.append(f"{unit} {summed([text for text in said if text])}")
        yield from wrapped(f"{name}: ", (*quiet, _said(each, 3 * each.far_most, Written("mm", {})), ", ".join(sums)))


def _lengths(of: Usual, unit: str) -> Iterator[float]:
    for limit in (of.least, of.most, of.far_least, of.far_most):
        yield from (limit - STEP, limit, limit + STEP)
        yield from (limit * MM[unit] / MM[other] for other in UNITS)


def _quiet(of: Usual, texts: dict[str, str]) -> tuple[float, float]:
    """The least and the most length, off every tape's lines, of which nothing is said."""
    known, off = Written("mm", texts), 0.003

    def quiet(step: int) -> bool:
        return not _said(of, step * STEP + off, known)

    middle = round((of.least + of.most) / 2 / STEP)
    return _last(quiet, middle, -1) * STEP + off, _last(quiet, middle, round(5 * of.far_most / STEP)) * STEP + off


def _last(holds: Any, inside: int, outside: int) -> int:
    """The last step of a way for which something holds, from one inside to one outside."""
    while abs(outside - inside) > 1:
        middle = (inside + outside) // 2
        inside, outside = (middle, outside) if holds(middle) else (inside, middle)
    return inside


def _said(of: Usual, mm: float, known: Written) -> str:
    doubts: list[Doubt] = list(unusual("doubtful-size", PLACE, mm, of, known, "this"))
    return " ".join(f"{each.shown} {each.why} {each.ask}" for each in doubts)
