"""The written pages taken apart again: nail crosses, registration marks and rulers, from operators and from pixels."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from typing import Any

import numpy as np
import pypdfium2
import pytest

from templates_gen.base.geometry import Rect
from templates_gen.drawing.items import Circle, Line, Polygon, Text
from templates_gen.tiling.sheet import Sheet
from templates_gen.tolerance.diagonals import corners_to_measure
from tests.made import NAMES, SAMPLE_NAMES, Everything, made
from tests.matrices import inverse
from tests.pdf_reading import Marks, Segment, brought, moved
from tests.wall_reading import (
    CLOSE,
    HAIR,
    HOLE,
    MEDIUM,
    NARROW,
    bars,
    circles,
    crosses,
    distance,
    is_level,
    is_upright,
    shown,
    spines,
    wide,
)

POINT = 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3, and the international inch of 1959
NAIL_RING, TARGET_HALF = 6.5, 10.0  # mm; our own design, no source
DOTS = 600 / 72  # to a point

all_jobs = pytest.mark.parametrize("name", NAMES)
samples = pytest.mark.parametrize("name", SAMPLE_NAMES)


@all_jobs
def test_exactly_the_planned_nails_are_in_the_file(name: str) -> None:
    nails = {nail.name: (nail.x, nail.y) for nail in made(name).plan.nails}
    told = {nail["name"]: nail for nail in made(name).report["nails"]}
    found = [(sheet, cross) for sheet in shown(name) for cross in crosses(sheet, NAIL_RING, HAIR)]
    assert set(told) == set(nails)
    left = [(nail["name"], page) for nail in told.values() for page in nail["pages"]]
    for sheet, cross in found:
        near = [key for key, at in nails.items() if np.hypot(cross.x - at[0], cross.y - at[1]) < CLOSE]
        assert len(near) == 1, f"a cross at {cross.x:.3f}, {cross.y:.3f} on {sheet.name} is no planned nail"
        left.remove((near[0], sheet.page))
        assert np.hypot(told[near[0]]["x"] - cross.x, told[near[0]]["y"] - cross.y) < CLOSE
    assert left == []


@all_jobs
def test_nothing_of_a_form_is_cut_off_by_its_own_box(name: str) -> None:
    lettering = made(name).lettering
    for form in made(name).template.forms:
        for item in form.items:
            match item:
                case Line():
                    points = [(item.x0, item.y0), (item.x1, item.y1)]
                case Circle():
                    points = [(item.x + way * item.radius, item.y + way * item.radius) for way in (-1, 1)]
                case Polygon():
                    points = list(item.points)
                case Text():
                    box = lettering.box(item)
                    points = [(box.x0, box.y0), (box.x1, box.y1)]
            assert all(form.box.has_point(x, y) for x, y in points), (form.name, item)


@all_jobs
def test_every_nail_is_whole_on_one_page_alone(name: str) -> None:
    pages = [nail["pages"] for nail in made(name).report["nails"]]
    assert [len(on) for on in pages] == [1] * len(made(name).plan.nails)
    for sheet in shown(name):
        for cross in crosses(sheet, NAIL_RING, HAIR):
            assert sheet.window.holds(cross.box)


@all_jobs
def test_all_that_a_sheet_shows_is_where_its_printer_reaches(name: str) -> None:
    """The corners of every window, on sheets that are turned on their page too, lie in what the page can print."""
    done = made(name)
    reach = done.sheets.page.printable.grown(CLOSE)
    for told in done.report["sheets"]:
        x0, y0, x1, y1 = told["window"]
        for x, y in ((x0, y0), (x1, y0), (x1, y1), (x0, y1)):
            a, b = moved(tuple(told["to_page"]), x, y)
            assert reach.has_point(a * POINT, b * POINT), told["name"]


@all_jobs
def test_circles_stand_about_the_crossings(name: str) -> None:
    for sheet in shown(name):
        found = list(crosses(sheet, NAIL_RING, HAIR))
        assert len(found) == len(circles(sheet, NAIL_RING))
        assert all(np.hypot(cross.cx - cross.x, cross.cy - cross.y) < CLOSE for cross in found)


@all_jobs
def test_nothing_else_comes_near_a_nail_point(name: str) -> None:
    for sheet in shown(name):
        for cross in crosses(sheet, NAIL_RING, HAIR):
            x, y = cross.x, cross.y
            near = [s for s in sheet.segments if distance(s, x, y) < NAIL_RING]
            own = [s for s in near if abs(s.width - HAIR) < CLOSE and distance(s, x, y) < CLOSE]
            slit = [s for s in wide(near, MEDIUM) if is_upright(s) and abs(s.x0 - x) < CLOSE and max(s.y0, s.y1) < y]
            wedges = [area for area in sheet.areas if all(np.hypot(px - x, py - y) < 8.2 for px, py in area)]
            assert len(own) == 2 and len(slit) == 1
            assert [s for s in near if s not in own and s not in slit] == []
            assert len(wedges) == 3 and {len(set(area)) for area in wedges} == {3}
            others = [area for area in sheet.areas if area not in wedges]
            assert all(all(np.hypot(px - x, py - y) > NAIL_RING for px, py in area) for area in others)
            assert sum(np.hypot(c.cx - x, c.cy - y) < NAIL_RING + c.r for c in sheet.circles) == 2  # ring and dot


@all_jobs
def test_frame_edges_and_long_lines_stop_9_mm_short_of_a_nail(name: str) -> None:
    """No level or upright line enters the square about the nail point but its own hairlines and slit."""
    for sheet in shown(name):
        lines = [s for s in sheet.segments if is_level(s) or is_upright(s)]
        for cross in crosses(sheet, NAIL_RING, HAIR):
            x, y, reach = cross.x, cross.y, HOLE - CLOSE
            for s in lines:
                across = max(min(s.x0, s.x1) - x, x - max(s.x0, s.x1))
                upward = max(min(s.y0, s.y1) - y, y - max(s.y0, s.y1))
                own = abs(s.width - HAIR) < CLOSE and distance(s, x, y) < CLOSE
                slit = abs(s.width - MEDIUM) < CLOSE and abs(s.x0 - x) < CLOSE
                assert max(across, upward) > reach or own or slit, s


@all_jobs
def test_the_release_slit_starts_under_the_nail_and_passes_a_hook(name: str) -> None:
    """From 3 to 36 mm below the nail point.  Our own design, no source."""
    for sheet in shown(name):
        for cross in crosses(sheet, NAIL_RING, HAIR):
            slits = [s for s in wide(sheet.segments, MEDIUM) if is_upright(s) and abs(s.x0 - cross.x) < CLOSE]
            ends = [sorted((cross.y - s.y0, cross.y - s.y1)) for s in slits]
            assert any(abs(a - 3.0) < CLOSE and abs(b - 36.0) < CLOSE for a, b in ends)


@all_jobs
def test_registration_marks_of_all_their_sheets_are_one_wall_point(name: str) -> None:
    told = made(name).report["register_marks"]
    left = {(mark["name"], page): (mark["x"], mark["y"]) for mark in told for page in mark["pages"]}
    assert all(len(mark["pages"]) >= 2 for mark in told)
    places = defaultdict(list)
    for sheet in shown(name):
        for cross in bars(sheet):
            here = [key for key in left if key[1] == sheet.page]
            key = next(k for k in here if np.hypot(cross.x - left[k][0], cross.y - left[k][1]) < CLOSE)
            del left[key]
            places[key[0]].append((cross.x, cross.y))
            assert sheet.window.holds(cross.box)
    assert left == {}
    for points in places.values():
        assert np.ptp(np.array(points), axis=0).max() < CLOSE


@all_jobs
def test_the_target_stands_where_the_lines_cross(name: str) -> None:
    plan = made(name).plan
    at = plan.centre_line, plan.level_line
    corners = {(x * TARGET_HALF, y * TARGET_HALF) for x, y in ((1, 0), (0, 1), (-1, 0), (0, -1))}
    sides = [s for sheet in shown(name) for s in wide(sheet.segments, MEDIUM) if not is_level(s) and not is_upright(s)]
    ends = {(round(x - at[0], 3), round(y - at[1], 3)) for s in sides for x, y in (s[:2], s[2:4])}
    # a nail there would be cut out with the window, and stands for the target
    assert ends & corners == (set() if name == "nail on target" else corners)


@all_jobs
def test_the_first_page_and_every_sheet_have_two_rules_that_measure_what_they_say(name: str) -> None:
    done = made(name)
    rulers = done.report["rules"]
    pages = {1, *(sheet["page"] for sheet in done.report["sheets"])}
    assert sorted(ruler["page"] for ruler in rulers) == sorted([*pages, *pages])
    for ruler, marks in upright_rules(done):
        parts = line_of(ruler, marks, drop_scales_on(done, ruler["page"]))
        length = (parts[-1][1] - parts[0][0]) * POINT
        assert abs(length - ruler["length"]) < CLOSE
        away = np.abs(np.array([parts[0][0], parts[-1][1]]) - sorted(along_of(ruler))).max()
        assert away * POINT < CLOSE
        assert sum(end - start for start, end in parts) * POINT > (END if beside_a_line(done, ruler) else length / 2)


END = 6.0  # mm of one end of a ruler at least, which is whole whatever runs along it: our own design, no source


def beside_a_line(done: Everything, ruler: dict[str, Any]) -> bool:
    """Whether an edge of a frame or one of both long lines runs within 8 mm of a ruler, or a drop scale is on it, up to
    25 mm to a side of its hanger: it is sparing there."""
    (name,) = [told["name"] for told in done.report["sheets"] if told["page"] == ruler["page"]] or [None]
    if name is None:
        return False
    sheet, plan = done.sheets.sheet(name), done.plan
    across = abs(ruler["from"][1] - ruler["to"][1]) < CLOSE
    x, y = (value * POINT for value in ruler["from"])
    dx, dy = to_page(sheet)
    rects = [hung.rect for hung in plan.frames if hung.rect.grown(1.0).overlaps(sheet.window)]
    at = [side for r in rects for side in ((r.y0, r.y1) if across else (r.x0, r.x1))]
    at.append(plan.level_line if across else plan.centre_line)
    hangers = [] if across else [bearing.x for hung in plan.frames for bearing in hung.bearings]
    beside = any(abs(hanger + dx - x) < 25.0 + 8.0 for hanger in hangers)
    return beside or any(abs(side + (dy - y if across else dx - x)) < 8.0 for side in at)


def to_page(sheet: Sheet) -> tuple[float, float]:
    """How far right and up a place of the wall is on a sheet's page as it is read (mm)."""
    return sheet.page.printable.x0 - sheet.window.x0, sheet.page.printable.y0 - sheet.window.y0


