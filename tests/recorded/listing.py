"""The listing of a job's sheets: where each is on the wall, what is on it, and what is told of it, line by line."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.documents.sheets.layers import Laid, lay, sheet_forms, sheet_page
from templates_gen.drawing.items import Circle, Item, Line, Polygon, Text, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.model import Job
from templates_gen.printer.profile import Printer
from templates_gen.tiling.planning import linked_of
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.diagonals import corners_to_measure, measured
from templates_gen.tolerance.effort import cuts, effort
from templates_gen.tolerance.expected import PairError, expected_error, sources_95
from templates_gen.tolerance.holding import plan_sheets
from templates_gen.tolerance.order import taping_order
from templates_gen.tolerance.statement import check_words, error_data, first_page_words
from templates_gen.tolerance.tape_check import tape_check
from templates_gen.tolerance.tape_statement import tape_data, tape_words
from tests.apart import KINDS

WIDE = 160
"""Letters in a line of a record.  Our own choice."""

MANY = 5
"""Of more parts than these only the first and the last are named, and their numbers added up.  Our own choice."""

SHARED = ("nail", "bars", "cut", "tag")
"""How the names of forms begin that are the same in every template."""

OFF = ((4.0, -2.5, 1.5), (0.4, 0.3, 0.1), (0.5, 0.5, 6.0))
"""By how much (mm) the taped paper is measured too long: both diagonals and its width.  Made up."""


def sheets_of(job: Job, printer: Printer | None) -> tuple[Plan, SheetPlan]:
    """The plan of a job and its sheets."""
    plan = plan_wall(job)
    return plan, plan_sheets(plan, job.paper, printer)


def planned(plan: Plan, sheets: SheetPlan) -> Iterator[str]:
    """What the sheets of a plan are, what is taped to what in which step, and how exactly it will hang."""
    order = taping_order(sheets)
    yield f"pages of {numbers(sheets.page.width, sheets.page.height)} points, {effort(sheets).words}"
    yield f"{effort(sheets).work}; two marks hold from {sheets.firm:.3f} mm on" + ", laid as they lie" * order.forward
    for sheet in sheets.sheets:
        way = "" if sheet.page is sheets.page else ", turned"
        on = (
            f"; step {order.joins[join.over, join.under]}: on {join.under}, {_place(Line(*join.line, 0.0))}"
            for join in sheets.joins
            if join.over == sheet.name
        )
        yield f"sheet {sheet.name}, strip {sheet.strip}{way}: {box(sheet.cell)}{''.join(on)}"
    yield from wrapped("begun with: ", map("+".join, order.begun))
    tucked = [f"{step}: {'+'.join(low)} < {'+'.join(high)}" for step, low, high in order.tucked]
    yield from wrapped("slid under: ", tucked)
    marks = [(f"{mark.name} {numbers(mark.x, mark.y)}", (mark.x, mark.y)) for mark in sheets.marks]
    yield from wrapped("marks: ", summed(marks))
    sides = [(f"{cut.sheet} {cut.side} {cut.length:.2f}", (cut.length,)) for cut in cuts(sheets)]
    yield from wrapped("cuts: ", summed(sides))
    if sheets.paper.cover == "marks" and sheets.paper.kind == "sheets":
        fewer = linked_of(plan, sheets).sheets
        yield from wrapped("linked at once: ", summed([(box(sheet.cell), _sides(sheet.cell)) for sheet in fewer]))
    if expected := expected_error(plan, sheets):
        yield from (_pair(name, of) for name, of in (("worst", expected.worst), ("typical", expected.typical)))
        yield _pair("end to end", expected.ends)
        yield f"all: step {expected.step:.3f} gap {expected.gap_error:.3f}"


def told(plan: Plan, sheets: SheetPlan) -> Iterator[str]:
    """How exactly it will hang, in words, and what measuring the taped paper tells."""
    expected = expected_error(plan, sheets)
    if expected is None:
        return
    unit = plan.job.unit
    for words in (*first_page_words(expected, unit), *check_words(expected, unit)):
        yield f"  {words}"
    spans = measured(plan)
    yield from (f"measured from {span.start} to {span.end}: {span.length:.2f}" for span in spans)
    corners = (f"{numbers(x, y)} {right:d}{top:d}" for x, y, right, top in corners_to_measure(plan))
    yield from wrapped("corners to measure from: ", corners)
    yield from wrapped("", [str(error_data(expected))])
    for offs in OFF:
        try:
            check = tape_check(plan, sheets, [span.length + off for span, off in zip(spans, offs, strict=True)])
        except InputError as error:
            yield f"not measured: {error}"
        else:
            yield from (f"  {words}" for words in tape_words(check, unit))
            yield from wrapped("", [str(tape_data(check, unit))])


def _pair(name: str, of: PairError) -> str:
    """What to expect of a pair of frames, and what each source alone makes of it (95 %, mm)."""
    one, two = of.pair.one.frame.id, of.pair.two.frame.id
    parts = " ".join(f"{source} {mm:.3f}" for source, mm in sources_95(of))
    return (
        f"{name} {one}, {two}: step {of.step:.3f} gap {of.gap_error:.3f} seen {of.seen:.3f} tilt {of.tilt:.5f}: {parts}"
    )


def drawn(plan: Plan, sheets: SheetPlan, shared: bool) -> Iterator[str]:
    """Every mark and word on every sheet, by the layer that drew it, at its place on the wall.

    With `shared` the forms too that are the same in every template.
    """
    lettering = Lettering()
    every = lay(plan, sheets, 1, lettering)
    for laid in every:
        yield ""
        yield f"--- sheet {laid.so_far.sheet.name}: window {box(laid.so_far.sheet.window)}"
        yield from _on_sheet(laid)
    for form in sheet_forms(plan, sheets, every, lettering):
        if not shared and form.name.startswith(SHARED):
            continue
        yield ""
        yield f"--- form {form.name}: {box(form.box)}"
        yield from listed([("", item) for item in form.items])


def _on_sheet(laid: Laid) -> Iterator[str]:
    page = sheet_page(laid)
    kinds = zip(KINDS, laid.drawn.values(), strict=True)
    kind = {id(item): name for name, done in kinds for item in (*done.items, *done.page_items)}
    assert page.to_page is not None
    yield "to page " + " ".join(f"{number:.4f}" for number in (*page.to_page, *page.page_matrix))
    yield from listed([(kind.get(id(item), "ground"), item) for item in page.wall_items])
    yield "on the page:"
    yield from listed([(kind[id(item)], item) for item in page.page_items])


def listed(items: Sequence[tuple[str, Item]]) -> Iterator[str]:
    """Items in the order in which their kinds are drawn, those that look alike together."""
    for kind, run in groupby(items, key=lambda pair: pair[0]):
        alike: dict[str, list[Item]] = {}
        for _, item in run:
            alike.setdefault(look(item), []).append(item)
        for what, some in alike.items():
            yield from wrapped(f"{kind}: {what}: " if kind else f"{what}: ", _places(some))


def _places(items: Sequence[Item]) -> Iterator[str]:
    """Where the items are: every text and form, and of many others the first, the last, and all together."""
    if isinstance(items[0], Text | Use):
        yield from map(_place, items)
    else:
        yield from summed([(_place(item), coordinates(item)) for item in items])


def summed(parts: Sequence[tuple[str, Sequence[float]]]) -> Iterator[str]:
    """What is said of each part; of many the first, the last, and the sums of their numbers."""
    if len(parts) <= MANY:
        yield from (said for said, _ in parts)
        return
    longest = max(len(of) for _, of in parts)
    sums = [sum(of[at] for _, of in parts if at < len(of)) for at in range(longest)]
    yield f"{len(parts)} from {parts[0][0]} to {parts[-1][0]}, all together {numbers(*sums)}"


def look(item: Item) -> str:
    """What an item looks like, without where it is."""
    if isinstance(item, Use):
        return "form"
    if isinstance(item, Text):
        look = " bold" * item.bold + f" turned {item.angle}" * bool(item.angle)
        return f"{item.height:.2f} high{look}, by its {item.anchor}"
    assert isinstance(item, Line | Circle | Polygon)
    grey = f" grey {item.grey:.2f}" if item.grey else ""
    if isinstance(item, Line):
        dash = f" dash {numbers(*item.dash)}, {item.phase:.2f}" if item.dash else ""
        return f"line {item.width:.3f}{dash}{grey}"
    if isinstance(item, Circle):
        return ("disc" if item.filled else f"ring {item.width:.3f}") + grey
    return ("area" if item.filled else f"outline {item.width:.3f}") + grey


def _place(item: Item) -> str:
    """Where an item is: an upright line by its x and from where to where, a level one by its y."""
    if isinstance(item, Text | Use):
        words = f'"{item.text}"' if isinstance(item, Text) else item.form
        return f"{words} {numbers(item.x, item.y)}"
    where = coordinates(item)
    if isinstance(item, Line) and where[0] == where[2]:
        return f"x {numbers(where[0])}: {numbers(where[1], where[3])}"
    if isinstance(item, Line) and where[1] == where[3]:
        return f"y {numbers(where[1])}: {numbers(where[0], where[2])}"
    if len(where) > 2 * MANY:
        sums = sum(where[::2]), sum(where[1::2])
        return f"<{len(where) // 2} corners from {numbers(*where[:2])}, all together {numbers(*sums)}>"
    return f"<{numbers(*where)}>" if isinstance(item, Polygon) else numbers(*where)


def coordinates(item: Item) -> tuple[float, ...]:
    """Every number of where an item is."""
    if isinstance(item, Line):
        return item.x0, item.y0, item.x1, item.y1
    if isinstance(item, Circle):
        return item.x, item.y, item.radius
    assert isinstance(item, Polygon)
    xs, ys = sorted({x for x, _ in item.points}), sorted({y for _, y in item.points})
    if len(item.points) == 4 and len(xs) == len(ys) == 2:  # a rectangle: two corners
        return xs[0], ys[0], xs[1], ys[1]
    return tuple(number for point in item.points for number in point)


def box(rect: Rect) -> str:
    """A rectangle by its left, lower, right and upper side (mm)."""
    return numbers(*_sides(rect))


def _sides(rect: Rect) -> tuple[float, float, float, float]:
    return rect.x0, rect.y0, rect.x1, rect.y1


def numbers(*values: float) -> str:
    """Numbers to a hundredth of a millimetre."""
    return " ".join(f"{value:.2f}" for value in values)


def wrapped(begin: str, parts: Iterable[str]) -> Iterator[str]:
    """The parts after a beginning, in lines that are not too long; nothing where there are none."""
    if found := list(parts):
        yield from textwrap.wrap(begin + " | ".join(found), WIDE, subsequent_indent="    ", break_long_words=False)
