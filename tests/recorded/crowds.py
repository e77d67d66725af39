"""Crowded walls on many papers, a few lines each: how many marks every layer drew, and the sums of where they are."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import cycle, islice, product

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import InputError
from templates_gen.documents.sheets.layers import Laid, lay, sheet_page
from templates_gen.documents.sheets.photo_tags import fewer, photo_tags, tags_on
from templates_gen.drawing.items import Circle, Item, Line, Polygon, Text, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.tiling.demand import demand
from templates_gen.tiling.linked import linked_cells
from templates_gen.tiling.sheet import given
from templates_gen.tolerance.holding import plan_sheets
from tests.apart import KINDS
from tests.crowded import crowded
from tests.jobs import paper
from tests.recorded.jobs import crowd
from tests.recorded.listing import numbers, wrapped

CROWDS = 30
"""So many walls.  Our own choice."""

SPINES = 9
"""Of so many the first sheets of linked paper.  Our own choice."""

TAG = 12.0
"""mm of a photo tag's side: of all that is recorded here only that it stays."""

WAYS = product(("letter", "a4", "tabloid"), ("cut", "none"), ("all", "marks", "nails", "linked"), ("in", "mm", "cm"))


def of_crowds() -> Iterator[str]:
    """What is drawn on every wall, planned without a search."""
    lettering = Lettering()
    for seed, (size, trim, cover, unit) in enumerate(islice(cycle(WAYS), 0, 2 * CROWDS, 2)):
        job = crowded(seed, paper(size, trim=trim, cover=cover, photo=seed % 3 == 0), unit)
        plan = plan_wall(job)
        try:
            every = lay(plan, plan_sheets(plan, job.paper, quick=True), 3, lettering)
        except InputError as error:
            yield f"{seed} {size} {trim} {cover} {unit}: {' / '.join(str(error).splitlines())}"
        else:
            yield from wrapped(f"{seed} {size} {trim} {cover} {unit}: ", _of_layers(every))


def of_spines() -> Iterator[str]:
    """The first sheets of linked paper for four frames of a crowded wall, before any search."""
    for seed, (size, unit) in enumerate(islice(cycle(product(("letter", "a4", "a5"), ("in", "mm"))), SPINES)):
        plan = plan_wall(crowd(size, unit, seed, cover="linked"))
        asked = given(plan, plan.job.paper, None)
        overlap = plan.job.paper.overlap
        found = linked_cells(plan, demand(plan, "linked", asked.clear), asked.printables, overlap, asked.clear)
        cells = found.cells if found else ()
        strips = " ".join(f"{cell.strip}.{cell.place}{'t' * cell.turned}" for cell in cells)
        yield f"{seed} {size}: {strips}: {_sums([Polygon(cell.rect.corners) for cell in cells]) if cells else 'none'}"


def _of_layers(every: Sequence[Laid]) -> Iterator[str]:
    """What each layer drew on all sheets, and what is there in the end."""
    yield f"{len(every)} sheets"
    for number, kind in enumerate(KINDS):
        done = [list(laid.drawn.values())[number] for laid in every]
        items = [item for one in done for item in (*one.items, *one.page_items)]
        if items:
            yield f"{kind} {_sums(items)}"
    pages = [(laid.so_far.sheet, laid.drawn[photo_tags].page_items) for laid in every]
    if tags := list(tags_on(pages, TAG)):
        boxes = [Polygon(tag.box.corners) for tag in tags]
        yield f"squares {_sums(boxes)}, fewer {dict(fewer(tags, every[0].so_far.sheets))}"
    yield f"on wall {_sums([item for laid in every for item in sheet_page(laid).wall_items])}"


def _sums(items: Sequence[Item]) -> str:
    return f"{len(items)}: {numbers(*map(sum, zip(*map(_place, items), strict=True)))}"


def _place(item: Item) -> tuple[float, float]:
    """Where an item is and how large, in two numbers."""
    if isinstance(item, Text):
        return item.x + item.height, item.y + len(item.text)
    if isinstance(item, Use):
        return item.x, item.y
    if isinstance(item, Line):
        return item.x0 + 2 * item.x1 + item.width, item.y0 + 2 * item.y1
    if isinstance(item, Circle):
        return item.x + item.radius, item.y + item.width
    assert isinstance(item, Polygon)
    return sum(x for x, _ in item.points) + item.grey, sum(y for _, y in item.points)
