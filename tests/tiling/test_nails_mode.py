"""Paper for the nails alone: every sheet can be placed by itself, by its distances from the two lines of the wall."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from functools import cache
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.base.units import show, show_both
from templates_gen.documents.instructions.hanging_day import hanging_steps
from templates_gen.documents.instructions.taping_steps import day_before
from templates_gen.documents.making import on_paper
from templates_gen.drawing.items import Text
from templates_gen.job.reading.building import read_job
from templates_gen.tiling.cells import Printable, plan_cells
from templates_gen.tiling.loose import filled
from templates_gen.tiling.page import page_of
from templates_gen.tiling.rulers import rulers
from templates_gen.tiling.sheet import clearance
from templates_gen.tolerance.holding import plan_sheets
from templates_gen.tolerance.order import taping_order
from tests.documents import test_lettering_apart as lettering
from tests.jobs import SAMPLES, frame, group, job, paper
from tests.made import NAMES, Everything, asked, made, make
from tests.matrices import inverse
from tests.pdf_reading import moved
from tests.wall_reading import CLOSE, shown

POINT = 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3, and the international inch of 1959
SEPARATE = tuple(name for name in NAMES if asked(name).paper.cover == "nails")

separate = pytest.mark.parametrize("name", SEPARATE)


def test_there_is_a_job_whose_pieces_hang_separately() -> None:
    assert any(taping_order(made(name).sheets).pieces > 1 for name in SEPARATE)


@separate
def test_every_sheet_says_in_large_figures_how_far_both_lines_are_from_its_rules(name: str) -> None:
    """From the rulers as drawn in the file, in figures 5 mm high or more; 10 mm on most (ISO 3098-1 series)."""
    done = made(name)
    plan, unit = done.plan, done.job.unit
    heights = []
    for sheet, told in zip(shown(name), done.report["sheets"], strict=True):
        back = inverse(told["to_page"])
        level, plumb = (moved(back, *ruler["from"]) for ruler in _rules(done.report, sheet.page))
        down, left = level[1] - plan.level_line, plumb[0] - plan.centre_line
        for away, side in ((down, "below" if down > 0 else "above"), (left, "left" if left > 0 else "right")):
            own, both = show(abs(away), unit), show_both(abs(away), unit)
            figures = [t for t in sheet.texts if t.text in (f"{both} {side}", f"{own} {side}")]
            assert figures, f"{sheet.name} does not say {both} {side}"
            heights.append(max(t.size for t in figures))
    assert min(heights) > 5.0
    assert sum(height > 10.0 for height in heights) >= 0.75 * len(heights)


def _rules(report: dict, page: int) -> list[dict]:
    """The level and the upright ruler of a page."""
    return sorted((r for r in report["rules"] if r["page"] == page), key=lambda r: r["from"][1] != r["to"][1])


@separate
def test_the_figures_say_from_which_rule_they_are_measured(name: str) -> None:
    for sheet in shown(name):
        said = [text.text for text in sheet.texts]
        assert (
            said.count("level line, from the level ruler:") == said.count("centre line, from the upright ruler:") == 1
        )


@separate
def test_lettering_stays_apart(name: str) -> None:
    lettering.test_no_two_texts_overlap(name)
    lettering.test_no_text_touches_a_nail_cross(name)


@pytest.mark.parametrize("name", [name for name in NAMES if name not in SEPARATE])
def test_taped_templates_have_no_large_figures(name: str) -> None:
    said = [text.text for sheet in shown(name) for text in sheet.texts]
    assert not [text for text in said if "from the level ruler:" in text]


@separate
def test_the_steps_are_those_of_separate_pieces(name: str) -> None:
    done = made(name)
    steps = hanging_steps(done.plan, done.sheets)
    words = " ".join([*day_before(done.plan, done.sheets), *(step.words for step in steps)])
    assert "Draw two thin pencil lines on the wall" in words and "diagonals" not in words
    assert show_both(done.plan.level_line, done.job.unit) in words and "measure from both ends of the rule" in words
    assert "Put the target on the cross" not in words
    assert ("toothed lines" in words) == bool(done.sheets.joins)


@separate
def test_only_sheets_that_meet_are_taped(name: str) -> None:
    done = made(name)
    order = taping_order(done.sheets)
    joined = {name for join in done.sheets.joins for name in (join.over, join.under)}
    words = " ".join(day_before(done.plan, done.sheets))
    named = {run for _, names in (*order.made, *order.laid) for run in names}
    assert named <= joined
    assert set(re.findall(r"\b[A-Z]+\d+\b(?= \(| to | and )", words)) <= joined


def test_the_rules_are_where_the_plan_says() -> None:
    """The level ruler's line and the plumb one's, from the page's own numbers: what the figures are measured from."""
    done = made(SEPARATE[0])
    level, plumb = rulers(done.sheets.page, done.job.paper.overlap, done.job.unit)
    for told in _rules(done.report, done.report["sheets"][0]["page"])[:2]:
        upright = told["from"][0] == told["to"][0]
        assert abs((told["from"][0] * POINT - plumb.x0) if upright else (told["from"][1] * POINT - level.y0)) < CLOSE


