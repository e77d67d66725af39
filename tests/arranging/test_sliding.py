"""A frame that stands out of a sloping ceiling slides straight down until it is under it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.search.free_wall import free_wall, settled
from templates_gen.base.geometry import Rect
from templates_gen.job.model import Wall
from templates_gen.job.outline import ceiling_over, outline_holds

ATTIC = ((0.0, 0.0), (3000.0, 0.0), (3000.0, 2500.0), (2000.0, 2500.0), (0.0, 900.0))  # rises 0.8 mm a mm, then level


def wall(clear: float = 0.0, outline=ATTIC) -> Wall:
    return Wall(name="attic", width=3000.0, height=2500.0, outline=outline, clear=clear)


@pytest.mark.parametrize(("x", "top"), [(500.0, 1300.0), (2500.0, 2500.0)])  # 900 + 0.8 · 500; under the level part
def test_the_ceiling_over_a_frame_is_lowest_at_its_lower_side(x, top):
    assert ceiling_over(ATTIC, Rect.sized(x, 0.0, 300.0, 400.0)) == pytest.approx(top, abs=1e-5)


def test_a_frame_slides_straight_down_and_keeps_what_is_to_be_clear():
    clear = 30.0
    wanted = Rect.sized(500.0, 1200.0, 300.0, 400.0)
    slid = settled({0: wanted}, [], free_wall(wall(clear), 50.0, 50.0))[0]
    # a line 30 mm off the slope, at right angles, lies 30 · √(1 + 0.8²) lower
    assert slid.y1 == pytest.approx(1300.0 - clear * 1.64**0.5, abs=1e-4)
    assert (slid.x0, slid.width, slid.height) == (wanted.x0, wanted.width, wanted.height)


def test_where_it_is_free_it_stays():
    wanted = Rect.sized(2200.0, 1200.0, 300.0, 400.0)
    assert settled({0: wanted}, [], free_wall(wall(), 50.0, 50.0)) == {0: wanted}


def test_what_stands_out_of_the_wall_moves_to_where_its_edge_is_clear():
    wanted = Rect.sized(2800.0, 1200.0, 300.0, 400.0)
    moved = settled({0: wanted}, [], free_wall(wall(30.0, outline=()), 50.0, 50.0))[0]
    assert moved == Rect.sized(3000.0 - 30.0 - 300.0, 1200.0, 300.0, 400.0)


DENTED = (
    (0.0, 0.0), (3000.0, 0.0), (3000.0, 2000.0), (1700.0, 2500.0), (1500.0, 1200.0), (1400.0, 2400.0), (0.0, 700.0)
)  # fmt: skip


@given(
    st.sampled_from([ATTIC, DENTED]), st.integers(0, 2700), st.integers(0, 300), st.integers(100, 1500),
    st.sampled_from([0.0, 25.0]),
)  # fmt: skip
def test_right_under_the_ceiling_is_inside_and_a_little_higher_is_not(outline, x, width, height, clear):
    low = Rect.sized(float(x), clear, float(width + 50), float(height))
    if not outline_holds(outline, low, clear):
        return
    high = low.shifted(0.0, ceiling_over(outline, low, clear) - low.y1)
    assert outline_holds(outline, high.shifted(0.0, -1e-6), clear)
    assert not outline_holds(outline, high.shifted(0.0, 0.01), clear)
