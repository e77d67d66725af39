"""Words by a line, under a nail's label and around a sheet's number: no edge of a frame runs through or along them."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

import pytest

from templates_gen.base.geometry import Rect
from templates_gen.documents.sheets.of_centre import OF_CENTRE, ON_SHEET
from templates_gen.drawing.houses import house_size
from templates_gen.job.model import Fixing, Hanger, Height, Wall
from templates_gen.job.stairs import Stairs
from tests.jobs import frame, group, job, paper
from tests.made import Everything, made, make
from tests.page_texts import Lettered, on_page


@cache
def kites() -> Everything:
    """Seven frames that climb with a stair: on one of their sheets the pitch line has little room in a frame."""
    stairs = Stairs(x=500.0, y=178.0, slope=178.0 / 260.0, run=260.0, rise=178.0, top=2136.0)
    wall = Wall(name="", width=5200.0, height=4600.0, stairs=stairs)
    names = ("Cirrus", "Stratus", "Nimbus", "Altus", "Cumulus", "Fogbank", "Squall")
    of = group(
        (names,), "stairs", 90.0, height=Height(by="above_nosings", at=1500.0), slope=stairs.slope, centre_on=2500.0
    )
    return make(job(*(frame(name, 300.0, 400.0, 60.0) for name in names), wall=wall, group=of, paper=paper("a4")))


@cache
def scroll() -> Everything:
    """A frame on two plates whose holes stand half an inch above its top edge."""
    plates = Hanger(kind="plates", left=50.8, right=50.8, drop_left=-12.7, drop_right=-12.7)
    item = frame("I", 342.9, 800.0, None, hanger=plates, fixing=Fixing(kind="screw", diameter=4.0))
    return make(job(item, unit="in", group=group((("I",),)), paper=paper("letter")))


def texts_on_wall(done: Everything) -> Iterator[tuple[Lettered, Rect]]:
    """Every text of the sheets, and what it takes on the wall (mm)."""
    before = len(done.template.pages) - len(done.sheets.sheets)
    for at, sheet in enumerate(done.sheets.sheets, before + 1):
        away = sheet.window.x0 - sheet.page.printable.x0, sheet.window.y0 - sheet.page.printable.y0
        yield from ((text, text.box.shifted(*away)) for text in on_page(done.template, done.lettering, at).texts)


def edges(done: Everything) -> Iterator[Rect]:
    """The outer edges of the frames, as lines on the wall."""
    for hung in done.plan.frames:
        r = hung.rect
        yield from (Rect(r.x0, y, r.x1, y) for y in (r.y0, r.y1))
        yield from (Rect(x, r.y0, x, r.y1) for x in (r.x0, r.x1))


def crossed(done: Everything, said: str) -> list[str]:
    """Those of the sheets' texts that begin so and lie on an edge of a frame; there are some that begin so."""
    lines, found = list(edges(done)), [(text.text, box) for text, box in texts_on_wall(done) if said in text.text]
    assert found
    return [
        text
        for text, box in found
        if any(box.x0 <= x.x1 and x.x0 <= box.x1 and box.y0 <= x.y1 and x.y0 <= box.y1 for x in lines)
    ]


def test_the_name_of_a_pitch_line_crosses_no_frame() -> None:
    assert crossed(kites(), "pitch line") == []


def test_no_edge_strikes_the_words_for_which_line_a_nail_is_left_or_right_of() -> None:
    assert ON_SHEET.endswith(OF_CENTRE)
    assert crossed(scroll(), OF_CENTRE) == []


def test_a_hole_above_the_frame_is_told_so_and_has_no_drop_scale() -> None:
    words = [text.text for text, _ in texts_on_wall(scroll())]
    assert "hole 1/2 in · 13 mm above the top edge" in words and not any(word.startswith("drop") for word in words)
    assert not [text for text, _ in texts_on_wall(scroll()) if text.form.startswith("scale")]


def test_the_figures_along_the_level_line_say_what_they_count() -> None:
    words = [text.text for text, _ in texts_on_wall(made("fern-prints"))]
    assert any(word.endswith("above the floor; figures: inches from the centre line") for word in words)


@pytest.mark.parametrize("name", ["fern-prints", "kiln-tiles", "twelve, a4, marks"])
def test_no_side_of_a_sheets_house_closes_up_with_an_edge_beside_it(name: str) -> None:
    """A millimetre and more, or else the edge runs through the house, where there is no other room."""
    done, near = made(name), []
    numbers = {sheet.name for sheet in done.sheets.sheets}
    for text, box in texts_on_wall(done):
        if text.text in numbers and text.height >= 5.0 and not text.form:
            half = house_size(text.text, text.height, done.lettering)[0] / 2
            beside = [edge for edge in edges(done) if edge.x0 == edge.x1 and edge.y0 < box.cy < edge.y1]
            near += [text.text for edge in beside if 0.0 <= abs(edge.x0 - box.cx) - half < 1.0]
    assert near == []
