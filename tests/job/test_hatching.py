"""The hatching of zones: even, at 45°, inside the wall, and over all of what it covers."""

import math
from itertools import pairwise

import pytest

from templates_gen.base.geometry import Rect
from templates_gen.job.outline import hatched

ROOF = ((0.0, 0.0), (400.0, 0.0), (400.0, 300.0), (0.0, 100.0))  # the ceiling rises by half


def test_lines_rise_at_45_degrees_as_far_apart_as_asked():
    lines, _ = hatched([Rect(0.0, 0.0, 400.0, 80.0)], ROOF, 10.0, 1.0)
    assert all(y1 - y0 == pytest.approx(x1 - x0) for x0, y0, x1, y1 in lines)
    offsets = sorted((y0 - x0) / math.sqrt(2) for x0, y0, _, _ in lines)
    assert all(two - one == pytest.approx(10.0) for one, two in pairwise(offsets))


def test_all_of_the_zone_is_hatched_up_to_the_ceiling_and_overlaps_once():
    zones = [Rect(100.0, 50.0, 300.0, 400.0), Rect(200.0, 50.0, 350.0, 400.0)]
    lines, edges = hatched(zones, ROOF, 5.0, 1.0)
    # under the ceiling from x = 100, 150 mm high, to x = 350, 275 mm high, without the lowest 50: 250 · (100 + 225) / 2
    area = 250.0 * (100.0 + 225.0) / 2
    assert sum(math.dist((x0, y0), (x1, y1)) for x0, y0, x1, y1 in lines) == pytest.approx(area / 5.0, rel=0.03)
    ends = [end for x0, y0, x1, y1 in lines + edges for end in ((x0, y0), (x1, y1))]
    assert all(100 - 1e-6 <= x <= 350 + 1e-6 and 50 - 1e-6 <= y <= 100 + x / 2 + 1e-6 for x, y in ends)
    assert sum(math.dist((x0, y0), (x1, y1)) for x0, y0, x1, y1 in edges) == pytest.approx(
        250 + 100 + 225 + math.hypot(250, 125)
    )
