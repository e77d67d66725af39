"""Several arrangements of the same frames that differ in kind, the best of each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from templates_gen.arranging.search.salon import Arranged, plain_arrangements, searched
from templates_gen.arranging.search.task import Pile, Watch
from templates_gen.base.adding import added
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import Record, replace
from templates_gen.job.model import Group

ALIKE = 0.6
"""Of the frames' area, what two arrangements have in common when laid on each other (or on the other's mirror image):
with more, they are variants of one.  Our own design, no source: set by looking at pages of results."""

WORSE = 0.3
"""What an arrangement may cost more than the best to be worth showing.  Our own design, by looking, no source."""

SAME = 0.5
"""mm within which two sides are as long as each other.  Common practice, no source."""

SEARCHES = 3
"""Searches with other random numbers, for variety.  Our own design, no source."""


class Choice(Record, frozen=True):
    """An arrangement to choose: its kind in words, where its frames are (wall mm), and what it costs (see `salon`)."""

    kind: str
    rects: Mapping[str, Rect]
    cost: float


def variety(pile: Pile, count: int, watch: Watch | None = None) -> tuple[Choice, ...]:
    """Up to so many arrangements, the best first, no two alike; the best of plain rows or columns is always one.

    Where `watch` ends the searches, of those found so far.  The same pile gives the same choices.
    """
    plain = plain_arrangements(pile)
    found = sorted(_plain(plain), key=lambda item: item.cost)
    kept = found[:1]
    for number in range(SEARCHES):
        seeded = pile._replace(group=replace(pile.group, seed=pile.group.seed + number))
        for arranged in searched(seeded, plain, _part(watch, number)):
            found.append(Choice(arranged.kind, arranged.rects, arranged.cost))
    found.sort(key=lambda item: item.cost)
    for choice in found:
        if len(kept) >= count or choice.cost > found[0].cost + WORSE:
            break
        if not any(alike(choice.rects, other.rects) for other in kept):
            kept.append(choice)
    return tuple(sorted(kept, key=lambda item: item.cost))


def _plain(plain: Sequence[tuple[Arranged, Group]]) -> Iterator[Choice]:
    for arranged, group in plain:
        if arranged.rects:
            yield Choice(kind_words(group.arrangement, group.rows), arranged.rects, arranged.cost)


def kind_words(arrangement: str, rows: Sequence[Sequence[str]]) -> str:
    """A plain arrangement in words: "in 2 rows", "in a column"."""
    if arrangement in ("rows", "columns"):
        noun = arrangement[:-1]
        return f"in a {noun}" if len(rows) == 1 else f"in {len(rows)} {arrangement}"
    return f"in a grid, {len(rows[0])} across" if arrangement == "grid" and rows else arrangement


def _part(watch: Watch | None, number: int) -> Watch:
    """One search's share of what the watch is told."""
    return lambda done: watch((number + done) / SEARCHES) if watch else True


def alike(one: Mapping[str, Rect], two: Mapping[str, Rect]) -> bool:
    """True when two arrangements are variants of one, as they are or in the mirror."""
    box = bounds(one.values())
    return max(shared(one, two), shared(mirrored(one, box.cx), two)) > ALIKE


def mirrored(rects: Mapping[str, Rect], x: float) -> dict[str, Rect]:
    """The mirror image about an upright line."""
    return {name: Rect(2 * x - rect.x1, rect.y0, 2 * x - rect.x0, rect.y1) for name, rect in rects.items()}


def shared(one: Mapping[str, Rect], two: Mapping[str, Rect]) -> float:
    """The share of the frames' area that both cover by frames of one size, whichever of them, middle on middle."""
    a, b = bounds(one.values()), bounds(two.values())
    dx, dy = a.cx - b.cx, a.cy - b.cy
    moved = [rect.shifted(dx, dy) for rect in two.values()]
    both = added(_overlap(rect, other) for rect in one.values() for other in moved if _same_size(rect, other))
    return both / added(rect.width * rect.height for rect in one.values())


def _same_size(one: Rect, two: Rect) -> bool:
    return abs(one.width - two.width) < SAME and abs(one.height - two.height) < SAME


def _overlap(one: Rect, two: Rect) -> float:
    part = one.meet(two)
    return part.width * part.height if part else 0.0
