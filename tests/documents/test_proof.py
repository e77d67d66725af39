"""The proof: the wall where it must be, to the scale that is stated, alike in all three kinds of file."""

from __future__ import annotations

import io
from itertools import pairwise
from xml.etree import ElementTree as Xml

import numpy as np
import pypdf
import pypdfium2
import pypdfium2.raw as pdfium
import pytest
from PIL import Image

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.documents.proof.features import outline_of
from templates_gen.documents.proof.layers import Asked
from templates_gen.documents.proof.making import make_proof, proof_of
from templates_gen.documents.proof.view import View, scales, to_the_foot
from templates_gen.drawing.items import POINT, Line
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.model import Height, Job, Wall
from templates_gen.job.stairs import Stairs
from tests.jobs import frame, group, job, paper
from tests.made import SAMPLE_NAMES
from tests.page_texts import on_page
from tests.pdf_reading import page_marks
from tests.proofs import ALL, EDGE, SVG, drawn, job_of, svg_frames

DOTS = 300.0
samples = pytest.mark.parametrize("name", SAMPLE_NAMES)


def dark_edges(image: np.ndarray, edges: tuple[float, ...]) -> tuple[float, ...]:
    """Where a frame's edges are in the image, in pixels from the upper left, near to where they should be."""
    x0, y0, x1, y1 = (side * DOTS / 25.4 for side in edges)
    column, row = round(x0 + (x1 - x0) / 4), round(y0 + (y1 - y0) / 4)
    lines = (image[row], x0, 1), (image[:, column], y0, 1), (image[row], x1, -1), (image[:, column], y1, -1)
    return tuple(dark_start(*line) for line in lines)


def dark_start(line: np.ndarray, at: float, inward: int) -> float:
    """The middle of the edge's line, which begins, coming from outside, where it is dark for the first time."""
    half = EDGE / 2 * DOTS / 25.4
    places = range(round(at) - 7 * inward, round(at) + 7 * inward, inward)
    first = next(place for place in places if line[place] < 128)
    return first + half if inward > 0 else first + 1 - half


def page_image(pdf: bytes) -> np.ndarray:
    """The first page by PDFium's own way of making it fill a bitmap, which may stretch it by part of a pixel."""
    return np.asarray(pypdfium2.PdfDocument(pdf)[0].render(scale=DOTS / 72).to_pil().convert("L"))


@pytest.mark.parametrize("name", SAMPLE_NAMES[::3])
def test_pdf_svg_and_png_show_the_frames_at_the_same_place(name: str) -> None:
    found = {ending: make_proof(job_of(name), ending, dots=DOTS).content for ending in ("pdf", "svg", "png")}
    frames = svg_frames(found["svg"])
    assert len(frames) == len(job_of(name).frames)
    for image in (np.asarray(Image.open(io.BytesIO(found["png"])).convert("L")), page_image(found["pdf"])):
        for edges in frames:
            wanted = [side * DOTS / 25.4 for side in edges]
            assert dark_edges(image, edges) == pytest.approx(wanted, abs=1.0)


@samples
def test_the_wall_is_drawn_to_the_scale_that_is_stated(name: str) -> None:
    """From the file: distances to the wall's left end and floor, times the scale, are those of the plan."""
    made, plan = make_proof(job_of(name), "svg"), plan_wall(job_of(name))
    root = Xml.fromstring(made.content)
    assert f"SCALE 1:{made.scale}" in [text.text for text in root.iter(f"{SVG}text")]
    wall = root.find(f"{SVG}g[@class='wall']/{SVG}polygon").get("points", "")
    points = [tuple(map(float, pair.split(","))) for pair in wall.split()]
    left, floor = min(x for x, _ in points), max(y for _, y in points)
    for (x0, y0, x1, y1), hung in zip(svg_frames(made.content), plan.frames, strict=True):
        on_wall = [(x0 - left), (floor - y1), (x1 - left), (floor - y0)]
        rect = hung.rect
        assert [side * made.scale for side in on_wall] == pytest.approx([rect.x0, rect.y0, rect.x1, rect.y1], abs=0.01)


