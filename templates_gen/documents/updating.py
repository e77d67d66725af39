"""Old paper for a job that has changed: which sheets still show what they have to, and which are printed anew."""

from __future__ import annotations

from templates_gen.arranging.plan import Plan
from templates_gen.base.record import replace
from templates_gen.documents.old_paper import OldPaper, as_planned, sheets_on
from templates_gen.documents.sheets.layers import lay, sheet_forms, sheet_page
from templates_gen.documents.sheets.seen import Seen, seen
from templates_gen.drawing.lettering import Lettering
from templates_gen.printer.profile import Printer
from templates_gen.tiling.kept import idle, unserved
from templates_gen.tiling.sheet import SheetPlan


def updated(
    old_plan: Plan, plan: Plan, old: OldPaper, printer: Printer | None, lettering: Lettering
) -> SheetPlan | str:
    """The old sheets under the new plan, with those named that are printed anew and those that come off.

    A sheet is kept where every mark on it is now drawn at the same place, to a thousandth of a millimetre, but for its
    title, and for photo tags, which stay where the old file says.  It comes off where it shows nothing any more that
    has to be on paper, and something that was there.  A text says why the old cells cannot show the new plan.
    """
    # drawn as it is on this paper, which another cover than its job's may have been asked for
    old_plan = old_plan.on(plan.job.paper)
    asked, sheets = sheets_on(old, plan, plan.job.paper, printer)
    if why := unserved(asked, sheets):
        return why
    if not as_planned(old, old_plan):
        return "their nails are elsewhere than they would be planned now for the same job"
    if plan.job.paper.photo and old.photo is None:
        return "the file does not say where their photo tags are"
    before = _seen(old_plan, sheets_on(old, old_plan, plan.job.paper, printer)[1], lettering)
    now = _seen(plan, sheets, lettering)
    changed = [name for name in now if now[name] != before[name]]
    blank = idle(asked, sheets)
    return replace(
        sheets,
        printed=tuple(name for name in changed if name not in blank),
        gone=tuple(name for name in changed if name in blank),
    )


def _seen(plan: Plan, sheets: SheetPlan, lettering: Lettering) -> dict[str, Seen]:
    """What is seen of every sheet."""
    every = lay(plan, sheets, 0, lettering)
    forms = {form.name: form for form in sheet_forms(plan, sheets, every, lettering)}
    return {laid.so_far.sheet.name: seen(sheet_page(laid), forms) for laid in every}
