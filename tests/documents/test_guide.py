"""The hanging guide: one page before the sheets, its steps in order, the frames' order, and what to have ready."""

from __future__ import annotations

from typing import Any

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.documents.instructions.first_pages import draw_first_pages
from templates_gen.documents.instructions.guide import GUTTER, TICK
from templates_gen.documents.instructions.hanging_day import hanging_order, hanging_steps
from templates_gen.documents.instructions.sketches import Sketch
from templates_gen.documents.instructions.wording import own_tools
from templates_gen.drawing.items import Circle, Item, Line, Page, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.model import Fixing, Frame, Hanger, Height, Studs, Wall
from templates_gen.tolerance.holding import plan_sheets
from tests.jobs import frame, group, job
from tests.made import LARGE, NAMES, asked, made, make

all_jobs = pytest.mark.parametrize("name", NAMES)
TITLE = "The hanging day"


def guide_page(name: str) -> tuple[int, Page]:
    """Its number from 1, and the page."""
    ((number, page),) = [(n, p) for n, p in enumerate(made(name).template.pages, 1) if p.title.endswith(TITLE)]
    return number, page


def texts(page: Page) -> list[Text]:
    return [item for item in page.page_items if isinstance(item, Text)]


@all_jobs
def test_it_is_one_page_the_last_before_the_sheets(name: str) -> None:
    done = made(name)
    number, page = guide_page(name)
    assert done.report["sheets"][0]["page"] == number + 1
    said = [text.text for text in texts(page)]
    steps = list(hanging_steps(done.plan, done.sheets))
    assert [text.text for text in texts(page) if text.height == 5.0] == [f"{n}" for n in range(1, len(steps) + 1)]
    assert [step.name for step in steps if step.name not in said] == []
    words = " ".join(said)
    assert [step.words for step in steps if step.words not in words] == []


def ticked(page: Page) -> list[str]:
    """What stands just right of a box to tick off."""
    outlines = [bounds_of(item) for item in page.page_items if isinstance(item, Polygon) and len(item.points) == 4]
    boxes = [box for box in outlines if box.width == pytest.approx(TICK) == box.height]
    return [
        text.text for box in boxes for text in texts(page) if 0 < text.x - box.x1 < 3.0 and box.y0 < text.y < box.y1
    ]


def bounds_of(item: Polygon) -> Rect:
    across, up = zip(*item.points, strict=True)
    return Rect(min(across), min(up), max(across), max(up))


@all_jobs
def test_every_tool_that_the_day_asks_for_is_there_to_be_ticked_off(name: str) -> None:
    tools = ticked(guide_page(name)[1])
    usual = ["tape measure", "spirit level", "pencil", "scissors", "knife", "low-tack tape", "string"]
    assert [tool for tool in usual if tool not in tools] == []
    done = made(name)
    asked = " ".join(step.words for step in hanging_steps(done.plan, done.sheets)).lower()
    assert [tool for tool in ("spirit level", "pencil", "string") if tool in asked and tool not in tools] == []


@pytest.mark.usefixtures("sheets_searched_as_usual")
def test_all_before_the_sheets_of_the_fern_prints_is_on_three_pages_at_most() -> None:
    """How to print and tape, what was found with the schedule, and the hanging day, with the cautions over it.

    A second, for the sheets are those of a user's run: how large their map is, and how many lines their taping takes,
    depends on them.
    """
    done = make(asked("fern-prints"))
    titles = [page.title for page in done.template.pages[: -len(done.sheets.sheets)]]
    assert [title for title in titles if title] == ["How to print and tape", "Schedule", TITLE] and len(titles) <= 3


def test_what_leaves_room_on_its_page_has_the_guide_under_it() -> None:
    """The cautions of the kiln tiles, which take less than half of a page."""
    assert TITLE in (said := [text.text for text in texts(guide_page("kiln-tiles")[1])]) and "Take care" in said


