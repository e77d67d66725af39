"""The tables of the paper and of how exactly people work, as they are written."""

from typing import Annotated, Any, Literal

from templates_gen.base.record import Table
from templates_gen.job.paper_sizes import LEAST_OVERLAP, MOST_OVERLAP
from templates_gen.job.tables.field import Limits, Words
from templates_gen.job.tables.quantities import Length


class MarginTable(Table):
    """What a printer cannot reach of a page."""

    top: Annotated[Length | None, Words("at the top", '"7 mm"', usual="7 mm")] = None
    right: Annotated[Length | None, Words("at the right", '"7 mm"', usual="7 mm")] = None
    bottom: Annotated[Length | None, Words("at the bottom", '"13 mm"', usual="13 mm")] = None
    left: Annotated[Length | None, Words("at the left", '"7 mm"', usual="7 mm")] = None


class PaperTable(Table):
    """What is printed on, and what has to be on it."""

    size: Annotated[Any, Words(
        "letter, a4, tabloid, a3, …; or a roll: roll 24 in", '"letter"', ask="What paper is in the printer?",
        more='Or [width, height], or a roll by its width and unit: "roll 24 in", "roll 610 mm". Sheets of a roll '
        "are as wide as the roll and as long as needed, at most 5 m: the fewest and then the shortest.",
        later=str | tuple[Length, Length],
        usual="letter in a job in inches, else a4",
    )] = None  # fmt: skip
    margin: Annotated[Any, Words(
        "what the printer cannot reach, on all sides or by a table", '"8 mm"', usual="7 mm, at the bottom 13 mm",
        later=Length | MarginTable,
    )] = None  # fmt: skip
    overlap: Annotated[Length | None, Words(
        "how much two neighbouring sheets share", '"15 mm"', usual="12 mm",
        limits=Limits(least=LEAST_OVERLAP, most=MOST_OVERLAP, expected=f"{LEAST_OVERLAP:g} to {MOST_OVERLAP:g} mm"),
    )] = None  # fmt: skip
    cover: Annotated[
        Literal["all", "marks", "linked", "nails"],
        Words(
            "all of the group's rectangle, every mark, the nails linked to each other, or only what the nails need",
            '"all"',
            more="With linked, a spine of sheets runs along the level line, on stairs along the pitch line, and "
            "branches of sheets lead from it to the nails: one piece, with about half the sheets of marks. Most edges "
            "of frames are not on paper; the two diagonals run from nail to nail. "
            "With nails, sheets that touch no other hang separately: each says in large figures how far the level "
            "line and the centre line are from its two rulers, to be measured from two pencil lines on the wall. On "
            "stairs it is the pitch line, drawn from the nosings, and how far along it.",
            called={
                "linked": "linked sheets: a strip along the level line, and branches to the nails; the least paper "
                "that hangs together",
                "marks": "all marks: every nail and every frame's corners, in one piece",
                "all": "the whole group: all of its rectangle is on paper",
                "nails": "nails only: what the nails need; pieces hang apart, each set by its own lines",
            },
        ),
    ] = "marks"
    trim: Annotated[Literal["cut", "none"], Words(
        "cut along toothed lines, or none: sheets are taped as they are", '"none"',
        more="Without scissors a sheet's blank margin covers a strip of its neighbour. No nail mark, name or edge "
        "of a frame lies in it, only short stretches of lines that cross it; the paper is set by two slanting "
        "lines at the ends of each join that have to go on straight from sheet to sheet, with a ruler laid along "
        "them. That takes more care than registration marks on a cut edge, and on a join shorter than about 15 cm "
        "there is one such pair of lines, or none: the expected error counts it all, and can be several times as "
        "large. Some jobs take a few sheets more.",
    )] = "cut"  # fmt: skip
    photo: Annotated[bool, Words(
        "true: small square tags on every sheet, for a photograph of the taped paper", "true",
        more="They stand where nothing else is. After taping, templates-gen photo taped reads from a photograph "
        "how every sheet lies, before anyone drives a nail.",
    )] = False  # fmt: skip
    print_shop: Annotated[
        bool,
        Words(
            "true: one page for a print shop, or as few as it takes",
            "true",
            ask="Print it yourself, nails linked or all outlines, or at a print shop?",
            called={"true": "in one piece, from a print shop: nothing to tape; lines to send along come with the file"},
            more="As with --one-piece. Another paper or cover given to the command goes before it.",
        ),
    ] = False
    font: Annotated[str, Words(
        "a TrueType font for letters that the program's own lack", '"FILE.ttf"',
        more="Latin, Greek, Cyrillic, Vietnamese, Hebrew, Arabic, Devanagari and Thai letters need none.",
    )] = ""  # fmt: skip


def _share(most: float) -> Limits:
    """A share of so many per cent at the most.

    A printer more than 5 % off was told to fit the page.  Paper grows by less than 2 % for 10 % of humidity, even where
    it is swelling.  Our own design, no source.
    """
    return Limits(least=0, most=most, unit=" per cent", expected=f"0 to {most:g} per cent")


_LENGTH = Limits(least=0, most=50, expected="0 to 50 mm")
"""mm.  A larger standard deviation is taken for a slip of the unit.  Our own design, no source."""


class AccuracyTable(Table):
    """How exactly people and machines work: usual errors, one time in three it is more."""

    scale: Annotated[int | float | None, Words(
        "of a printer that was not measured, in per cent", "0.5", usual="0.3; a plotter is taken to be 0.1 or less",
        limits=_share(5),
    )] = None  # fmt: skip
    reading: Annotated[Length | None, Words(
        "of one end of a printed ruler, or of a steel one laid on a line where nothing is cut", '"0.5 mm"',
        usual="0.2 mm", limits=_LENGTH,
    )] = None  # fmt: skip
    match: Annotated[
        Length | None, Words("of the two prints of a registration mark", '"0.5 mm"', usual="0.4 mm", limits=_LENGTH)
    ] = None
    moisture_along: Annotated[int | float | None, Words(
        "of paper along its grain, in per cent for 10 % of humidity", "0.03", usual="0.045", limits=_share(2),
    )] = None  # fmt: skip
    moisture_across: Annotated[int | float | None, Words(
        "of paper across its grain, in per cent for 10 % of humidity", "0.06", usual="0.09", limits=_share(2),
    )] = None  # fmt: skip
    humidity: Annotated[int | float | None, Words(
        "of the air between printing and nailing, in per cent", "5", usual="10", limits=_share(50),
    )] = None  # fmt: skip
    drop: Annotated[Length | None, Words("of one drop", '"1 mm"', usual="0.5 mm", limits=_LENGTH)] = None
    nailing: Annotated[Length | None, Words("of one nail", '"1 mm"', usual="0.5 mm", limits=_LENGTH)] = None
    placing: Annotated[
        Length | None, Words("of a piece of paper that is taped to no other", '"2 mm"', usual="1 mm", limits=_LENGTH)
    ] = None
    string: Annotated[bool, Words("true: the level line is held to a string when the sheets are taped", "false")] = True
