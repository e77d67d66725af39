"""The title lines of sheets where nothing is in their way: where they stand, and what they say of the two rulers.

A sheet's rulers start 16 mm inside its trim lines and lie 8 mm inside them; titles take 13 mm under the upper one.
"""

from __future__ import annotations

import math
import re
from itertools import combinations, pairwise

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.base.units import show, show_both
from templates_gen.documents.sheets.join_marks import join_items
from templates_gen.documents.sheets.layer import shown_on
from templates_gen.documents.sheets.titles import ruler_places, sheet_title
from templates_gen.drawing.items import Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
from templates_gen.job.model import Height, Wall
from templates_gen.job.stairs import Stairs
from templates_gen.tiling.rulers import from_lines
from templates_gen.tolerance.holding import plan_sheets
from tests.jobs import frame, group, job, paper

LETTERING = Lettering()
ROW = [frame(name, 400.0, 500.0, 80.0) for name in "AB"]
WIDE_ENOUGH = 90.0
"""mm; on a narrower sheet the name of it stands alone.  From the program."""


@pytest.fixture(scope="module", params=[("mm", "a4"), ("in", "letter")], ids="-".join)
def titled(request):
    """Every sheet of a plan with its two title lines, about the wall (mm)."""
    unit, size = request.param
    of = job(*ROW, unit=unit, paper=paper(size), group=group((("A", "B"),)))
    plan = plan_wall(of)
    sheets = plan_sheets(plan, of.paper, None)
    found = []
    for number, part in enumerate(shown_on(plan, sheets), 1):
        if part.sheet.cell.width < WIDE_ENOUGH:
            continue
        window, area = part.sheet.window, part.sheet.page.printable
        texts = sorted(sheet_title(plan, sheets, part, number, 40, LETTERING), key=lambda text: not text.bold)
        found.append((part, texts, [LETTERING.box(t).shifted(window.x0 - area.x0, window.y0 - area.y0) for t in texts]))
    return plan, sheets, found


def test_both_lines_stand_inside_the_trim_lines_to_the_right_of_the_upright_ruler(titled):
    _, _, found = titled
    for part, texts, boxes in found:
        cell = part.sheet.cell
        assert len(texts) == 2
        for box in boxes:
            cut = any(join.upright and join.under == part.sheet.name for join in part.joins)
            right = cell.x1 - 0.5 if cut else part.sheet.window.x0 + part.sheet.page.printable.width
            assert cell.x0 + 16.0 - 0.5 <= box.x0 and box.x1 <= right + 1e-6
            assert box.y1 <= cell.y1 - 0.5 + 1e-6
        assert not any(one.overlaps(other) for one, other in combinations(boxes, 2))
    usual = [part for part, _, lines in found if part.sheet.cell.y1 - 13.0 <= min(line.y0 for line in lines)]
    assert len(usual) * 2 > len(found)  # under the upper trim line, but for what stands there


def test_the_first_line_says_which_sheet_it_is_and_is_the_larger(titled):
    _, sheets, found = titled
    for part, (first, second), _ in found:
        name = part.sheet.name
        assert first.text.startswith(f"sheet {name} of {len(sheets.sheets)} · page {name} of 40")
        assert ("this side up" in first.text) == (part.sheet.page is not sheets.page)
        assert first.bold and not second.bold and first.height >= second.height


def test_the_second_line_says_how_far_and_on_which_side_of_the_lines_the_rulers_are(titled):
    plan, _, found = titled
    unit = plan.job.unit
    for part, (_, second), _ in found:
        away = part.sheet.cell.y0 + 8.0 - plan.level_line, part.sheet.cell.x0 + 8.0 - plan.centre_line
        words = re.sub(r" · [^;]*?(?= (above|below|right|left))", "", second.text)
        told = re.findall(r"([\d /]+) (?:mm|in),? (above|below|right|left)", words)
        assert [side for _, side in told] == [
            "above" if away[0] > 0 else "below", "right" if away[1] > 0 else "left",
        ]  # fmt: skip
        for (said, _), mm in zip(told, away, strict=True):
            whole = sum(
                float(part.split("/")[0]) / float(part.split("/")[1]) if "/" in part else float(part)
                for part in said.split()
            )
            assert whole * (25.4 if unit == "in" else 1.0) == pytest.approx(
                abs(mm), abs=25.4 / 32 if unit == "in" else 0.5
            )


