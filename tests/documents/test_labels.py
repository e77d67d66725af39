"""Labels for the backs, read back: each in its place by size and pitch, and what it says of its frame."""

from __future__ import annotations

from pathlib import Path

import pypdf
import pytest

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.documents.labels.label_sheet import label_sheet
from templates_gen.documents.labels.labels import labels
from templates_gen.drawing.items import Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.model import Hanger
from templates_gen.job.paper_sizes import own_paper
from templates_gen.tolerance.neighbours import neighbours
from tests.jobs import Spot, frame, group, job
from tests.made import SAMPLE_NAMES, made
from tests.papers import FIRST, LABEL, PITCH, POINT, marks, paper
from tests.running import run

CLOSE = 0.01  # mm; far below what a cutter or an eye sees.  Common practice, no source
A4 = (595 * POINT, 841 * POINT)  # ISO 216 in whole points, floored: worked out by hand here


def place(number: int, columns: int = 3, rows: int = 8) -> Rect:
    """Label `number` of our test sheet, counted from the upper left by rows: mm from the page's lower left.

    3 columns of 70 mm are 210 mm, 8 rows are 4.5 + 7 · 37 + 36 = 299.5 mm: too many by one, worked out by hand here.
    """
    row, column = divmod(number % (columns * rows), columns)
    left, top = FIRST[0] + column * PITCH[0], A4[1] - FIRST[1] - row * PITCH[1]
    return Rect(left, top - LABEL[1], left + LABEL[0], top)


def test_as_many_labels_as_the_sheet_holds_are_counted() -> None:
    done = job()
    sheet = label_sheet(own_paper(done, "a4"), "mm", LABEL, PITCH, FIRST)
    assert (sheet.columns, sheet.rows) == (3, 7)  # 8 rows would end 299.5 mm down


@pytest.mark.parametrize("name", ["twelve, a4, marks", "fern-prints"])
def test_every_label_has_its_words_and_its_arrow_inside_its_place_by_the_pitch(name: str) -> None:
    """The first four labels are used up."""
    done = made(name)
    (page,) = paper("sheet of labels", name).pages
    spots = [place(number, rows=7) for number in range(4, 4 + len(done.job.frames))]
    for hung, spot in zip(done.plan.frames, spots, strict=True):
        inside = [item for item in page.page_items if isinstance(item, Text) and spot.holds(done.lettering.box(item))]
        assert {hung.frame.id, "up"} <= {item.text for item in inside}
    held = [sum(spot.holds(done.lettering.box(t)) for spot in spots) for t in page.page_items if isinstance(t, Text)]
    assert set(held) == {1}
    (drawn,) = marks("sheet of labels", name)
    tips = [max(area, key=lambda point: point[1]) for area in drawn.areas]
    inner = [(x * POINT, y * POINT) for (x, y), spot in zip(tips, spots, strict=True) if spot.x1 < 209.0]
    expected = [(spot.x1 - 3.0 - 3.5, spot.y1 - 3.0) for spot in spots if spot.x1 < 209.0]  # inset and half an arrow
    assert [at for tip in inner for at in tip] == pytest.approx([at for tip in expected for at in tip], abs=CLOSE)


def test_labels_go_on_on_a_second_sheet_and_the_first_is_begun_where_it_was_left() -> None:
    frames = [frame(f"{number}", 100, 100, 20) for number in range(1, 31)]
    done = job(*frames, group=group((tuple(f.id for f in frames),), gap=10.0))
    sheet, lettering = label_sheet(own_paper(done, "a4"), "mm", LABEL, PITCH, FIRST), Lettering()
    drawn = labels(plan_wall(done), sheet, lettering, 5)
    ids = [[i.text for i in p.page_items if isinstance(i, Text) and i.height > 4.0] for p in drawn.pages]
    assert [len(page) for page in ids] == [16, 14]  # 21 - 5, and the rest of 30
    first = next(i for i in drawn.pages[0].page_items if isinstance(i, Text) and i.text == "1")
    assert place(5, rows=7).holds(lettering.box(first))


