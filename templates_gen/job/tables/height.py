"""The table of a group's height as it is written."""

from __future__ import annotations

from typing import Annotated

from templates_gen.base.record import Table
from templates_gen.job.tables.field import Words
from templates_gen.job.tables.quantities import Length


class HeightTable(Table):
    """How high a group hangs, in one of five ways."""

    centre: Annotated[Length | None, Words(
        "from the floor to the middle of the group", '"57 in"', ask="How high is the middle of the group?",
    )] = None  # fmt: skip
    above: Annotated[str | None, Words(
        "the feature that the group hangs above", '"bench"', ask="What does the group hang above?",
    )] = None  # fmt: skip
    above_nosings: Annotated[Length | None, Words(
        "on a stair: from the line of the nosings straight up to the pitch line", '"58 in"',
        ask="How far above the nosings is the line that the frames climb along?",
    )] = None  # fmt: skip
    by: Annotated[Length | None, Words(
        "from the feature's top edge up to the lowest frame", '"8 in"', ask="How far above it is the lowest frame?",
        more="It belongs to above.",
    )] = None  # fmt: skip
    top: Annotated[Length | None, Words(
        "from the floor to the highest edge of the group", '"80 in"', ask="How high is the top of the group?",
    )] = None  # fmt: skip
    bottom: Annotated[Length | None, Words(
        "from the floor to the lowest edge of the group", '"40 in"', ask="How high is the bottom of the group?",
    )] = None  # fmt: skip
    of: Annotated[str | None, Words(
        "the frame whose middle or edge it is that hangs so high", '"A"', usual="that of the whole group",
        more="It belongs to centre, above, top or bottom.",
    )] = None  # fmt: skip
