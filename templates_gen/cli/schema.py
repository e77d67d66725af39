"""The command `schema`."""

from __future__ import annotations

import click

from templates_gen.cli.showing import as_json


@click.command()
def schema() -> None:
    """Show the JSON Schema of a job file, for editors that complete and check
    TOML by one.

    \b
    Example:
      templates-gen schema
    """
    from templates_gen.cli.interview.schema import job_schema

    click.echo(as_json(job_schema()))
