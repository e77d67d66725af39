"""How a command says what it has to say: findings, errors, and lines as long as the terminal is wide."""

from __future__ import annotations

import os
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

import click

from templates_gen.base.errors import TemplatesError
from templates_gen.base.words import MOST_NAMED, counted, lines_of

if TYPE_CHECKING:
    from templates_gen.arranging.plan import Plan
    from templates_gen.checks import Finding
    from templates_gen.documents.check import Checked
    from templates_gen.printer.profile import Printer
    from templates_gen.tiling.sheet import SheetPlan
    from templates_gen.tolerance.expected import Expected

STOPPED = 1
"""Exit code of a job with a stopping finding."""

COLOURS = {"stop": "red", "warn": "yellow", "note": "cyan", "no": "yellow"}

INDENT = " " * 6
"""Before what goes on below a finding's level."""

WIDEST = 100
"""Letters in a line, however wide the terminal is.  Common practice, no source."""


def show_findings(findings: Sequence[Finding], err: bool = True, in_file: bool = True) -> None:
    """Findings in plain words, wrapped to the terminal; in colour only on a terminal.

    What is asked about is confirmed in the job file, if there is one already.
    """
    from templates_gen.base.toml import field, toml

    for finding in findings:
        show_finding(finding.level, finding.sourced, err)
        for cure in finding.cures:
            if not cure.confirms:  # that is said once for all, below
                click.echo(wrapped(f"or: {cure.said}", INDENT, INDENT + "    "), err=err)
    if in_file and (sure := [value for finding in findings for value in finding.confirm]):
        click.echo(wrapped("If what is asked about is right, put under [job]:"), err=err)
        many = [f"confirmed = [{toml(sure[0])}, …]"]
        for line in field("confirmed", sure) if len(sure) <= MOST_NAMED else many:
            click.echo(f"{INDENT}{line}", err=err)  # never wrapped: a line's end within quotes is no TOML


def show_finding(level: str, text: str, err: bool = True) -> None:
    """One finding of this level, likewise."""
    words = wrapped(text, INDENT, INDENT)
    styled = click.style(level, fg=COLOURS[level], bold=True)
    click.echo(f"{styled}{words[len(level) :]}", err=err, color=no_colour())


def show_ways(plan: Plan, expected: Expected | None, printer: Printer | None, sheets: SheetPlan) -> None:
    """The other ways to have a template, a line each, and before them what is closer where it leaves frames far off."""
    from templates_gen.documents.other_ways import HEADING, MOST_FRAMES, TOO_MANY, closer_words, other_ways, way_lines

    if len(plan.frames) > MOST_FRAMES:
        click.echo(TOO_MANY, err=True)
        return
    show_closer(closer_words(plan, expected, printer))
    click.echo(HEADING, err=True)
    for line in way_lines(other_ways(plan, printer, sheets), plan.job.unit):
        click.echo(f"  {line}", err=True)


def show_closer(closer: Sequence[str], err: bool = True) -> None:
    """What brings frames closer to their places, where taped paper leaves them far off: a finding, then the ways."""
    for at, words in enumerate(closer):
        if at == 0:
            show_finding("warn", words, err)
        else:
            click.echo(wrapped(words, INDENT, INDENT + "  "), err=err)


def wrapped(text: str, first: str = "", later: str = "") -> str:
    """The text in lines for the terminal, with these before the first and the others."""
    import shutil

    return "\n".join(lines_of(text, min(WIDEST, shutil.get_terminal_size().columns), first, later))


def no_colour() -> bool | None:
    """False where the user wants no colour and no bold letters, else None: click then asks the terminal."""
    return False if os.environ.get("NO_COLOR") else None


def show_checked(checked: Checked, unit: str, err: bool = False, closer: Sequence[str] = ()) -> None:
    """Everything there is to say about a job before paper is used; `closer` is what brings frames closer."""
    from templates_gen.checks.untold import not_checked_words
    from templates_gen.documents.check import TOO_MANY
    from templates_gen.documents.options.score_words import score_words
    from templates_gen.tolerance.statement import check_words

    show_findings(checked.findings, err)
    untold = [not_checked_words(checked.unchecked)] if checked.unchecked else []
    scored = [score_words(checked.score)] if checked.score else []
    lines = check_words(checked.expected, unit) if checked.expected else ()
    for line in (*untold, *scored, *((TOO_MANY,) if checked.many else lines)):
        click.echo(wrapped(line, later=INDENT), err=err)
    show_closer(closer, err)
    levels = [*(finding.level for finding in checked.findings), *(("warn",) if closer else ())]
    counts = [counted(levels.count(level), level) for level in ("stop", "warn", "note") if level in levels]
    click.echo(f"found: {', '.join(counts)}" if counts else "nothing found", err=err)


def show_error(error: TemplatesError) -> None:
    """What is wrong in one line on stderr, and what to do below it."""
    problem, *hints = str(error).split("\n")
    click.echo(f"error: {problem}", err=True)
    for hint in hints:
        click.echo(wrapped(hint.strip(), "  ", "  "), err=True)


def as_json(data: dict[str, Any]) -> str:
    """Data as readable JSON, its keys in the order given."""
    import json

    from templates_gen.base.unseen import unseen_spelt

    return unseen_spelt(json.dumps(data, indent=1, ensure_ascii=False))  # spelt as JSON spells any character
