"""What a shell offers when the tab key is pressed: job files, printers, papers and samples.

click's own completion calls these; each gives what begins like the word being typed, and nothing when it cannot know.
"""

from __future__ import annotations

import os
from collections.abc import Iterable
from typing import TYPE_CHECKING

import click

from templates_gen.base.errors import TemplatesError

if TYPE_CHECKING:
    from click.shell_completion import CompletionItem


def job_files(_: click.Context, __: click.Parameter, typed: str) -> list[CompletionItem]:
    """Job files here and one folder down; where there are none, the shell's own completion of folders."""
    from glob import escape, glob

    found = sorted(glob(f"{escape(typed)}*.toml") + glob(f"{escape(typed)}*{os.sep}*.toml"))
    return _items(found) or _items([typed], "dir")


def printer_names(_: click.Context, __: click.Parameter, typed: str) -> list[CompletionItem]:
    """The printers that were recorded."""
    from templates_gen.cli.given import kept_printers
    from templates_gen.printer.store import names

    try:
        return _beginning(names(kept_printers()), typed)
    except TemplatesError:
        return []


def paper_names(_: click.Context, __: click.Parameter, typed: str) -> list[CompletionItem]:
    """Paper sizes, with a hyphen for the space within a name."""
    from templates_gen.job.paper_sizes import SIZES

    return _beginning([name.replace(" ", "-") for name in SIZES], typed)


def sample_names(_: click.Context, __: click.Parameter, typed: str) -> list[CompletionItem]:
    """The samples."""
    from templates_gen.cli.interview import taken

    return _beginning(taken.sample_names(), typed)


def help_topics(ctx: click.Context, _: click.Parameter, typed: str) -> list[CompletionItem]:
    """What there is help on: commands and the job file, and behind that its tables."""
    from templates_gen.cli.reference import table_names
    from templates_gen.cli.texts import text_names

    if ctx.params.get("topic"):
        return _beginning(table_names() if ctx.params["topic"][0] == "job" else [], typed)
    program = ctx.find_root().command
    commands = program.list_commands(ctx) if isinstance(program, click.Group) else []
    return _beginning(["job", *commands, *text_names()], typed)


def _beginning(names: Iterable[str], typed: str) -> list[CompletionItem]:
    return _items(name for name in names if name.startswith(typed.lower()))


def _items(words: Iterable[str], kind: str = "plain") -> list[CompletionItem]:
    from click.shell_completion import CompletionItem  # only when a shell asks

    return [CompletionItem(word, kind) for word in words]
