"""Several lines of lettering that stand together as one block."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import product

from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.drawing.items import Text
from templates_gen.drawing.lettering import Lettering

LEAST_LEADING = 22 / 14
"""Least distance of base lines in lettering heights: GOST 2.304-81, table 1, lettering type A."""

BETWEEN = 0.35
"""Least free space between the ink of two lines, in lettering heights.  Our own design, no source."""

_TOGETHER = re.compile(r"\S+(?:(?<=\d)\s+(?:\d+/\d+|in|cm|mm|lb|kg|N|%|\((?:step )?\d+\))(?=\W|$)\S*)*(?:\s+·(?=\s))?")
"""A word; with a number goes its fraction, its unit, or a number in brackets, and with all a raised dot after them."""

LineOfText = tuple[str, float, bool]
"""Text, capital height in mm, bold."""


class Block(Record, frozen=True):
    """Lines of text with their base lines measured down from the block's top, and the size of the whole (mm)."""

    lines: tuple[tuple[LineOfText, float], ...]
    width: float
    height: float

    def at(self, x0: float, y0: float, align: str = "left") -> Iterator[Text]:
        """The lines as text items, with the block's lower left corner at (x0, y0)."""
        x = {"left": x0, "middle": x0 + self.width / 2, "right": x0 + self.width}[align]
        for (text, height, bold), down in self.lines:
            yield Text(x, y0 + self.height - down, text, height, align, 0, bold)


def block(lines: Sequence[LineOfText], lettering: Lettering) -> Block:
    """The block of these lines, empty ones left out; its size holds all their ink, accents and tails included."""
    kept = [line for line in lines if line[0]]
    placed: list[tuple[LineOfText, float]] = []
    down, below, width = 0.0, 0.0, 0.0
    for line in kept:
        ink = ink_of(line, lettering)
        step = below + BETWEEN * line[1] + ink.y1 if placed else ink.y1
        down += max(step, LEAST_LEADING * line[1]) if placed else step
        below, width = -ink.y0, max(width, ink.width)
        placed.append((line, down))
    return Block(tuple(placed), width, down + below)


def ink_of(line: LineOfText, lettering: Lettering) -> Rect:
    """The rectangle of a line's ink about the start of its base line."""
    return lettering.box(Text(0.0, 0.0, line[0], line[1], bold=line[2]))


def shortened(text: str, height: float, bold: bool, width: float, lettering: Lettering) -> str:
    """The text, cut with an ellipsis where it is wider than `width` (mm)."""
    if lettering.width(text, height, bold) <= width:
        return text
    low, high = 0, len(text)
    while low < high:
        middle = (low + high + 1) // 2
        if lettering.width(text[:middle].rstrip() + "…", height, bold) <= width:
            low = middle
        else:
            high = middle - 1
    return text[:low].rstrip() + "…" if low else ""


def named_in(box: Rect, name: str, sizes: Sequence[tuple[float, bool]], lettering: Lettering) -> Text | None:
    """A name in the middle of a box, level or else upright, in the first of the `sizes` (height, bold) that it goes in.

    Cut short along the box's longer side where it must be; None where no letter has room.
    """
    longer = max(box.width, box.height)
    upright = box.height > box.width
    short = shortened(name, *sizes[-1], longer, lettering)
    for words, angle, (height, bold) in (
        *product((name,), (0, 90), sizes), (short, 90 if upright else 0, sizes[-1]),
    ):  # fmt: skip
        across, up = (box.height, box.width) if angle else (box.width, box.height)
        if words and lettering.width(words, height, bold) <= across and height <= up:
            x, y = (box.cx + height / 2, box.cy) if angle else (box.cx, box.cy - height / 2)
            return Text(x, y, words, height, "middle", angle, bold)
    return None


def wrapped(text: str, height: float, bold: bool, width: float, lettering: Lettering) -> list[str]:
    """The text in lines no wider than `width` (mm), broken at spaces; a word that is wider is cut.

    A length stays with its unit, if there is room for both, and no line begins with a raised dot.
    """
    key = text, height, bold, width
    known = lettering.wrapped.get(key)
    if known is None:
        known = lettering.wrapped[key] = tuple(_wrapped(text, height, bold, width, lettering))
    return list(known)


def _wrapped(text: str, height: float, bold: bool, width: float, lettering: Lettering) -> Iterator[str]:
    if lettering.width(text, height, bold) <= width:
        if whole := " ".join(text.split()):
            yield whole
        return
    space = lettering.width(" ", height, bold)
    line: list[str] = []
    far = 0.0
    for word, wide in _words(text, height, bold, width, lettering):
        if line and far + space + wide > width:
            yield " ".join(line)
            line, far = [], 0.0
        if wide > width:
            word = shortened(word, height, bold, width, lettering)
        far += wide + (space if line else 0.0)
        line.append(word)
    if line:
        yield " ".join(line)


def _words(text: str, height: float, bold: bool, width: float, lettering: Lettering) -> Iterator[tuple[str, float]]:
    """What a line is not broken in, with its width (mm): words, and numbers with what belongs to them where that is not
    too wide."""
    for words in _TOGETHER.findall(text):
        whole = " ".join(words.split())
        wide = lettering.width(whole, height, bold)
        if wide <= width:
            yield whole, wide
        else:
            yield from ((word, lettering.width(word, height, bold)) for word in whole.split())
