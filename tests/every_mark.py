"""Where every kind of mark, line and lettering is on the sheets of a job, and how it looks there from two metres."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from templates_gen.base.geometry import Rect
from templates_gen.documents.sheets.layer import Drawn
from templates_gen.documents.sheets.layers import Laid, lay
from templates_gen.documents.sheets.rulers import ruler_ends
from templates_gen.drawing.items import Polygon, Text, moved
from tests.apart import KINDS, LETTERING, around
from tests.looking import Pixels, likeness, seen
from tests.looking import around as looks_at
from tests.made import Everything

Place = tuple[str, float, float]
"""What is there, and where (wall mm)."""

STEP = 45.0
"""mm between two places that are looked at along a line.  Our own choice."""

NEAR = 24.0
"""mm both ways from a mark to what is looked at of a line: half of what is seen there, and half of the mark.  Our own
choice."""

OFF_JOIN = 14.0
"""mm that a place on a frame's edge is off a join, where it is asked what the edge looks like.  Our own choice."""

LARGE = 10.0
"""mm of height from which letters are looked at.  Our own choice."""


def marks_of(laid: Laid) -> Iterator[Place]:
    """The middles of all marks of a sheet that are no lines, and of large letters."""
    so_far, drawn = laid.so_far, dict(zip(KINDS, laid.drawn.values(), strict=True))
    window = so_far.sheet.window
    for nail in so_far.part.nails:
        yield "nail", nail.x, nail.y
    for mark in so_far.part.marks if so_far.sheets.hides is None else ():
        yield "registration", mark.x, mark.y
    if drawn["target"].items:
        yield "target", so_far.plan.centre_line, so_far.plan.level_line
    for kind in ("black corner", "number of the sheet", "photo tag"):
        yield from ((kind, box.cx, box.cy) for box in _areas(kind, drawn) if window.has_point(box.cx, box.cy))
    houses = (item for item in drawn["name at a join"].items if isinstance(item, Polygon) and not item.filled)
    yield from (("house at a join", around(item).cx, around(item).cy) for item in houses)
    for end in ruler_ends(so_far.sheets, so_far.sheet, so_far.plan.job.unit, [mark.box for mark in so_far.part.marks]):
        yield "end of a ruler", end.cx, end.cy
    large = (item for item in drawn["label of a frame"].items if isinstance(item, Text) and item.height >= LARGE)
    yield from (("letters", box.cx, box.cy) for box in map(LETTERING.box, large))
    for scale in (scale for hung in so_far.part.frames for scale in so_far.scales[hung.frame.id]):
        if window.has_point(scale.zone.cx, scale.zone.cy):
            yield "drop scale", scale.zone.cx, scale.zone.cy


def _areas(kind: str, drawn: Mapping[str, Drawn]) -> Sequence[Rect]:
    done = drawn[kind]
    return [around(item) for item in done.items] if kind == "black corner" else done.taken


def lines_of(laid: Laid) -> Iterator[Place]:
    """Places on every long line of a sheet, `STEP` apart."""
    so_far, window = laid.so_far, laid.so_far.sheet.window
    x, y = so_far.plan.centre_line, so_far.plan.level_line
    if so_far.sheets.hides is None:
        for join in so_far.part.joins:
            kind = "cut" if join.over == so_far.sheet.name else "next sheet"
            yield from ((kind, *at) for at in _along(join.line))
    for hung in so_far.part.frames:
        corners = hung.rect.corners
        for one, two in zip(corners, (*corners[1:], corners[0]), strict=True):
            side = (*one, *two)
            yield from (("frame", *at) for at in _along(side) if window.grown(-1.0).has_point(*at))
    group = so_far.plan.group
    yield from (("level line", *at) for at in _along((group.x0, y, group.x1, y)) if window.has_point(*at))
    yield from (("centre line", *at) for at in _along((x, group.y0, x, group.y1)) if window.has_point(*at))


def _along(line: tuple[float, float, float, float]) -> Iterator[tuple[float, float]]:
    x0, y0, x1, y1 = line
    count = int((abs(x1 - x0) + abs(y1 - y0)) / STEP)
    for number in range(1, count):
        yield x0 + (x1 - x0) * number / count, y0 + (y1 - y0) * number / count


def clear(place: Place, marks: Sequence[Place]) -> bool:
    """Whether no mark is so near to a place of a line that one sees the mark there."""
    _, x, y = place
    return not any(abs(x - at_x) < NEAR and abs(y - at_y) < NEAR for _, at_x, at_y in marks)


def edges_and_cuts(laid: Laid, marks: Sequence[Place]) -> Iterator[Place]:
    """Places on lines to cut and on edges of frames where one sees nothing of a mark, nor of the other line."""
    so_far = laid.so_far
    joins = [Rect(join.x0, join.y0, join.x1, join.y1).grown(OFF_JOIN) for join in so_far.part.joins]
    inner = so_far.sheet.cell.grown(-OFF_JOIN)
    for kind, x, y in lines_of(laid):
        edge = kind == "frame" and inner.has_point(x, y) and not any(join.has_point(x, y) for join in joins)
        if (edge or kind == "cut") and clear((kind, x, y), marks):
            yield kind, x, y


def every_sheet(done: Everything) -> Iterator[tuple[Laid, int, tuple[float, ...]]]:
    """Every sheet with its page in the file, from 0, and what brings wall mm to points."""
    told = {sheet["name"]: sheet for sheet in done.report["sheets"]}
    for laid in lay(done.plan, done.sheets, 0, done.lettering):
        sheet = told[laid.so_far.sheet.name]
        yield laid, sheet["page"] - 1, tuple(sheet["to_page"])


def like(done: Everything, shapes: Mapping[str, Sequence[Pixels]], step: int = 1) -> dict[str, dict[str, list[float]]]:
    """By kind of shape and by what is there: how like that shape it looks, on every so many'th sheet."""
    found: dict[str, dict[str, list[float]]] = defaultdict(lambda: defaultdict(list))
    for number, (laid, page, to_page) in enumerate(every_sheet(done)):
        if number % step:
            continue
        pixels = seen(done.pdf, page)
        marks = [*marks_of(laid)]
        for kind, x, y in (*marks, *(place for place in lines_of(laid) if clear(place, marks))):
            looks = looks_at(pixels, *moved(to_page, x, y))
            for shape, ways in shapes.items():
                found[shape][kind].append(likeness(looks, ways))
    return found
