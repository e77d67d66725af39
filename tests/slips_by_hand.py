"""Slips as people tell of them, one by one, put into the samples: what is made from the fields is beside this.

They were written after the doubts, and nothing was changed before their share was measured: 123 of 132.
"""

from __future__ import annotations

from collections.abc import Callable

from tests.slips import Raw, Slip, all_of, set_to, swapped


def copied(path: str, at: int, to: str) -> Callable[[Raw], None]:
    """A line copied, with another id and nothing else changed."""

    def put(raw: Raw) -> None:
        lines = raw["frame"] if path == "frame" else raw["wall"]["feature"]
        line = dict(lines[at])
        if path == "frame":
            line["id"] = to
            raw["group"].setdefault("order", None)
            raw["group"].pop("order")
            rows = raw["group"].get("rows") or raw["group"].get("columns")
            if rows:
                rows[-1].append(to)
        lines.append(line)

    return put


def without(path: str) -> Callable[[Raw], None]:
    """A value forgotten."""

    def put(raw: Raw) -> None:
        *steps, last = path.split(".")
        place = raw
        for step in steps:
            place = place[int(step)] if isinstance(place, list) else place[step]
        del place[last]

    return put


INCHES = ((19.75, 15.75), (11.75, 11.75), (11.75, 15.25))

