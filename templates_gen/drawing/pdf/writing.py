"""A finished template written as a PDF file."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from templates_gen.base.geometry import Rect
from templates_gen.drawing.items import Circle, Form, Item, Line, Page, Picture, Polygon, Template, Text, Use
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.file import PdfFile
from templates_gen.drawing.pdf.operators import Drawing, Lettered


def write_pdf(template: Template, lettering: Lettering) -> bytes:
    """The template as the bytes of a PDF file: equal templates give equal bytes.

    A character that no font has raises `InputError`; a form that is used but not there, `ValueError`.
    """
    file = PdfFile(template.page_size, template.title, template.author, template.language)
    pen = _Pen(lettering)
    forms = _Forms(template.forms, file, pen)
    for page in template.pages:
        drawing = file.drawing()
        _draw_page(page, drawing, pen)
        forms.add_used_by(drawing)
        file.add_page(drawing, page.label, page.title)
    for number, (name, content) in enumerate(template.attachments):
        file.attach(name, content, "Supplement" if number else "Source")
    return file.save()


def _draw_page(page: Page, drawing: Drawing, pen: _Pen) -> None:
    if page.wall_items:
        if page.to_page is None or page.window is None:
            raise ValueError(f"page {page.label} has marks of the wall, but no window to show them in")
        drawing.begin(page.to_page, page.window)
        pen.draw(page.wall_items, drawing)
        drawing.end()
    if page.page_items:
        drawing.begin(page.page_matrix)
        pen.draw(page.page_items, drawing)
        drawing.end()


class _Forms:
    """The forms of a template, put into the file the first time one is used, those that are alike once."""

    def __init__(self, forms: Sequence[Form], file: PdfFile, pen: _Pen) -> None:
        self._forms = {form.name: form for form in forms}
        self._file, self._pen = file, pen
        self._added: set[str] = set()
        self._alike: dict[tuple[Rect, tuple[Item, ...]], str] = {}
        self._same: dict[tuple[Rect, int], str] = {}

    def add_used_by(self, drawing: Drawing) -> None:
        for name in drawing.forms:
            if name not in self._added:
                self._add(name)

    def _add(self, name: str) -> None:
        if name not in self._forms:
            raise ValueError(f"form {name!r} is used, but the template has none of that name")
        self._added.add(name)
        form = self._forms[name]
        first = self._same.get((form.box, id(form.items)))  # most scales even have the same items, not just like ones
        if first is None:
            first = self._alike.setdefault((form.box, form.items), name)
            self._same[form.box, id(form.items)] = first
        if first != name:  # the drop scales of many frames
            self._file.same_form(name, first)
            return
        drawing = self._file.drawing()
        self._pen.draw(form.items, drawing)
        self.add_used_by(drawing)
        self._file.add_form(name, form.box, drawing)


class _Pen:
    """Draws items one by one; a text that comes again is set once."""

    def __init__(self, lettering: Lettering) -> None:
        self._lettering = lettering
        self._lettered: dict[tuple[str, float, bool], Lettered] = {}
        self._ways: dict[type[Any], Callable[[Any, Drawing], None]] = {
            Line: _line,
            Circle: _circle,
            Polygon: _polygon,
            Use: _use,
            Picture: _picture,
            Text: self._text,
        }

    def draw(self, items: Sequence[Item], drawing: Drawing) -> None:
        ways = self._ways
        for item in items:
            ways[type(item)](item, drawing)

    def _text(self, item: Text, drawing: Drawing) -> None:
        key = item.text, item.height, item.bold
        known = self._lettered.get(key)
        if known is None:
            font, size = self._lettering.plain(item.text, item.bold), self._lettering.size(item.height, item.bold)
            if font is not None:
                known = drawing.set_plain(font, item.text, size)
            else:
                known = drawing.set(self._lettering.runs(item.text, item.bold), size)
            self._lettered[key] = known
        x, y = (item.x, item.y) if item.anchor == "left" else self._lettering.start(item)
        drawing.letters(x, y, known, item.angle)


def _line(item: Line, drawing: Drawing) -> None:
    drawing.pen(item.width, item.dash, item.phase, item.grey)
    drawing.line(item.x0, item.y0, item.x1, item.y1)


def _circle(item: Circle, drawing: Drawing) -> None:
    if not item.filled:
        drawing.pen(item.width, grey=item.grey)
    drawing.circle(item.x, item.y, item.radius, item.grey if item.filled else None)


def _polygon(item: Polygon, drawing: Drawing) -> None:
    if item.filled:
        drawing.polygon(item.points, item.grey)
    else:
        drawing.pen(item.width, grey=item.grey)
        drawing.polygon(item.points)


def _use(item: Use, drawing: Drawing) -> None:
    drawing.use(item.form, item.x, item.y)


def _picture(item: Picture, drawing: Drawing) -> None:
    drawing.picture(item.pixels, item.box)
