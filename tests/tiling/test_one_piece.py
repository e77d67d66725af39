"""Large pages for a print shop or plotter: their number and size, what is on them, and the small file beside them."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pypdf
import pytest

from templates_gen.base.geometry import Rect
from templates_gen.base.units import show_both
from templates_gen.documents.instructions.first_pages import draw_first_pages
from templates_gen.documents.print_shop import ask_for, shop_note
from templates_gen.drawing.items import Template, Text
from templates_gen.drawing.pdf.writing import write_pdf
from templates_gen.job.paper_sizes import on_its_side, roll_for
from templates_gen.tiling.demand import nail_box
from tests.documents import test_lettering_apart as lettering
from tests.documents import test_read_back as marks
from tests.documents import test_read_back_drop_scales as drop_scales
from tests.documents import test_read_back_lines as lines
from tests.made import LARGE, lying, made, make, roll
from tests.running import run
from tests.wall_reading import CLOSE, HAIR, is_upright, shown, wide

POINT = 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3, and the international inch of 1959
MOST = 5000.0  # mm; our own limit, below the 14,400 units of ISO 32000-1, Annex C.2

ONE = ("one piece", "one piece, inches")
LYING = ("one piece, lying", "two panels")
PIECES = (*ONE, *LYING)

UNFIT = (
    "test_rules_are_as_long_as_an_a4_page_allows",
    "test_the_centre_line_breaks_off_on_a_scale_to_mark_a_nail_on",
    "test_the_cross_is_where_it_should_be_in_pixels",
)
"""The first two are about one job, the last about the samples alone."""

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


@pytest.mark.parametrize(
    ("name", "pages"), [("one piece", 1), ("one piece, inches", 1), ("one piece, lying", 1), ("two panels", 2)]
)
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


def test_a_page_lies_on_its_side_where_it_then_comes_off_a_narrower_roll() -> None:
    """The row is 3 · 500 + 2 · 50 = 1600 mm wide and 400 high; with 49 and 56 mm around it, as above, 1649 by 456: off
    a roll of 24 in (609.6 mm) when it lies, and off none of 24 to 44 in (1117.6 mm) when it stands."""
    done = made("one piece, lying")
    page, group = done.sheets.page, done.plan.group
    assert (group.width, group.height) == pytest.approx((1600.0, 400.0))
    assert 456.0 <= page.width * POINT < 456.0 + POINT and 1649.0 <= page.height * POINT < 1649.0 + POINT
    assert tuple(done.reader.pages[0]["/MediaBox"])[2:] == (page.width, page.height)
    (sheet,) = done.report["sheets"]
    a, b, c, d, _, _ = sheet["to_page"]
    assert (a, d) == pytest.approx((0.0, 0.0), abs=1e-9) and (b, -c) == pytest.approx((1 / POINT, 1 / POINT))
    assert done.report["paper"]["width"] == pytest.approx(page.width * POINT)


@pytest.mark.parametrize(
    ("size", "unit", "roll", "lies"),
    [
        # narrower than the roll as it stands, and longer: nothing is turned
        ((600.0, 2000.0), "in", "24 in", False), ((600.0, 600.0), "in", "24 in", False),
        # 36 in = 914.4 mm; 42 in = 1066.8; 44 in = 1117.6: the international inch of 1959
        ((2000.0, 914.0), "in", "36 in", True), ((1000.0, 915.0), "in", "42 in", False),
        ((1200.0, 1117.0), "in", "44 in", True), ((1200.0, 1118.0), "in", None, False),
        ((2000.0, 610.0), "mm", "610 mm", True), ((2000.0, 611.0), "cm", "914 mm", True),
        ((1060.0, 1068.0), "mm", "1067 mm", False), ((1068.0, 1068.0), "mm", None, False),
    ],
)  # fmt: skip
def test_the_narrowest_usual_roll_is_asked_for(
    size: tuple[float, float], unit: str, roll: str | None, lies: bool
) -> None:
    lying = on_its_side(*size, unit)
    found = roll_for(size[1 if lying else 0], unit)
    assert (lying, found and found.name) == (lies, roll)


@pytest.mark.parametrize("name", [*LARGE])
def test_the_lines_for_the_print_shop_say_size_roll_and_rulers_and_name_nobody(name: str) -> None:
    done = made(name)
    note = shop_note(done.sheets, done.job.unit, "ferns.pdf")
    page = done.sheets.page
    assert len(note.encode()) < 1000 and "ferns.pdf" in note and "at 100 %" in note and "no scaling" in note
    assert f"{page.width * POINT:.0f} mm" in note and f"{page.height * POINT:.0f} mm" in note
    assert "80 to 90 g/m²" in note and "matte" in note
    rulers = {round(ruler["length"]) for ruler in done.report["rules"]}
    assert all(f"{length} mm" in note for length in rulers)
    assert ("on its side" in note) == (name in LYING)
    assert ("They are right" if len(done.sheets.sheets) > 1 else "It is right") in note
    assert (len(rulers) == 1) == ("are both " in note)
    ask = ask_for(done.sheets, done.job.unit)
    wanted = roll_for(page.width * POINT, done.job.unit)
    assert f"{wanted.name} roll" in ask if wanted else "no usual roll" in ask
    of = show_both(done.sheets.paper.width, done.job.unit) if "roll" in name else wanted and wanted.both
    assert (f"from a roll of {of}" if of else "wider than a roll of") in note


def test_a_page_that_lies_along_its_roll_is_not_said_to_be_wider_than_any() -> None:
    """A group wider than high off a roll of 610 mm (24 in): the drawing's height is the roll's width."""
    done = make(lying(roll(610.0)))
    assert done.sheets.page.width * POINT > 1118  # more than 44 in, the widest of the usual rolls
    assert "from a roll of 24 in · 610 mm" in shop_note(done.sheets, "in", "ferns.pdf")


def test_a_page_is_said_in_the_units_of_the_job(small: Path) -> None:
    text = re.sub(r"= (\d+)$", r'= "\1 mm"', Path("job.toml").read_text(encoding="utf-8"), flags=re.MULTILINE)
    Path("job.toml").write_text(text.replace('unit = "mm"', 'unit = "in"'), encoding="utf-8")
    last = run("template", "job.toml", "--one-piece", "-o", "big.pdf").out.splitlines()[-1]
    assert re.fullmatch(r"big\.pdf: 1 sheet of [0-9 /]+ in × [0-9 /]+ in, for a print shop or plotter", last)


def test_sheets_of_a_roll_are_said_to_come_off_it(small: Path) -> None:
    last = run("template", "job.toml", "--paper", "roll 610 mm", "-o", "big.pdf").out.splitlines()[-1]
    assert re.match(r"big\.pdf: 1 sheet off a roll of 610 mm, [0-9]+ mm × [0-9]+ mm, for a print shop", last)


def test_the_lines_for_the_print_shop_are_a_file_that_is_written_again(small: Path) -> None:
    for _ in range(2):
        ran = run("template", "job.toml", "--one-piece", "-o", "big.pdf")
        assert ran.code == 0 and "big-print-shop.txt: the lines to send along to a print shop" in ran.out
    assert "about big.pdf:" in (small / "big-print-shop.txt").read_text(encoding="utf-8")
    (small / "big-print-shop.txt").write_text("mine")
    assert run("template", "job.toml", "--one-piece", "-o", "big.pdf").code == 2
    assert (small / "big-print-shop.txt").read_text() == "mine"


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
    page = done.sheets.page
    sides = {True: page.width * POINT, False: page.height * POINT}  # a line along the page's own lower side is level
    for ruler in done.report["rules"]:
        level = ruler["from"][1] == ruler["to"][1]
        assert min(900.0, sides[level] / 2) < ruler["length"] <= 1000.0


def test_two_panels_share_a_strip_with_two_register_marks_and_a_trim_line() -> None:
    done = made("two panels")
    (join,) = done.sheets.joins
    assert len(done.sheets.marks) == 2 and {len(mark.sheets) for mark in done.sheets.marks} == {2}
    over = next(sheet for sheet in shown("two panels") if sheet.name == join.over)
    cuts = [s for s in wide(over.segments, HAIR) if is_upright(s) and abs(s.x0 - join.x0) < CLOSE]
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
    assert "toothed line" not in words and "slanting bars" not in words and "Tape each" not in words
    assert "Put the target's window on the cross" in words and "not at full size: do not use it" in words


def test_panels_are_taped_as_sheets_are() -> None:
    words = said("two panels")
    assert "Cut along the toothed lines" in words and "Then tape" not in words
    assert "Tape the columns to each other, from the left column to the right, the cut edge always on top: 2 (" in words


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
    first, note, last = ran.out.splitlines()
    assert re.fullmatch(r"big\.pdf: 1 sheet of \d+ mm × \d+ mm, for a print shop or plotter", last)
    assert first.startswith("big-first-pages.pdf: ") and note.startswith("big-print-shop.txt: ")
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
