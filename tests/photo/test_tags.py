"""Photo tags: read back by OpenCV from the rendered pages, at their places on the wall, with nothing in their way."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import NamedTuple

import cv2
import numpy as np
import pypdfium2
import pytest

from templates_gen.base.record import replace
from templates_gen.documents.instructions.hanging_day import hanging_steps
from templates_gen.documents.instructions.taping_steps import day_before
from templates_gen.documents.photo_card import card_pages, cards_of
from templates_gen.documents.photographed import drawn_tags, lacking
from templates_gen.documents.sheets.photo_tags import ON_A_SHEET, tag_side
from templates_gen.drawing.items import moved
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.writing import write_pdf
from templates_gen.drawing.tags import ACROSS, COUNT, number_of, quiet, tag_form, tag_name, white_modules
from templates_gen.tiling.sheet import SheetPlan
from tests.crowded import crowded
from tests.jobs import paper
from tests.made import Everything, make, twelve

DOTS = 300.0
FAMILY = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_APRILTAG_36h11)

JOBS = {
    "marks": lambda: twelve(paper("a4", photo=True)),
    "linked": lambda: twelve(paper("letter", cover="linked", photo=True), "in"),
    "uncut": lambda: twelve(paper("a4", trim="none", cover="linked", photo=True)),
    "crowded": lambda: crowded(2, paper("letter", photo=True), "in"),
}


@cache
def tagged(name: str) -> Everything:
    return make(JOBS[name]())


class Picture(NamedTuple):
    """A page in pixels, and how many pixels a point has across and up: rendering stretches it to whole pixels."""

    pixels: np.ndarray
    scale: np.ndarray

    def points(self, x: np.ndarray, y: np.ndarray) -> np.ndarray:
        """Points of the page, up from its foot, for pixels; OpenCV counts from the middle of the first one."""
        return np.c_[x + 0.5, self.pixels.shape[0] - y - 0.5] / self.scale


def pages(pdf: bytes) -> list[Picture]:
    found = []
    for page in pypdfium2.PdfDocument(pdf):
        pixels = page.render(scale=DOTS / 72, grayscale=True).to_numpy()
        found.append(Picture(pixels, np.array(pixels.shape[::-1]) / page.get_size()))
    return found


def found(picture: Picture) -> dict[int, np.ndarray]:
    """The corners of every tag on a page, from its upper left one clockwise, in points up from its foot."""
    parameters = cv2.aruco.DetectorParameters()
    parameters.cornerRefinementMethod = cv2.aruco.CORNER_REFINE_SUBPIX
    parameters.adaptiveThreshWinSizeMax = parameters.adaptiveThreshWinSizeMin  # black on white needs no other tries
    corners, ids, _ = cv2.aruco.ArucoDetector(FAMILY, parameters).detectMarkers(picture.pixels)
    seen = {} if ids is None else dict(zip(ids.ravel().tolist(), corners, strict=True))
    return {number: picture.points(*c[0].T) for number, c in seen.items()}


def test_every_code_is_the_one_that_is_published():
    assert COUNT == FAMILY.bytesList.shape[0] == 587
    for number in range(COUNT):
        published = cv2.aruco.generateImageMarker(FAMILY, number, ACROSS)
        drawn = np.zeros((ACROSS, ACROSS), np.uint8)
        for x, y in white_modules(number):
            drawn[ACROSS - 1 - y, x] = 255
        assert (drawn == published).all(), number


@pytest.mark.parametrize("number", [0, 17, 301, 586])
def test_outlines_fill_the_modules_of_a_tag(number):
    picture = np.full((80, 80), 128, np.uint8)
    for item in tag_form(number, 80.0).items:
        cv2.fillPoly(picture, [np.array([(x, 80 - y) for x, y in item.points], int)], int(255 * item.grey))
    assert (picture[5::10, 5::10] == cv2.aruco.generateImageMarker(FAMILY, number, ACROSS)).all()


def test_the_name_of_a_form_tells_its_number():
    assert number_of(tag_name(17)) == 17 and number_of("nail") is None


@pytest.mark.parametrize("name", JOBS)
def test_tags_are_read_back_at_their_places_on_the_wall_and_the_white_around_them_is_white(name):
    done = tagged(name)
    tags = drawn_tags(done.plan, done.sheets, done.template)
    assert len({tag.number for tag in tags}) == len(tags) > 3 * len(done.sheets.sheets)
    seen = pages(done.pdf)
    first = len(seen) - len(done.sheets.sheets)
    assert not any(map(found, seen[:first:4]))
    for sheet, picture in list(zip(done.sheets.sheets, seen[first:], strict=True))[::4]:
        own, there = {tag.number: tag for tag in tags if tag.sheet == sheet.name}, found(picture)
        assert set(there) == set(own)
        for number, corners in there.items():
            r = own[number].box
            wall = ((r.x0, r.y1), (r.x1, r.y1), (r.x1, r.y0), (r.x0, r.y0))
            where = np.array([moved(sheet.to_page, *point) for point in wall])
            assert np.abs(where - corners).max() * 25.4 / 72 < 0.1  # mm, a good pixel at 300 dots per inch
    white_around(tags, tag_side(done.plan), done.sheets, seen[first:])


def white_around(tags, side: float, sheets: SheetPlan, seen: Sequence[Picture]) -> None:
    for sheet, picture in zip(sheets.sheets, seen, strict=True):
        for tag in (tag for tag in tags if tag.sheet == sheet.name):
            box = tag.box.grown(quiet(side) - 0.3)
            (x0, y0), (x1, y1) = moved(sheet.to_page, box.x0, box.y0), moved(sheet.to_page, box.x1, box.y1)
            (x0, x1), (y0, y1) = sorted((x0, x1)), sorted((y0, y1))
            at, high = np.round(np.array([x0, x1, y0, y1]) * DOTS / 72).astype(int), picture.pixels.shape[0]
            patch = picture.pixels[high - at[3] : high - at[2], at[0] : at[1]].copy()
            edge = int((quiet(side) - 0.6) / 25.4 * DOTS)
            patch[edge:-edge, edge:-edge] = 255
            assert patch.min() > 250, (sheet.name, tag)


@pytest.mark.parametrize("name", ["marks", "linked", "uncut"])
def test_no_tag_lies_under_another_sheet(name):
    """Other sheets' paper reaches to the page's end, but for the sides on which it is cut; worked out here anew."""
    done = tagged(name)
    lays = {(join.over, join.under) for join in done.sheets.joins}
    cut = done.job.paper.trim == "cut"
    for tag in drawn_tags(done.plan, done.sheets, done.template):
        for sheet in done.sheets.sheets:
            if sheet.name == tag.sheet or (tag.sheet, sheet.name) in lays:
                continue
            points = [moved(sheet.to_page, x, y) for x, y in ((tag.box.x0, tag.box.y0), (tag.box.x1, tag.box.y1))]
            width, height = done.template.page_size
            if sheet.page is not done.sheets.page:
                continue  # its page lies on its side, and its points run otherwise
            on_page = all((points[0][0] < width, points[1][0] > 0, points[0][1] < height, points[1][1] > 0))
            sides = {join.upright for join in done.sheets.joins if join.over == sheet.name and cut}
            off = (True in sides and tag.box.x1 <= sheet.cell.x0) or (False in sides and tag.box.y1 <= sheet.cell.y0)
            assert not on_page or off, (tag, sheet.name)


def test_a_sheet_with_room_for_fewer_says_so():
    done = tagged("crowded")
    tags = drawn_tags(done.plan, done.sheets, done.template)
    few = [s for s in done.sheets.sheets if sum(tag.sheet == s.name for tag in tags) < ON_A_SHEET]
    said = lacking(tags, done.sheets)
    assert all(f"{sheet.name} (" in said for sheet in few) and bool(few) == bool(said)


def test_nothing_changes_where_no_tags_are_asked_for():
    plain = twelve(paper("a4", cover="linked"))
    done = make(plain)
    assert "photo_tags" not in done.report and not any(form.name.startswith("tag ") for form in done.template.forms)
    tags = make(replace(plain, paper=replace(plain.paper, photo=True)))
    assert [sheet.window for sheet in tags.sheets.sheets] == [sheet.window for sheet in done.sheets.sheets]


@pytest.mark.parametrize("size", ["a4", "letter", "a3"])
def test_both_cards_are_read_back(size):
    cards, lettering = cards_of(size), Lettering()
    seen = [found(picture) for picture in pages(write_pdf(card_pages(cards, lettering), lettering))]
    assert [set(one) for one in seen] == [{number for number, _ in card.tags} for card in cards]
    assert not set(seen[0]) & set(seen[1])
    for card, one in zip(cards, seen, strict=True):
        for number, square in card.tags:
            middle = one[number].mean(0) * 25.4 / 72
            assert np.hypot(*(middle - (square.cx, square.cy))) < 0.1  # mm
            assert square.width == (60.0 if size == "a3" else 40.0)


@pytest.mark.parametrize("photo", [True, False])
def test_the_first_pages_and_the_hanging_day_say_what_the_tags_are_for(photo):
    done = make(twelve(paper("a4", photo=photo)))
    taping = [words for words in day_before(done.plan, done.sheets) if "photo taped JOB PHOTO" in words]
    (nailing,) = [step.words for step in hanging_steps(done.plan, done.sheets) if step.name == "Nail"]
    assert len(taping) == photo and nailing.startswith("Photograph the whole paper before") == photo