def on_wall(part, texts):
    """What the texts of a sheet's page take of the wall (mm)."""
    window, area = part.sheet.window, part.sheet.page.printable
    return [LETTERING.box(text).shifted(window.x0 - area.x0, window.y0 - area.y0) for text in texts]


def test_a_title_stands_up_to_40_mm_lower_where_all_above_is_taken(titled):
    """Both lines need less than 10 mm; that much is left 30 to 40 mm under the usual band."""
    plan, sheets, found = titled
    lower = 0
    for number, (part, _, _) in enumerate(found, 1):
        cell = part.sheet.cell
        taken = Rect(cell.x0, cell.y1 - 13.0 - 30.0, cell.x1, cell.y1)
        boxes = on_wall(part, sheet_title(plan, sheets, part, number, 40, LETTERING, [taken]))
        lower += all(not box.overlaps(taken) and box.y0 >= cell.y1 - 13.0 - 40.0 - 1e-6 for box in boxes)
    assert lower


def test_titles_of_sheets_that_are_not_cut_keep_off_their_crossing_lines():
    each = job(*ROW, paper=paper("a4", trim="none"), group=group((("A", "B"),)))
    plan = plan_wall(each)
    sheets = plan_sheets(plan, each.paper, None)
    reach = sheets.hides.reach(False)
    for number, part in enumerate(shown_on(plan, sheets), 1):
        boxes = on_wall(part, sheet_title(plan, sheets, part, number, 40, LETTERING))
        crossing = [Rect.about(mark.x, mark.y, 2 * reach, 2 * reach) for mark in part.marks]
        assert not any(box.overlaps(lines) for box in boxes for lines in crossing)


def test_titles_keep_off_the_ticks_that_hang_from_a_level_line(titled):
    """The longest tick is 6 mm; wherever the line runs there is room within the 40 mm that a title may stand lower."""
    plan, sheets, found = titled
    for number, (part, _, _) in enumerate(found, 1):
        cell = part.sheet.cell
        for down in range(0, 20, 2):
            lined = replace(plan, level_line=cell.y1 - down)
            taken = Rect(cell.x0, lined.level_line - 6.0, cell.x1, lined.level_line)
            boxes = on_wall(part, sheet_title(lined, sheets, replace(part, frames=(), nails=()), number, 40, LETTERING))
            assert boxes and not any(box.overlaps(taken) for box in boxes), (part.sheet.name, down)


def told_of(texts):
    """What each of the texts says first and second, as (length, which way); both systems where it has both."""
    length = r"(\d[\d /]* (?:mm|cm|in)(?: · \d[\d /]* (?:mm|cm|in))?),? (above|below|left|right|upstairs|downstairs)"
    return [re.findall(length, text) for text in texts]


def held_to(texts, unit, first, second):
    """Every text says both lengths and ways, the longest in both systems, the others in the job's unit alone."""
    both, *own = told_of(texts)
    assert both == [(show_both(abs(mm), unit), way) for mm, way in (first, second)]
    assert own == [[(show(abs(mm), unit), way) for mm, way in (first, second)]] * 2


def test_however_long_it_is_the_second_line_says_the_same_two_lengths(titled):
    plan, sheets, found = titled
    for part, _, _ in found:
        up, right = from_lines(plan, part.sheet.window, sheets.paper.overlap)
        texts = ruler_places(plan, sheets, part)
        held_to(texts, plan.job.unit, (up, "above" if up > 0 else "below"), (right, "right" if right > 0 else "left"))


