"""The command `start`: a first job file, by questions, from a sample, or out of a template."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from templates_gen.base.file_names import quoted
from templates_gen.cli.arguments import FILE, force_option
from templates_gen.cli.completing import sample_names
from templates_gen.cli.showing import no_colour, show_checked, show_finding, show_findings, wrapped

if TYPE_CHECKING:
    from templates_gen.arranging.plan import Plan
    from templates_gen.base.errors import TemplatesError
    from templates_gen.cli.interview.question import Question
    from templates_gen.cli.interview.session import Interview

HELLO = (
    "One question at a time. Press Enter to skip an optional question, ? for help, < to go back, Ctrl-C to leave."
    " Nothing is written before the end."
)


@click.command()
@click.argument("job", type=FILE, metavar="[JOB.toml]", required=False)
@click.option(
    "--sample", "sample_name", metavar="[NAME]", is_flag=False, flag_value="", shell_complete=sample_names,
    help="Write this sample; without NAME, list the samples.",
)  # fmt: skip
@click.option("--from", "pdf", type=FILE, metavar="FILE.pdf", help="Take the job out of a template's file.")
@force_option
def start(job: Path | None, sample_name: str | None, pdf: Path | None, force: bool) -> None:
    """Make a job file: by answering questions, from a sample, or out of a
    template.

    \b
    Example:
      templates-gen start --sample fern-prints my-ferns.toml
    """
    if job == Path("-"):
        raise click.UsageError("JOB is the name of a file: a job is kept, and other files come to lie beside it")
    if sample_name is not None and pdf is not None:
        raise click.UsageError("give --sample or --from, not both")
    if sample_name is not None:
        _from_sample(sample_name, job, force)
    elif pdf is not None:
        _from_template(pdf, job, force)
    else:
        _ask(job, force)


def _from_sample(name: str, job: Path | None, force: bool) -> None:
    from templates_gen.cli.interview.taken import sample, sample_lines

    if name:
        _write(sample(name, job or Path(f"{name}.toml")), force)
        return
    lines = sample_lines()
    width = max(map(len, lines))
    for known, line in lines.items():
        click.echo(wrapped(line, f"{known:{width}}  ", " " * (width + 2)))


def _from_template(pdf: Path, job: Path | None, force: bool) -> None:
    from templates_gen.base.words import counted
    from templates_gen.cli.interview.taken_back import from_template

    files, left = from_template(pdf, job)
    _write(files, force)
    if left:
        click.echo(f"{pdf}: {counted(len(left), 'attachment')} left inside, no part of a job", err=True)


def _write(files: dict[Path, bytes], force: bool) -> None:
    """Write a job file and what lies beside it, and say what to do with it."""
    from templates_gen.base.output import write_results
    from templates_gen.base.words import some
    from templates_gen.cli.interview.taken import missing_pictures

    job, *beside = files
    there = [path for path in beside if _holds(path, files[path])]
    write_results({path: content for path, content in files.items() if path not in there}, force)
    walls = [path for path in beside if path.suffix.lower() == ".toml"]
    pictures = [path for path in beside if path.parent != job.parent]
    for path in beside:
        what = "the wall it was moved to" if path in walls else "a picture" if path in pictures else "its spreadsheet"
        click.echo(f"{path}: {what}")
    if missing := missing_pictures(job):
        click.echo(wrapped(f"missing pictures: {some(missing)}; the proof shows blanks until they are there"))
    moved = "".join(f" --wall {quoted(path)}" for path in walls)
    click.echo(f"{job}: a job; next  templates-gen check {quoted(job)}{moved}")


def _holds(path: Path, content: bytes) -> bool:
    """True for a file that is there already, byte for byte, such as a spreadsheet beside the job."""
    try:
        return path.is_file() and path.read_bytes() == content
    except OSError:
        return False


def _ask(job: Path | None, force: bool) -> None:
    """Ask for a job, question by question, and write it at the end."""
    from templates_gen.base.output import check_place
    from templates_gen.cli.interview.job_text import job_text
    from templates_gen.cli.interview.session import begin

    if job is not None:
        check_place(job, force)
    state, shown, doubted = begin("" if job is None else str(job)), [""], ""
    click.echo(wrapped(HELLO), err=True)
    while (question := state.question) is not None:
        if question.begins:
            shown = _show_wall(state, shown)
        before = state
        state, doubted = _next(state, question, force, doubted)
        doubted = doubted if state is before else ""
    _write({Path(state.tables["file"]): job_text(state.tables).encode()}, force)


def _next(state: Interview, question: Question, force: bool, doubted: str) -> tuple[Interview, str]:
    """The interview after one line was typed: one answer further, one back, or where it was; and an answer that is
    doubted, and taken when it is typed once more."""
    from templates_gen.base.errors import TemplatesError
    from templates_gen.base.output import check_place
    from templates_gen.cli.interview.doubting import doubt_words, doubts_at
    from templates_gen.cli.interview.session import BACK, answered, confirmed, taken_back

    typed = _typed(question).strip()
    if typed == "?":
        click.echo(wrapped(question.means, "  ", "  "), err=True)
        return state, doubted
    if typed in BACK:
        return taken_back(state), ""
    try:
        after = answered(state, typed, lambda path: check_place(path, force))
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
    from templates_gen.base.errors import InputError

    parts = (error.problem, error.hint) if isinstance(error, InputError) else (str(error),)
    return "; ".join(filter(None, parts))


def _typed(question: Question) -> str:
    """What is typed as the answer.  Raises InputError when there is nothing more to read."""
    from templates_gen.base.errors import InputError

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
    default = question.default or question.open
    parts = [", ".join(question.choices), f"such as {question.example}" if question.example else ""]
    parts = [part for part in (*parts, f"Enter: {default}" if default else "") if part]
    if not parts:
        return ""
    details = f"({'; '.join(parts)})"
    if len(question.ask) + len(details) < 80:
        return f" {details}"
    return "\n" + wrapped(details, "  ", "  ")


def _show_wall(state: Interview, shown: list[str]) -> list[str]:
    """Show the wall if it looks other than it did last, and what there is to say: of a frame, and at the end of all."""
    from templates_gen.arranging.plan import plan_wall
    from templates_gen.checks.hanging import MEASURES
    from templates_gen.cli.interview.session import job_so_far
    from templates_gen.cli.interview.wall_picture import LINES, PLAIN, wall_picture

    job = job_so_far(state.tables)
    plan = plan_wall(job)
    hung = plan.frames if state.tables.get("frame") else ()
    signs = LINES if _can_show(LINES.wall + LINES.frame + LINES.feature) else PLAIN
    picture = wall_picture(job.wall, [(item.frame.id, item.rect) for item in hung], job.unit, signs)
    if picture != shown:
        not_yet = (
            ["not arranged yet: the next questions ask how they hang"] if hung and "group" not in state.tables else []
        )
        click.echo("\n".join(["", *picture, *not_yet, ""]), err=True)
    if state.question is not None and state.question.key == "more":
        show_findings([finding for rule in MEASURES for finding in rule(plan)])
    if state.tables.get("paper"):  # all is told but where to write it
        _show_found(plan)
    return picture


def _can_show(signs: str) -> bool:
    try:
        signs.encode(sys.stderr.encoding or "utf-8")  # a stream without one takes any letter
    except UnicodeEncodeError:
        return False
    return True


def _show_found(plan: Plan) -> None:
    """What the command check says of the job."""
    from templates_gen.documents.check import check_plan

    show_checked(check_plan(plan), plan.job.unit, err=True)
