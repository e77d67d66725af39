"""No mark is taken for another from two metres: every page in coarse pixels, every mark compared with every kind."""

from __future__ import annotations

import io
from collections.abc import Iterator, Sequence
from functools import cache

import pypdf
import pytest

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.documents.correcting import correct
from templates_gen.documents.correcting.patch_pages import ARM, CIRCLE, RING, patch_pages
from templates_gen.documents.sheets.join_marks import bars_form
from templates_gen.documents.sheets.nail_marks import nail_form
from templates_gen.documents.sheets.wall_marks import target
from templates_gen.drawing.houses import house
from templates_gen.drawing.items import Circle, Line, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.moving import moved_by
from templates_gen.drawing.pdf.writing import write_pdf
from templates_gen.drawing.sizes import BARS_LONG, HAIR, MEDIUM
from templates_gen.job.paper_sizes import own_paper
from tests.every_mark import like
from tests.jobs import SAMPLES
from tests.looking import HALVES, SCALES, WHOLE, Pixels, alike, around, drawn, form, likeness, seen, ways
from tests.made import Everything, asked, made, make
from tests.pdf_reading import page_marks

JOBS = ("tram-tickets", "twelve, letter, linked")
"""One of every mark, one of linked paper: `python tests/bench/marks_told_apart.py` looks at every job."""

LEAST, LEAST_TO_NAIL = 0.12, 0.25
"""By how much less a mark must look like any other kind than like its own, at any size, when all of it is seen; and by
how much less like a nail, or a nail like a registration mark.  Our own choice."""

PAIR = ("nail", "registration")

LEAST_OF_HALF = 0.05
"""The latter when half of it is hidden.  Our own choice."""

UNLIKE = 0.9
"""How like two kinds of line may be at most, seen alone.  Our own choice."""


@cache
def kinds() -> dict[str, list[Pixels]]:
    """How every kind of mark looks at any size and turned by quarters."""
    plan = made("fern-prints").plan
    middle = moved_by(target(plan), -plan.centre_line, -plan.level_line)
    houses = [(digit, house(digit, 10.0, -9.5, -10.0, Lettering())) for digit in "18"]
    on_cut = form("bars on a cut", *bars_form(False).items, Line(-BARS_LONG, 0, BARS_LONG, 0, HAIR))
    forms = {
        "nail": [nail_form()],
        "registration": [bars_form(False), bars_form(True), on_cut],
        "target": [form("target", *middle)],
        "sheet": [form(f"house {digit}", *items) for digit, items in houses],
    }
    return {kind: [way for one in drawings for way in ways(one, SCALES)] for kind, drawings in forms.items()}


def places(done: Everything, every: int = 1) -> Iterator[tuple[str, str, list[Pixels]]]:
    """Nails, registration marks and targets of a job on every so many sheets: kind, a name, and how each looks."""
    plan, report = done.plan, done.report
    for sheet in report["sheets"][::every]:
        page, (a, b, c, d, e, f) = seen(done.pdf, sheet["page"] - 1), sheet["to_page"]
        marks = [
            (kind, mark["name"], mark["x"], mark["y"])
            for kind, key in (("nail", "nails"), ("registration", "register_marks"))
            for mark in report[key]
            if sheet["page"] in mark["pages"]
        ]
        if done.sheets.sheet(sheet["name"]).inner.holds(Rect.about(plan.centre_line, plan.level_line, 30.0, 30.0)):
            marks.append(("target", "", plan.centre_line, plan.level_line))
        for kind, mark, x, y in marks:
            yield kind, f"{kind} {mark} on sheet {sheet['name']}", around(page, a * x + c * y + e, b * x + d * y + f)


def worst(looks: Sequence[Pixels], own: str, shapes: dict[str, list[Pixels]], part: tuple[slice, slice]) -> float:
    """How much more it looks like its own kind than like the likest other one."""
    others = [likeness(looks, some, part) for kind, some in shapes.items() if kind != own]
    return likeness(looks, shapes[own], part) - max(others)


@pytest.mark.parametrize("name", JOBS)
def test_every_mark_looks_most_like_its_own_kind(name: str) -> None:
    shapes, found = kinds(), 0
    for kind, where, looks in places(made(name), 2):
        found += 1
        alike_to = {other: likeness(looks, some) for other, some in shapes.items()}
        own = alike_to.pop(kind)
        assert own - max(alike_to.values()) > LEAST, where
        if kind in PAIR:
            assert own - max(alike_to[other] for other in PAIR if other != kind) > LEAST_TO_NAIL, where
    assert found > 10


@pytest.mark.parametrize("name", JOBS)
def test_no_half_of_a_registration_mark_looks_like_a_nail(name: str) -> None:
    """Nor the other way round, whichever half is hidden."""
    shapes = {kind: some for kind, some in kinds().items() if kind in PAIR}
    for kind, where, looks in places(made(name), 2):
        for side, half in HALVES.items() if kind != "target" else ():
            assert worst(looks, kind, shapes, half) > LEAST_OF_HALF, f"{where}, {side} half"


