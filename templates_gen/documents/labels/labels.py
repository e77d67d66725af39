"""Labels for the backs of the frames: which one it is, which way is up, and where it hangs."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import product

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.base.units import show, show_both
from templates_gen.documents.labels.label_sheet import LabelSheet
from templates_gen.documents.of_job import numbered, of_job
from templates_gen.documents.schedule.distances import above_floor, drop_words, facing, from_behind, stood_on
from templates_gen.drawing.blocks import Block, block, shortened, wrapped
from templates_gen.drawing.items import Item, Polygon, Template, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.shapes import thick_arrow
from templates_gen.drawing.sizes import H5, H7, H10, H14, H18, H25, H35, HAIR
from templates_gen.tolerance.neighbours import neighbours

INSET = 3.0
"""mm between a label's edge and what is on it: label sheets are printed a little off.  Our own design, no source."""

OVERHANG = 0.5
"""mm by which a letter may reach beyond the place its pen starts at.  Our own design, no source."""

ARROW = 7.0
"""mm across; the arrow that points up.  Our own design, no source."""

LONG, LEAST = 3.5, 3.0
"""Times that: the arrow's length with its word at most, a label's width at least.  Our own design, no source."""

UNDER_ARROW, BESIDE_ARROW, BESIDE_ID = 1.5, 2.0, 3.0
"""mm between the arrow and its word, the arrow and other words, the id and names.  Our own design, no source."""

SIZES = ((H14, H35), (H10, H35), (H14, H25), (H10, H25), (H7, H25), (H5, H25), (H7, H18), (H5, H18))
"""Lettering heights of the id and of the rest, the first that fits is taken.  Our own design, no source."""


class _Told(Record, frozen=True):
    """What a label says: the frame's id, its name beside that, and lines below, in one unit or in both."""

    id: str
    names: tuple[str, ...]
    lines: tuple[str, ...]


def labels(plan: Plan, sheet: LabelSheet, lettering: Lettering, skip: int = 0) -> Template:
    """One label for every frame; `skip` labels of the first sheet are used up already.

    Raises InputError for labels too small for what they must say, or when all of a sheet would be skipped.
    """
    if not 0 <= skip < sheet.count:
        raise InputError("--skip", f"found {skip}, expected less than the {sheet.count} labels of a sheet")
    job, places = plan.job, list(sheet.places())
    spots = [places[number % sheet.count] for number in range(skip, skip + len(plan.frames))]
    words = _fitted(list(_all_told(plan)), [_free(spot, sheet) for spot in spots], lettering)
    pages = list[list[Item]]()
    for number, (spot, own) in enumerate(zip(spots, words, strict=True), skip):
        if number % sheet.count == 0 or not pages:
            pages.append([])
        pages[-1] += (*_frame(spot, sheet), *own)
    return of_job(job, "labels", sheet.page, numbered(pages), attach=True)


def _free(spot: Rect, sheet: LabelSheet) -> Rect:
    """The part of a label that is written on.  Raises InputError where a printer reaches too little of it."""
    free = spot.grown(-INSET).meet(sheet.page.printable.grown(-OVERHANG))
    if free is None or free.width < LEAST * ARROW:
        raise _too_small(spot)
    return free


def _too_small(spot: Rect) -> InputError:
    problem = f"found {spot.width:.0f} × {spot.height:.0f} mm, too small for all that a label says"
    return InputError("--label", problem, "choose labels of at least 60 × 30 mm")


def _frame(spot: Rect, sheet: LabelSheet) -> Iterator[Item]:
    """The lines to cut along, where there are any, and an arrow that points up, and says so."""
    if sheet.cut:
        yield Polygon(spot.corners, HAIR, False)
    free = _free(spot, sheet)
    x, foot = free.x1 - ARROW / 2, free.y1 - min(free.height, LONG * ARROW)
    yield thick_arrow(x, free.y1, foot + H25 + UNDER_ARROW, ARROW, ARROW)
    yield Text(x, foot, "up", H25, "middle", 0, True)


def _fitted(told: Sequence[Sequence[_Told]], free: Sequence[Rect], lettering: Lettering) -> list[Sequence[Text]]:
    """The words of every label in the largest lettering that they fit in, in both units or else in one; names stand
    beside the id or, where that is too long, under it.

    A label that does not even fit in the smallest is set in that, its lines cut short.  Raises InputError when one does
    not fit even so.
    """
    found = []
    for both, room in zip(told, free, strict=True):
        tries = (
            _set(own, *sizes, room, False, lettering, under)
            for own, under, sizes in product(both, (False, True), SIZES)
        )
        words = next(filter(None, tries), None) or _set(both[-1], *SIZES[-1], room, True, lettering)
        if words is None:
            raise _too_small(room.grown(INSET))
        found.append(words)
    return found


