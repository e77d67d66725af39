"""How large the marks on the paper are, in mm.

Line widths are of the ISO 128-2 series (0.13 0.18 0.25 0.35 0.5 0.7 1.0 …), lettering heights of the ISO 3098-1 series
(1.8 2.5 3.5 5 7 10 14 20); both series from memory.  All other sizes are our own design, no source.
"""

# ISO 128-2 line widths, narrow to wide
HAIR, NARROW, MEDIUM, WIDE, STRONG, HEAVY, BROAD = 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0

# ISO 3098-1 lettering heights
H18, H25, H35, H5, H7, H10, H14, H20 = 1.8, 2.5, 3.5, 5.0, 7.0, 10.0, 14.0, 20.0

NAIL_ARM = 8.0
"""How far a nail mark reaches to both sides of the nail point and above it."""

NAIL_CLEAR = 9.0
"""No other line comes nearer to a nail point than this, level or upright."""

SLIT_TO = 36.0
"""The release slit ends here below the nail point: long enough to pass a picture hook."""

TARGET = 15.0
"""Half the width of the target where centre line and level line cross."""

TARGET_WINDOW = 10.0
"""Half the diagonal of the window in it that is cut out: paper is opaque, and the pencil cross has to be seen."""

SCALE_NEAR, SCALE_FAR = 9.5, 25.0
"""A drop scale beside a nail lies between these distances from the hanger's upright."""

BARS_LONG, BARS_HIGH = 9.2, 2.5
"""Half of what a registration mark takes along its join, and across it."""

INNER_EDGE = 3.0
"""A frame's second line lies this far inside its edge."""

TITLE_DEPTH = 13.0
"""The two title lines of a sheet take this much below its upper trim line."""
