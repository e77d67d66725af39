"""What the reference of the job file begins with: how values are written, and a whole job."""

from __future__ import annotations

INTRODUCTION = (
    "A job file is a text file in TOML: tables in [ ], and fields with a value behind a =. # begins a remark.",
    'Lengths are written as people write them: "14 3/8", "14-3/8", 14.375, "1\' 2 3/8\\"", "5 ft 2 in", '
    '"36.5 cm", "36,5 cm", "0.365 m", "14½". A bare number is in the job\'s unit. In a job of cm or mm a bare 5/8 is '
    'refused: write its unit. A width of "24 x 36" is a width and a height. "n/a" or "none" is a length that is not '
    "given. A weight has its unit behind it.",
    "What people say for a word of the file is taken for it: inches, sheetrock, light switch, socket, couch, D-rings. "
    "The questions of start and spreadsheets take the same.",
)

EXAMPLE = """\
[job]
title = "Fern prints"
client = "Larkfield Village Library"
unit = "in"

[wall]
width = "12' 6\\""
height = "8'"

[[wall.feature]]
kind = "furniture"
name = "bench"
left = "45"
bottom = 0
width = "60"
height = "28"
clear = "2"

[group]
arrangement = "rows"
rows = [["A", "B"], ["C"]]
gap = "2 1/2"
height = { above = "bench", by = "8" }

[frame_type.tall]
width = "11 1/4"
height = "14 1/4"
hanger = "wire"

[[frame]]
id = "A"
title = "Hart's-tongue"
type = "tall"
drop = "3 1/8"

[[frame]]
id = "B"
type = "tall"
fixing = { kind = "hook", below = "7/8" }

[frame.hanger]
kind = "rings"
left = "1 1/2"
right = "1 1/2"
drop_left = "2 1/4"
drop_right = "2 3/16"
seen_from = "back"

# no drop yet: no nail yet
[[frame]]
id = "C"
type = "tall"

[paper]
size = "letter"
"""
"""A whole job, to begin with."""
