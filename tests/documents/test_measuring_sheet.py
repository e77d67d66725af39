"""The measuring sheet, read back: hangers at their places to scale and mirrored, blanks that a pencil can use."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.documents.measuring.sheet import measuring_sheet
from templates_gen.drawing.items import Line, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.model import Frame, Hanger
from templates_gen.job.paper_sizes import own_paper
from tests.jobs import frame, job
from tests.made import NAMES, made
from tests.papers import POINT, marks, paper, read_back
from tests.pdf_reading import Marks

CLOSE = 0.01  # mm; far below a pencil's line.  Common practice, no source
WIDE = 0.35  # mm; a frame's outline, ISO 128-2 series (from memory)
HAIR = 0.13  # mm; a blank, the same series
BLANK = 38.0  # mm; our own design, no source


def one_frame(drawn: Frame, unit: str = "mm") -> Marks:
    """The marks of a sheet for one frame, page points."""
    done = job(drawn, unit=unit)
    lettering = Lettering()
    (page,) = read_back(measuring_sheet(done, own_paper(done), lettering), lettering)
    return page


def outline(page: Marks) -> Rect:
    """The first frame's outside edge, mm."""
    lines = [line for line in page.segments if abs(line.width * POINT - WIDE) < 0.001][:4]
    xs, ys = [x * POINT for line in lines for x in (line.x0, line.x1)], [
        y * POINT for line in lines for y in (line.y0, line.y1)
    ]  # fmt: skip
    return Rect(min(xs), min(ys), max(xs), max(ys))


def scale(page: Marks) -> int:
    (found,) = (match[1] for text in page.texts if (match := re.search(r"seen from the back · 1 : (\d+)", text.text)))
    return int(found)


def circles(page: Marks, filled: bool) -> list[tuple[float, float, float]]:
    """x, y and radius in mm, from the left."""
    return sorted((c.cx * POINT, c.cy * POINT, c.r * POINT) for c in page.circles if (c.width == 0.0) == filled)


def test_a_frame_is_drawn_to_the_scale_that_is_written_there() -> None:
    page = one_frame(frame(width=412.0, height=287.0))
    rect = outline(page)
    assert (rect.width, rect.height) == pytest.approx((412.0 / scale(page), 287.0 / scale(page)), abs=CLOSE)


def test_a_wire_is_pulled_taut_to_its_drop_in_the_middle() -> None:
    page = one_frame(frame(width=412.0, height=287.0, drop=63.0))
    rect = outline(page)
    ((x, y, radius),) = circles(page, filled=True)  # the nail under it: the wire runs over its upper side
    assert (x, y + radius) == pytest.approx((rect.cx, rect.y1 - 63.0 / scale(page)), abs=CLOSE)


def test_two_hooks_are_as_far_apart_as_they_will_be_and_the_rings_where_they_are() -> None:
    wire = Hanger(kind="wire", apart=160.0, ring_separation=320.0, ring_depth=150.0, drop_at_two=110.0)
    page = one_frame(frame(width=400.0, height=500.0, drop=90.0, hanger=wire))
    rect, one_to = outline(page), scale(page)
    nails = [(x, y + radius) for x, y, radius in circles(page, filled=True)]
    expected = [(rect.cx + dx / one_to, rect.y1 - drop / one_to) for dx, drop in ((-80, 110), (0, 90), (80, 110))]
    assert [at for nail in nails for at in nail] == pytest.approx([at for nail in expected for at in nail], abs=CLOSE)
    rings = [(x, y) for x, y, _ in circles(page, filled=False)]
    expected = [(rect.cx + dx / one_to, rect.y1 - 150 / one_to) for dx in (-160, 160)]
    assert [at for ring in rings for at in ring] == pytest.approx([at for ring in expected for at in ring], abs=CLOSE)


