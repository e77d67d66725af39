"""What is on the small papers of moved nails: each shows one old hole, and where the new ones are about it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templates_gen.base.csv_cells import NOTHING
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import Record
from templates_gen.checks.sentences import by_how_much
from templates_gen.documents.correcting.holes import Cure, Cured, from_old_hole
from templates_gen.documents.correcting.moves import Move
from templates_gen.documents.correcting.sentences import hook_words, moved_words, side_words
from templates_gen.job.model import Frame

AROUND, LEAST = 20.0, 80.0
"""mm: paper around the holes, and the least width of a patch.  Our own design, no source."""


class Hole(Record, frozen=True):
    """Where to make a hole, or to hang a larger hook by its seat (`seat`): mm right of and above the old hole.

    `words` is what stands beside the mark.
    """

    words: str
    right: float
    up: float
    seat: bool


class Patch(Record, frozen=True):
    """One paper: the frame's id, which of its two nails, what to do, and the new holes about the old one at (0, 0)."""

    name: str
    nail: str
    lines: tuple[str, ...]
    holes: tuple[Hole, ...]

    @property
    def box(self) -> Rect:
        """The paper about the old hole, below its words (mm)."""
        points = bounds([Rect(0, 0, 0, 0), *(Rect(hole.right, hole.up, hole.right, hole.up) for hole in self.holes)])
        more = max(0.0, LEAST - points.width - 2 * AROUND) / 2
        grown = points.grown(AROUND)
        return Rect(grown.x0 - more, grown.y0, grown.x1 + more, grown.y1)


def patches(done: Sequence[Cured], unit: str) -> tuple[Patch, ...]:
    """The papers of all nails that move, one for every old hole."""
    found = []
    for cured in done:
        frame = cured.hung.frame
        pairs = list(zip(cured.correction.moves, cured.cures, strict=True))
        for old in dict.fromkeys(move.old for move, _ in pairs):
            own = [(move, cure) for move, cure in pairs if move.old == old]
            several = len(own) > 1
            lines = (
                *(line for move, cure in own for line in _lines(move, cure, frame, several, unit)),
                *_first(own[0][1], unit), *_wire(cured, unit),
            )  # fmt: skip
            nail = side_words(own[0][0], frame) if old.removeprefix(frame.id).strip() else ""
            holes = tuple(_hole(move, cure, frame, several) for move, cure in own)
            found.append(Patch(frame.id, nail, lines, holes))
    return tuple(found)


def _lines(move: Move, cure: Cure, frame: Frame, several: bool, unit: str) -> Iterator[str]:
    """How far the new hole is from the old one, or the seat of another hook, as the paper shows them."""
    what = side_words(move, frame) if several else "new seat" if cure.way == "hook" else "new hole"
    for told in moved_words(move, cure, frame, unit):
        if (words := told.removeprefix("seat ")) != NOTHING:
            yield f"{what}: {words}"


def _first(cure: Cure, unit: str) -> tuple[str, ...]:
    """What else there is to do, where it is not just a new hole."""
    if cure.sold is not None:
        return (hook_words(cure.sold, unit).removeprefix("a "),)
    told = {"fill": "first fill the old hole, and let it set", "rail": "through a new hole in the rail"}
    return (told[cure.way],) if cure.way in told else ()


def _wire(cured: Cured, unit: str) -> tuple[str, ...]:
    """What the wire's new length does to its drop."""
    wire = cured.wire
    if wire is None:
        return ()
    verb, more = ("shorten", "more") if wire.longer > 0 else ("lengthen", "less")
    return (f"{verb} the wire: its taut drop {by_how_much(abs(wire.longer), unit)} {more}",)


def _hole(move: Move, cure: Cure, frame: Frame, several: bool) -> Hole:
    """The new hole; of another hook the seat, for its nail is where its maker put it."""
    if cure.way == "hook":
        seat = from_old_hole(move, cure, frame)
        return Hole("seat", seat.right, seat.up, True)
    return Hole(move.nail.removeprefix(frame.id).strip() if several else "new", move.right, move.up, False)