@all_jobs
def test_the_outline_leads_to_the_guide_and_to_the_schedule(name: str) -> None:
    done = made(name)
    begins = {
        title: done.reader.get_destination_page_number(entry)
        for entry in done.reader.outline for title in entry.title.split(" · ")
    }  # fmt: skip
    assert begins[TITLE] + 1 == guide_page(name)[0]
    schedule = next(n for n, page in enumerate(done.template.pages) if "Schedule" in [t.text for t in texts(page)])
    assert begins["Schedule"] == schedule


@all_jobs
def test_the_steps_come_in_the_order_of_the_day_with_the_nails_in_before_the_paper_moves(name: str) -> None:
    done = made(name)
    names = [step.name for step in hanging_steps(done.plan, done.sheets)]
    day = ["Cut the slits", "Mark the wall", "Paper up", "Nail", "Paper off", "Hang", "Level each",
           "Step back"]  # fmt: skip
    assert [one for one in names if one in day] == day
    missing = any(len(hung.nails) < len(hung.bearings) for hung in done.plan.frames)
    assert ("Mark the rest" in names) == (missing and done.sheets.paper.cover != "nails")  # which has no drop scale
    nail = next(step for step in hanging_steps(done.plan, done.sheets) if step.name == "Nail")
    assert "firmly before the paper moves" in nail.words and "cables and pipes" in nail.words


@pytest.mark.parametrize(
    ("hangers", "words"),
    [
        (("wire",), "Pull the wire taut at the hook, measure from there to"),
        (("sawtooth",), "Measure from where the hanger bears to"),
        (("wire", "sawtooth"), "Measure from where the hanger bears, with a wire pulled taut at its hook, to"),
    ],
)
def test_a_drop_is_measured_at_the_wall_as_its_hanger_asks(hangers: tuple[str, ...], words: str) -> None:
    frames = [frame(kind, drop=None, hanger=Hanger(kind=kind)) for kind in hangers]
    plan = plan_wall(job(*frames, group=group((hangers,), gap=50.0)))
    marked = next(
        step for step in hanging_steps(plan, plan_sheets(plan, plan.job.paper)) if step.name == "Mark the rest"
    )
    assert words in marked.words and marked.words.endswith("drop scale: a bare nail or a screw goes just under it.")


@pytest.mark.parametrize(("names", "told"), [(("1", "2"), True), (("A", "12"), False)])
def test_turns_are_told_from_names_that_are_numbers_too(names: tuple[str, ...], told: bool) -> None:
    plan = plan_wall(job(*(frame(name) for name in names), group=group((names,), gap=50.0)))
    hang = next(step for step in hanging_steps(plan, plan_sheets(plan, plan.job.paper)) if step.name == "Hang")
    assert ("turns, not names" in hang.words) == hang.words.startswith("Hang frame ") == told


RINGS = Hanger(kind="rings", left=40.0, right=40.0, drop_left=60.0, drop_right=60.0)


@pytest.mark.parametrize(
    ("hangers", "slide", "teeth", "firm"),
    [
        ((Hanger(kind="wire"),), True, False, ""),
        ((Hanger(kind="sawtooth"),), False, True, ""),
        ((RINGS, RINGS), False, False, "(A, B)"),
        ((Hanger(kind="wire"), RINGS), True, False, "(B)"),
        ((Hanger(kind="wire", apart=100.0, drop_at_two=90.0), Hanger(kind="sawtooth")), True, True, ""),
        ((Hanger(kind="cleat", left=40.0, right=40.0, screw_below=20.0),), False, False, "(A)"),
    ],
)
def test_each_frame_is_levelled_as_its_hanger_lets_it(
    hangers: tuple[Hanger, ...], slide: bool, teeth: bool, firm: str
) -> None:
    frames = [frame(name, drop=30.0, hanger=hanger) for name, hanger in zip("AB", hangers, strict=False)]
    plan = plan_wall(job(*frames))
    step = next(each for each in hanging_steps(plan, plan_sheets(plan, plan.job.paper)) if each.name == "Level each")
    assert ("Slide a wire" in step.words) == slide  # on two hooks, too, as `correct` says
    assert ("or on both" in step.words) == any(hanger.apart is not None for hanger in hangers)
    assert ("by the tooth" in step.words) == teeth
    assert ("does not slide" in step.words) == bool(firm) and firm in step.words


