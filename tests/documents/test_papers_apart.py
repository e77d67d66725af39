"""Lettering on every paper beside the template, of every job: nothing collides, and nothing is cut off by a printer."""

from __future__ import annotations

import pytest

from templates_gen.base.geometry import Rect
from templates_gen.drawing.items import Text
from tests.made import NAMES, made
from tests.papers import PAPERS, POINT, paper

TOLERANCE = 0.01
"""mm that boxes may share: far below what an eye sees.  Common practice, no source."""

every_paper = pytest.mark.parametrize("kind", PAPERS)
all_jobs = pytest.mark.parametrize("name", NAMES)


def boxes(kind: str, name: str) -> list[list[tuple[str, Rect]]]:
    lettering = made(name).lettering
    return [
        [(item.text, lettering.box(item)) for item in page.page_items if isinstance(item, Text)]
        for page in paper(kind, name).pages
    ]


@every_paper
@all_jobs
def test_no_two_texts_overlap(kind: str, name: str) -> None:
    found = [
        (one, two)
        for page in boxes(kind, name)
        for at, (one, a) in enumerate(page)
        for two, b in page[at + 1 :]
        if a.grown(-TOLERANCE / 2).overlaps(b)
    ]
    assert found == []


@every_paper
@all_jobs
def test_every_text_is_inside_what_the_printer_can_reach(kind: str, name: str) -> None:
    """Margins of 7 mm, and 13 mm at the foot: those of our own jobs here."""
    width, height = (side * POINT for side in paper(kind, name).page_size)
    reach = Rect(7.0, 13.0, width - 7.0, height - 7.0).grown(TOLERANCE)
    assert [text for page in boxes(kind, name) for text, box in page if not reach.holds(box)] == []


@every_paper
@all_jobs
def test_every_frame_is_there_once_by_its_id(kind: str, name: str) -> None:
    """In bold of 5 mm and more (ISO 3098-1 series, from memory): on the measuring sheet in the order of the job, as in
    its spreadsheet; on labels in reading order, as on the wall."""
    found = [
        item.text
        for page in paper(kind, name).pages
        for item in page.page_items
        if isinstance(item, Text) and item.bold and item.height >= 5.0 and not item.text.endswith(": measuring sheet")
    ]
    on_the_wall = [hung.frame for hung in made(name).plan.frames]
    frames = made(name).job.frames if kind == "measuring sheet" else on_the_wall
    assert found == [frame.id for frame in frames]
