"""A finished proof as SVG: the same marks, every layer a group of its own class, pictures within the file."""

from __future__ import annotations

import base64
import unicodedata
from collections.abc import Callable, Iterable
from typing import Any
from xml.etree import ElementTree as Xml

from templates_gen.base.geometry import Rect
from templates_gen.base.output import MADE_BY
from templates_gen.drawing.items import POINT, Circle, Item, Line, Picture, Polygon, Template, Text, Use
from templates_gen.drawing.lettering import Lettering

FAMILY = "'PT Sans', 'Noto Sans', 'Helvetica Neue', Arial, sans-serif"
"""Fonts that are asked for one after the other; whichever is there, each text is as long as it was planned."""

NAMESPACE = "http://www.w3.org/2000/svg"
"""Of Scalable Vector Graphics (SVG) 2, W3C."""


def write_svg(template: Template, lettering: Lettering, shown: Rect | None = None) -> bytes:
    """The first page of a template, or what is `shown` of it (page mm), as an SVG file in its true size, in mm; each
    form that it places is a group."""
    height = template.page_size[1] * POINT
    seen = shown or Rect(0.0, 0.0, template.page_size[0] * POINT, height)
    x, y, wide, high = (_number(side) for side in (seen.x0, height - seen.y1, seen.width, seen.height))
    root = Xml.Element("svg", {
        "xmlns": NAMESPACE, "xml:lang": template.language, "width": f"{wide}mm",
        "height": f"{high}mm", "viewBox": f"{x} {y} {wide} {high}", "font-family": FAMILY,
    })  # fmt: skip
    Xml.SubElement(root, "title").text = template.title
    Xml.SubElement(root, "desc").text = f"Made by {MADE_BY}"
    begins = {"x": x, "y": y} if shown else {}
    Xml.SubElement(root, "rect", {**begins, "width": "100%", "height": "100%", "fill": "#ffffff"})
    forms = {form.name: form for form in template.forms}
    pen = _Pen(height, lettering)
    for use in template.pages[0].page_items:
        if isinstance(use, Use):
            group = Xml.SubElement(root, "g", {"class": use.form})
            for item in forms[use.form].items:
                pen.draw(item, group)
    Xml.indent(root, " ")
    return bytes(Xml.tostring(root, encoding="utf-8", xml_declaration=True)) + b"\n"


def markup(items: Iterable[Item]) -> str:
    """Items as SVG elements for a screen, which sets text in a font of its own; y is turned down about 0."""
    group, pen = Xml.Element("g"), _Pen(0.0, None)
    for item in items:
        pen.draw(item, group)
    return "".join(Xml.tostring(element, encoding="unicode") for element in group)


WHITE = 255
"""All light of a colour (CSS Color Module Level 3, 4.2.1)."""

CAPITALS = 0.7
"""Height of a capital letter in a font's size: that of PT Sans, and near that of other fonts without serifs (from
memory)."""


class _Pen:
    """Draws items one by one on a page of this height (mm), with y turned down; without lettering, text as it comes."""

    def __init__(self, height: float, lettering: Lettering | None) -> None:
        self._height, self._lettering = height, lettering
        self._ways: dict[type[Any], Callable[[Any, Xml.Element], None]] = {
            Line: self._line,
            Circle: self._circle,
            Polygon: self._polygon,
            Text: self._text if lettering else self._plain_text,
            Picture: self._picture,
        }

    def draw(self, item: Any, group: Xml.Element) -> None:
        """Put the item into a group."""
        self._ways[type(item)](item, group)

    def _line(self, item: Line, group: Xml.Element) -> None:
        ends = {"x1": item.x0, "y1": self._height - item.y0, "x2": item.x1, "y2": self._height - item.y1}
        line = Xml.SubElement(group, "line", _numbers(ends) | _stroke(item.width, item.grey))
        if item.dash:
            line.set("stroke-dasharray", " ".join(map(_number, item.dash)))
            line.set("stroke-dashoffset", _number(item.phase))

    def _circle(self, item: Circle, group: Xml.Element) -> None:
        place = _numbers({"cx": item.x, "cy": self._height - item.y, "r": item.radius})
        Xml.SubElement(group, "circle", place | _paint(item))

    def _polygon(self, item: Polygon, group: Xml.Element) -> None:
        points = " ".join(f"{_number(x)},{_number(self._height - y)}" for x, y in item.points)
        Xml.SubElement(group, "polygon", {"points": points} | _paint(item))

    def _picture(self, item: Picture, group: Xml.Element) -> None:
        box, data = item.box, base64.b64encode(item.pixels.jpeg).decode("ascii")
        place = {"x": box.x0, "y": self._height - box.y1, "width": box.width, "height": box.height}
        more = {"preserveAspectRatio": "none", "href": f"data:image/jpeg;base64,{data}"}
        Xml.SubElement(group, "image", _numbers(place) | more)

    def _text(self, item: Text, group: Xml.Element) -> None:
        """Placed by its middle and held to its length, which no direction of reading and no other font changes."""
        assert self._lettering is not None
        start_x, start_y = self._lettering.start(item)
        wide = self._lettering.width(item.text, item.height, item.bold)
        x, y = (start_x, start_y + wide / 2) if item.angle == 90 else (start_x + wide / 2, start_y)
        size = self._lettering.size(item.height, item.bold)
        place = _numbers({"x": x, "y": self._height - y, "font-size": size, "textLength": wide})
        text = Xml.SubElement(group, "text", place | {"lengthAdjust": "spacingAndGlyphs", "text-anchor": "middle"})
        if item.bold:
            text.set("font-weight", "bold")
        if item.angle == 90:
            text.set("transform", f"rotate(-90 {_number(x)} {_number(self._height - y)})")
        if _from_the_right(item.text):
            text.set("direction", "rtl")
        text.text = item.text

    def _plain_text(self, item: Text, group: Xml.Element) -> None:
        """On the base line at its anchor."""
        place = _numbers({"x": item.x, "y": self._height - item.y, "font-size": item.height / CAPITALS})
        text = Xml.SubElement(group, "text", place | {"text-anchor": _ANCHORS[item.anchor]})
        if item.bold:
            text.set("font-weight", "bold")
        text.text = item.text


_ANCHORS = {"left": "start", "middle": "middle", "right": "end"}


def _from_the_right(text: str) -> bool:
    """True for a text whose first letter is read from right to left (UAX #9, P2 and P3)."""
    ways = (unicodedata.bidirectional(char) for char in text)
    return next((way for way in ways if way in ("L", "R", "AL")), "L") != "L"


def _paint(item: Circle | Polygon) -> dict[str, str]:
    return {"fill": _colour(item.grey)} if item.filled else _stroke(item.width, item.grey)


def _stroke(width: float, grey: float) -> dict[str, str]:
    return {"fill": "none", "stroke": _colour(grey), "stroke-width": _number(width)}


def _colour(grey: float) -> str:
    return "#" + f"{round(WHITE * grey):02x}" * 3


def _numbers(values: dict[str, float]) -> dict[str, str]:
    return {name: _number(value) for name, value in values.items()}


def _number(value: float) -> str:
    """Four decimals, 0.0001 mm, as in a PDF file."""
    return f"{value:.4f}".rstrip("0").rstrip(".")
