"""Jobs printed, taped, nailed and hung many times over, to see how far facing corners of neighbours come to be off.

Independent of the program's formula: sheets are brought to each other with exact turns, one join after the other
(`taping_by_hand`); pages come out with the printer's own scale and lean, and grow with moisture, from where nails and
marks are drawn on them; a profile is measured anew each time, by lengths that are read wrong; frames hang on their
nails by trigonometry (two points on two nails, or level under one).  Not independent of it: that errors are normal with
the standard deviations of the README, the order of taping, who is whose neighbour, and how slanting lines hold sheets
that are not cut (for which `test_crossing.py` has a simulation of its own).
"""

from __future__ import annotations

import math
from itertools import product

import numpy as np
from numpy.typing import NDArray

from templates_gen.arranging.plan import Hung
from templates_gen.documents.sheets.nail_marks import NAIL_FORM
from templates_gen.hanging.bearings import nail_rise
from templates_gen.job.accuracy import WIDE_SCALE
from templates_gen.job.model import Job
from templates_gen.printer.profile import Printer
from templates_gen.tolerance.expected import expected_error
from templates_gen.tolerance.neighbours import Neighbours, neighbours
from tests.made import Everything, make
from tests.taping_by_hand import Complex, Hands

POINT = 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3, and the international inch of 1959
Floats = NDArray[np.float64]


class Press:
    """A printer and its paper, each time another: what is asked of it in mm of the page comes out as it prints."""

    def __init__(self, done: Everything, times: int, random: np.random.Generator) -> None:
        sds, page = done.job.accuracy, done.sheets.page
        upright = page.height >= page.width
        kx, ky, lean = self._printer(done, times, random)
        wetter = random.normal(0.0, sds.humidity / 10 / 100, times)
        grain = (sds.moisture_across, sds.moisture_along) if upright else (sds.moisture_along, sds.moisture_across)
        self.x = kx * (1 + grain[0] * wetter)
        self.y = ky * (1 + grain[1] * wetter) * (np.sin(lean) + 1j * np.cos(lean))

    @staticmethod
    def _printer(done: Everything, times: int, random: np.random.Generator) -> tuple[Floats, Floats, Floats]:
        """Scale across and along the page, and its lean to the right (radians)."""
        known, sds = done.sheets.printer, done.job.accuracy
        if known is None:
            scale = (min(sds.scale, WIDE_SCALE) if done.sheets.paper.kind != "sheets" else sds.scale) / 100
            return 1 + random.normal(0.0, scale, times), 1 + random.normal(0.0, scale, times), np.zeros(times)
        was = known.readings

        def truly(length: float) -> Floats:
            return length - random.normal(0.0, was.reading_error, times) + random.normal(0.0, was.reading_error, times)

        across, along, lean = truly(was.across), truly(was.along), np.zeros(times)
        if was.diagonals is not None:
            one, two = (truly(length) for length in was.diagonals)
            lean = np.arcsin((one**2 - two**2) / (4 * across * along))  # the law of cosines, twice
        kx, ky = across / was.asked_across, along / was.asked_along
        lying = done.sheets.page.width > done.sheets.page.height
        return (ky, kx, -lean) if lying else (kx, ky, lean)  # the scale page stands upright

    def out(self, x: float, y: float) -> Complex:
        return np.asarray(self.x * x + self.y * y)


class Pages(dict[complex, Complex]):
    """Where on one printed page points of the wall are."""

    def __init__(self, press: Press, to_page: tuple[float, ...]) -> None:
        super().__init__()
        self.press, self.to_page = press, to_page

    def __missing__(self, point: complex) -> Complex:
        a, b, c, d, e, f = self.to_page
        x, y = a * point.real + c * point.imag + e, b * point.real + d * point.imag + f
        turned_back = -1j if abs(b) > abs(a) else 1.0  # a page whose drawing lies on its side
        self[point] = self.press.out(x * POINT, y * POINT) * turned_back
        return self[point]


class Tapers(Hands):
    """Hands that tape printed pages, cut or not."""

    def __init__(self, done: Everything, press: Press, times: int, seed: int) -> None:
        prints = {sheet.name: Pages(press, sheet.to_page) for sheet in done.sheets.sheets}
        sds, hides = done.job.accuracy, done.sheets.hides
        # a ruler on both pieces of a line, 10 mm long on either side of what is hidden: least squares, by hand
        deep = (
            0.0 if hides is None else sds.reading * math.hypot(1.0, (max(hides.left, hides.foot) + 2.0 + 10.0) / 10.0)
        )
        super().__init__(done.sheets, times, math.hypot(sds.match, deep), seed, prints, sds.reading)

    def _marks(self, one: str, two: str) -> list[complex]:
        marks = super()._marks(one, two)
        join = next((join for join in self.sheets.joins if {join.over, join.under} == {one, two}), None)
        if join is None or len(marks) > 1:
            return marks
        ends = complex(join.x0, join.y0), complex(join.x1, join.y1)
        if self.sheets.hides is None:
            return list(ends)
        middle, way = (marks[0] if marks else sum(ends) / 2), (ends[1] - ends[0]) / abs(ends[1] - ends[0])
        half = self.sheets.hides.held(join.upright) / (2 if marks else 4) * way
        return [middle - half, middle + half]