@samples
def test_the_pdf_has_the_same_edges_as_the_svg(name: str) -> None:
    page = pypdf.PdfReader(io.BytesIO(make_proof(job_of(name)).content)).pages[0]
    height = float(page.mediabox.height) * POINT
    lines = [line for line in page_marks(page).segments if line.width * POINT == pytest.approx(EDGE, abs=1e-3)]
    ends = np.array([[x * POINT, height - y * POINT] for line in lines for x, y in ((line.x0, line.y0),)])
    for x0, y0, x1, y1 in svg_frames(make_proof(job_of(name), "svg").content):
        for corner in ((x0, y0), (x1, y0), (x1, y1), (x0, y1)):
            assert np.abs(ends - corner).max(axis=1).min() < 0.001


@samples
def test_the_next_larger_scale_would_not_fit(name: str) -> None:
    """The chosen one is the largest that the page has room for."""
    _, view, _ = drawn(job_of(name))
    wall, usual = job_of(name).wall, scales(job_of(name).unit)
    larger = usual[usual.index(view.scale) - 1]
    room = view.page.printable
    for width, height in ((room.width, room.height), (room.height, room.width)):
        # the dimensions take about 30 mm both ways, and the title 18 mm: our own design
        assert wall.width / larger > width - 30 or wall.height / larger > height - 18 - 30


@pytest.mark.parametrize("unit", ["in", "cm", "mm"])
def test_a_wall_is_never_less_than_half_of_what_its_page_would_hold(unit: str) -> None:
    """ISO 5455 (from memory): 1:2, 1:5, 1:10 and so on; between them scales that rooms are drawn at."""
    usual = scales(unit)
    assert {2, 5, 10, 20, 50, 100, 200, 500, 1000} <= set(usual)
    assert all(more <= 2 * less for less, more in pairwise(usual))
    assert {15, 25, 30, 40, 75, 125} <= set(usual) if unit != "in" else {12, 16, 24, 32, 48, 64, 96} <= set(usual)


def test_a_scale_to_the_foot_is_said_as_one() -> None:
    # a foot is 12 in: 12 / 24 is 1/2 in
    assert [to_the_foot(scale, "in") for scale in (12, 16, 24, 32, 48, 64, 96)] == [
        f"{part} in to the foot" for part in ("1", "3/4", "1/2", "3/8", "1/4", "3/16", "1/8")
    ]
    assert to_the_foot(50, "in") == to_the_foot(24, "mm") == ""


def test_a_proof_says_what_a_client_has_to_know() -> None:
    texts = [text.text for text in on_page(*drawn(job_of("fern-prints"), Asked(sign=True))[::2], 1).texts]
    for words in ("Fern prints", "Larkfield Village Library · reading room, east · 2026-03-14", "SCALE 1:20",
                  "Agreed, to be hung as shown", "Date", "bench", "switch", "150 in", "3810 mm", "96 in",
                  "5 ft 7 in"):  # fmt: skip
        assert words in texts
    # worked out by hand here: 12' 6" wall, 43 3/4 in of group in its middle; 36 in from the floor: the bench and 8 in
    assert {"43 3/4 in", "53 1/8 in", "36 in", "75 in"} <= set(texts)


def test_layers_are_groups_of_their_own_and_pictures_are_in_the_file() -> None:
    svg = make_proof(job_of("fern-prints"), "svg").content
    root = Xml.fromstring(svg)
    classes = [group.get("class") for group in root.findall(f"{SVG}g")]
    assert classes == [
        "lines", "wall", "features", "furniture", "figure", "frames", "pictures", "names", "dimensions", "title",
    ]  # fmt: skip
    images = root.findall(f".//{SVG}image")
    assert len(images) == 5
    assert all(image.get("href", "").startswith("data:image/jpeg;base64,") for image in images)
    zoned = Xml.fromstring(make_proof(with_wiring(), "svg", ALL).content)
    assert {"zones", "nails"} <= {group.get("class") for group in zoned.findall(f"{SVG}g")}


def with_wiring() -> Job:
    return replace(job_of("seed-drawers"), wall=replace(job_of("seed-drawers").wall, wiring="uk"))


