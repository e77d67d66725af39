"""The command `template`: the main job."""

from __future__ import annotations

from pathlib import Path

import click

from templates_gen.commands.common import (
    FILE,
    STOPPED,
    about,
    check_results,
    force_option,
    report_option,
    show_findings,
    write_json,
)


@click.command()
@click.argument("jobs", type=FILE, metavar="JOB...", nargs=-1, required=True)
@click.option("-o", "--output", type=FILE, metavar="FILE.pdf", help="Where to write it; else beside the job file.")
@click.option("--paper", metavar="SIZE", help="a4, letter, a3, tabloid, ...; else as the job says.")
@click.option("--cover", type=click.Choice(["all", "marks", "nails"]), help="What must be on paper.")
@click.option("--font", "fonts", type=FILE, multiple=True, metavar="FILE.ttf", help="A font for more scripts.")
@report_option
@force_option
@click.pass_context
def template(
    context: click.Context, jobs: tuple[Path, ...], output: Path | None, paper: str | None, cover: str | None,
    fonts: tuple[Path, ...], report: Path | None, force: bool,
) -> None:  # fmt: skip
    """Write the full-scale template of a job as a PDF file.

    \b
    Example:
      templates-gen template samples/fern-prints.toml --paper letter -o fern.pdf
    """
    if len(jobs) > 1 and (output is not None or report is not None):
        raise click.UsageError("-o and --report are for one job; several jobs are written beside their files")
    codes = [_make(job, output or job.with_suffix(".pdf"), paper, cover, fonts, report, force) for job in jobs]
    context.exit(max(codes))


def _make(
    path: Path, output: Path, paper: str | None, cover: str | None, fonts: tuple[Path, ...], report: Path | None,
    force: bool,
) -> int:  # fmt: skip
    """Make one template; the exit code."""
    import templates_gen as tg
    from templates_gen.findings import stops
    from templates_gen.making import on_paper
    from templates_gen.output import write_result

    with about(path):
        job = on_paper(tg.read_job(path), paper, cover)
        check_results(path, job, [output, report], force)
        findings = tg.find(tg.plan_wall(job))
        show_findings(findings)
        if stops(findings):
            click.echo(f"error: {path}: not printed, because of what is marked stop", err=True)
            return STOPPED
        made = tg.make_template(job, fonts)
    write_result(output, made.pdf, force)
    if report is not None:
        write_json(report, made.report, force)
    click.echo(f"{output}: {made.sheets} sheet{'s' if made.sheets > 1 else ''} of {job.paper.name} paper")
    return 0
