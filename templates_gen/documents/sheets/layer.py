"""What a layer of marks is told of a sheet, and what it gives back."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.grid_index import Near
from templates_gen.base.record import Record
from templates_gen.documents.sheets.scales import DropScale
from templates_gen.drawing.items import Form, Item, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import AIR, Room
from templates_gen.hanging.bearings import Nail
from templates_gen.tiling.demand import nail_box
from templates_gen.tiling.sheet import Join, RegistrationMark, Sheet, SheetPlan
from templates_gen.tolerance.order import taping_order


class Shown(Record, frozen=True):
    """What one sheet shows of the wall: frames, whole nails, and its registration marks and joins.

    `bars` is what the bars of every mark take.  `alone` is the sheets' overlap where pieces hang by themselves, placed
    by their distances from the two lines.
    """

    sheet: Sheet
    frames: tuple[Hung, ...]
    nails: tuple[Nail, ...]
    marks: tuple[RegistrationMark, ...]
    joins: tuple[Join, ...]
    bars: tuple[Rect, ...]
    alone: float | None = None


class SoFar(Record, frozen=True):
    """A sheet as far as it is drawn: all that a layer needs.

    It is page `number` of `of`.  `on_wall` and `on_page` keep what earlier layers took: a layer asks `room` or
    `whole_page` for a room of its own over these, and gives back what it takes there.  `scales` are the drop scales of
    every frame, by its id; before the labels of the nails there are none.  `asides` are words that earlier layers would
    say where room is left for them.
    """

    plan: Plan
    sheets: SheetPlan
    part: Shown
    number: int
    of: int
    lettering: Lettering
    on_wall: Room
    on_page: Room
    scales: Mapping[str, Sequence[DropScale]]
    asides: tuple[Text, ...] = ()

    @property
    def sheet(self) -> Sheet:
        return self.part.sheet

    @property
    def to_page(self) -> tuple[float, float]:
        """By how much the sheet's page mm differ from wall mm."""
        area, window = self.sheet.page.printable, self.sheet.window
        return area.x0 - window.x0, area.y0 - window.y0

    def room(self, air: float = AIR) -> Room:
        """What is free of the sheet's inner part, which no trim line crosses and no other sheet shows (wall mm)."""
        return Room(self.sheet.inner, air, (self.on_wall,))

    def whole_page(self, air: float = AIR) -> Room:
        """What is free of all that the page can show, the blank paper beyond the window too (wall mm)."""
        dx, dy = self.to_page
        return Room(self.sheet.page.printable.shifted(-dx, -dy), air, (self.on_wall, self.on_page))


class Drawn(Record, frozen=True):
    """What a layer draws on a sheet, and the room that it took.

    `items` are in wall mm, and nothing of them is seen beyond the sheet's window; `page_items` (page mm) come over
    them.  Where these hold lettering it is in `over`, too, at its place on the wall: lines break off behind it.
    `taken` (wall mm) must not be drawn over by later layers, and what is in `lines` better not.  `taken_beyond` is
    taken where the whole page is asked for.  `scales` are the drop scales, from the one layer that decides on them.
    `asides` (wall mm) are said if all that matters more leaves room for them.  `forms` are those of this sheet alone.
    """

    items: tuple[Item, ...] = ()
    taken: tuple[Rect, ...] = ()
    lines: tuple[Rect, ...] = ()
    page_items: tuple[Item, ...] = ()
    over: tuple[Text, ...] = ()
    taken_beyond: tuple[Rect, ...] = ()
    scales: Mapping[str, Sequence[DropScale]] | None = None
    asides: tuple[Text, ...] = ()
    forms: tuple[Form, ...] = ()


Layer = Callable[[Sequence[SoFar]], Iterable[Drawn]]
"""Draws on all sheets, and gives what it draws on each, in their order."""


def each(draw: Callable[[SoFar], Drawn]) -> Layer:
    """The layer that draws on each sheet without knowing of the others."""
    return lambda every: [draw(so_far) for so_far in every]


def shown_on(plan: Plan, sheets: SheetPlan) -> tuple[Shown, ...]:
    """What each sheet shows, in the order of the sheets."""
    frames = Near((hung.rect.grown(1.0), hung) for hung in plan.frames)
    nails = Near((nail_box(nail.x, nail.y), nail) for nail in plan.nails)
    marks, joins = _by_sheet(sheets)
    bars = {mark.name: mark.box for mark in sheets.marks}
    alone = sheets.paper.overlap if taping_order(sheets).pieces > 1 else None
    return tuple(
        Shown(
            sheet,
            tuple(hung for hung in frames.about(sheet.window) if hung.rect.grown(1.0).overlaps(sheet.window)),
            tuple(nail for nail in nails.about(sheet.inner) if sheet.inner.holds(nail_box(nail.x, nail.y))),
            tuple(marks[sheet.name]),
            tuple(joins[sheet.name]),
            tuple(bars[mark.name] for mark in marks[sheet.name]),
            alone,
        )
        for sheet in sheets.sheets
    )


def _by_sheet(sheets: SheetPlan) -> tuple[Mapping[str, list[RegistrationMark]], Mapping[str, list[Join]]]:
    """The registration marks and the joins of every sheet, by its name."""
    marks: dict[str, list[RegistrationMark]] = {sheet.name: [] for sheet in sheets.sheets}
    joins: dict[str, list[Join]] = {sheet.name: [] for sheet in sheets.sheets}
    for mark in sheets.marks:
        for name in mark.sheets:
            marks[name].append(mark)
    for join in sheets.joins:
        joins[join.over].append(join)
        joins[join.under].append(join)
    return marks, joins