@all_jobs
def test_a_step_keeps_to_its_column(name: str) -> None:
    """Names end before the next number begins, or the page ends: columns by where the numbers stand."""
    done = made(name)
    _, page = guide_page(name)
    names = {step.name for step in hanging_steps(done.plan, done.sheets)}
    rows: dict[float, list[Rect]] = {}
    for text in texts(page):
        if text.height == 5.0 or text.text in names:
            rows.setdefault(round(text.y, 3), []).append(done.lettering.box(text))
    for row in rows.values():
        for one, two in zip(row[1::2], row[2::2], strict=False):
            assert one.x1 < two.x0 - GUTTER / 2


@pytest.mark.parametrize("name", LARGE)
def test_where_the_first_pages_are_a_file_of_their_own_it_is_the_last_page_of_that(name: str) -> None:
    done = made(name)
    template = draw_first_pages(done.plan, (), done.sheets, None, done.lettering)
    assert template is not None and template.pages[-1].title.endswith(TITLE)


@all_jobs
def test_what_the_first_pages_said_of_care_they_still_say_before_it(name: str) -> None:
    number, page = guide_page(name)
    (top,) = (text.y for text in texts(page) if text.text == TITLE)
    above = [text for text in texts(page) if text.y > top]
    earlier = [text for one in made(name).template.pages[: number - 1] for text in texts(one)]
    before = " ".join(text.text for text in (*earlier, *above))
    for words in (
        "Take care",
        "Look with a detector before you nail",
        "electrician or plumber",
        "On a ladder",
        "asbestos",
    ):
        assert words in before


def test_the_middle_frame_hangs_first_then_from_the_top_down_and_outward() -> None:
    """The ferns: B spans the centre line; then the rest of its row, left before right; then the row below."""
    assert [hung.frame.id for hung in hanging_order(made("fern-prints").plan)] == ["B", "A", "C", "D", "E"]


def test_a_grid_of_an_even_number_is_begun_at_the_top_left_of_its_middle() -> None:
    names = tuple("abcdefgh")
    done = job(*(frame(n, 100, 100, 20) for n in names), group=group((names[:4], names[4:]), gap=50.0))
    assert [hung.frame.id for hung in hanging_order(plan_wall(done))] == ["b", "c", "a", "d", "f", "g", "e", "h"]


@all_jobs
def test_every_frame_hangs_once(name: str) -> None:
    plan = made(name).plan
    assert sorted(hung.frame.id for hung in hanging_order(plan)) == sorted(hung.frame.id for hung in plan.frames)


def test_what_to_have_ready_is_counted_and_has_a_box_for_each() -> None:
    """The ferns: A, C, D and E on a nail each, B on two hooks."""
    _, page = guide_page("fern-prints")
    said = [text.text for text in texts(page)]
    assert "4 nails" in said and "2 picture hooks" in said and "hammer" in said and "screwdriver" not in said
    boxes = [i for i in page.page_items if isinstance(i, Polygon) and not i.filled and _side(i) == pytest.approx(3.2)]
    assert len(boxes) == said.index("hammer") - said.index("tape measure") + 1


def _side(box: Polygon) -> float:
    return box.points[1][0] - box.points[0][0]


def test_screws_want_a_screwdriver_a_drill_and_plugs() -> None:
    """The alphabets: eight screws, and of their wall no studs are told."""
    _, page = guide_page("alphabet-column")
    said = [text.text for text in texts(page)]
    assert {"8 screws", "screwdriver", "drill and bits", "8 plugs or anchors"} <= set(said) and "hammer" not in said


@all_jobs
def test_a_detector_and_eye_protection_are_always_ready(name: str) -> None:
    assert {"detector", "eye protection"} <= {text.text for text in texts(guide_page(name)[1])}


