"""A job: what the job file says, complete and checked, in mm (x from the wall's left end, y from the floor) and kg."""

from __future__ import annotations

from templates_gen.base.geometry import Rect, around
from templates_gen.base.record import Record, field
from templates_gen.job.accuracy import Accuracy
from templates_gen.job.hangers import HANGERS, WIRE, HangerKind
from templates_gen.job.stairs import Stairs
from templates_gen.job.wishes import Wishes

Sides = tuple[float, float, float, float]
"""Top, right, bottom, left in mm."""


class Feature(Record, frozen=True, kw_only=True):
    """Anything on or in front of the wall; `clear` is how far frames keep away (mm).  `use` says whether people sit or
    lie on furniture ("bed", "seat", "cot", "other"; "" when it is not said)."""

    kind: str
    name: str
    rect: Rect
    clear: float = 0.0
    use: str = ""

    @property
    def called(self) -> str:
        """What it is called in a sentence, after "the"."""
        plain = self.name == self.kind or self.kind in ("furniture", "other")
        return self.name if plain else f"{self.kind} {self.name!r}"


class Studs(Record, frozen=True, kw_only=True):
    """Upright timbers or metal studs: `first` is a measured centre from the wall's left end, if one was measured;
    `confirmed` is False where the spacing is only the usual one, which nobody measured on this wall."""

    first: float | None
    spacing: float
    width: float
    confirmed: bool = True


class Wall(Record, frozen=True, kw_only=True):
    """The vertical plane.  `outline` is set when it is not a plain rectangle: its corners, the lowest left one at 0, 0,
    in the job file at `begins`.  Frames stay `clear` of its edges; `stairs` is set where a stair runs along it.
    `wiring` is whose rule its cables were laid by, `worktop` whether the room has one, `behind` the rooms on its other
    side, `public` whether the public walks along it, `earthquake` whether the earth may shake, `built` the year."""

    name: str
    width: float
    height: float
    outline: tuple[tuple[float, float], ...] = ()
    begins: tuple[float, float] = (0.0, 0.0)
    clear: float = 0.0
    stairs: Stairs | None = None
    build: str = ""
    board: float | None = None
    studs: Studs | None = None
    wiring: str = ""
    worktop: bool = False
    behind: tuple[str, ...] = ()
    public: bool | None = None
    earthquake: bool | None = None
    built: int | None = None
    features: tuple[Feature, ...] = ()

    @property
    def rect(self) -> Rect:
        """Around all of it, which may reach left of its left end; the middle of the wall is the middle of this."""
        return around(self.outline) if self.outline else Rect(0.0, 0.0, self.width, self.height)

    @property
    def corners(self) -> tuple[tuple[float, float], ...]:
        return self.outline or self.rect.corners

    def above_ground(self, x: float, y: float) -> float:
        """How high a point of the wall is above what one stands on there: the floor, or a stair."""
        return y - (self.stairs.ground_at(x) if self.stairs else 0.0)

    def least_above_ground(self, rect: Rect) -> float:
        """How high the lower edge of a rectangle is, where it is nearest to what one stands on."""
        return min(self.above_ground(x, rect.y0) for x in (rect.x0, rect.x1))


class Hanger(Record, frozen=True, kw_only=True):
    """What is on the back of a frame, **as seen from the front**; its `traits` are those of its kind.  `left` and
    `right` are the distances of a pair's bearing points from the frame's sides, `drop_left` and `drop_right` their
    drops.  `apart` is the distance of two fixings under one wire."""

    kind: str
    left: float | None = None
    right: float | None = None
    drop_left: float | None = None
    drop_right: float | None = None
    apart: float | None = None
    drop_at_two: float | None = None
    ring_separation: float | None = None
    ring_depth: float | None = None
    screw_below: float | None = None

    @property
    def traits(self) -> HangerKind:
        return HANGERS[self.kind]


class Fixing(Record, frozen=True, kw_only=True):
    """What goes into the wall.  `below`: how far a hook's seat lies below its nail; `rating` in kg.  A hook with
    several `nails` has one nail point, at their middle: they are driven through the hook's own holes."""

    kind: str = "nail"
    diameter: float = 1.8  # mm; a common picture nail.  Common practice, no source
    below: float | None = None
    rating: float | None = None
    nails: int = 1
    length: float | None = None
    angle: float | None = None

    @property
    def rise(self) -> float:
        """How far its nail point lies above what bears on it: on a hook's seat, or on a nail's upper side (mm)."""
        return self.below or 0.0 if self.kind == "hook" else -self.diameter / 2

    @property
    def called(self) -> str:
        """What it is called in a list: "nail", "hook with 2 nails"."""
        return self.kind if self.nails == 1 else f"{self.kind} with {self.nails} nails"


