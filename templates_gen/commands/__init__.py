"""The commands.  Each only parses, calls the library, and prints; what it needs is imported when it runs."""

from __future__ import annotations

import click

from templates_gen.commands.check import check
from templates_gen.commands.correct import correct
from templates_gen.commands.labels import labels
from templates_gen.commands.measure import measure
from templates_gen.commands.options import options
from templates_gen.commands.printer import printer
from templates_gen.commands.proof import proof
from templates_gen.commands.schedule import schedule
from templates_gen.commands.schema import schema
from templates_gen.commands.start import start
from templates_gen.commands.template import template


@click.group(context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 80})
@click.version_option(package_name="templates-gen", prog_name="templates-gen")
def program() -> None:
    """Print a full-scale paper template for hanging a group of frames, with the
    nails already in it.

    \b
    Example:
      templates-gen template samples/fern-prints.toml
    """


for command in (start, template, check, options, proof, measure, labels, schedule, printer, correct, schema):
    program.add_command(command)
