"""The table of a group as it is written: how the frames are arranged, and where they hang."""

from typing import Annotated, Any, Literal

from templates_gen.base.record import Table
from templates_gen.job.arrangements import ARRANGEMENTS, ArrangementName
from templates_gen.job.tables.field import Limits, Words
from templates_gen.job.tables.quantities import Length, Offset


class CentreTable(Table):
    """What is in the middle of a group from side to side, and over what that goes."""

    frame: Annotated[str, Words(
        "the frame whose middle is on the centre line", '"A"', usual="the middle of the whole group",
    )] = ""  # fmt: skip
    over: Annotated[str | int | float, Words(
        "wall, the name of a feature, or a distance from the left end", '"bench"',
        ask="Over what does the middle of frame {frame} go?",
    )] = "wall"  # fmt: skip


class SpotTable(Table):
    """Where a frame is placed, by one of its points: across from the centre line, up from the level line."""

    centre: Annotated[tuple[Offset, Offset] | None, Words("the middle of the frame", '["-10 in", "4 in"]')] = None
    top_left: Annotated[tuple[Offset, Offset] | None, Words("its top left corner", '["-14 in", "9 in"]')] = None
    top_right: Annotated[tuple[Offset, Offset] | None, Words("its top right corner", '["-6 in", "9 in"]')] = None
    bottom_left: Annotated[tuple[Offset, Offset] | None, Words("its lower left corner", '["-14 in", "-1 in"]')] = None
    bottom_right: Annotated[tuple[Offset, Offset] | None, Words("its lower right corner", '["-6 in", "-1 in"]')] = None


