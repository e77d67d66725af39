"""The band under the wall: whose proof it is, its scale with a bar to check it by, and where to sign."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.units import INCH, other_unit
from templates_gen.base.words import UNIT_NAMES
from templates_gen.documents.of_job import whose
from templates_gen.documents.proof.frames import frame_key
from templates_gen.documents.proof.view import LINE, TITLE, Band, View, to_the_foot
from templates_gen.drawing.blocks import shortened, wrapped
from templates_gen.drawing.items import Item, Line, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.sizes import H5, H18, H25, H35, HAIR, NARROW

MOST_LINES = 4
"""Of the list of frames; it is left out where it would take more.  Our own design, no source."""

BAR = 62.0
"""mm that the scale bar may be long on paper.  Our own design, no source."""

BARS = {"in": (12 * INCH, "ft", 4), "cm": (1000.0, "m", 5), "mm": (1000.0, "m", 5)}
"""What the scale bar counts, feet for a job in inches, else metres (mm); and in how many parts."""

STEPS = (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0)
"""Feet or metres that one part of the bar may be: 1, 2, 5 and so on, common practice, no source."""

PRINTED = "when printed at actual size (100 %)"

SIGN_WORDS = "Agreed, to be hung as shown"

BETWEEN = 8.0
"""mm between the words on the left and the scale on the right.  Our own design, no source."""

DOWN, SCALE_DOWN, BAR_DOWN, BAR_HEIGHT, UNDER_BAR = (7.5, 12.4, 16.4), 6.5, 9.6, 1.2, 0.9
"""mm down from the band's top to the three lines on the left, to the scale, to its bar; the bar's height, and from it
to its figures.  Our own design, no source."""

SIGN_SHARE, DAY_SHARE, SIGN_GAP = 0.4, 0.25, 3.0
"""Of the band's width: the words before the signature at most, the line for the date; mm between words and lines.  Our
own design, no source."""


def band_of(plan: Plan, sign: bool, notes: Sequence[str], width: float, lettering: Lettering) -> Band:
    """The band on a page this wide (mm): what each frame is, as long as that is short, and the notes."""
    told = [line for note in notes for line in wrapped(note, H18, False, width, lettering)]
    keys = (_filled(entries, width, lettering) for entries in frame_key(plan.frames, plan.job.unit))
    return Band((*next((key for key in keys if len(key) <= MOST_LINES), []), *told), sign)


def _filled(entries: Sequence[str], width: float, lettering: Lettering) -> list[str]:
    """The entries in lines, none of them broken."""
    lines = [""]
    for entry in (shortened(entry, H18, False, width, lettering) for entry in entries):
        longer = f"{lines[-1]}  ·  {entry}" if lines[-1] else entry
        if lettering.width(longer, H18) <= width:
            lines[-1] = longer
        else:
            lines.append(entry)
    return lines


def band_items(plan: Plan, view: View, lettering: Lettering) -> Iterator[Item]:
    """All of the band: on the left what it is about, on the right the scale, then the lines, then the signature."""
    band, job = view.below, plan.job
    yield Line(band.x0, band.y1, band.x1, band.y1, NARROW)
    bar, reach = scale_bar(plan, view)
    printed = f"{to_the_foot(view.scale, job.unit) or 'to scale'} {PRINTED}"
    width = band.width - max(reach, lettering.width(printed, H18)) - BETWEEN
    sizes = f"Proof. Sizes in {UNIT_NAMES[job.unit]}, {UNIT_NAMES[other_unit(job.unit)]} beside them."
    large = H5 if lettering.width(job.title, H5, True) <= width else H35
    told = ((job.title, large, True, DOWN[0]), (whose(job), H25, False, DOWN[1]), (sizes, H18, False, DOWN[2]))
    for text, height, bold, down in told:
        cut = shortened(text, height, bold, width, lettering)
        if cut:
            yield Text(band.x0, band.y1 - down, cut, height, bold=bold)
    yield Text(band.x1, band.y1 - SCALE_DOWN, f"SCALE 1:{view.scale}", H35, "right", bold=True)
    yield from bar
    yield Text(band.x1, band.y1 - DOWN[2], printed, H18, "right")
    for number, line in enumerate(view.band.lines, 1):
        yield Text(band.x0, band.y1 - TITLE - number * LINE + 1.0, line, H18)
    if view.band.sign:
        yield from _signature(band, lettering)


def scale_bar(plan: Plan, view: View) -> tuple[list[Item], float]:
    """A bar of black and white parts with figures at the band's right end, and how far it reaches to the left (mm)."""
    unit, name, parts = BARS[plan.job.unit]
    step = max((step for step in STEPS if parts * step * unit / view.scale <= BAR), default=STEPS[0])
    long, band = step * unit / view.scale, view.below
    y, x0 = band.y1 - BAR_DOWN, band.x1 - parts * long
    items: list[Item] = []
    for part in range(parts):
        rect = Rect.sized(x0 + part * long, y, long, BAR_HEIGHT)
        items.append(Polygon(rect.corners, grey=0.0 if part % 2 == 0 else 1.0))
        items.append(Polygon(rect.corners, HAIR, False))
    figures = (0, "0", "left"), (1, f"{step:g}", "middle"), (parts, f"{parts * step:g} {name}", "right")
    for part, words, anchor in figures:
        items.append(Text(x0 + part * long, y - UNDER_BAR - H18, words, H18, anchor))
    return items, band.x1 - x0


def _signature(band: Rect, lettering: Lettering) -> Iterator[Item]:
    """Where to sign: words, a line for the name and one for the date."""
    y, gap = band.y0 + 2.0, SIGN_GAP
    words = shortened(SIGN_WORDS, H25, False, SIGN_SHARE * band.width, lettering)
    yield Text(band.x0, y, words, H25)
    start, day = band.x0 + lettering.width(words, H25) + gap, band.x1 - DAY_SHARE * band.width
    yield Line(start, y - 0.5, day - 2 * gap - lettering.width("Date", H25), y - 0.5, NARROW)
    yield Text(day - gap, y, "Date", H25, "right")
    yield Line(day, y - 0.5, band.x1, y - 0.5, NARROW)
