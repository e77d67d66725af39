"""Where on the wall a group hangs: about which upright, how high, around what, along which slope."""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.base.errors import InputError, did_you_mean
from templates_gen.base.toml import toml
from templates_gen.base.units import INCH
from templates_gen.job.model import Feature, Height, Wall
from templates_gen.job.reading.typed import read_length
from templates_gen.job.tables.group import CentreTable, GroupTable

DEFAULT_CENTRE = 57 * INCH
"""mm.  57 in from the floor, or a stair's nosings, to the middle of a picture, as many museums hang.  Common practice,
not a standard."""


def centre_of(table: GroupTable, ids: Sequence[str], wall: Wall, unit: str) -> tuple[str | float, str]:
    """What the group is centred on: "wall", a feature's name, or a distance from the left end (mm); and the frame whose
    middle goes there, "" for the group's own.

    Raises InputError.
    """
    value, where = table.centre_on, "group, centre_on"
    if table.arrangement == "around":
        if value not in ("wall", table.around):  # "wall" is what it is when it is not given
            found = "a table in { }" if isinstance(value, CentreTable) else repr(value)
            raise InputError(where, f"found {found}, expected the feature that the frames hang around, or nothing")
        return table.around or "", ""
    if isinstance(value, CentreTable):
        frame = known_frame(value.frame, ids, "group, centre_on, frame") if value.frame else ""
        return _over(value.over, (), wall, unit, "group, centre_on, over"), frame
    if isinstance(value, str) and value != "wall" and value in ids:
        _only_a_frame(value, wall, unit, where)
        return "wall", value
    return _over(value, ids, wall, unit, where), ""


def _over(value: str | float, ids: Sequence[str], wall: Wall, unit: str, where: str) -> str | float:
    """The middle of the wall or of a feature, or a distance; `ids` may have been meant, too.  Raises InputError."""
    if value == "wall":
        return "wall"
    if isinstance(value, str) and is_name(value, wall):
        expected = f"'wall', the name of a feature, {'a frame, ' if ids else ''}or a distance"
        return _feature(value, wall.features, where, expected, ["wall", *ids]).name
    try:
        return read_length(value, unit, where)
    except InputError as error:  # a slip in a name that begins with a figure, such as "2nd shelf", is no length
        names = ["wall", *(feature.name for feature in wall.features), *ids]
        if isinstance(value, str) and (near := did_you_mean(value, names)):
            raise InputError(where, f"found {value!r}, expected a name or a distance", near) from error
        raise


def _only_a_frame(value: str, wall: Wall, unit: str, where: str) -> None:
    """Raises InputError for the id of a frame that may be meant for something else."""
    cure = f"for the frame write  {{ frame = {toml(value)} }}, for the other  {{ over = {toml(value)} }}"
    if any(feature.name == value for feature in wall.features):
        raise InputError(where, f"found {value!r}, which is a frame and a feature", cure)
    try:
        read_length(value, unit, where)
    except InputError:
        return
    raise InputError(where, f"found {value!r}, which is a frame and a distance", cure)


def known_frame(name: str, ids: Sequence[str], where: str) -> str:
    """The name of a frame of this job.  Raises InputError for any other."""
    if name not in ids:
        raise InputError(where, f"found {name!r}, which is not a frame of this job", did_you_mean(name, ids))
    return name


def is_name(value: str, wall: Wall) -> bool:
    """True where this is the wall or a feature, or is meant for one, and no distance."""
    names = ["wall", *(feature.name for feature in wall.features)]
    return value in names or value[:1].isalpha() or not any(map(str.isnumeric, value))


def height_of(group: GroupTable, ids: Sequence[str], wall: Wall) -> Height:
    """How high the group hangs.  Raises InputError for a way that does not go with its arrangement."""
    table, kind, where = group.height, group.arrangement, "group, height"
    if kind == "around":
        if table is not None:
            raise InputError(where, "does not belong to arrangement 'around'", "the feature says how high")
        return Height(by="around", at=0.0)
    fitting, wanted, example = _ON_STAIRS if kind == "stairs" else _ON_WALLS
    if table is None:
        return Height(by=fitting[0], at=DEFAULT_CENTRE)
    ways = [name for name in table.given if name not in _BESIDE]
    if len(ways) != 1 or ways[0] not in fitting or (table.by is not None) != (ways == ["above"]):
        raise InputError(where, f"found {', '.join(ways) or 'nothing'}, expected {wanted}", f"for example  {example}")
    of = _frame_so_high(table.of, kind, ids, "group, height, of")
    if table.above is None:
        return Height(by=ways[0], at=getattr(table, ways[0]), of=of)
    feature = _feature(table.above, wall.features, "group, height, above")
    return Height(by="above", at=table.by or 0.0, feature=feature.name, of=of)


def _frame_so_high(name: str | None, kind: str, ids: Sequence[str], where: str) -> str:
    """The frame that a height is for, "" for none.  Raises InputError."""
    if name is None:
        return ""
    if kind == "stairs":
        raise InputError(where, "does not belong to arrangement 'stairs'", "every frame climbs with the pitch line")
    return known_frame(name, ids, where)


_BESIDE = ("by", "of")
"""Fields of a height that say more of one of the ways."""

_ON_WALLS = (
    ("centre", "top", "bottom", "above"),
    "one of centre, top, bottom, or above with by",
    '{ centre = "57 in" }  or  { above = "bench", by = "8 in" }',
)
_ON_STAIRS = (("above_nosings",), "above_nosings", '{ above_nosings = "57 in" }, straight up from the nosings')
"""The ways to say how high, the same in words, and an example."""


def feature_around(table: GroupTable, wall: Wall) -> Feature | None:
    """The feature that the frames hang around, where they do.  Raises InputError."""
    if table.arrangement != "around":
        return None
    if table.around is None:
        raise InputError("group", "the field 'around' is missing, expected the name of a feature")
    return _feature(table.around, wall.features, "group, around")


def gap_around(table: GroupTable, gap: float) -> float:
    """How far from the feature its frames hang (mm): the group's gap where nothing else is given; 0 for no feature."""
    if table.arrangement != "around":
        return 0.0
    return gap if table.gap_around is None else table.gap_around


def slope_of(table: GroupTable, wall: Wall) -> float:
    """The slope of the stair that the frames climb with, 0 for none.  Raises InputError."""
    if table.arrangement != "stairs":
        return 0.0
    if wall.stairs is None:
        raise InputError(
            "group, arrangement", "found 'stairs' on a wall that has none, expected  stairs  under [wall]",
            'for example  stairs = { run = "10 in", rise = "7 1/2 in", up = "right", nosing = ["20 in", "7 1/2 in"] }',
        )  # fmt: skip
    return wall.stairs.slope


def _feature(
    name: str,
    features: Sequence[Feature],
    where: str,
    expected: str = "the name of a feature",
    also: Sequence[str] = (),
) -> Feature:
    """The one feature of this name; `also` are other words that may stand in its place."""
    found = [feature for feature in features if feature.name == name]
    if len(found) > 1:
        raise InputError(where, f"found {name!r}, which is {len(found)} features", "give each a name of its own")
    if not found:
        names = [feature.name for feature in features]
        hint = did_you_mean(name, [*also, *names], f"features: {', '.join(filter(None, names)) or 'none'}")
        raise InputError(where, f"found {name!r}, expected {expected}", hint)
    return found[0]