@pytest.mark.parametrize("kind", ["rings", "keyholes"])
def test_a_pair_is_mirrored_the_right_one_on_the_wall_is_to_the_left_of_the_back(kind: str) -> None:
    """On the wall the left one is 38 mm in and 70 mm down, the right one 61 mm in and 92 mm down."""
    pair = Hanger(kind=kind, left=38.0, right=61.0, drop_left=70.0, drop_right=92.0)
    page = one_frame(frame(width=400.0, height=500.0, hanger=pair))
    rect, one_to = outline(page), scale(page)
    found = circles(page, filled=False)
    assert [x for x, _, _ in found] == pytest.approx([rect.x0 + 61.0 / one_to, rect.x1 - 38.0 / one_to], abs=CLOSE)
    down = [rect.y1 - y for _, y, _ in found]
    assert down[0] - down[1] == pytest.approx((92.0 - 70.0) / one_to, abs=CLOSE)
    if kind == "rings":  # its upper inside is where it bears
        assert [d - r for d, (_, _, r) in zip(down, found, strict=True)] == pytest.approx(
            [92.0 / one_to, 70.0 / one_to], abs=CLOSE
        )
    words = [text.text for text in page.texts]
    asked = {words[at + 1]: words[at] for at in range(len(words) - 1) if words[at].startswith("was ")}
    name = "ring" if kind == "rings" else "slot"
    assert asked[f"left {name} from behind: in by"] == "was 61 mm"
    assert asked[f"right {name} from behind: in by"] == "was 38 mm"
    assert (
        next(was for what, was in asked.items() if what.startswith("left") and what.endswith("from behind: drop"))
        == "was 92 mm"
    )


def test_plates_that_stand_out_under_the_frame_are_drawn_there_clear_of_the_width() -> None:
    plates = Hanger(kind="plates", left=38.0, right=61.0, drop_left=512.0, drop_right=514.0)
    page = one_frame(frame(width=400.0, height=500.0, drop=None, hanger=plates))
    rect, one_to = outline(page), scale(page)
    holes = [(x, y) for x, y, r in circles(page, filled=False) if abs(r - 0.8) < CLOSE]  # our own size of a hole
    expected = [
        (rect.x0 + 61.0 / one_to, rect.y1 - 514.0 / one_to),
        (rect.x1 - 38.0 / one_to, rect.y1 - 512.0 / one_to),
    ]
    assert [at for hole in holes for at in hole] == pytest.approx([at for hole in expected for at in hole], abs=CLOSE)
    drawn = [text for text in page.texts if re.fullmatch("[a-f]", text.text) and text.x * POINT < rect.x1]
    assert sorted(text.text for text in drawn) == [*"abcdef"]
    assert [text.text for text in drawn if text.y * POINT < rect.y0] == ["e"]  # the width's, and no other dimension's
    words = " ".join(text.text for text in page.texts)
    assert "Pull" not in words and "left hole from behind: drop" in words


def test_the_screws_of_a_cleat_are_mirrored_too() -> None:
    cleat = Hanger(kind="cleat", left=90.0, right=140.0, screw_below=22.0)
    page = one_frame(frame(width=500.0, height=700.0, drop=55.0, hanger=cleat))
    rect, one_to = outline(page), scale(page)
    screws = [(x, y) for x, y, _ in circles(page, filled=True)]
    expected = [(rect.x0 + 140.0 / one_to, rect.y1 - 77.0 / one_to), (rect.x1 - 90.0 / one_to, rect.y1 - 77.0 / one_to)]
    assert [at for screw in screws for at in screw] == pytest.approx([at for one in expected for at in one], abs=CLOSE)


@pytest.mark.parametrize("name", NAMES)
def test_over_every_blank_a_pencil_has_room_for_figures_8_mm_high(name: str) -> None:
    done = made(name)
    count = 0
    for page in paper("measuring sheet", name).pages:
        blanks = [
            item for item in page.page_items
            if isinstance(item, Line) and item.width == HAIR and abs(item.x1 - item.x0 - BLANK) < CLOSE
        ]  # fmt: skip
        texts = [done.lettering.box(item) for item in page.page_items if isinstance(item, Text)]
        lines = [Rect(b.x0, b.y0, b.x1, b.y0) for b in blanks]
        for blank in blanks:
            room = Rect(blank.x0, blank.y0 + 0.2, blank.x1, blank.y0 + 8.2)
            assert not any(room.overlaps(text) for text in texts)
            assert not any(room.has_point(line.x0, line.y0) for line in lines)
        count += len(blanks)
    # width, height and weight of every frame, and one to four of its hanger: our own design, no source
    assert 4 * len(done.job.frames) <= count <= 7 * len(done.job.frames)


@pytest.mark.parametrize("name", NAMES)
def test_every_page_says_what_matters(name: str) -> None:
    pages = marks("measuring sheet", name)
    for number, page in enumerate(pages, 1):
        words = " ".join(text.text for text in page.texts)
        wires = any(frame.hanger.traits.on_wire for frame in made(name).job.frames)
        assert ("Pull the wire taut" in words) == wires and "even if it has a twin" in words
        assert f"page {number} of {len(pages)}" in words
    told = [text.text for page in pages for text in page.texts if "seen from the back · 1 :" in text.text]
    assert len(told) == len(made(name).job.frames)


