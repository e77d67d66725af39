"""A step of the hanging day."""

from __future__ import annotations

from collections.abc import Callable

from templates_gen.base.record import Record
from templates_gen.documents.instructions.sketches import Sketch


class DayStep(Record, frozen=True):
    """A step of the day: its name, what to do, and what draws it."""

    name: str
    words: str
    draw: Callable[[Sketch], None]