_SET: list[tuple[str, str, str, object]] = [  # words, base, field, what is typed
    # another unit
    ("frame's width in cm", "fern-prints", "frame.1.width", "41.3"),
    ("drop in cm", "fern-prints", "frame.0.drop", "7.9"),
    ("drop in mm", "fern-prints", "frame.2.drop", "76"),
    ("ring inset in cm", "fern-prints", "frame.1.hanger.left", "3.8"),
    ("one ring's drop in cm", "fern-prints", "frame.1.hanger.drop_left", "10.8"),
    ("wall's height in cm", "fern-prints", "wall.height", "244"),
    ("wall's width in cm", "lock-keepers", "wall.width", "427"),
    ("wall's height in feet", "nine", "wall.height", "8"),
    ("wall's width in m", "alphabet-column", "wall.width", "2.6"),
    ("height of the top in inches", "alphabet-column", "group.height.top", 79),
    ("height of the middle in cm", "loom-drawings", "group.height.centre", "140"),
    ("height of the middle in inches", "tile-rubbings", "group.height.centre", 59),
    ("gap in inches", "kiln-tiles", "group.gap", 2.4),
    ("gap in cm", "tile-rubbings", "group.gap", 5),
    ("room above the shelf in inches", "tram-tickets", "group.height.by", 7),
    ("drop in inches", "tram-tickets", "frame.0.drop", "3.7"),
    ("drop in mm", "tram-tickets", "frame.1.drop", "61"),
    ("drop in cm", "paste-papers", "frame.4.drop", 6.6),
    ("run of a step in cm", "lock-keepers", "wall.stairs.run", "25"),
    ("height above the nosings in cm", "lock-keepers", "group.height.above_nosings", "147"),
    ("apart in cm", "loom-drawings", "frame.0.hanger.apart", "25.4"),
    ("ring separation in cm", "loom-drawings", "frame.0.hanger.ring_separation", "66"),
    ("ring depth in cm", "loom-drawings", "frame.0.hanger.ring_depth", "19"),
    ("hook's seat in mm", "loom-drawings", "frame.0.fixing.below", "25"),
    ("board in mm", "fern-prints", "wall.board", "12.5"),
    ("board in feet and inches mixed up", "fern-prints", "wall.board", "12"),
    ("stud spacing in cm", "fern-prints", "wall.studs", {"first": "11 1/4", "spacing": "40"}),
    ("nail's length in mm", "fern-prints", "fixing.length", "32"),
    ("nail of 18 mm", "fern-prints", "fixing.diameter", "18 mm"),
    ("nail without its unit", "fern-prints", "fixing.diameter", "1.8"),
    ("screw of 40 mm", "alphabet-column", "frame_type.print.fixing.diameter", "40 mm"),
    ("weight in g", "seed-drawers", "frame.2.weight", "7.5 g"),
    ("weight ten times too much", "fern-prints", "frame_type.tall.weight", "26 lb"),
    ("weight nothing", "fern-prints", "frame.1.weight", "0 lb"),
    ("weight in oz", "fern-prints", "frame_type.tall.weight", "2.6 oz"),
    ("sofa's width in cm", "nine", "wall.feature.0.width", "213"),
    ("door's height in inches", "alphabet-column", "wall.feature.0.height", 81),
    ("bench's height in cm", "fern-prints", "wall.feature.0.height", "71"),
    ("switch's height above the floor in cm", "fern-prints", "wall.feature.1.bottom", "114"),
    ("outlet's height in cm", "tile-rubbings", "wall.feature.1.height", 9),
    ("margin in cm", "fern-prints", "paper.margin", "7"),
    # points, spaces, figures
    ("drop without its space", "fern-prints", "frame.2.drop", "31/8"),
    ("drop without its fraction bar", "fern-prints", "frame.0.drop", "3 18"),
    ("drop 13 for 3", "fern-prints", "frame.2.drop", "13"),
    ("drop 0.7 for 7.0", "tram-tickets", "frame.2.drop", "0.7"),
    ("drop 77 for 7.7", "tram-tickets", "frame.2.drop", "77"),
    ("width 143/8", "lock-keepers", "frame_type.portrait.width", "111/4"),
    ("width 34.0 for 340", "tile-rubbings", "frame_type.tile.width", 32),
    ("height with a figure too many", "tile-rubbings", "frame_type.tile.height", 3200),
    ("gap with a figure too few", "paste-papers", "group.gap", 5),
    ("gap 25 for 2.5", "fern-prints", "group.gap", "25"),
    ("height 14 for 140", "kiln-tiles", "wall.feature.0.bottom", 950),
    ("sawtooth's drop 21 for 2.1", "kiln-tiles", "frame.0.drop", "21"),
    # from the wrong reference
    ("drop from the lower edge", "fern-prints", "frame.0.drop", "11 1/8"),
    ("drop from the lower edge", "seed-drawers", "frame.0.drop", 238),
    ("drop to the slack wire", "fern-prints", "frame.2.drop", "4 3/4"),
    ("drop to the slack wire", "paste-papers", "frame.2.drop", 110),
    ("drop to the slack wire", "lock-keepers", "frame.2.drop", "5 1/4"),
    ("ring's drop from the lower edge", "fern-prints", "frame.1.hanger.drop_right", "16 1/16"),
    ("right ring from the left", "fern-prints", "frame.1.hanger.right", "14 3/4"),
    ("right ring from the left", "paste-papers", "frame.0.hanger.right", 440),
    ("right keyhole from the middle", "alphabet-column", "frame_type.print.hanger.right", 10),
    ("height of the middle from the ceiling", "loom-drawings", "group.height.centre", "53"),
    ("height of the top from the ceiling", "alphabet-column", "group.height.top", 50),
    ("sofa from the other end, and cut", "nine", "wall.feature.0.left", "142"),
    ("outlet beyond the wall", "fern-prints", "wall.feature.2.left", "193"),
    ("switch beyond the wall", "tile-rubbings", "wall.feature.0.left", 3300),
    ("window's top for its height", "kiln-tiles", "wall.feature.0.height", 195),
    ("furniture of no height", "tram-tickets", "wall.feature.0.height", 0),
    ("furniture of no width", "fern-prints", "wall.feature.0.width", "0"),
    ("bench's left to its middle", "fern-prints", "wall.feature.0.left", "75"),
    ("bench from the other end of another wall", "fern-prints", "wall.feature.0.left", "100"),
    ("stud beyond the wall", "fern-prints", "wall.studs.first", "158"),
    ("shelf's left to its right end", "tram-tickets", "wall.feature.0.left", "2.7 m"),
    ("nosing's height for a tread's", "lock-keepers", "wall.stairs.nosing", ["7 1/2", "20"]),
    ("rings nearly in one place", "paste-papers", "frame.0.hanger", {
        "kind": "rings", "left": 249, "right": 248, "drop_left": 120, "drop_right": 120}),
    ("two fixings 3 mm apart", "loom-drawings", "frame.0.hanger.apart", "1/8"),
    # the wrong choice
    ("sawtooth for wire", "fern-prints", "frame.2.hanger", "sawtooth"),
    ("wire for sawtooth", "kiln-tiles", "frame_type.tile.hanger", "wire"),
    ("wire for sawtooth", "tile-rubbings", "frame_type.tile.hanger", "wire"),
    ("nail for hook", "loom-drawings", "frame.0.fixing.kind", "nail"),
    ("nail for hook", "fern-prints", "frame.1.fixing.kind", "nail"),
    ("stair the other way", "lock-keepers", "wall.stairs.up", "left"),
    ("unit cm for in", "fern-prints", "job.unit", "cm"),
    ("unit mm for cm", "kiln-tiles", "job.unit", "mm"),
    ("unit in for cm", "alphabet-column", "job.unit", "in"),
    ("unit cm for mm", "tile-rubbings", "job.unit", "cm"),
    ("masonry with studs", "fern-prints", "wall.build", "masonry"),
    ("built in the future", "fern-prints", "wall.built", 2062),
    ("hook's angle from the wall", "fern-prints", "frame.1.fixing.angle", 75),
    ("rating in g", "loom-drawings", "frame.0.fixing.rating", "30 g"),
    ("nails of all hooks", "fern-prints", "frame.1.fixing.nails", 12),
    # unlike each other
    ("rings an inch apart in height", "fern-prints", "frame.1.hanger.drop_right", "5 1/4"),
    ("twins an inch apart", "fern-prints", "frame.2.drop", "4 1/4"),
    ("twins an inch apart", "seed-drawers", "frame.3.drop", 93),
    ("twins' weights, kg and lb", "bakery", "frame.3.weight", "3.6 kg"),
    ("a drop in another's field", "fern-prints", "frame.0.width", "3 1/8"),
    ("a width in the field of the drop", "lock-keepers", "frame.1.drop", "11 1/4"),
    ("a gap in the field of the height", "fern-prints", "group.height.by", "2 1/2"),
    ("depth in the field of the height", "settee", "frame.0.height", "1 1/4"),
]  # fmt: skip

