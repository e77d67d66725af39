"""What every layer puts on a sheet that is no line, as boxes: none of it may lie on what another layer puts there."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from templates_gen.base.geometry import Rect
from templates_gen.documents.sheets.layer import Drawn
from templates_gen.documents.sheets.layers import LAYERS, Laid
from templates_gen.documents.sheets.rulers import rulers_form
from templates_gen.drawing.items import Item, Line, Polygon, Text, Use
from templates_gen.drawing.lettering import Lettering

LETTERING = Lettering()

SHARED = 0.02
"""mm that boxes may share: far below what an eye sees.  Common practice, no source."""

LONGEST_TICK = 4.0
"""mm: no tick of a sheet's ruler is longer.  Our own design, no source."""

KINDS = (
    "black corner", "title", "frame", "nail", "long line", "target", "label of a nail", "ruler",
    "figure of a drop scale", "figure of the level line", "name of a line", "distance", "label of a frame",
    "word under a label", "number of the sheet", "name at a join", "photo tag",
)  # fmt: skip
"""What every layer draws, in their order."""

assert len(LAYERS) == len(KINDS)

LETTERED = (1, 6, 8, 9, 10, 11, 12, 13, 15)
TAKEN = ("nail", "target", "number of the sheet", "photo tag")
"""Layers of texts, and those that take what they draw and nothing else."""

GOES_ON = {
    "drop scale": {"title", "ruler", "registration mark", "name at a join", "figure of a drop scale", "nail", "target"}
}
"""What goes on from sheet to sheet runs under what every sheet has for itself; a drop scale has its own figures, and
its nail beside it."""


def boxes(laid: Laid) -> Iterator[tuple[str, Rect]]:
    """Every mark and every text of a sheet, by its kind (wall mm)."""
    so_far, drawn = laid.so_far, dict(zip(KINDS, laid.drawn.values(), strict=True))
    dx, dy = so_far.to_page
    for at in LETTERED:
        done = drawn[KINDS[at]]
        yield from ((KINDS[at], LETTERING.box(item)) for item in (*done.items, *done.over) if isinstance(item, Text))
    for item in _rulers(laid, drawn["ruler"]):
        box = LETTERING.box(item) if isinstance(item, Text) else around(item)
        if isinstance(item, Text) or max(box.width, box.height) < LONGEST_TICK:
            yield "ruler", box.shifted(-dx, -dy)
    yield from (("black corner", around(item)) for item in drawn["black corner"].items)
    for kind in TAKEN:
        yield from ((kind, box) for box in drawn[kind].taken if kind != "target" or drawn[kind].items)
    yield from (("drop scale", scale.zone) for hung in so_far.part.frames for scale in so_far.scales[hung.frame.id])
    yield from (("registration mark", mark.box) for mark in so_far.part.marks if not so_far.sheets.hides)


def _rulers(laid: Laid, drawn: Drawn) -> Iterator[Item]:
    sheets, sheet = laid.so_far.sheets, laid.so_far.sheet
    for item in drawn.page_items:
        assert isinstance(item, Use)
        plain = rulers_form(sheet.page, sheets.paper.overlap, laid.so_far.plan.job.unit, LETTERING)
        yield from (drawn.forms or (plain,))[0].items


def around(item: Item) -> Rect:
    """The box about a line or an area."""
    if isinstance(item, Line):
        xs, ys = [item.x0, item.x1], [item.y0, item.y1]
    else:
        assert isinstance(item, Polygon)
        xs, ys = [x for x, _ in item.points], [y for _, y in item.points]
    return Rect(min(xs), min(ys), max(xs), max(ys))


def on_each_other(laid: Laid) -> list[tuple[str, str, Rect]]:
    """The marks and texts of different layers that lie on each other, and where they do (wall mm)."""
    window = laid.so_far.sheet.window
    dx, dy = laid.so_far.to_page
    paper = laid.so_far.sheet.page.printable.shifted(-dx, -dy)
    seen = [(kind, part) for kind, box in boxes(laid) if (part := box.meet(paper if kind in OVER else window))]
    return [
        (one, two, shared)
        for (one, first), (two, second) in combinations(seen, 2)
        if first.x0 < second.x1 and second.x0 < first.x1  # of most pairs, nothing else has to be asked
        if one != two and one not in GOES_ON.get(two, ()) and two not in GOES_ON.get(one, ())
        if (shared := first.meet(second)) and min(shared.width, shared.height) > SHARED
    ]


OVER = ("title", "ruler", "distance")
"""What may stand beyond the window, on the blank paper."""