@pytest.mark.parametrize("way", [1.0, -1.0])
def test_on_stairs_a_loose_sheet_says_how_far_it_is_from_the_pitch_line_and_along_it(way):
    """Frames 700 mm apart on a stair that climbs to the right or to the left: each nail has a sheet of its own."""
    slope = way * 175.0 / 280.0
    stairs = Stairs(run=280.0, rise=175.0, slope=slope, x=300.0 if way > 0 else 5700.0, y=175.0)
    names = ("A", "B", "C")
    each = job(
        *(frame(name, 300.0, 400.0, 60.0) for name in names), paper=paper("a4", cover="nails"),
        wall=Wall(name="", width=6000.0, height=5600.0, stairs=stairs),
        group=group((names,), "stairs", gap=700.0, slope=slope, height=Height(by="above_nosings", at=1500.0)),
    )  # fmt: skip
    plan = plan_wall(each)
    sheets = plan_sheets(plan, each.paper, None)
    loose = [part for part in shown_on(plan, sheets) if part.alone is not None]
    assert len(loose) > 2
    for part in loose:
        window, inset = part.sheet.window, sheets.paper.overlap / 2 + 8.0
        x, y = window.x0 + inset - plan.centre_line, window.y0 + inset - plan.level_line
        up, along = y - slope * x, x * math.hypot(1.0, slope)
        upstairs = (x > 0) == (way > 0)
        held_to(
            ruler_places(plan, sheets, part), "mm",
            (up, "above" if up > 0 else "below"), (along, "upstairs" if upstairs else "downstairs"),
        )  # fmt: skip


@pytest.mark.parametrize("width", [116.0, 96.0])
def test_beside_what_is_taken_the_lines_are_shorter_not_small_and_stand_together(titled, width):
    """A sheet's upper 80 mm is taken from so many mm right of its left trim line on.

    Lettering of 2.5 mm is read at arm's length; lines stand together when the next begins under the first letter.
    """
    plan, sheets, found = titled
    free = 0
    for part, _, _ in found:
        number, cell = int(part.sheet.name), part.sheet.cell
        black = Rect(cell.x0 + width, cell.y1 - 80.0, cell.x1, cell.y1)
        alone = replace(part, frames=(), nails=())
        texts = sheet_title(plan, sheets, alone, number, 40, LETTERING, [black])
        boxes = on_wall(part, texts)
        assert not any(one.overlaps(black) for one in boxes)
        first, *rulers = texts
        assert first.bold and first.text.startswith(f"sheet {part.sheet.name} of ")
        assert " ".join(text.text for text in rulers).startswith("rulers ")
        free += min(text.height for text in texts) >= 2.5
        for one, other in pairwise(texts):
            assert one.x == other.x and 0.0 < one.y - other.y <= 2.0 * other.height
    assert free == len(found)


def test_the_name_of_a_neighbour_stands_in_the_strip_that_both_sheets_show(titled):
    """Half an overlap, 6 mm, beside the join: what falls off where this sheet is cut, else what the other covers."""
    _, sheets, found = titled
    half = sheets.paper.overlap / 2
    for part, _, _ in found:
        items = list(join_items(part, sheets, Room(part.sheet.window), LETTERING))
        said = [item for item in items if isinstance(item, Text) and item.text in WORDS]
        strips = []
        for join in part.joins:
            low, high = (-half, 0.0) if join.over == part.sheet.name else (0.0, half)
            across = Rect(join.x0 + low, join.y0, join.x0 + high, join.y1)
            strips.append(across if join.upright else Rect(join.x0, join.y0 + low, join.x1, join.y0 + high))
        assert len(said) == len(strips)
        for text in said:
            (strip,) = [strip for strip in strips if strip.holds(LETTERING.box(text))]
            assert (text.angle == 90) == (strip.height > strip.width)
            assert text.text in (WORDS[:2] if strip in strips_cut(part, strips) else WORDS[2:])


WORDS = ("lay on", "on", "goes over this:", "over this:")


def strips_cut(part, strips):
    return [strip for join, strip in zip(part.joins, strips, strict=True) if join.over == part.sheet.name]
