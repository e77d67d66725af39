"""Sound jobs of our own that slips are put into, beside the samples: as people write them, in each unit."""

BASES = {
    "settee": """
[job]
title = "Boats over the settee"
unit = "in"
date = "2026-03-14"
[wall]
width = "168"
height = "96"
build = "drywall"
board = "1/2"
studs = { first = "9 1/2", spacing = "16", width = "1 1/2" }
wiring = "us"
[[wall.feature]]
kind = "furniture"
name = "settee"
left = "42"
bottom = "0"
width = "84"
height = "33"
[[wall.feature]]
kind = "switch"
left = "6"
bottom = "46"
width = "2 3/4"
height = "4 1/2"
clear = "2"
[[wall.feature]]
kind = "outlet"
left = "30"
bottom = "14"
width = "2 3/4"
height = "4 1/2"
[group]
arrangement = "columns"
columns = [["D", "H"], ["B", "F"], ["A"], ["C", "E"], ["G", "I"]]
gap = "2 1/2"
centre_on = "settee"
height = { above = "settee", by = "7" }
[[frame]]
id = "A"
title = "Looking glass"
width = "24"
height = "36"
depth = "1 1/4"
weight = "22 lb"
hanger = { kind = "rings", seen_from = "back", left = "2", right = "2", drop_left = "4 1/4", drop_right = "4 3/16" }
fixing = { kind = "hook", below = "1 1/8", rating = "50 lb", nails = 2, length = "1 1/4", angle = 45 }
[[frame]]
id = "B"
title = "Slipway"
width = "16"
height = "20"
drop = "3 1/8"
weight = "5.5 lb"
[[frame]]
id = "C"
title = "Boathouse"
width = "16"
height = "20"
drop = "2 7/8"
weight = "5.5 lb"
[[frame]]
id = "D"
title = "Reeds I"
width = "11"
height = "14"
drop = "2 1/2"
weight = "3 lb"
[[frame]]
id = "E"
title = "Reeds II"
width = "11"
height = "14"
drop = "2 9/16"
weight = "3 lb"
[[frame]]
id = "F"
title = "Reeds III"
width = "11"
height = "14"
drop = "2 5/8"
weight = "3 lb"
[[frame]]
id = "G"
title = "Spit"
width = "8"
height = "10"
drop = "1 1/2"
weight = "1.5 lb"
[[frame]]
id = "H"
title = "Buoys I"
width = "8"
height = "10"
hanger = "sawtooth"
drop = "7/16"
weight = "1.5 lb"
fixing = { kind = "nail", diameter = "2 mm" }
[[frame]]
id = "I"
title = "Buoys II"
width = "8"
height = "10"
hanger = "sawtooth"
drop = "3/8"
weight = "1.5 lb"
fixing = { kind = "nail", diameter = "2 mm" }
[fixing]
kind = "hook"
below = "7/8"
rating = "30 lb"
nails = 1
length = "1 1/4"
angle = 45
[paper]
size = "letter"
""",
    "stair": """
[job]
title = "Seven up the stairs"
unit = "cm"
date = "2026-03-14"
[wall]
width = 420
height = 480
build = "plaster"
board = "1,5 cm"
stairs = { run = 26, rise = 18, up = "right", nosing = [40, 18], steps = 13 }
[group]
arrangement = "stairs"
order = ["A", "B", "C", "D", "E"]
gap = 8
height = { above_nosings = 150 }
[[frame]]
id = "A"
title = "Kingfisher"
width = 30
height = 40
drop = "5,2"
[[frame]]
id = "B"
title = "Wagtail"
width = 40
height = 30
drop = "4,8"
[[frame]]
id = "C"
title = "Dipper"
width = 30
height = 40
drop = "5,5"
[[frame]]
id = "D"
title = "Heron"
width = 50
height = 70
hanger = { kind = "wire", apart = 20, ring_separation = 40, ring_depth = 18 }
drop = "9,1"
[[frame]]
id = "E"
title = "Sandpiper"
width = 30
height = 40
drop = "5,0"
[paper]
size = "a4"
""",
    "mill": """
[job]
title = "Mill wheels"
unit = "mm"
date = "2026-03-14"
[wall]
width = 3600
height = 2500
build = "masonry"
wiring = "uk"
[[wall.feature]]
kind = "furniture"
name = "sideboard"
left = 900
bottom = 0
width = 1800
height = 800
[[wall.feature]]
kind = "door"
left = 2750
bottom = 0
width = 800
height = 2000
clear = 60
[group]
arrangement = "row"
gap = 60
centre_on = "sideboard"
height = { above = "sideboard", by = 200 }
[[frame]]
id = "A"
title = "Overshot"
width = 400
height = 500
depth = 25
weight = "2.4 kg"
hanger = { kind = "rings", left = 45, right = 42, drop_left = 90, drop_right = 91, seen_from = "back" }
fixing = { kind = "screw", diameter = 4, length = 50 }
[[frame]]
id = "B"
title = "Breastshot"
width = 400
height = 500
depth = 25
weight = "2.5 kg"
hanger = { kind = "rings", left = 44, right = 44, drop_left = 88, drop_right = 89, seen_from = "back" }
fixing = { kind = "screw", diameter = 4, length = 50 }
[[frame]]
id = "C"
title = "Undershot"
width = 400
height = 500
depth = 25
weight = "2.4 kg"
hanger = { kind = "rings", left = 43, right = 45, drop_left = 92, drop_right = 91, seen_from = "back" }
fixing = { kind = "screw", diameter = 4, length = 50 }
[paper]
size = "a4"
""",
    "bakery": """
[job]
title = "Six loaves"
unit = "cm"
date = "2026-03-14"
[wall]
width = 380
height = 260
build = "drywall"
board = "1,25"
studs = { first = 32, spacing = 60 }
wiring = "de"
[[wall.feature]]
kind = "switch"
left = 12
bottom = 105
width = 8
height = 8
[group]
arrangement = "grid"
across = 3
gap = 6
height = { centre = 150 }
[frame_type.loaf]
width = 40
height = 30
depth = 2
weight = "1.6 kg"
[[frame]]
id = "1"
title = "Rye"
type = "loaf"
drop = "5,5"
[[frame]]
id = "2"
title = "Spelt"
type = "loaf"
drop = "5,8"
[[frame]]
id = "3"
title = "Oat"
type = "loaf"
drop = "5,4"
[[frame]]
id = "4"
title = "Barley"
type = "loaf"
drop = "6,0"
[[frame]]
id = "5"
title = "Wheat"
type = "loaf"
drop = "5,6"
[[frame]]
id = "6"
title = "Maize"
type = "loaf"
drop = "5,7"
[fixing]
kind = "hook"
below = "2,2"
rating = "10 kg"
length = 3
[paper]
size = "a4"
""",
}