def drop_scales_on(done: Everything, page: int) -> list[Segment]:
    """The lines of the drop scales that a page shows a piece of (points on the page as it is read).

    The line of one may lie in one line with the upright ruler.
    """
    found = []
    for sheet in shown(done.name):
        if sheet.page == page:
            dx, dy = to_page(done.sheets.sheet(sheet.name))
            scales = [s for hung in done.plan.frames for s in spines(sheet, hung)]
            on_page = [((s.x0 + dx) / POINT, sorted(((s.y0 + dy) / POINT, (s.y1 + dy) / POINT))) for s in scales]
            found += [Segment(x, low, x, high, NARROW / POINT) for x, (low, high) in on_page]
    return found


def along_of(ruler: dict[str, Any]) -> tuple[float, float]:
    """Where a ruler starts and ends along its own direction (points)."""
    along = 0 if abs(ruler["from"][1] - ruler["to"][1]) < CLOSE else 1
    return ruler["from"][along], ruler["to"][along]


def line_of(ruler: dict[str, Any], marks: Marks, scales: list[Segment]) -> list[tuple[float, float]]:
    """The parts of a ruler's line (points): it breaks off at registration marks, at black corners, and where a line
    runs along it.  All that lies in its line is taken for a part of it, but for the lines of these drop scales."""
    along = 0 if abs(ruler["from"][1] - ruler["to"][1]) < CLOSE else 1
    spine = ruler["from"][1 - along]
    on = [s for s in marks.segments if abs(s.width * POINT - NARROW) < CLOSE and abs(s[1 - along] - spine) < CLOSE]
    found = sorted(
        (min(s[along], s[along + 2]), max(s[along], s[along + 2])) for s in on if abs(s[3 - along] - spine) < CLOSE
    )
    if along:
        others = [(s.y0, s.y1) for s in scales if abs(s.x0 - spine) * POINT < CLOSE]
        found = [part for part in found if not any(same(part, other) for other in others)]
    assert len(found) <= 6
    return found


