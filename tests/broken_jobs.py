"""Job files with one thing wrong, each with what the message must name: the place, and what was found or expected."""

from __future__ import annotations

from tests.running import MINIMAL

RINGS = 'hanger = { kind = "rings", left = 40, right = 45'
TWO_HOOKS = 'hanger = { kind = "wire", apart = 120, ring_separation = %d, ring_depth = %d }'
FEATURE = '\n[[wall.feature]]\nkind = "furniture"\nname = "bench"\nleft = 0\nbottom = 0\nwidth = 900\nheight = 500\n'


def swapped(old: str, new: str) -> str:
    """The small job file with one line changed."""
    assert MINIMAL.count(old) == 1, old
    return MINIMAL.replace(old, new)


def added(table: str) -> str:
    """The small job file with something after its last frame."""
    return f"{MINIMAL}{table}\n"


Case = tuple[str, tuple[str, ...]]

FILE: dict[str, Case] = {
    "a line that is not TOML": (swapped("width = 4000", "width = 12 ft"), ("job.toml", "not valid TOML", "line 8")),
    "a name given twice": (swapped("drop = 60", "drop = 60\ndrop = 61"), ("job.toml", "not valid TOML", "line 24")),
    "nested too deeply": ("x = " + "[" * 5000 + "]" * 5000, ("job.toml", "nested too deeply")),
    "an empty file": ("", ("job.toml", "0 frames", "expected 1", "templates-gen start")),
    "a text with its looks": ("{\\rtf1 [job]}", ("job.toml", "(RTF)", "plain text")),
    "frames by another word": (MINIMAL.replace("[[frame]]", "[[frames]]"), ("'frames'", "did you mean 'frame'?")),
    "an unknown table": (added("[papers]"), ("job.toml", "'papers'", "did you mean 'paper'?")),
    "a table of no known name": (added("[zzz]"), ("'zzz'", "known tables: job, wall")),
    "an unknown field of the job": (swapped('date = "', 'titel = "x"\ndate = "'), ("job", "'titel'", "'title'")),
    "an unknown field of the wall": (swapped("width = 4000", "widht = 4000"), ("wall", "'widht'", "'width'")),
    "an unknown field of a frame": (swapped("drop = 60", "dorp = 60"), ("frame 1 (A)", "'dorp'", "'drop'")),
    "a field of another table": (swapped("drop = 60", "gap = 60"), ("frame 1 (A)", "'gap' belongs in [group]")),
    "a table that stands in another": (added("[[feature]]"), ("'feature'", "is written [[wall.feature]]")),
    "a field of one more table": (swapped("height = 2600", "drop = 60"), ("wall", "[[frame]] or [accuracy]")),
    "a field of many other tables": (swapped("height = 2600", "left = 60"), ("wall", "'left'", "known fields: name")),
    "a count of frames": (swapped("drop = 60", "count = 4"), ("frame 1 (A)", "'count'", "frame_type")),
    "an outlet of no height above the floor": (
        added("[[wall.feature]]\nkind = 'outlet'\nleft = 9\nwidth = 9\nheight = 9"),
        ("'bottom' is missing", "left, bottom"),
    ),
    "a number for a table": (f"wall = 3\n{MINIMAL[MINIMAL.index('[[frame]]') :]}", ("wall", "found 3", "a table")),
    "frames in single brackets": (MINIMAL.replace("[[frame]]", "[frame]"), ("frame", "double brackets")),
    "the job in double brackets": (
        MINIMAL.replace("[job]", "[[job]]"),
        ("job", "a table", "write [job] in single"),
    ),
    "an unknown unit": (swapped('unit = "mm"', 'unit = "ell"'), ("job, unit", "'ell'", "in, cm, mm")),
    "a language that is none": (
        swapped('unit = "mm"', 'unit = "mm"\nlanguage = "12 in"'),
        ("job, language", "'12 in'", "en-GB"),
    ),
    "a number for a title": (swapped('"Tile rubbings"', "3"), ("job, title", "found 3", "in quotes")),
}

