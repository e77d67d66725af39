"""Papers from the desk: each is made as its command makes it, and written beside the job file under its name."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial
from pathlib import Path
from typing import Any

import templates_gen as tg
from templates_gen.base.errors import InputError
from templates_gen.base.output import write_results
from templates_gen.base.record import Record
from templates_gen.base.words import counted
from templates_gen.desk.messages import Answer
from templates_gen.desk.opened import Opened, planned
from templates_gen.documents.print_shop import shop_note
from templates_gen.documents.set_aside import set_aside
from templates_gen.documents.take_along.page import POLICY
from templates_gen.drawing.lettering import job_lettering
from templates_gen.job.paper_sizes import own_paper
from templates_gen.printer.profile import Printer

KINDS = {
    ".pdf": "application/pdf", ".svg": "image/svg+xml", ".csv": "text/csv; charset=utf-8",
    ".html": "text/html; charset=utf-8", ".txt": "text/plain; charset=utf-8",
}  # fmt: skip
"""Media types of what is written, by the file's ending (IANA, media types)."""


class Made(Record, frozen=True):
    """A paper that was made: its files by what is added to the job's name, the one to read first in front, and what
    there is to say of it."""

    files: Mapping[str, bytes]
    said: str


def paper(opened: Opened, kind: str, printer: Printer | None, data: Mapping[str, Any]) -> tuple[list[str], str]:
    """Make one kind of paper of the job as it is saved, and write it: the names of its files, and what there is to say.

    Templates are corrected for a `printer`, and those of moved nails are made from the readings in `data`; with "over"
    in it a file that may be somebody else's is written over.  Raises InputError for a job that cannot be printed,
    OutputError where a file of that name may be somebody else's.
    """
    if kind == "template":
        made = _template(opened, printer)
    elif kind == "patches":
        made = _patches(opened, printer, data)
    elif kind in _MAKING:
        made = _MAKING[kind](opened)
    else:
        raise InputError("paper", f"found {kind!r}, expected one of template, {', '.join(_MAKING)}")
    places = {opened.path.with_name(f"{opened.path.stem}{part}"): content for part, content in made.files.items()}
    kept = set_aside(opened.path.with_suffix(".pdf"), made.files[".pdf"]) if kind == "template" else {}
    write_results({**places, **kept}, force=bool(data.get("over")))
    said = [made.said, *(f"the template before this one is kept: {before.name}" for before in kept)]
    return [place.name for place in places], "; ".join(said)


def written(opened: Opened, name: str) -> Answer | None:
    """A file that was written from this job, to be looked at; None for any other."""
    place, stem = opened.folder / name, opened.path.stem
    ours = Path(name).name == name and (name.startswith((f"{stem}.", f"{stem}-"))) and place.suffix in KINDS
    if not ours or place.is_symlink() or not place.is_file():
        return None
    shown = ("content-disposition", "inline; filename*=UTF-8''" + _encoded(name))
    return Answer(kind=KINDS[place.suffix], content=place.read_bytes(), headers=(shown, *_looked_at(place.suffix)))


def _looked_at(ending: str) -> tuple[tuple[str, str], ...]:
    """A page of its own has its pictures and its words to itself, and asks nobody."""
    if ending not in (".html", ".svg"):
        return ()
    return (("content-security-policy", f"{POLICY}; sandbox allow-scripts allow-modals"),)


def _encoded(name: str) -> str:
    from urllib.parse import quote

    return quote(name, safe="")


def _template(opened: Opened, printer: Printer | None) -> Made:
    job = tg.read_job(opened.path)
    if job.paper.kind == "one piece":
        printer = None  # a print shop's is another
    plan = tg.plan_wall(job)
    findings = tg.find(plan)
    if stops := [finding.text for finding in findings if finding.level == "stop"]:
        raise InputError("", f"no template yet: {stops[0]}", "settle what is marked stop first")
    sheets = tg.plan_sheets(plan, job.paper, printer)
    made = tg.finish_template(plan, findings, sheets)
    files = {".pdf": made.pdf}
    if made.first is not None:
        note = shop_note(sheets, job.unit, f"{opened.path.stem}.pdf")
        files = {"-print-shop.txt": note.encode(), "-first-pages.pdf": made.first, **files}
    return Made(files, f"{counted(made.sheets, 'sheet')} of {job.paper.name} paper")


