"""One thing found about a plan, and its three levels."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from templates_gen.base.record import Record
from templates_gen.job.changes import Change

STOP, WARN, NOTE = "stop", "warn", "note"
"""Keeps the template from being printed; wants a decision; is good to know."""

CONFIRMED = ("job", "confirmed")
"""Where the job file says which odd values are right."""


class Cure(Record, frozen=True):
    """What cures a finding: in words what is done ("move the group 9 in right"), and the changes of the job file."""

    said: str
    changes: tuple[Change, ...]

    @property
    def confirms(self) -> bool:
        """True where nothing is cured: what was doubted is right."""
        return all(change.place == CONFIRMED for change in self.changes)


class Finding(Record, frozen=True):
    """One thing found: level, rule, the frames it is about, and a sentence; `source` where it rests on one.

    `nails` names the nails it is about, where it is not about all of these frames.  `confirm` is what the
    job's `confirmed` is to hold, where this is a doubt about what may be right; `meant` then is what was probably
    meant, as (field, text).  `cures` are known once they have been tried (`cures/`).
    """

    level: str
    rule: str
    about: tuple[str, ...]
    text: str
    source: str = ""
    nails: tuple[str, ...] = ()
    confirm: tuple[str, ...] = ()
    meant: tuple[tuple[str, str], ...] = ()
    cures: tuple[Cure, ...] = ()

    @property
    def sourced(self) -> str:
        """The sentence, and after it what it rests on."""
        return f"{self.text} ({self.source})" if self.source else self.text


def stops(findings: tuple[Finding, ...]) -> bool:
    """True when one of them keeps the template from being printed."""
    return any(finding.level == STOP for finding in findings)


def findings_data(findings: Sequence[Finding]) -> list[dict[str, Any]]:
    """Findings for a machine; a doubt has "confirm", what to put into the job's `confirmed` when it is right.

    "cures" are where they were looked for: what is done in words, and the changes of the job file, each a place (names,
    and numbers in lists from 0) and the value that it is to have.
    """
    return [
        {"level": f.level, "rule": f.rule, "about": list(f.about), "text": f.text, "source": f.source}
        | ({"confirm": list(f.confirm)} if f.confirm else {})
        | ({"cures": [_cure_data(cure) for cure in f.cures]} if f.cures else {})
        for f in findings
    ]


def _cure_data(cure: Cure) -> dict[str, Any]:
    changes = [
        {"place": list(change.place), "value": list(value) if isinstance(value := change.value, tuple) else value}
        for change in cure.changes
    ]
    return {"said": cure.said, "changes": changes}
