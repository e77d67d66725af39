"""What the same marks cost without the program: as bytes written straight away, and with reportlab's canvas."""

from __future__ import annotations

import io
import zlib
from collections.abc import Iterator, Sequence

import pypdf
from reportlab.pdfgen.canvas import Canvas

from templates_gen.drawing.items import MM_TO_POINTS, Circle, Form, Item, Line, Polygon, Template, Text, Use

Streams = list[tuple[bytes, list[bytes]]]
"""The dictionary of every stream, and its operators one by one."""


def streams_of(pdf: bytes) -> Streams:
    """The pages and forms of a file as their operators, for `straight`: what the program has decided, as strings."""
    found: Streams = []
    forms: set[int] = set()
    for page in pypdf.PdfReader(io.BytesIO(pdf)).pages:
        found.append((b"", page["/Contents"].get_object().get_data().split(b"\n")))
        for form in page["/Resources"].get("/XObject", {}).values():
            if form.indirect_reference.idnum not in forms:
                forms.add(form.indirect_reference.idnum)
                box = " ".join(map(str, form["/BBox"])).encode()
                found.append((b"/Type/XObject/Subtype/Form/BBox[" + box + b"]", form.get_data().split(b"\n")))
    return found


def straight(streams: Streams, size: tuple[int, int]) -> bytes:
    """The streams compressed as the program does it, in the least that makes a PDF file of them; no fonts."""
    out = [b"%PDF-1.7\n"]
    at, places = len(out[0]), []

    def add(body: bytes) -> None:
        nonlocal at
        places.append(at)
        out.append(b"%d 0 obj\n%s\nendobj\n" % (len(places), body))
        at += len(out[-1])

    pages = []
    for entries, operators in streams:
        squeeze = zlib.compressobj(6, zlib.DEFLATED, 12, 5)
        packed = squeeze.compress(b"\n".join(operators)) + squeeze.flush()
        add(b"<<%s/Filter/FlateDecode/Length %d>>stream\n%s\nendstream" % (entries, len(packed), packed))
        if not entries:
            content = len(places)
            add(b"<</Type/Page/Parent %d 0 R/Contents %d 0 R>>" % (2 * len(streams) + 1, content))
            pages.append(b"%d 0 R" % len(places))
        else:
            add(b"null")
    kids = b"<</Type/Pages/Count %d/MediaBox[0 0 %d %d]/Kids[%s]>>" % (len(pages), *size, b" ".join(pages))
    add(kids)
    add(b"<</Type/Catalog/Pages %d 0 R>>" % (len(places)))
    table = b"".join(b"%010d 00000 n \n" % place for place in places)
    out.append(b"xref\n0 %d\n0000000000 65535 f \n%s" % (len(places) + 1, table))
    out.append(b"trailer<</Size %d/Root %d 0 R>>\nstartxref\n%d\n%%%%EOF" % (len(places) + 1, len(places), at))
    return b"".join(out)


def with_canvas(template: Template) -> bytes:
    """The same marks with reportlab's canvas: a plain loop that draws on each sheet what meets it, in Helvetica."""
    file = io.BytesIO()
    canvas = Canvas(file, template.page_size, pageCompression=1)
    forms = {form.name: form for form in template.forms}
    for page in template.pages:
        for matrix, items in ((page.to_page, page.wall_items), (page.page_matrix, page.page_items)):
            canvas.saveState()
            canvas.transform(*(matrix or MM_TO_POINTS))
            if page.window and items is page.wall_items:
                clip = canvas.beginPath()
                clip.rect(page.window.x0, page.window.y0, page.window.width, page.window.height)
                canvas.clipPath(clip, stroke=0)
            for item in _flat(items, forms):
                _draw(canvas, item)
            canvas.restoreState()
        canvas.showPage()
    canvas.save()
    return file.getvalue()


def _flat(items: Sequence[Item], forms: dict[str, Form]) -> Iterator[Item | tuple[float, float, Form]]:
    for item in items:
        yield (item.x, item.y, forms[item.form]) if isinstance(item, Use) else item


def _draw(canvas: Canvas, item: object) -> None:
    if isinstance(item, tuple):
        x, y, form = item
        canvas.saveState()
        canvas.translate(x, y)
        for part in form.items:
            _draw(canvas, part)
        canvas.restoreState()
    elif isinstance(item, Line):
        canvas.setLineWidth(item.width)
        canvas.setDash(list(item.dash), item.phase)
        canvas.line(item.x0, item.y0, item.x1, item.y1)
    elif isinstance(item, Circle):
        canvas.setLineWidth(item.width)
        canvas.circle(item.x, item.y, item.radius, stroke=not item.filled, fill=item.filled)
    elif isinstance(item, Polygon):
        path = canvas.beginPath()
        path.moveTo(*item.points[0])
        for point in item.points[1:]:
            path.lineTo(*point)
        path.close()
        canvas.drawPath(path, stroke=not item.filled, fill=item.filled)
    elif isinstance(item, Text):
        canvas.setFont("Helvetica", item.height / 0.7)
        canvas.drawString(item.x, item.y, item.text)
