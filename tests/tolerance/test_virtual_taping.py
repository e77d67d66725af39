"""Print, disturb, find the marks in the pixels, tape by them, and see where the nails have come to."""

from __future__ import annotations

import random
from functools import cache

import numpy as np

from templates_gen.documents.sheets.join_marks import bars_form
from templates_gen.documents.sheets.nail_marks import NAIL_FORM, nail_form
from templates_gen.drawing.items import Page, Template, Use
from templates_gen.drawing.items import moved as brought
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.writing import write_pdf
from tests.made import made
from tests.taping import PIXEL, Disturbance, find, moved, patch, printed, rigid, taped

SAMPLE = "alphabet-column"
STRAIGHT = Disturbance()
REACH = 4.0
"""mm around where a mark was printed that it is looked for: more than the shifts below.  Our own design."""


def sheets_of(name: str):
    """(page index, {registration mark: page mm}, {nail: page mm}) for every sheet, as drawn."""
    report = made(name).report
    found = []
    for sheet in report["sheets"]:
        page, to_page = sheet["page"], tuple(value * 25.4 / 72 for value in sheet["to_page"])
        marks, nails = (
            {one["name"]: brought(to_page, one["x"], one["y"]) for one in report[kind] if page in one["pages"]}
            for kind in ("register_marks", "nails")
        )
        found.append((page - 1, marks, nails))
    return found


def lying(name: str) -> set[int]:
    """The page indices of the sheets that lie on their sides: the wall's right is up the page."""
    return {sheet["page"] - 1 for sheet in made(name).report["sheets"] if abs(sheet["to_page"][1]) > 1.0}


def lain(picture: np.ndarray, on_its_side: bool) -> np.ndarray:
    """A picture (row 0 is the lower edge) as it is, or as it is on a page that lies on its side."""
    return np.rot90(picture, -1) if on_its_side else picture


@cache
def pictures():
    """What a registration mark (by whether its join is upright) and a nail mark look like, on a page of their own."""
    # 50.8 mm is a whole number of pixels (600), so that the marks lie in the middle of their pictures
    bars = {upright: bars_form(upright) for upright in (False, True)}
    places = {False: (25.4, 25.4), True: (76.2, 25.4)}
    uses = (Use(NAIL_FORM, 50.8, 101.6), *(Use(bars[way].name, *places[way]) for way in bars))
    page = Page(label="1", title="", page_items=uses)
    template = Template("marks", "", "en", (288, 432), (page,), (*bars.values(), nail_form()))
    image = printed(write_pdf(template, Lettering()), 0, STRAIGHT)
    register = {way: patch(image, *place, 116 * PIXEL)[0] for way, place in places.items()}
    nail, *_ = patch(image, 50.8, 101.6, 90 * PIXEL)
    return register, nail


def found_in_pixels(name: str, how: dict[int, Disturbance]):
    """For every sheet where its registration marks are in the pixels, and its nails: by name, in mm on the paper."""
    register, nail_picture = pictures()
    pdf, chance = made(name).pdf, random.Random(0)
    upright = {mark.name: mark.upright for mark in made(name).sheets.marks}
    seen, nails, sideways = [], [], lying(name)
    for page, marks, on_page in sheets_of(name):
        disturbance = how.get(page, STRAIGHT)
        image, matrix = printed(pdf, page, disturbance), disturbance.matrix()
        at = {key: moved(matrix, np.array([place]))[0] for key, place in {**marks, **on_page}.items()}
        guess = {key: place + np.array([chance.uniform(-1.5, 1.5) for _ in "xy"]) for key, place in at.items()}
        bars = {way: lain(bar, page in sideways) for way, bar in register.items()}
        nail = lain(nail_picture, page in sideways)
        seen.append({key: find(image, bars[upright[key]], *guess[key], REACH) for key in marks})
        nails.append({key: find(image, nail, *guess[key], REACH) for key in on_page})
    return seen, nails


@cache
def turned_and_found(name: str, seed: int):
    """Where marks and nails are found on pages that each lie turned and shifted in their own way."""
    chance = random.Random(seed)
    how = {
        page: Disturbance(turn=chance.uniform(-0.012, 0.012), shift=(chance.uniform(-3, 3), chance.uniform(-3, 3)))
        for page, *_ in sheets_of(name)
    }
    return found_in_pixels(name, how)


def nails_on_the_wall(seen, nails):
    """Where the nails come to, laid on the plan as a whole, and where they should be: two arrays of mm."""
    placed = taped(seen, range(len(seen)))
    came = {name: moved(placed[i], np.array([at]))[0] for i, some in enumerate(nails) for name, at in some.items()}
    plan = {nail.name: (nail.x, nail.y) for nail in made(SAMPLE).plan.nails}
    names = sorted(plan)
    found, wanted = np.array([came[name] for name in names]), np.array([plan[name] for name in names])
    return moved(rigid(found, wanted), found), wanted


def test_sheets_taped_by_their_marks_bring_every_nail_to_its_place():
    """Each printed turned and shifted in its own way."""
    found, wanted = nails_on_the_wall(*turned_and_found(SAMPLE, 5))
    assert np.abs(found - wanted).max() <= 0.05


def test_a_wrong_scale_shows_as_that_scale_and_no_more():
    """Over about 1 m of nails a scale 0.5 % off puts the outermost 2.5 mm off on either side: worked out by hand."""
    scale = 1.005
    how = {page: Disturbance(scale, scale) for page, *_ in sheets_of(SAMPLE)}
    found, wanted = nails_on_the_wall(*found_in_pixels(SAMPLE, how))
    expected = (wanted - wanted.mean(axis=0)) * (scale - 1.0)
    assert np.abs((found - wanted) - expected).max() <= 0.15
    assert np.abs(found - wanted).max() > 2.0
