"""The wall as a small drawing of letters, for a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.base.units import show_both
from templates_gen.job.model import Wall

COLUMNS, ROWS = 60, 15
"""At most so large is the drawing.  Our own design, no source."""

TALL = 2.0
"""How many times higher than wide a letter's cell is: the usual of terminals (common practice, no source)."""


class Signs(Record, frozen=True):
    """What a drawing is made of: of the wall its top corners, top, sides and floor; of a frame four corners, level
    and upright edges; of a feature or a stair its fill."""

    wall: str
    frame: str
    feature: str


LINES = Signs("┌┐─│▀", "┏┓┗┛━┃", "░")
PLAIN = Signs("..-:=", "++++-|", "'")
"""For terminals that know no more than ASCII."""

Grid = list[list[str]]


def wall_picture(wall: Wall, frames: Sequence[tuple[str, Rect]], unit: str, signs: Signs = LINES) -> list[str]:
    """The lines of a drawing of the wall, its stair and features, the frames (name and outside edge), and its size."""
    cell = max(wall.width / (COLUMNS - 2), wall.height / ROWS / TALL)
    across, up = max(1, round(wall.width / cell)), max(1, round(wall.height / cell / TALL))
    grid = [[" "] * across for _ in range(up)]
    if wall.stairs:
        for column in range(across):
            stands = wall.stairs.tread_at(wall.rect.x0 + (column + 0.5) * cell)
            _Cells(column, column + 1, up - round(stands / cell / TALL), up).fill(grid, signs.feature)
    for feature in wall.features:
        box = _Cells.of(feature.rect.shifted(-wall.rect.x0, 0.0), cell, up)
        box.fill(grid, signs.feature)
        if len(feature.name) <= box.room:
            box.write(grid, feature.name)
    for name, rect in frames:
        box = _Cells.of(rect.shifted(-wall.rect.x0, 0.0), cell, up)
        box.fill(grid, " ")
        box.edge(grid, signs.frame)
        box.write(grid, name)
    size = f"{show_both(wall.width, unit)} wide, {show_both(wall.height, unit)} high"
    return [*_walled(grid, signs.wall), f"{size:^{across + 2}}".rstrip()]


def _walled(grid: Grid, signs: str) -> Iterable[str]:
    left, right, top, side, floor = tuple(signs)
    across = len(grid[0])
    yield left + top * across + right
    for row in grid:
        yield side + "".join(row) + side
    yield floor * (across + 2)


class _Cells(Record, frozen=True):
    """A rectangle of cells, row 0 at the top; the parts of it outside the grid are not drawn."""

    left: int
    right: int
    top: int
    bottom: int

    @classmethod
    def of(cls, rect: Rect, cell: float, up: int) -> _Cells:
        """The cells of a rectangle on the wall, at least one each way, and nothing of it where the wall is not."""
        left, right = _span(rect.x0 / cell, rect.x1 / cell)
        low, high = _span(rect.y0 / cell / TALL, rect.y1 / cell / TALL)
        return cls(left, right, up - high, up - low)

    def fill(self, grid: Grid, sign: str) -> None:
        for row in range(self.top, self.bottom):
            for column in range(self.left, self.right):
                _put(grid, row, column, sign)

    def edge(self, grid: Grid, signs: str) -> None:
        """Lines around it, where it is wide enough to have a name inside them; a single row has no level ones."""
        if self.right - self.left < 3:
            return
        last_row, last_column = self.bottom - 1, self.right - 1
        for column in (self.left, last_column):
            _Cells(column, column + 1, self.top, self.bottom).fill(grid, signs[5])
        if last_row == self.top:
            return
        for row in (self.top, last_row):
            _Cells(self.left + 1, last_column, row, row + 1).fill(grid, signs[4])
        corners = ((self.top, self.left), (self.top, last_column), (last_row, self.left), (last_row, last_column))
        for (row, column), sign in zip(corners, signs, strict=False):
            _put(grid, row, column, sign)

    @property
    def room(self) -> int:
        """How long a name inside it can be."""
        return max(1, self.right - self.left - 2)

    def write(self, grid: Grid, text: str) -> None:
        """A name in its middle, as much of it as fits between its sides."""
        shown = text[: self.room]
        start = self.left + (self.right - self.left - len(shown)) // 2
        row = self.top + (self.bottom - self.top - 1) // 2
        for column, sign in enumerate(shown, start):
            _put(grid, row, column, sign)


def _span(start: float, end: float) -> tuple[int, int]:
    low = round(start)
    return low, max(low + 1, round(end))


def _put(grid: Grid, row: int, column: int, sign: str) -> None:
    if 0 <= row < len(grid) and 0 <= column < len(grid[0]):
        grid[row][column] = sign
