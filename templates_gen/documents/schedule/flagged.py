"""Which nails want thought before they are driven: the ones that the schedule marks."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from templates_gen.arranging.plan import Plan
from templates_gen.checks.cables.entries import entries
from templates_gen.checks.cables.wiring import nail_zones
from templates_gen.checks.finding import STOP, WARN, Finding

MARK = "!"

KEY = f"{MARK} means: read what was found about this nail or its frame before you nail."


def flagged_nails(plan: Plan, findings: Iterable[Finding]) -> frozenset[str]:
    """The names of the nails that lie in a zone where cables may run, or that a stop or a warn finding is about.

    A finding about one nail of a frame counts for that nail, one about a frame for all its nails.
    """
    grave = [finding for finding in findings if finding.level in (STOP, WARN)]
    return frozenset(nail_zones(plan)) | frozenset(numbers_by_nail(plan, grave))


def numbers_by_nail(plan: Plan, findings: Iterable[Finding]) -> Mapping[str, tuple[int, ...]]:
    """The numbers, from 1, of the findings about each nail or its whole frame; a nail without any is left out."""
    nails_of: dict[str, list[str]] = {}
    for entry in entries(plan):
        nails_of.setdefault(entry.frame, []).append(entry.name)
    found: dict[str, list[int]] = {}
    for number, finding in enumerate(findings, 1):
        names = finding.nails or [name for frame in finding.about for name in nails_of.get(frame, ())]
        for name in dict.fromkeys(names):
            found.setdefault(name, []).append(number)
    return {name: tuple(numbers) for name, numbers in found.items()}


def with_mark(text: str, name: str, flagged: frozenset[str]) -> str:
    """The text, with the mark before it when the nail of this name is one of the flagged.

    Before it, because a long name is cut at its end where it does not fit.
    """
    return f"{MARK} {text}" if name in flagged else text


def has_mark(row: Iterable[str]) -> bool:
    """True for a row of a table with a cell that `with_mark` has marked."""
    return any(cell.startswith(f"{MARK} ") for cell in row)
