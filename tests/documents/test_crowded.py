"""What must hold on the fullest sheets: jobs by chance, cut and uncut, with every cover."""

from __future__ import annotations

import pytest

from templates_gen.base.geometry import Rect
from templates_gen.base.units import show
from templates_gen.documents.sheets.layers import lay
from templates_gen.documents.sheets.sheet_marks import nail_labels
from templates_gen.drawing.items import Line
from templates_gen.tiling.demand import nail_box
from tests.documents import test_lettering_apart as lettering
from tests.made import CROWDED, made
from tests.page_texts import pages, sheet_pages, to_page_mm
from tests.tiling import test_nails_mode as separate

ROOM = 80.0
"""mm both ways of a frame on one sheet, in which two nail labels leave room for its own.  Our own design, no source."""

crowded = pytest.mark.parametrize("name", CROWDED)

HOLDING = (
    lettering.test_no_two_texts_overlap,
    lettering.test_no_text_touches_a_nail_cross,
    lettering.test_every_text_is_inside_what_the_printer_can_reach,
    lettering.test_no_text_is_cut_off_at_the_edge_of_a_window,
    lettering.test_labels_of_nails_stand_near_them,
    lettering.test_every_frame_has_its_id_on_every_sheet_that_shows_a_good_part,
)


@crowded
@pytest.mark.parametrize("holds", HOLDING, ids=lambda test: test.__name__)
def test_lettering_holds_on_crowded_sheets(holds, name: str) -> None:
    holds(name)


@crowded
def test_no_lettering_lies_on_a_release_slit(name: str) -> None:
    for page in pages(name):
        slits = [nail_box(x, y).grown(-0.01) for x, y in page.nails]
        on = [text.text for text in page.texts if text.form != "nail" and any(text.seen.overlaps(s) for s in slits)]
        assert on == [], page.label


@crowded
def test_lines_that_lead_to_labels_cross_no_nail_and_no_lettering(name: str) -> None:
    """They are level or upright, and end at the square of 9 mm about their nail (our own design, no source)."""
    done = made(name)
    nails = [nail_box(nail.x, nail.y) for nail in done.plan.nails]
    for laid in lay(done.plan, done.sheets, 0, done.lettering):
        items = laid.drawn[nail_labels].items
        texts = [done.lettering.box(item) for item in items if not isinstance(item, Line)]
        for lead in (item for item in items if isinstance(item, Line)):
            line = Rect(min(lead.x0, lead.x1), min(lead.y0, lead.y1), max(lead.x0, lead.x1), max(lead.y0, lead.y1))
            assert min(line.width, line.height) == 0.0
            assert not any(line.grown(0.01).overlaps(box.grown(-0.02)) for box in (*nails, *texts))
            assert any(nail.gap_to(line) < 1.0 + 0.01 for nail in nails)


@crowded
def test_every_frame_has_its_label_where_a_sheet_shows_enough_of_it(name: str) -> None:
    done = made(name)
    for hung in done.plan.frames:
        width, height = (show(side, done.job.unit) for side in (hung.rect.width, hung.rect.height))
        size, found, shown = f"{width.rpartition(' ')[0]} × {height}", 0, 0.0
        for sheet, page in sheet_pages(name):
            if part := sheet.inner.meet(hung.rect):
                shown = max(shown, min(part.width, part.height))
            (x0, y0), (x1, y1) = (
                to_page_mm(sheet, hung.rect.x0, hung.rect.y0), to_page_mm(sheet, hung.rect.x1, hung.rect.y1),
            )  # fmt: skip
            inside = [text.text for text in page.texts if Rect(x0, y0, x1, y1).holds(text.seen)]
            found += any(text.startswith(size) for text in inside) and hung.frame.id in inside
        assert found == 1 or (found == 0 and shown < ROOM), hung.frame.id


@pytest.mark.parametrize("name", [name for name in CROWDED if name.endswith("nails")])
def test_large_figures_have_room_beside_labels(name: str) -> None:
    """All of them, in figures at least 5 mm high (ISO 3098-1 series, from memory)."""
    separate.test_the_figures_say_from_which_rule_they_are_measured(name)
    for _, page in sheet_pages(name):
        told = [
            at for at, text in enumerate(page.texts) if text.text.endswith((" the level ruler:", "the upright ruler:"))
        ]
        assert len(told) == 2 and all(page.texts[at + 1].height >= 5.0 for at in told)


def test_some_labels_are_led_to() -> None:
    """Or the test above would look at nothing."""
    leads = 0
    for name in ("uncut letter, all", *CROWDED):
        done = made(name)
        every = lay(done.plan, done.sheets, 0, done.lettering)
        leads += sum(isinstance(item, Line) for laid in every for item in laid.drawn[nail_labels].items)
    assert leads
