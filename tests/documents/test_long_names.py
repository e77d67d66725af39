"""Frames whose names are long and begin alike: on every paper each is told from the other, and figures stay large."""

from __future__ import annotations

from functools import cache

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.documents.labels.label_sheet import label_sheet
from templates_gen.documents.labels.labels import labels
from templates_gen.documents.measuring.sheet import measuring_sheet
from templates_gen.documents.schedule.table import as_text
from templates_gen.documents.sheets.nail_marks import place_label
from templates_gen.drawing.items import Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.placing import Room
from templates_gen.job.paper_sizes import own_paper
from tests.jobs import frame, group, job
from tests.made import Everything, make
from tests.page_texts import on_page
from tests.papers import read_back
from tests.pdf_reading import Marks
from tests.proofs import drawn

OLD, NEW, BETWEEN = "Liverwort of the old weirs", "Liverwort of the new weirs", "A"
JOB = job(
    frame(OLD, 340.0, 440.0, 50.0, title="Found by the school in spring, under the third arch of the bridge"),
    frame(BETWEEN, 340.0, 440.0, 50.0),
    frame(NEW, 340.0, 440.0, 54.0, title="Found by the school in autumn, where the ferry lies"),
    frame("B", 340.0, 440.0, 48.0),
    group=group(((OLD, BETWEEN, NEW), ("B",)), gap=50.0),
)


@cache
def template() -> Everything:
    return make(JOB)


def words(pages: list[Marks]) -> str:
    return " ".join(text.text for page in pages for text in page.texts)


def test_a_label_has_the_whole_name_and_both_units() -> None:
    lettering = Lettering()
    sheet = label_sheet(own_paper(JOB), "mm", (90.0, 50.0))
    said = words(read_back(labels(plan_wall(JOB), sheet, lettering), lettering))
    assert OLD in said and NEW in said and "…" not in said
    assert said.count("drop 50 mm · 1 15/16 in") == 2


def test_a_measuring_sheet_makes_a_name_small_before_it_cuts_it() -> None:
    lettering = Lettering()
    said = words(read_back(measuring_sheet(JOB, own_paper(JOB), lettering), lettering))
    assert OLD in said and NEW in said


def test_no_line_of_a_schedule_cuts_a_size() -> None:
    lines = as_text(plan_wall(JOB)).splitlines()
    heads = [line for line in lines if line.startswith("Liverwort")]
    assert len(heads) == 2
    assert all(len(line) <= 80 and line.endswith("340 × 440 mm") for line in heads)


def test_a_proof_names_every_frame_in_full_and_no_line_strikes_a_name() -> None:
    proof, view, lettering = drawn(JOB)
    page = on_page(proof, lettering, 1)
    for name, hung in ((OLD, 0), (NEW, 2)):
        at = view.rect(plan_wall(JOB).frames[hung].rect)
        found = [text for text in page.texts if text.form == "names" and at.x0 < text.box.cx < at.x1]
        assert " ".join(text.text for text in found) == name
        assert not any(line.meet(text.box) for text in found for line in page.lines if line.height > 2 * line.width)


def test_figures_of_a_nail_are_no_smaller_for_its_long_name() -> None:
    """There is room for the name 3.5 mm high, not for 5 mm: the figures are 2.5 mm all the same, not 1.8, which are for
    what is read near by (ISO 3098-1, from memory)."""
    plan, lettering = plan_wall(JOB), Lettering()
    hung = plan.frames[0]
    (nail,) = hung.nails
    room = Room(Rect(nail.x - 12.5 - lettering.width(OLD, 3.5, True), nail.y - 60.0, nail.x + 30.0, nail.y + 30.0))
    _, label = place_label(nail, hung, plan, room, lettering)
    heights = {item.height for item in label if isinstance(item, Text) and item.text != OLD}
    assert heights == {2.5}


def test_the_map_names_a_frame_in_short_where_its_name_is_too_long() -> None:
    (page,) = template().marks[:1]
    assert any(text.text.startswith("Liverwort") and text.text.endswith("…") for text in page.texts)
