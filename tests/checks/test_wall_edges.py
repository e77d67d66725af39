"""Edges of the wall: how near frames come to them, and where the paper is told to be folded."""

import math

from hypothesis import assume, given
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.checks import find
from templates_gen.job.model import Wall
from templates_gen.job.stairs import Stairs
from templates_gen.tiling.long_lines import nosing_line
from tests.finding_cases_stairs import climbing, under_roof
from tests.jobs import Height, frame, group, job
from tests.made import Everything, make
from tests.pdf_reading import Segment
from tests.wall_reading import CLOSE, brought_back, distance, every, wide

WIDE = 0.35  # mm; line widths of ISO 128-2, from memory
DASH = (6.0, 3.0)  # mm; ISO 128-2 line type 02, dashed; its lengths are our own design
WIDE_WALL = 100_000.0  # mm; so that the roof alone is near


@given(
    st.floats(5.0, 70.0), st.floats(100.0, 2000.0), st.floats(100.0, 2000.0), st.floats(-500.0, 1500.0),
    st.floats(0.0, 1000.0),
)  # fmt: skip
def test_a_frame_is_as_near_to_a_sloping_roof_as_its_upper_corner_on_the_low_side(pitch, width, height, under, clear):
    """The roof climbs from (0, 50 m) to the right; a corner `under` it, straight down, is its cosine of that away."""
    slope = math.tan(math.radians(pitch))
    corner_x = WIDE_WALL / 2 - width / 2
    top = WIDE_WALL / 2 + slope * corner_x - under
    right = WIDE_WALL / 2 + slope * WIDE_WALL
    outline = ((0.0, 0.0), (WIDE_WALL, 0.0), (WIDE_WALL, right), (0.0, WIDE_WALL / 2))
    wall = Wall(name="", width=WIDE_WALL, height=right, outline=outline, clear=clear)
    away = under * math.cos(math.radians(pitch))
    assume(abs(away) > 1e-4 and abs(away - clear) > 1e-4)
    asked = group((("A",),), height=Height(by="top", at=top))
    rules = {found.rule for found in find(plan_wall(job(frame("A", width, height, 30.0), wall=wall, group=asked)))}
    assert ("frame-off-wall" in rules) == (under < 0)
    assert ("wall-clearance" in rules) == (0 < away < clear)


def dashed(done: Everything) -> list[tuple[Rect, list[Segment]]]:
    """The window of every sheet, and its lines that are dashed like an edge of the wall."""
    return [
        (sheet.window, [s for s in wide(sheet.segments, WIDE) if len(s.dash[0]) == len(DASH)])
        for sheet in brought_back(done)
    ]


def drawn_along(done: Everything, points: list[tuple[float, float]]) -> None:
    """Every point that a sheet shows is on such a line there, and no such line is anywhere else."""
    seen = 0
    for window, lines in dashed(done):
        for x, y in points:
            if window.grown(-CLOSE).has_point(x, y):
                assert min(distance(s, x, y) for s in lines) < CLOSE
                seen += 1
        for s in lines:
            assert [round(length, 3) for length in s.dash[0]] == list(DASH)
            whole = Segment(*points[0], *points[-1], 0.0, ((), 0.0))
            assert max(distance(whole, s.x0, s.y0), distance(whole, s.x1, s.y1)) < CLOSE
    assert seen


def test_a_roof_that_a_sheet_reaches_over_is_drawn_on_it():
    # y = x + 1600 from the left end to 1000 across
    drawn_along(make(under_roof(330.0, 20.0)), [(x, x + 1600.0) for x in every(0.0, 1000.0, 2.0)])


def test_the_line_of_the_nosings_is_drawn_where_the_paper_reaches_under_it():
    done = make(climbing(430.0))
    drawn_along(done, [(x, 180 + 0.75 * (x - 1000)) for x in every(1000.0, 4000.0, 2.0)])
    texts = [text.text for sheet in brought_back(done) for text in sheet.texts]
    assert "line of the nosings: fold the paper here" in texts


def test_the_line_of_the_nosings_ends_at_the_landing_or_the_walls_end():
    # 180 + 0.5 · 640 = 500
    stairs = Stairs(x=1000.0, y=180.0, slope=0.5, top=500.0)
    assert nosing_line(Wall(name="", width=4000.0, height=3000.0, stairs=stairs)) == (1000.0, 180.0, 1640.0, 500.0)
    down = Stairs(x=1000.0, y=180.0, slope=-0.5)
    assert nosing_line(Wall(name="", width=4000.0, height=3000.0, stairs=down)) == (1000.0, 180.0, 0.0, 680.0)
    assert nosing_line(Wall(name="", width=4000.0, height=3000.0)) is None
