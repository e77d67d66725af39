"""Running text: lines break where they may, paragraphs stay whole, and a table's columns suit what is in them."""

from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.drawing.blocks import wrapped
from templates_gen.drawing.flow import AIR, Flow
from templates_gen.drawing.items import Item, Text
from templates_gen.drawing.lettering import Lettering

LETTERING = Lettering()
LENGTHS = "from 48 9/16 in · 1233 mm to 0.27 in · 6.9 mm, E1 to E4 (5), 20 lb (9.1 kg), 100 % of a row · b"

words = st.lists(st.text("abcdefgh", min_size=1, max_size=12), min_size=1, max_size=12).map(" ".join)


def texts(items: Sequence[Item]) -> list[Text]:
    return [item for item in items if isinstance(item, Text)]


@given(st.integers(40, 160))
def test_no_line_parts_a_length_from_its_unit_or_begins_with_a_dot(width: int) -> None:
    """40 mm hold each of the lengths by itself."""
    lines = wrapped(LENGTHS, 2.5, False, width, LETTERING)
    assert " ".join(lines) == LENGTHS
    assert all(LETTERING.width(line, 2.5) <= width + 1e-6 for line in lines)
    apart = ("48", "9/16", "0.27", "6.9", "1233", "20", "100", "E4")
    assert [line for line in lines if line.startswith("·") or line.split()[-1] in apart] == []


def test_where_a_length_is_wider_than_the_line_nothing_of_it_is_lost() -> None:
    assert wrapped("48 9/16 in", 2.5, False, 9.0, LETTERING) == ["48", "9/16", "in"]


def test_a_paragraph_stays_whole_and_takes_the_next_pages_width() -> None:
    narrow, wide = Rect(20, 20, 80, 40), Rect(5, 5, 175, 100)
    flow = Flow(narrow, LETTERING, wide)
    flow.paragraph("short")
    flow.paragraph("a word and one more " * 12)
    first, second = (texts(page) for page in flow.pages)
    assert [text.text for text in first] == ["short"]
    assert {text.x for text in second} == {5.0}
    assert max(LETTERING.width(text.text, 2.5) for text in second) > narrow.width


@given(st.lists(st.tuples(words, words, words), min_size=1, max_size=8))
def test_no_cell_is_cut_or_broken_where_the_page_is_wide_enough(rows: list[tuple[str, str, str]]) -> None:
    widest = [max(LETTERING.width(cell, 2.5) for cell in column) for column in zip(*rows, strict=True)]
    flow = Flow(Rect(0, 0, sum(widest) + 3 * AIR, 500), LETTERING)
    flow.table(("", "", ""), rows)
    assert [text.text for text in texts(flow.pages[0])] == [cell for row in rows for cell in row]
    for text in texts(flow.pages[0]):
        assert text.x + LETTERING.width(text.text, 2.5) <= flow.area.x1 + 1e-6


def test_where_it_is_not_only_the_widest_column_is_narrowed() -> None:
    long = "may run here: straight above or below the outlet beside the till"
    flow = Flow(Rect(0, 0, 90, 100), LETTERING)
    flow.table(("nail", "cables", "found"), [("A left", long, "1, 2"), ("B", "look first", "")])
    said = [text.text for text in texts(flow.pages[0])]
    assert {"A left", "1, 2", "look first"} < set(said)
    assert " ".join(text for text in said if text in long) == long


@pytest.mark.parametrize("strong", [False, True])
def test_a_column_with_nothing_in_it_is_left_out(strong: bool) -> None:
    flow = Flow(Rect(0, 0, 90, 100), LETTERING)
    flow.table(("nail", "stud", "found"), [("A", "", "1"), ("B", "", "")], strong=lambda row: strong and row[2] == "1")
    assert [(text.text, text.bold) for text in texts(flow.pages[0])] == [
        ("nail", True), ("found", True), ("A", strong), ("1", strong), ("B", False),
    ]  # fmt: skip


def test_a_table_with_its_heading_is_not_parted_where_it_fits_on_half_a_page() -> None:
    """The heading and a row fit at the foot of the page, all five rows do not: all begins on the next one."""
    flow = Flow(Rect(0, 0, 90, 100), LETTERING)
    flow.paragraph("above", 60.0)

    def write(flow: Flow) -> None:
        flow.heading("What every nail carries")
        flow.table(("nail", "found"), [(f"{number}", "1") for number in range(5)])

    assert flow.together(write) == 1
    assert [len(texts(page)) for page in flow.pages] == [1, 13]


@given(st.floats(5.0, 60.0))
def test_a_heading_is_never_left_alone_at_the_foot_of_a_page(left: float) -> None:
    flow = Flow(Rect(0.0, 0.0, 150.0, 100.0), LETTERING)
    flow.top = left
    flow.pages[-1].append(Text(0.0, 99.0, "above", 2.5))
    words = "one two three four five six seven eight nine ten eleven twelve " * 3
    flow.heading("Before you hang", follows=flow.depth(words))
    flow.paragraph(words)
    pages = [[text.text for text in texts(page)] for page in flow.pages]
    (headed,) = [page for page in pages if "Before you hang" in page]
    assert len(headed) > headed.index("Before you hang") + 1
