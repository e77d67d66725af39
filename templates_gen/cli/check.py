"""The command `check`."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from templates_gen.cli import arguments as takes
from templates_gen.cli.given import about, job_on
from templates_gen.cli.results import check_results, write_report
from templates_gen.cli.showing import INDENT, STOPPED, as_json, show_checked, show_finding, wrapped

if TYPE_CHECKING:
    from templates_gen.arranging.plan import Plan
    from templates_gen.tolerance.tape_check import TapeCheck


@click.command()
@takes.job_argument
@takes.format_option("json")
@takes.wall_option
@click.option("--cover", type=takes.COVERS, help="What is on the paper that --taped is about; default: the job's.")
@click.option("--taped", metavar="a=L,b=L,width=L", help="Lengths measured on the taped paper, to check it.")
@takes.report_option
@takes.force_option
@click.pass_context
def check(
    context: click.Context, job: Path, shape: str, wall: Path | None, cover: str | None, taped: str | None,
    report: Path | None, force: bool,
) -> None:  # fmt: skip
    """Show everything wrong or risky about a job, before paper is used.

    \b
    Example:
      templates-gen check samples/fern-prints.toml
    """
    from templates_gen.checks import findings_data, stops
    from templates_gen.cli.watching import planned
    from templates_gen.documents.check import check_plan
    from templates_gen.documents.options.score_words import score_data
    from templates_gen.documents.other_ways import closer_words
    from templates_gen.tolerance.statement import error_data
    from templates_gen.tolerance.tape_statement import tape_data, tape_words

    with about(job):
        read = job_on(job, wall)
        check_results(job, read, [report], force, [wall])
        plan = planned(read)
        checked = check_plan(plan, job)
        found = _tape_check(job, wall, plan, cover, taped) if taped is not None else None
    findings, expected = checked.findings, checked.expected
    data = {
        "format": 1,
        "findings": findings_data(findings),
        "not_checked": checked.unchecked,
        "arrangement": score_data(checked.score),
        "expected_error": error_data(expected),
    }
    if found is not None:
        data["taped"] = tape_data(found, read.unit)
    write_report(report, data, force)
    if shape == "json":
        click.echo(as_json(data))
    elif found is not None:  # the paper is printed and taped: it is late for what was found before
        for line in tape_words(found, read.unit):
            click.echo(wrapped(line, later=INDENT))
    else:
        show_checked(checked, read.unit, closer=closer_words(plan, expected))
    context.exit(STOPPED if stops(findings) else 0)


def _tape_check(path: Path, wall: Path | None, plan: Plan, cover: str | None, taped: str) -> TapeCheck:
    """What the lengths measured on the taped paper say: that of the template beside the job, or as it would be now."""
    import templates_gen as tg
    from templates_gen.base.record import replace
    from templates_gen.cli.next_time import Printed, printed_beside
    from templates_gen.documents.making import on_paper
    from templates_gen.documents.on_wall import anew
    from templates_gen.tolerance.tape_check import read_taped, tape_check

    lengths = read_taped(taped, plan.job.unit)
    there = printed_beside(path, plan.job, wall, {"cover": cover})
    if isinstance(there, Printed):
        show_finding("note", there.template.said(path))
        return tape_check(there.plan, there.sheets, lengths)
    show_finding("note", anew(path, there.why))
    job = on_paper(plan.job, cover=cover)
    return tape_check(replace(plan, job=job), tg.plan_sheets(plan, job.paper), lengths)
