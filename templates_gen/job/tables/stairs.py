"""The table of a stair along the wall as it is written."""

from __future__ import annotations

from typing import Annotated, Literal

from templates_gen.base.record import Table
from templates_gen.job.tables.field import Limits, Words
from templates_gen.job.tables.quantities import Length, Offset


class StairsTable(Table):
    """A stair along the wall, by the line of its nosings."""

    nosing: Annotated[tuple[Offset, Offset], Words(
        "the lowest nosing: from the wall's left end, and above the floor", '["20 in", "7 1/2 in"]',
    )]  # fmt: skip
    up: Annotated[Literal["left", "right"], Words(
        "the way the stair climbs", '"right"', ask="Which way does it climb, as you face the wall?",
    )]  # fmt: skip
    run: Annotated[Length | None, Words(
        "how far one step goes, with rise", '"10 in"', ask="How far is it from one nosing to the next, level?",
    )] = None  # fmt: skip
    rise: Annotated[
        Length | None, Words("how far one step climbs, with run", '"7 1/2 in"', ask="How far does one step climb?")
    ] = None
    pitch: Annotated[
        int | float | None, Words("how steep the stair is, in degrees, in place of run and rise", "37")
    ] = None
    steps: Annotated[int | None, Words(
        "how many nosings there are before a landing, with run and rise", "13",
        ask="How many nosings are there before a landing?", usual="the stair goes on to the wall's end",
        limits=Limits(least=1, expected="how many nosings there are, 1 or more"),
    )] = None  # fmt: skip
    clear: Annotated[Length | None, Words("frames stay this far above the nosings", '"34 in"', usual="0")] = None
