"""Between which lengths the measures of a job usually lie.  All in mm.

None of it is a rule: a length outside is asked about.  Where no other source is named: common practice, no source, and
set so far apart that the measures of real jobs lie inside, by our own jobs and nothing else.
"""

from __future__ import annotations

import re

from templates_gen.base.record import replace
from templates_gen.checks.doubts.readings import Usual
from templates_gen.job.model import Feature, Job

WALL_WIDTH = Usual(420.0, 8000.0, 300.0, 30_000.0)
PIER = 300.0
"""mm of a pier between windows, or beside a chimney, with one frame or a column.  Our own, no source."""

GALLERY_WIDTH = Usual(420.0, 12_000.0, 300.0, 30_000.0)
WALL_HEIGHT = Usual(2000.0, 4000.0, 1200.0, 8000.0)
STAIR_WALL_HEIGHT = Usual(2000.0, 7000.0, 1200.0, 14_000.0)
"""Rooms are 2.3 to 3.6 m high; beside a stair a wall goes on through two storeys or three."""

LOW_WALL = {"centre": (0.35, 0.72), "top": (0.5, 0.92), "bottom": (0.1, 0.55)}
"""Of its height, where a group is on a half wall, or under a slope.  Our own, no source."""


def low_wall(job: Job) -> bool:
    """True for a wall lower than rooms are, on which the group is as high as suits it: two figures that agree."""
    low, high = LOW_WALL.get(job.group.height.by, (1.0, 0.0))
    share = job.group.height.at / job.wall.height
    return job.wall.height < WALL_HEIGHT.least and low <= share <= high


CLEAR = Usual(0.0, 600.0, 0.0, 1500.0)
"""How far frames stay from an edge or a feature."""

STUD_SPACING = Usual(280.0, 650.0, 250.0, 700.0, figures=True)
"""16 and 24 in (IRC Table R602.3(5)), 400 and 600 mm (UK practice, from memory); 12 in where it is close."""

STUD_WIDTH = Usual(30.0, 110.0, 25.0, 160.0)
"""38 mm of nominal 2 in timber (DOC PS 20, from memory) to doubled ones; 50 mm of metal."""

BOARD = Usual(6.0, 40.0, 4.0, 60.0)
"""1/4 in board to lath and plaster or two boards."""

RUN, RISE = Usual(200.0, 400.0, 190.0, 450.0), Usual(120.0, 240.0, 100.0, 250.0)
"""Of one step.  The IRC asks for a run of 10 in or more and a rise of 7 3/4 in or less (R311.7.5, from memory)."""

PITCH, RAMP, LADDER = (16.0, 58.0), (2.5, 7.2), 72.0
"""Degrees of a stair people walk on; of a ramp without steps, a little under 1 in 20 (ADA 2010, 403.3, from memory) to
1 in 8 (table 405.2, from memory); and of a loft's ladder at most (our own, no source)."""

NOSINGS_CLEAR = Usual(400.0, 1600.0, 200.0, 2000.0)
"""How far frames stay above a stair's nosings."""

FRAME_SIDE = Usual(48.0, 3300.0, 25.0, 6000.0)
DEPTH = Usual(2.5, 170.0, 2.0, 260.0)

GAP = Usual(9.5, 250.0, 6.0, 400.0)
"""2 to 3 in at home, up to 6 in in museums; 3/8 in between the parts of one picture."""

CENTRE = Usual(670.0, 2000.0, 600.0, 2400.0, figures=True)
"""57 in is what museums hang by; lower for children, higher over what stands on the floor.  From 670 mm:
57 to 66 are inches where centimetres should stand.  Our own."""

TOP, BOTTOM = Usual(1200.0, 2800.0, 900.0, 3500.0), Usual(100.0, 2000.0, 50.0, 2400.0)
ABOVE = Usual(38.0, 560.0, 30.0, 900.0)
"""Above furniture: 4 to 10 in are the ends of what interior design texts advise; down to 1 1/2 in over a headboard, a
piano or a wardrobe, our own."""

MEANT = {"centre": 1000.0, "bottom": 400.0, "above": 75.0}
"""Nobody is asked whether less than this was meant.  Our own."""

ABOVE_WORK, ABOVE_COOKER = Usual(45.0, 760.0, 30.0, 900.0), Usual(45.0, 1100.0, 30.0, 1500.0)
"""Above what people stand or sit at, or what gets hot or wet; and above a cooker, over which hoods hang 650 to 750 mm
high (from memory)."""

ABOVE_NOSINGS = Usual(1000.0, 1900.0, 800.0, 2400.0, figures=True)

PLATE_WIDTH, PLATE_HEIGHT = Usual(40.0, 350.0, 20.0, 500.0), Usual(40.0, 200.0, 20.0, 400.0)
"""Of a switch, an outlet or a thermostat: one gang is 70 to 120 mm, four beside each other 210 to 290."""