WALL: dict[str, Case] = {
    "no wall width": (swapped("width = 4000", ""), ("wall, width", "is missing", "3.8 m")),
    "a wall of no height": (swapped("height = 2600", "height = 0"), ("wall, height", "found 0")),
    "a wall longer than any": (swapped("width = 4000", 'width = "4000 ft"'), ("wall, width", "4000 ft", "200 m")),
    "an unknown kind of feature": (
        added(FEATURE.replace('"furniture"', '"furnitur"')),
        ("wall.feature 2", "'furnitur'", "did you mean 'furniture'?"),
    ),
    "a feature without a side": (added(FEATURE.replace("left = 0\n", "")), ("wall.feature 2 (bench)", "'left'")),
    "two features of one name": (added(FEATURE * 2), ("wall.feature 3", "'bench' twice")),
    "features in single brackets": (swapped("[[wall.feature]]", "[wall.feature]"), ("wall, feature",)),
    "an outline of two corners": (
        swapped("height = 2600", "height = 2600\noutline = [[0, 0], [1, 1]]"),
        ("wall, outline", "2 corners", "3 or more"),
    ),
    "a year of two figures": (
        swapped("height = 2600", "height = 2600\nbuilt = 65"),
        ("wall, built", "found 65", "a year such as 1965"),
    ),
    "a stair of no steps": (
        swapped(
            "height = 2600",
            'height = 2600\nstairs = { run = 250, rise = 180, up = "left", nosing = [0, 0], steps = 0 }',
        ),
        ("wall, stairs, steps", "found 0", "1 or more"),
    ),
    "a corner of one number": (
        swapped("height = 2600", "height = 2600\noutline = [[0, 0], [1], [2, 2]]"),
        ("wall, outline, item 2", "found [1]", "a pair in [ ]"),
    ),
    "a room behind that is no list": (
        swapped("height = 2600", "height = 2600\nbehind = 3"),
        ("wall, behind", "found 3", "expected a list in [ ]"),
    ),
    "a room behind that is none": (
        swapped("height = 2600", 'height = 2600\nbehind = ["kitchn"]'),
        ("wall, behind, item 1", "'kitchn'", "did you mean 'kitchen'?"),
    ),
    "an outline that crosses itself": (
        swapped("width = 4000\nheight = 2600", "outline = [[0, 0], [4000, 2600], [4000, 0], [0, 2600]]"),
        ("wall, outline", "crosses itself"),
    ),
}

