"""The words of the first page: how to print and tape, and what to have ready.

The print dialogs' words are those on screen.  Nothing here says that a wall, a nail or a spot is safe.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.base.units import show_both
from templates_gen.base.words import counted, some
from templates_gen.checks.ladder import stood_on
from templates_gen.documents.print_shop import BOND, page_size, roll_of
from templates_gen.hanging.studs import on_stud
from templates_gen.hanging.weight_classes import on_bare_nails, wants_two
from templates_gen.printer.profile import Printer, lean_words
from templates_gen.tiling.rulers import Ruler, rulers
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.effort import effort

PRINT_WORDS = (
    "Print this page alone first, at actual size, on one side, with borderless printing off. What the dialogs call it:",
    "Acrobat: Actual size.  Chrome, Edge: More settings, Scale, Default or Custom 100.  Firefox: Scale 100.  "
    "macOS: Scale 100 %, not Scale to Fit.  Evince: Page Scaling, None.  Okular: Scale mode, None; print original "
    "size.  Command line: lp -o print-scaling=none.  Driver pages that resize: Actual size or No scaling.",
)

SHOP_WORDS = (
    f"Print it at actual size (100 %), on one side, in black, on {BOND}; not fitted to the page, and nothing added or "
    "cut off at its edges. The lines to send along are in a small text file beside it."
)

TOOLS = (
    "tape measure", "spirit level", "pencil", "scissors", "knife", "low-tack tape", "string", "detector",
    "eye protection",
)  # fmt: skip


TO_WRITE = {"in": "inches, to the nearest 1/16", "cm": "centimetres, to 0.1", "mm": "whole millimetres"}
"""What is measured is written in."""


def ruler_words(rulers: tuple[Ruler, Ruler], unit: str) -> str:
    """What the two rulers of the page must measure."""
    level, plumb = (show_both(ruler.length, unit) for ruler in rulers)
    return (
        f"Measure the two rulers of this page from end to end: the level one must be {level} long, the upright "
        f"one on the left {plumb}. If both are right, print the rest the same way; measure the rulers of every sheet."
    )


def printer_words(printer: Printer) -> str:
    """Which printer the pages were corrected for, and by how much."""
    skew = f", leaning {lean_words(printer)}" if printer.readings.diagonals else ""
    return (
        f"Drawn for the printer “{printer.name}” as it was measured on {printer.paper} paper on {printer.date}: it "
        f"prints {printer.across:.2%} across and {printer.along:.2%} along{skew}, and this template allows for that. "
        "Print it on no other printer."
    )


def sheets_words(sheets: SheetPlan) -> str:
    """How many sheets there are, or of how many are printed anew."""
    count = counted(len(sheets.sheets), "sheet")
    if sheets.printed is None:
        return f"The template is {count}"
    comes = "comes" if len(sheets.printed) == 1 else "come"
    return f"Of the template's {count}, {len(sheets.printed)} {comes} anew, and the others are on the paper you have"


def work_words(sheets: SheetPlan) -> Iterator[str]:
    """What there is to tape, and how long it takes; nothing where all is one page."""
    if len(sheets.sheets) > 1:
        yield f"To tape it: {effort(sheets).work}, by our own estimate."


def shop_words(sheets: SheetPlan, unit: str) -> tuple[str, str]:
    """What to ask of the print shop or plotter, and what the prints must measure."""
    count, first = len(sheets.sheets), sheets.sheets[0].page
    level, plumb = (show_both(ruler.length, unit) for ruler in rulers(first, sheets.paper.overlap, unit))
    pages, roll = counted(count, "page"), roll_of(sheets, unit)
    paper = "a print shop or plotter"
    if sheets.paper.kind == "roll":
        paper = f"{paper}, off a roll of {show_both(sheets.paper.width, unit)}"
    ask = f" Ask for a roll of {roll.both}." if roll and sheets.paper.kind != "roll" else ""
    lying = " The drawing lies on its side on the page so that it fits the roll." if first is not sheets.page else ""
    return (
        f"The other file has {pages}, {page_size(sheets.page, unit)}, for {paper}.{ask}{lying} {SHOP_WORDS}",
        f"Before you pay: measure the two rulers of {'the page' if count == 1 else 'every page'} from end to end: the "
        f"level one at the drawing's foot must be {level} long, the upright one at its left {plumb}. These first pages "
        "may be printed at any size.",
    )


_FIXINGS = {"nail": "nail", "hook": "picture hook", "screw": "screw"}


def own_tools(plan: Plan) -> Iterator[str]:
    """What this job needs besides the usual: what goes into the wall, those for frames not measured yet too, and what
    drives it.
    """
    if plan.slope:
        yield "straight batten"
    kinds = Counter(hung.frame.fixing.kind for hung in plan.frames for _ in hung.bearings)
    for kind, count in kinds.items():
        yield counted(count, _FIXINGS[kind])
    yield from dict.fromkeys("screwdriver" if kind == "screw" else "hammer" for kind in kinds)
    if kinds["screw"]:
        yield "drill and bits"
    # screws may have nothing but masonry, plaster or board around them
    wall = plan.job.wall
    screwed = [hung for hung in plan.frames if hung.frame.fixing.kind == "screw" and wall.build != "timber"]
    if plugs := sum(not on_stud(bearing.x, wall) for hung in screwed for bearing in hung.bearings):
        yield "1 plug or anchor" if plugs == 1 else f"{plugs} plugs or anchors"
    if unrated := [frame.id for frame in plan.job.frames if on_bare_nails(frame)]:
        yield f"rated fixings in place of nails ({some(unrated)})"
    if steps := stood_on(plan):
        yield steps
    if two := [frame.id for frame in plan.job.frames if wants_two(frame)]:
        yield f"second person ({some(two)})"
