"""The command `template`: the main job."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from templates_gen.base.words import some
from templates_gen.cli import arguments as takes
from templates_gen.cli.asked import Asked, Places
from templates_gen.cli.completing import job_files
from templates_gen.cli.given import about, job_on, printer_named
from templates_gen.cli.next_time import only, page_for_old_paper, sheets_since, show_page
from templates_gen.cli.results import check_one, check_results
from templates_gen.cli.showing import STOPPED, show_finding, show_findings, show_ways

if TYPE_CHECKING:
    from templates_gen.arranging.plan import Plan
    from templates_gen.checks import Finding
    from templates_gen.job.model import Job


@click.command()
@click.argument("jobs", type=takes.FILE, metavar="JOB...", nargs=-1, required=True, shell_complete=job_files)
@takes.pdf_option()
@takes.wall_option
@takes.paper_option(help="a4, letter, a3, tabloid, 'roll 24 in', ...; default: the job's.")
@click.option(
    "--cover",
    type=takes.COVERS,
    help="What must be on paper: the whole group, every mark, the nails linked to each other, or only the nails.",
)
@takes.font_option
@takes.printer_option(help="Correct it for this recorded printer.")
@click.option("--one-piece", is_flag=True, help="One page, or as few as possible, for a print shop or plotter.")
@click.option("--trim", type=click.Choice(["cut", "none"]), help="Cut the sheets before taping, or tape them uncut.")
@click.option("--photo-marks", "photo", is_flag=True, help="Tags on every sheet, for 'photo taped' after taping.")
@click.option(
    "--sheets-at-most",
    "most",
    type=click.IntRange(1),
    metavar="N",
    help="Stop if more than N sheets are needed, and list alternatives.",
)
@click.option("--all-sheets", is_flag=True, help="With --wall: print every sheet, even where the old paper serves.")
@click.option("--since", type=takes.FILE, metavar="OLD.pdf", help="Print only the sheets that the paper of OLD lacks.")
@click.option("--only", metavar="3,7-9", help="Print only these sheets, for torn ones.")
@click.option("--anonymous", is_flag=True, help="Leave out client, wall name, author, and the job inside.")
@takes.report_option
@takes.force_option
@click.pass_context
def template(context: click.Context, /, jobs: tuple[Path, ...], printer: str | None, **options: Any) -> None:
    """Write the full-scale template of a job as a PDF file.

    \b
    Example:
      templates-gen template samples/fern-prints.toml --paper letter -o fern.pdf
    """
    if printer is not None and options["one_piece"]:
        raise click.UsageError("--printer is for your own printer, --one-piece for a print shop: give only one")
    asked = Asked(**options, printer=printer_named(printer))
    if len(jobs) > 1 and (asked.output is not None or asked.report is not None):
        raise click.UsageError("-o and --report take one job; several templates are written next to their job files")
    if asked.one_piece and (asked.paper or "").lower().startswith("roll"):
        raise click.UsageError("--one-piece chooses its own page size: for a roll, leave it out")
    if asked.part and (len(jobs) > 1 or (asked.since and asked.only)):
        raise click.UsageError("--since and --only take one job, and not both of them")
    context.exit(_make(jobs[0], asked) if len(jobs) == 1 else _make_each(jobs, asked))


def _make_each(jobs: tuple[Path, ...], asked: Asked) -> int:
    """Make several templates, as many at once as there are cores; the worst exit code."""
    from functools import partial
    from importlib import import_module

    from templates_gen.cli.several import each

    import_module("templates_gen.documents.making")  # once here, instead of once in every process
    codes = each(jobs, partial(_make, asked=asked))
    failed = len(codes) - codes.count(0)
    click.echo(f"{codes.count(0)} written" + (f", {failed} failed" if failed else ""), err=True)
    return max(codes)


def _make(path: Path, asked: Asked) -> int:
    """Make one template; the exit code."""
    import templates_gen as tg
    from templates_gen.checks import stops
    from templates_gen.cli.watching import planned
    from templates_gen.documents.making import on_paper

    with about(path):
        job = on_paper(job_on(path, asked.wall), asked.paper, asked.cover, asked.trim, asked.one_piece, asked.photo)
        if job.paper.kind == "one piece" and asked.printer is not None:
            problem = "found --printer, expected none: the job is for a print shop"
            raise tg.InputError("paper, print_shop", problem, "for your own printer, give the command a --paper")
        places = Places(path, asked, job)
        results = [places.output, places.first, places.note, asked.report]
        check_results(path, job, results, asked.force, [asked.wall, asked.since])
        if places.first is not None:
            check_one(places.output, "the first pages are another")
        if asked.anonymous:
            job = _without_names(job)
        plan = planned(job)
        findings = tg.find(plan)
        if stops(findings):
            from templates_gen.documents.check import found

            show_findings(found(plan, path))  # with what would cure them
            click.echo(f"error: {path}: no template: settle what is marked stop first", err=True)
            return STOPPED
        show_findings(findings)
        return _printed(path, asked, plan, findings, places)


def _printed(path: Path, asked: Asked, plan: Plan, findings: tuple[Finding, ...], places: Places) -> int:
    """Print the plan, or what old paper lacks of it; the exit code."""
    import templates_gen as tg
    from templates_gen.documents.anonymous import anonymous_printer
    from templates_gen.printer.correction import paper_doubt

    if (wall := asked.moved_to) is not None:
        page = page_for_old_paper(path, wall, plan, findings, asked.fonts, asked.anonymous)
        if page is not None:
            places.write_page(page, asked)
            show_page(places.output, page)
            return 0
    paper = plan.job.paper
    if asked.printer is not None and (doubt := paper_doubt(asked.printer, paper)):
        show_finding("warn", doubt)
    printer = anonymous_printer(asked.printer) if asked.anonymous else asked.printer
    older = None
    if asked.since is not None:
        sheets, older = sheets_since(asked.since, plan, printer, asked.fonts)
    else:
        sheets = tg.plan_sheets(plan, paper, printer)
    if sheets.printed == () and not sheets.gone:
        click.echo(f"{asked.since}: its paper serves as it is, no sheet changes")
        return 0
    if asked.most is not None and _refused(path, plan, len(sheets.on_these_pages), asked.most):
        return STOPPED
    if asked.only is not None:
        sheets = only(sheets, asked.only, path, asked.wall, plan)
    bare, reported = asked.only is not None, asked.report is not None
    made = tg.finish_template(plan, findings, sheets, asked.fonts, bare, reported, older)
    places.write(made, sheets, asked)
    if not asked.part:
        show_ways(plan, made.expected, asked.printer, sheets)
    places.say(made, sheets, asked)
    return 0


def _without_names(job: Job) -> Job:
    """The job without what says whose it is; what names them all the same is shown."""
    from templates_gen.documents.anonymous import anonymous, still_named

    if named := still_named(job):
        show_finding("warn", f"The client or the wall is still named on paper: {some(named)}. Change it in the job.")
    return anonymous(job)


def _refused(path: Path, plan: Plan, needed: int, most: int) -> bool:
    """True when the plan needs more sheets than that; what would have to give is then shown."""
    from templates_gen.documents.fewer_sheets import too_many

    lines = too_many(plan, needed, most)
    if lines:
        click.echo("\n".join([f"error: {path}: {lines[0]}", *lines[1:]]), err=True)
    return bool(lines)
