"""The photograph again, with every join marked: right ones thin, those to tape anew thick and red with their sheets."""

from __future__ import annotations

from templates_gen.documents.photographed import Papers
from templates_gen.photo.fit import Fit
from templates_gen.photo.picture import Photo
from templates_gen.photo.screening import predicted
from templates_gen.photo.taped import Taped, printed_tags
from templates_gen.photo.taped_words import bad_joins, doubtful_joins
from templates_gen.photo.vision import Array, Colour, draw_line, draw_words, encoded, np

RIGHT, WRONG, DOUBTFUL, NAIL = (90, 160, 0), (30, 30, 220), (0, 150, 230), (200, 90, 0)
"""Blue, green and red: the wrong are thick too, so that it is seen without colours."""

WIDTH, LETTERS = 1 / 900, 1 / 90
"""Of a thin line and of letters, as shares of the picture's longer side.  Our own design, no source."""


def marked(photo: Photo, taped: Taped, papers: Papers, ending: str) -> bytes:
    """The bytes of the first photograph that was read, with the joins and nails marked."""
    pixels = photo.colours()
    bad, doubtful = bad_joins(taped), doubtful_joins(taped)
    thin, high = max(1, round(max(photo.size) * WIDTH)), max(photo.size) * LETTERS
    lines = {(join.over, join.under): join.line for join in papers.joins}
    for nail in papers.nails:
        if nail.sheet in taped.fit.scene.sheets:
            (x, y), *_ = _seen(taped.fit, papers, nail.sheet, [(nail.x, nail.y)])
            _cross(pixels, (x, y), high / 2, thin)
    for join in sorted(taped.joins, key=bad.__contains__):
        x0, y0, x1, y1 = lines[join.over, join.under]
        ends = _seen(taped.fit, papers, join.under, [(x0, y0), (x1, y1)])
        colour, wide = (WRONG, 4) if join in bad else (DOUBTFUL, 2) if join in doubtful else (RIGHT, 1)
        draw_line(pixels, [(float(x), float(y)) for x, y in ends], colour, wide * thin)
        if join in bad:
            words = f"{join.under}+{join.over}: {join.off:.1f} mm"
            draw_words(pixels, words, tuple(ends.mean(0)), high, colour)
    return encoded(pixels, ending)


def _seen(fit: Fit, papers: Papers, sheet: str, points: list[tuple[float, float]]) -> Array:
    """Where points of a sheet are on the picture."""
    _, middles, centre = printed_tags(papers)
    return predicted(fit, 0, sheet, np.array(points), middles[sheet], centre)


def _cross(pixels: Array, at: tuple[float, float], arm: float, width: int, colour: Colour = NAIL) -> None:
    x, y = at
    for dx, dy in ((arm, 0.0), (0.0, arm)):
        draw_line(pixels, [(x - dx, y - dy), (x + dx, y + dy)], colour, width)