GROUP: dict[str, Case] = {
    "a misspelt arrangement": (added('[group]\narrangement = "colum"'), ("group, arrangement", "'colum'", "'column'")),
    "an unknown frame in the rows": (
        added('[group]\narrangement = "rows"\nrows = [["A", "Z"]]'),
        ("group, rows", "'Z'", "not a frame"),
    ),
    "a frame twice in the rows": (added('[group]\narrangement = "rows"\nrows = [["A", "A"]]'), ("'A' twice",)),
    "a frame left out of the rows": (
        added('[[frame]]\nid = "B"\nwidth = 1\nheight = 1\n[group]\narrangement = "rows"\nrows = [["A"]]'),
        ("group, rows", "frame B is missing"),
    ),
    "rows that are not given": (added('[group]\narrangement = "rows"'), ("group, rows", "the frames of every row")),
    "an empty row": (added('[group]\narrangement = "rows"\nrows = [["A"], []]'), ("group, rows",)),
    "an empty row of a grid": (added('[group]\narrangement = "grid"\nrows = [["A"], []]'), ("group, rows",)),
    "rows for a column": (added('[group]\narrangement = "column"\nrows = [["A"]]'), ("group, rows", "'column'")),
    "a grid without a width": (added('[group]\narrangement = "grid"'), ("group, across", "is missing")),
    "a grid of no width": (added('[group]\narrangement = "grid"\nacross = 0'), ("group, across", "found 0")),
    "a negative gap": (added("[group]\ngap = -5"), ("group, gap", "-5", "zero or more")),
    "a way to align that is of columns": (added('[group]\nalign = "left"'), ("group, align", "'left'", "top, centre")),
    "a way to set that is of rows": (added('[group]\nset = "spread"'), ("group, set", "'spread'", "'row'")),
    "a centre on nothing known": (
        added(FEATURE + '[group]\ncentre_on = "bnech"'),
        ("group, centre_on", "'bnech'", "did you mean 'bench'?"),
    ),
    "a height above nothing known": (
        added(FEATURE + '[group]\nheight = { above = "sofa", by = 200 }'),
        ("group, height, above", "'sofa'", "features: switch, bench"),
    ),
    "a height in two ways": (
        added("[group]\nheight = { centre = 1500, top = 1600 }"),
        ("group, height", "centre, top", "expected one of"),
    ),
    "a height above by nothing": (added(FEATURE + '[group]\nheight = { above = "bench" }'), ("group, height", "by")),
    "a number in the order": (added("[group]\norder = [1]"), ("group, order, item 1", "found 1", "text in quotes")),
    "a list in a row": (
        added('[group]\narrangement = "rows"\nrows = [[["A"]]]'),
        ("group, rows, item 1, item 1", "found ['A']", "text in quotes"),
    ),
    "a pin of one number": (
        added('[group]\narrangement = "salon"\npin = { A = [1] }'),
        ("group, pin, A", "found [1]", "a pair in [ ]"),
    ),
    "a pin of a word": (
        added('[group]\narrangement = "salon"\npin = { A = [1, "left"] }'),
        ("group, pin, A, item 2", "'left'", "a length"),
    ),
    "a spot with two points": (
        added('[group]\narrangement = "placed"\nplace.A = { centre = [0, 0], top_left = [1, 1] }'),
        ("group, place, A", "2 points"),
    ),
    "a spot of one number": (
        added('[group]\narrangement = "placed"\nplace.A = { centre = [0] }'),
        ("group, place, A, centre",),
    ),
}

