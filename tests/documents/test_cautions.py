"""What to take care of: once for every wall, in a box of half a page at most, before the step that nails."""

from __future__ import annotations

import pytest

from templates_gen.base.geometry import Rect
from templates_gen.documents.instructions.cautions import cautions, take_care
from templates_gen.drawing.flow import Flow
from templates_gen.drawing.items import Page, Polygon, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.model import Wall
from tests.documents.test_guide import all_jobs, guide_page, texts
from tests.made import made

# what a nail may go into or through, and who is to be asked, once for every wall
ONCE = (
    "gas and heating pipes", "wall and floor heating", "chimneys and flues", "fire-rated", "party walls",
    "stressed steel", "vapour barrier", "landlord's permission", "plastic pipes without water", "dead cables",
    "behind foil", "leave the nail in", "switch off at the breaker", "close the main valve", "no flame",
    "three points of contact while climbing", "insulating-board partitions",
)  # fmt: skip


@all_jobs
def test_the_cautions_are_said_once_on_a_page_before_the_nailing_and_take_half_of_it_at_most(name: str) -> None:
    done = made(name)
    number, _ = guide_page(name)
    ((at, care),) = [(n, p) for n, p in enumerate(done.template.pages[:number], 1) if "Take care" in said_on(p)]
    box = next(
        i
        for i in care.page_items
        if isinstance(i, Polygon) and not i.filled and i.points[1][0] - i.points[0][0] > 100.0
    )
    low, high = (pick(y for _, y in box.points) for pick in (min, max))
    assert at <= number and high - low <= done.sheets.page.printable.height / 2
    inside = [text for text in texts(care) if low < text.y < high]
    words = " ".join(text.text for text in inside)
    assert [part for part in ONCE if words.count(part) != 1] == []
    assert all(low < done.lettering.box(text).y0 and done.lettering.box(text).y1 < high for text in inside)
    assert all(done.lettering.box(text).x1 < box.points[1][0] for text in inside)


def said_on(page: Page) -> list[str]:
    return [text.text for text in texts(page)]


def test_cautions_that_no_page_of_small_paper_holds_are_all_there_without_a_box() -> None:
    flow = Flow(Rect(0.0, 0.0, 60.0, 80.0), Lettering())
    take_care(flow, Wall(name="", width=4000.0, height=2600.0))
    words = " ".join(item.text for page in flow.pages for item in page if isinstance(item, Text))
    assert len(flow.pages) > 1 and not any(isinstance(item, Polygon) for page in flow.pages for item in page)
    assert [part for part in ONCE if part not in words] == []


@pytest.mark.parametrize(
    ("wiring", "who"), [("us", "a licensed"), ("uk", "a registered or qualified"), ("", "a licensed")]
)
def test_experts_go_by_the_names_of_their_country(wiring: str, who: str) -> None:
    words = " ".join(words for _, words in cautions(Wall(name="", width=4000.0, height=2600.0, wiring=wiring)))
    assert f"ask {who} electrician or plumber" in words
