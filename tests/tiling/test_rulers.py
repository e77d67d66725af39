"""The two rulers of a page: where they end, and that they are as long as the page allows."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.tiling.page import page_of
from templates_gen.tiling.rulers import rulers
from tests.jobs import paper

# rulers end on what is easy to read from a tape: whole centimetres, and half inches of 25.4 mm (international agreement
# of 1959); the ends on them are our own design, no source
STEP = {"mm": 10.0, "cm": 10.0, "in": 12.7}


@given(
    name=st.sampled_from(("a5", "a4", "letter", "a3", "a0")), turned=st.booleans(), unit=st.sampled_from(list(STEP)),
    overlap=st.floats(5.0, 30.0),
)  # fmt: skip
def test_rules_end_on_whole_centimetres_or_half_inches_and_no_longer_ones_fit(name, turned, unit, overlap):
    """They begin 16 mm inside a trim line, and end 5 mm before the one across: our own design, no source."""
    page = page_of(paper(name), turned)
    area, half, step = page.printable, overlap / 2, STEP[unit]
    level, plumb = rulers(page, overlap, unit)
    assert (level.x0, level.y0) == pytest.approx((area.x0 + half + 16.0, area.y0 + half + 8.0))
    assert (plumb.x0, plumb.y0) == pytest.approx((area.x0 + half + 8.0, area.y0 + half + 16.0))
    assert level.y1 == level.y0 and plumb.x1 == plumb.x0
    ends = (level.x1, area.x1 - half - 5.0), (plumb.y1, area.y1 - half - 5.0)
    for ruler, (end, limit) in zip((level, plumb), ends, strict=True):
        assert ruler.length / step == pytest.approx(round(ruler.length / step))
        most = min(limit - end + ruler.length, 1000.0)  # what a steel rule of 1 m measures: common practice, no source
        assert ruler.length <= most + 1e-6 < ruler.length + step + 2e-6


def test_rules_of_a_letter_page_are_whole_half_inches():
    """Worked out by hand here: 215.9 mm wide, less margins of 14, 12 of overlap, 16, 5 beside the ruler: 168.9, which
    is 13 half inches (165.1) and not 14; 279.4 high less 20, 12, 16 and 5: 226.4, 17 half inches (215.9)."""
    level, plumb = rulers(page_of(paper("letter"), turned=False), 12.0, "in")
    assert (level.length / 25.4, plumb.length / 25.4) == pytest.approx((6.5, 8.5))