def tools(*frames: Frame, **walled: Any) -> list[str]:
    wall = Wall(name="", width=4000.0, height=2600.0, **walled)
    return list(own_tools(plan_wall(job(*frames, wall=wall))))


def test_plugs_are_for_screws_that_are_not_known_to_go_into_wood() -> None:
    screwed = frame(fixing=Fixing(kind="screw"))
    stud = Studs(first=2000.0, spacing=600.0, width=38.0)  # the frame's middle, where its screw goes
    assert tools(screwed, build="masonry") == ["1 screw", "screwdriver", "drill and bits", "1 plug or anchor"]
    assert tools(screwed, build="timber") == tools(screwed, studs=stud) == ["1 screw", "screwdriver", "drill and bits"]
    assert tools(frame()) == ["1 nail", "hammer"]


@pytest.mark.parametrize(("middle", "climbed"), [(1600.0, []), (1750.0, ["step stool"]), (1900.0, ["ladder"])])
def test_what_to_stand_on_is_on_the_list(middle: float, climbed: list[str]) -> None:
    """The nail is 170 mm above the frame's middle, a drop of 80 mm below its top; over 1.8 m the findings ask for
    a step stool, over 2 m for a ladder (common practice, no source)."""
    high = job(frame(), group=group((("A",),), height=Height(by="centre", at=middle)))
    assert list(own_tools(plan_wall(high))) == ["1 nail", "hammer", *climbed]


def test_over_stairs_a_ladder_made_for_them_is_on_the_list() -> None:
    assert "ladder made for stairs, or platform" in own_tools(made("lock-keepers").plan)


def steps(*frames: Frame) -> dict[str, str]:
    plan = plan_wall(job(*frames))
    return {step.name: step.words for step in hanging_steps(plan, plan_sheets(plan, plan.job.paper))}


def test_a_heavy_frame_takes_two_people_in_its_step_and_on_the_list() -> None:
    """25 kg is over 20 lb (Earthquake Country Alliance, step 1), and its bare nail has no rating."""
    heavy = frame(weight=25.0, glazing="glass")
    assert steps(heavy)["Hang"] == "Two people: hang A, one at each side, nobody under it."
    assert "First settle what holds A: nobody rates a bare nail." in steps(heavy)["Nail"]
    assert tools(heavy)[2:] == ["rated fixings in place of nails (A)", "second person (A)"]
    assert steps(frame(weight=2.0))["Hang"] == "Hang A." and "settle" not in steps(frame())["Nail"]
    both = steps(frame("A", weight=25.0), frame("B", weight=2.0))
    assert both["Hang"].endswith(" Two people: hang A, one at each side, nobody under it.")


@all_jobs
def test_the_step_that_nails_sends_back_to_the_cautions(name: str) -> None:
    done = made(name)
    said = {step.name: step.words for step in hanging_steps(done.plan, done.sheets)}
    assert "Read “Take care” first." in said["Nail"]


def test_every_sketch_stays_in_its_field() -> None:
    done = made("fern-prints")
    field = Rect(100.0, 50.0, 160.0, 90.0)  # 60 by 40, as sketches are thought
    for step in (*hanging_steps(done.plan, done.sheets), *hanging_steps(made(SEPARATE).plan, made(SEPARATE).sheets)):
        pen = Sketch(field)
        step.draw(pen)
        assert pen.items, step.name
        assert [point for item in pen.items for point in _points(item) if not field.has_point(*point)] == [], step.name


SEPARATE = "twelve, a4, nails"


def _points(item: Item) -> list[tuple[float, float]]:
    if isinstance(item, Line):
        return [(item.x0, item.y0), (item.x1, item.y1)]
    if isinstance(item, Circle):
        return [(item.x - item.radius, item.y - item.radius), (item.x + item.radius, item.y + item.radius)]
    if isinstance(item, Polygon):
        return list(item.points)
    assert isinstance(item, Text)
    box = Lettering().box(item)
    return [(box.x0, box.y0), (box.x1, box.y1)]
