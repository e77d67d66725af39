"""Where nails go into the wall, as far as it is known: along which upright line, and how deep."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.record import Record
from templates_gen.hanging.fixings import tip_below


class Entry(Record, frozen=True):
    """The upright line at `x` from `low` to `high` (mm) that a nail takes up or may take up behind the wall's face.

    `name` is the nail's, `frame` its frame's id.
    """

    name: str
    frame: str
    x: float
    low: float
    high: float


def entries(plan: Plan) -> tuple[Entry, ...]:
    """Where each nail of a plan goes in: from its nail point down to its tip, which a slanting nail has below it.

    A nail whose drop is not measured yet may come anywhere in the upper half of its frame, where its drop scale is.
    """
    return tuple(entry for hung in plan.frames for entry in _entries(hung))


def _entries(hung: Hung) -> Iterator[Entry]:
    tip = tip_below(hung.frame.fixing)
    for nail in hung.nails:
        yield Entry(nail.name, nail.frame, nail.x, nail.y - tip, nail.y)
    for bearing in hung.unmeasured:
        yield Entry(bearing.nail_of(hung.frame.id), hung.frame.id, bearing.x, hung.rect.cy - tip, hung.rect.y1)
