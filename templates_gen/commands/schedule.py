"""The command `schedule`."""

from __future__ import annotations

from pathlib import Path

import click

from templates_gen.commands.common import (
    about,
    as_json,
    check_results,
    force_option,
    job_argument,
    job_on,
    report_option,
    wall_option,
    write_json,
)


@click.command()
@job_argument
@click.option("--format", "form", type=click.Choice(["text", "csv", "json"]), default="text", help="How to show it.")
@wall_option
@report_option
@force_option
def schedule(job: Path, form: str, wall: Path | None, report: Path | None, force: bool) -> None:
    """Show every frame and every nail: heights, and distances from both lines.

    \b
    Example:
      templates-gen schedule samples/fern-prints.toml --format csv
    """
    import templates_gen as tg
    from templates_gen.schedule import as_csv, as_data, as_text

    with about(job):
        read = job_on(job, wall)
        check_results(job, read, [report], force, [wall])
        plan = tg.plan_wall(read)
    if report is not None:
        write_json(report, as_data(plan, tg.find(plan)), force)
    if form == "json":
        click.echo(as_json(as_data(plan, tg.find(plan))))
    elif form == "csv":
        click.echo(as_csv(plan, tg.find(plan)), nl=False)
    else:
        click.echo(as_text(plan, tg.find(plan)))
