"""How large the wall is drawn on a page: the scale, which way the page lies, and where the wall stands on it."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import Record
from templates_gen.drawing.flow import LEADING
from templates_gen.drawing.items import Item, Line, Polygon
from templates_gen.drawing.sizes import H18, HEAVY, MEDIUM
from templates_gen.job.model import Job, Wall
from templates_gen.job.paper_sizes import first_paper
from templates_gen.tiling.page import Page, page_of

STANDARD = (2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000)
"""1:2, 1:5, 1:10 and so on: the reduced scales of ISO 5455 (its series from memory)."""

TO_THE_FOOT = {12: "1 in", 16: "3/4 in", 24: "1/2 in", 32: "3/8 in", 48: "1/4 in", 64: "3/16 in", 96: "1/8 in"}
"""Scales that rooms are drawn at where people measure in feet, by what stands for a foot.  Common practice, no
source."""

METRIC = (15, 25, 30, 40, 75, 125)
"""Scales that rooms are drawn at elsewhere, between those of the standard.  Common practice, no source."""

BRIDGING = (3, 300, 3000)
"""Scales where the standard's next is less than half as large: a wall is never less than half of what its page would
hold.  Our own, no source."""

LEFT, RIGHT, TOP, FOOT = 12.5, 21.0, 12.5, 21.0
"""mm beside, above and below the wall for its dimensions.  Our own design, no source."""

TITLE, SIGNATURE, LINE = 18.0, 13.0, H18 * LEADING
"""mm of the band for title and scale, for a signature, and for a line of small text.  Our own design, no source."""


class Band(Record, frozen=True):
    """What stands under the wall besides title and scale: lines of small text, and whether there is one to sign on."""

    lines: tuple[str, ...]
    sign: bool

    @property
    def height(self) -> float:
        return TITLE + len(self.lines) * LINE + (SIGNATURE if self.sign else 0.0)


class View(Record, frozen=True):
    """The wall at 1 to `scale` on a page: `x0`, `y0` is where its lower left corner lies (page mm).

    `band` is what stands below it, `below` the part of the page for that (page mm).
    """

    page: Page
    scale: int
    x0: float
    y0: float
    band: Band
    below: Rect

    def point(self, x: float, y: float) -> tuple[float, float]:
        """A point of the wall on the page (mm)."""
        return self.x0 + x / self.scale, self.y0 + y / self.scale

    def rect(self, rect: Rect) -> Rect:
        """A rectangle of the wall on the page (mm)."""
        return Rect(*self.point(rect.x0, rect.y0), *self.point(rect.x1, rect.y1))


def scales(unit: str) -> tuple[int, ...]:
    """The scales for a job in this unit, 1 to each, the largest first; each is at least half of that before."""
    between = tuple(TO_THE_FOOT) if unit == "in" else METRIC
    return tuple(sorted((*STANDARD, *between, *BRIDGING)))


def to_the_foot(scale: int, unit: str) -> str:
    """What stands for a foot, in a job of inches at a scale that goes by that: "1/4 in to the foot"; "" otherwise."""
    return f"{TO_THE_FOOT[scale]} to the foot" if unit == "in" and scale in TO_THE_FOOT else ""


def proof_view(plan: Plan, band_in: Callable[[float], Band]) -> View:
    """The largest usual scale at which the wall fits on one page of the job's paper, above its band.

    `band_in` gives the band for a page that has room so wide (mm).  The page lies whichever way lets the wall be
    larger, else as the wall does.  Raises InputError for paper that no scale makes the wall fit on.
    """
    whole, paper = extent(plan.job, plan), first_paper(plan.job.paper, plan.job.unit)
    pages = [page_of(paper, turned) for turned in (False, True)]
    if (whole.width > whole.height) != (paper.width > paper.height):
        pages.reverse()
    laid = [(page, band_in(page.printable.width)) for page in pages]
    fitting = [(scale, *way) for scale in scales(plan.job.unit) for way in laid if _fits(whole, scale, *way)]
    if not fitting:
        problem = f"found {paper.width:g} × {paper.height:g} mm, too small for a proof"
        raise InputError("paper, size", problem, "choose larger paper, such as a4 or letter")
    scale, page, band = fitting[0]
    area, foot = page.printable, page.printable.y0 + band.height
    x0 = area.x0 + LEFT + (area.width - LEFT - RIGHT - whole.width / scale) / 2 - whole.x0 / scale
    y0 = foot + FOOT + (area.y1 - foot - FOOT - TOP - whole.height / scale) / 2 - whole.y0 / scale
    return View(page, scale, x0, y0, band, Rect(area.x0, area.y0, area.x1, foot))


def extent(job: Job, plan: Plan | None) -> Rect:
    """The wall, and what reaches beyond it (wall mm)."""
    features = (feature.rect for feature in job.wall.features)
    return bounds([job.wall.rect, *features, *([plan.group] if plan else [])])


def wall_items(wall: Wall, view: View, beyond: float) -> Iterator[Item]:
    """The wall's outline, and the floor as a heavy line that goes on so far beyond it (mm)."""
    yield Polygon(tuple(view.point(x, y) for x, y in wall.corners), MEDIUM, False)
    floor = view.rect(wall.rect)
    y = floor.y0 - HEAVY / 2
    yield Line(floor.x0 - beyond, y, floor.x1 + beyond, y, HEAVY)


def _fits(whole: Rect, scale: int, page: Page, band: Band) -> bool:
    room = page.printable
    across = room.width - LEFT - RIGHT >= whole.width / scale
    return across and room.height - band.height - TOP - FOOT >= whole.height / scale