_PUT: list[tuple[str, str, Callable[[Raw], None]]] = [
    ("wall's sides swapped", "loom-drawings", swapped("wall.width", "wall.height")),
    ("wall's sides swapped", "tram-tickets", swapped("wall.width", "wall.height")),
    ("wall's sides swapped", "kiln-tiles", swapped("wall.width", "wall.height")),
    ("wall's sides swapped", "tile-rubbings", swapped("wall.width", "wall.height")),
    ("frame's sides swapped", "fern-prints", swapped("frame.1.width", "frame.1.height")),
    ("frame type's sides swapped", "fern-prints", swapped("frame_type.tall.width", "frame_type.tall.height")),
    ("frame's sides swapped", "settee", swapped("frame.2.width", "frame.2.height")),
    ("frame's sides swapped", "mill", swapped("frame.2.width", "frame.2.height")),
    ("frame's sides swapped", "loom-drawings", swapped("frame.0.width", "frame.0.height")),
    ("frame's sides swapped", "tram-tickets", swapped("frame.2.width", "frame.2.height")),
    ("feature's sides swapped", "alphabet-column", swapped("wall.feature.0.width", "wall.feature.0.height")),
    ("sofa's sides swapped", "settee", swapped("wall.feature.0.width", "wall.feature.0.height")),
    ("switch's left and bottom swapped", "fern-prints", swapped("wall.feature.1.left", "wall.feature.1.bottom")),
    ("run and rise swapped", "lock-keepers", swapped("wall.stairs.run", "wall.stairs.rise")),
    ("ring's inset and drop swapped", "fern-prints", swapped("frame.1.hanger.left", "frame.1.hanger.drop_left")),
    ("ring's inset and drop swapped", "paste-papers", swapped("frame.0.hanger.right", "frame.0.hanger.drop_right")),
    ("seen from the front", "settee", all_of(
        set_to("frame.0.hanger.left", "2 1/2"), set_to("frame.0.hanger.seen_from", "front"))),
    ("drops of two frames swapped", "settee", swapped("frame.1.drop", "frame.7.drop")),
    ("drop and gap swapped", "seed-drawers", swapped("frame.0.drop", "group.gap_down")),
    ("frame's width and the wall's swapped", "tram-tickets", swapped("frame.0.width", "wall.feature.0.height")),
    ("a frame copied, its drop not measured", "seed-drawers", copied("frame", 0, "pods")),
    ("a frame copied, its drop not measured", "fern-prints", copied("frame", 0, "F")),
    ("a feature copied", "fern-prints", copied("feature", 1, "")),
    ("a feature's width forgotten", "fern-prints", without("wall.feature.1.width")),
    ("the frame's height forgotten", "tram-tickets", without("frame.1.height")),
    ("the seat of a hook forgotten", "loom-drawings", without("frame.0.fixing.below")),
    ("from where rings were seen forgotten", "fern-prints", without("frame.1.hanger.seen_from")),
    ("all frames in cm", "lock-keepers", all_of(
        set_to("frame_type.portrait.width", "28.6"), set_to("frame_type.portrait.height", "36.2"),
        set_to("frame.2.width", "41.9"), set_to("frame.2.height", "33"))),
    ("all frames in inches", "tram-tickets", all_of(
        *(set_to(f"frame.{at}.{side}", number) for at, sides in enumerate(INCHES)
          for side, number in zip(("width", "height"), sides, strict=True)))),
    ("all of a frame in cm", "settee", all_of(
        set_to("frame.1.width", "40.6"), set_to("frame.1.height", "50.8"), set_to("frame.1.drop", "7.9"))),
    ("all of a frame in inches", "kiln-tiles", all_of(
        set_to("frame.5.width", 19.7), set_to("frame.5.height", 15.7), set_to("frame.5.drop", 2.5))),
    ("a frame in inches", "paste-papers", all_of(set_to("frame.3.width", 11.8), set_to("frame.3.height", 15.7))),
]  # fmt: skip

SLIPS = [
    *(Slip(words, "settee" if base == "nine" else base, set_to(path, typed)) for words, base, path, typed in _SET),
    *(Slip(words, base, put) for words, base, put in _PUT),
]