def same(part: tuple[float, float], other: tuple[float, float]) -> bool:
    """Whether two stretches (points) start and end at the same places."""
    return max(abs(part[0] - other[0]), abs(part[1] - other[1])) * POINT < CLOSE


def test_rules_are_as_long_as_an_a4_page_allows() -> None:
    """Worked out by hand here: 209.9 - 14 mm of margins - 12 of overlap - 16 and 5 beside the ruler leaves 162, in
    whole centimetres 160; upward 296.7 - 20 - 12 - 21 leaves 243, so 240."""
    rulers = made("tile-rubbings").report["rules"]
    assert {round(ruler["length"], 6) for ruler in rulers} == {160.0, 240.0}
    assert {ruler["from"][1] == ruler["to"][1] for ruler in rulers if ruler["length"] < 200} == {True}


def upright_rules(done: Everything) -> Iterator[tuple[dict[str, Any], Marks]]:
    """Every rule and what its page draws, brought back (in points) to the page as it is read, with its top up."""
    lying = {sheet.name: sheet.page for sheet in done.sheets.sheets}
    of = {told["page"]: lying[told["name"]] for told in done.report["sheets"]}
    for rule in done.report["rules"]:
        a, b, c, d, e, f = inverse(of.get(rule["page"], done.sheets.page).matrix)
        back = a / POINT, b / POINT, c / POINT, d / POINT, e / POINT, f / POINT
        yield (
            {**rule, "from": moved(back, *rule["from"]), "to": moved(back, *rule["to"])},
            brought(done.marks[rule["page"] - 1], back),
        )