class Walls:
    """A job hung so many times over.  Raises ValueError for a frame whose drop is not known, which has no nail."""

    def __init__(self, job: Job, times: int, seed: int, printer: Printer | None = None) -> None:
        self.done, self.times = make(job, printer=printer), times
        self.random = np.random.default_rng(seed)
        if bare := [hung.frame.id for hung in self.done.plan.frames if not hung.nails]:
            raise ValueError(f"found no nail for {', '.join(bare)}, expected one for every frame: give each a drop")
        expected = expected_error(self.done.plan, self.done.sheets)
        assert expected is not None
        self.expected = expected
        self.hands = Tapers(self.done, Press(self.done, times, self.random), times, seed + 1)
        self.level = self.done.plan.level_line
        self.hands.tape(self.level, job.accuracy.string)
        self.drawn = self._drawn()
        self.placed: dict[int, Complex] = {}
        self.corners = {hung.frame.id: self._hung(hung) for hung in self.done.plan.frames}

    def _drawn(self) -> list[tuple[complex, str]]:
        """Every nail mark that is drawn whole, and its sheet."""
        found, sheets = [], {sheet["page"]: sheet["name"] for sheet in self.done.report["sheets"]}
        for number, page in enumerate(self.done.template.pages, 1):
            for item in page.wall_items:
                if getattr(item, "form", "") == NAIL_FORM:
                    cell = self.done.sheets.sheet(sheets[number]).cell
                    if cell.x0 <= item.x <= cell.x1 and cell.y0 <= item.y <= cell.y1:
                        found.append((complex(item.x, item.y), sheets[number]))
        return found

    def _noise(self, sd: float) -> Complex:
        return self.random.normal(0.0, sd, self.times) + 1j * self.random.normal(0.0, sd, self.times)

    def _nail(self, x: float, y: float) -> Complex:
        """Where a nail is driven: where its mark has come to lie, seen from its piece's reference, and a little off."""
        sds = self.done.job.accuracy
        mark, name = min(self.drawn, key=lambda item: abs(item[0] - complex(x, y)))
        assert abs(mark - complex(x, y)) < 0.001
        piece = self.hands.piece[name]
        own = [sheet for sheet in self.done.sheets.sheets if self.hands.piece.get(sheet.name) == piece]
        own = [sheet for other in self.hands.lies for sheet in own if sheet.name == other]  # as they were laid
        on_line = [sheet for sheet in own if sheet.cell.y0 <= self.level <= sheet.cell.y1]
        reference = (on_line or own)[0]
        corner = complex(reference.cell.x0, reference.cell.y0)
        if piece not in self.placed:
            several = len(set(self.hands.piece.values())) > 1
            self.placed[piece] = self._noise(sds.placing) if several else np.zeros(self.times, complex)
        assert self.hands.prints is not None
        away = self.hands.against(name, mark, self.level) - self.hands.prints[reference.name][corner]
        return corner + away + self.placed[piece] + self._noise(sds.nailing)

    def _hung(self, hung: Hung) -> dict[tuple[int, int], Complex]:
        """The four corners of a frame on the wall, by right and top."""
        sds, rect, rise = self.done.job.accuracy, hung.rect, nail_rise(hung.frame)
        nails = [self._nail(nail.x, nail.y) - 1j * rise for nail in hung.nails]
        drops = [nail.bears_y - rect.y1 + self.random.normal(0.0, sds.drop, self.times) for nail in hung.nails]
        points = [nail.x - rect.cx + 1j * drop for nail, drop in zip(hung.nails, drops, strict=True)]
        if len(nails) == 1:
            turn, top = np.ones(self.times, complex), nails[0] - points[0]
        else:
            turn = (nails[1] - nails[0]) / (points[1] - points[0])
            turn = turn / abs(turn)
            top = (nails[0] + nails[1]) / 2 - turn * (points[0] + points[1]) / 2
        return {
            (right, upper): top + turn * complex((right - 0.5) * rect.width, (upper - 1) * rect.height)
            for right, upper in product((0, 1), (0, 1))
        }

    def off(self, pair: Neighbours) -> tuple[Floats, Floats]:
        """How far a pair's step and its gap are off each time, where they are off most."""
        one, two = sorted((pair.one, pair.two), key=lambda hung: hung.rect.cx if pair.beside else hung.rect.cy)
        apart = []
        for other in (0, 1):
            ends = ((1, other), (0, other)) if pair.beside else ((other, 1), (other, 0))
            planned = _corner(two, *ends[1]) - _corner(one, *ends[0])
            apart.append(self.corners[two.frame.id][ends[1]] - self.corners[one.frame.id][ends[0]] - planned)
        along, across = (np.max([abs(part) for part in parts], axis=0) for parts in (np.real(apart), np.imag(apart)))
        return (across, along) if pair.beside else (along, across)

    def kept(self) -> float:
        """How often all neighbours keep within what is promised of all of them."""
        held = np.ones(self.times, bool)
        for pair in neighbours(self.done.plan):
            step, gap = self.off(pair)
            held &= (step <= self.expected.step) & (gap <= self.expected.gap_error)
        return float(held.mean())


def _corner(hung: Hung, right: int, upper: int) -> complex:
    rect = hung.rect
    return complex(rect.x1 if right else rect.x0, rect.y1 if upper else rect.y0)