SIZES = {
    "outlet": (PLATE_WIDTH, PLATE_HEIGHT), "switch": (PLATE_WIDTH, PLATE_HEIGHT),
    "thermostat": (PLATE_WIDTH, PLATE_HEIGHT),
    "light": (Usual(40.0, 1800.0, 20.0, 3000.0), Usual(40.0, 1800.0, 20.0, 3000.0)),
    "vent": (Usual(50.0, 1500.0, 30.0, 3000.0), Usual(50.0, 1500.0, 30.0, 3000.0)),
    "radiator": (Usual(250.0, 3000.0, 100.0, 5000.0), Usual(150.0, 2500.0, 80.0, 3000.0)),
    "door": (Usual(500.0, 2600.0, 350.0, 5000.0), Usual(1800.0, 3000.0, 1200.0, 4000.0)),
    "window": (Usual(250.0, 4500.0, 100.0, 10_000.0), Usual(250.0, 3000.0, 100.0, 5000.0)),
    "furniture": (Usual(200.0, 6500.0, 100.0, 9000.0), Usual(8.0, 2600.0, 5.0, 3500.0)),
}  # fmt: skip
"""Width and height of what is on a wall."""

SEAT_HEIGHT, TABLE_HEIGHT = Usual(350.0, 1400.0, 250.0, 1600.0), Usual(370.0, 1350.0, 300.0, 1600.0)
WORK_HEIGHT = Usual(370.0, 1200.0, 300.0, 1600.0)
FLOOR_HEIGHT = Usual(150.0, 2600.0, 100.0, 3500.0)
"""How high a seat, a table or a chest, and whatever else stands on the floor, is."""

SHELVES, SHELF_HEIGHT = frozenset(("shelf", "ledge", "wandboard", "étagère", "repisa")), Usual(8.0, 150.0, 5.0, 450.0)
"""What is called a shelf, and how high one on a wall is: its board and lip.  Our own list, no source."""

SEAT_WIDTH, TABLE_WIDTH = Usual(400.0, 8000.0, 300.0, 12_000.0), Usual(350.0, 5000.0, 250.0, 8000.0)

TABLES = frozenset(
    ("table", "desk", "sideboard", "counter", "console", "dresser", "chest", "worktop", "workbench", "credenza",
     "buffet", "tisch", "kommode", "anrichte", "konsole", "theke", "werkbank", "commode", "bureau", "comptoir",
     "mesa", "escritorio", "aparador", "comoda", "cómoda", "mostrador")
)  # fmt: skip
TABLE_ENDINGS = ("tisch", "kommode", "theke")
"""What stands as high as a table, by words of its name, and by last parts of German ones.  Our own lists, no source."""

COOKERS = frozenset(
    ("cooker", "stove", "range", "hob", "cooktop", "oven", "herd", "kochfeld", "backofen", "ofen", "cuisinière",
     "gazinière", "four", "poêle", "cocina", "fogón", "estufa", "horno")
)  # fmt: skip
WORKED_AT = frozenset(
    ("basin", "washbasin", "sink", "bath", "bathtub", "tub", "toilet", "wc", "loo", "bidet", "radiator", "tv",
     "television", "monitor", "waschbecken", "waschtisch", "spüle", "badewanne", "wanne", "toilette", "heizkörper",
     "heizung", "fernseher", "lavabo", "évier", "baignoire", "radiateur", "télé", "fregadero", "bañera", "inodoro",
     "radiador", "televisor", "desk", "table", "counter", "worktop", "workbench", "theke", "werkbank", "bureau",
     "comptoir", "mesa", "escritorio", "mostrador")
)  # fmt: skip
"""What room is left above, by words of its name.  Our own lists, no source."""


NAMED = (
    (frozenset(("sofa", "couch", "settee", "chesterfield", "canapé", "canape", "divan")), ("sofa", "couch"),
     Usual(1000.0, 5000.0, 700.0, 7000.0), Usual(500.0, 1300.0, 350.0, 1600.0), 1350.0),
    (frozenset(("bed", "headboard", "bett", "lit", "cama")), ("bett",),
     Usual(700.0, 2600.0, 600.0, 4500.0), Usual(250.0, 2000.0, 150.0, 2400.0), 1250.0),
    (frozenset(("fireplace", "mantel", "mantelpiece", "mantelshelf", "kamin", "cheminée", "cheminee", "chimenea")), (),
     Usual(500.0, 3000.0, 400.0, 5000.0), Usual(500.0, 1900.0, 350.0, 2600.0), 900.0),
    (frozenset(("sideboard", "credenza", "buffet", "dresser", "anrichte", "aparador", "bahut")), ("sideboard",),
     Usual(600.0, 4000.0, 500.0, 6000.0), TABLE_HEIGHT, 950.0),
    (frozenset(("desk", "worktop", "counter", "workbench", "werkbank", "theke", "escritorio")), ("schreibtisch",),
     TABLE_WIDTH, Usual(600.0, 1200.0, 500.0, 1600.0), 0.0),
    (frozenset(("piano", "klavier")), (), Usual(1000.0, 1800.0, 800.0, 2800.0), Usual(700.0, 1500.0, 600.0, 2200.0),
     1200.0),
)  # fmt: skip
"""What has a size of its own, by words of its name and last parts of German ones: its usual width and height, and the
width under which a group that is wider tells of a slip.  Our own, no source."""


