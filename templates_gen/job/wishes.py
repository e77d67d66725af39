"""What a person may wish of an arrangement that is to be found."""

from __future__ import annotations

from templates_gen.base.record import Record


class Wishes(Record, frozen=True, kw_only=True):
    """What is wished of an arrangement that is to be found.

    `largest` is "centre" or ""; `pins` are frames with the place of their middles from centre line and level line
    (mm); the frames of each of `together` are neighbours, those of each of `same_height` have their middles level;
    `heavy_low` is to have heavy frames low.
    """

    largest: str = ""
    pins: tuple[tuple[str, float, float], ...] = ()
    together: tuple[tuple[str, ...], ...] = ()
    same_height: tuple[tuple[str, ...], ...] = ()
    heavy_low: bool = False
