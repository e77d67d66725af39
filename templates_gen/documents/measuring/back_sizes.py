"""How large the parts of a frame seen from its back are drawn, and where what nobody measured is drawn."""

ROOM, OVER = 8.0, 4.0
"""mm beside and under a drawing, and over it, for its dimensions.  Our own design, no source."""

STROKE, PAST = 1.1, 1.2
"""mm: half an oblique stroke both ways, and how far a dimension's line goes on beyond it.  Strokes in place of arrow
heads are among the ends of ISO 129-1 (from memory), and an arrow on paper is for what is up; the lengths are our own
design."""

HELD = 0.8
"""mm; radius of the nail that a taut wire is drawn over.  Our own design, no source."""

MOULDING = 0.07
"""Of a frame's shorter side: how wide its moulding is drawn.  Our own design, no source."""

LETTER_AIR, LETTER_ASIDE, LETTER_DOWN = 1.0, 2.2, 1.2
"""mm from a level dimension to its letter, from an upright one to the middle of its, and from that one's upper end down
to the letter at the least.  Our own design, no source."""

LETTER_HALF, LETTER_MORE = 1.4, 0.5
"""mm: half the width of the white behind a letter, and what it is higher than the letter above and below.  Our own
design."""

RINGS_DOWN, RINGS_AT, RINGS_MOST = 0.32, 1.5, 0.9
"""Where rings are drawn that nobody measured: down by this share of the frame's height, or by so many drops if that is
more, but by no more than the last share.  About a third is common practice, no source; the others are our own."""

TAUT_DOWN, TWO_DOWN = 0.5, 0.15
"""Shares of the rings' depth: how deep a wire on one nail is drawn that nobody measured, and how much of what is left
from there to the rings one on two nails is deeper.  Our own design, no source."""

RINGS_APART = 0.86
"""Of a frame's width: how far apart rings are drawn that nobody measured.  Our own design, no source."""

RING, BROKEN = 1.3, (1.5, 1.0)
"""mm: a ring's radius; dash and gap of what is behind or not there at the same time.  Our own design, no source."""

SAWTOOTH_DOWN, PAIR_DOWN, CLEAT_DOWN, SCREWS_DOWN = 0.06, 0.2, 0.12, 0.05
"""Of a frame's height: how deep a sawtooth, rings and the like, a cleat's rail, and below that its screws are drawn
that nobody measured.  Our own design, no source."""

TEETH, TOOTH, BAR = 5, 1.0, 1.6
"""Teeth to each side of a sawtooth's middle, mm that they are high, and mm that its bar is.  Our own design."""

SAWTOOTH_HALF, SAWTOOTH_SHARE = 5.0, 0.3
"""mm that a sawtooth reaches to each side, or this share of a narrow frame's width.  Our own design, no source."""

BY_TOOTH, PAST_TOOTH = 2.0, 3.0
"""mm from a sawtooth's end to the dimension of its drop, and to where the thin line goes on to.  Our own design."""

NEAR_EDGE = 5.0
"""mm from a frame's side: nearer, the dimension of a drop has its letter inside.  Our own design, no source."""

SIDE_DIMENSION, SIDE_LINE = 7.5, (2.0, 8.5)
"""mm from a ring up or down to the dimension of its distance, and from where to where its thin line goes.  Our own
design."""

RAIL_SHARE, RAIL_MORE, RAIL_FOOT = 0.1, 1.0, 3.0
"""A cleat's rail ends this share of a frame's width inside, or so many mm beyond its screws; the wall's goes down so
many mm below them.  Our own design, no source."""

SCREW, SCREW_DIMENSION, SCREW_LINE = 0.7, 8.0, 7.0
"""mm: a screw's radius; how far left of the middle the dimension down to the screws stands, and how far from it their
line ends.  Our own design, no source."""

UNDER, UNDER_LINE = 3.0, 4.0
"""mm under the wall's rail: a dimension to the frame's side, and where its thin line ends.  Our own design."""
