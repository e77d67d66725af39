"""The written pages taken apart again: the drop scale at every hanger."""

from __future__ import annotations

import pytest

from tests.made import NAMES, SPARING, Everything, made
from tests.matrices import inverse
from tests.pdf_reading import Point, Segment, moved
from tests.wall_reading import (
    CLOSE,
    HAIR,
    Shown,
    covered,
    every,
    is_level,
    shown,
    spines,
    tick_length,
    wide,
)

SPINE = 9.5  # mm from a hanger's upright to its drop scale; our own design, no source
FIGURE = 2.5  # mm, a lettering height of ISO 3098-1, from memory
UNIT = {"in": 25.4, "cm": 10.0, "mm": 1.0}  # mm; the international inch of 1959

RULED = {"in": 25.4 / 8, "cm": 5.0, "mm": 5.0}  # mm between a ruler's ticks, as on a steel rule: common practice

# mm between ticks, and the length of tick n, as on a steel rule: common practice, no source
FINE = {"in": (25.4 / 16, ((16, 7.0), (8, 5.5), (4, 4.2), (2, 3.0), (1, 1.8)))} | dict.fromkeys(
    ("mm", "cm"), (1.0, ((10, 7.0), (5, 4.5), (1, 2.0)))
)

all_jobs = pytest.mark.parametrize("name", NAMES)


def rulers_beside(done: Everything, sheet: Shown) -> list[tuple[Point, Point]]:
    """From where to where the rulers of a sheet run, as they are told, brought back to the wall."""
    (told,) = [told for told in done.report["sheets"] if told["page"] == sheet.page]
    back = inverse(told["to_page"])
    rules = [rule for rule in done.report["rules"] if rule["page"] == sheet.page]
    return [(moved(back, *rule["from"]), moved(back, *rule["to"])) for rule in rules]


def is_on_ruler(s: Segment, rulers: list[tuple[Point, Point]], step: float) -> bool:
    """Whether it is a tick of a plumb ruler: to the left of its line, a whole number of steps above its start."""
    return any(
        abs(x0 - x1) < CLOSE
        and abs(max(s.x0, s.x1) - x0) < CLOSE
        and y0 - CLOSE < s.y0 < y1 + CLOSE
        and abs((s.y0 - y0) / step - round((s.y0 - y0) / step)) * step < CLOSE
        for (x0, y0), (x1, y1) in rulers
    )


@all_jobs
def test_every_hanger_has_a_drop_scale_beside_it(name: str) -> None:
    """9.5 mm beside a nail's upright; on the hanger's own upright where there is no nail."""
    for hung in made(name).plan.frames:
        found = [s.x0 for sheet in shown(name) for s in spines(sheet, hung) if sheet.window.overlaps(hung.rect)]
        for bearing in hung.bearings:
            if made(name).job.paper.cover in SPARING and bearing.drop is None:
                continue  # nothing of it has to be on paper
            away = 0.0 if bearing.drop is None else SPINE
            assert any(abs(abs(x - bearing.x) - away) < CLOSE for x in found), f"{hung.frame.id} {bearing.side}"


@all_jobs
def test_ticks_of_a_drop_scale_are_true_distances_from_the_top_edge(name: str) -> None:
    """Below a scale's end nothing touches its line but a ruler that goes on in the same line."""
    done = made(name)
    step, lengths = FINE[done.job.unit]
    for sheet in shown(name):
        rulers = rulers_beside(done, sheet)
        hairlines = [s for s in wide(sheet.segments, HAIR) if is_level(s)]
        for hung in done.plan.frames:
            for spine in spines(sheet, hung):
                foot = min(spine.y0, spine.y1) - CLOSE
                ticks = [s for s in hairlines if min(abs(s.x0 - spine.x0), abs(s.x1 - spine.x0)) < CLOSE]
                ticks = [s for s in ticks if s.y0 > foot or not is_on_ruler(s, rulers, RULED[done.job.unit])]
                downs = sorted(
                    (hung.rect.y1 - s.y0, abs(s.x1 - s.x0)) for s in ticks if hung.rect.y0 < s.y0 <= hung.rect.y1
                )
                length = abs(spine.y1 - spine.y0)
                assert len(downs) == int(length / step + CLOSE)
                for number, (down, tick) in enumerate(downs, 1):
                    assert abs(down - number * step) < CLOSE
                    assert abs(tick - tick_length(number, lengths)) < CLOSE