def _set(
    told: _Told, large: float, small: float, free: Rect, short: bool, lettering: Lettering, under: bool = False
) -> Sequence[Text] | None:
    """Id, names beside it, or `under` it, and lines below, in these lettering heights, left of the arrow; None when
    they do not fit."""
    free = Rect(free.x0, free.y0, free.x1 - ARROW - BESIDE_ARROW, free.y1)
    widest = free.width if under else free.width / 2
    if under:
        name = wrapped(told.id, large, True, widest, lettering)
    else:
        name = [shortened(told.id, large, True, widest, lettering) if short else told.id]
    mark = block([(line, large, True) for line in name], lettering)
    beside = free.x0 if under else free.x0 + mark.width + BESIDE_ID
    names = _lines(told.names, small, True, max(free.x1 - beside, 1.0), short, lettering)
    rest = _lines(told.lines, small, False, free.width, short, lettering)
    over = mark.height + small if under else 0.0
    head = over + names.height if under else max(mark.height, names.height)
    cut = not short and any("…" in line[0] for line, _ in (*mark.lines, *names.lines, *rest.lines))
    if cut or beside + names.width > free.x1 or rest.width > free.width or head + small + rest.height > free.height:
        return None
    return (
        *mark.at(free.x0, free.y1 - mark.height),
        *names.at(beside, free.y1 - over - names.height),
        *rest.at(free.x0, free.y1 - head - small - rest.height),
    )


def _lines(texts: Sequence[str], height: float, bold: bool, width: float, short: bool, lettering: Lettering) -> Block:
    """Each text in lines of this width, or in one that is cut `short`."""
    if short:
        found = [shortened(text, height, bold, width, lettering) for text in texts]
    else:
        found = [line for text in texts for line in wrapped(text, height, bold, width, lettering)]
    return block([(line, height, bold) for line in found], lettering)


def _all_told(plan: Plan) -> Iterator[tuple[_Told, _Told]]:
    """What every label says, in both units and in the job's own."""
    beside = _beside(plan)
    for hung in plan.frames:
        own = beside[hung.frame.id]
        yield _told(hung, own, plan, show_both), _told(hung, own, plan, show)


def _told(hung: Hung, beside: str, plan: Plan, show_length: Callable[[float, str], str]) -> _Told:
    def shown(mm: float) -> str:
        return show_length(mm, plan.job.unit)

    return _Told(
        hung.frame.id,
        (hung.frame.title, plan.job.title),
        (
            f"top edge {_height(hung.rect.cx, hung.rect.y1, plan, shown)}",
            *_nails(hung, plan, shown),
            beside,
        ),
    )


def _height(x: float, y: float, plan: Plan, shown: Callable[[float], str]) -> str:
    """How high a point is, in words: above the floor, or on a stair above what one stands on under it."""
    under, height = stood_on(plan, x)
    return f"{shown(y - height)} {f'above the {under}' if height else above_floor(plan)}"


def _nails(hung: Hung, plan: Plan, shown: Callable[[float], str]) -> Iterator[str]:
    """Drops and nails: of two that differ, each as it is called on the wall and as it is seen on the frame's back."""
    drops = [
        "drop not measured yet" if one.drop is None else drop_words(one.drop, hung, shown) for one in hung.bearings
    ]
    heights = {nail.side: _height(nail.x, nail.y, plan, shown) for nail in hung.nails}
    noun = facing("", hung.frame.fixing)
    if len(set(drops)) == 1 and len(set(heights.values())) <= 1:
        yield drops[0]
        both = f"both {noun}s" if len(heights) == 2 else noun
        yield from (f"{both} {height}" for height in dict.fromkeys(heights.values()))
        return
    for bearing, drop in zip(hung.bearings, drops, strict=True):
        called = f"{facing(bearing.side, hung.frame.fixing)} = {from_behind(bearing.side, hung.frame.hanger)}"
        height = f", {heights[bearing.side]}" if bearing.side in heights else ""
        yield f"{called}:"
        yield f"{drop}{height}"


def _beside(plan: Plan) -> Mapping[str, str]:
    """Where every frame hangs among its neighbours, in words."""
    found: dict[str, dict[str, list[str]]] = {hung.frame.id: {} for hung in plan.frames}
    for pair in neighbours(plan):
        one, two = pair.one, pair.two
        if (one.rect.cx > two.rect.cx) if pair.beside else (one.rect.cy < two.rect.cy):
            one, two = two, one  # one is to the left or above
        words = ("left of", "right of") if pair.beside else ("above", "below")
        for hung, other, word in ((one, two, words[0]), (two, one, words[1])):
            found[hung.frame.id].setdefault(word, []).append(other.frame.id)
    return {name: _sentence(sides) for name, sides in found.items()}


def _sentence(sides: Mapping[str, Sequence[str]]) -> str:
    order = ("right of", "left of", "below", "above")
    parts = [f"{word} {' and '.join(sides[word])}" for word in order if word in sides]
    return f"facing the wall, it hangs {', '.join(parts)}" if parts else ""