def test_hatching_keeps_to_the_zones_and_to_the_wall() -> None:
    """UK: within 150 mm of the top of the wall and of its corners (BS 7671, 522.6.202(i)); 12 mm for slopes."""
    of = with_wiring()
    template, view, _ = drawn(of, ALL)
    zones = next(form for form in template.forms if form.name == "zones")
    assert len(zones.items) > 50
    for line in zones.items:
        for x, y in ((line.x0, line.y0), (line.x1, line.y1)):
            wall_x, wall_y = (x - view.x0) * view.scale, (y - view.y0) * view.scale
            roof = min(2500.0, 2050.0 + wall_x * 450 / 1200)  # the sample's corners
            assert -13 < wall_x < 3013 and -1 < wall_y < roof + 13
            deep = 150 * (1200**2 + 450**2) ** 0.5 / 1200 + 50 * 450 / 1200 + 13  # along the axis, in pieces of 50 mm
            assert wall_x < 163 or wall_x > 2837 or roof - wall_y < deep


@pytest.mark.parametrize("ending", ["pdf", "svg", "png"])
def test_the_same_job_gives_the_same_bytes(ending: str) -> None:
    assert make_proof(job_of("fern-prints"), ending).content == make_proof(job_of("fern-prints"), ending).content


def test_the_pdf_is_one_page_that_is_not_to_be_scaled() -> None:
    document = pypdfium2.PdfDocument(make_proof(job_of("fern-prints")).content)
    assert len(document) == 1
    # 0 is "none" in the header of PDFium; pypdfium2 calls it without its own layer
    assert pdfium.FPDF_VIEWERREF_GetPrintScaling(document.raw) == 0


def test_a_roll_or_one_piece_has_its_proof_on_ordinary_paper() -> None:
    _, view, _ = drawn(replace(job_of("fern-prints"), paper=replace(paper("a4"), kind="roll", height=5000.0)))
    # letter for a job in inches: 8 1/2 x 11 in (PWG 5101.1, na_letter), in points
    assert sorted((view.page.width, view.page.height)) == [612, 792]


def test_text_in_any_script_keeps_its_length_in_the_svg() -> None:
    root = Xml.fromstring(make_proof(job_of("alphabet-column"), "svg").content)
    texts = {text.text: text for text in root.iter(f"{SVG}text")}
    assert texts["א"].get("direction") == "rtl" and texts["α"].get("direction") is None
    lettering = Lettering()
    size = float(texts["SCALE 1:20"].get("font-size", 0))
    wide = lettering.width("SCALE 1:20", 3.5, bold=True)  # ISO 3098-1 height (from memory)
    assert size == pytest.approx(lettering.size(3.5, bold=True), abs=1e-4)
    assert float(texts["SCALE 1:20"].get("textLength", 0)) == pytest.approx(wide, abs=1e-4)


STAIR = Stairs(x=500.0, y=190.0, slope=190.0 / 250.0, run=250.0, rise=190.0, top=950.0)
"""Five nosings, 250 mm from each other and 190 mm above each other, and a landing."""

LONG = Rect(0.0, 0.0, 4000.0, 2400.0)


def test_a_stair_has_its_treads_a_riser_below_each_nosing_and_its_landing() -> None:
    points = outline_of(STAIR, LONG)
    # worked out by hand here
    treads = [(500, 190), (750, 190), (750, 380), (1000, 380), (1000, 570), (1250, 570), (1250, 760), (1500, 760)]
    assert points == ((500, 0), *treads, (1500, 950), (4000, 950), (4000, 0))
    assert [STAIR.tread_at(x) for x in (499, 501, 749, 751, 1499, 1501, 3000)] == [0, 190, 190, 380, 760, 950, 950]


def test_a_stair_to_the_left_is_the_mirror_image_and_a_pitch_alone_is_a_slope() -> None:
    left = replace(STAIR, x=3500.0, slope=-STAIR.slope)
    assert outline_of(left, LONG) == tuple((4000 - x, y) for x, y in outline_of(STAIR, LONG))
    plain = replace(STAIR, run=None, rise=None)
    assert outline_of(plain, LONG) == ((500, 0), (500, 190), (1500, 950), (4000, 950), (4000, 0))
    on = replace(plain, top=None)
    assert outline_of(on, LONG)[2] == pytest.approx((4000, 190 + 3500 * 0.76))


