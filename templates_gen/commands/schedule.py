"""The command `schedule`."""

from __future__ import annotations

from pathlib import Path

import click

from templates_gen.commands.common import (
    FILE,
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


@click.command(short_help="Show every frame and every nail: heights and distances.")
@job_argument
@click.option("--format", "form", type=click.Choice(["text", "csv", "json"]), help="Else by FILE, or text.")
@click.option("-o", "--output", type=FILE, metavar="FILE", help="Write it there: .txt, .csv or .json.")
@wall_option
@report_option
@force_option
def schedule(
    job: Path, form: str | None, output: Path | None, wall: Path | None, report: Path | None, force: bool
) -> None:
    """Show every frame and every nail: heights, and distances from both lines.

    \b
    Example:
      templates-gen schedule samples/fern-prints.toml --format csv
    """
    import templates_gen as tg
    from templates_gen.output import write_result
    from templates_gen.schedule import as_csv, as_data, as_text

    form = form or ({".csv": "csv", ".json": "json"}.get(output.suffix.lower(), "text") if output else "text")
    with about(job):
        read = job_on(job, wall)
        check_results(job, read, [report, output], force, [wall])
        plan = tg.plan_wall(read)
    found = tg.find(plan)
    if report is not None:
        write_json(report, as_data(plan, found), force)
    if form == "json":
        text = f"{as_json(as_data(plan, found))}\n"
    else:
        text = as_csv(plan, found) if form == "csv" else f"{as_text(plan, found)}\n"
    if output is None:
        click.echo(text, nl=False)
        return
    write_result(output, text.encode("utf-8-sig" if form == "csv" else "utf-8"), force)
    click.echo(f"{output}: the schedule")
