"""Running text on pages: headings, paragraphs, numbered steps, tables and pictures, one under the other."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import accumulate, compress

from templates_gen.base.adding import added
from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.drawing.blocks import ink_of, shortened, wrapped
from templates_gen.drawing.items import Item, Line, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.sizes import H25, H35, HAIR, NARROW

LEADING = 1.6
"""Distance of base lines of running text in lettering heights: a little more than `LEAST_LEADING`, for long lines.
Our own design, no source."""


FIRST = 30.0
"""mm of something long that are on the page it begins on, at least.  Our own design, no source."""

AIR = 2.0
"""mm between a cell and the next column at least.  Our own design, no source."""

UNDER_HEADING, STEP_INDENT, STEP_SPACE = 0.8, 7.0, 0.6
"""mm under a heading; beside and under the words of a numbered step.  Our own design, no source."""

ROW_SPACE = 0.7, 0.9
"""mm between a table's row and the line under it, and below that.  Our own design, no source."""

LINE_SPACE, ROW_LINE_SPACE = 0.3, 0.25
"""Of the letters' height: the least between the ink of two lines, of text and of a cell.  Our own design, no source."""


class Flow:
    """Fills an area (page mm) from the top, and goes on on a next page, in the area `after`, when it is full."""

    def __init__(self, area: Rect, lettering: Lettering, after: Rect | None = None) -> None:
        self.area, self.lettering = area, lettering
        self._after = after or area
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
            self.area = self._after
            self.top = self.area.y1

    def together(self, write: Callable[[Flow], None], lines: int = 0) -> int:
        """Write this on one page, unless it takes more than half of one; returns the page (from 0) it begins on.

        `lines` is how many lines it has at least.  When they alone take more than half a page, nothing is tried first.
        """
        depth = lines * H25 * LEADING
        if depth <= self.area.height / 2:
            trial = Flow(self.area, self.lettering)
            write(trial)
            depth = trial.area.y1 - trial.top + H35 if len(trial.pages) == 1 else self.area.height
        self.need(depth if depth <= self.area.height / 2 else FIRST)
        begins = len(self.pages) - 1
        write(self)
        return begins

    def heading(self, text: str, height: float = H35, follows: float = 12.0) -> None:
        """A bold line that stays on one page with what follows it (at least `follows` mm)."""
        self.space(height)
        self.need(height * LEADING + UNDER_HEADING + follows)
        self._line(text, height, True)
        self.top -= UNDER_HEADING

    def paragraph(
        self, text: str, height: float = H25, indent: float = 0.0, lead: str = "", bold: bool = False
    ) -> None:
        """Wrapped text, all on one page if it can be; `lead` (a number, a word) stands before it in the indent."""
        self.need(min(self.depth(text, height, indent, bold), self.area.height))
        # anew, for the next page may be wider
        for number, line in enumerate(wrapped(text, height, bold, self.area.width - indent, self.lettering)):
            self.need(height * LEADING)
            if lead and number == 0:
                self.pages[-1].append(Text(self.area.x0, self._base(line, height, bold), lead, height, bold=True))
            self._line(line, height, bold, indent)

    def depth(self, text: str, height: float = H25, indent: float = 0.0, bold: bool = False) -> float:
        """How far down a paragraph goes (mm)."""
        return len(wrapped(text, height, bold, self.area.width - indent, self.lettering)) * height * LEADING

    def steps(self, texts: Iterable[str]) -> None:
        """Numbered steps."""
        for number, text in enumerate(texts, 1):
            self.paragraph(text, indent=STEP_INDENT, lead=f"{number}")
            self.space(STEP_SPACE)

    def table(
        self,
        header: Sequence[str],
        rows: Iterable[Sequence[str]],
        widths: Sequence[float] | None = None,
        height: float = H25,
        strong: Callable[[Sequence[str]], bool] = lambda row: False,
    ) -> None:
        """A table; its header comes again on every page, and a row for which `strong` is true is bold.

        Its columns are `widths` wide (mm).  Without widths they are as wide as their cells want, and empty ones are
        left out.  A cell has two lines at most.
        """
        lines = [(header, True), *((row, strong(row)) for row in rows)]
        if widths is None:
            filled = [any(cells) for cells in zip(*(row for row, _ in lines[1:]), strict=True)]
            lines = [(tuple(compress(row, filled)), bold) for row, bold in lines]
        wanted = [] if widths else self._wanted(lines, height)
        across = widths or self._shared_out(wanted)
        self._cells(self._columns(lines[0][0], across, height, True), across, height, True)
        for row, bold in lines[1:]:
            columns = self._columns(row, across, height, bold)
            if self.top - max(map(len, columns)) * height * LEADING - added(ROW_SPACE) < self.area.y0:
                self.need(self.area.height)
                across = widths or self._shared_out(wanted)  # this page may be wider
                self._cells(self._columns(lines[0][0], across, height, True), across, height, True)
                columns = self._columns(row, across, height, bold)
            self._cells(columns, across, height, bold, HAIR)

    def picture(self, height: float, draw: Callable[[Rect], Iterable[Item]]) -> None:
        """A drawing of this height across the whole area."""
        self.need(height)
        place = Rect(self.area.x0, self.top - height, self.area.x1, self.top)
        self.pages[-1].extend(draw(place))
        self.top -= height

    def _line(self, text: str, height: float, bold: bool, indent: float = 0.0) -> None:
        self.pages[-1].append(Text(self.area.x0 + indent, self._base(text, height, bold), text, height, bold=bold))
        ink = ink_of((text, height, bold), self.lettering)
        self.top -= max(height * LEADING, ink.height + LINE_SPACE * height)

    def _base(self, text: str, height: float, bold: bool) -> float:
        return self.top - ink_of((text, height, bold), self.lettering).y1

    def _wanted(self, lines: Sequence[tuple[Sequence[str], bool]], height: float) -> list[float]:
        """How wide every column is by its widest cell."""
        return [
            max(self.lettering.width(row[column], height, bold) for row, bold in lines) + AIR
            for column in range(len(lines[0][0]))
        ]

    def _shared_out(self, wanted: Sequence[float]) -> list[float]:
        """The columns as wide as they want to be, and what is left of the area shared out between them.

        Where that is too much, the widest columns are made narrower, all to one width.
        """
        widths, free = list(wanted), self.area.width
        for place, column in enumerate(sorted(range(len(widths)), key=widths.__getitem__)):
            widths[column] = min(widths[column], free / (len(widths) - place))
            free -= widths[column]
        return [width + free / len(widths) for width in widths]

    def _columns(self, row: Sequence[str], widths: Sequence[float], height: float, bold: bool) -> list[list[str]]:
        """The lines, one or two, of each cell of a row."""
        return [
            self._in_two(cell, width - AIR + TOLERANCE, height, bold) for cell, width in zip(row, widths, strict=True)
        ]

    def _cells(
        self, columns: list[list[str]], widths: Sequence[float], height: float, bold: bool, line: float = NARROW
    ) -> None:
        """A row of cells with a line under it."""
        for number in range(max(map(len, columns))):
            self._row([lines[number] if number < len(lines) else "" for lines in columns], widths, height, bold)
        self.top -= ROW_SPACE[0]
        self.pages[-1].append(Line(self.area.x0, self.top, self.area.x1, self.top, line))
        self.top -= ROW_SPACE[1]

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
        self.top = base - max((-ink.y0 for ink in inks), default=0.0) - ROW_LINE_SPACE * height
