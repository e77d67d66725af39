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

BY_STEP = {
    "Plan": (start, check, options, proof),
    "Measure and print": (measure, template, schedule, labels),
    "After hanging": (correct,),
    "Set up once": (printer, schema),
}
"""The commands in the order of the work."""


class _InOrder(click.Group):
    """A group whose help lists its commands by the steps of the work, not by the alphabet."""

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        widest = max(map(len, self.commands))
        for step, commands in BY_STEP.items():
            with formatter.section(step):
                formatter.write_dl([(f"{command.name:{widest}}", command.get_short_help_str()) for command in commands])


@click.group(cls=_InOrder, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 80})
@click.version_option(package_name="templates-gen", prog_name="templates-gen")
def program() -> None:
    """Print a full-scale paper template for hanging a group of frames, with the
    nails already in it.

    \b
    Example:
      templates-gen template samples/fern-prints.toml
    """


for commands in BY_STEP.values():
    for command in commands:
        program.add_command(command)
