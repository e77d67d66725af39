"""The layers of marks on every sheet, in the order in which they are placed: what comes first keeps its place."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.record import Record, replace
from templates_gen.documents.sheets.frame_labels import frame_labels
from templates_gen.documents.sheets.join_marks import join_forms, joins
from templates_gen.documents.sheets.layer import Drawn, Layer, SoFar, each, shown_on
from templates_gen.documents.sheets.nail_marks import nail_form
from templates_gen.documents.sheets.of_centre import of_centre_line
from templates_gen.documents.sheets.photo_tags import photo_tags, tag_forms
from templates_gen.documents.sheets.references import distances
from templates_gen.documents.sheets.rulers import RULERS_FORM, both_rulers, form_of_rulers, rulers_form
from templates_gen.documents.sheets.scales import scale_form
from templates_gen.documents.sheets.sheet_marks import (
    corners_to_measure_from,
    drop_scales,
    frames,
    level_figures,
    long_lines,
    nail_labels,
    nails,
    names_of_lines,
    target,
)
from templates_gen.documents.sheets.sheet_number import sheet_number
from templates_gen.documents.sheets.titles import title
from templates_gen.documents.sheets.wall_marks import frame_form, frame_lines
from templates_gen.drawing.grounds import over_lines
from templates_gen.drawing.items import Form, Page, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
from templates_gen.tiling.sheet import Sheet, SheetPlan

LAYERS: tuple[Layer, ...] = (
    corners_to_measure_from,
    each(title),
    each(frames),
    each(nails),
    each(long_lines),
    each(target),
    nail_labels,
    both_rulers,
    each(drop_scales),
    each(level_figures),
    each(names_of_lines),
    each(distances),
    frame_labels,
    each(of_centre_line),
    each(sheet_number),
    each(joins),
    photo_tags,
)
"""A new mark on every sheet is one row here, after all that matters more, and the function it names."""


class Laid(Record, frozen=True):
    """A sheet with what every layer drew on it."""

    so_far: SoFar
    drawn: Mapping[Layer, Drawn]


def lay(
    plan: Plan, sheets: SheetPlan, before: int, lettering: Lettering, pages: Sequence[Sheet] = ()
) -> list[Laid]:  # fmt: skip
    """All layers on all sheets, of which these are `pages` of the file, all if none are named, with so many `before`
    them."""
    pages = pages or sheets.sheets
    of, page_of = before + len(pages), {sheet.name: number for number, sheet in enumerate(pages, before + 1)}
    every = [
        SoFar(plan, sheets, part, page_of.get(part.sheet.name, 0), of, lettering, Room(part.sheet.inner),
              Room(part.sheet.inner), {})
        for part in shown_on(plan, sheets)
    ]  # fmt: skip
    drawn: list[dict[Layer, Drawn]] = [{} for _ in every]
    for layer in LAYERS:
        for at, done in enumerate(list(layer(every))):
            drawn[at][layer] = done
            every[at] = _with(every[at], done)
    return [Laid(*one) for one in zip(every, drawn, strict=True)]


def _with(so_far: SoFar, done: Drawn) -> SoFar:
    """The sheet with this on it, too; the only place where room is taken for good."""
    so_far.on_wall.take(*done.taken)
    so_far.on_wall.lines.extend(done.lines)
    so_far.on_page.take(*done.taken_beyond)
    if done.scales is None and not done.asides:
        return so_far  # as after most layers
    scales = so_far.scales if done.scales is None else done.scales
    return replace(so_far, scales=scales, asides=(*so_far.asides, *done.asides))


def sheet_page(laid: Laid) -> Page:
    """The page of a sheet."""
    so_far, drawn = laid.so_far, tuple(laid.drawn.values())
    sheet, part = so_far.sheet, so_far.part
    page_items = [item for done in drawn for item in done.page_items]
    scales = [scale.zone for hung in part.frames for scale in so_far.scales[hung.frame.id]]
    edges = [edge for hung in part.frames for edge in frame_lines(hung.rect)]
    items, later = ([item for done in drawn for item in done.items], [text for done in drawn for text in done.over])
    return Page(
        label=sheet.name,
        title=f"Sheet {sheet.name}",
        page_items=tuple(sorted(page_items, key=lambda item: isinstance(item, Use))),  # forms over what is not
        page_matrix=sheet.page.matrix,
        wall_items=tuple(over_lines(items, later, edges, scales, so_far.lettering)),
        window=sheet.window,
        to_page=sheet.to_page,
    )


def sheet_forms(plan: Plan, sheets: SheetPlan, every: Sequence[Laid], lettering: Lettering) -> Iterator[Form]:
    """The forms that the sheets place."""
    scales = every[0].so_far.scales
    yield from {form.name: form for laid in every for done in laid.drawn.values() for form in done.forms}.values()
    ruled = {RULERS_FORM: sheets.page, **{form_of_rulers(sheets, sheet): sheet.page for sheet in sheets.sheets}}
    for name, page in ruled.items():
        yield rulers_form(page, sheets.paper.overlap, plan.job.unit, lettering, name)
    yield from (nail_form(), *join_forms(sheets))
    yield from tag_forms(plan, sheets)
    for hung in plan.frames:
        yield frame_form(hung)
        for number, scale in enumerate(scales[hung.frame.id]):
            yield scale_form(hung, number, scale, plan.job.unit)
