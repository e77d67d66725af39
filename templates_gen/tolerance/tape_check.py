"""Is the taped paper true: from two diagonals and the width measured on it, its scale both ways and how it leans.

Three lengths are taken to come from one even stretching and leaning of the whole: a point (x, y) of the plan from
another is then √(m₁ x² + 2 m₂ x y + m₃ y²) away, and three lengths give the three m.  The scale across is √m₁, that
upward √m₃, and sin of the lean m₂ / √(m₁ m₃), to the right where it is positive.  Which join has turned no three
lengths can tell, and a join turned in the middle shows in none: with w and H the width and the height, and h of it
above a join turned by θ, a² − b² = 2 w θ (2 h − H).  But each join makes so much of what the diagonals differ by when
marks are matched as well as people do (`tolerance/spread.py`), and the one that makes the most is where to look first.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.adding import added
from templates_gen.base.errors import InputError
from templates_gen.base.record import Record
from templates_gen.base.units import DIVISION, parse_length, show_both
from templates_gen.job.accuracy import NORMAL_95, seen_step, string_share
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tiling.slanting import meeting_sd
from templates_gen.tolerance.diagonals import Span, measured, telling
from templates_gen.tolerance.neighbours import neighbours
from templates_gen.tolerance.order import taping_order
from templates_gen.tolerance.spread import Homes, shares
from templates_gen.tolerance.strung import taped
from templates_gen.tolerance.taping import Fit

NAMES = ("a", "b", "width")

MOST_SUSPECTS = 3
"""So many tapings are named.  Our own design, no source."""

MOST_OFF = 0.05
"""As a share: a length farther off was measured between other corners.  Our own design, no source."""


EVEN = 1 / math.sqrt(12)
"""The sd of an error that is even over a stretch, as a share of it (a textbook value)."""


class Suspect(Record, frozen=True):
    """A taping that makes a `share` of what the diagonals differ by (of the variance): the pairs of sheets that meet at
    its two ends, and the number of its step on the map of the sheets."""

    ends: tuple[tuple[str, str], ...]
    step: int
    share: float


class TapeCheck(Record, frozen=True):
    """What the taped paper is like; scales as shares of one, the lean in radians to the right, sds likewise.

    `spans` are what was measured, with their lengths in `found` (mm).  `seen` is the step that an eye sees between
    neighbours (mm), `suspects` the few tapings to look at, the first first; none where nothing is taped.
    """

    spans: tuple[Span, ...]
    found: tuple[float, ...]
    across: float
    upward: float
    lean: float
    sds: tuple[float, float, float]
    size: tuple[float, float]
    seen: float
    suspects: tuple[Suspect, ...]

    @property
    def leaning(self) -> float:
        """How far the top stands to the right of where it should over the foot (mm)."""
        return math.tan(self.lean) * self.size[1]

    @property
    def retape(self) -> bool:
        """True when it leans by more than is seen, and than the tape may have been read wrong."""
        doubt = NORMAL_95 * self.sds[2] * self.size[1]
        return abs(self.leaning) > max(self.seen, doubt)

    def scaled(self, axis: int) -> bool:
        """True when the scale across (0) or upward (1) is off by more than is seen and than reading may be."""
        off, doubt = abs((self.across, self.upward)[axis] - 1.0), NORMAL_95 * self.sds[axis]
        return off > doubt and off * self.size[axis] > self.seen


def read_taped(text: str, unit: str) -> tuple[float, float, float]:
    """The lengths a, b and width (mm) of a text such as "a=1830 mm, b=1832 mm, width=1500 mm".  Raises InputError."""
    found: dict[str, float] = {}
    for part in re.split(r"[,;]\s*(?=[a-z]+\s*=)", text.strip()):
        name, _, length = (piece.strip() for piece in part.partition("="))
        if name not in NAMES or name in found:
            raise InputError("--taped", f"found {part!r}, expected a, b and width once each", _EXAMPLE)
        try:
            found[name] = parse_length(length, unit)
        except ValueError as error:
            raise InputError(f"--taped, {name}", str(error)) from None
    if missing := [name for name in NAMES if name not in found]:
        raise InputError("--taped", f"{' and '.join(missing)} missing, expected a, b and width", _EXAMPLE)
    return found["a"], found["b"], found["width"]


_EXAMPLE = 'such as  --taped "a=60 1/4 in,b=60 1/2 in,width=49 in": a and b are named on the first page'

_STRING = "stretch a string along the level line instead: where the line strays from it, tape the join again"


def tape_check(plan: Plan, sheets: SheetPlan, found: Sequence[float]) -> TapeCheck:
    """What the measured lengths (a, b, width in mm) say.  Raises InputError for such as are not of this template."""
    if taping_order(sheets).pieces > 1:
        raise InputError("--taped", "the pieces of this template hang by themselves, expected one taped to each other")
    spans = measured(plan)
    if plan.job.paper.cover == "linked" and not telling(spans):
        raise InputError("--taped", "the nails of this group lie nearly in one line, and tell nothing", _STRING)
    for name, span, length in zip(NAMES, spans, found, strict=True):
        if not abs(length / span.length - 1) <= MOST_OFF:
            unit = plan.job.unit
            raise InputError(
                f"--taped, {name}", f"found {show_both(length, unit)}, expected about {show_both(span.length, unit)}",
                f"measure from {span.start} to {span.end}",
            )  # fmt: skip
    shape = _shape(spans, found)
    gap = min((pair.gap for pair in neighbours(plan)), default=plan.job.group.gap_across) if len(plan.frames) > 1 else 0
    seen = max(DIVISION[plan.job.unit], seen_step(gap))
    sds = _sds(spans, found, shape, DIVISION[plan.job.unit])
    size = plan.group.width, plan.group.height
    return TapeCheck(spans, tuple(found), *shape, sds, size, seen, tuple(_suspects(plan, sheets, spans)))


def _shape(spans: Sequence[Span], found: Sequence[float]) -> tuple[float, float, float]:
    """Scale across, scale upward and lean: three linear equations, by Cramer's rule."""
    rows = [(span.across**2, 2 * span.across * span.up, span.up**2) for span in spans]
    squares = [length**2 for length in found]
    whole = _determinant(rows)
    if abs(whole) < 1e-9 * math.prod(span.length**2 for span in spans):
        raise InputError("--taped", "the diagonals of this group lie nearly in one line, and tell nothing", _STRING)
    across, both, upward = (
        _determinant([(*row[:at], square, *row[at + 1 :]) for row, square in zip(rows, squares, strict=True)]) / whole
        for at in range(3)
    )
    if across <= 0 or upward <= 0 or abs(both) >= math.sqrt(across * upward):
        raise InputError("--taped", "no paper has these three lengths at once", "measure all three again")
    return math.sqrt(across), math.sqrt(upward), math.asin(both / math.sqrt(across * upward))


