"""Lettering on finished pages: nothing collides, nothing is cut off, and everything that must be there is there."""

from __future__ import annotations

import re

import pytest

from templates_gen.base.geometry import Rect
from templates_gen.base.units import show, show_both
from templates_gen.documents.schedule.distances import stood_on, unmistakable
from templates_gen.hanging.bearings import Nail
from templates_gen.tiling.long_lines import centre_spans, level_spans
from tests.made import NAMES, SPARING, Everything, made
from tests.page_texts import OnPage, overlapping, pages, sheet_pages, to_page_mm

TOLERANCE = 0.01
"""mm that boxes may share: far below what an eye sees.  Common practice, no source."""

GOOD_PART = 40.0
"""mm of a frame both ways on a sheet, from which it must be named there.  Our own design, no source."""

SHORT = 20.0
"""mm of a join too few for words: along so little two sheets touch, but are not taped.  Our own design, no source."""

LARGE = 4.0
"""mm: lettering of the distances of a whole sheet is larger, that of a nail's distance smaller.  Our own design."""

all_jobs = pytest.mark.parametrize("name", NAMES)


def words(page: OnPage) -> list[str]:
    return [text.text for text in page.texts]


@all_jobs
def test_no_two_texts_overlap(name: str) -> None:
    found = {page.label: pairs for page in pages(name) if (pairs := overlapping(page.texts, TOLERANCE))}
    assert found == {}


@all_jobs
def test_no_text_touches_a_nail_cross(name: str) -> None:
    """Hairlines 8 mm to the left, to the right and up, and the circle of 5 mm radius.  Our own design, no source."""
    for page in pages(name):
        for x, y in page.nails:
            cross = Rect(x - 8.0, y - 5.0, x + 8.0, y + 8.0).grown(-TOLERANCE)
            assert [text.text for text in page.texts if text.seen.overlaps(cross)] == [], page.label


@all_jobs
def test_every_text_is_inside_what_the_printer_can_reach(name: str) -> None:
    sheets = made(name).sheets
    lying = {sheet.name: sheet.page for sheet in sheets.sheets}
    reach = {page.label: lying.get(page.label, sheets.page).printable.grown(TOLERANCE) for page in pages(name)}
    outside = [(p.label, text.text) for p in pages(name) for text in p.texts if not reach[p.label].holds(text.seen)]
    assert outside == []


@all_jobs
def test_no_text_is_cut_off_at_the_edge_of_a_window(name: str) -> None:
    cut = [
        (page.label, text.text)
        for page in pages(name)
        for text in page.texts
        if not text.seen.grown(TOLERANCE).holds(text.box)
    ]
    assert cut == []


@all_jobs
def test_no_text_reaches_out_of_its_form(name: str) -> None:
    done = made(name)
    for form in done.template.forms:
        texts = [item for item in form.items if hasattr(item, "text")]
        assert [text.text for text in texts if not form.box.holds(done.lettering.box(text))] == []


def ways_to_label(done: Everything, nail: Nail) -> list[list[str]]:
    """A nail's name, its height above what one stands on and its distance from the centre line; or both systems
    apart."""
    away, unit = nail.x - done.plan.centre_line, done.job.unit
    side = f"{show_both(abs(away), unit)} {'left' if away < 0.0 else 'right'}"
    under, height = stood_on(done.plan, nail.x)
    fixing = next(hung.frame.fixing for hung in done.plan.frames if hung.frame.id == nail.frame)
    several = [fixing.called] if fixing.nails > 1 else []
    centre = side if abs(away) > 0.05 else "on the centre line"
    label = [unmistakable(nail.name), f"{under} {show_both(nail.y - height, unit)}", *several, centre]
    return [label, [part for line in label for part in line.split(" · ")]]


def told_in(texts: list[str], labels: list[list[str]]) -> bool:
    """True when one of the labels is among the texts, its lines one under the other."""
    return any(texts[at : at + len(label)] == label for label in labels for at in range(len(texts)))


@all_jobs
def test_every_nail_has_its_label_on_its_page(name: str) -> None:
    done = made(name)
    page_of = {page.number: page for page in pages(name)}
    for nail, told in zip(done.plan.nails, done.report["nails"], strict=True):
        for number in told["pages"]:
            assert told_in(words(page_of[number]), ways_to_label(done, nail)), nail.name


@all_jobs
def test_every_sheet_says_which_line_its_nails_are_left_or_right_of(name: str) -> None:
    """Under their labels, or once where one of them has no room for it."""
    for _, page in sheet_pages(name):
        small = [text.text for text in page.texts if text.height < LARGE]
        beside = [
            text for text in small if re.fullmatch(r"[\d /.]+ (in|cm|mm)( · [\d /.]+ (in|cm|mm))? (left|right)", text)
        ]
        said = words(page).count("of the centre line")
        assert said == len(beside) or (said < len(beside) and "left and right: of the centre line" in words(page))


@all_jobs
def test_labels_of_nails_stand_near_them(name: str) -> None:
    """Within 120 mm, so that no eye takes one for another's.  Our own design, no source."""
    done = made(name)
    for sheet, page in sheet_pages(name):
        for nail in done.plan.nails:
            x, y = to_page_mm(sheet, nail.x, nail.y)
            near = [t.text for t in page.texts if t.box.gap_to(Rect(x, y, x, y)) < 120.0]
            here = any(abs(x - nx) < 0.01 and abs(y - ny) < 0.01 for nx, ny in page.nails)
            assert told_in(near, ways_to_label(done, nail)) or not here