class HeightTable(Table):
    """How high a group hangs, in one of five ways."""

    centre: Annotated[Length | None, Words(
        "from the floor to the middle of the group", '"57 in"', ask="How high is the middle of the group?",
        more="For placed and pinned frames: to the level line, from which their places go up and down.",
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


class GroupTable(Table):
    """How the frames are arranged, and where they hang."""

    arrangement: Annotated[
        ArrangementName,
        Words(
            "row, column, rows, columns or grid; for others: templates-gen help job group",
            '"row"',
            ask="How are the frames arranged?",
            offered=True,
            more="stairs climbs with a stair, around goes round a feature, placed takes a place for every frame, and "
            "the places of salon are found.",
            called={kind.name: kind.called for kind in ARRANGEMENTS.values()},
        ),
    ] = "row"
    rows: Annotated[list[list[str]] | None, Words(
        "row by row from the top, each from the left", '[["A", "B"], ["C"]]',
        ask="Which frames are in which row, from the top?", more="For rows, and for a grid in place of across.",
    )] = None  # fmt: skip
    columns: Annotated[list[list[str]] | None, Words(
        "column by column, each from its top", '[["A", "B"], ["C"]]', ask="Which frames are in which column?",
        more="For columns.",
    )] = None  # fmt: skip
    order: Annotated[list[str] | None, Words(
        "the frames in their order, from the left or from the top", '["B", "A", "C"]',
        usual="as they stand in the file", more="For a row, a column, a grid and stairs.",
    )] = None  # fmt: skip
    across: Annotated[int | None, Words(
        "how many frames are in each row of the grid", "3", ask="How many frames are in each row?",
        limits=Limits(least=1, expected="how many frames are in each row of the grid, 1 or more"), more="For a grid.",
    )] = None  # fmt: skip
    place: Annotated[dict[str, Any] | None, Words(
        "where each frame is, from the centre line and the level line", '{ A = { centre = ["-10 in", "4 in"] } }',
        more="For placed frames. A line for each is easier to read: place.A = { centre = [-250, 100] }.",
        later=dict[str, SpotTable],
    )] = None  # fmt: skip
    around: Annotated[str | None, Words(
        "the feature that the frames hang around", '"window"', ask="What do the frames hang around?",
        more="For around. The centre line is the feature's, and so is the height.",
    )] = None  # fmt: skip
    left: Annotated[list[str] | None, Words(
        "for around: the frames to its left, from the top", '["A", "B"]',
        ask="Which frames hang on its left, from the top?",
    )] = None  # fmt: skip
    above: Annotated[list[str] | None, Words(
        "for around: the frames above it, from the left", '["C", "D"]',
        ask="Which frames hang above it, from the left?",
    )] = None  # fmt: skip
    right: Annotated[list[str] | None, Words(
        "for around: the frames to its right, from the top", '["E", "F"]',
        ask="Which frames hang on its right, from the top?",
    )] = None  # fmt: skip
    below: Annotated[list[str] | None, Words(
        "for around: the frames below it, from the left", '["G"]', ask="Which frames hang below it, from the left?",
    )] = None  # fmt: skip
    gap_around: Annotated[Length | None, Words(
        "for around: how far the frames are away from the feature", '"4 in"', usual="the gap",
        more="A row that reaches over a column higher than the feature keeps gap_down from the column.",
    )] = None  # fmt: skip
    largest: Annotated[Literal["centre"] | None, Words("for salon: the largest frame in the middle", '"centre"')] = None
    pin: Annotated[dict[str, tuple[Offset, Offset]] | None, Words(
        "for salon: the middles of frames that have their place, from the centre line and the level line",
        "{ A = [-300, 0] }",
    )] = None  # fmt: skip
    together: Annotated[
        list[list[str]] | None, Words("for salon: frames that are to be neighbours", '[["A", "B"]]')
    ] = None
    same_height: Annotated[
        list[list[str]] | None, Words("for salon: frames whose middles are to be level", '[["C", "D"]]')
    ] = None
    heavy_low: Annotated[bool, Words("for salon: heavy frames low", "true")] = False
    seed: Annotated[int, Words("for salon: a number that starts the search elsewhere", "1")] = 0
    align: Annotated[Literal["top", "centre", "bottom", "left", "right"], Words(
        "in a row: top, centre, bottom; in a column: left, centre, right", '"top"', ask="What lines up in each {line}?",
    )] = "centre"  # fmt: skip
    gap: Annotated[Length | None, Words(
        "the clear gap between two frames", '"2 1/2 in"', ask="How wide is the gap between two frames?", offered=True,
        metric='"6 cm"', usual="2 1/2 in (63.5 mm)",
    )] = None  # fmt: skip
    gap_across: Annotated[Length | None, Words("the gap from side to side", '"3 in"', usual="the gap")] = None
    gap_down: Annotated[Length | None, Words("the gap from one row to the next", '"2 in"', usual="the gap")] = None
    set: Annotated[Literal["left", "centre", "right", "top", "bottom", "spread"], Words(
        "how rows line up: left, centre, right, or spread to one width; columns: top, centre, bottom, spread", '"left"',
        more="For rows and columns. In a grid: where a frame stands across its column, left, centre or right; a last "
        "row that is not full begins at the left.",
    )] = "centre"  # fmt: skip
    centre_on: Annotated[str | int | float | CentreTable, Words(
        "wall, the name of a feature, a distance from the left end, or the frame that goes in the middle", '"bench"',
        ask="What is the group centred on?",
        more='"A" has the middle of frame A on the middle of the wall, { frame = "A", over = "bench" } over the '
        "middle of the bench. The centre line goes through it, and the other frames hang left and right of it as "
        "they are arranged. A name that is a frame and a feature is refused: say which in the table.",
    )] = "wall"  # fmt: skip
    height: Annotated[HeightTable | None, Words(
        "centre, top or bottom above the floor, or above a feature", '{ centre = "57 in" }',
        ask="How high do they hang?", offered=True, metric='{ centre = "145 cm" }',
        usual="the middle at 57 in (1448 mm) above the floor, or above the nosings of a stair",
    )] = None  # fmt: skip
