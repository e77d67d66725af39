"""Every text and line of a finished page in page mm, those of forms too, before anything is written to a file.

`python -m tests.page_texts` lists the texts that lines run through.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from itertools import combinations

import pytest

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.drawing.items import Form, Item, Line, Polygon, Template, Text, Use, moved
from templates_gen.drawing.lettering import Lettering
from templates_gen.tiling.sheet import Sheet
from tests.made import NAMES, Everything, made
from tests.matrices import inverse
from tests.shared import made_once


@dataclass(frozen=True)
class Lettered:
    """A text on a page: what it takes (page mm), what of that shows, and where it comes from ("" or a form)."""

    text: str
    box: Rect
    seen: Rect
    form: str
    height: float


@dataclass(frozen=True)
class OnPage:
    """A page's texts, its nail points, its lines as thin boxes, and the white that hides them, all in page mm."""

    number: int
    label: str
    texts: tuple[Lettered, ...]
    nails: tuple[tuple[float, float], ...]
    lines: tuple[Rect, ...]
    grounds: tuple[Rect, ...]


@cache
def pages(name: str) -> tuple[OnPage, ...]:
    """Every page of a job."""
    return made_once(("pages", name), lambda: _pages(made(name)))


def _pages(done: Everything) -> tuple[OnPage, ...]:
    return tuple(on_page(done.template, done.lettering, number) for number in range(1, len(done.template.pages) + 1))


def sheet_pages(name: str) -> Iterator[tuple[Sheet, OnPage]]:
    """Every sheet with its page."""
    found = {page.label: page for page in pages(name)}
    for sheet in made(name).sheets.sheets:
        yield sheet, found[sheet.name]


def to_page_mm(sheet: Sheet, x: float, y: float) -> tuple[float, float]:
    """A point of the wall, in mm from the page's lower left corner as the sheet is read, with its top up."""
    return moved(inverse(sheet.page.matrix), *moved(sheet.to_page, x, y))


def on_page(template: Template, lettering: Lettering, number: int) -> OnPage:
    """Page `number` of a template, counting from 1."""
    page = template.pages[number - 1]
    forms = {form.name: form for form in template.forms}
    texts, nails, lines, grounds = [], [], [], []
    dx = dy = 0.0
    if page.to_page is not None:
        back = inverse(page.page_matrix)  # page mm as the sheet is read, with its top up: boxes are only moved here
        (dx, dy), one = moved(back, *page.to_page[4:]), moved(back, *moved(page.to_page, 1.0, 1.0))
        assert (one[0] - dx, one[1] - dy) == pytest.approx((1.0, 1.0), abs=1e-9)
    clip = page.window.shifted(dx, dy) if page.window else None
    for part, x, y, within in ((page.page_items, 0.0, 0.0, None), (page.wall_items, dx, dy, clip)):
        for item, form in _flat(part, forms, x, y):
            box = _box(lettering, item)
            seen = box if within is None else box.meet(within)
            if isinstance(item, Use):
                nails.append((item.x, item.y))
            elif isinstance(item, Polygon):
                grounds.append(box)
            elif seen is not None and isinstance(item, Text):
                texts.append(Lettered(item.text, box, seen, form, item.height))
            elif seen is not None:
                lines.append(seen)
    return OnPage(number, page.label, tuple(texts), tuple(nails), tuple(lines), tuple(grounds))


def _flat(items: Iterable[Item], forms: Mapping[str, Form], dx: float, dy: float) -> Iterator[tuple[Item, str]]:
    """Texts, lines, open outlines and white ground, moved, each with the form it is in; the nail's form too."""
    for item in items:
        if isinstance(item, Use):
            x, y = item.x + dx, item.y + dy
            if item.form == "nail":
                yield Use("nail", x, y), ""
            yield from ((inner, item.form) for inner, _ in _flat(forms[item.form].items, forms, x, y))
        elif isinstance(item, Text):
            yield replace(item, x=item.x + dx, y=item.y + dy), ""
        elif isinstance(item, Line):
            yield replace(item, x0=item.x0 + dx, y0=item.y0 + dy, x1=item.x1 + dx, y1=item.y1 + dy), ""
        elif isinstance(item, Polygon) and (item.grey == 1.0 or not item.filled):
            corners = [(x + dx, y + dy) for x, y in item.points]
            if item.filled:
                yield replace(item, points=tuple(corners)), ""
                continue
            for (x0, y0), (x1, y1) in zip(corners, [*corners[1:], corners[0]], strict=True):
                yield Line(x0, y0, x1, y1, item.width), ""


def _box(lettering: Lettering, item: Item) -> Rect:
    if isinstance(item, Text):
        return lettering.box(item)
    if isinstance(item, Line):
        return Rect(min(item.x0, item.x1), min(item.y0, item.y1), max(item.x0, item.x1), max(item.y0, item.y1))
    if isinstance(item, Polygon):
        xs, ys = zip(*item.points, strict=True)
        return Rect(min(xs), min(ys), max(xs), max(ys))
    return Rect(0.0, 0.0, 0.0, 0.0)


def overlapping(texts: Iterable[Lettered], tolerance: float) -> list[tuple[str, str]]:
    """Every pair of texts that share more than the tolerance both ways (mm)."""
    boxed = [(text, text.seen.grown(-tolerance / 2)) for text in texts]
    return [(one.text, two.text) for (one, a), (two, b) in combinations(boxed, 2) if a.overlaps(b)]


def crossed(page: OnPage) -> Iterator[tuple[Lettered, Rect]]:
    """Texts with a level or upright line through them, but for those on white ground."""
    thin = [(line, line.grown(0.05)) for line in page.lines if line.width < 0.01 or line.height < 0.01]
    for text in page.texts:
        if any(ground.holds(text.seen) for ground in page.grounds):
            continue
        yield from ((text, line) for line, grown in thin if grown.overlaps(text.seen))


def main() -> None:
    """Print what lines run through, job by job."""
    for name in NAMES:
        found = [(page, text) for page in pages(name) for text in dict.fromkeys(text for text, _ in crossed(page))]
        print(f"{name}: {len(found)} of {sum(len(page.texts) for page in pages(name))} texts are crossed by a line")
        for page, text in found:
            where = f" of {text.form}" if text.form else ""
            print(f"  page {page.number} ({page.label}): {text.text!r}{where}, {text.height} mm high")


if __name__ == "__main__":
    main()
