"""Old paper for a job that has changed: which sheets still show what they have to, and which are printed anew."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import same
from templates_gen.base.record import replace
from templates_gen.documents.old_paper import OldPaper, sheets_on
from templates_gen.documents.on_wall import papers_of
from templates_gen.documents.photographed import Papers
from templates_gen.documents.sheets.layers import Laid, lay, sheet_forms, sheet_page
from templates_gen.documents.sheets.seen import Seen, seen
from templates_gen.documents.template import papers_laid
from templates_gen.drawing.lettering import Lettering
from templates_gen.printer.profile import Printer
from templates_gen.tiling.kept import idle, unserved
from templates_gen.tiling.sheet import SheetPlan


def updated(
    old_plan: Plan, plan: Plan, old: OldPaper, printer: Printer | None, lettering: Lettering
) -> SheetPlan | str:
    """The old sheets under the new plan, with those named that are printed anew and those that come off.

    A sheet is kept where every mark on it is now drawn at the same place, to a thousandth of a millimetre, but for its
    title.  It comes off where it shows nothing any more that has to be on paper, and something that was there.  A text
    says why the old cells cannot show the new plan.
    """
    # drawn as it is on this paper, which another cover than its job's may have been asked for
    old_plan = replace(old_plan, job=replace(old_plan.job, paper=plan.job.paper))
    asked, sheets = sheets_on(old, plan, plan.job.paper, printer)
    if why := unserved(asked, sheets):
        return why
    if plan.job.paper.photo and old.photo is None:
        return "the file does not say where their photo tags are"
    old_sheets = sheets_on(old, old_plan, plan.job.paper, printer)[1]
    before = _seen(old_plan, old_sheets, lay(old_plan, old_sheets, 0, lettering), lettering)
    every = lay(plan, sheets, 0, lettering)
    now = _seen(plan, sheets, every, lettering)
    others = _other_tags(papers_of(old, "the old template"), papers_laid(plan, sheets, every)) if old.photo else ()
    changed = [name for name in now if now[name] != before[name] or name in others]
    blank = idle(asked, sheets)
    return replace(
        sheets,
        printed=tuple(name for name in changed if name not in blank),
        gone=tuple(name for name in changed if name in blank),
    )


def _seen(plan: Plan, sheets: SheetPlan, every: Sequence[Laid], lettering: Lettering) -> dict[str, Seen]:
    """What is seen of every sheet."""
    forms = {form.name: form for form in sheet_forms(plan, sheets, every, lettering)}
    return {laid.so_far.sheet.name: seen(sheet_page(laid), forms) for laid in every}


def _other_tags(then: Papers, now: Papers) -> set[str]:
    """The sheets whose photo tags were printed elsewhere than they are drawn now, as by another version."""
    x, y = now.centre_line, now.level_line
    was = {tag.number: tag.box for tag in then.tags}
    here = {tag.number: tag.box.shifted(-x, -y) for tag in now.tags}
    names = {tag.number: tag.sheet for tag in (*then.tags, *now.tags)}
    alike = {at for at in was.keys() & here.keys() if all(map(same, was[at].sides, here[at].sides))}
    return {name for number, name in names.items() if number not in alike}
