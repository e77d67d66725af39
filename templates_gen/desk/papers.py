"""Papers from the desk: each is made as its command makes it, and written beside the job file under its name."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial
from pathlib import Path
from typing import Any

import templates_gen as tg
from templates_gen.base.errors import InputError
from templates_gen.base.output import write_result
from templates_gen.base.record import Record, replace
from templates_gen.base.words import counted
from templates_gen.desk.messages import Answer
from templates_gen.desk.opened import Opened
from templates_gen.documents.print_shop import shop_note
from templates_gen.documents.take_along.page import POLICY
from templates_gen.printer.profile import Printer

KINDS = {
    ".pdf": "application/pdf", ".svg": "image/svg+xml", ".csv": "text/csv; charset=utf-8",
    ".html": "text/html; charset=utf-8", ".txt": "text/plain; charset=utf-8",
}  # fmt: skip
"""Media types of what is written, by the file's ending (IANA, media types)."""


class Paper(Record, frozen=True):
    """A paper that was written: the names of its files, the one to read first in front, and what there is to say."""

    files: tuple[str, ...]
    said: str


def paper(opened: Opened, kind: str, printer: Printer | None = None, data: Mapping[str, Any] | None = None) -> Paper:
    """Make one kind of paper of the job as it is saved, and write it; templates are corrected for a `printer`, and
    those of moved nails are made from the readings in `data`.

    Raises InputError for a job that cannot be printed, OutputError where a file of that name is somebody else's.
    """
    if kind == "template":
        return _template(opened, printer)
    if kind == "patches":
        return _patches(opened, printer, data or {})
    if kind not in _MAKING:
        raise InputError("paper", f"found {kind!r}, expected one of template, {', '.join(_MAKING)}")
    return _MAKING[kind](opened)


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


def _template(opened: Opened, printer: Printer | None) -> Paper:
    job = tg.read_job(opened.path)
    if job.paper.kind == "one piece":
        printer = None  # a print shop's is another
    plan = tg.plan_wall(job)
    findings = tg.find(plan)
    if stops := [finding.text for finding in findings if finding.level == "stop"]:
        raise InputError("", f"no template yet: {stops[0]}", "settle what is marked stop first")
    sheets = tg.plan_sheets(plan, job.paper, printer)
    made = tg.finish_template(plan, findings, sheets)
    files = _write(opened, {"": made.pdf, **({"-first-pages": made.first} if made.first else {})}, ".pdf")
    if made.first is not None:
        note = shop_note(sheets, job.unit, files[0])
        files = (*files, *_write(opened, {"-print-shop": note.encode()}, ".txt"))
    return Paper(files[::-1], f"{counted(made.sheets, 'sheet')} of {job.paper.name} paper")


def _proof(opened: Opened, ending: str = "pdf") -> Paper:
    from templates_gen.documents.proof.making import proof_of

    made = proof_of(_plan(opened), ending)
    return Paper(_write(opened, {"-proof": made.content}, f".{ending}"), f"the wall at 1:{made.scale}")


def _measuring(opened: Opened) -> Paper:
    from templates_gen.documents.measuring.sheet import measuring_sheet
    from templates_gen.job.paper_sizes import own_paper

    job = tg.read_job(opened.path)
    lettering = _lettering(job)
    sheet = measuring_sheet(job, own_paper(job), lettering)
    return Paper(
        _write(opened, {"-measuring": tg.write_pdf(sheet, lettering)}, ".pdf"), counted(len(job.frames), "frame")
    )


def _labels(opened: Opened) -> Paper:
    from templates_gen.documents.labels.label_sheet import label_sheet
    from templates_gen.documents.labels.labels import labels
    from templates_gen.job.paper_sizes import own_paper

    plan = _plan(opened)
    lettering = _lettering(plan.job)
    drawn = labels(plan, label_sheet(own_paper(plan.job), plan.job.unit), lettering)
    return Paper(
        _write(opened, {"-labels": tg.write_pdf(drawn, lettering)}, ".pdf"), counted(len(plan.frames), "label")
    )


def _schedule(opened: Opened) -> Paper:
    from templates_gen.documents.schedule.table import as_csv

    plan = _plan(opened)
    files = _write(opened, {"-schedule": as_csv(plan, tg.find(plan)).encode()}, ".csv")
    return Paper(files, counted(len(plan.nails), "nail"))


def _guide(opened: Opened) -> Paper:
    from templates_gen.documents.take_along.page import make_guide

    plan = _plan(opened)
    return Paper(_write(opened, {"-guide": make_guide(plan)}, ".html"), "send it to the phone, and open it there")


def _form(opened: Opened) -> Paper:
    from templates_gen.documents.correcting.form import form_pages

    plan = _plan(opened)
    lettering = _lettering(plan.job)
    pages = tg.write_pdf(form_pages(plan, lettering), lettering)
    return Paper(_write(opened, {"-readings": pages}, ".pdf"), counted(len(plan.frames), "frame"))


def _patches(opened: Opened, printer: Printer | None, data: Mapping[str, Any]) -> Paper:
    from templates_gen.desk.reading_back import cured
    from templates_gen.documents.correcting.patch_pages import patch_pages
    from templates_gen.job.paper_sizes import own_paper

    plan, done = cured(opened, data)
    plan = replace(plan, job=replace(plan.job, paper=own_paper(plan.job)))
    lettering = _lettering(plan.job)
    pages = tg.write_pdf(patch_pages(plan, done, lettering, printer), lettering)
    moved = {move.old for one in done for move in one.correction.moves}
    return Paper(_write(opened, {"-patches": pages}, ".pdf"), counted(len(moved), "nail"))


def _scale_page(opened: Opened) -> Paper:
    from templates_gen.documents.scale_page import scale_of, scale_page
    from templates_gen.job.paper_sizes import own_paper

    job = tg.read_job(opened.path)
    lettering, scale = _lettering(job), scale_of(own_paper(job).name)
    files = _write(opened, {"-scale-page": tg.write_pdf(scale_page(scale, lettering), lettering)}, ".pdf")
    return Paper(files, f"print it on {scale.paper} paper at actual size, and measure")


def _photo_card(opened: Opened) -> Paper:
    from templates_gen.documents.photo_card import card_pages, cards_of
    from templates_gen.job.paper_sizes import own_paper

    job = tg.read_job(opened.path)
    lettering, cards = _lettering(job), cards_of(own_paper(job).name)
    files = _write(opened, {"-photo-card": tg.write_pdf(card_pages(cards, lettering), lettering)}, ".pdf")
    return Paper(files, f"two cards on {cards[0].paper} paper: tape one to the wall before you photograph it, or both")


def _lettering(job: tg.Job) -> tg.Lettering:
    return tg.Lettering((Path(job.paper.font),) if job.paper.font else ())


def _plan(opened: Opened) -> tg.Plan:
    return tg.plan_wall(tg.read_job(opened.path))


_MAKING: Mapping[str, Callable[[Opened], Paper]] = {
    "proof": _proof, "proof picture": partial(_proof, ending="svg"), "measuring": _measuring, "labels": _labels,
    "schedule": _schedule, "form": _form, "guide": _guide, "scale page": _scale_page, "photo card": _photo_card,
}  # fmt: skip


def _write(opened: Opened, contents: Mapping[str, bytes], ending: str) -> tuple[str, ...]:
    places = {opened.path.with_name(f"{opened.path.stem}{part}{ending}"): content for part, content in contents.items()}
    for place, content in places.items():
        write_result(place, content)
    return tuple(place.name for place in places)
