"""Which paper is on the wall: its template's own file says it; without one the sheets are laid anew from the job."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect, same
from templates_gen.base.record import Record, replace
from templates_gen.base.words import some
from templates_gen.documents.old_paper import (
    ANEW,
    ELSEWHERE,
    OldPaper,
    as_planned,
    inside,
    made_from,
    paper_as_printed,
    sheets_on,
)
from templates_gen.documents.photographed import Papers
from templates_gen.documents.tagged_paper import told
from templates_gen.drawing.pdf.attached import Attached
from templates_gen.job.model import Job
from templates_gen.tiling.sheet import SheetPlan

BY_JOB = "name its job instead: its sheets are then laid anew"

UPDATE = "-update"
"""What the name of a template ends in that goes on with older paper."""

OPTIONS = {"name": "--paper", "cover": "--cover", "trim": "--trim", "printer": "--printer"}
IS = {"name": "is on {} paper", "cover": "has cover {}", "trim": "has trim {}", "printer": "was drawn for printer {}"}
"""The options that say how paper was printed, and the words for that, by the field of the paper."""


class Beside(Record, frozen=True):
    """A template beside a job's file: the files inside, what it says of its sheets, the name of an `older` one there,
    and whether the job has `changed` since."""

    pdf: Path
    held: Attached
    old: OldPaper
    older: str
    changed: bool

    def said(self, path: Path) -> str:
        """That it was taken for the paper on the wall."""
        parts = [f"The sheets are those of {self.pdf.name}, beside {path.name}."]
        if self.older:
            parts.append(f"{self.older} lies there, too, and is older.")
        if self.changed:
            parts.append(f"{path.name} has changed since: what is told is by that paper, not by the job as it is now.")
        return " ".join(parts)


class Unknown(Record, frozen=True):
    """Why no template beside a job's file is taken for the paper on the wall; `elsewhere` where it is for its nails."""

    why: str
    elsewhere: bool = False


class OnWall(Record, frozen=True):
    """The taped paper, the name of the file that it is known by, and what there is to say of that: level and text."""

    papers: Papers
    name: str
    said: tuple[str, str] | None = None


def by_template(pdf: Path) -> OnWall:
    """The paper of a template.  Raises InputError for one that does not say where its photo tags are."""
    try:
        old = inside(pdf)[1]
    except InputError as error:  # which is told how to do without old paper
        raise InputError(error.where, error.problem, BY_JOB if error.hint == ANEW else error.hint) from None
    return OnWall(papers_of(old, pdf.name), pdf.name)


def by_job(
    path: Path, job: Job, wall: Path | None, asked: Mapping[str, str | None], lay: Callable[[], Papers]
) -> OnWall:
    """The paper of the template beside a job's file, or as `lay` lays it now where none there says it.

    `asked` is how it was printed, as far as somebody says it: fields of the paper, and the "printer" by its name.
    Raises InputError as `lay` does.
    """
    found = template_beside(path, job, wall, asked, papers_of)
    if isinstance(found, Unknown):
        return OnWall(lay(), path.name, ("warn", anew(path, found.why)))
    return OnWall(papers_of(found.old, found.pdf.name), found.pdf.name, ("note", found.said(path)))


def template_beside(
    path: Path, job: Job, wall: Path | None, asked: Mapping[str, str | None],
    usable: Callable[[OldPaper, str], object] = lambda old, name: None,
) -> Beside | Unknown:  # fmt: skip
    """The template beside a job's file that is taken for the paper on the wall; or why none is.

    `asked` is as in `by_job`; what is not `usable` raises InputError there, and is not taken.
    """
    why = ""
    for pdf, older in beside(path, wall):
        try:
            held, old = inside(pdf)
            usable(old, pdf.name)
            other = _otherwise(old, asked)
            own = job
            if pdf.stem in (path.stem, path.stem + UPDATE):  # of the job's own wall
                own = replace(job, sources=tuple(source for source in job.sources if source[0] != job.moved_to))
            changed = bool(job.sources) and not made_from(held, own)
        except InputError as error:
            why = why or f"{error.where} {error.problem}"
            continue
        if not other:
            return Beside(pdf, held, old, older, changed)
        why = why or f"{pdf.name} {other}"
    return Unknown(why or f"no {stem_of(path, wall)}.pdf lies beside it")


