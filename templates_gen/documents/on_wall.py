"""Which paper is on the wall: its template's own file says it; without one the sheets are laid anew from the job."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

from templates_gen.base.errors import InputError
from templates_gen.base.record import Record, replace
from templates_gen.documents.old_paper import OldPaper, inside, made_from
from templates_gen.documents.photographed import Papers
from templates_gen.documents.tagged_paper import told
from templates_gen.drawing.pdf.attached import Attached
from templates_gen.job.model import Job

UPDATE = "-update"
"""What the name of a template ends in that goes on with older paper."""

OPTIONS = {"name": "--paper", "cover": "--cover", "trim": "--trim", "printer": "--printer"}
IS = {"name": "is on {} paper", "cover": "has cover {}", "trim": "has trim {}", "printer": "was drawn for printer {}"}
"""The options that say how paper was printed, and the words for that, by the field of the paper."""


class OnWall(Record, frozen=True):
    """The taped paper, the name of the file that it is known by, and what there is to say of that: level and text."""

    papers: Papers
    name: str
    said: tuple[tuple[str, str], ...] = ()


def by_template(pdf: Path) -> OnWall:
    """The paper of a template.  Raises InputError for one that does not say where its photo tags are."""
    return OnWall(papers_of(inside(pdf)[1], pdf.name), pdf.name)


def by_job(
    path: Path, job: Job, wall: Path | None, asked: Mapping[str, str | None], lay: Callable[[], Papers]
) -> OnWall:
    """The paper of the template beside a job's file, or as `lay` lays it now where none there says it.

    `asked` is how it was printed, as far as somebody says it: fields of the paper, and the "printer" by its name.
    Raises InputError as `lay` does.
    """
    why = ""
    for pdf, older in beside(path, wall):
        try:
            held, old = inside(pdf)
            papers = papers_of(old, pdf.name)
        except InputError as error:
            why = why or f"{error.where} {error.problem}"
            continue
        if other := _otherwise(old, asked):
            why = why or f"{pdf.name} {other}"
            continue
        return OnWall(papers, pdf.name, (("note", " ".join(_taken(path, job, held, pdf, older))),))
    why = why or f"no {_stem(path, wall)}.pdf lies beside it"
    return OnWall(lay(), path.name, (("warn", _anew(path, why)),))


def beside(path: Path, wall: Path | None = None) -> Iterator[tuple[Path, str]]:
    """The templates beside a job's file that may be on the wall, the newest first, each with the name of an older one.

    Those for another `wall` come first; where there are some, that of the job itself may serve there.
    """
    for stem in dict.fromkeys((_stem(path, wall), path.stem)):
        places = [path.with_name(f"{stem}{ending}.pdf") for ending in (UPDATE, "")]
        there = sorted(filter(Path.is_file, places), key=lambda place: -place.stat().st_mtime_ns)
        yield from ((place, "".join(other.name for other in there[at + 1 :])) for at, place in enumerate(there))
        if not there:
            return


def _stem(path: Path, wall: Path | None) -> str:
    return f"{path.stem}-{wall.stem}" if wall else path.stem


def papers_of(old: OldPaper, where: str) -> Papers:
    """What a photograph of old paper is compared with.  Raises InputError where the file does not say it."""
    if not old.paper.get("photo"):
        raise InputError(where, "has no photo tags on its sheets", "print the template with --photo-marks")
    if old.photo is None:
        hint = "name its job instead: its sheets are then laid anew"
        raise InputError(where, "does not say where its photo tags are: an earlier version made it", hint)
    try:
        cells = {name: cell.rect for name, cell in zip(old.names, old.cells, strict=True)}
        return told(old.photo, cells, old.printer is not None)
    except (ValueError, KeyError, TypeError, IndexError):
        raise InputError(where, "says nothing of its photo tags that can be read", "make the template again") from None


def _otherwise(old: OldPaper, asked: Mapping[str, str | None]) -> str:
    """How paper differs from what is said of it; "" where it does not."""
    printer = (old.printer or {}).get("name")
    known = {**{name: old.paper.get(name) for name in IS}, "printer": printer}
    for name, said in asked.items():
        if said is not None and said.casefold() != str(known[name]).casefold():
            return f"{IS[name].format(known[name] or 'none')}, and {OPTIONS[name]} says {said}"
    return ""


def _taken(path: Path, job: Job, held: Attached, pdf: Path, older: str) -> Iterator[str]:
    """That a template beside the job was taken for the paper on the wall."""
    yield f"The sheets are those of {pdf.name}, beside {path.name}."
    if older:
        yield f"{older} lies there, too, and is older."
    if pdf.stem in (path.stem, path.stem + UPDATE):  # of the job's own wall
        job = replace(job, sources=tuple(source for source in job.sources if source[0] != job.moved_to))
    if job.sources and not made_from(held, job):
        yield f"{path.name} has changed since: what is told is by that paper, not by the job as it is now."
    yield f"Is other paper on the wall? Then name its PDF in place of {path.name}."


def _anew(path: Path, why: str) -> str:
    return (
        f"The sheets were laid anew from {path.name}: {why}. Paper that was printed before the job changed, or by "
        "another version, is then read wrong by millimetres. Where you have the PDF that it was printed from, name "
        f"that in place of {path.name}."
    )
