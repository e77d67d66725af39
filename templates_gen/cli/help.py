"""The command `help`."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from templates_gen.base.errors import InputError, did_you_mean
from templates_gen.cli.completing import help_topics

if TYPE_CHECKING:
    from collections.abc import Sequence


@click.command()
@click.argument("topic", nargs=-1, shell_complete=help_topics)
@click.pass_context
def help(ctx: click.Context, topic: tuple[str, ...]) -> None:
    """Show what a command does, or what the fields of a job file mean: of the
    whole file, of one of its tables, or of the fields of one name.  Or show one
    of the texts that help alone names.

    \b
    Example:
      templates-gen help job
      templates-gen help job wall
      templates-gen help job drop
      templates-gen help template
      templates-gen help printing
    """
    from templates_gen.cli.texts import text, text_names

    if topic[:1] == ("job",):
        _job(topic[1:])
    elif len(topic) == 1 and topic[0] in text_names():
        click.echo(text(topic[0]), nl=False)
    else:
        _command(ctx.find_root(), topic)


def _job(names: Sequence[str]) -> None:
    """The reference of the job file, or of what is named of it."""
    from templates_gen.cli.reference import reference

    click.echo("\n".join(reference(name) for name in names or [""]), nl=False)


def _command(ctx: click.Context, names: Sequence[str]) -> None:
    """The help of a command, or of the program, and what else there is to read about.  Raises InputError."""
    for name in names:
        group = ctx.command
        command = group.get_command(ctx, name) if isinstance(group, click.Group) else None
        if command is None:
            raise _unknown(name, ctx)
        ctx = click.Context(command, ctx, name)
    click.echo(ctx.get_help())
    if not names:
        from templates_gen.cli.texts import text_names

        click.echo("\nMore to read:")
        for name in text_names():
            click.echo(f"  templates-gen help {name}")
        click.echo("The fields of a job file:  templates-gen help job")


def _unknown(name: str, ctx: click.Context) -> InputError:
    from templates_gen.cli.reference import table_names
    from templates_gen.cli.texts import text_names

    commands = ctx.command.list_commands(ctx) if isinstance(ctx.command, click.Group) else []
    known = commands if ctx.parent else ["job", *commands, *text_names()]
    expected = "a command, a text, or job" if "job" in known else "a command" if known else "nothing more"
    hint = did_you_mean(name, known, f"known: {', '.join(known)}" if known else "")
    if "job" in known and name in table_names():
        hint = f"what a job file says of it:  templates-gen help job {name}"
    return InputError("help", f"found {name!r}, expected {expected}", hint)
