"""The paper that was printed before serves again: on another wall, or with some of its sheets printed anew."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from templates_gen.base.errors import InputError
from templates_gen.base.words import counted
from templates_gen.cli.given import job_on
from templates_gen.cli.showing import show_finding
from templates_gen.cli.watching import planned

if TYPE_CHECKING:
    from templates_gen.arranging.plan import Plan
    from templates_gen.checks import Finding
    from templates_gen.documents.old_paper import OldPaper
    from templates_gen.documents.same_paper import SamePaper
    from templates_gen.job.model import Job
    from templates_gen.printer.profile import Printer
    from templates_gen.tiling.sheet import SheetPlan


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
    from templates_gen.cli.results import show_made
    from templates_gen.cli.showing import wrapped

    click.echo(wrapped("To print every sheet anyway: the same command with --all-sheets"), err=True)
    pages = counted(len(page.template.pages), "page")
    show_made(place, f"{pages} to hang the paper of this job there: no sheet is needed")


def sheets_since(pdf: Path, plan: Plan, printer: Printer | None, fonts: tuple[Path, ...]) -> SheetPlan:
    """The sheets of an older template under a plan that has changed, those that are printed anew named in them.

    All of them anew where the old ones cannot show the plan; that, and where printing all takes fewer minutes, is said.
    Raises InputError for a file that is no such template, or is on other paper.
    """
    import templates_gen as tg
    from templates_gen.documents.old_paper import same_paper_as
    from templates_gen.documents.updating import updated
    from templates_gen.drawing.lettering import job_lettering
    from templates_gen.tolerance.effort import effort

    paper = plan.job.paper
    try:
        job, old = _inside(pdf)
        same_paper_as(old, paper, printer, pdf.name)
    except tg.InputError as error:
        raise tg.InputError(f"--since {error.where}", error.problem, error.hint) from None
    found = updated(planned(job), plan, old, printer, job_lettering(plan.job, fonts))
    anew = tg.plan_sheets(plan, paper, printer)
    if isinstance(found, str):
        show_finding("warn", f"The old sheets do not serve: {found}. All sheets are printed anew.")
        return anew
    new, whole = effort(found), effort(anew)
    if new.minutes > whole.minutes and found.printed:
        show_finding("warn", f"Printing all anew takes less: {whole.words}, not about {new.time}: leave --since out.")
    return found


def _inside(pdf: Path) -> tuple[Job, OldPaper]:
    """The job inside a template, and what it says of its sheets.  Raises InputError."""
    import tempfile

    import templates_gen as tg
    from templates_gen.cli.interview.taken_back import LARGEST_PDF, from_content
    from templates_gen.documents.old_paper import ANEW, LARGEST, NAME, old_paper
    from templates_gen.drawing.pdf.attached import Attached
    from templates_gen.job.reading.files import read_bytes

    content = read_bytes(pdf, LARGEST_PDF, "a template")
    held = Attached(content, pdf.name)
    if NAME not in held.others:
        raise tg.InputError(pdf.name, "says nothing of its sheets, expected a template that this version wrote", ANEW)
    old = old_paper(held.read(NAME, LARGEST), pdf.name)
    with tempfile.TemporaryDirectory() as folder:
        files, _ = from_content(content, pdf, Path(folder) / "job.toml")
        for place, inner in files.items():
            place.write_bytes(inner)
        walls = [place for place in files if place.suffix == ".toml" and place.name != "job.toml"]
        return job_on(Path(folder) / "job.toml", walls[0] if walls else None), old


def only(sheets: SheetPlan, asked: str, template: Path, job: Job) -> SheetPlan:
    """The plan with these sheets alone printed, such as "3,7-9", for the paper of the template that there is.

    A number may also be that of a sheet in the order of the pages.  Where the template was made from another job, that
    is said.  Raises InputError for a name that no sheet has.
    """
    from templates_gen.base.record import replace

    if doubt := _doubt_of_old(template, job):
        show_finding("warn", doubt)
    names = [sheet.name for sheet in sheets.sheets]
    chosen = _chosen([name.casefold() for name in names], asked.casefold())
    return replace(sheets, printed=tuple(name for at, name in enumerate(names) if at in chosen))


def _chosen(names: Sequence[str], asked: str) -> set[int]:
    """Which of the names are asked for, by themselves or from one to another."""
    by_name = {f"{at}": at - 1 for at in range(1, len(names) + 1)} | {name: at for at, name in enumerate(names)}
    wanted = set[int]()
    for part in asked.replace(" ", "").split(","):
        ends = [by_name.get(end) for end in part.split("-")]
        first, last = ends[0], ends[-1]
        if len(ends) > 2 or first is None or last is None:
            problem = f"found {part!r}, expected a sheet, or two with - between"
            raise InputError("--only", problem, f"the sheets are {names[0]} to {names[-1]}")
        if first > last:
            raise InputError("--only", f"found {part!r}, expected the earlier sheet first")
        wanted |= set(range(first, last + 1))
    return wanted


def _doubt_of_old(pdf: Path, job: Job) -> str:
    """What there is to say of the template that torn sheets come from, where it was made from another job; or ""."""
    from templates_gen.drawing.pdf.attached import Attached
    from templates_gen.job.reading.files import LARGEST, read_bytes

    if not pdf.is_file() or not job.sources:
        return ""
    try:
        held = Attached(read_bytes(pdf, LARGEST, "a template"), pdf.name)
        names = (held.job, *(name for name, _ in job.sources[1:]))  # the job's file may have another name since
        known = {held.job, *held.others}
        same = all(
            name in known and held.read(name, LARGEST) == content
            for name, (_, content) in zip(names, job.sources, strict=True)
        )
    except InputError:
        return ""
    return (
        ""
        if same
        else f"{pdf.name} was made before the job changed: to go on with that paper, take --since {pdf.name}."
    )
