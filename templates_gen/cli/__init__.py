"""The commands.  Each only parses, calls the library, and prints; what it needs is imported when it runs."""

from __future__ import annotations

from importlib import import_module

import click

from templates_gen import __version__

BY_STEP = {
    "In the browser": {"desk": "Do the whole job on a page of this machine: no files, no terminal."},
    "Plan": {
        "start": "Make a job file: from questions, a sample or a template.",
        "check": "Show everything wrong or risky, before paper is used.",
        "options": "Show different arrangements of the same frames on one page.",
        "proof": "Draw the wall to scale, for the client's approval.",
    },
    "Measure and print": {
        "measure": "Write a measuring sheet: every frame's back, with blanks.",
        "template": "Write the full-scale template.",
        "schedule": "Show every frame and every nail: heights and distances.",
        "guide": "Write a page to take along: the job on a phone at the wall.",
        "labels": "Write a label for the back of every frame.",
    },
    "By photograph": {"photo": "Show the group on your wall, check taped paper, read what hangs."},
    "After hanging": {"correct": "Say which nails to move, from what was measured."},
    "Set up once": {
        "printer": "Measure a printer, so that templates measure true.",
        "schema": "Show the JSON Schema of a job file, for editors.",
    },
    "Read": {"help": "Show what a command does, or a field of the job file means."},
}
"""What each command is for, in the order of the work.  Every command has a file of its name."""


class _InOrder(click.Group):
    """A group that imports a command when it is asked for, and lists all by the steps of the work."""

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        known = self.commands.get(cmd_name)
        if known is None:
            return None
        command: click.Command = getattr(import_module(f"{__name__}.{cmd_name}"), cmd_name)
        command.short_help = known.short_help
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        widest = max(map(len, self.commands))
        for step, commands in BY_STEP.items():
            with formatter.section(step):
                formatter.write_dl([(f"{name:{widest}}", summary) for name, summary in commands.items()])


@click.group(cls=_InOrder, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 80})
@click.version_option(__version__, prog_name="templates-gen")
def program() -> None:
    """Print a full-scale paper template for hanging a group of frames, with the
    nails already in it.

    \b
    Example:
      templates-gen template samples/fern-prints.toml
    """


for _commands in BY_STEP.values():
    for _name, _summary in _commands.items():
        program.add_command(click.Command(_name, short_help=_summary))  # its name; what it does is imported
