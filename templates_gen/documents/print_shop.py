"""What to ask a print shop for: the roll, and the lines to send along with the file.

They are a file of their own beside the template, so that they can be sent with it or pasted into a shop's form, and are
still there when the terminal is closed.  They name nobody.
"""

from __future__ import annotations

from templates_gen.base.output import OUR_TEXT
from templates_gen.base.units import show, show_both
from templates_gen.base.words import counted
from templates_gen.drawing.items import POINT
from templates_gen.job.paper_sizes import Roll, roll_for, usual_rolls
from templates_gen.tiling.page import Page
from templates_gen.tiling.rulers import rulers
from templates_gen.tiling.sheet import SheetPlan

BOND = "matte uncoated bond paper of 80 to 90 g/m² (20 to 24 lb)"
"""What lies flat, takes tape and pencil, and is cheap.  Common practice, no source; pounds from memory."""


def page_size(page: Page, unit: str) -> str:
    """A page's size in words."""
    return f"{show_both(page.width * POINT, unit)} wide and {show_both(page.height * POINT, unit)} high"


def roll_of(sheets: SheetPlan, unit: str) -> Roll | None:
    """The narrowest usual roll that takes the pages; None where none is as wide."""
    return roll_for(sheets.page.width * POINT, unit)


def ask_for(sheets: SheetPlan, unit: str, strips: str = '--paper "{}"') -> str:
    """What to ask a print shop for, in a line; `strips` says how paper off such a roll is asked for."""
    pages = "" if len(sheets.sheets) == 1 else f"{counted(len(sheets.sheets), 'panel')}, "
    if roll := roll_of(sheets, unit):
        return f"{pages}ask a print shop for a {roll.name} roll"
    widest = usual_rolls(unit)[-1].name
    least = show(min(sheets.page.width, sheets.page.height) * POINT, unit)
    return f"{pages}no usual roll is {least} wide; in strips: {strips.format(f'roll {widest}')}"


def shop_note(sheets: SheetPlan, unit: str, file: str) -> str:
    """The lines to send along with the template that is called so."""
    count = len(sheets.sheets)
    level, plumb = (
        show_both(ruler.length, unit) for ruler in rulers(sheets.sheets[0].page, sheets.paper.overlap, unit)
    )
    lying = sheets.sheets[0].page is not sheets.page
    pages, right = ("the page", "It is") if count == 1 else ("every page", "They are")
    long = f"{level} (along the page's level side) and {plumb} long"
    if level == plumb or lying:  # a drawing on its side has no level side that a shop could name
        long = f"both {level} long" if level == plumb else f"{level} and {plumb} long"
    lines = [
        f"{OUR_TEXT} about {file}:",
        "",
        f"- {counted(count, 'page')}, {page_size(sheets.page, unit)}, {_from_roll(sheets, unit)}",
        "- at 100 %, actual size: no scaling, not fitted to the page, nothing cut off",
        "- in black, on one side, one copy",
        f"- on {BOND}",
        "- rolled, please, not folded",
        *(["- the drawing lies on its side so that it fits the roll: do not turn it"] if lying else []),
        "",
        f"{right} right if the two rulers on {pages}, measured from end to end,",
        f"are {long}.",
        "If not, that page was scaled: please print it again at 100 %.",
    ]
    return "\n".join(lines) + "\n"


def _from_roll(sheets: SheetPlan, unit: str) -> str:
    if sheets.paper.kind == "roll":
        return f"from a roll of {show_both(sheets.paper.width, unit)}"
    if roll := roll_of(sheets, unit):
        return f"from a roll of {roll.both}"
    return f"wider than a roll of {usual_rolls(unit)[-1].both}"