# On stairs


@cache
def on_stairs(unit: str) -> Everything:
    """The lock-keepers climb a flight of stairs; here only their nails are on paper."""
    return make(on_paper(replace(read_job(SAMPLES / "lock-keepers.toml"), unit=unit), cover="nails"))


def figure(texts: Sequence[str], words: str) -> tuple[float, str]:
    """What stands in large figures under these words: so many mm, and which way."""
    at = texts.index(words)
    said = " ".join(texts[at + 1 : at + 3])
    found = re.search(r"([0-9.]+) mm", said)
    assert found, said
    return float(found[1]), next(way for way in ("above", "below", "upstairs", "downstairs") if way in said)


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_on_stairs_a_piece_is_placed_from_the_nosings_and_along_the_pitch_line(unit: str) -> None:
    """A person draws the pitch line so high straight above the nosings, goes along it from the cross, and then straight
    up: the nails come where they belong, within the rounding of two figures to a millimetre."""
    done = on_stairs(unit)
    plan, stairs = done.plan, done.job.wall.stairs
    assert stairs is not None and plan.slope and taping_order(done.sheets).pieces > 1
    length = math.hypot(1.0, stairs.slope)
    cross = plan.centre_line, stairs.line_at(plan.centre_line) + done.job.group.height.at
    placed = 0
    for told in done.report["sheets"]:
        page = done.reader.pages[told["page"] - 1]
        texts = [text.text for text in done.marks[told["page"] - 1].texts]
        assert not [text for text in texts if "level line, from" in text] and page is not None
        up, above = figure(texts, "level ruler, straight from the pitch line:")
        along, way = figure(texts, "upright ruler, along the pitch line from the cross:")
        along = along if (way == "upstairs") == (stairs.slope > 0) else -along
        x = cross[0] + along / length
        y = cross[1] + along / length * stairs.slope + (up if above == "above" else -up)
        # on the page: where the rulers' lines cross, in points; nothing of the wall is asked
        level, plumb = (ruler["from"] for ruler in _rules(done.report, told["page"]))
        at = plumb[0], level[1]
        for nail in done.report["nails"]:
            if told["page"] in nail["pages"]:
                on_page = moved(tuple(told["to_page"]), nail["x"], nail["y"])
                drawn = [c for c in done.marks[told["page"] - 1].circles if math.dist((c.cx, c.cy), on_page) < 0.01]
                assert drawn
                where = x + (on_page[0] - at[0]) * POINT, y + (on_page[1] - at[1]) * POINT
                assert where == pytest.approx((nail["x"], nail["y"]), abs=1.3)  # 0.5 along and up, and both on a slope
                placed += 1
    assert placed == len(plan.nails)


