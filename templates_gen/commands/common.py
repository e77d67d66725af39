"""What the commands share: the job argument, and how findings are shown."""

from __future__ import annotations

import os
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

if TYPE_CHECKING:
    from collections.abc import Sequence

    from templates_gen.findings import Finding

STOPPED = 1
"""Exit code of a job with a stopping finding."""

COLOURS = {"stop": "red", "warn": "yellow", "note": "cyan"}

FILE = click.Path(path_type=Path)

job_argument = click.argument("job", type=FILE, metavar="JOB")

report_option = click.option("--report", type=FILE, metavar="FILE.json", help="Write what a machine may read.")

force_option = click.option("--force", is_flag=True, help="Replace a file that is not ours.")


def show_findings(findings: Sequence[Finding], err: bool = True) -> None:
    """Findings in plain words, wrapped to the terminal; in colour only on a terminal."""
    import shutil

    width = min(100, shutil.get_terminal_size().columns)
    for finding in findings:
        words = click.wrap_text(finding.text, width, initial_indent=" " * 6, subsequent_indent=" " * 6)
        level = click.style(finding.level, fg=COLOURS[finding.level], bold=True)
        click.echo(f"{level}{words[4:]}", err=err, color=False if os.environ.get("NO_COLOR") else None)


def write_json(path: Path, data: dict[str, Any], force: bool) -> None:
    """Write a report.  Raises OutputError."""
    from templates_gen.output import write_result

    write_result(path, (as_json(data) + "\n").encode(), force)


def as_json(data: dict[str, Any]) -> str:
    """Data as readable JSON, its keys in the order given."""
    import json

    return json.dumps(data, indent=1, ensure_ascii=False)
