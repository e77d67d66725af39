"""The schedule as Markdown, for a page on the web or among notes.

CommonMark 0.31, with tables as in GitHub Flavored Markdown 0.29, section 4.10 (both from memory).
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.checks import Finding
from templates_gen.documents.schedule.carrying import KEY, carried, carried_words, flagged_nails, with_mark
from templates_gen.documents.schedule.table import header, lines_words, rows

_SPACE = re.compile(r"\s+")
_MEANING = re.compile(r"[\\`*_\[\]<>|~#&]")
"""Signs that Markdown would take for more than themselves; before each a backslash may stand (CommonMark 0.31,
section 2.4; from memory)."""


def as_markdown(plan: Plan, findings: Sequence[Finding] = ()) -> str:
    """The schedule as Markdown, in the job's unit: a row for every nail, what it carries, and what was found about it.

    Findings have the numbers that `check` gives them.
    """
    return "\n".join(_lines(plan, findings)) + "\n"


def _lines(plan: Plan, findings: Sequence[Finding]) -> Iterator[str]:
    flagged, about = flagged_nails(plan, findings), carried(plan, findings)
    yield from (f"# {_plain(plan.job.title)}", "")
    yield from (f"- {_plain(words)}" for words in lines_words(plan))
    columns = header(plan)
    yield from ("", _row(columns), _row(["---"] * len(columns)))
    yield from (_row(map(_plain, row)) for row in rows(plan, flagged))
    if flagged:
        yield from ("", _plain(KEY))
    if about:
        yield from ("", "## What every nail carries and goes into", "")
        for line in about:
            yield f"- **{_plain(with_mark(line.called, line.name, flagged))}**: {_plain(carried_words(line))}"
    seen = {number for line in about for number in line.see}
    if seen:
        yield from ("", "## Found about these nails", "")
    for number, finding in enumerate(findings, 1):
        if number in seen:
            yield f"- **{number} {finding.level}**: {_plain(finding.sourced)}"


def _row(cells: Iterator[str] | Sequence[str]) -> str:
    return f"| {' | '.join(cells)} |"


def _plain(text: str) -> str:
    """The text in one line, of which no sign means more than itself."""
    return _MEANING.sub(r"\\\g<0>", _SPACE.sub(" ", text))