def test_plain_paper_has_lines_to_cut_along_side_by_side() -> None:
    (page,) = paper("labels to cut", "fern-prints").pages
    outlines = [item.points for item in page.page_items if isinstance(item, Polygon) and not item.filled]
    assert len(outlines) == 5
    for corners in outlines:  # 3 1/2 by 2 in of 25.4 mm: our own design, no source
        assert corners[2][0] - corners[0][0] == pytest.approx(88.9)
        assert corners[2][1] - corners[0][1] == pytest.approx(50.8)
    assert outlines[1][0][0] == pytest.approx(outlines[0][1][0])
    (stuck,) = paper("sheet of labels", "fern-prints").pages
    assert not [item for item in stuck.page_items if isinstance(item, Polygon) and not item.filled]


def said(name: str, frame_id: str) -> list[str]:
    """What the label to cut of a frame says, from its id on."""
    (page,) = paper("labels to cut", name).pages
    texts = [item.text for item in page.page_items if isinstance(item, Text)]
    start = texts.index(frame_id)
    return texts[start : texts.index("up", start)] if "up" in texts[start:] else texts[start:]


def test_what_the_labels_of_the_ferns_say() -> None:
    """Heights worked out by hand here: the group's foot is at 28 + 8 = 36 in, its lower row 11 1/4 in high, the gap
    2 1/2, the upper row 20 1/4: B's top edge at 70 in, its bearings 4 3/16 and 4 1/4 lower (as seen from the front),
    its hooks' nails 7/8 above them: 66 11/16 and 66 5/8. From behind left and right change places."""
    words = said("fern-prints", "B")
    assert words[:3] == ["B", "Royal fern", "Fern prints"]
    assert words[3:] == [
        "top edge 70 in · 1778 mm above the floor",
        "left nail (facing) = right ring from behind:",
        "drop 4 3/16 in · 106 mm, 66 11/16 in · 1694 mm above the floor",
        "right nail (facing) = left ring from behind:",
        "drop 4 1/4 in · 108 mm, 66 5/8 in · 1692 mm above the floor",
        "facing the wall, it hangs right of A, left of C, above D and E",
    ]  # fmt: skip
    assert "drop not measured yet facing the wall, it hangs right of D, below B" in " ".join(said("fern-prints", "E"))


def test_a_long_title_is_wrapped_before_it_is_cut_and_one_without_end_is_cut_with_an_ellipsis() -> None:
    title = "The fern house in winter, seen from the north, with snow on its roof and no light inside"
    fitting = job(frame(title=title))
    (page,) = labels(plan_wall(fitting), label_sheet(own_paper(fitting), "mm"), Lettering()).pages
    texts = [item.text for item in page.page_items if isinstance(item, Text)]
    assert title in " ".join(texts) and not [text for text in texts if "…" in text]
    endless = job(frame(title=f"{title} " * 9, hanger=Hanger(kind="wire")))
    (page,) = labels(plan_wall(endless), label_sheet(own_paper(endless), "mm"), Lettering()).pages
    cut = [item.text for item in page.page_items if isinstance(item, Text) and "…" in item.text]
    assert len(cut) == 1 and title.startswith(cut[0].rstrip("…"))


def test_a_long_name_makes_no_other_label_small() -> None:
    long = frame("Zwiebelkuchenteigschüssel", title="The bowl in which the dough of the onion cake rises by the oven")
    plan = plan_wall(job(frame("A", title="Rye"), long, frame("C", title="Rye")))
    alone = plan_wall(job(frame("A", title="Rye"), frame("B"), frame("C", title="Rye")))

    def heights(of: Plan) -> list[float]:
        (page,) = labels(of, label_sheet(own_paper(of.job), "mm"), Lettering()).pages
        return [item.height for item in page.page_items if isinstance(item, Text) and item.text == "Rye"]

    assert heights(plan) == heights(alone) and min(heights(plan)) >= 2.5


