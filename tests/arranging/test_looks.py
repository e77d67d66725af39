"""How a group looks, in numbers: worked by hand for small groups, and what must hold for any."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.arranging.search.boxes import Box, Gaps, around, hull_area
from templates_gen.arranging.search.looks import CROWN, WEIGHTS, cost, looks

GAPS = Gaps(60.0, 60.0)
# cells of the raster are 8 mm wide: sizes and places of hand-worked groups are multiples of it about the middle
GRID = [(x, y, x + 320.0, y + 400.0) for x in (0.0, 384.0) for y in (0.0, 464.0)]

sides = st.integers(80, 600)
places = st.integers(0, 2000)
groups = st.lists(st.builds(lambda x, y, w, h: (float(x), float(y), float(x + w), float(y + h)), places, places, sides,
                            sides), min_size=1, max_size=8)  # fmt: skip


def test_a_regular_grid_of_equal_frames_has_nothing_against_it_but_that_none_is_central():
    found = looks(GRID, Gaps(64.0, 64.0))
    assert found.cost == pytest.approx(WEIGHTS["central"] + WEIGHTS["big"] * found.big + WEIGHTS["wrong"] * found.wrong)
    # 704 wide and 864 high: a frame's middle is 192 of 704 and 232 of 864 from the group's
    assert found.big == pytest.approx(192 / 704 + 232 / 864)
    assert found.wrong == pytest.approx(math.log(864 / 704 / 1.05))


def test_a_void_is_what_frames_surround_but_for_the_edge_that_is_near_them():
    # a ring: left and right uprights 1000 high, above and below levels; inside it 480 × 520 are blank
    ring = [(-400.0, 0.0, -240.0, 1000.0), (240.0, 0.0, 400.0, 1000.0), (-240.0, 0.0, 240.0, 240.0),
            (-240.0, 760.0, 240.0, 1000.0)]  # fmt: skip
    area = 2 * 160 * 1000 + 2 * 480 * 240
    inner = (480 - 2 * 0.75 * 64) * (520 - 2 * 0.75 * 64)  # 48 mm is six cells
    assert looks(ring, Gaps(64.0, 64.0)).void == pytest.approx(inner / area)
    # open above: surrounded on three sides, which counts half, and there is no upper edge to be near to
    notch = ring[:3]
    open_above = (480 - 96) * (760 - 48) / 2 / (area - 480 * 240)
    assert looks(notch, Gaps(64.0, 64.0)).void == pytest.approx(open_above)


def test_what_has_no_mirror_image_about_the_middle_or_about_another_upright():
    pair = [(-400.0, 0.0, -80.0, 400.0), (80.0, 0.0, 400.0, 400.0)]
    assert looks(pair, GAPS).unlike == 0.0
    # about x = 80 the right frame's image takes -240 … 80, of which the left frame has -240 … -80: 160 of 320
    assert looks(pair, GAPS, 80.0).unlike == pytest.approx(1 - 2 * 160 / 640)
    assert looks([pair[0], (80.0, 0.0, 400.0, 200.0)], GAPS).unlike == pytest.approx(1 - 400 / 600)


def test_where_the_large_ones_are():
    large, small = (-300.0, 0.0, 300.0, 600.0), (360.0, 200.0, 560.0, 400.0)
    mirror = (-560.0, 200.0, -360.0, 400.0)
    found = looks([large, small, mirror], GAPS)
    assert found.big == 0.0 and found.lean == 0.0 and found.drift == 0.0
    far = 460 / 1120  # of the small ones' middles
    assert found.central == pytest.approx((2 * 40_000 * far / 440_000) / (2 * far / 3))
    aside = looks([large, small], GAPS)
    assert aside.drift == pytest.approx(1.0)  # two frames: the larger is wholly on one side
    # the middle is x = 130; areas 360,000 at 0 and 40,000 at 460; 2 per cent are taken for nothing
    assert aside.lean == pytest.approx(abs(360_000 * -130 + 40_000 * 330) / 400_000 / 860 - 0.02)


def test_large_ones_above_are_said_at_once_and_below_only_where_it_is_much():
    high, low = (0.0, 460.0, 600.0, 1000.0), (200.0, 0.0, 400.0, 400.0)
    assert looks([high, low], GAPS).rise == pytest.approx(1.0) and looks([high, low], GAPS).sink == 0.0
    under = [(x0, -y1, x1, -y0) for x0, y0, x1, y1 in (high, low)]
    assert looks(under, GAPS).rise == 0.0 and looks(under, GAPS).sink == pytest.approx(0.7)  # all but 0.3


def test_a_single_small_frame_on_top_is_a_spire():
    body = [(x, 0.0, x + 280.0, 400.0) for x in (-500.0, -160.0, 180.0)]
    spire = [*body, (-60.0, 460.0, 60.0, 700.0)]
    assert looks(body, GAPS).crown == 0.0
    assert looks(spire, GAPS).crown == pytest.approx(CROWN - 120 / 960)
    turned = [(x0, -y1, x1, -y0) for x0, y0, x1, y1 in spire]
    assert looks(turned, GAPS).crown == pytest.approx(CROWN - 120 / 960)  # nor should one hang below


@settings(max_examples=60, deadline=None)
@given(groups, st.sampled_from([0.0, 30.0, 64.0]))
def test_a_mirrored_group_looks_the_same_and_every_measure_is_zero_or_more(boxes, gap):
    mirrored = [(-x1, y0, -x0, y1) for x0, y0, x1, y1 in boxes]
    one, two = looks(boxes, Gaps(gap, gap)), looks(mirrored, Gaps(gap, gap))
    assert one.cost == pytest.approx(two.cost, abs=0.05)  # cells are rounded
    assert min(one) >= 0.0


@settings(max_examples=60, deadline=None)
@given(groups, st.floats(0, 2), st.integers(-400, 400))
def test_a_cost_is_cut_short_only_above_what_is_asked_for(boxes, most, off):
    x0, _, x1, _ = around(boxes)
    whole = looks(boxes, GAPS, (x0 + x1) / 2 + off).cost
    assert cost(boxes, GAPS, (x0 + x1) / 2 + off) == pytest.approx(whole)
    cut = cost(boxes, GAPS, (x0 + x1) / 2 + off, most)
    assert cut == pytest.approx(whole) or whole >= cut > most


def crossing_hull(boxes: list[Box]) -> float:
    """The hull's area by the shoelace formula over corners sorted about their middle, those inside left out."""
    points = {corner for x0, y0, x1, y1 in boxes for corner in ((x0, y0), (x1, y0), (x1, y1), (x0, y1))}
    outer = [
        p for p in points
        if not any(inside(p, a, b, c) for a in points for b in points for c in points)
    ]  # fmt: skip
    x, y = (sum(axis) / len(points) for axis in zip(*points, strict=True))
    outer.sort(key=lambda p: math.atan2(p[1] - y, p[0] - x))
    pairs = zip(outer, [*outer[1:], outer[0]], strict=True)
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs)) / 2


def inside(p, a, b, c) -> bool:
    """True when a point lies strictly within a triangle, or within one of its sides."""
    turns = [(v[0] - u[0]) * (p[1] - u[1]) - (v[1] - u[1]) * (p[0] - u[0]) for u, v in ((a, b), (b, c), (c, a))]
    if a == b or b == c or a == c:
        return False
    area = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
    return p not in (a, b, c) and area != 0 and (min(turns) >= 0 or max(turns) <= 0)


@settings(max_examples=25, deadline=None)
@given(st.lists(groups.map(lambda boxes: boxes[0]), min_size=1, max_size=3))
def test_the_hull_is_that_of_all_corners(boxes):
    assert hull_area(boxes, 0.0, 0.0) == pytest.approx(crossing_hull(boxes))
