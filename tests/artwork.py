"""The samples' own pictures: fern fronds drawn by a few rules, small enough for a repository.

Lengths are shares of the picture's shorter side, angles in radians from straight right, counterclockwise; all of it
is our own design, no source.
"""

from __future__ import annotations

import io
import math
from collections.abc import Callable, Iterator

from PIL import Image, ImageDraw

PAPER, STALK = (250, 246, 236), (112, 84, 58)
FINER = 3
"""So many times larger it is drawn, and then made smaller, for smooth edges."""

Point = tuple[float, float]
Blade = Callable[["Sheet", float, float, float, float], None]
"""Draws a leaflet at x, y, towards an angle, so long."""


class Sheet:
    """A picture to draw on: x to the right and y up from its lower left corner."""

    def __init__(self, width: int, height: int, green: tuple[int, int, int]) -> None:
        self.image = Image.new("RGB", (width * FINER, height * FINER), PAPER)
        self.draw, self.green = ImageDraw.Draw(self.image), green
        self.unit = min(width, height) * FINER
        self.width, self.height = self.image.width / self.unit, self.image.height / self.unit

    def at(self, x: float, y: float) -> Point:
        return x * self.unit, self.image.height - y * self.unit

    def leaf(self, x: float, y: float, angle: float, long: float, wide: float, blunt: float = 1.0) -> None:
        """A leaf from its foot to its tip; the blunter, the rounder it ends."""
        steps = 24
        edge = [(at / steps, wide * math.sin(math.pi * (at / steps) ** blunt) ** 0.8) for at in range(steps + 1)]
        points = [*edge, *((along, -out) for along, out in reversed(edge))]
        turned = [
            self.at(
                x + along * long * math.cos(angle) - out * math.sin(angle),
                y + along * long * math.sin(angle) + out * math.cos(angle),
            )
            for along, out in points
        ]
        self.draw.polygon(turned, fill=self.green)

    def stalk(self, points: list[Point], thick: float) -> None:
        self.draw.line([self.at(*point) for point in points], fill=STALK, width=max(1, round(thick * self.unit)))

    def png(self) -> bytes:
        small = self.image.resize((self.image.width // FINER, self.image.height // FINER), Image.Resampling.LANCZOS)
        out = io.BytesIO()
        small.quantize(24).save(out, "PNG", optimize=True)
        return out.getvalue()


def along(x: float, y: float, angle: float, long: float, bend: float, count: int) -> Iterator[tuple[Point, float]]:
    """Places on a stalk that bends, with the way it goes there."""
    for _ in range(count + 1):
        yield (x, y), angle
        x, y = x + long / count * math.cos(angle), y + long / count * math.sin(angle)
        angle += bend / count


def frond(
    sheet: Sheet, x: float, y: float, angle: float, long: float, blade: Blade, *, bend: float = 0.3, pairs: int = 16,
    wide: float = 0.3, widest: float = 0.3, bare: int = 2, slant: float = 1.15,
) -> None:  # fmt: skip
    """A stalk with pairs of leaflets, longest at the share `widest` of its length, none on its first few places."""
    places = list(along(x, y, angle, long, bend, pairs))
    sheet.stalk([point for point, _ in places], 0.007)
    for number, ((px, py), way) in enumerate(places[bare:-1]):
        share = (number + 0.5) / (pairs - bare)
        size = wide * (share / widest if share < widest else (1 - share) / (1 - widest)) ** 0.7
        for side in (1, -1):
            blade(sheet, px, py, way + side * slant, size)
    (px, py), way = places[-1]
    blade(sheet, px, py, way, 0.2 * wide)


def plain(wide: float, blunt: float = 1.0) -> Blade:
    """A leaf, half as wide as this share of its length."""
    return lambda sheet, x, y, angle, long: sheet.leaf(x, y, angle, long, wide * long, blunt)


def feathered(pairs: int, wide: float) -> Blade:
    """A leaflet that is a small frond itself."""

    def blade(sheet: Sheet, x: float, y: float, angle: float, long: float) -> None:
        frond(sheet, x, y, angle, long, plain(0.2), bend=0.0, pairs=pairs, wide=wide * long, bare=1, slant=1.0)

    return blade


def harts_tongue() -> bytes:
    sheet = Sheet(234, 332, (78, 120, 70))
    for x, lean, long in ((0.5, 1.75, 1.05), (0.52, 1.25, 0.95), (0.48, 2.1, 0.8)):
        sheet.stalk([(0.5, 0.06), (x + 0.1 * math.cos(lean), 0.2)], 0.012)
        sheet.leaf(x + 0.02 * math.cos(lean), 0.12, lean, long, 0.075, 1.25)
        sheet.stalk([(x, 0.12), (x + 0.85 * long * math.cos(lean), 0.12 + 0.85 * long * math.sin(lean))], 0.006)
    return sheet.png()


def royal_fern() -> bytes:
    sheet = Sheet(288, 390, (92, 132, 62))
    frond(sheet, 0.48, 0.05, 1.63, 1.16, feathered(8, 0.3), bend=-0.15, pairs=8, wide=0.44, widest=0.4, slant=0.9)
    return sheet.png()


def spleenwort() -> bytes:
    sheet = Sheet(234, 332, (70, 110, 84))
    for angle, long, bend in ((1.6, 1.18, 0.1), (1.25, 0.95, -0.2), (1.95, 0.9, 0.25)):
        frond(sheet, 0.5, 0.06, angle, long, plain(0.3, 0.8), bend=bend, pairs=24, wide=0.09, widest=0.4, slant=1.35)
    return sheet.png()


def polypody() -> bytes:
    sheet = Sheet(341, 240, (104, 128, 58))
    frond(sheet, 0.1, 0.42, 0.05, 1.12, plain(0.09, 0.85), bend=0.2, pairs=17, wide=0.38, widest=0.25, slant=1.2)
    return sheet.png()


def lady_fern() -> bytes:
    sheet = Sheet(341, 240, (84, 138, 88))
    frond(sheet, 0.08, 0.56, -0.1, 1.2, feathered(9, 0.22), bend=0.1, pairs=15, wide=0.42, widest=0.3, slant=1.1)
    return sheet.png()


PICTURES = {
    "fern-a": harts_tongue, "fern-b": royal_fern, "fern-c": spleenwort, "fern-d": polypody, "fern-e": lady_fern,
}  # fmt: skip
