"""The job file as it is written: one record for every table, most fields optional."""

from typing import Annotated, Literal

from templates_gen.base.record import Table, field
from templates_gen.base.words import UNIT_NAMES
from templates_gen.job.tables.field import Words
from templates_gen.job.tables.frame import FrameTable
from templates_gen.job.tables.group import GroupTable
from templates_gen.job.tables.hanger import FixingTable
from templates_gen.job.tables.paper import AccuracyTable, PaperTable
from templates_gen.job.tables.wall import WallTable


class JobTable(Table):
    """What every page says, and the unit."""

    title: Annotated[
        str, Words("on every page", '"Fern prints"', ask="What is the job called?", usual="the name of the job file")
    ] = ""
    client: Annotated[str, Words(
        "on every page", '"Mill Lane Bakery"', ask="Who is it for?", offered=True,
        more="It is also the PDF's author, unless --anonymous leaves it out.",
    )] = ""  # fmt: skip
    unit: Annotated[
        Literal["in", "cm", "mm"],
        Words(
            "for numbers without a unit, and for what is shown: in, cm or mm",
            '"in"',
            ask="Which unit do you measure in?",
            called=UNIT_NAMES,
        ),
    ] = "mm"
    date: Annotated[str, Words(
        "the date on every page", "2026-03-14", more='Or as text: "2026-03-14".',
        usual="the day of the job file's last change",
    )] = ""  # fmt: skip
    language: Annotated[str, Words("the language of the titles, for the PDF's readers", '"en-GB"')] = "en"
    frames: Annotated[str, Words("a spreadsheet with frames, beside the job file", '"frames.csv"')] = ""
    measured: Annotated[
        str, Words("a spreadsheet with what was measured of the frames, beside the job file", '"measured.csv"')
    ] = ""
    confirmed: Annotated[list[str], Words(
        "values that were asked about, and are right", '["wall, width: 381 in"]',
    )] = field(default_factory=list)  # fmt: skip


class JobFile(Table):
    """The tables of a job file."""

    job: Annotated[JobTable | None, Words("what every page says, and the unit")] = None
    wall: Annotated[WallTable | None, Words("the wall and what is known of it")] = None
    group: Annotated[GroupTable | None, Words("how the frames are arranged, and where they hang")] = None
    frame_type: Annotated[
        dict[str, FrameTable] | None, Words("what the frames of one type share, a table for each type")
    ] = None
    frame: Annotated[list[FrameTable] | None, Words("the frames, a table each")] = None
    fixing: Annotated[FixingTable | None, Words("what goes into the wall for every frame without its own")] = None
    paper: Annotated[PaperTable | None, Words("what is printed on, and what has to be on it")] = None
    accuracy: Annotated[AccuracyTable | None, Words("how exactly people and machines work")] = None
