"""The tables of a wall as they are written: its stairs, its studs, and what is on it."""

from typing import Annotated, Any, Literal

from templates_gen.base.record import Table, field
from templates_gen.job.tables.field import Limits, Words
from templates_gen.job.tables.quantities import Length, Offset

FeatureKind = Literal[
    "outlet", "switch", "light", "thermostat", "vent", "radiator", "door", "window", "pipe", "furniture", "other"
]

FIRST_YEAR, LAST_YEAR = 1000, 2999
"""Any other year that a wall was built in is taken for a slip.  Common practice, no source."""


class StudsTable(Table):
    """The studs behind a board, as somebody found them."""

    first: Annotated[Length | None, Words(
        "the middle of a stud, from the wall's left end", '"9 1/4 in"',
        ask="How far is the middle of a stud from the wall's left end?",
    )] = None  # fmt: skip
    second: Annotated[Length | None, Words(
        "the middle of another stud, which gives or confirms the spacing", '"25 1/4 in"',
        ask="And the middle of the next stud?", more="With a spacing beside it, it need not be the next one.",
    )] = None  # fmt: skip
    spacing: Annotated[Length | None, Words(
        "from the middle of one stud to the middle of the next", '"16 in"',
        usual="what two measured studs give; else 16 in, or 600 mm, and you are asked to measure",
    )] = None  # fmt: skip
    width: Annotated[Length | None, Words("how wide a stud is", '"1 1/2 in"', usual="38 mm (1 1/2 in)")] = None


class FeatureTable(Table):
    """Something on the wall or in front of it."""

    kind: Annotated[FeatureKind, Words(
        "things on or in front of the wall, one by one", '"furniture"', ask="What is on the wall or in front of it?",
        more="What people say is taken for it: socket, light switch, couch, shelf.",
    )]  # fmt: skip
    name: Annotated[str, Words(
        "its name, to hang above it or to centre on it", '"bench"', ask="What do you call it?",
        usual="its kind; of furniture the word that was used for it",
    )] = ""  # fmt: skip
    use: Annotated[Literal["bed", "seat", "cot", "other"] | None, Words(
        "bed, seat, cot (for babies) or other: what hangs over it is checked by that", '"seat"',
        ask="What do people use it for?", usual="what its name tells",
        more="For furniture alone. A name such as bed, sofa, bench, crib, ottoman or changing table is understood "
        "without it, in English, German, French or Spanish. Give the weight and the glazing of frames over it.",
    )] = None  # fmt: skip
    left: Annotated[Length | None, Words(
        "from the wall's left end", '"45 in"', ask="How far is its left side from the wall's left end?", must=True,
    )] = None  # fmt: skip
    bottom: Annotated[Length | None, Words(
        "from the floor to its lower edge", "0", ask="How far above the floor is its lower edge?",
        usual="the floor for furniture and doors; all else needs it",
    )] = None  # fmt: skip
    width: Annotated[
        Length | None, Words("from its left side to its right side", '"60 in"', ask="How wide is it?", must=True)
    ] = None
    height: Annotated[
        Length | None, Words("from its lower edge to its top edge", '"28 in"', ask="How tall is it?", must=True)
    ] = None
    clear: Annotated[Length | None, Words(
        "frames keep this far away from it", '"2 in"', ask="How far should frames stay away from it?", offered=True,
        metric='"5 cm"', usual="0",
    )] = None  # fmt: skip


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


