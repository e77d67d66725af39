"""What fonts give and drawings show."""

from typing import NamedTuple


class Glyph(NamedTuple):
    """A glyph of a font: how far the pen goes on, where from the pen it is drawn (em), what it stands for."""

    number: int
    advance: float
    dx: float = 0.0
    dy: float = 0.0
    text: str = ""