def _determinant(rows: Sequence[Sequence[float]]) -> float:
    (a, b, c), (d, e, f), (g, h, i) = rows
    return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)


def _sds(
    spans: Sequence[Span], found: Sequence[float], shape: tuple[float, float, float], step: float
) -> tuple[float, float, float]:
    """How surely the shape is known: each length is read to a step, and its error is even over that (`EVEN`); each end
    of a diagonal is found by eye, so twice that (our own design)."""
    error = 2 * step * EVEN
    changed = []
    for at in range(len(found)):
        other = _shape(spans, [length + error * (number == at) for number, length in enumerate(found)])
        changed.append([two - one for one, two in zip(shape, other, strict=True)])
    across, upward, lean = (math.hypot(*column) for column in zip(*changed, strict=True))
    return across, upward, lean


def _suspects(plan: Plan, sheets: SheetPlan, spans: Sequence[Span]) -> Iterator[Suspect]:
    """The fits that make most of the difference of the diagonals, the first first."""
    accuracy = plan.job.accuracy
    reading = string_share(accuracy, meeting_sd(accuracy, sheets.hides))
    tape = taped(sheets, plan.level_line, accuracy.string, reading)
    homes, terms = Homes([sheet.cell for sheet in sheets.sheets]), []
    for span, sign in zip(spans[:2], (-1.0, 1.0), strict=True):
        way = span.across / span.length, span.up / span.length
        for (x, y), end in ((span.at, -sign), (span.to, sign)):
            terms.append((homes.at(x, y), x, y, end * way[0], end * way[1]))
    found = list(shares(tape, terms))
    total = added(share for _, share in found)
    for fit, share in sorted(found, key=lambda item: -item[1])[:MOST_SUSPECTS]:
        if share > 0:
            yield _named(fit, sheets, share / total)


def _named(fit: Fit, sheets: SheetPlan, share: float) -> Suspect:
    ends = [(sheets.sheets[one].name, sheets.sheets[two].name) for *_, one, two in (fit.first, fit.last)]
    steps = taping_order(sheets).joins
    step = next(steps[pair] for end in ends for pair in (end, end[::-1]) if pair in steps)
    return Suspect(tuple(dict.fromkeys(ends)), step, share)
