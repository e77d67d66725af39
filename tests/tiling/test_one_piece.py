"""Large pages for a print shop or plotter: their number and size, what is on them, and the small file beside them."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pypdf
import pytest

from templates_gen.base.geometry import Rect
from templates_gen.documents.instructions.first_pages import draw_first_pages
from templates_gen.drawing.items import Template, Text
from templates_gen.drawing.pdf.writing import write_pdf
from templates_gen.tiling.demand import nail_box
from tests.documents import test_lettering_apart as lettering
from tests.documents import test_read_back as marks
from tests.documents import test_read_back_drop_scales as drop_scales
from tests.documents import test_read_back_lines as lines
from tests.made import LARGE, made
from tests.running import run
from tests.wall_reading import CLOSE, NARROW, is_upright, shown, wide

POINT = 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3, and the international inch of 1959
MOST = 5000.0  # mm; our own limit, below the 14,400 units of ISO 32000-1, Annex C.2

ONE = ("one piece", "one piece, inches")
PIECES = (*ONE, "two panels")

UNFIT = ("test_rules_are_as_long_as_an_a4_page_allows", "test_the_cross_is_where_it_should_be_in_pixels")
"""The first is about one job, the second about the samples alone."""

EVERYWHERE = [
    getattr(module, name)
    for module in (lettering, marks, lines, drop_scales)
    for name in dir(module)
    if name.startswith("test_") and name not in UNFIT
]
"""What holds for the pages of any template."""


@pytest.mark.parametrize("name", LARGE)
@pytest.mark.parametrize("holds", EVERYWHERE, ids=lambda test: test.__name__)
def test_what_holds_for_every_page_holds_for_large_ones(holds: object, name: str) -> None:
    assert callable(holds)
    holds(name)


@pytest.mark.parametrize("name", LARGE)
def test_all_pages_have_one_size_in_whole_points_and_none_is_a_first_page(name: str) -> None:
    done = made(name)
    boxes = {tuple(page["/MediaBox"]) for page in done.reader.pages}
    ((x, y, width, height),) = boxes
    assert (x, y) == (0, 0) and isinstance(width, int) and isinstance(height, int)
    assert max(width, height) * POINT <= MOST and max(width, height) < 14400
    assert [page.get("/UserUnit") for page in done.reader.pages] == [None] * len(done.reader.pages)
    assert [sheet["page"] for sheet in done.report["sheets"]] == list(range(1, len(done.reader.pages) + 1))


@pytest.mark.parametrize(("name", "pages"), [("one piece", 1), ("one piece, inches", 1), ("two panels", 2)])
def test_there_are_as_few_pages_as_5_m_allow(name: str, pages: int) -> None:
    """Worked out by hand here: the frieze is 11 · 780 + 10 · 62 = 9200 mm wide, so more than one page and, as two
    give almost 10 m less an overlap, two."""
    assert len(made(name).reader.pages) == pages


@pytest.mark.parametrize("name", ONE)
def test_one_page_is_the_group_with_its_border_and_no_larger(name: str) -> None:
    """Around the group 4 mm of our own, 13 mm of ruler left and below, 6 mm right, 13 mm of title above (our own
    design), 6 mm of half an overlap and 5 mm of margin all around, and less than a point to make it whole: the sums
    worked out by hand here are 17 + 10 + 22 = 49 mm across and 17 + 17 + 22 = 56 mm upward."""
    done = made(name)
    group, page = done.plan.group, done.sheets.page
    assert 49.0 <= page.width * POINT - group.width < 49.0 + POINT
    assert 56.0 <= page.height * POINT - group.height < 56.0 + POINT


@pytest.mark.parametrize("name", PIECES)
def test_rules_and_titles_stand_beside_the_group(name: str) -> None:
    done = made(name)
    window, group = done.sheets.sheets[0].window, done.plan.group
    spine = 6.0 + 8.0  # mm of half an overlap, and from the trim line to a ruler; our own design, no source
    assert window.x0 + spine + 5.0 <= group.x0 and window.y0 + spine + 5.0 <= group.y0
    for sheet in done.sheets.sheets:
        assert sheet.window.y1 - 6.0 - 13.0 >= group.y1


@pytest.mark.parametrize("name", LARGE)
def test_rules_are_at_most_a_metre_long_and_at_least_half_the_page(name: str) -> None:
    done = made(name)
    sides = {True: done.sheets.page.width * POINT, False: done.sheets.page.height * POINT}
    for ruler in done.report["rules"]:
        level = ruler["from"][1] == ruler["to"][1]
        assert min(900.0, sides[level] / 2) < ruler["length"] <= 1000.0


def test_two_panels_share_a_strip_with_two_register_marks_and_a_trim_line() -> None:
    done = made("two panels")
    (join,) = done.sheets.joins
    assert len(done.sheets.marks) == 2 and {len(mark.sheets) for mark in done.sheets.marks} == {2}
    over = next(sheet for sheet in shown("two panels") if sheet.name == join.over)
    cuts = [s for s in wide(over.segments, NARROW) if is_upright(s) and abs(s.x0 - join.x0) < CLOSE]
    assert max(abs(s.y1 - s.y0) for s in cuts) > done.plan.group.height
    for nail in done.plan.nails:
        assert sum(sheet.inner.holds(nail_box(nail.x, nail.y)) for sheet in done.sheets.sheets) == 1


def first(name: str) -> Template:
    done = made(name)
    found = draw_first_pages(done.plan, (), done.sheets, None, done.lettering)
    assert found is not None
    return found


def said(name: str) -> str:
    texts = [item.text for page in first(name).pages for item in page.page_items if isinstance(item, Text)]
    return " ".join(texts)


@pytest.mark.parametrize("name", LARGE)
def test_the_first_pages_are_a_small_file_of_their_own(name: str) -> None:
    """On the job's own paper, or letter and a4 where that is a roll: ISO 216 and ANSI Y14.1 sizes over 25.4 / 72 mm,
    worked out by hand here: A4 595.28 by 841.89, Letter 612 by 792."""
    done = made(name)
    reader = pypdf.PdfReader(io.BytesIO(write_pdf(first(name), done.lettering)), strict=True)
    boxes = {tuple(page["/MediaBox"]) for page in reader.pages}
    assert boxes == {(0, 0, 612, 792) if done.job.unit == "in" else (0, 0, 595, 841)}
    assert "Schedule" in said(name) and "Take care" in said(name)


@pytest.mark.parametrize("name", LARGE)
def test_lettering_of_the_first_pages_is_apart_and_on_the_page(name: str) -> None:
    done, template = made(name), first(name)
    page = Rect(7.0, 13.0, template.page_size[0] * POINT - 7.0, template.page_size[1] * POINT - 7.0)
    for one in template.pages:
        boxes = [done.lettering.box(item) for item in one.page_items if isinstance(item, Text)]
        assert all(page.holds(box) for box in boxes)
        assert not any(a.grown(-0.005).overlaps(b) for at, a in enumerate(boxes) for b in boxes[at + 1 :])


@pytest.mark.parametrize("name", ONE)
def test_nobody_is_told_to_trim_or_tape_one_page(name: str) -> None:
    words = said(name)
    assert "trim line" not in words and "registration mark" not in words and "Tape each" not in words
    assert "Put the target on the cross" in words and "not at full size: do not use it" in words


def test_panels_are_taped_as_sheets_are() -> None:
    words = said("two panels")
    assert "Cut along the continuous trim lines" in words and "Then tape" not in words
    assert "Tape the columns to each other, from the left column to the right, the cut edge always on top: B1" in words


@pytest.mark.parametrize("name", ONE)
def test_the_print_shop_is_told_the_size_and_what_the_rules_measure(name: str) -> None:
    done, words = made(name), said(name)
    assert "Print it at actual size (100 %)" in words
    for side in (done.sheets.page.width, done.sheets.page.height):
        assert f"{side * POINT:.0f} mm" in words
    for ruler in done.report["rules"]:
        assert f"{ruler['length']:.0f} mm" in words


def test_the_command_names_both_files_and_their_sizes(small: Path) -> None:
    ran = run("template", "job.toml", "--one-piece", "-o", "big.pdf")
    assert ran.code == 0
    one, two = ran.out.splitlines()
    assert re.fullmatch(r"big\.pdf: 1 sheet of \d+ × \d+ mm, for a print shop or plotter", one)
    assert two.startswith("big-first-pages.pdf: ")
    assert {path.name for path in small.glob("*.pdf")} == {"big.pdf", "big-first-pages.pdf"}
    assert len(pypdf.PdfReader(small / "big.pdf").pages) == 1


def test_a_file_of_someone_elses_in_the_place_of_the_first_pages_is_kept(small: Path) -> None:
    (small / "big-first-pages.pdf").write_text("mine")
    ran = run("template", "job.toml", "--one-piece", "-o", "big.pdf")
    assert ran.code == 2 and "big-first-pages.pdf" in ran.err
    assert (small / "big-first-pages.pdf").read_text() == "mine" and not (small / "big.pdf").exists()


def test_one_piece_is_not_for_a_roll(small: Path) -> None:
    ran = run("template", "job.toml", "--one-piece", "--paper", "roll 24 in")
    assert ran.code == 2 and "--one-piece" in ran.err and not list(small.glob("*.pdf"))


def test_one_piece_is_not_for_a_printer_measured_at_home(small: Path) -> None:
    ran = run("template", "job.toml", "--one-piece", "--printer", "study")
    assert ran.code == 2 and "--printer" in ran.err and "--one-piece" in ran.err and not list(small.glob("*.pdf"))