def test_on_stairs_no_step_draws_a_level_line_through_the_air() -> None:
    done = on_stairs("mm")
    words = " ".join(step.words for step in hanging_steps(done.plan, done.sheets))
    assert "Lay a straight batten on the nosings." in words and "by a thin pencil line: the pitch line." in words
    assert "how far from the cross its upright ruler stands, along the pitch line: mark that point." in words
    assert "level line" not in words and "two thin pencil lines" not in words  # only the paper's own ruler is level
    high = show_both(done.job.group.height.at, "mm")
    assert f"Mark {high} straight above its lower edge" in words


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_lettering_stays_apart_on_stairs_too(unit: str) -> None:
    done = on_stairs(unit)
    for page in done.template.pages[-len(done.sheets.sheets) :]:
        boxes = [done.lettering.box(item) for item in page.page_items if isinstance(item, Text)]
        assert not any(a.grown(-0.005).overlaps(b) for at, a in enumerate(boxes) for b in boxes[at + 1 :])


def rows_of_four_and_three() -> Plan:
    """Frames of 362 mm in two rows, half a frame apart, so that columns of nails are narrow."""
    frames = [frame(name, 362.0, 286.0, 64.0) for name in "ABCDEFG"]
    rows = group((tuple("ABCD"), tuple("EFG")), gap=57.0)
    return plan_wall(job(*frames, group=rows, paper=paper("legal", cover="nails")))


def test_a_loose_piece_fills_its_page_with_its_nail_in_the_middle() -> None:
    """Legal paper is 356 mm long: its printable part is 341.6, 7 mm less at either end.  A nail's mark is as wide to
    both sides, and rulers take 7 mm more on the left than half a strip does on the right: our own design."""
    plan = rows_of_four_and_three()
    sheets = plan_sheets(plan, plan.job.paper).sheets
    assert len(sheets) == len(plan.nails)
    for sheet in sheets:
        (nail,) = [nail for nail in plan.nails if sheet.window.has_point(nail.x, nail.y)]
        assert sorted((sheet.window.width, sheet.window.height)) == pytest.approx([215.9 - 14.0, 355.6 - 20.0], abs=8.0)
        assert abs(nail.x - sheet.window.cx) < 10.0 or nail.name == "F"  # the target is on its sheet, too


@given(
    st.lists(st.tuples(st.integers(0, 40), st.integers(0, 24)), min_size=2, max_size=9, unique=True),
    st.sampled_from(["a4", "letter", "legal"]),
)
def test_loose_pieces_never_lie_on_each_other_and_hold_nails_whole(places: list[tuple[int, int]], size: str) -> None:
    """Boxes of a nail's size, 50 mm apart or a multiple of it."""
    whole = [Rect.sized(1000.0 + 50.0 * x, 1000.0 + 50.0 * y, 18.0, 44.0) for x, y in places]
    clear, page = clearance(12.0), page_of(paper(size), turned=False).printable
    pages = [Printable(page.width, page.height, False), Printable(page.height, page.width, True)]
    before = plan_cells(tuple(whole), (), pages, 12.0, clear, False, (), "", None)
    after = filled(before, whole, 12.0, clear)
    assert len(before.cells) == len(after.cells)
    for one, two in combinations(after.cells, 2):
        assert not one.rect.overlaps(two.rect)
    for old, new in zip(before.cells, after.cells, strict=True):
        assert new.rect.width >= old.rect.width - 1e-6 and new.rect.height >= old.rect.height - 1e-6
        assert new.rect.width <= after.printable.width - 12.0 + 1e-6
        assert new.rect.height <= after.printable.height - 12.0 + 1e-6
    for box in whole:
        needed = Rect(box.x0 - clear.left, box.y0 - clear.bottom, box.x1 + clear.right, box.y1 + clear.top)
        assert any(cell.rect.grown(1e-6).holds(needed) for cell in after.cells)
