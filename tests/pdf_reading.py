"""What a page of a PDF file draws, read from its operators alone: nothing here knows the writer.

All lengths are PDF points on the page (dashes: as written); matrices and forms are followed, clipping is not.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any, NamedTuple
from weakref import WeakKeyDictionary

from pypdf import PageObject
from pypdf.generic import ContentStream

Matrix = tuple[float, float, float, float, float, float]
Point = tuple[float, float]
UNIT: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)

_KNOWN: WeakKeyDictionary[Any, dict[int, Any]] = WeakKeyDictionary()
"""Of every file that is open, what was read of its forms and fonts, by their numbers."""

Dash = tuple[tuple[float, ...], float]


class Segment(NamedTuple):
    """A straight piece of a line that is drawn; of its dashes, the lengths and where in them it starts."""

    x0: float
    y0: float
    x1: float
    y1: float
    width: float
    dash: Dash = ((), 0.0)


class Round(NamedTuple):
    """A circle; `width` is 0 when it is filled."""

    cx: float
    cy: float
    r: float
    width: float


class Lettered(NamedTuple):
    """A text, where its pen starts, and its font size."""

    x: float
    y: float
    size: float
    text: str


@dataclass
class Marks:
    """All that a page draws."""

    segments: list[Segment] = field(default_factory=list)
    circles: list[Round] = field(default_factory=list)
    texts: list[Lettered] = field(default_factory=list)
    areas: list[list[Point]] = field(default_factory=list)


def page_marks(page: PageObject) -> Marks:
    """What the page draws, forms included."""
    marks = Marks()
    contents = page.get_contents()
    if contents is not None:
        _Reader(marks, page.pdf, page["/Resources"], UNIT, 1.0).read(contents)
    return marks


def times(inner: Matrix, outer: Matrix) -> Matrix:
    """First the inner matrix, then the outer one."""
    a, b, c, d, e, f = inner
    p, q, r, s, t, u = outer
    return (a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u)


def moved(matrix: Matrix, x: float, y: float) -> Point:
    a, b, c, d, e, f = matrix
    return a * x + c * y + e, b * x + d * y + f


def scale(matrix: Matrix) -> float:
    a, b, c, d, _, _ = matrix
    return float(abs(a * d - b * c) ** 0.5)


def brought(marks: Marks, matrix: Matrix) -> Marks:
    """The lines and texts of a page under a matrix that turns and moves them but keeps their size."""
    lines = [Segment(*moved(matrix, s.x0, s.y0), *moved(matrix, s.x1, s.y1), s.width, s.dash) for s in marks.segments]
    return Marks(lines, [], [Lettered(*moved(matrix, t.x, t.y), t.size, t.text) for t in marks.texts])


@dataclass
class _State:
    matrix: Matrix
    width: float
    dash: Dash = ((), 0.0)
    stack: list[tuple[Matrix, float, Dash]] = field(default_factory=list)


class _Reader:
    def __init__(self, marks: Marks, pdf: Any, resources: Any, matrix: Matrix, width: float) -> None:
        self.marks, self.pdf, self.resources = marks, pdf, resources
        self.state = _State(matrix, width)
        # of every subpath its points; of a curve, its control points and its end
        self.path: list[list[Any]] = []
        self.text: list[str] = []
        self.text_matrix, self.font, self.size = UNIT, "", 0.0

    def read(self, contents: Any) -> None:
        for operands, name in self.once(contents, lambda: _operations(contents, self.pdf)):
            _OPERATORS[name](self, *operands)

    def once(self, part: Any, read: Callable[[], Any]) -> Any:
        """What is read of a part of the file: once of each that has a number, however many pages place it."""
        number = getattr(part, "indirect_reference", None)
        known = _KNOWN.setdefault(self.pdf, {})
        if number is None:
            return read()
        if number.idnum not in known:
            known[number.idnum] = read()
        return known[number.idnum]

    def save(self) -> None:
        self.state.stack.append((self.state.matrix, self.state.width, self.state.dash))

    def restore(self) -> None:
        self.state.matrix, self.state.width, self.state.dash = self.state.stack.pop()

    def concat(self, *numbers: Any) -> None:
        self.state.matrix = times(_matrix(numbers), self.state.matrix)

    def set_width(self, width: Any) -> None:
        self.state.width = float(width)

    def set_dash(self, lengths: Any, phase: Any) -> None:
        self.state.dash = tuple(map(float, lengths)), float(phase)

    def move(self, x: Any, y: Any) -> None:
        self.path.append([moved(self.state.matrix, float(x), float(y))])

    def line(self, x: Any, y: Any) -> None:
        self.path[-1].append(moved(self.state.matrix, float(x), float(y)))

    def curve(self, *numbers: Any) -> None:
        n = [float(v) for v in numbers]
        self.path[-1].append(tuple(moved(self.state.matrix, n[i], n[i + 1]) for i in (0, 2, 4)))

    def close(self) -> None:
        if self.path and not isinstance(self.path[-1][-1][0], tuple):
            self.path[-1].append(self.path[-1][0])

    def rectangle(self, x: Any, y: Any, w: Any, h: Any) -> None:
        x, y, w, h = map(float, (x, y, w, h))
        self.move(x, y)
        for px, py in ((x + w, y), (x + w, y + h), (x, y + h), (x, y)):
            self.line(px, py)

    def stroke(self) -> None:
        self._paint(self.state.width * scale(self.state.matrix), stroked=True)

    def close_and_stroke(self) -> None:
        self.close()
        self.stroke()

    def fill(self) -> None:
        self._paint(0.0, stroked=False)

    def drop(self) -> None:
        self.path = []

    def _paint(self, width: float, stroked: bool) -> None:
        for path in self.path:
            curves = [piece for piece in path[1:] if isinstance(piece[0], tuple)]
            if len(curves) == 4:
                self.marks.circles.append(_circle([curve[2] for curve in curves], width))
            elif stroked and not curves:
                self.marks.segments += [Segment(*p, *q, width, self.state.dash) for p, q in pairwise(path)]
            elif not curves:
                self.marks.areas.append(path)
        self.path = []

    def place(self, name: str) -> None:
        form = self.resources["/XObject"][name]
        if form["/Subtype"] == "/Image":
            return
        matrix = times(_matrix(form.get("/Matrix", UNIT)), self.state.matrix)
        reader = _Reader(self.marks, self.pdf, form.get("/Resources", {}), matrix, self.state.width)
        reader.state.dash = self.state.dash
        reader.read(form)

    def begin_text(self) -> None:
        self.text, self.text_matrix = [], UNIT

    def set_font(self, name: str, size: Any) -> None:
        self.font, self.size = name, float(size)

    def set_text_matrix(self, *numbers: Any) -> None:
        self.text_matrix = _matrix(numbers)

    def show(self, value: Any) -> None:
        font = self.resources["/Font"][self.font]
        names = self.once(font, lambda: _meanings(font))
        for part in value if isinstance(value, list) else [value]:
            if isinstance(part, str | bytes):
                codes = part if isinstance(part, bytes) else _bytes(part)
                self.text += [names.get(codes[i : i + 2], "") for i in range(0, len(codes), 2)]

    def end_text(self) -> None:
        matrix = times(self.text_matrix, self.state.matrix)
        x, y = moved(matrix, 0.0, 0.0)
        self.marks.texts.append(Lettered(x, y, self.size * scale(matrix), "".join(self.text)))


def _operations(contents: Any, pdf: Any) -> list[tuple[Any, bytes]]:
    """The operators that draw something here, each with what stands before it."""
    stream = contents if isinstance(contents, ContentStream) else ContentStream(contents, pdf)
    return [(operands, name) for operands, name in stream.operations if name in _OPERATORS]


def _bytes(string: Any) -> bytes:
    """What stands in the file, where pypdf has taken it for text."""
    return bytes(string.original_bytes)


def _matrix(numbers: Any) -> Matrix:
    a, b, c, d, e, f = (float(number) for number in numbers)
    return (a, b, c, d, e, f)


def _circle(ends: list[Point], width: float) -> Round:
    """The circle through the ends of four quarter curves, or through an ellipse's: the one of the same area."""
    cx, cy = sum(x for x, _ in ends) / 4, sum(y for _, y in ends) / 4
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = ends
    # conjugate diameters span as much as the axes do (Apollonius)
    spanned = (x0 - x2) * (y1 - y3) - (y0 - y2) * (x1 - x3)
    return Round(cx, cy, abs(spanned) ** 0.5 / 2, width)


