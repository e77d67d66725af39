"""One thing found about a plan, and its three levels."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from templates_gen.base.record import Record

STOP, WARN, NOTE = "stop", "warn", "note"
"""Keeps the template from being printed; wants a decision; is good to know."""


class Finding(Record, frozen=True):
    """One thing found: level, rule, the frames it is about, and a sentence; `source` where it rests on one.

    `nails` names the nails it is about, where it is not about all of these frames.  `confirm` is what the
    job's `confirmed` is to hold, where this is a doubt about what may be right.
    """

    level: str
    rule: str
    about: tuple[str, ...]
    text: str
    source: str = ""
    nails: tuple[str, ...] = ()
    confirm: tuple[str, ...] = ()

    @property
    def sourced(self) -> str:
        """The sentence, and after it what it rests on."""
        return f"{self.text} ({self.source})" if self.source else self.text


def stops(findings: tuple[Finding, ...]) -> bool:
    """True when one of them keeps the template from being printed."""
    return any(finding.level == STOP for finding in findings)


def findings_data(findings: Sequence[Finding]) -> list[dict[str, Any]]:
    """Findings for a machine; a doubt has "confirm", what to put into the job's `confirmed` when it is right."""
    return [
        {"level": f.level, "rule": f.rule, "about": list(f.about), "text": f.text, "source": f.source}
        | ({"confirm": list(f.confirm)} if f.confirm else {})
        for f in findings
    ]
