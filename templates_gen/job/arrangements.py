"""Every way to arrange a group, with all that a job file takes by it: one record a kind.

Its arithmetic is in `arranging/`; what the desk makes of frames that hang otherwise, in `desk/arrange.py`.
"""

from typing import TYPE_CHECKING, Literal

from templates_gen.base.record import Record

SIDES = ("left", "above", "right", "below")
"""Where frames are that hang around a feature."""

UP_AND_DOWN, ASIDE = ("top", "centre", "bottom"), ("left", "centre", "right")


class ArrangementKind(Record, frozen=True, kw_only=True):
    """What sets an arrangement apart: what it is `called` in a choice, and what else people have `said` for it.

    `takes` are those of the group's fields that say which frame hangs where, in the order in which they are asked for;
    `align` and `set` what these two may be.  `line` is what its frames line up in: "row", "column", or "".
    """

    name: str
    called: str
    said: tuple[str, ...] = ()
    takes: tuple[str, ...] = ()
    align: tuple[str, ...] = UP_AND_DOWN
    set: tuple[str, ...] = ("centre",)
    line: str = ""


# What people say: our own list, of what is said in the US and in Britain; no source.
ARRANGEMENTS = {kind.name: kind for kind in (
    ArrangementKind(
        name="row", called="one row", said=("one row", "line", "one line", "in a row", "in a line", "side by side"),
        takes=("order",), line="row",
    ),
    ArrangementKind(
        name="column", called="one column",
        said=("one column", "stack", "stacked", "in a column", "one above the other"),
        takes=("order",), align=ASIDE, line="column",
    ),
    ArrangementKind(name="rows", called="rows", takes=("rows",), set=(*ASIDE, "spread"), line="row"),
    ArrangementKind(
        name="columns", called="columns", takes=("columns",), align=ASIDE, set=(*UP_AND_DOWN, "spread"), line="column",
    ),
    ArrangementKind(
        name="grid", called="a grid", said=("a grid", "in a grid"), takes=("rows", "across", "order"), set=ASIDE,
        line="row",
    ),
    ArrangementKind(
        name="stairs", called="up a stair", said=("stair", "staircase", "stairway"), takes=("order",),
    ),
    ArrangementKind(name="around", called="around something", takes=("around", *SIDES, "gap_around")),
    ArrangementKind(
        name="salon", called="places found for you",
        said=("cluster", "salon hang", "salon style", "salon-style", "gallery wall"), align=("centre",),
    ),
    ArrangementKind(
        name="placed", called="each placed by hand", takes=("place",), align=(*UP_AND_DOWN, "left", "right"),
    ),
)}  # fmt: skip
"""Every arrangement by its name in the job file, in the order in which they are told."""

LISTING = {name for kind in ARRANGEMENTS.values() for name in kind.takes}
"""The fields of a group that say which frame hangs where, each for some arrangements alone."""

if TYPE_CHECKING:
    ArrangementName = str
else:  # what the job file takes is read off the records
    ArrangementName = Literal[tuple(ARRANGEMENTS)]
