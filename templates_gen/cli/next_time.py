"""The paper that was printed before serves again: on another wall, or with some of its sheets printed anew."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import click

from templates_gen.base.errors import InputError
from templates_gen.base.file_names import quoted
from templates_gen.base.words import counted
from templates_gen.cli.given import job_on
from templates_gen.cli.showing import show_finding
from templates_gen.cli.watching import planned

if TYPE_CHECKING:
    from templates_gen.arranging.plan import Plan
    from templates_gen.checks import Finding
    from templates_gen.documents.on_wall import Beside, Unknown
    from templates_gen.documents.photographed import Papers
    from templates_gen.documents.same_paper import SamePaper
    from templates_gen.drawing.pdf.attached import Attached
    from templates_gen.job.model import Job
    from templates_gen.printer.profile import Printer
    from templates_gen.tiling.sheet import SheetPlan


class Printed(NamedTuple):
    """What was planned for the paper on the wall, its sheets, and the template that says so."""

    plan: Plan
    sheets: SheetPlan
    template: Beside


def printed_beside(path: Path, job: Job, wall: Path | None, asked: Mapping[str, str | None]) -> Printed | Unknown:
    """The paper of the template beside a job's file, as it was printed; or why none is known.

    `asked` is how it was printed, as far as somebody says it.  Raises InputError for a broken template.
    """
    from templates_gen.documents.on_wall import Unknown, as_printed, template_beside

    found = template_beside(path, job, wall, asked)
    if isinstance(found, Unknown):
        return found
    made = as_printed(found, planned(_job(found.held) if found.changed else job))
    return made if isinstance(made, Unknown) else Printed(*made, found)


def show_moved(path: Path, wall: Path | None, plan: Plan) -> None:
    """Say where frames that hang are compared with other places than those of the paper that hung them."""
    from templates_gen.documents.on_wall import moved_since

    there = printed_beside(path, plan.job, wall, {})
    if not isinstance(there, Printed) or not there.template.changed or not (what := moved_since(there.plan, plan)):
        return
    name = there.template.pdf.name
    show_finding(
        "warn",
        f"{path.name} has changed since {name} was made, and {what} moved. What is told is by the places of now. To go "
        f"by those of {name}, take its job: templates-gen start --from {quoted(name)} then.toml",
    )


def page_for_old_paper(
    path: Path, wall: Path, plan: Plan, findings: Sequence[Finding], fonts: tuple[Path, ...], anonymous: bool
) -> SamePaper | None:
    """The page that hangs the job's own paper on the other wall; None where that paper does not show it.

    Raises InputError for a font that cannot be used.
    """
    import templates_gen as tg
    from templates_gen.base.record import replace
    from templates_gen.documents.anonymous import anonymous as without_names
    from templates_gen.documents.same_paper import command_for, same_paper, serves
    from templates_gen.drawing.lettering import job_lettering

    try:
        own = tg.read_job(path)
        there = printed_beside(path, own, None, {})
        if isinstance(there, Printed):
            old = there.plan
        elif there.elsewhere:
            show_finding("warn", f"{there.why}: that paper does not serve there.")
            return None
        else:
            old = planned(own)
        if anonymous:
            old = replace(old, job=without_names(old.job))
        if not serves(old, plan):
            if isinstance(there, Printed) and there.template.changed and serves(planned(own), plan):
                name = there.template.pdf.name
                show_finding("warn", f"{path.name} has changed since {name} was made: that paper does not serve there.")
            return None
        sheets = there.sheets if isinstance(there, Printed) else tg.plan_sheets(old, old.job.paper)
    except tg.InputError:  # on its own wall it was never printed
        return None
    if not isinstance(there, Printed):
        show_finding("note", f"The taped paper is taken to be of {path.name} as it is now: {there.why}.")
    plan = plan.on(old.job.paper)
    command = command_for("JOB", "OTHER") if anonymous else command_for(path.name, wall.name)
    return same_paper(old, plan, findings, sheets, command, job_lettering(plan.job, fonts))


def show_page(place: Path, page: SamePaper) -> None:
    """Say what was written instead of sheets, and how to have them all the same."""
    from templates_gen.cli.results import show_made
    from templates_gen.cli.showing import wrapped

    click.echo(wrapped("To print every sheet anyway: the same command with --all-sheets"), err=True)
    pages = counted(len(page.template.pages), "page")
    show_made(place, f"{pages} to hang the paper of this job there: no sheet is needed")


def sheets_since(
    pdf: Path, plan: Plan, printer: Printer | None, fonts: tuple[Path, ...]
) -> tuple[SheetPlan, Papers | None]:
    """The sheets of an older template under a plan that has changed, those that are printed anew named in them, and
    where the photo tags of that template are, where it has some.

    All of them anew where the old ones cannot show the plan; that, and where printing all takes fewer minutes, is said.
    Raises InputError for a file that is no such template, or is on other paper.
    """
    import templates_gen as tg
    from templates_gen.documents.old_paper import inside, same_paper_as
    from templates_gen.documents.on_wall import moved_since, papers_of
    from templates_gen.documents.updating import updated
    from templates_gen.drawing.lettering import job_lettering
    from templates_gen.tolerance.effort import effort

    paper = plan.job.paper
    try:
        held, old = inside(pdf)
        job = _job(held)
        same_paper_as(old, paper, printer, pdf.name)
    except tg.InputError as error:
        raise tg.InputError(f"--since {error.where}", error.problem, error.hint) from None
    then = planned(job)
    if plan.job.group.arrangement == "salon" and moved_since(then, plan):
        show_finding("warn", _found_anew(pdf))
    found = updated(then, plan, old, printer, job_lettering(plan.job, fonts))
    anew = tg.plan_sheets(plan, paper, printer)
    if isinstance(found, str):
        show_finding("warn", f"The old sheets do not serve: {found}. All sheets are printed anew.")
        return anew, None
    new, whole = effort(found), effort(anew)
    if new.minutes > whole.minutes and found.printed:
        show_finding("warn", f"Printing all anew takes less: {whole.words}, not about {new.time}: leave --since out.")
    return found, papers_of(old, pdf.name) if paper.photo else None


def _found_anew(pdf: Path) -> str:
    """That found places are not those on paper any more, and what keeps those."""
    begin, keep = f"start --from {quoted(pdf.name)} then.toml", "options then.toml --pick 1 -o kept.toml"
    return (
        f"The places of the frames were found anew, and are not those on the paper of {pdf.name}. To keep those:  "
        f"templates-gen {begin}, and  templates-gen {keep}. Then change in kept.toml what is to be changed."
    )


def _job(held: Attached) -> Job:
    """The job inside a template.  Raises InputError."""
    import tempfile

    from templates_gen.cli.interview.taken_back import from_template

    with tempfile.TemporaryDirectory() as folder:
        files, _ = from_template(held, Path(folder) / "job.toml")
        for place, inner in files.items():
            place.write_bytes(inner)
        walls = [place for place in files if place.suffix == ".toml" and place.name != "job.toml"]
        return job_on(Path(folder) / "job.toml", walls[0] if walls else None)


def only(sheets: SheetPlan, asked: str, path: Path, wall: Path | None, plan: Plan) -> SheetPlan:
    """The plan with these sheets alone printed, such as "3,7-9", for the paper of the template that lies beside a job.

    A number may also be that of a sheet in the order of the pages.  They are the sheets of that template, were others
    laid now; where they cannot be, that is said.  Raises InputError for a name that no sheet has.
    """
    from templates_gen.base.record import replace

    sheets = _as_printed(sheets, path, wall, plan)
    names = [sheet.name for sheet in sheets.sheets]
    chosen = _chosen([name.casefold() for name in names], asked.casefold())
    return replace(sheets, printed=tuple(name for at, name in enumerate(names) if at in chosen))


def _as_printed(sheets: SheetPlan, path: Path, wall: Path | None, plan: Plan) -> SheetPlan:
    """The sheets of the template beside a job, where it was made from this job on this paper; else these."""
    from templates_gen.documents import old_paper
    from templates_gen.documents.on_wall import beside, stem_of

    pdf = next((place for place, _ in beside(path, wall)), path.with_name(f"{stem_of(path, wall)}.pdf"))
    if not plan.job.sources:
        return sheets
    try:
        held, old = old_paper.inside(pdf)
        same = old_paper.made_from(held, plan.job)
    except InputError as error:
        show_finding("note", f"{error.where}: {error.problem}. {LAID_ANEW}")
        return sheets
    if not same:
        again = f"to go on with that paper, take --since {pdf.name}"
        show_finding("warn", f"{pdf.name} was made before the job changed: {again}.")
        return sheets
    try:
        old_paper.same_paper_as(old, plan.job.paper, sheets.printer, pdf.name)
    except InputError as error:
        again = error.hint.removesuffix(old_paper.ANEW).removesuffix(", or ")
        todo = f" To print for that paper, {again}." if again else ""
        show_finding("warn", f"{pdf.name} {error.problem}: these sheets do not fit between those of that paper.{todo}")
        return sheets
    if not old_paper.as_planned(old, plan):
        show_finding("warn", f"{pdf.name} {old_paper.ELSEWHERE}: these sheets do not fit between those of that paper.")
        return sheets
    found = old_paper.sheets_on(old, plan, plan.job.paper, sheets.printer)[1]
    if old_paper.alike(found, sheets):
        return sheets
    show_finding("note", f"The sheets are those of {pdf.name}: others would be laid now.")
    return found


LAID_ANEW = "So these sheets are laid anew, and fit the others only where all is as it was then."


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