@samples
def test_the_figure_stands_on_the_floor_or_a_tread_and_hides_no_frame(name: str) -> None:
    template, view, _ = drawn(job_of(name))
    body, head = next(form.items for form in template.forms if form.name == "figure")[:2]
    feet, wall = min(y for _, y in body.points), job_of(name).wall
    stand = wall.stairs.tread_at((head.x - view.x0) * view.scale) if wall.stairs else 0.0
    assert (feet - view.y0) * view.scale == pytest.approx(stand, abs=10.0)  # its feet are rounded
    tall = (head.y + head.radius - feet) * view.scale
    assert tall == pytest.approx(1700.0, abs=20.0)
    sides = [x for x, _ in body.points]
    figure = Rect(min(sides), feet, max(sides), head.y + head.radius)
    assert not any(view.rect(hung.rect).overlaps(figure) for hung in plan_wall(job_of(name)).frames)


def proof_on(stairs: Stairs) -> tuple[list[Line], View]:
    """What a proof shows of a row of five frames, 1.5 m above the nosings of a stair, and its view."""
    wall = Wall(name="", width=5000.0, height=5000.0, stairs=stairs)
    asked = group((("A", "B", "C", "D", "E"),), "stairs", gap=50.0, slope=stairs.slope, align="centre",
                  height=Height(by="above_nosings", at=1500.0), centre_on=2500.0)  # fmt: skip
    template, view, _ = drawn(job(*(frame(name, 300.0, 300.0) for name in "ABCDE"), group=asked, wall=wall))
    return [item for form in template.forms for item in form.items if isinstance(item, Line)], view


@pytest.mark.parametrize("slope", [0.6, -0.6])
def test_a_stairs_proof_has_the_pitch_line_and_how_high_it_is_above_a_nosing(slope: float) -> None:
    """1500 mm above the nosings, every 300 mm from the lowest one: as this job says."""
    start = 500.0 if slope > 0 else 4500.0
    lines, view = proof_on(Stairs(x=start, y=180.0, slope=slope, run=300.0, rise=180.0))
    on_wall = [
        (
            (x - view.x0) * view.scale,
            (y - view.y0) * view.scale,
            (x1 - view.x0) * view.scale,
            (y1 - view.y0) * view.scale,
        )
        for x, y, x1, y1 in ((line.x0, line.y0, line.x1, line.y1) for line in lines)
    ]
    heights = [one for one in on_wall if one[0] == pytest.approx(one[2]) and one[3] - one[1] == pytest.approx(1500.0)]
    assert len(heights) == 1
    x, foot = heights[0][:2]
    steps = abs(x - start) / 300.0
    assert steps == pytest.approx(round(steps), abs=1e-6)
    assert foot == pytest.approx(180.0 + steps * 180.0)
    pitch = [
        one for one in on_wall if one[2] > one[0] and (one[3] - one[1]) / (one[2] - one[0]) == pytest.approx(slope)
    ]
    (along,) = [one for one in pitch if one[2] - one[0] > 1700.0]  # five frames and four gaps
    assert along[1] + slope * (x - along[0]) == pytest.approx(foot + 1500.0)


@pytest.mark.parametrize("name", ["lock-keepers", "fern-prints"])
def test_a_wall_for_a_phone_is_shown_without_the_page_around_it_and_loses_no_figure(name: str) -> None:
    """All words of the proof but those of its title band are inside what is seen, which is less than the page."""
    plan = plan_wall(job_of(name))
    whole, bare = (Xml.fromstring(proof_of(plan, "svg", bare=bare).content) for bare in (False, True))
    x, y, wide, high = map(float, bare.get("viewBox", "").split())
    assert wide * high < 0.9 * float(whole.get("viewBox", "").split()[2]) * float(whole.get("viewBox", "").split()[3])
    seen = [
        text for group in bare.iter(f"{SVG}g") if group.get("class") != "title" for text in group.iter(f"{SVG}text")
    ]
    assert len(seen) > 10
    template, _, lettering = drawn(job_of(name))
    page = on_page(template, lettering, 1)
    height = template.page_size[1] * POINT
    inside = Rect(x, height - y - high, x + wide, height - y)
    assert all(inside.holds(text.box) for text in page.texts if text.form != "title")
    assert not any(inside.overlaps(text.box) for text in page.texts if text.form == "title")