FRAME: dict[str, Case] = {
    "two frames of one id": (added('[[frame]]\nid = "A"\nwidth = 1\nheight = 1'), ("frame A", "twice")),
    "an empty id": (swapped('id = "A"', 'id = ""'), ("frame 1, id", "found ''")),
    "an id that is a number": (swapped('id = "A"', "id = 1"), ("frame 1, id", "found 1", "in quotes")),
    "no id": (swapped('id = "A"', ""), ("frame 1, id", "is missing")),
    "an id with a line break": (swapped('id = "A"', r'id = "A\nB"'), ("frame 1", "id")),
    "a size that is no length": (swapped("width = 300", 'width = "wide"'), ("frame 1 (A), width", "'wide'", "36.5 cm")),
    "a negative size": (swapped("width = 300", "width = -300"), ("frame 1 (A), width", "-300", "zero or more")),
    "an ambiguous size": (swapped("width = 300", 'width = "1,234"'), ("frame 1 (A), width", "1.234 or 1234")),
    "a width of nothing": (swapped("width = 300", "width = 0"), ("frame 1 (A), width", "found 0")),
    "a width that is missing": (swapped("width = 300", ""), ("frame 1 (A)", "'width' is missing")),
    "a width that is true": (swapped("width = 300", "width = true"), ("frame 1 (A), width", "True", "36.5 cm")),
    "a whole number too long to read": (swapped("width = 300", f"width = {'9' * 5000}"), ("job.toml",)),
    "a fraction too large": (swapped("width = 300", f'width = "{"9" * 400}/1"'), ("frame 1 (A), width", "length")),
    "a width that is not a number": (swapped("width = 300", "width = nan"), ("frame 1 (A), width", "nan")),
    "a weight without a unit": (swapped("drop = 60", 'weight = "4"'), ("frame 1 (A), weight", "'4'", "4.2 lb")),
    "an unknown type": (
        swapped("drop = 60", 'type = "til"') + "[frame_type.tile]\nwidth = 9",
        ("frame 1 (A), type", "'til'", "did you mean 'tile'?"),
    ),
    "a fault in a type": (added('[frame_type.tile]\nwidth = "x"'), ("frame_type.tile, width", "'x'")),
    "an unknown hanger": (swapped("drop = 60", 'hanger = "wires"'), ("frame 1 (A), hanger", "'wires'", "'wire'")),
    "rings without left and right": (swapped("drop = 60", 'hanger = "rings"'), ("frame 1 (A), hanger", "'left'")),
    "a ring beyond its side, seen from behind": (
        swapped("drop = 60", RINGS.replace("40", "-5") + ', seen_from = "back" }'),
        ("frame 1 (A), hanger, left", "found -5 mm", "0 or more"),
    ),
    "sides that differ, seen from nowhere": (swapped("drop = 60", RINGS + " }"), ("frame 1 (A), hanger", "seen_from")),
    "rings seen from the side": (
        swapped("drop = 60", RINGS + ', seen_from = "side" }'),
        ("frame 1 (A), hanger, seen_from", "'side'", "front, back"),
    ),
    "a ring beyond the frame's side": (
        swapped("drop = 60", 'hanger = { kind = "rings", left = -14, right = -14 }'),
        ("frame 1 (A), hanger, left", "-14 mm", "only plates"),
    ),
    "a field of another hanger": (
        swapped("drop = 60", 'hanger = { kind = "sawtooth", apart = 50 }'),
        ("frame 1 (A), hanger, apart", "'sawtooth'"),
    ),
    "fixings wider than the rings": (
        swapped("drop = 60", "drop = 60\n" + TWO_HOOKS % (100, 90)),
        ("frame A, hanger", "120 mm (4 3/4 in) apart", "100 mm"),
    ),
    "a drop below the rings": (
        swapped("drop = 60", "drop = 60\n" + TWO_HOOKS % (200, 50)),
        ("frame A, hanger", "drop of 60 mm", "50 mm"),
    ),
    "a hook without below": (swapped("drop = 60", 'fixing = "hook"'), ("frame 1 (A), fixing", "'below'")),
    "a hook for all without below": (added('[fixing]\nkind = "hook"'), ("fixing", "'below'", "7/8 in")),
    "a fixing of no nails": (added("[fixing]\nnails = 0"), ("fixing, nails", "found 0")),
    "a fixing of half a nail": (added("[fixing]\nnails = 1.5"), ("fixing, nails", "found 1.5", "a whole number")),
    "an angle in words": (added('[fixing]\nangle = "steep"'), ("fixing, angle", "'steep'", "expected a number")),
    "an angle that is true": (added("[fixing]\nangle = true"), ("fixing, angle", "found true", "expected a number")),
    "an angle along the wall": (added("[fixing]\nangle = 90"), ("fixing, angle", "found 90", "less than 90")),
    "a fixing rated for nothing": (added('[fixing]\nrating = "0 kg"'), ("fixing, rating", "found 0 kg", "its maker")),
    "a nail as thick as a pipe": (added('[fixing]\ndiameter = "2 in"'), ("fixing, diameter", "50.8 mm", "20 mm")),
}

