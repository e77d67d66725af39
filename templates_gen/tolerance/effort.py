"""What a template costs the person who tapes it: its sheets, joins and cuts, and the minutes that they take."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.base.record import Record
from templates_gen.base.remembering import remembered
from templates_gen.base.words import counted
from templates_gen.tiling.minutes import EACH, MINUTE, minutes
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.order import taping_order


class Cut(Record, frozen=True):
    """A side on which a sheet is cut: "left", "foot", "right" or "head", and how long what it shows is there (mm)."""

    sheet: str
    side: str
    length: float


class Effort(Record, frozen=True):
    """How much there is to do: sheets, joins, sides to cut, and pieces that hang by themselves."""

    sheets: int
    joins: int
    cuts: int
    pieces: int

    @property
    def minutes(self) -> float:
        """How long it takes, by our own estimate: nobody was timed."""
        return minutes(self.sheets, self.joins, self.cuts, self.pieces)

    @property
    def words(self) -> str:
        """In a line, such as "17 sheets, 16 joins, about 13 min"."""
        return f"{self._counts}, about {self.time}"

    def roughly(self, how: str) -> str:
        """The same of what was not planned: "about 17 sheets, 16 joins, 13 min"."""
        return f"{how} {self._counts}, {self.time}"

    @property
    def work(self) -> str:
        """What there is to do, without the sheets: "16 joins, 14 cuts, about 13 min"."""
        cuts = [counted(self.cuts, "cut")] if self.cuts else []
        return ", ".join([*self._joined, *cuts, f"about {self.time}"])

    def share(self, of: float) -> Effort:
        """A share of the minutes, for sheets in one piece of which each but the first is cut once and joined once."""
        count = max(1, round((self.minutes * of * MINUTE - EACH.sheet) / EACH.chained) + 1)
        return Effort(count, count - 1, count - 1, 1)

    @property
    def time(self) -> str:
        """The minutes as they are said: "13 min"."""
        return f"{max(1, round(self.minutes))} min"

    @property
    def _counts(self) -> str:
        return ", ".join([counted(self.sheets, "sheet"), *self._joined])

    @property
    def _joined(self) -> list[str]:
        joins = [counted(self.joins, "join")] if self.joins else []
        return joins + ([counted(self.pieces, "loose piece")] if self.pieces > 1 else [])


def cuts(sheets: SheetPlan) -> Iterator[Cut]:
    """Every side to cut, sheet by sheet: where one is laid on a neighbour at its left or under it.

    A sheet that goes into older paper is cut on every side on which it meets another.
    """
    if sheets.hides is not None:
        return
    new = sheets.printed
    cut = {(join.over, "left" if join.upright else "foot") for join in sheets.joins if new is None or join.over in new}
    if new is not None:
        cut |= {(join.under, "right" if join.upright else "head") for join in sheets.joins if join.under in new}
    for sheet in sheets.on_these_pages:
        for side in ("left", "foot", "right", "head"):
            if (sheet.name, side) in cut:
                upright = side in ("left", "right")
                yield Cut(sheet.name, side, sheet.window.height if upright else sheet.window.width)


@remembered
def effort(sheets: SheetPlan) -> Effort:
    """What the sheets of this plan take, or those of them that go into older paper."""
    taped = len(list(cuts(sheets)))
    if sheets.printed is None:
        return Effort(len(sheets.sheets), len(sheets.joins), taped, taping_order(sheets).pieces)
    new = set(sheets.printed)
    return Effort(len(new), sum(bool(new & {join.over, join.under}) for join in sheets.joins), taped, 1)
