"""The job file table by table, in the order in which it is read about: headings, and what no field says by itself."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.base.record import Record, Table
from templates_gen.job.hangers import HANGERS
from templates_gen.job.tables.field import Field, fields_of
from templates_gen.job.tables.frame import FrameTable, MatTable, MouldingTable, PartTable
from templates_gen.job.tables.group import CentreTable, GroupTable, HeightTable, SpotTable
from templates_gen.job.tables.hanger import FixingTable, HangerTable
from templates_gen.job.tables.paper import AccuracyTable, MarginTable, PaperTable
from templates_gen.job.tables.wall import FeatureTable, StairsTable, StudsTable, WallTable
from templates_gen.job.tables.whole import JobTable

_PAIRS = [kind.called for kind in HANGERS.values() if kind.pair]
_DROPPED = [kind.called for kind in HANGERS.values() if kind.pair and kind.own_drops]


def _named(names: Sequence[str]) -> str:
    return f"{', '.join(names[:-1])} and {names[-1]}"


class Chapter(Record, frozen=True):
    """One table: its name, its type, how a job file begins it, and paragraphs about it."""

    name: str
    table: type[Table]
    heading: str
    about: tuple[str, ...] = ()


CHAPTERS = (
    Chapter("job", JobTable, "[job]", (
        "Frames from a spreadsheet: the header names are the field names of a frame (id,title,type,width,height,"
        "drop,…), a blank cell or a dash means not given; with ; between the cells, 36,5 is a number. The fields "
        "of a hanger may have columns of their own: hanger,left,right,drop_left,drop_right,seen_from,apart,…",
        "Measured values from a spreadsheet: templates-gen measure JOB.toml --csv measured.csv writes one with "
        "what is known so far. A row overrides what the job file says of the frame with its id; a blank cell "
        "changes nothing. A width or height more than 3 mm off is a warn. Write 0 5/8 or 0.625: a spreadsheet "
        "turns 5/8 into a date.",
        "Numbers that are probably slips are a warn, with what they may have been meant to be: a length in the "
        "other unit, a lost decimal point, width and height the wrong way round, a drop measured from the lower "
        "edge, a ring measured from the wrong side, twins whose drops are an inch apart, a weight that no frame of "
        "this size has, furniture beyond the wall, and the like. Not every slip can be seen: a frame whose sides "
        "changed places may look as sound as before. 31/8 is refused: write 3 1/8. start asks at once, and takes "
        "an answer that is typed again.",
        'A value that is odd and right: write its unit ("3 m"), which leaves more room before it is asked about. '
        "Or put it under confirmed in the words of the warn; check prints the line. When the value changes, it is "
        "asked about again.",
    )),
    Chapter("wall", WallTable, "[wall]", (
        "What a job does not tell is not checked: check and the first page list it in one line. earthquake = false "
        "and public = false tell that there is no such thing.",
    )),
    Chapter("feature", FeatureTable, "[[wall.feature]]", (
        "Anything on or in front of the wall, one table each. left, width and height are needed.",
    )),
    Chapter("stairs", StairsTable, "stairs = { … } in [wall]", (
        'run and rise of one step, or pitch. With arrangement = "stairs" and height = { above_nosings = "58 in" } '
        "the frames climb with the stair, in their order from the left, the gap clear from side to side: the "
        "middle of each (or its top or bottom, by align) is on the pitch line, so high straight above the line of "
        "the nosings. The pitch line is on the paper beside the level line, which stays level and is short there, "
        "30 cm to each side of the target.",
    )),
    Chapter("studs", StudsTable, "studs = { … } in [wall]"),
    Chapter("group", GroupTable, "[group]", (
        "salon takes frames of any sizes and finds an arrangement with even gaps that is compact and balanced "
        "about its centre line, clear of what is on the wall and inside its outline; plain rows, columns and grids "
        "are tried as well, and the best is taken. Its wishes may each be left out: largest, pin, together, "
        "same_height, heavy_low. The same job gives the same arrangement. check scores every arrangement and says "
        "in words where it leans. templates-gen options JOB.toml shows several.",
        "around hangs frames round a window or any other feature, by its sides; align sets the columns beside it "
        "by its top, centre or bottom.",
        "Frames of one size may change places: check says which hang alike, or how much lower or higher a nail "
        "then goes.",
    )),
    Chapter("centre_on", CentreTable, "centre_on = { … } in [group]", (
        'For example { frame = "A", over = "bench" }: the middle of frame A over the middle of the bench. With '
        "places for every frame, those are from frame A then; it is refused for frames around a feature, whose "
        "middle is the feature's.",
    )),
    Chapter("height", HeightTable, "height = { … } in [group]", (
        "One of centre, top, bottom, or above with by; on a stair above_nosings.",
        '{ centre = "57 in", of = "A" } has the middle of frame A at that height, and the level line goes through '
        "it; the other frames hang above and below it as they are arranged.",
    )),
    Chapter("place", SpotTable, "place.A = { … } in [group]", (
        "One point of frame A: how far right of the centre line (negative: left), and above the level line.",
    )),
    Chapter("frame", FrameTable, "[[frame]]", (
        "One table for each frame. [frame_type.NAME] has the same fields but id and type: what the frames of that "
        "type share. What a frame says itself goes first.",
        "A frame by its parts: without width and height, the outside is worked out from print, mat and moulding.",
        "A weight that was not weighed is estimated from glazing, backing, mat, and the moulding with its wood and "
        "depth. All of them are needed; otherwise there is no estimate. An estimate says est. wherever it is "
        "shown.",
    )),
    Chapter("hanger", HangerTable, "hanger = { … } in [[frame]]", (
        'A wire on one fixing is measured by the frame\'s drop: hanger = "wire". On two fixings it takes apart, '
        "and its drop at two is worked out from the drop on one, ring_separation and ring_depth, or given as "
        "measured.",
        f"A pair takes left and right: {_named(_PAIRS)}. Of these, {_named(_DROPPED)} take a drop on either side, "
        "too. Those of plates lead to the hole for the wall's screw, which may lie beyond the frame.",
    )),
    Chapter("fixing", FixingTable, "[fixing], or fixing = { … } in [[frame]]"),
    Chapter("mat", MatTable, "mat = { … } in [[frame]]", ("Either width, or all four sides.",)),
    Chapter("moulding", MouldingTable, "moulding = { … } in [[frame]]"),
    Chapter("part", PartTable, "glazing = { … } or backing = { … } in [[frame]]"),
    Chapter("paper", PaperTable, "[paper]", (
        "Other ways belong to the command, see templates-gen template --help: one piece for a print shop, and only "
        "so many sheets.",
    )),
    Chapter("margin", MarginTable, "margin = { … } in [paper]"),
    Chapter("accuracy", AccuracyTable, "[accuracy]", (
        "The first page, check and --report say how exactly the frames will hang: how far the facing corners of "
        "neighbours are out of line, and how far their gap is off. All neighbours keep within both at once, 19 "
        f"times in 20. A frame on two fixings ({', '.join(_PAIRS)}, a wire on two) also tilts when one fixing "
        "is higher than the other. What comes from tilt is named, with what would help most.",
        "Each value here is the usual error (a standard deviation: one time in three it is more).",
        "A printer that was measured counts as surely as it was read (printer record --reading-error), on both "
        "axes, and with its lean where you measured the diagonals. A profile that is less sure than none is said "
        "to be. Not counted: frames that are not square, walls that are not flat, how exactly you level a frame on "
        "one nail.",
    )),
)  # fmt: skip
"""Every table of a job file, in the order of the reference."""


def table_of(name: str) -> type[Table]:
    """The table of this name, such as "frame"; "hanger" and "height" are tables within a frame and a group."""
    return next(chapter.table for chapter in CHAPTERS if chapter.name == name)


def field_of(key: str) -> Field:
    """A field by its table and name, such as "frame.width"."""
    table, _, name = key.partition(".")
    return fields_of(table_of(table))[name]


def home_of(name: str, table: bool = False) -> str:
    """A hint where the job file has a table or field of this name, or no more than a `table`; "" where it has none, or
    in more than two places."""
    for chapter in CHAPTERS:
        if chapter.name == name:
            return f"{name!r} is written {chapter.heading}"
    homes = [chapter.heading for chapter in CHAPTERS if not table and name in fields_of(chapter.table)]
    own = [heading for heading in homes if heading.startswith("[")] or homes  # before one inside another table
    return f"{name!r} belongs in {' or '.join(own)}" if 0 < len(homes) <= 2 else ""
