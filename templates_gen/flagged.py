"""Which nails want thought before they are driven: the ones that the schedule marks."""

from __future__ import annotations

from collections.abc import Iterable

from templates_gen.behind.entries import entries
from templates_gen.behind.wiring import nail_zones
from templates_gen.findings.finding import STOP, WARN, Finding
from templates_gen.planning import Plan

ZONE_RULE = "cable-zone"

MARK = "!"

KEY = f"{MARK} means: think first, something was found about this nail or its frame."


def flagged_nails(plan: Plan, findings: Iterable[Finding]) -> frozenset[str]:
    """The names of the nails that lie in a zone where cables may run, or whose frame has a stop or a warn finding.

    A finding about a zone counts only for the nails in it, and not for the other nail of the same frame.
    """
    grave = [finding for finding in findings if finding.level in (STOP, WARN) and finding.rule != ZONE_RULE]
    frames = {name for finding in grave for name in finding.about}
    return frozenset(nail_zones(plan)) | {entry.name for entry in entries(plan) if entry.frame in frames}


def with_mark(text: str, name: str, flagged: frozenset[str]) -> str:
    """The text, with the mark before it when the nail of this name is one of the flagged.

    Before it, because a long name is cut at its end where it does not fit.
    """
    return f"{MARK} {text}" if name in flagged else text
