"""The tables of a hanger and of a fixing as they are written."""

from typing import Annotated, Literal

from templates_gen.base.record import Table
from templates_gen.job.hangers import HANGERS, KindName
from templates_gen.job.tables.field import Limits, Words
from templates_gen.job.tables.quantities import Inset, Length, Mass

FixingKind = Literal["nail", "hook", "screw"]

MOST_DIAMETER = 20.0
"""mm.  A thicker nail or screw is taken for a slip of the unit.  Our own design, no source."""


class HangerTable(Table):
    """A hanger; without a kind it completes that of the frame's type."""

    kind: Annotated[KindName | None, Words(
        " or ".join(", ".join(HANGERS).rsplit(", ", 1)), '"rings"', usual="that of the frame's type, else wire",
        more="D-rings, two hooks and the like are understood.",
    )] = None  # fmt: skip
    left: Annotated[Inset | None, Words(
        "from the frame's left side to the middle of the left ring, slot, hole or screw", '"1 1/2 in"',
        ask="From behind: how far is the left one from the frame's left side?",
        more="Needed for two of them, and so is right. The hole of a plate has to stand clear of the frame, beyond "
        "one edge: left = -12 mm is 12 mm beyond the left side, drop_left = -12 mm is 12 mm above the top edge, and a "
        "drop of more than the frame's height is below it. A hole inside all four edges is behind the frame.",
    )] = None  # fmt: skip
    right: Annotated[Inset | None, Words(
        "from the frame's right side to the middle of the right one", '"1 1/2 in"',
        ask="From behind: how far is the right one from the frame's right side?",
    )] = None  # fmt: skip
    drop_left: Annotated[Inset | None, Words(
        "from the frame's top edge down to where the left one bears, measured from behind", '"2 1/4 in"',
        ask="How far below the top edge does the left one bear?", usual="the frame's drop",
    )] = None  # fmt: skip
    drop_right: Annotated[Inset | None, Words(
        "from the frame's top edge down to where the right one bears, measured from behind", '"2 3/16 in"',
        ask="How far below the top edge does the right one bear?", usual="the frame's drop",
    )] = None  # fmt: skip
    seen_from: Annotated[Literal["front", "back"] | None, Words(
        "from where left and right were seen", '"back"',
        more="Needed where the two sides differ: a guess would put both holes in the wrong place. A frame's hanger "
        "without a kind completes its type's, seen from where the type says.",
    )] = None  # fmt: skip
    apart: Annotated[Length | None, Words(
        "from one fixing to the other under one wire", '"10 in"', ask="How far apart are the two hooks of frame {id}?",
        usual="the wire is on one fixing",
    )] = None  # fmt: skip
    drop_at_two: Annotated[Length | None, Words(
        "from the top edge down to the wire on both hooks, as it hangs", '"4 in"',
        ask="How far below the top edge does the wire of frame {id} bear on the two hooks?",
        usual="worked out from the frame's drop, ring_separation and ring_depth",
        more="Two fixings lift the frame, so this is longer than the drop on one hook. Two drops that do not fit "
        "one wire are a warn.",
    )] = None  # fmt: skip
    ring_separation: Annotated[
        Length | None, Words("from one ring of the wire to the other, straight across", '"26 in"')
    ] = None
    ring_depth: Annotated[
        Length | None, Words("from the frame's top edge down to the rings of the wire", '"7 1/2 in"')
    ] = None
    screw_below: Annotated[Length | None, Words(
        "from the rail's bearing edge down to its screws", '"7/8 in"',
        ask="How far are the screws below the edge that it bears on?", more="For a cleat, whose two screws are marked.",
    )] = None  # fmt: skip


class FixingTable(Table):
    """What goes into the wall."""

    kind: Annotated[FixingKind, Words(
        "nail, hook or screw, for every frame without its own", '"hook"', ask="What goes into the wall?",
        more="The nails of a picture hook go through the hook's own holes, so a hook has one nail point: the "
        'middle of its nails. Its label then says "hook with 2 nails".',
    )] = "nail"  # fmt: skip
    below: Annotated[Length | None, Words(
        "from the nail down to the hook's seat", '"7/8 in"', ask="How far is the hook's seat below its nail?",
        more="Needed for a hook; where it has several nails, from their middle.",
    )] = None  # fmt: skip
    diameter: Annotated[
        Length | None,
        Words(
            "how thick the nail or the screw is",
            '"2 mm"',
            usual="1.8 mm, or 4 mm for a screw",
            limits=Limits(
                least=0, above=True, most=MOST_DIAMETER, expected=f"more than 0 and at most {MOST_DIAMETER:g} mm"
            ),
        ),
    ] = None
    rating: Annotated[Mass | None, Words(
        "what its maker rates one fixing for", '"20 lb"', ask="What does its maker rate one of them for?",
        limits=Limits(least=0, above=True, unit=" kg", expected="the weight that its maker rates it for"),
    )] = None  # fmt: skip
    nails: Annotated[
        int | None, Words("how many nails one fixing has", "2", usual="1", limits=Limits(least=1, expected="1 or more"))
    ] = None
    length: Annotated[Length | None, Words("how long the nail is", '"1 1/4 in"')] = None
    angle: Annotated[int | float | None, Words(
        "degrees from straight in at which it is driven", "45",
        limits=Limits(least=0, most=90, under=True, expected="degrees from straight in: 0, and less than 90"),
    )] = None  # fmt: skip