class Frame(Record, frozen=True, kw_only=True):
    """One framed piece: outside size, and how it hangs.  `drop` is None until it has been measured.

    `estimated`: the weight is not weighed but worked out from what the frame is made of; `lacking` names what that
    would still need.  `glazing` is "glass", "acrylic", "none", or "" when it is not told.  `worked_out` is the outside
    size that print, mat and moulding come to; `listed` is the listed size of a frame that was measured since.  `image`
    is the path of its picture, `image_size` its pixels across and up where they are known, `face` how wide the moulding
    is, `mat` how much of it shows on each side (mm).
    """

    id: str
    width: float
    height: float
    title: str = ""
    type: str = ""
    depth: float | None = None
    weight: float | None = None
    estimated: bool = False
    drop: float | None = None
    hanger: Hanger = field(default_factory=lambda: Hanger(kind=WIRE.name))
    fixing: Fixing = field(default_factory=Fixing)
    image: str = ""
    image_missing: bool = False
    image_size: tuple[int, int] | None = None
    face: float | None = None
    mat: Sides | None = None
    glazing: str = ""
    worked_out: tuple[float, float] | None = None
    listed: tuple[float | None, float | None] = (None, None)
    lacking: tuple[str, ...] = ()

    @property
    def weight_is(self) -> str:
        return "unknown" if self.weight is None else "estimated" if self.estimated else "given"


class Height(Record, frozen=True, kw_only=True):
    """How high the group hangs: `by` is "centre", "top", "bottom", "above" or "above_nosings".  `feature` is only for
    "above"; a group around a feature has its height from that.  `of` is the frame that hangs so high, "" for all."""

    by: str
    at: float
    feature: str = ""
    of: str = ""


class Spot(Record, frozen=True, kw_only=True):
    """Where a placed frame goes: a point of it ("centre", "top_left", …) from centre line and level line (mm)."""

    point: str
    x: float
    y: float


class Group(Record, frozen=True, kw_only=True):
    """All frames that hang as one piece, and how they sit to each other.

    `rows` holds frame ids: rows from the top, or columns from the left, or the single row or column; around a feature
    those on its left and right from the top, above and below it from the left, in the order of `SIDES`.
    `slope` is that of the line that a group on stairs climbs along, `around` the feature with frames about it, which
    are `gap_around` away.  `centre_on` is "wall", the name of a feature, or a distance from the wall's left end;
    `anchor` is the frame whose middle goes there, "" for the middle of the group.
    `wishes` and `seed` are for an arrangement that is found ("salon"): another seed may find another one.
    """

    arrangement: str
    rows: tuple[tuple[str, ...], ...]
    gap_across: float
    gap_down: float
    align: str = "centre"
    set: str = "centre"
    spots: tuple[tuple[str, Spot], ...] = ()
    wishes: Wishes | None = None
    seed: int = 0
    centre_on: str | float = "wall"
    anchor: str = ""
    height: Height
    slope: float = 0.0
    around: Feature | None = None
    gap_around: float = 0.0


class Paper(Record, frozen=True, kw_only=True):
    """What the template is printed on; `margin` (top, right, bottom, left) is what the printer cannot reach.

    `kind` is "sheets", "roll" (cut to the length needed, `height` at most), or "one piece"; of the last two `first` is
    the paper of the first pages.  `trim` is "cut" or "none": sheets laid over each other whole.  `photo`: with tags.
    """

    name: str
    width: float
    height: float
    margin: Sides
    overlap: float
    cover: str
    font: str = ""
    kind: str = "sheets"
    trim: str = "cut"
    first: Paper | None = None
    photo: bool = False


class Job(Record, frozen=True, kw_only=True):
    """All there is to know before anything is computed; `sources` are the files it was read from, `named` its
    spreadsheets as the job file names them, `moved_to` is that of the wall where it is another.  `written`: lengths
    with their own unit, by place; `confirmed`: doubts settled."""

    title: str
    client: str
    unit: str
    date: str
    language: str
    wall: Wall
    group: Group
    frames: tuple[Frame, ...]
    paper: Paper
    accuracy: Accuracy = field(default_factory=Accuracy)
    sources: tuple[tuple[str, bytes], ...] = ()
    named: tuple[str, ...] = ()
    moved_to: str = ""
    written: tuple[tuple[str, str], ...] = ()
    confirmed: tuple[str, ...] = ()