def test_what_is_known_is_there_to_check_against_and_what_is_not_is_blank() -> None:
    words = [text.text for page in marks("measuring sheet", "fern-prints") for text in page.texts]
    # drops of A, B's two and C and D in the sample; E has none
    assert [word for word in words if word in ("was 3 1/8 in", "was 4 1/4 in", "was 4 3/16 in", "was 3 in")] == [
        "was 3 1/8 in", "was 4 1/4 in", "was 4 3/16 in", "was 3 in",
    ]  # fmt: skip
    last = words[words.index("Lady fern") :]
    asked = last[last.index("taut wire to the top edge") - 1]
    assert not asked.startswith("was ")


def test_frames_do_not_lie_on_each_other_and_stay_on_the_page() -> None:
    for name in NAMES:
        for page in paper("measuring sheet", name).pages:
            rules = [item.y0 for item in page.page_items if isinstance(item, Line) and item.width == 0.18
                     and abs(item.y1 - item.y0) < CLOSE and item.x1 - item.x0 > 140.0]  # fmt: skip
            assert rules and all(a - b > 50.0 for a, b in pairwise(rules)), name


def test_paper_that_is_too_small_is_refused() -> None:
    done = job()
    with pytest.raises(InputError, match="a5 is too small for a measuring sheet"):
        measuring_sheet(done, own_paper(done, "a5"), Lettering())


def emptiest(page: Marks, height: float) -> float:
    """The highest band of a page (mm) that nothing is on, from its top to its foot."""
    ys = sorted(y * POINT for line in page.segments for y in (line.y0, line.y1))
    marked = sorted({*ys, *(text.y * POINT for text in page.texts), 0.0, height})
    return max(after - before for before, after in pairwise(marked))


def mixed() -> list[Frame]:
    """Nine frames of a house: a mirror on rings, and prints of three sizes on wires and sawtooth hangers."""
    rings = Hanger(kind="rings", left=50.0, right=50.0, drop_left=108.0, drop_right=106.0)
    sizes = {"b": (406.4, 508.0), "c": (406.4, 508.0), "d": (279.4, 355.6), "e": (279.4, 355.6), "f": (279.4, 355.6)}
    wired = [frame(name, *size) for name, size in sizes.items()]
    small = [frame(name, 203.2, 254.0, 11.0, hanger=Hanger(kind="sawtooth")) for name in "ghi"]
    return [frame("a", 609.6, 914.4, None, hanger=rings), *wired, *small]


@pytest.mark.parametrize("size", ["letter", "a4"])
def test_nine_frames_take_three_pages_and_leave_no_quarter_of_one_empty(size: str) -> None:
    lettering, done = Lettering(), job(*mixed())
    own = own_paper(done, size)
    pages = read_back(measuring_sheet(done, own, lettering), lettering)
    assert len(pages) == 3
    for page in pages:
        assert emptiest(page, own.height) < own.height / 4
        words = [text.text for text in page.texts]
        assert sum("seen from the back · 1 :" in text for text in words) == 3


@pytest.mark.parametrize("name", NAMES)
def test_no_page_with_several_frames_is_empty_for_a_quarter(name: str) -> None:
    done = made(name)
    pages, height = marks("measuring sheet", name), own_paper(done.job).height
    for page in pages:
        if sum("seen from the back · 1" in text.text for text in page.texts) > 1:
            assert emptiest(page, height) < height / 4


def test_no_measure_has_arrow_heads_for_an_arrow_on_paper_says_what_is_up() -> None:
    """Measures end in oblique strokes (among the ends of ISO 129-1, from memory), both ways 1.1 mm, our own design."""
    for page in paper("measuring sheet", "fern-prints").pages:
        filled = [item for item in page.page_items if isinstance(item, Polygon) and item.filled and item.grey == 0.0]
        assert [item for item in filled if len(item.points) == 3] == []
        lines = [item for item in page.page_items if isinstance(item, Line)]
        strokes = [s for s in lines if s.x1 - s.x0 == pytest.approx(2.2) and s.y1 - s.y0 == pytest.approx(2.2)]
        assert len(strokes) >= 2


def test_it_says_how_to_write_a_plate_that_stands_out():
    minus, out = "write a minus before the figure", Hanger(kind="plates", left=-14.0, right=-14.0, drop_left=90.0)
    told = [" ".join(text.text for text in one_frame(frame(hanger=each)).texts) for each in (out, Hanger(kind="wire"))]
    assert [minus in words for words in told] == [True, False]
