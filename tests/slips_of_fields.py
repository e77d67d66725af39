"""Slips made from the fields: every length of a few jobs in another unit, with its point or its space lost."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.base.units import MM, parse_length
from tests.slips import Slip, all_of, get, set_to, tables

FIELDS = {  # the lengths that reach the paper or what is said of fixings, job by job
    "settee": (
        "wall.width wall.height wall.board wall.studs.spacing wall.feature.0.width wall.feature.0.height "
        "wall.feature.0.left wall.feature.1.bottom wall.feature.1.width wall.feature.1.height wall.feature.2.height "
        "group.gap group.height.by frame.0.width frame.0.height frame.0.hanger.left frame.0.hanger.drop_left "
        "frame.1.width frame.1.height frame.1.drop frame.3.width frame.3.drop frame.7.drop fixing.below fixing.length"
    ),
    "stair": (
        "wall.height wall.stairs.run wall.stairs.rise group.gap group.height.above_nosings frame.0.width "
        "frame.0.height frame.0.drop frame.3.drop frame.3.hanger.ring_separation frame.3.hanger.ring_depth"
    ),
    "mill": (
        "wall.width wall.height wall.feature.0.width wall.feature.0.height wall.feature.1.left wall.feature.1.width "
        "wall.feature.1.height group.gap group.height.by frame.0.width frame.1.height frame.0.hanger.left "
        "frame.1.hanger.right frame.2.hanger.drop_left frame.0.fixing.diameter frame.0.fixing.length"
    ),
    "bakery": (
        "wall.width wall.height wall.board wall.studs.spacing wall.feature.0.bottom wall.feature.0.width group.gap "
        "group.height.centre frame_type.loaf.width frame_type.loaf.height frame.1.drop fixing.below fixing.length"
    ),
}  # fmt: skip
SIZES = {
    "settee": [f"frame.{at}" for at in (0, 1, 3, 6)],
    "stair": [f"frame.{at}" for at in (0, 3)],
    "mill": [f"frame.{at}" for at in (0, 2)],
    "bakery": ["frame_type.loaf"],
}
OTHER = {"in": ("cm",), "cm": ("in", "mm"), "mm": ("cm", "in")}
"""What a length is typed in where the job has another unit: metric people forget inches, and the other way round."""


def typed(mm: float, unit: str) -> str:
    """A length as someone measures it in this unit, without the unit."""
    number = mm / MM[unit]
    return f"{round(number * 4) / 4:g}" if unit == "in" else f"{round(number, 1 if unit == 'cm' else 0):g}"


def field_slips() -> Iterator[Slip]:
    """All of them."""
    for base, fields in FIELDS.items():
        raw = tables(base)
        unit = raw["job"]["unit"]
        for path in fields.split():
            value = get(raw, path)
            mm = parse_length(value, unit)
            for other in OTHER[unit]:
                slip = typed(mm, other)
                if float(slip) and abs(float(slip) * MM[unit] - mm) > 1.0:
                    yield Slip(f"{path} in {other}: {slip}", base, set_to(path, slip))
            yield from _misplaced(base, path, value, unit)
        for path in SIZES[base]:
            yield from _both_sides(base, path, unit)


def _misplaced(base: str, path: str, value: object, unit: str) -> Iterator[Slip]:
    text = str(value)
    if " " in text and "/" in text:
        lost = text.replace(" ", "")
        yield Slip(f"{path} without its space: {lost}", base, set_to(path, lost))
        return
    mm = parse_length(value, unit)
    for times, words in ((10.0, "ten times too much"), (0.1, "a tenth")):
        number = f"{mm * times / MM[unit]:g}"
        yield Slip(f"{path} {words}: {number}", base, set_to(path, number))


def _both_sides(base: str, path: str, unit: str) -> Iterator[Slip]:
    raw = tables(base)
    sides = [f"{path}.{side}" for side in ("width", "height")]
    for other in OTHER[unit]:
        puts = [set_to(side, typed(parse_length(get(raw, side), unit), other)) for side in sides]
        yield Slip(f"{path} both sides in {other}", base, all_of(*puts))
