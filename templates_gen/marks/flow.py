"""Running text on pages: headings, paragraphs, numbered steps, tables and pictures, one under the other."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import accumulate

from templates_gen.geometry import Rect
from templates_gen.lettering import Lettering
from templates_gen.marks.blocks import ink_of, shortened, wrapped
from templates_gen.marks.items import Item, Line, Text
from templates_gen.marksizes import H25, H35, HAIR, NARROW

LEADING = 1.75
"""Distance of base lines in lettering heights; ISO 3098-1 asks for 22/14 at least (from memory)."""


class Flow:
    """Fills an area (page mm) from the top, and goes on on a next page when it is full."""

    def __init__(self, area: Rect, lettering: Lettering) -> None:
        self.area, self.lettering = area, lettering
        self.pages: list[list[Item]] = [[]]
        self.top = area.y1

    def space(self, height: float) -> None:
        """Free space, unless at the top of a page."""
        if self.top < self.area.y1:
            self.top -= height

    def need(self, height: float) -> None:
        """A new page when less than this is left of the present one."""
        if self.top - height < self.area.y0 and self.pages[-1]:
            self.pages.append([])
            self.top = self.area.y1

    def heading(self, text: str, height: float = H35, follows: float = 12.0) -> None:
        """A bold line that stays on one page with what follows it (at least `follows` mm)."""
        self.space(height)
        self.need(height * LEADING + follows)
        self._line(text, height, True, self.area.x0)
        self.top -= 0.8

    def paragraph(
        self, text: str, height: float = H25, indent: float = 0.0, lead: str = "", bold: bool = False
    ) -> None:
        """Wrapped text; `lead` (a number, a word) stands before its first line in the indent."""
        x = self.area.x0 + indent
        for number, line in enumerate(wrapped(text, height, bold, self.area.x1 - x, self.lettering)):
            self.need(height * LEADING)
            if lead and number == 0:
                self.pages[-1].append(Text(self.area.x0, self._base(line, height, bold), lead, height, bold=True))
            self._line(line, height, bold, x)

    def steps(self, texts: Iterable[str]) -> None:
        """Numbered steps."""
        for number, text in enumerate(texts, 1):
            self.paragraph(text, indent=7.0, lead=f"{number}")
            self.space(0.6)

    def table(
        self,
        header: Sequence[str],
        rows: Iterable[Sequence[str]],
        widths: Sequence[float],
        height: float = H25,
        strong: Callable[[Sequence[str]], bool] = lambda row: False,
    ) -> None:
        """A table whose cells are cut to the columns' `widths` (mm); its header comes again on every page.

        A row for which `strong` is true is bold.
        """
        self._cells(self._columns(header, widths, height, True), widths, height, True)
        for row in rows:
            columns = self._columns(row, widths, height, strong(row))
            if self.top - max(map(len, columns)) * height * LEADING - 1.6 < self.area.y0:
                self.need(self.area.height)
                self._cells(self._columns(header, widths, height, True), widths, height, True)
            self._cells(columns, widths, height, strong(row), HAIR)

    def picture(self, height: float, draw: Callable[[Rect], Iterable[Item]]) -> None:
        """A drawing of this height across the whole area."""
        self.need(height)
        place = Rect(self.area.x0, self.top - height, self.area.x1, self.top)
        self.pages[-1].extend(draw(place))
        self.top -= height

    def _line(self, text: str, height: float, bold: bool, x: float) -> None:
        self.pages[-1].append(Text(x, self._base(text, height, bold), text, height, bold=bold))
        ink = ink_of((text, height, bold), self.lettering)
        self.top -= max(height * LEADING, ink.height + 0.3 * height)

    def _base(self, text: str, height: float, bold: bool) -> float:
        return self.top - ink_of((text, height, bold), self.lettering).y1

    def _columns(self, row: Sequence[str], widths: Sequence[float], height: float, bold: bool) -> list[list[str]]:
        """The lines, one or two, of each cell of a row."""
        return [self._in_two(cell, width - 2.0, height, bold) for cell, width in zip(row, widths, strict=True)]

    def _cells(
        self, columns: list[list[str]], widths: Sequence[float], height: float, bold: bool, line: float = NARROW
    ) -> None:
        """A row of cells with a line under it."""
        for number in range(max(map(len, columns))):
            self._row([lines[number] if number < len(lines) else "" for lines in columns], widths, height, bold)
        self.top -= 0.7
        self.pages[-1].append(Line(self.area.x0, self.top, self.area.x1, self.top, line))
        self.top -= 0.9

    def _in_two(self, cell: str, width: float, height: float, bold: bool) -> list[str]:
        lines = wrapped(cell, height, bold, width, self.lettering) or [""]
        rest = shortened(" ".join(lines[1:]), height, bold, width, self.lettering)
        return [lines[0], rest] if len(lines) > 2 else lines

    def _row(self, texts: Sequence[str], widths: Sequence[float], height: float, bold: bool) -> None:
        inks = [ink_of((text, height, bold), self.lettering) for text in texts if text]
        base = self.top - max((ink.y1 for ink in inks), default=height)
        for text, x in zip(texts, accumulate(widths, initial=self.area.x0), strict=False):
            if text:
                self.pages[-1].append(Text(x, base, text, height, bold=bold))
        self.top = base - max((-ink.y0 for ink in inks), default=0.0) - 0.25 * height