@all_jobs
def test_figures_of_the_rules_stand_at_their_distances(name: str) -> None:
    """On every page figure n stands over a tick n units from the ruler's start."""
    done = made(name)
    # mm of the figures' unit, and every how many of it there is one, as on a steel rule: common practice, no source
    unit, every = {"in": (25.4, 1), "cm": (10.0, 5), "mm": (1.0, 50)}[done.job.unit]
    for ruler, marks in upright_rules(done):
        along = 0 if abs(ruler["from"][1] - ruler["to"][1]) < CLOSE else 1
        start, spine = ruler["from"][along], ruler["from"][1 - along]
        ends = [
            s[along]
            for s in marks.segments
            if abs(s[along] - s[along + 2]) < CLOSE and abs(s[1 - along] - spine) < CLOSE
        ]
        # figures 2.5 mm high, 1.2 mm over the level ruler and, reading upward, up to 3.9 mm from the plumb one
        beside = spine + (1.2 if along == 0 else 3.9) / POINT
        found = {}
        for text in marks.texts:
            if abs(text[1 - along] - beside) < CLOSE and start - 20 < text[along] < ruler["to"][along]:
                middle = text[along] + done.lettering.width(text.text, 2.5) / POINT / 2
                found[int(text.text.split()[0])] = (middle - start) * POINT
                assert min(abs(end - middle) for end in ends) * POINT < CLOSE
        for figure in range(0, int(ruler["length"] / unit + CLOSE) + 1, every):
            x, y = (start * POINT + figure * unit, spine * POINT)[:: 1 if along == 0 else -1]
            assert figure in found or any(box.grown(8.0).has_point(x, y) for box in over_rulers(done, ruler["page"]))
        assert all(abs(at - figure * unit) < CLOSE for figure, at in found.items())


