"""The command `check`."""

from __future__ import annotations

from pathlib import Path

import click

from templates_gen.commands.common import (
    STOPPED,
    about,
    as_json,
    check_results,
    force_option,
    job_argument,
    report_option,
    show_findings,
    write_json,
)


@click.command()
@job_argument
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="How to show it.")
@report_option
@force_option
@click.pass_context
def check(context: click.Context, job: Path, form: str, report: Path | None, force: bool) -> None:
    """Show everything wrong or risky about a job, before paper is used.

    \b
    Example:
      templates-gen check samples/fern-prints.toml
    """
    import templates_gen as tg
    from templates_gen.exactness.checking import check_job
    from templates_gen.exactness.words import check_words, error_data
    from templates_gen.findings import stops
    from templates_gen.schedule import findings_data

    with about(job):
        read = tg.read_job(job)
        check_results(job, read, [report], force)
        checked = check_job(read)
    findings, expected = checked.findings, checked.expected
    data = {"format": 1, "findings": findings_data(findings), "expected_error": error_data(expected)}
    if report is not None:
        write_json(report, data, force)
    if form == "json":
        click.echo(as_json(data))
    else:
        show_findings(findings, err=False)
        for line in check_words(expected, read.unit) if expected else ():
            click.echo(click.wrap_text(line, 80, subsequent_indent=" " * 6))
        click.echo(_summary([finding.level for finding in findings]))
    context.exit(STOPPED if stops(findings) else 0)


def _summary(levels: list[str]) -> str:
    if not levels:
        return "nothing found"
    counts = [f"{levels.count(level)} {level}" for level in ("stop", "warn", "note") if level in levels]
    return f"found: {', '.join(counts)}"