def named(name: str) -> tuple[Usual, Usual, float] | None:
    """The usual width and height of a thing of this name, and when it is narrow; None for any other."""
    words = words_of(name)
    for known, endings, width, height, narrow in NAMED:
        if words & known or (endings and any(word.endswith(endings) for word in words)):
            return width, height, narrow
    return None


def narrow(name: str) -> float:
    """The width (mm) under which a thing of this name is narrow; 0 where any width is usual."""
    found = named(name)
    return found[2] if found else 0.0


def words_of(name: str) -> frozenset[str]:
    """The words of a name in small letters."""
    return frozenset(re.findall(r"\w+", name.casefold()))


def table_by_name(name: str) -> bool:
    """True for what stands as high as a table."""
    together = "".join(name.casefold().split())
    return any(word in TABLES or word.endswith(TABLE_ENDINGS) for word in (*words_of(name), together))


def table_height(name: str) -> Usual:
    """How high what stands as high as a table is: at a bar people stand, chests of drawers are higher."""
    return WORK_HEIGHT if _worked_at(name) else TABLE_HEIGHT


def _worked_at(name: str) -> bool:
    return bool(words_of(name) & WORKED_AT) or any(word.endswith("tisch") for word in words_of(name))


def above(feature: Feature) -> Usual:
    """The room above a feature that is usual: by its kind and name, more above what is low, and none on a ledge."""
    words, rect = words_of(feature.name), feature.rect
    low = _worked_at(feature.name) or feature.kind == "radiator" or rect.y1 < LOW_THING
    room = ABOVE_COOKER if words & COOKERS else ABOVE_WORK if low else ABOVE
    room = replace(room, least=CLOSE_ABOVE, far_least=CLOSE_ABOVE) if rect.y1 >= HIGH_THING and not low else room
    room = replace(room, least=WELL_ABOVE) if rect.y1 < LOW_THING and words_of(feature.name) & BENCHES else room
    return replace(room, least=0.0) if rect.height < LEDGE else room


BENCHES, WELL_ABOVE = frozenset(("bench", "pew", "bank", "banc", "banco")), 70.0
"""What is low, by words of its name, and mm that nobody hangs nearer above it.  Our own, no source."""

HIGH_THING, CLOSE_ABOVE = 1000.0, 25.0
"""mm that a mantelpiece, a piano or a chest is high, right above which frames hang, and how near.  Our own."""

LOW_THING, LEDGE = 550.0, 80.0
"""mm that a bench without a back is high, or a chest, well above which frames hang, where people look; and that a shelf
is thick on which pictures stand.  Our own, no source."""

SWITCH_BOTTOM, OUTLET_BOTTOM = Usual(600.0, 1700.0, 300.0, 1800.0), Usual(30.0, 1500.0, 0.0, 2000.0)
"""Above the floor.  UK 450 to 1200 mm to the middle (Approved Document M, from memory); US switches at about 48 in."""

RADIATOR_BOTTOM = Usual(0.0, 1000.0, 0.0, 1100.0)
"""Under a window, on the floor, or in a bathroom at chest height."""

FROM_FLOOR, STEPS = 60.0, 450.0
"""mm above the floor that a seat or a table begins at most: a sill; and a door, with two steps before it."""

WINDOW_TO_FLOOR, WINDOW_HEAD = 150.0, 1700.0
"""mm above the floor that a window begins at most which reaches down to it; its head is then as high as a door's."""

NAIL, SCREW = Usual(1.0, 5.0, 0.8, 6.0), Usual(2.0, 10.0, 1.5, 12.0)
"""Diameters."""

NAIL_LENGTH, HOOK_NAIL, SCREW_LENGTH = (
    Usual(15.0, 110.0, 12.0, 150.0), Usual(15.0, 65.0, 12.0, 90.0), Usual(12.0, 200.0, 10.0, 260.0)
)  # fmt: skip
BELOW = Usual(6.5, 45.0, 4.0, 65.0)
"""How far a picture hook's seat lies below its nail."""

SCREW_BELOW = Usual(3.0, 80.0, 1.0, 150.0)
"""How far a rail's screws lie below the edge that bears.  Rails are some 30 to 100 mm high."""

MARGIN = Usual(0.0, 30.0, 0.0, 50.0)
"""What a printer cannot reach."""

SHEET_SIDE = Usual(140.0, 1300.0, 100.0, 5000.0)
"""A side of a sheet of paper: A5 to A0."""

FACE, MAT = Usual(4.0, 160.0, 3.0, 250.0), Usual(3.0, 220.0, 0.0, 400.0)
"""How wide a moulding is, and how much of a mat shows."""

DEVIATION = Usual(0.0, 5.0, 0.0, 8.0)
"""How exactly a person works: tenths of a millimetre to a few, and not what is off at most."""