@pytest.mark.parametrize("name", SAMPLE_NAMES)
def test_no_word_on_a_samples_labels_is_cut_short(name: str) -> None:
    for page in paper("labels to cut", name).pages:
        assert [item.text for item in page.page_items if isinstance(item, Text) and "…" in item.text] == []


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (("--label", "300", "50"), ("--label", "300 mm × 50 mm", "does not fit on a4 paper, 210 mm × 297 mm")),
        (("--label", "0", "50"), ("--label", "found 0")),
        (("--label", "wide", "50"), ("--label", "'wide'")),
        (("--label", "30", "12"), ("--label", "30 × 12 mm, too small")),
        (("--label", "70", "36", "--pitch", "60", "36"), ("--pitch", "60 mm × 36 mm", "at least the 70 mm × 36 mm")),
        (("--label", "70", "36", "--first", "150", "10"), ("--label", "150 mm from the left", "does not fit")),
        (("--label", "70", "36", "--first", "-3", "10"), ("--first", "'-3'", "zero or more")),
        (("--skip", "10"), ("--skip", "found 10", "the 10 labels of a sheet")),
        (("--paper", "a44"), ("--paper", "'a44'")),
    ],
)
def test_what_does_not_fit_the_sheet_is_refused(options: tuple[str, ...], words: tuple[str, ...], small: Path) -> None:
    ran = run("labels", "job.toml", *options)
    assert (ran.code, ran.out) == (2, "")
    assert [word for word in words if word not in " ".join(ran.err.split())] == [], ran.err
    assert [path.name for path in small.iterdir()] == ["job.toml"]


def test_the_command_says_where_the_labels_are_and_how_many(small: Path) -> None:
    ran = run("labels", "job.toml")
    assert (ran.code, ran.out, ran.err) == (0, "job-labels.pdf: 1 label on 1 page of a4 paper\n", "")


def test_on_another_wall_the_labels_give_the_heights_there(small: Path) -> None:
    (small / "hall.toml").write_text("[wall]\nwidth = 3000\nheight = 2400\n[group]\nheight = { top = 2000 }\n")
    ran = run("labels", "job.toml", "--wall", "hall.toml")
    assert (ran.code, ran.out) == (0, "job-hall-labels.pdf: 1 label on 1 page of a4 paper\n")
    assert "top edge 2000 mm" in pypdf.PdfReader(small / "job-hall-labels.pdf").pages[0].extract_text()


@pytest.mark.parametrize(("off", "told"), [(0.0, True), (25.0, True), (90.0, False)])
def test_frames_placed_by_hand_a_little_off_the_gap_are_neighbours_all_the_same(off: float, told: bool) -> None:
    """A gap of 60 mm, frames of 400 by 500: C stands `off` more to the right of B; A and B, and C and D, keep it."""
    at = {"A": (-460.0, 0.0), "B": (0.0, 0.0), "C": (460.0 + off, 0.0), "D": (460.0 + off, -560.0)}
    spots = tuple((name, Spot(point="centre", x=x, y=y)) for name, (x, y) in at.items())
    asked = replace(group((tuple("ABCD"),)), arrangement="placed", spots=spots, gap_across=60.0, gap_down=60.0)
    plan = plan_wall(job(*map(frame, "ABCD"), group=asked))
    pairs = {pair.one.frame.id + pair.two.frame.id for pair in neighbours(plan)}
    assert pairs == ({"AB", "BC", "CD"} if told else {"AB", "CD"})


def test_a_label_of_a_frame_over_a_stair_says_how_high_above_the_tread() -> None:
    done = made("lock-keepers")
    sheet = label_sheet(own_paper(done.job, "a4"), "mm", (100.0, 60.0))
    items = [item for page in labels(done.plan, sheet, done.lettering).pages for item in page.page_items]
    words = " ".join(item.text for item in items if isinstance(item, Text))
    assert words.count("above the tread") == len(done.plan.frames) + len(done.plan.nails)
    # Ada's nail is 1241.4 mm from the wall's left end, which is over the third tread of 10 in from 20 in on, and 2320.8
    # mm above the lower floor; three times 7 1/2 in are 571.5 mm
    assert "nail 68 7/8 in · 1749 mm above the tread" in words