def beside(path: Path, wall: Path | None = None) -> Iterator[tuple[Path, str]]:
    """The templates beside a job's file that may be on the wall, the newest first, each with the name of an older one.

    Those for another `wall` come first; where there are some, that of the job itself may serve there.
    """
    for stem in dict.fromkeys((stem_of(path, wall), path.stem)):
        places = [path.with_name(f"{stem}{ending}.pdf") for ending in (UPDATE, "")]
        there = sorted(filter(Path.is_file, places), key=lambda place: -place.stat().st_mtime_ns)
        yield from ((place, "".join(other.name for other in there[at + 1 :])) for at, place in enumerate(there))
        if not there:
            return


def stem_of(path: Path, wall: Path | None) -> str:
    """What a job's template is called, on its own wall or on another."""
    return f"{path.stem}-{wall.stem}" if wall else path.stem


def papers_of(old: OldPaper, where: str) -> Papers:
    """What a photograph of old paper is compared with.  Raises InputError where the file does not say it."""
    if not old.paper.get("photo"):
        raise InputError(where, "has no photo tags on its sheets", "print the template with --photo-marks")
    if old.photo is None:
        raise InputError(where, "does not say where its photo tags are: an earlier version made it", BY_JOB)
    try:
        cells = {name: cell.rect for name, cell in zip(old.names, old.cells, strict=True)}
        return told(old.photo, cells, old.printer is not None)
    except (ValueError, KeyError, TypeError, IndexError, OverflowError):
        raise InputError(where, "says nothing of its photo tags that can be read", "make the template again") from None


def _otherwise(old: OldPaper, asked: Mapping[str, str | None]) -> str:
    """How paper differs from what is said of it; "" where it does not."""
    printer = (old.printer or {}).get("name")
    known = {**{name: old.paper.get(name) for name in IS}, "printer": printer}
    for name, said in asked.items():
        if said is not None and said.casefold() != str(known[name]).casefold():
            return f"{IS[name].format(known[name] or 'none')}, and {OPTIONS[name]} says {said}"
    return ""


def as_printed(template: Beside, plan: Plan) -> tuple[Plan, SheetPlan] | Unknown:
    """The plan that a template was made of on its paper, and its sheets; or that its nails are not where that has them.

    Raises InputError for a broken template.
    """
    if not as_planned(template.old, plan):
        return Unknown(f"{template.pdf.name} {ELSEWHERE}", elsewhere=True)
    paper = paper_as_printed(template.old, plan.job.paper, template.pdf.name)
    plan = plan.on(paper)
    return plan, sheets_on(template.old, plan, paper, None)[1]


def moved_since(then: Plan, now: Plan) -> str:
    """Which frames have other places from the two lines now, or the lines on the wall; "" where all is as it was."""
    was, are = ({hung.frame.id: _from_lines(hung, plan) for hung in plan.frames} for plan in (then, now))
    names = [name for name in was.keys() & are.keys() if not all(map(same, was[name].sides, are[name].sides))]
    if names:
        return f"{'frame' if len(names) == 1 else 'frames'} {some(sorted(names))}"
    lines = then.centre_line, then.level_line, now.centre_line, now.level_line
    return "" if same(lines[0], lines[2]) and same(lines[1], lines[3]) else "the whole group"


def _from_lines(hung: Hung, plan: Plan) -> Rect:
    return hung.rect.shifted(-plan.centre_line, -plan.level_line)


def anew(path: Path, why: str) -> str:
    """That the sheets are laid anew from a job, and what that means."""
    return (
        f"The sheets were laid anew from {path.name}: {why}. Paper that was printed before the job changed, or by "
        "another version, is then read wrong by millimetres."
    )