def over_rulers(done: Everything, page: int) -> list[Rect]:
    """Registration marks and black corners of a page (page mm): a figure within 8 mm of their boxes may be missing."""
    (name,) = [told["name"] for told in done.report["sheets"] if told["page"] == page] or [None]
    if name is None:
        return []
    sheet = done.sheets.sheet(name)
    dx, dy = to_page(sheet)
    marks = [mark.box for mark in done.sheets.marks if name in mark.sheets]
    corners = [Rect.about(x, y, 20.0, 20.0) for x, y, _, _ in corners_to_measure(done.plan)]
    return [box.shifted(dx, dy) for box in (*marks, *corners)]


Pair = tuple[float, float]


def rendered(name: str, page: int, x: float, y: float, half: float) -> tuple[np.ndarray, Pair, Pair]:
    """Darkness of the pixels about a place of a page (points), their upper left corner, and the size of a pixel."""
    sheet = pypdfium2.PdfDocument(made(name).pdf)[page - 1]
    width, height = sheet.get_size()
    crop = tuple(max(0.0, value) for value in (x - half, y - half, width - x - half, height - y - half))
    image = sheet.render(scale=DOTS, crop=crop, grayscale=True).to_numpy()
    # the program that renders rounds page and crop up to whole pixels: these are the same sums
    full = np.ceil(width * DOTS), np.ceil(height * DOTS)
    pixel = width / full[0], height / full[1]
    corner = np.ceil(crop[0] * DOTS) * pixel[0], height - np.ceil(crop[3] * DOTS) * pixel[1]
    return 1 - image.reshape(image.shape[:2]).astype(float) / 255, corner, pixel


def middle(dark: np.ndarray) -> float:
    """Where the darkness of rows has its centre, in rows from the first one's edge."""
    rows = dark.sum(axis=1)
    return float((rows * (np.arange(len(rows)) + 0.5)).sum() / rows.sum())


def line_centre(dark: np.ndarray, row: int, column: int, mm: float) -> float:
    """The centre of the level hairline near `row`, between 1 and 4 mm to the left of `column` and inside the circle."""
    near = max(0, row - round(0.4 / mm))
    return near + middle(dark[near : row + round(0.4 / mm) + 1, column - round(4 / mm) : column - round(1 / mm)])


@samples
def test_the_cross_is_where_it_should_be_in_pixels(name: str) -> None:
    """At 600 dpi a pixel is 0.042 mm wide; the centre of a line's darkness is found far more finely than that."""
    done = made(name)
    nail = done.report["nails"][0]
    to_page = next(sheet["to_page"] for sheet in done.report["sheets"] if sheet["page"] == nail["pages"][0])
    x, y = moved(tuple(to_page), nail["x"], nail["y"])
    # a window that is 12 mm wide and set off by 0.7 and 0.4 mm, so that the cross is not in its middle
    dark, corner, pixel = rendered(name, nail["pages"][0], x + 0.7 / POINT, y - 0.4 / POINT, 6 / POINT)
    mm = pixel[0] * POINT
    row, column = int(dark.sum(axis=1).argmax()), int(dark.sum(axis=0).argmax())
    level = line_centre(dark, row, column, mm)
    # the same picture turned, so that the part above the nail point comes to the left
    upright = line_centre(dark.T, column, row, mm)
    found = corner[0] + upright * pixel[0], corner[1] - level * pixel[1]
    assert np.hypot(found[0] - x, found[1] - y) * POINT < 0.02  # mm, half a pixel