class WallTable(Table):
    """The wall and what is known of it."""

    name: Annotated[str, Words("what the wall is called, on the first page", '"reading room, east"')] = ""
    width: Annotated[Length | None, Words(
        "from its left end to its right end", '"12\' 6\\""', ask="How wide is the wall?",
        usual="that of its outline; one of the two is needed",
    )] = None  # fmt: skip
    height: Annotated[Length | None, Words(
        "from the floor to the ceiling", '"8\'"', ask="How high is it?",
        usual="that of its outline; one of the two is needed",
    )] = None  # fmt: skip
    outline: Annotated[list[tuple[Offset, Offset]] | None, Words(
        "a wall that is no rectangle, corner by corner", "[[0, 0], [3000, 0], [3000, 2500], [0, 2050]]",
        usual="a rectangle",
        more="Its lowest left corner is the wall's left end, on the floor. Everything else is measured from there "
        "(left, bottom, studs, a stair's nosing, distances and heights), whatever numbers the outline begins with; "
        "check says so where they are not 0, 0. The wall's middle is halfway between the leftmost and the "
        "rightmost point of the outline. On a wall that leans, give centre_on a distance where another middle "
        "looks better. Where a sheet reaches over an edge, a line says where to fold it.",
    )] = None  # fmt: skip
    clear: Annotated[Length | None, Words("frames stay this far away from the wall's edges", '"2 in"', usual="0")] = (
        None
    )
    stairs: Annotated[StairsTable | None, Words(
        "a stair along the wall", '{ run = "10 in", rise = "7 1/2 in", up = "right", nosing = ["20 in", "7 1/2 in"] }',
    )] = None  # fmt: skip
    build: Annotated[Literal["drywall", "plasterboard", "plaster", "masonry", "timber"] | None, Words(
        "drywall (plasterboard), plaster, masonry or timber: the fixings are chosen for it", '"drywall"',
        ask="What is it built of?", offered=True,
    )] = None  # fmt: skip
    board: Annotated[Length | None, Words("how thick its board is", '"1/2 in"')] = None
    studs: Annotated[StudsTable | None, Words(
        "the studs behind its board", '{ first = "9 1/4 in", second = "25 1/4 in" }',
        more="Studs are never guessed: with no first one, or no spacing, you are asked to measure.",
    )] = None  # fmt: skip
    wiring: Annotated[Literal["us", "uk", "de", "none"] | None, Words(
        "us, uk or de; none if nobody knows. Use a detector in any case", '"us"',
        ask="Which country's rules were its cables laid by?", offered=True,
        more="By whose rule the cables were laid: uk is BS 7671, de is DIN 18015-3 (which counts its upright zones "
        "from rough edges; a job gives finished ones), and the US has no zones to rely on. Every nail in a zone "
        "where cables may run is a warn and has a ! before it in the schedule. Give every outlet, switch, light "
        "and thermostat, the doors and the windows, pipes and radiators as features. With a fixing's length and "
        "angle, and the wall's board, you are also told which nails reach the depth where cables may lie. None of "
        "this clears a spot: look with a detector all the same.",
    )] = None  # fmt: skip
    worktop: Annotated[bool, Words("whether the room has a worktop, as a kitchen has", "true")] = False
    behind: Annotated[list[Literal["bathroom", "kitchen", "laundry", "toilet", "other"]], Words(
        "the rooms on the wall's other side", '["bathroom"]',
    )] = field(default_factory=list)  # fmt: skip
    built: Annotated[int | None, Words(
        "the year of the building: lead paint and asbestos are asked about by it", "1965",
        limits=Limits(least=FIRST_YEAR, most=LAST_YEAR, expected="a year such as 1965"),
        ask="In which year was the building built?", offered=True,
    )] = None  # fmt: skip
    earthquake: Annotated[bool | None, Words(
        "whether it is in earthquake country: frames are then to be secured against earthquakes", "true",
        ask="Is it in earthquake country?", offered=True,
    )] = None  # fmt: skip
    public: Annotated[bool | None, Words(
        "whether a path open to the public runs along it: what sticks out is then held to rules on access", "true",
        ask="Does a path open to the public run along it?", offered=True,
        more="With each frame's depth, what sticks out more than the ADA Standards allow is a warn, and what is "
        "hard to see from a wheelchair is a note.",
    )] = None  # fmt: skip
    feature: Annotated[list[dict[str, Any]], Words(
        "what is on the wall or in front of it, a table each", "[[wall.feature]]", later=list[FeatureTable],
    )] = field(default_factory=list)  # fmt: skip
