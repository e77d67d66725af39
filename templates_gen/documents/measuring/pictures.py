"""The backs of frames for a screen: what hanger a frame has, and what is measured on it."""

from __future__ import annotations

from templates_gen.base.geometry import Rect
from templates_gen.documents.measuring.back_sizes import ROOM
from templates_gen.documents.measuring.back_view import Back, back_view, drawn_scale, lettered
from templates_gen.documents.measuring.fields import Measure, measures
from templates_gen.drawing.svg import markup
from templates_gen.job.hangers import HANGERS
from templates_gen.job.model import Frame, Hanger

SIDE = 62.0
"""mm that a drawing and its dimensions may take.  Our own design, no source."""

ACROSS, DOWN, ASIDE = 250.0, 300.0, 40.0
"""mm: a frame that shows a kind of hanger, and how far in each of a pair is.  Our own design, no source."""


def back_picture(frame: Frame, unit: str) -> tuple[str, tuple[tuple[str, Measure], ...]]:
    """A frame from behind as an SVG file's text, and each measure with the letter it has in the drawing ("" for a
    weight, which no dimension shows)."""
    wanted = measures(frame, unit)
    letters = lettered(wanted)
    scale = drawn_scale(frame, SIDE, SIDE)
    rect = Rect.sized(ROOM, ROOM, frame.width / scale, frame.height / scale)
    drawn = markup(back_view(Back(frame, rect, scale), letters))
    box = f"0 {-rect.y1 - ROOM:.1f} {rect.x1 + ROOM:.1f} {rect.y1 + 2 * ROOM:.1f}"
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{box}" font-family="sans-serif">{drawn}</svg>'
    return svg, tuple((letters.get(one.name, ""), one) for one in wanted)


def kind_picture(kind: str) -> str:
    """A frame with this kind of hanger, from behind, as an SVG file's text."""
    aside = ASIDE if HANGERS[kind].pair else None
    return back_picture(
        Frame(id="", width=ACROSS, height=DOWN, hanger=Hanger(kind=kind, left=aside, right=aside)), "mm"
    )[0]
