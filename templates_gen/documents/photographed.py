"""What of a template a photograph of its taped sheets is compared with: tags, joins and nails, by their places."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.documents.proof.frames import opening, window
from templates_gen.documents.sheets.photo_tags import Tag, fewer, tag_side, tags_on
from templates_gen.drawing.items import Template
from templates_gen.tiling.demand import nail_box
from templates_gen.tiling.sheet import SheetPlan


class Seam(Record, frozen=True):
    """Two sheets that are taped along a line of the wall, from (x0, y0) to (x1, y1)."""

    over: str
    under: str
    line: tuple[float, float, float, float]


class Spot(Record, frozen=True):
    """A point of the wall on a sheet: a nail by its name."""

    name: str
    sheet: str
    x: float
    y: float


class Papers(Record, frozen=True):
    """The template as a photograph shows it, in wall mm: each sheet's cell, its tags, the joins, and the nails.

    `scaled` is true where it was printed for a measured printer.
    """

    cells: tuple[tuple[str, Rect], ...]
    tags: tuple[Tag, ...]
    joins: tuple[Seam, ...]
    nails: tuple[Spot, ...]
    centre_line: float
    level_line: float
    scaled: bool


def papers(plan: Plan, sheets: SheetPlan, tags: Iterable[Tag]) -> Papers:
    """What is on the sheets with these tags, but for those that come off."""
    gone = set(sheets.gone)
    return Papers(
        cells=tuple((sheet.name, sheet.cell) for sheet in sheets.sheets if sheet.name not in gone),
        tags=tuple(tag for tag in tags if tag.sheet not in gone),
        joins=tuple(
            Seam(join.over, join.under, join.line) for join in sheets.joins if not gone & {join.over, join.under}
        ),
        nails=tuple(nail for nail in _nails(plan, sheets) if nail.sheet not in gone),
        centre_line=plan.centre_line, level_line=plan.level_line, scaled=sheets.printer is not None,
    )  # fmt: skip


def drawn_tags(plan: Plan, sheets: SheetPlan, template: Template) -> tuple[Tag, ...]:
    """The tags on the printed sheets of a drawn template."""
    if not sheets.paper.photo:
        return ()
    printed = sheets.on_these_pages
    pages = template.pages[len(template.pages) - len(printed) :]
    drawn = ((sheet, page.page_items) for sheet, page in zip(printed, pages, strict=True))
    return tuple(tags_on(drawn, tag_side(plan)))


def lacking(tags: Sequence[Tag], sheets: SheetPlan) -> str:
    """The sheets with room for fewer tags than others, in a sentence; blank where there are none."""
    few = fewer(tags, sheets)
    if not few:
        return ""
    named = ", ".join(f"{name} ({found})" for name, found in few.items())
    return f"sheets with room for fewer than four photo tags: {named}"


def _nails(plan: Plan, sheets: SheetPlan) -> list[Spot]:
    found = []
    for nail in plan.nails:
        box = nail_box(nail.x, nail.y)
        names = [sheet.name for sheet in sheets.sheets if sheet.inner.holds(box)]
        found += [Spot(nail.name, names[0], nail.x, nail.y)] if names else []
    return found


class Face(Record, frozen=True):
    """A frame as it will be seen: its outside, what its moulding leaves, and what its mat leaves (wall mm)."""

    id: str
    frame: Rect
    opening: Rect
    window: Rect
    image: Path | None


def depths(plan: Plan) -> dict[str, float]:
    """How far frames stand off the wall, as far as the job says (mm)."""
    return {hung.frame.id: hung.frame.depth for hung in plan.frames if hung.frame.depth is not None}


def faces(plan: Plan) -> tuple[Face, ...]:
    """The frames of a plan as they will be seen."""
    return tuple(
        Face(
            hung.frame.id, hung.rect, opening(hung), window(hung),
            Path(hung.frame.image) if hung.frame.image and not hung.frame.image_missing else None,
        )
        for hung in plan.frames
    )  # fmt: skip
