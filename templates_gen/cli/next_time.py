"""The paper that was printed before serves again: on another wall."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from templates_gen.cli.watching import planned

if TYPE_CHECKING:
    from templates_gen.arranging.plan import Plan
    from templates_gen.checks import Finding
    from templates_gen.documents.same_paper import SamePaper


def page_for_old_paper(
    path: Path, wall: Path, plan: Plan, findings: Sequence[Finding], fonts: tuple[Path, ...], anonymous: bool
) -> SamePaper | None:
    """The page that hangs the job's own paper on the other wall; None where that paper does not show it.

    Raises InputError for a font that cannot be used.
    """
    import templates_gen as tg
    from templates_gen.documents.anonymous import anonymous as without_names
    from templates_gen.documents.same_paper import command_for, same_paper, serves
    from templates_gen.drawing.lettering import job_lettering

    try:
        old = planned(without_names(tg.read_job(path)) if anonymous else tg.read_job(path))
        if not serves(old, plan):
            return None
        sheets = tg.plan_sheets(old, old.job.paper)
    except tg.InputError:  # on its own wall it was never printed
        return None
    command = command_for("JOB", "OTHER") if anonymous else command_for(path.name, wall.name)
    return same_paper(old, plan, findings, sheets, command, job_lettering(plan.job, fonts))


def show_page(place: Path, page: SamePaper) -> None:
    """Say what was written instead of sheets, and how to have them all the same."""
    from templates_gen.base.words import counted
    from templates_gen.cli.results import show_made
    from templates_gen.cli.showing import wrapped

    click.echo(wrapped("Every sheet all the same: the same command with --all-sheets"), err=True)
    pages = counted(len(page.template.pages), "page")
    show_made(place, f"{pages} to hang the paper of this job there: no sheet is needed")
