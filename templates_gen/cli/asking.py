"""The interview of `start` at a terminal: what is asked, what is shown meanwhile, and what is kept of it."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import click

from templates_gen.base.errors import InputError, OutputError, TemplatesError
from templates_gen.base.output import check_folder, check_place
from templates_gen.base.words import counted
from templates_gen.cli.showing import INDENT, no_colour, show_checked, show_finding, show_findings, wrapped

if TYPE_CHECKING:
    from templates_gen.arranging.plan import Plan
    from templates_gen.checks import Finding
    from templates_gen.cli.interview.question import Question
    from templates_gen.cli.interview.session import Interview

HELLO = (
    "One question at a time. Press Enter to skip an optional question, ? for help, < to go back, Ctrl-C to leave."
    " The job file is written at the end."
)

KEPT = "Your answers are kept: the same command goes on where you stopped."

WIDE = 80
"""Letters to a line of a terminal: common practice, no source."""

BELOW = 4
"""Lines of a window that the last question takes under what was found.  Our own design, no source."""


@contextmanager
def asked(job: Path | None, force: bool) -> Iterator[Interview]:
    """Every question asked and answered.  At a terminal the answers are kept until the job is written, and an
    interview that was left is gone on with."""
    from templates_gen.cli.interview.kept import forget, keep
    from templates_gen.cli.interview.session import begin

    if job is not None:
        check_place(job, force)
    check_folder(Path() if job is None else job.parent)
    place = _kept_in()
    click.echo(wrapped(HELLO), err=True)
    state = _left(place, job) or begin("" if job is None else str(job))
    before, shown, doubted = state, [""], ""
    told: tuple[Finding, ...] = ()
    kept = False
    try:
        while (question := state.question) is not None:
            if question.key != "file":  # before that, all is told once more
                told = _show_new(state, told) if state is not before else told
            if question.begins:
                shown = _show_wall(state, shown)
            before = state
            state, doubted = _next(state, question, force, doubted)
            doubted = doubted if state is before else ""
            if place and state is not before:
                kept = keep(state, place)
        yield state
    except (KeyboardInterrupt, click.Abort, OutputError):  # the last: the job cannot be written
        if kept and state.answers:
            click.echo(f"\n{KEPT}", err=True)
        raise
    if place:
        forget(state, place)


def _kept_in() -> Path | None:
    """The folder for answers; None where nobody types them, or there is no home folder."""
    from templates_gen.cli.given import kept_printers

    if not sys.stdin.isatty():
        return None
    try:
        return kept_printers().parent
    except OutputError:
        return None


def _left(place: Path | None, job: Path | None) -> Interview | None:
    """The interview that was left, if the user goes on with it."""
    from templates_gen.cli.interview.kept import left

    state = left(place, "" if job is None else str(job)) if place else None
    if state is None:
        return None
    title = state.tables["job"].get("title", "")
    ask = f"Go on where you stopped ({counted(len(state.answers), 'answer')}{f', {title}' if title else ''})?"
    return state if click.confirm(ask, default=True, err=True) else None


def _next(state: Interview, question: Question, force: bool, doubted: str) -> tuple[Interview, str]:
    """The interview after one line was typed: one answer further, one back, or where it was; and an answer that is
    doubted, and taken when it is typed once more."""
    from templates_gen.cli.interview.doubting import doubt_words, doubts_at
    from templates_gen.cli.interview.session import BACK, answered, confirmed, taken_back

    typed = _typed(state.offered or question).strip()
    if typed == "?":
        click.echo(wrapped(question.means, "  ", "  "), err=True)
        return state, doubted
    if typed in BACK:
        return taken_back(state), ""

    def check_file(path: Path) -> None:
        check_place(path, force)
        check_folder(path.parent)

    try:
        after = answered(state, typed, check_file)
    except TemplatesError as error:
        show_finding("no", _without_place(error))
        return state, ""
    doubts = doubts_at(state, after)
    if doubts and typed != doubted:
        show_finding("warn", doubt_words(doubts))
        return state, typed
    return (confirmed(after, (doubt.confirming for doubt in doubts)) if doubts else after), ""


def _without_place(error: TemplatesError) -> str:
    """What is wrong with an answer: where it will stand in the job file is no help yet."""
    parts = (error.problem, error.hint) if isinstance(error, InputError) else (str(error),)
    return "; ".join(filter(None, parts)).replace('\\"', '"')  # quotes as the file has them


def _typed(question: Question) -> str:
    """What is typed as the answer.  Raises InputError when there is nothing more to read."""
    click.echo(click.style(question.ask, bold=True) + _details(question), err=True, color=no_colour())
    click.echo("> ", nl=False, err=True)
    try:
        typed = input()
    except (EOFError, UnicodeDecodeError) as error:
        click.echo(err=True)
        if isinstance(error, EOFError) and sys.stdin.isatty():
            raise click.Abort from None
        ended = "ended" if isinstance(error, EOFError) else "are not text in the terminal's encoding"
        problem, hint = f"the answers {ended} at the question “{question.ask}”", "Nothing was written."
        raise InputError("start", problem, hint) from None
    if not sys.stdin.isatty():
        click.echo(typed, err=True)
    return typed


def _details(question: Question) -> str:
    """What may be answered, behind the question or, where that is too long, below it."""
    if not question.answers:
        return ""
    details = f"({'; '.join(question.answers)})"
    if len(question.ask) + len(details) < WIDE:
        return f" {details}"
    return "\n" + wrapped(details, "  ", "  ")


def _show_wall(state: Interview, shown: list[str]) -> list[str]:
    """Show the wall if it looks other than it did last, and in the end all that was found."""
    from templates_gen.cli.interview.session import job_so_far
    from templates_gen.cli.interview.wall_picture import LINES, PLAIN, wall_picture
    from templates_gen.cli.watching import planned

    job = job_so_far(state.tables)
    try:
        plan = planned(job)
    except InputError as error:  # places that are to be found, and there are none: < takes that back
        show_finding("stop", f"{_without_place(error)}.")
        return shown
    hung = plan.frames if state.tables.get("frame") else ()
    signs = LINES if _can_show(LINES.wall + LINES.frame + LINES.feature) else PLAIN
    picture = wall_picture(job.wall, [(item.frame.id, item.rect) for item in hung], job.unit, signs)
    if picture != shown:
        not_yet = (
            ["not arranged yet: the next questions ask how they hang"] if hung and "group" not in state.tables else []
        )
        click.echo("\n".join(["", *picture, *not_yet, ""]), err=True)
    if state.question is not None and state.question.key == "file":  # all is told but where to write it
        _show_found(plan)
    return picture


def _show_new(state: Interview, told: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """Show what is certain since the last answer; all that is certain now.  No caution comes again with every frame."""
    from templates_gen.cli.interview.certain import found_so_far

    now = found_so_far(state)
    _show_fitting([finding for finding in now if not any(_says(one, finding) for one in told)], in_file=False)
    return now


def _says(told: Finding, finding: Finding) -> bool:
    """True where that was told, if of fewer of the frames that are named before its colon; questions are told anew."""
    alike = told.text.partition(": ")[2] == finding.text.partition(": ")[2] != "" and not finding.confirm
    return told == finding or (told.rule == finding.rule and alike and set(told.about) <= set(finding.about))


def _show_found(plan: Plan) -> None:
    """What the command check says of the job: at a terminal no more than its window holds, the gravest first."""
    from templates_gen.documents.check import check_plan

    checked = check_plan(plan)
    if not sys.stderr.isatty():
        show_checked(checked, plan.job.unit, err=True)
        return
    _show_fitting(checked.findings)


def _show_fitting(findings: Sequence[Finding], in_file: bool = True) -> None:
    """As many findings as a terminal's window holds, the first of them; all where there is no window."""
    rows = shutil.get_terminal_size().lines - BELOW
    found = list(findings)
    while sys.stderr.isatty() and found and sum(_lines(finding) for finding in found) > rows:
        found.pop()
    show_findings(found, in_file=in_file)
    if more := len(findings) - len(found):
        click.echo(wrapped(f"and {more} more: templates-gen check shows them all", later=INDENT), err=True)


def _lines(finding: Finding) -> int:
    return len(wrapped(finding.sourced, INDENT, INDENT).splitlines())


def _can_show(signs: str) -> bool:
    try:
        signs.encode(sys.stderr.encoding or "utf-8")  # a stream without one takes any letter
    except UnicodeEncodeError:
        return False
    return True
