"""Where every kind of mark, line and lettering is on the sheets of a job, and how it looks there from two metres."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.documents.sheets.layer import Drawn
from templates_gen.documents.sheets.layers import Laid, lay
from templates_gen.documents.sheets.rulers import ruler_ends, rulers_zones
from templates_gen.documents.sheets.scales import scales_to_mark
from templates_gen.drawing.items import Polygon, Text, moved
from templates_gen.tiling.long_lines import centre_spans, level_spans
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

OFF_LINE, ENDS = 14.0, 12.0
"""mm that a place on a line is off another one along it to see it alone, and off a sheet's ends.  Our own choice."""

JOINING = ("cut", "next sheet")
"""Lines that a sheet has along its joins, all along which they are on it."""

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


def long_lines_of(laid: Laid) -> Iterator[tuple[str, tuple[float, float, float, float]]]:
    """Every long line of a sheet: its kind, and from where to where it runs."""
    so_far = laid.so_far
    x, y, group = so_far.plan.centre_line, so_far.plan.level_line, so_far.plan.group
    if so_far.sheets.hides is None:
        yield from (
            ("cut" if join.over == so_far.sheet.name else "next sheet", join.line) for join in so_far.part.joins
        )
    for hung in so_far.part.frames:
        corners = hung.rect.corners
        yield from (("frame", (*one, *two)) for one, two in zip(corners, (*corners[1:], corners[0]), strict=True))
    yield "level line", (group.x0, y, group.x1, y)
    yield "centre line", (x, group.y0, x, group.y1)


def lines_of(laid: Laid) -> Iterator[Place]:
    """Places on every long line of a sheet, `STEP` apart."""
    window = laid.so_far.sheet.window
    for kind, line in long_lines_of(laid):
        seen_in = window.grown(-1.0) if kind == "frame" else window
        yield from ((kind, x, y) for x, y in _along(line) if kind in JOINING or seen_in.has_point(x, y))


def _along(line: tuple[float, float, float, float]) -> Iterator[tuple[float, float]]:
    x0, y0, x1, y1 = line
    count = int((abs(x1 - x0) + abs(y1 - y0)) / STEP)
    for number in range(1, count):
        yield x0 + (x1 - x0) * number / count, y0 + (y1 - y0) * number / count


def clear(place: Place, marks: Sequence[Place]) -> bool:
    """Whether no mark is so near to a place of a line that one sees the mark there."""
    _, x, y = place
    return not any(abs(x - at_x) < NEAR and abs(y - at_y) < NEAR for _, at_x, at_y in marks)


def on_lines(laid: Laid, marks: Sequence[Place]) -> Iterator[tuple[str, float, float, bool, bool]]:
    """Places on every long line of a sheet where one sees nothing of a mark; whether it runs upright, and whether it is
    alone: no lettering is there, no other line or ruler runs along it, and neither long line of the wall across it, so
    near that one sees it."""
    so_far, every = laid.so_far, [(kind, _between(line)) for kind, line in long_lines_of(laid)]
    seen_by = [*marks, *(("slit", nail.x, nail.y - NEAR) for nail in so_far.part.nails)]
    level, plumb = rulers_zones(so_far.sheets, so_far.sheet, so_far.plan.job.unit)
    for number, (kind, line) in enumerate(every):
        upright = line.width == 0.0
        near = [
            other
            for at, (what, other) in enumerate(every)
            if at != number and ((other.width == 0.0) == upright or what in ("level line", "centre line"))
        ]
        near += (plumb if upright else level, *so_far.on_wall.taken)
        paper = so_far.sheet.window if kind in JOINING else so_far.sheet.cell.grown(-1.0)
        aside, up = (0.0, ENDS) if upright else (ENDS, 0.0)
        whole = Rect(paper.x0 + aside, paper.y0 + up, paper.x1 - aside, paper.y1 - up)
        for x, y in _along((line.x0, line.y0, line.x1, line.y1)):
            if whole.has_point(x, y) and _is_drawn(so_far.plan, kind, x, y) and clear((kind, x, y), seen_by):
                yield kind, x, y, upright, not any(box.grown(OFF_LINE).has_point(x, y) for box in near)


def _between(line: tuple[float, float, float, float]) -> Rect:
    x0, y0, x1, y1 = line
    return Rect(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))


def _is_drawn(plan: Plan, kind: str, x: float, y: float) -> bool:
    """Whether one sees nothing there but line: neither long line runs over what is on the wall, nor the centre line on
    a drop scale."""
    scales = [scale.zone.grown(ENDS) for hung in plan.frames for scale in scales_to_mark(hung)]
    if kind == "centre line" and any(zone.has_point(x, y) for zone in scales):
        return False
    spans = {"level line": (x, level_spans(plan)), "centre line": (y, centre_spans(plan))}
    at, some = spans.get(kind, (0.0, [(-NEAR, NEAR)]))
    return any(low + ENDS <= at <= high - ENDS for low, high in some)


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