def test_a_ring_with_a_cross_would_be_taken_for_a_nail() -> None:
    """What both marks were before, drawn here: a ring in a cross.  Or the tests above could not fail."""
    nail = form(
        "old nail", Line(-8, 0, 8, 0, 0.13), Line(0, -2.5, 0, 8, 0.13), Circle(0, 0, 5, 0.35),
        Line(0, -3.5, 0, -36, 0.25, (0.6, 1.2)),
    )  # fmt: skip
    ring = form("old ring", Line(-3.5, 0, 3.5, 0, 0.18), Line(0, -3.5, 0, 3.5, 0.18), Circle(0, 0, 2.5, 0.18))
    shapes = {"nail": ways(nail, SCALES), "registration": ways(ring, SCALES)}
    for own, mark in (("registration", ring), ("nail", nail)):
        assert worst([drawn(mark, 1.0)], own, shapes, WHOLE) < LEAST < LEAST_TO_NAIL
        assert any(worst([drawn(mark, 1.0)], own, shapes, half) < LEAST_OF_HALF for half in HALVES.values())


STEPS = {"tram-tickets": 3, "twelve, letter, linked": 6}
"""Every so many'th sheet is looked at here; every one in tests/bench."""

LEAST_TO_OTHERS = 0.02
"""By how much more a nail, a registration mark and the target must look like their own kind than all else on the paper
does: lines, letters, houses, corners, rulers' ends, drop scales.  Our own choice."""


def shares(done: Everything, step: int = 1) -> Iterator[tuple[str, float, float, str]]:
    """Of nail, registration mark and target: how like its kind the least like one looks, and the likest other thing."""
    shapes = {kind: some for kind, some in kinds().items() if kind != "sheet"}
    for kind, by in like(done, shapes, step).items():
        likest, what = max((max(some), other) for other, some in by.items() if other != kind)
        yield kind, min(by.get(kind, [1.0])), likest, what


@pytest.mark.parametrize("name", JOBS)
def test_nothing_else_on_paper_looks_as_much_like_a_nail_as_a_nail(name: str) -> None:
    """Nor like a registration mark or the target, at any size and whichever way round."""
    for kind, own, other, what in shares(made(name), STEPS[name]):
        assert own > other + LEAST_TO_OTHERS, (kind, what)


def test_no_name_of_a_frame_looks_as_much_like_a_registration_mark() -> None:
    """The i and the l of "kiln" are two bars; 10 mm high they looked more like a registration mark than some marks."""
    job = asked("kiln-tiles")
    done = make(replace(job, paper=replace(own_paper(job, "a4"), cover="nails", trim="cut")))
    names = like(done, {"registration": kinds()["registration"]})["registration"]["letters"]
    assert names and max(names) < LEAST_OF_MARKS
    tags = [item for page in done.template.pages for item in page.wall_items if isinstance(item, Text)]
    assert any(text.text == "kiln" and text.height != 10.0 for text in tags)


LEAST_OF_MARKS = 0.80
"""How like its kind the least like of all registration marks on the samples' papers looks (tests/bench)."""


def test_old_ring_and_new_circle_of_a_patch_are_told_apart() -> None:
    """A ring of 2.5 mm with a dot goes on the old hole, a circle of 3 mm with hairlines is the new nail (our own)."""
    ring = form("old hole", Circle(0, 0, RING, MEDIUM))
    new = form("new nail", Circle(0, 0, CIRCLE, MEDIUM), Line(-ARM, 0, ARM, 0, 0.13), Line(0, -ARM, 0, ARM, 0.13))
    assert alike(drawn(ring, 1.0), ways(new)) < UNLIKE
    assert max(likeness([drawn(one, 1.0)], kinds()["nail"]) for one in (ring, new)) < 1.0 - LEAST


def test_no_old_hole_on_a_patch_looks_like_a_nail_and_nothing_round_like_a_registration_mark() -> None:
    """On the papers for nails that move, of the readings that come with the samples: a new hole may look so."""
    plan, old, new = made("fern-prints").plan, 0, 0
    pdf = write_pdf(patch_pages(plan, correct(plan, SAMPLES / "fern-prints-hung.csv"), Lettering()), Lettering())
    for number, page in enumerate(pypdf.PdfReader(io.BytesIO(pdf)).pages):
        pixels = seen(pdf, number)
        for circle in page_marks(page).circles:
            looks = around(pixels, circle.cx, circle.cy)
            assert likeness(looks, kinds()["registration"]) < UNLIKE - LEAST_TO_NAIL
            if ring := abs(circle.r * 25.4 / 72 - RING) < 0.1:
                assert likeness(looks, kinds()["nail"]) < UNLIKE - LEAST_TO_NAIL
            old, new = old + ring, new + (not ring)
    assert old > 1 and new


def test_only_a_nail_has_a_circle_and_a_cross() -> None:
    """On every sheet all circles are a nail's ring and its dot."""
    for name in JOBS:
        done = made(name)
        for one in done.template.forms:
            round_ones = [item for item in one.items if isinstance(item, Circle)]
            assert bool(round_ones) == (one.name == "nail"), one.name
        for page in done.template.pages:
            assert not [item for item in page.wall_items if isinstance(item, Circle)]
