"""The command `schedule`."""

from __future__ import annotations

from pathlib import Path

import click

from templates_gen.base.output import STDOUT, ending_of
from templates_gen.cli import arguments as takes
from templates_gen.cli.given import about, job_on
from templates_gen.cli.results import check_results, show_made, write_report
from templates_gen.cli.showing import as_json

FORMS = {"txt": "text", "csv": "csv", "json": "json", "md": "md"}
"""What a file holds, by its ending."""


@click.command()
@takes.job_argument
@click.option(
    "--format", "shape", type=click.Choice([*FORMS.values()]), help="Format; default: by FILE's ending, else text."
)
@takes.output_option(metavar="FILE", help="Write it to FILE: .txt, .csv, .json or .md.")
@takes.wall_option
@takes.report_option
@takes.force_option
def schedule(
    job: Path, shape: str | None, output: Path | None, wall: Path | None, report: Path | None, force: bool
) -> None:
    """Show every frame and every nail: heights, and distances from both lines.

    \b
    Example:
      templates-gen schedule samples/fern-prints.toml --format csv
    """
    import templates_gen as tg
    from templates_gen.cli.watching import planned
    from templates_gen.documents.schedule.markdown import as_markdown
    from templates_gen.documents.schedule.table import as_csv, as_data, as_text

    if shape is None:
        shape = "text" if output is None or output == STDOUT else FORMS[ending_of(output, tuple(FORMS))]
    with about(job):
        read = job_on(job, wall)
        check_results(job, read, [report, output], force, [wall])
        plan = planned(read)
    findings = tg.find(plan)
    data = as_data(plan, findings)
    shown = {"text": as_text, "csv": as_csv, "md": as_markdown}
    text = shown[shape](plan, findings) if shape in shown else as_json(data)
    text += "\n" if shape in ("text", "json") else ""
    content = text.encode("utf-8-sig" if shape == "csv" else "utf-8")
    write_report(report, data, force, {} if output is None else {output: content})
    if output is None:
        click.echo(text, nl=False)
    else:
        show_made(output, "the schedule")