@all_jobs
def test_every_sheet_says_what_it_is(name: str) -> None:
    done = made(name)
    of = len(done.template.pages)
    for sheet, page in sheet_pages(name):
        up = "" if sheet.page is done.sheets.page else "this side up · "
        which = f"sheet {sheet.name} of {len(done.sheets.sheets)} · page {page.number} of {of}"
        said = f"{which} · {up}{done.job.date} · {done.job.title}"
        narrow = [
            text[:-1] for text in words(page) if text.endswith("…") and f"page {page.number} of {of} · {up}" in text
        ]
        alone = f"{which} · {up}".rstrip(" ·")  # where not even three dots go after it
        whole = said in words(page) or any(said.startswith(text) for text in narrow) or alone in words(page)
        beside = sheet.inner.x1 - 0.5 - (sheet.cell.x0 + 16.0)  # mm beside the figures of the upright ruler
        broad = done.lettering.width(alone, 2.5, True) <= beside
        assert whole or (not broad and f"sheet {sheet.name}" in words(page)), sheet.name


@all_jobs
def test_every_join_names_the_neighbour_beside_it(name: str) -> None:
    done = made(name)
    half = done.job.paper.overlap / 2
    page_of = {sheet.name: (sheet, page) for sheet, page in sheet_pages(name)}
    for join in done.sheets.joins:
        for own, other in ((join.over, join.under), (join.under, join.over)):
            sheet, page = page_of[own]
            (x0, y0), (x1, y1) = to_page_mm(sheet, join.x0, join.y0), to_page_mm(sheet, join.x1, join.y1)
            strip = Rect(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)).grown(half + TOLERANCE)
            if max(strip.width, strip.height) - 2 * half < SHORT:
                continue
            named = [t.text for t in page.texts if strip.holds(t.seen) and other in t.text.rstrip(":").split()]
            assert named, f"{own} does not name {other}"


@all_jobs
def test_every_frame_has_its_id_on_every_sheet_that_shows_a_good_part(name: str) -> None:
    for hung in made(name).plan.frames:
        for sheet, page in sheet_pages(name):
            part = sheet.inner.meet(hung.rect)
            if part is None or min(part.width, part.height) < GOOD_PART:
                continue
            (x0, y0), (x1, y1) = to_page_mm(sheet, part.x0, part.y0), to_page_mm(sheet, part.x1, part.y1)
            own = unmistakable(hung.frame.id)
            named = [t for t in page.texts if t.text == own and Rect(x0, y0, x1, y1).holds(t.seen)]
            assert named, f"{hung.frame.id} is not named on {sheet.name}"


@all_jobs
def test_every_frame_has_its_full_label_exactly_once(name: str) -> None:
    """Id, title, size and drop; where only nails are covered, a frame may be on no sheet at all.

    A frame that joins cut into pieces of less than 65 mm has room for its id alone; our own design, no source.
    """
    done = made(name)
    for hung in done.plan.frames:
        width, height = (show(side, done.job.unit) for side in (hung.rect.width, hung.rect.height))
        size, found = f"{width.rpartition(' ')[0]} × {height}", 0
        for sheet, page in sheet_pages(name):
            (x0, y0), (x1, y1) = (
                to_page_mm(sheet, hung.rect.x0, hung.rect.y0), to_page_mm(sheet, hung.rect.x1, hung.rect.y1),
            )  # fmt: skip
            inside = [t.text for t in page.texts if Rect(x0, y0, x1, y1).holds(t.seen)]
            if any(text.startswith(size) for text in inside):
                found += 1
                assert unmistakable(hung.frame.id) in inside and any("drop " in text for text in inside)
                assert any(text and hung.frame.title.startswith(text.rstrip("…")) for text in inside)
        shown = any(sheet.window.overlaps(hung.rect) for sheet in done.sheets.sheets)
        pieces = [piece for sheet in done.sheets.sheets if (piece := sheet.inner.meet(hung.rect))]
        small = max((min(piece.width, piece.height) for piece in pieces), default=0.0) < 65.0
        allowed = small or (done.job.paper.cover in SPARING and not shown)
        assert found == 1 or (found == 0 and allowed), f"{hung.frame.id}: {found} labels"


def _under_a_drop_scale(name: str, line: Rect) -> bool:
    """True where the figures of a drop scale, 9.5 to 25 mm from its nail, take the room beside an upright line."""
    return line.width == 0.0 and any(9.5 < abs(nail.x - line.x0) < 25.0 for nail in made(name).plan.nails)


@all_jobs
def test_the_lines_are_named_wherever_a_sheet_shows_much_of_them(name: str) -> None:
    plan = made(name).plan
    lines = [("centre line", Rect(plan.centre_line, low, plan.centre_line, high)) for low, high in centre_spans(plan)]
    lines += [("level line", Rect(low, plan.level_line, high, plan.level_line)) for low, high in level_spans(plan)]
    for start, line in lines:
        for sheet, page in sheet_pages(name):
            part = sheet.inner.meet(line)
            if part is not None and max(part.width, part.height) > 100.0 and not _under_a_drop_scale(name, line):
                assert any(text.startswith(start) for text in words(page)), f"{start} has no name on {sheet.name}"
