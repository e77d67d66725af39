"""The lettering of proofs: nothing collides and nothing is cut off, whatever the wall, the frames and the paper."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.documents.proof.layers import Asked
from templates_gen.documents.proof.making import make_proof
from templates_gen.drawing.items import POINT, Line, Polygon, Text
from templates_gen.drawing.strokes import inside
from templates_gen.job.model import Feature, Job, Wall
from tests.jobs import Spot, frame, group, job, paper
from tests.made import GENERATED, SAMPLE_NAMES
from tests.page_texts import on_page, overlapping
from tests.proofs import ALL, PLAIN, drawn, job_of, svg_frames

TOLERANCE = 0.01
"""mm that boxes of lettering may share: far below what an eye sees.  Common practice, no source."""


all_jobs = pytest.mark.parametrize("name", (*SAMPLE_NAMES, *GENERATED))


def colliding(of: Job, asked: Asked) -> list[tuple[str, str]]:
    template, view, lettering = drawn(of, asked)
    page = on_page(template, lettering, 1)
    outside = [text.text for text in page.texts if not view.page.printable.grown(TOLERANCE).holds(text.box)]
    return [*overlapping(page.texts, TOLERANCE), *((text, "the margin") for text in outside)]


@all_jobs
@pytest.mark.parametrize("asked", [PLAIN, ALL])
def test_no_two_texts_overlap_and_none_lies_in_the_margin(name: str, asked: Asked) -> None:
    assert colliding(job_of(name), asked) == []


@pytest.mark.parametrize("on", ["a5", "letter", "a3", "arch d"])
def test_lettering_keeps_apart_on_any_paper(on: str) -> None:
    wired = replace(job_of("fern-prints").wall, wiring="de")
    assert colliding(replace(job_of("fern-prints"), wall=wired, paper=paper(on)), ALL) == []
    assert colliding(replace(GENERATED["twelve, a4, marks"](), paper=paper(on)), ALL) == []


walls = st.tuples(st.integers(600, 60_000), st.integers(500, 6_000))
sizes = st.lists(st.tuples(st.integers(20, 900), st.integers(20, 900)), min_size=1, max_size=7)
KINDS = ("outlet", "switch", "light", "thermostat", "vent", "radiator", "door", "window", "pipe", "furniture", "other")
things = st.lists(
    st.tuples(st.sampled_from(KINDS), *(st.integers(0, 3000),) * 2, *(st.integers(20, 2000),) * 2), max_size=6
)


@settings(max_examples=25, deadline=None)
@given(walls, sizes, things, st.sampled_from(["mm", "cm", "in"]))
def test_lettering_keeps_apart_on_any_wall(wall, frames, features, unit) -> None:
    """Frames may overlap, or reach beyond the wall: it is drawn all the same, and all of it is on the page."""
    rects = [(kind, Rect.sized(*box)) for kind, *box in features]
    made = tuple(Feature(kind=kind, name=f"{kind} {number}", rect=rect) for number, (kind, rect) in enumerate(rects))
    items = [frame(f"F{number}", *size, title="A title") for number, size in enumerate(frames)]
    of = job(*items, unit=unit, group=group((tuple(item.id for item in items),)),
             wall=Wall(name="", width=float(wall[0]), height=float(wall[1]), features=made))  # fmt: skip
    assert colliding(of, PLAIN) == []
    template, view, _ = drawn(of)
    page = Rect(0.0, 0.0, view.page.width * POINT, view.page.height * POINT)
    forms = {form.name: form for form in template.forms}
    for form in (forms["frames"], forms["wall"]):
        for item in form.items:
            points = getattr(item, "points", ())
            assert all(page.has_point(x, y) for x, y in points)


def test_small_frames_are_named_in_full_under_their_feet() -> None:
    template, _, lettering = drawn(job_of("lock-keepers"), PLAIN)
    said = [text.text for text in on_page(template, lettering, 1).texts]
    assert [hung.id for hung in job_of("lock-keepers").frames if hung.id not in said] == []


def test_frames_over_each_other_are_drawn_and_their_labels_kept_apart() -> None:
    spots = tuple((name, Spot(point="centre", x=at, y=0.0)) for name, at in (("A", 0.0), ("B", 30.0), ("C", 900.0)))
    placed = group((("A", "B", "C"),), arrangement="placed", spots=spots)
    of = job(frame("A", title="Under"), frame("B", title="Over"), frame("C"), group=placed)
    assert colliding(of, ALL) == []
    assert len(svg_frames(make_proof(of, "svg").content)) == 3


def test_frames_too_small_for_their_ids_are_named_all_the_same() -> None:
    """Nine frames 40 mm apart on a wall of 10 m: the middle one is named in itself, upright where it is narrow."""
    for size, ids in (((260, 330), "abcdefghi"), ((180, 520), ("eel", "dam", "mill", "race", "weir", "lade", "pond"))):
        names = tuple(ids)
        rows = tuple(names[at : at + 3] for at in range(0, len(names), 3))
        of = job(*(frame(name, *size) for name in names), group=group(rows, gap=40.0),
                 wall=Wall(name="", width=10_000.0, height=2600.0))  # fmt: skip
        template, _, lettering = drawn(of)
        said = {text.text for text in on_page(template, lettering, 1).texts}
        assert set(names) <= said


def test_hatching_breaks_off_at_names() -> None:
    wired = replace(job_of("fern-prints"), wall=replace(job_of("fern-prints").wall, wiring="de"))
    template, _, lettering = drawn(wired, ALL)
    forms = {form.name: form.items for form in template.forms}
    lines = [item for item in forms["zones"] if isinstance(item, Line)]
    white = [Rect(*item.points[0], *item.points[2]) for item in forms["zones"] if isinstance(item, Polygon)]
    boxes = [lettering.box(item) for item in forms["names"] if isinstance(item, Text)]
    met = [box for box in boxes if any(any(inside(line, box)) for line in lines)]
    assert met
    assert [box for box in met if not any(rect.holds(box) for rect in white)] == []