def _meanings(font: Any) -> dict[bytes, str]:
    """The characters that two-byte codes stand for, by the font's ToUnicode table."""
    table = font["/ToUnicode"].get_data().decode("ascii")
    pairs = re.findall(r"^<([0-9A-F]{4})> <([0-9A-Fa-f]*)>$", table, re.M)
    return {bytes.fromhex(code): bytes.fromhex(told).decode("utf-16-be") for code, told in pairs}


_OPERATORS: dict[bytes, Any] = {
    b"q": _Reader.save,
    b"Q": _Reader.restore,
    b"cm": _Reader.concat,
    b"w": _Reader.set_width,
    b"d": _Reader.set_dash,
    b"m": _Reader.move,
    b"l": _Reader.line,
    b"c": _Reader.curve,
    b"h": _Reader.close,
    b"re": _Reader.rectangle,
    b"S": _Reader.stroke,
    b"s": _Reader.close_and_stroke,
    b"f": _Reader.fill,
    b"n": _Reader.drop,
    b"Do": _Reader.place,
    b"BT": _Reader.begin_text,
    b"Tf": _Reader.set_font,
    b"Tm": _Reader.set_text_matrix,
    b"Tj": _Reader.show,
    b"TJ": _Reader.show,
    b"ET": _Reader.end_text,
}
