"""How a page has to be drawn for a printer, so that what comes out of it measures true."""

from __future__ import annotations

import math

from templates_gen.base.geometry import Rect
from templates_gen.drawing.items import POINT, Matrix
from templates_gen.job.model import Paper
from templates_gen.job.paper_sizes import paper_size
from templates_gen.printer.profile import Printer, sureness


def correction(printer: Printer, area: Rect, lying: bool) -> tuple[Matrix, Rect]:
    """The matrix from true mm on the printed paper to PDF points, and the part of the paper that can be used so.

    `area` is what the printer reaches of the page as it is asked (mm from the page's lower left corner); `lying` when
    the page is wider than high.  The printer makes A·asked of what it is asked, about the lower left corner of `area`,
    with A = [[kx, ky·sin γ], [0, ky·cos γ]]: kx across, ky along, γ the lean to the right of what should be upright.
    Drawn is the inverse of A.  The second value, in true mm, is the largest rectangle that A⁻¹ keeps inside `area`: as
    wide and high as the printer makes it, narrower by the lean, and moved right where the lean is to the right.
    """
    across, along, skew = _as_the_page_lies(printer, lying)
    high = area.height * along * math.cos(skew)
    lean = math.tan(skew) * high
    left, right = max(0.0, lean), area.width * across - max(0.0, -lean)
    a, c, d = 1 / across, -math.tan(skew) / across, 1 / (along * math.cos(skew))
    e, f = area.x0 - a * area.x0 - c * area.y0, area.y0 - d * area.y0
    matrix = (a / POINT, 0.0, c / POINT, d / POINT, e / POINT, f / POINT)
    return matrix, Rect(area.x0 + left, area.y0, area.x0 + right, area.y0 + high)


def doubt_as_it_lies(printer: Printer, lying: bool) -> tuple[float, float, float]:
    """How sure the correction is on a page that is `lying` or not, as standard deviations: scale along its x and its y
    (shares of one), and lean (radians)."""
    across, along, skew = sureness(printer.readings)
    turned = lying != _lies(printer)
    return (along, across, math.radians(skew)) if turned else (across, along, math.radians(skew))


def paper_doubt(printer: Printer, paper: Paper) -> str:
    """What is doubtful about a profile on this paper, in words; "" for nothing.

    Other paper may go through a printer the other way round, and then across and along are exchanged.
    """
    size = paper_size(printer.paper, f"printer {printer.name}, paper")
    if all(abs(one - two) < 1.0 for one, two in zip(sorted(size), sorted((paper.width, paper.height)), strict=True)):
        return ""
    return (
        f"Printer {printer.name} was measured on {printer.paper} paper, and this is {paper.name}: it may print "
        "otherwise on that. Measure the rulers of the first page before you print the rest, or record it on this paper."
    )


def _as_the_page_lies(printer: Printer, lying: bool) -> tuple[float, float, float]:
    """Scale along the page's x and y, and skew in radians.

    A page that lies otherwise than the scale page did goes through the printer turned by a quarter, whichever way:
    then its x runs along the paper's way, and the corner that leaned to the right leans to the left.
    """
    skew = math.radians(printer.skew)
    if lying == _lies(printer):
        return printer.across, printer.along, skew
    return printer.along, printer.across, -skew


def _lies(printer: Printer) -> bool:
    """True when the scale page was wider than high."""
    width, height = paper_size(printer.paper, f"printer {printer.name}, paper")
    return width > height
