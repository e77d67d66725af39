"""What a frame weighs, estimated from what it is made of.  Sizes in mm, weights in kg.

An estimate leaves out the print, the hanger and the fittings; it is shown as an estimate wherever it is shown.
"""

from __future__ import annotations

from templates_gen.base.geometry import Size
from templates_gen.base.record import Record
from templates_gen.base.units import INCH, METRE, show_mass_both
from templates_gen.job.frame_sizes import Mat, Moulding, contents_within, window_size
from templates_gen.job.model import Frame

GLAZINGS = {"glass": 2500.0, "acrylic": 1190.0}
"""kg/m³.  Float glass: EN 572-1, as others quote it; acrylic sheet: 1170 to 1200 in makers' data sheets."""

BACKINGS = {"foam board": 120.0, "mat board": 680.0, "hardboard": 950.0, "mdf": 720.0}
"""kg/m³, all from memory: foam board 0.6 kg/m² at 5 mm; mat board as `MAT`; hardboard 900 to 1000; MDF 600 to 800."""

MAT, MAT_THICKNESS = 0.95, 1.4
"""kg/m² and mm of 4-ply mat board: 0.84 to 1.05 from memory; 1.3 to 1.5 mm (Saitzyk, 1987), 1.4 mm in the UK trade."""

USUAL = {"glass": 2.0, "acrylic": 2.0, "foam board": 5.0, "mat board": MAT_THICKNESS, "hardboard": 3.0, "mdf": 3.0}
"""mm, where no thickness is given.  Common practice, no source."""

WOODS = {
    "alder": 0.41, "ash": 0.60, "aspen": 0.38, "basswood": 0.37, "birch": 0.62, "cherry": 0.50, "douglas fir": 0.48,
    "hemlock": 0.45, "red maple": 0.54, "spruce": 0.35,
    "pine": 0.40, "oak": 0.63, "poplar": 0.42, "sugar maple": 0.63, "walnut": 0.55,
}  # fmt: skip
"""Specific gravity, oven-dry mass by volume at 12 % moisture: USDA Forest Service, Forest Inventory and Analysis
database, table REF_SPECIES, column WOOD_SPGR_MC12VOL_DRYWT, as a public copy has it.  Of red alder, white ash, quaking
aspen, American basswood, yellow birch, black cherry, Douglas-fir, western hemlock, red maple, Engelmann spruce,
ponderosa pine, northern red oak, yellow-poplar, sugar maple and black walnut; other trees of these names differ."""

MOIST = 1.12
"""Wood at 12 % moisture weighs so many times its oven-dry mass, of which moisture is counted in parts."""

WATER = 1000.0
"""kg/m³, which specific gravity is told against."""

RABBET_SPARE = INCH / 8
"""mm that a rabbet is deeper than its contents are thick: about 1/8 in, common practice of framers."""


class Sheet(Record, frozen=True):
    """A flat part that fills the frame: what it is of ("none" for nothing), and its thickness in mm."""

    kind: str
    thickness: float


class Parts(Record, frozen=True, kw_only=True):
    """What a frame is made of; None where the file does not say.  No mat given is no mat."""

    printed: Size | None = None
    mat: Mat | None = None
    moulding: Moulding | None = None
    glazing: Sheet | None = None
    backing: Sheet | None = None


class Estimate(Record, frozen=True):
    """A frame's weight in kg, or None and the names of the fields it would also need."""

    weight: float | None
    lacking: tuple[str, ...] = ()


def sheet_weight(sheet: Sheet, size: Size) -> float:
    """The kg of glazing or backing of this size."""
    density = (GLAZINGS | BACKINGS).get(sheet.kind, 0.0)
    return _square_metres(size) * sheet.thickness / METRE * density


def mat_weight(mat: Mat, contents: Size) -> float:
    """The kg of a mat of 4-ply board in contents of this size, its window cut out."""
    return (_square_metres(contents) - _square_metres(window_size(contents, mat))) * MAT


def wood_density(wood: str) -> float:
    """kg/m³ of a wood as it is in a room, or of MDF."""
    return BACKINGS["mdf"] if wood == "mdf" else WOODS[wood] * MOIST * WATER


def moulding_weight(moulding: Moulding, outside: Size, depth: float, rabbet_depth: float) -> float:
    """The kg of four sticks: section, less the rabbet, by the length along their middles, by the wood's density."""
    section = moulding.face * depth - moulding.rabbet * min(rabbet_depth, depth)
    length = 2 * (outside[0] + outside[1]) - 4 * moulding.face
    return section * length * 1e-9 * wood_density(moulding.wood)


def estimate(parts: Parts, outside: Size, frame_depth: float | None) -> Estimate:
    """The weight of a frame with this outside, or what it lacks: a part left out would make it too light.

    The frame's depth stands in for its moulding's; a rabbet is taken to be a little deeper than its contents.
    """
    moulding, glazing, backing = parts.moulding, parts.glazing, parts.backing
    depth = (moulding.depth if moulding else None) or frame_depth
    if moulding is None or glazing is None or backing is None or not moulding.wood or depth is None:
        return Estimate(None, _lacking(parts, depth))
    contents = contents_within(outside, moulding)
    thick = glazing.thickness + backing.thickness + (MAT_THICKNESS if parts.mat else 0.0)
    rabbet_depth = thick + RABBET_SPARE if moulding.rabbet_depth is None else moulding.rabbet_depth
    mat = mat_weight(parts.mat, contents) if parts.mat else 0.0
    flat = sheet_weight(glazing, contents) + sheet_weight(backing, contents) + mat
    return Estimate(flat + moulding_weight(moulding, outside, depth, rabbet_depth))


def _lacking(parts: Parts, depth: float | None) -> tuple[str, ...]:
    """What is still to be given; nothing when nobody asked for an estimate."""
    moulding = parts.moulding
    if parts.glazing is None and parts.backing is None and not (moulding and moulding.wood):
        return ()
    wanted = {
        "glazing": parts.glazing is None,
        "backing": parts.backing is None,
        "moulding.face": moulding is None,
        "moulding.wood": moulding is None or not moulding.wood,
        "moulding.depth": depth is None,
    }
    return tuple(name for name, missing in wanted.items() if missing)


def weight_words(frame: Frame, unit: str) -> str:
    """The frame's weight as it is shown, in both systems, "est." before an estimate; "" when it is not known."""
    if frame.weight is None:
        return ""
    return f"{'est. ' if frame.estimated else ''}{show_mass_both(frame.weight, unit)}"


def _square_metres(size: Size) -> float:
    return size[0] * size[1] * 1e-6