PAPER: dict[str, Case] = {
    "a paper misspelt": (added('[paper]\nsize = "lettre"'), ("paper, size", "'lettre'", "did you mean 'letter'?")),
    "a day for a length": (swapped("drop = 60", "drop = 2026-05-08"), ("drop", "found 2026-05-08, expected a length")),
    "an unknown paper": (added('[paper]\nsize = "zzz"'), ("paper, size", "'zzz'", "known: a0, a1")),
    "paper of one side": (added("[paper]\nsize = [200]"), ("paper, size", "[200]", "[width, height]")),
    "margins that leave no width": (
        added("[paper]\nmargin = { left = 105, right = 105 }"),
        ("paper, margin", "210 × 297 mm"),
    ),
    "margins that leave no height": (
        added("[paper]\nmargin = { top = 150, bottom = 147 }"),
        ("paper, margin", "210 × 297 mm"),
    ),
    # our own limit of what a printer takes, 5,000 mm a side
    "paper larger than any": (added('[paper]\nsize = ["9 m", "9 m"]'), ("paper, size", "9000")),
    "a negative margin": (added("[paper]\nmargin = { left = -1 }"), ("paper, margin, left", "-1")),
    "paper too small for a nail mark": (added("[paper]\nsize = [50, 50]"), ("paper", "larger paper")),
    "an overlap too small": (added("[paper]\noverlap = 2"), ("paper, overlap", "found 2 mm", "10 to 40 mm")),
    "an overlap too large": (added('[paper]\noverlap = "5 in"'), ("paper, overlap", "127 mm", "10 to 40 mm")),
    "an unknown cover": (added('[paper]\ncover = "nail"'), ("paper, cover", "'nail'", "did you mean 'nails'?")),
    "a title no font can write": (swapped("Tile rubbings", "拓片"), ("拓片", "U+62D3", "--font")),
    "a font that is not there": (added('[paper]\nfont = "no.ttf"'), ("no.ttf", "no such file")),
    "a folder for a font": (added('[paper]\nfont = "."'), ("font", "is a folder", ".ttf")),
    "a font that is no font": (added('[paper]\nfont = "job.toml"'), ("job.toml", "cannot be used")),
}

BROKEN = FILE | WALL | GROUP | FRAME | PAPER

HEAD = '[job]\nframes = "frames.csv"\n[wall]\nwidth = 4000\nheight = 2600\n'

SPREADSHEETS: dict[str, tuple[bytes, tuple[str, ...]]] = {
    "an empty spreadsheet": (b"", ("frames.csv", "no header line", "such as id,")),
    "a header and nothing else": (b"id,width,height\n", ("0 frames",)),
    "a header of no known name": (b"name,size\nA,3\n", ("frames.csv", "no column that is known", "such as id")),
    "a header without the frames' names": (b"title,width\nA,3\n", ("frames.csv: has no column 'id'",)),
    "a misspelt column": (b"id,widht,height\nA,3,3\n", ("frames.csv, line 1: ", "'widht'", "did you mean 'width'?")),
    "a column in another language": (b"id,breite\nA,3\n", ("frames.csv, line 1", "'breite'", "known columns: id")),
    "an office program's file": (b"PK\x03\x04[Content", ("frames.csv", "an office program", "CSV UTF-8")),
    "a cell too many": (b"id,width\nA,3,4\n", ("frames.csv, line 2", "3 cells", "expected 2")),
    "a cell under no name": (b"id,,width\nA,x,3\n", ("frames.csv, line 2", "'x'", "without a name")),
    "half a nail in a cell": (
        b"id,width,height,fixing.kind,fixing.nails\nA,3,4,nail,1.5\n",
        ("frames.csv, line 2 (A), fixing, nails", "'1.5'", "a whole number"),
    ),
    "an angle that is no number in a cell": (
        b"id,width,height,fixing.kind,fixing.angle\nA,3,4,nail,nan\n",
        ("frames.csv, line 2 (A), fixing, angle", "'nan'", "expected a number"),
    ),
    "a bad length in a cell": (b"id,width,height\n\nA,3,tall\n", ("frames.csv, line 3 (A), height", "'tall'")),
    "a column twice as a field and a table": (b"id,hanger,hanger.apart\nA,wire,3\n", ("frames.csv", "hanger.apart")),
    "a column given twice": (b"id,width,height,width\nA,3,300,500\n", ("frames.csv", "width", "twice")),
    "a column as a table and then a field": (b"id,hanger.apart,hanger\nA,3,wire\n", ("frames.csv", "hanger")),
    "a spreadsheet in another encoding": ("id\nä\n".encode("latin-1"), ("frames.csv", "not UTF-8", "byte 3")),
    "a workbook instead of text": (b"PK\x03\x04\x00\xff\xfe", ("frames.csv",)),
    "a NUL in the table": (b"id,width,height\nA\x00B,3,3\n", ("frames.csv",)),
}
