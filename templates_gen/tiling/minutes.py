"""What a template costs the person who tapes it: minutes for its sheets, joins and cuts.

The seconds are our own estimate; nobody was timed.
"""

from __future__ import annotations

import math

from templates_gen.base.record import Record
from templates_gen.job.accuracy import MATCH, firm


class Seconds(Record, frozen=True):
    """How long each thing takes (s): a sheet to handle, a join to tape, a side to cut, and a loose piece to place by
    its distances from the two lines.  Our own estimate, nobody was timed."""

    sheet: float = 10.0
    join: float = 20.0
    cut: float = 15.0
    piece: float = 120.0

    @property
    def chained(self) -> float:
        """A sheet that is cut on one side and joined to one other."""
        return self.sheet + self.join + self.cut


EACH = Seconds()

FIRM = float(math.ceil(firm(MATCH)))
"""mm along which a join holds firmly where marks are matched as usual: 106."""

MINUTE = 60.0
"""Seconds."""

SHAKY = 6.0
"""Seconds that a join so long counts as for being held no better than its length allows, so that a longer one is taken
where it costs no sheet.  Our own design, no source."""


def shaky(length: float) -> float:
    """Seconds that a join of this length (mm) counts as: as the variance of the turn that it allows, with 1 / length²
    (two marks each matched with the same error: propagation of independent errors)."""
    return SHAKY * (FIRM / length) ** 2


def minutes(sheets: int, joins: int, cuts: int, pieces: int) -> float:
    """The minutes of a template that hangs in this many pieces."""
    seconds = EACH.sheet * sheets + EACH.join * joins + EACH.cut * cuts + EACH.piece * (pieces - 1)
    return seconds / MINUTE