def _proof(opened: Opened, ending: str = "pdf") -> Made:
    from templates_gen.documents.proof.making import proof_of

    made = proof_of(planned(opened), ending)
    return Made({f"-proof.{ending}": made.content}, f"the wall at 1:{made.scale}")


def _measuring(opened: Opened) -> Made:
    from templates_gen.documents.measuring.sheet import measuring_sheet

    job = tg.read_job(opened.path)
    said = counted(len(job.frames), "frame")
    return _drawn("measuring", job, lambda lettering: measuring_sheet(job, own_paper(job), lettering), said)


def _labels(opened: Opened) -> Made:
    from templates_gen.documents.labels.label_sheet import label_sheet
    from templates_gen.documents.labels.labels import labels

    plan = planned(opened)
    sheet = label_sheet(own_paper(plan.job), plan.job.unit)
    said = counted(len(plan.frames), "label")
    return _drawn("labels", plan.job, lambda lettering: labels(plan, sheet, lettering), said)


def _schedule(opened: Opened) -> Made:
    from templates_gen.documents.schedule.table import as_csv

    plan = planned(opened)
    return Made({"-schedule.csv": as_csv(plan, tg.find(plan)).encode()}, counted(len(plan.nails), "nail"))


def _guide(opened: Opened) -> Made:
    from templates_gen.documents.take_along.page import make_guide, sheets_beside

    plan, sheets, _ = sheets_beside(opened.path, planned(opened))
    return Made({"-guide.html": make_guide(plan, sheets)}, "send it to the phone, and open it there")


def _form(opened: Opened) -> Made:
    from templates_gen.documents.correcting.form import form_pages

    plan = planned(opened)
    said = counted(len(plan.frames), "frame")
    return _drawn("readings", plan.job, lambda lettering: form_pages(plan, lettering), said)


def _patches(opened: Opened, printer: Printer | None, data: Mapping[str, Any]) -> Made:
    from templates_gen.desk.reading_back import cured
    from templates_gen.documents.correcting.patch_pages import patch_pages

    plan, done = cured(opened, data)
    plan = plan.on(own_paper(plan.job))
    said = counted(len({move.old for one in done for move in one.correction.moves}), "nail")
    return _drawn("patches", plan.job, lambda lettering: patch_pages(plan, done, lettering, printer), said)


def _scale_page(opened: Opened) -> Made:
    from templates_gen.documents.scale_page import scale_of, scale_page

    job = tg.read_job(opened.path)
    scale = scale_of(own_paper(job).name)
    said = f"print it on {scale.paper} paper at actual size, and measure"
    return _drawn("scale-page", job, lambda lettering: scale_page(scale, lettering), said)


def _photo_card(opened: Opened) -> Made:
    from templates_gen.documents.photo_card import card_pages, cards_of

    job = tg.read_job(opened.path)
    cards = cards_of(own_paper(job).name)
    said = f"two cards on {cards[0].paper} paper: tape one to the wall before you photograph it, or both"
    return _drawn("photo-card", job, lambda lettering: card_pages(cards, lettering), said)


def _drawn(name: str, job: tg.Job, draw: Callable[[tg.Lettering], tg.Template], said: str) -> Made:
    """Pages in the job's lettering."""
    lettering = job_lettering(job)
    return Made({f"-{name}.pdf": tg.write_pdf(draw(lettering), lettering)}, said)


_MAKING: Mapping[str, Callable[[Opened], Made]] = {
    "proof": _proof, "proof picture": partial(_proof, ending="svg"), "measuring": _measuring, "labels": _labels,
    "schedule": _schedule, "form": _form, "guide": _guide, "scale page": _scale_page, "photo card": _photo_card,
}  # fmt: skip