def is_pointer(area: list[tuple[float, float]]) -> bool:
    """A triangle 2 mm high and 2.4 mm long that points to the left or to the right (our own design, no source)."""
    xs, ys = zip(*area, strict=True)
    return abs(max(ys) - min(ys) - 2.0) < CLOSE and abs(max(xs) - min(xs) - 2.4) < CLOSE


@all_jobs
def test_pointers_of_drop_scales_show_the_planned_drop(name: str) -> None:
    for sheet in shown(name):
        for hung in made(name).plan.frames:
            for spine in spines(sheet, hung):
                bearing = min(hung.bearings, key=lambda bearing: abs(bearing.x - spine.x0))
                pointers = [area for area in sheet.areas if len(set(area)) == 3 and is_pointer(area)]
                tips = [area[0] for area in pointers if abs(area[0][0] - spine.x0) < CLOSE]
                wanted = [] if bearing.drop is None else [hung.rect.y1 - bearing.drop]
                inside = [y for _, y in tips if hung.rect.y0 < y < hung.rect.y1]
                assert inside == pytest.approx(wanted, abs=CLOSE)


@all_jobs
def test_figures_of_drop_scales_stand_at_their_ticks(name: str) -> None:
    """Figures 2.5 mm high, their middle level with their tick, within 16 mm of the spine."""
    done = made(name)
    size = done.lettering.size(FIGURE)
    every_mm = 25.4 if done.job.unit == "in" else 10.0
    inner = {sheet.name: sheet.inner.grown(CLOSE) for sheet in done.sheets.sheets}
    found = 0
    for sheet in shown(name):
        texts = [t for t in sheet.texts if t.text.isdigit() and abs(t.size - size) < CLOSE]
        for hung in done.plan.frames:
            for spine in spines(sheet, hung):
                for t in texts:
                    if (
                        abs(t.x - spine.x0) < 16
                        and inner[sheet.name].has_point(t.x, t.y)
                        and covered([spine], spine.x0, t.y)
                    ):
                        down = hung.rect.y1 - t.y - FIGURE / 2
                        assert abs(down - int(t.text) * UNIT[done.job.unit]) < CLOSE
                        assert down % every_mm == pytest.approx(0, abs=CLOSE) or down % every_mm > every_mm - CLOSE
                        found += 1
    assert found


@all_jobs
def test_every_part_of_a_drop_scale_is_on_some_sheet(name: str) -> None:
    done = made(name)
    hung_spines = {
        (round(s.x0, 3), s) for sheet in shown(name) for hung in done.plan.frames for s in spines(sheet, hung)
    }
    windows = [sheet.window for sheet in shown(name)]
    assert hung_spines
    for x, spine in hung_spines:
        places = [y for y in every(*sorted((spine.y0, spine.y1)), 5.0)]
        parts = [any(window.has_point(x, y) for window in windows) for y in places]
        assert all(parts) or (done.job.paper.cover in SPARING and any(parts))


@all_jobs
def test_a_drop_scale_says_what_its_figures_count(name: str) -> None:
    """The unit, 2.5 mm high, over the first figure and under the frame's second line, 3 mm inside its edge, or halfway
    between two figures; on every sheet that shows two such steps of the scale clear of its margins and of the centre
    line, which would run through it."""
    done, size = made(name), made(name).lettering.size(FIGURE)
    step = 25.4 if done.job.unit == "in" else 10.0
    said = 0
    for sheet in shown(name):
        words = [t for t in sheet.texts if t.text == done.job.unit and abs(t.size - size) < CLOSE]
        inner = sheet.window.grown(-20.0)
        for hung in done.plan.frames:
            for spine in spines(sheet, hung):
                down = [
                    hung.rect.y1 - t.y for t in words if abs(t.x - spine.x0) < 16 and covered([spine], spine.x0, t.y)
                ]
                assert len(down) <= 1 and all(3.0 < at < step or 0.3 < at % step / step < 0.9 for at in down)
                low, high = sorted((spine.y0, spine.y1))
                apart = abs(spine.x0 - done.plan.centre_line) > 16.0
                clear = apart and inner.x0 < spine.x0 < inner.x1 and min(high, inner.y1) - max(low, inner.y0) > 2 * step
                assert down or not clear, f"no unit at {spine.x0}, {high} on {sheet.name}"
                said += len(down)
    assert said
