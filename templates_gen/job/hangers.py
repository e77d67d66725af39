"""Every kind of hanger, with all that differs by it: one record a kind, and nothing elsewhere asks which kind it is.

What a kind answers is plain data, or a function of plain values; the rooms above draw, reckon and correct by it.
Lengths are in mm, shares are of the frame's height.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from enum import Enum, auto
from typing import TYPE_CHECKING, Literal

from templates_gen.base.record import Record

Words = tuple[tuple[str, str], ...]
"""Fields of the job file, each with words for it."""

Stroke = tuple[Literal["circle", "line", "box"], tuple[float, ...]]
"""Of a sketch, in mm on the page from the point that bears, y up: a circle (x, y, radius) and a line (from, to) are
thick, a box (left, bottom, right, top) is thin."""

ByHand = Literal["", "slide", "teeth", "along"]
"""What brings a frame level or to the side without a new hole: its wire slides on its hook, another tooth goes on the
nail, or it slides along its rail."""


class Layout(Enum):
    """How the parts of a hanger lie on the back of a frame, as the measuring sheet draws it."""

    TAUT = auto()  # a wire from ring to ring
    TEETH = auto()  # a bar of teeth in the middle
    PAIR = auto()  # the same part twice, at its own place on each side
    RAIL = auto()  # a rail right across, on another one


class HangerKind(Record, frozen=True, kw_only=True, eq=False):
    """What sets a kind of hanger apart; every field is needed, so a kind without an answer fails the type check.

    Words: `called` with its article in a sentence; `needing` that it needs something; `part` is what bears on one of
    two fixings, `said` what else people say for it.  Job file: the fields that it `takes` and `needs`, and those that
    `start` `asks` for, in order.  Measuring sheet: what is `measured` (left and right as seen from behind), and what
    is where it hangs `on_two` fixings, with "{apart}" for their distance; `layout` and the `strokes` of one part are
    its sketch.

    `rise` is how far a nail point lies above the point that bears, by the fixing's own rise and `screw_below`.  A frame
    `on_wire` can have a wire of another length, or two fixings under it.  One that `swings` comes to hang with its
    middle under its hook, `by_hand` is how it is levelled (or moved), one that `gives` hangs on a wire or on straps, of
    which no two are alike, and `levelled_anew` is set where every new hole asks for that.  `rail` is set where its
    fixings are the screws of a rail, `hooks` where picture hooks can hold it.
    `fixings` can hold it, of which the first is taken where the job's usual one cannot; they may stand beyond the
    frame's edge where it `shows`, and then go in last, through the hanger.

    Doubts: `usual_drop` is the least and the most share of the height, the least and the most in mm; a drop that is
    `long_enough` (mm) is never too short, however high the frame is; `by_height` is set where a drop goes by the
    frame's height, as no tooth's or slot's does; `again` says how to measure it once more.
    """

    name: str
    called: str
    needing: str
    part: str
    said: tuple[str, ...]
    takes: tuple[str, ...]
    needs: tuple[str, ...]
    asks: tuple[str, ...]
    measured: Words
    on_two: Words
    layout: Layout
    strokes: tuple[Stroke, ...]
    rise: Callable[[float, float | None], float]
    on_wire: bool
    swings: bool
    by_hand: ByHand
    gives: bool
    levelled_anew: bool
    rail: bool
    hooks: bool
    fixings: tuple[str, ...]
    shows: bool
    usual_drop: tuple[float, float, float, float]
    long_enough: float
    by_height: bool
    again: str

    @property
    def beyond(self) -> float:
        """How far its fixings may stand beyond the frame (mm)."""
        return MOST_BEYOND if self.shows else 0.0

    @property
    def own_drops(self) -> tuple[str, ...]:
        """The hanger's own fields for a drop, beside the frame's."""
        return tuple(name for name in self.takes if name.startswith("drop"))

    @property
    def pair(self) -> bool:
        """True for two bearing points or screws, whose left and right matter."""
        return "left" in self.needs


def _on_fixing(rise: float, screw_below: float | None) -> float:
    """It bears on the fixing, whose own rise counts."""
    return rise


def _on_rail(rise: float, screw_below: float | None) -> float:
    """It bears on a rail, whose screws are under the edge that bears."""
    return -(screw_below or 0.0)


def _in_hole(rise: float, screw_below: float | None) -> float:
    """The screw goes through the hole that its drop leads to."""
    return 0.0


def _on_each_side(field: str, part: str, what: str) -> Words:
    """What is measured left and right, as seen from behind."""
    return tuple((f"{field}{side}", f"{side} {part} from behind: {what}") for side in ("left", "right"))


MOST_BEYOND = 60.0
"""mm that the hole of a plate lies beyond its frame's edge at most.  Our own, no source: mirror plates are sold 30 to
75 mm long, and half or more of that is on the frame (from memory)."""

ANY_FIXING = "nail", "hook", "screw"

_SIDES = "left", "right", "drop_left", "drop_right"
_ASKED_OF_SIDES = tuple(f"hanger.{field}" for field in _SIDES)

TAUT_AGAIN = "Measure it again, from the frame's top edge down, with the wire pulled taut."
_AGAIN = "Measure it again, from the frame's top edge down to the point it bears on."

# usual_drop: rings sit a quarter to a third down, and a taut wire bears above them (common practice in framers' trade
# texts); else our own.  On tall frames a wire's rings sit near the top, so 20 mm are long enough: our own.  So is the
# most of a sawtooth, which sits on the frame's upper rail.
# What people say: our own list, of the trade's words in the US and in Britain; no source.  Strokes: our own design.
WIRE = HangerKind(
    name="wire", called="a wire", needing="a wire needs", part="hook",
    said=("cord", "string", "picture wire", "hanging wire"),
    takes=("apart", "drop_at_two", "ring_separation", "ring_depth"), needs=(), asks=("frame.drop",),
    measured=(("drop", "taut wire to the top edge"),),
    on_two=(
        ("drop", "on one hook, to the top edge"),
        ("drop_at_two", "on two, {apart} apart, to the top edge"),
        ("ring_separation", "from ring to ring"),
        ("ring_depth", "rings to the top edge"),
    ),
    layout=Layout.TAUT, strokes=(), rise=_on_fixing, on_wire=True,
    swings=True, by_hand="slide", gives=True, levelled_anew=True, rail=False, hooks=True,
    fixings=ANY_FIXING, shows=False,
    usual_drop=(0.05, 0.36, 5.5, math.inf), long_enough=20.0, by_height=True, again=TAUT_AGAIN,
)  # fmt: skip

SAWTOOTH = HangerKind(
    name="sawtooth", called="a sawtooth", needing="a sawtooth needs", part="sawtooth",
    said=("saw tooth", "saw-tooth", "sawtooth hanger", "teeth"),
    takes=(), needs=(), asks=("frame.drop",),
    measured=(("drop", "middle teeth to the top edge"),), on_two=(),
    layout=Layout.TEETH, strokes=(), rise=_on_fixing, on_wire=False,
    swings=True, by_hand="teeth", gives=False, levelled_anew=False, rail=False, hooks=True,
    fixings=ANY_FIXING, shows=False,
    usual_drop=(0.0, 0.25, 4.0, 45.0), long_enough=math.inf, by_height=False, again=_AGAIN,
)  # fmt: skip

RINGS = HangerKind(
    name="rings", called="rings", needing="rings need", part="ring",
    said=("d-rings", "d rings", "d-ring", "d ring", "ring", "two rings", "strap hangers", "strap hanger"),
    takes=(*_SIDES, "seen_from"), needs=("left", "right"), asks=_ASKED_OF_SIDES,
    measured=(*_on_each_side("drop_", "ring", "drop"), *_on_each_side("", "ring", "in by")),
    on_two=(), layout=Layout.PAIR,
    strokes=(("circle", (0.0, -1.3, 1.3)), ("box", (-0.8, -5.6, 0.8, -2.6))),  # a ring on its strap, pulled up
    rise=_on_fixing, on_wire=False,
    swings=False, by_hand="", gives=True, levelled_anew=False, rail=False, hooks=True,
    fixings=ANY_FIXING, shows=False,
    usual_drop=(0.02, 0.42, 8.0, math.inf), long_enough=15.0, by_height=True, again=_AGAIN,
)  # fmt: skip

KEYHOLES = HangerKind(
    name="keyholes", called="keyholes", needing="keyholes need", part="slot",
    said=("keyhole", "key holes", "keyhole plates", "keyhole hangers"),
    takes=(*_SIDES, "seen_from"), needs=("left", "right"), asks=_ASKED_OF_SIDES,
    measured=(*_on_each_side("drop_", "slot's top", "drop"), *_on_each_side("", "slot", "in by")),
    on_two=(), layout=Layout.PAIR,
    strokes=(  # the slot ends above, where the screw's neck bears
        ("circle", (0.0, -4.6, 1.4)),
        ("line", (-0.5, -3.3, -0.5, 0.0)), ("line", (0.5, -3.3, 0.5, 0.0)), ("line", (-0.5, 0.0, 0.5, 0.0)),
    ),
    rise=_on_fixing, on_wire=False,
    swings=False, by_hand="", gives=False, levelled_anew=False, rail=False, hooks=False,
    fixings=ANY_FIXING, shows=False,
    usual_drop=(0.01, 0.36, 5.0, math.inf), long_enough=math.inf, by_height=False, again=_AGAIN,
)  # fmt: skip

CLEAT = HangerKind(
    name="cleat", called="a cleat", needing="a cleat needs", part="screw",
    said=("french cleat", "cleats", "z-bar", "z bar"),
    takes=("left", "right", "seen_from", "screw_below"), needs=("left", "right"),
    asks=("hanger.left", "hanger.right", "frame.drop", "hanger.screw_below"),
    measured=(
        ("drop", "bearing edge to the top edge"),
        ("screw_below", "wall rail's screws below that edge"),
        *_on_each_side("", "screw", "in by"),
    ),
    on_two=(), layout=Layout.RAIL, strokes=(), rise=_on_rail, on_wire=False,
    swings=False, by_hand="along", gives=False, levelled_anew=False, rail=True, hooks=False,
    fixings=ANY_FIXING, shows=False,
    usual_drop=(0.005, 0.42, 5.0, math.inf), long_enough=15.0, by_height=False, again=_AGAIN,
)  # fmt: skip

PLATES = HangerKind(
    name="plates", called="plates", needing="plates need", part="plate",
    said=("plate", "mirror plate", "mirror plates", "security plate", "security plates", "glass plate", "glass plates"),
    takes=(*_SIDES, "seen_from"), needs=("left", "right"), asks=_ASKED_OF_SIDES,
    measured=(*_on_each_side("drop_", "hole", "drop"), *_on_each_side("", "hole", "in by")),
    on_two=(), layout=Layout.PAIR,
    strokes=(  # the hole for the wall's screw, and on both sides of it those of the plate's own
        ("circle", (0.0, 0.0, 0.8)), ("box", (-3.6, -1.5, 3.6, 1.5)),
        ("circle", (-2.5, 0.0, 0.4)), ("circle", (2.5, 0.0, 0.4)),
    ),
    rise=_in_hole, on_wire=False,
    swings=False, by_hand="", gives=False, levelled_anew=False, rail=False, hooks=False,
    fixings=("screw",), shows=True,
    # anywhere from a plate that stands out over the top edge to one that does under the lower one: our own
    usual_drop=(-math.inf, 1.15, -MOST_BEYOND, math.inf), long_enough=math.inf, by_height=False,
    again="Measure it again, from the frame's top edge down to the middle of the hole.",
)  # fmt: skip

HANGERS = {kind.name: kind for kind in (WIRE, SAWTOOTH, RINGS, KEYHOLES, CLEAT, PLATES)}
"""Every kind by its name in the job file, in the order in which they are offered."""

if TYPE_CHECKING:
    KindName = str
else:  # what the job file takes is read off the records
    KindName = Literal[tuple(HANGERS)]
