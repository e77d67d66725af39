"""The words of the first page: how to print and tape, and what to have ready.

The print dialogs' words are those on screen.  Nothing here says that a wall, a nail or a spot is safe.
"""

from __future__ import annotations

from templates_gen.base.units import show_both
from templates_gen.drawing.items import POINT
from templates_gen.printer.profile import Printer, lean_words
from templates_gen.tiling.rulers import Ruler
from templates_gen.tiling.sheet import SheetPlan

PRINT_WORDS = (
    "Print this page alone first, at actual size, on one side, with borderless printing off. What the dialogs call it:",
    "Acrobat: Actual size.  Chrome, Edge: More settings, Scale, Default or Custom 100.  Firefox: Scale 100.  "
    "macOS: Scale 100 %, not Scale to Fit.  Evince: Page Scaling, None.  Okular: Scale mode, None; print original "
    "size.  Command line: lp -o print-scaling=none.  Driver pages that resize: Actual size or No scaling.",
)

SHOP_WORDS = (
    "Print it at actual size (100 %), on one side, in black, on plain paper from the roll; not fitted to the page, and "
    "nothing added or cut off at its edges."
)

TOOLS = (
    "tape measure", "spirit level", "pencil", "scissors", "knife", "low-tack tape", "string", "detector",
    "eye protection",
)  # fmt: skip


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


def shop_words(sheets: SheetPlan, rulers: tuple[Ruler, Ruler], unit: str) -> tuple[str, str]:
    """What to ask of the print shop or plotter, and what the prints must measure."""
    count, page = len(sheets.sheets), sheets.page
    level, plumb = (show_both(ruler.length, unit) for ruler in rulers)
    size = f"{show_both(page.width * POINT, unit)} wide and {show_both(page.height * POINT, unit)} high"
    pages = "1 page" if count == 1 else f"{count} pages"
    return (
        f"The other file has {pages}, {size}, for {sheets.paper.name} paper. {SHOP_WORDS}"
        if sheets.paper.kind == "roll"
        else f"The other file has {pages}, {size}, for a print shop or plotter. {SHOP_WORDS}",
        f"Before you pay: measure the two rulers of {'the page' if count == 1 else 'every page'} from end to end: the "
        f"level one at its foot must be {level} long, the upright one at its left {plumb}. These first pages may be "
        "printed at any size.",
    )
