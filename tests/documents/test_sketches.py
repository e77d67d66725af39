"""The small drawings of the hanging day: stroke by stroke as they were last looked at."""

from __future__ import annotations

import re
import zlib
from collections.abc import Callable
from typing import Any

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.documents.instructions.sketches import DASHES, GREYS, WIDTHS, Sketch, hung_in_order, sketch, sketches
from templates_gen.drawing.items import Circle, Item, Line, Polygon, Text
from tests.jobs import frame, group, job

AT = Rect(0.0, 0.0, 60.0, 40.0)  # the field that they are thought in, so that the numbers are those of the code


def drawn(draw: Callable[[Sketch], Any]) -> list[Item]:
    pen = Sketch(AT)
    draw(pen)
    return pen.items


def in_order(pen: Sketch) -> None:
    frames = [frame("a", 300, 400), frame("b", 500, 200), frame("c", 15, 400)]
    plan = plan_wall(job(*frames, group=group((("a", "b", "c"),))))
    hung_in_order(pen, plan.frames, plan.group)


SEEN = {
    "slits": 3890627513,
    "pencil-cross": 1835195354,
    "paper-up": 2766857359,
    "pencil-lines": 1844858785,
    "piece-placed": 240335527,
    "drop-mark": 3995264869,
    "nail-home": 3618407502,
    "paper-off": 1319245304,
    "levelled": 3218123938,
    "stepped-back": 473113614,
    "cross-over-stair-to-the-right": 1285712264,
    "cross-over-stair-to-the-left": 3350939940,
    "pitch-checked-to-the-right": 2135212563,
    "pitch-checked-to-the-left": 1161488012,
}


def written(item: Item) -> str:
    """An item in tenths of a micron: what is drawn, whichever machine rounds the last digits."""
    values = [getattr(item, name) for name in item.__struct_fields__]
    return f"{type(item).__name__} {[_rounded(value) for value in values]}"


def _rounded(value: Any) -> Any:
    if isinstance(value, float):
        return round(value, 4) + 0.0
    return [_rounded(one) for one in value] if isinstance(value, tuple) else value


def crc(items: list[Item]) -> int:
    return zlib.crc32("\n".join(map(written, items)).encode())


@pytest.mark.parametrize("name", SEEN)
def test_a_sketch_is_as_it_was_last_looked_at(name: str) -> None:
    """Whoever changes a drawing looks at it on a page (`python -m tests.pictures`), and writes its number here."""
    assert crc(drawn(sketch(name))) == SEEN[name]


def test_the_group_is_drawn_as_it_was_last_looked_at() -> None:
    assert crc(drawn(in_order)) == 3364317631


def test_every_drawing_is_looked_at_or_is_a_part_of_one() -> None:
    parts = {stroke.split()[1] for strokes in sketches().values() for stroke in strokes if stroke[:3] in ("use", "mir")}
    assert {*SEEN} <= {*sketches()} == {*SEEN} | parts


def test_every_word_of_the_drawings_is_one_that_is_read() -> None:
    """Whatever is not known draws nothing, or draws as if it were not there."""
    styles = {"line": {*WIDTHS, *DASHES}, "shape": {*WIDTHS, *GREYS}, "box": {*WIDTHS, *GREYS}, "arrow": set()}
    styles |= {"measure": set(), "toothed": set()}
    for stroke in (stroke for strokes in sketches().values() for stroke in strokes):
        kind, *words = stroke.split()
        plain = [word for word in words if not POINT.fullmatch(word) and word != "/"]
        if kind in styles:
            assert {*plain} <= styles[kind], stroke
        else:
            *width, only = plain
            assert {*width} <= ({*WIDTHS} if kind == "circle" else set()), stroke
            assert float(only) > 0 if kind == "circle" else kind in ("use", "mirrored") and only in sketches(), stroke


POINT = re.compile(r"-?[\d.]+,-?[\d.]+")


def test_a_stair_that_climbs_to_the_left_is_the_other_way_round() -> None:
    """All but the distance of the cross from the wall's left end, the last three lines, and strokes the other way."""
    for name in ("cross-over-stair", "pitch-checked"):
        right, left = (
            [item for item in drawn(sketch(f"{name}-to-the-{way}")) if isinstance(item, Line)][:-3]
            for way in ("right", "left")
        )
        for one, two in zip(left, right, strict=True):
            ends = [(60.0 - one.x0, one.y0), (60.0 - one.x1, one.y1)]
            wanted = [(two.x0, two.y0), (two.x1, two.y1)]
            assert sorted(ends) == [pytest.approx(end) for end in sorted(wanted)]


def test_arrows_end_in_a_head_whose_point_is_the_end() -> None:
    pen = Sketch(AT)
    pen.arrow((10.0, 10.0), (40.0, 30.0))
    line, head = pen.items
    assert isinstance(line, Line) and isinstance(head, Polygon)
    assert head.points[0] == (line.x1, line.y1) == (40.0, 30.0)
    # 2.6 long, 2 wide: our own design, no source
    (ax, ay), (bx, by) = head.points[1:]
    assert ((ax + bx) / 2 - 40.0, (ay + by) / 2 - 30.0) == pytest.approx((-2.6 * 30 / 1300**0.5, -2.6 * 20 / 1300**0.5))
    assert ((ax - bx) ** 2 + (ay - by) ** 2) ** 0.5 == pytest.approx(2.0)


def is_diamond(item: Polygon) -> bool:
    """Four corners, straight over and beside its middle."""
    return len(item.points) == 4 and item.points[0][0] == item.points[2][0] and item.points[1][1] == item.points[3][1]


def test_what_has_to_meet_in_a_sketch_meets() -> None:
    """The knife's point and the slit, the target and both lines, the level and the line that it stands on."""
    cut, toothed = [item for item in drawn(sketch("slits")) if isinstance(item, Line)][-2:]
    (blade,) = [item for item in drawn(sketch("slits")) if isinstance(item, Polygon) and item.points[0] == (26.0, 15.0)
                and item.filled]  # fmt: skip
    assert (cut.x1, cut.y1) == (toothed.x0, toothed.y0) == blade.points[0]
    upright, level = [item for item in drawn(sketch("paper-up")) if isinstance(item, Line)][:2]
    (bubble,) = [item for item in drawn(sketch("paper-up")) if isinstance(item, Circle)]
    (window,) = [item for item in drawn(sketch("paper-up")) if isinstance(item, Polygon) and is_diamond(item)][:1]
    assert [sum(at) / 4 for at in zip(*window.points, strict=True)] == pytest.approx([upright.x0, level.y0])
    assert bubble.y - 1.8 == pytest.approx(level.y0 + 0.2)  # it stands on the line's ink
    numbers = [item.text for item in drawn(in_order) if isinstance(item, Text)]
    assert numbers == ["1", "2"]  # the third frame is too narrow for one
