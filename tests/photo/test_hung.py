"""What hangs, read from a made photograph on which somebody pointed: readings that `correct` takes."""

from __future__ import annotations

import csv
import io
import json

import numpy as np
import pytest

from templates_gen.base.csv_cells import plain
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.documents.photo_card import cards_of
from templates_gen.documents.photographed import Face
from templates_gen.photo.choosing_edges import Choice, choice, off_rectangle
from templates_gen.photo.crossing_edges import Crossings, crossings
from templates_gen.photo.edges import Edge, edges
from templates_gen.photo.hung import Hangs, Hung, as_readings, read_hung, without_depth
from templates_gen.photo.picture import Photo
from tests.photo.made.cameras import standing
from tests.photo.made.examples import of_hung, write_examples
from tests.photo.made.framed import hanging, sides
from tests.photo.made.hung_runs import hung_run
from tests.photo.made.runs import Setting
from tests.running import run


def test_an_edge_is_found_to_a_tenth_of_a_pixel_from_eight_pixels_away():
    """Dark from a slanting line on, over noise; what crosses the line is no edge."""
    chance = np.random.default_rng(1)
    rows, columns = np.mgrid[0:300, 0:400].astype(float)
    away = (rows - (100.3 + 0.02 * columns)) / np.hypot(1, 0.02)
    grey = 200 - 120 / (1 + np.exp(-away / 0.6)) + chance.normal(0, 3, rows.shape)
    grey[:, 180:200] = 60
    found = edges(grey.astype(np.float32), np.array([40.0, 108.0]), np.array([360.0, 100.0]), 1.0)
    (x0, y0), (x1, y1) = found[0].ends
    assert abs(y0 - 100.3 - 0.02 * x0) < 0.1 and abs(y1 - 100.3 - 0.02 * x1) < 0.1


def test_nothing_is_an_edge_on_a_plain_wall():
    grey = np.random.default_rng(1).normal(150, 3, (300, 400)).astype(np.float32)
    assert edges(grey, np.array([40.0, 108.0]), np.array([360.0, 100.0]), 1.0) == []


DEPTHS = np.linspace(17, 23, 13)
"""mm that a frame of 20 mm may stand off the wall."""

ASIDE_OF_NONE = np.zeros((4, 2))
"""Pixels of its own sides for each mm that it does, seen from the front."""


def test_edges_cross_at_the_corners():
    grey = np.full((400, 500), 220.0, np.float32)
    grey[100:300, 150:400] = 40
    points = np.array([(150, 100), (400, 100), (400, 300), (150, 300)], float) - 0.5
    sides = [edges(grey, points[at] + 2, points[(at + 1) % 4] - 3, 1.0)[:1] for at in range(4)]
    assert np.abs(crossings(sides, ASIDE_OF_NONE, DEPTHS).corners[0] - points).max() < 0.1


RECTANGLE = np.array([(0, 300), (200, 300), (200, 0), (0, 0)], float)


def test_a_rectangle_that_was_moved_and_turned_is_off_by_nothing_and_a_wider_one_by_how_much():
    c, s = np.cos(0.02), np.sin(0.02)
    turned = RECTANGLE @ np.array([[c, s], [-s, c]]) + (7.0, -3.0)
    wider = RECTANGLE * [1.01, 1.0]  # 2 mm: each corner is 1 mm aside
    off = off_rectangle(np.stack([turned, wider]), RECTANGLE)
    assert np.abs(off[0]).max() < 1e-9 and np.linalg.norm(off[1]) == pytest.approx(2.0)


def side(first: tuple[float, float], second: tuple[float, float], *edges_at: tuple[float, float]) -> list[Edge]:
    """Edges beside a side, each so many pixels inwards and so steep."""
    ends = np.array([first, second], float)
    along = ends[1] - ends[0]
    inwards = np.array([-along[1], along[0]]) / np.linalg.norm(along)
    return [Edge(ends + away * inwards, steep) for away, steep in edges_at]


def best_of(found: Crossings, spread: np.ndarray, pointed: np.ndarray, off: float = 1.5, moved: float = 0.0) -> Choice:
    """The choice by two pixels to the millimetre; fronts are seen `moved` mm aside for each mm off the wall."""
    walls = [(corners - [100, 700]) / [2, -2] + [moved * depth, 0.0]
             for corners, depth in zip(found.corners, found.depths[[0, -1]] - 20, strict=True)]  # fmt: skip
    return choice(found, (walls[0], walls[1]), (20.0, off), RECTANGLE, spread, pointed, 1.0)


def chosen(deep: float, *left: tuple[float, float], right=((0.0, 20.0),), depths=DEPTHS, **known) -> Choice:
    """Of a frame of 200 mm, two pixels to the millimetre, with these edges at its left side, of which so many pixels
    are seen."""
    x, y = (RECTANGLE * [2, -2] + [100, 700]).T
    corners = np.stack([x, y], -1)
    sides = [side(*corners[[at, (at + 1) % 4]], *((0.0, 20.0),)) for at in range(4)]
    sides[3], sides[1] = side(corners[3], corners[0], *left), side(corners[1], corners[2], *right)
    found = crossings(sides, np.array([[0.0] * 2] * 3 + [[deep / 20] * 2]), depths)
    return best_of(found, 0.01 * np.eye(8), corners, **known)


def test_the_known_size_chooses_among_edges_and_not_the_steepest():
    best = chosen(0.0, (-9.0, 30.0), (0.0, 12.0), (9.0, 40.0))
    assert not best.doubt and best.corners[0][0] == pytest.approx(100.0)


def test_a_frame_of_which_no_edges_make_its_size_is_doubted():
    assert chosen(0.0, (-8.0, 20.0)).doubt == "its edges are 1.8 mm off its size"


def test_two_choices_that_suit_alike_are_a_doubt():
    """A frame that seems moved by both its sides, or by neither."""
    both = chosen(0.0, (0.0, 20.0), (4.0, 20.0), right=((0.0, 20.0), (-4.0, 20.0)))
    assert both.doubt == "other edges suit its size as well"


def test_edges_that_only_reach_farther_down_leave_a_frame_where_it_hangs():
    """Another lower edge, 2 mm farther down, where it is not sure how high the frame is: its upper corners are moved by
    half of that, for the middle is."""
    x, y = (RECTANGLE * [2, -2] + [100, 700]).T
    corners = np.stack([x, y], -1)
    sides = [side(*corners[[at, (at + 1) % 4]], (0.0, 20.0), *([(-4.0, 19.0)] * (at == 2))) for at in range(4)]
    found, high = crossings(sides, ASIDE_OF_NONE, DEPTHS), np.array([0, 0, 0, 0, 0, 2, 0, 2.0])
    assert not best_of(found, np.outer(high, high) + 0.01 * np.eye(8), corners).doubt


def test_a_fainter_frame_about_the_frame_is_a_doubt_where_the_size_does_not_tell():
    """Beads and a frame's own sides are steeper or fainter as the light falls."""
    x, y = (RECTANGLE * [2, -2] + [100, 700]).T
    corners = np.stack([x, y], -1)
    sides = [side(*corners[[at, (at + 1) % 4]], (0.0, 40.0), (-2.0 if at % 2 else -3.0, 4.0)) for at in range(4)]
    found, pointed = crossings(sides, ASIDE_OF_NONE, DEPTHS), corners + (corners - corners.mean(0)) * 0.005
    assert not best_of(found, 0.01 * np.eye(8), pointed).doubt
    larger = (RECTANGLE - RECTANGLE.mean(0)).ravel() / 20  # how far the camera stands is not sure
    best = best_of(found, np.outer(larger, larger) + 0.01 * np.eye(8), pointed)
    assert best.doubt == "other edges suit its size as well"


def test_a_front_edge_that_looks_like_the_frames_own_side_is_where_its_depth_puts_it():
    best = chosen(6.0, (-6.0, 20.0))
    assert not best.doubt and best.corners[0][0] == pytest.approx(100.0)


def test_how_far_a_frame_stands_off_the_wall_is_seen_where_its_own_side_ends():
    """The wall is 27 pixels outside of its front: at 18 pixels for 20 mm, 30 mm off the wall."""
    best = chosen(18.0, (-27.0, 20.0), (0.0, 20.0), depths=np.linspace(5, 38, 34), off=7.0)
    assert not best.doubt and best.corners[0][0] == pytest.approx(100.0)
    assert best.stands[0] == pytest.approx(30.0, abs=0.5) and best.stands[1] < 1.5  # mm


def test_a_frame_seen_from_aside_that_does_not_show_how_far_it_stands_off_the_wall_is_a_doubt():
    known, unknown = (chosen(0.0, (0.0, 20.0), depths=np.linspace(20 - 2.5 * off, 20 + 2.5 * off, 25), off=off,
                             moved=0.5) for off in (1.5, 7.0))  # fmt: skip
    assert not known.doubt and known.stands[1] == pytest.approx(1.5, abs=0.2)
    assert unknown.doubt == "it is seen from aside, and the job has no depth of it"


def test_a_frame_that_is_not_whole_on_the_picture_is_not_read(folder):
    """The picture's own border is no edge of a frame."""
    write_examples(folder)
    corners = (folder / "corners.csv").read_text().splitlines()
    name, first, *others = corners[1].split(",")
    corners[1] = ",".join([name, f"-5 {first.split()[1]}", *others])
    (folder / "corners.csv").write_text("\n".join(corners) + "\n")
    ran = run("photo", "hung", "job.toml", "hung.jpg", "corners.csv", "-o", "readings.csv")
    assert ran.code == 2 and "1 of 2 frames can be read" in ran.err and not (folder / "readings.csv").exists()
    assert f"{name}: it is not whole on the photograph" in " ".join(ran.err.split())


def test_a_made_frame_may_hang_partly_or_wholly_out_of_the_picture():
    """Its own sides are drawn where the picture is."""
    chance = np.random.default_rng(5)
    camera = standing(chance, (600, 450), (0.0, 0.0), 1000.0, 700.0)
    for x in (-480.0, 900.0):
        r = Rect(x - 150, -150, x + 150, 150)
        frame = hanging([Face("A", r, r, r, None)], 25.0, chance)[0]
        picture = np.full((450, 600), 170.0, np.float32)
        sides(picture, frame, camera, chance)
        assert (picture != 170.0).any() == (x < 0)


def test_a_wall_without_a_card_or_with_one_frame_is_refused():
    face = Face("A", Rect(0, 0, 200, 300), Rect(10, 10, 190, 290), Rect(10, 10, 190, 290), None)
    photo = Photo("hung.jpg", b"", np.full((900, 1200), 170, np.uint8))
    with pytest.raises(InputError, match=r"hung.jpg: found corners of 1 frames, expected 2 or more"):
        read_hung(photo, [face], {}, {"A": np.zeros((4, 2))}, cards_of("a4"))


def test_the_readings_are_what_correct_takes(folder):
    write_examples(folder)
    ran = run("photo", "hung", "job.toml", "hung.jpg", "corners.csv", "-o", "readings.csv", "--format", "json")
    assert ran.code == 0, ran
    told = json.loads(ran.out)
    true = of_hung()[2]
    read = {one["id"]: np.array([one["left"], one["right"]]) for one in told["frames"]}
    assert set(read) == {"A", "B"}
    off = np.array([read[name] - true[name] for name in read])
    assert np.abs(off - off.mean((0, 1))).max() < 1.5  # mm, relative to each other
    within = {row["frame"]: row["within"] for row in csv.DictReader(io.StringIO((folder / "readings.csv").read_text()))}
    assert within == {one["id"]: f"{one['sure']:.2f} mm" for one in told["frames"]}
    after = run("correct", "job.toml", "readings.csv")
    assert after.code == 0 and "A" in after.out and "B" in after.out


def test_frames_that_are_much_deeper_than_the_job_says_are_not_read(folder):
    """They stand 20 mm off the wall, and look larger than they should half a millimetre off it."""
    write_examples(folder)
    job = (folder / "job.toml").read_text()
    (folder / "job.toml").write_text(job.replace("height = 400\n", "height = 400\ndepth = 0.5\n"))
    ran = run("photo", "hung", "job.toml", "hung.jpg", "corners.csv", "-o", "readings.csv")
    assert ran.code == 2 and "0 of 2 frames can be read" in ran.err and "mm off its size" in ran.err


@pytest.mark.parametrize(
    ("row", "problem"),
    [("X,1 2,3 4,5 6,7 8", "found 'X', which is not a frame"), ("A,1 2,3,5 6,7 8", "found '3', expected a corner"),
     ("A,1 2,,5 6,7 8", "expected a corner in pixels")],
)  # fmt: skip
def test_corners_that_cannot_be_read_are_refused_with_their_line(folder, row, problem):
    write_examples(folder)
    (folder / "corners.csv").write_text(f"frame,top_left,top_right,bottom_right,bottom_left\n{row}\n")
    ran = run("photo", "hung", "job.toml", "hung.jpg", "corners.csv")
    assert ran.code == 2 and "corners.csv, line 2" in ran.err and problem in ran.err


def test_a_line_that_crosses_an_edge_at_a_slant_is_none_of_its_own():
    grey = np.full((300, 400), 200.0, np.float32)
    grey[100:] = 60
    found = edges(grey, np.array([40.0, 103.0]), np.array([360.0, 97.0]), 1.0)
    assert len(found) == 1 and np.abs(found[0].ends[:, 1] - 99.5).max() < 0.1


def test_frames_with_sides_beads_and_shadows_are_read_or_doubted():
    """Mouldings, light and lens of another kind than usual; four million pixels, as the whole test has to be quick."""
    read = hung_run(Setting(odd=True, size=(2400, 1800)), 1, first=8)
    assert len(read.tilts) >= read.frames - 2 and max(read.worst).far < 3.0  # mm


def test_frames_without_a_depth_are_named_and_others_are_not():
    assert [line.split(".")[0] for line in without_depth("AB", {"B": 20.0})] == ["Frames without a depth in the job: A"]
    assert list(without_depth("AB", {"A": 20.0, "B": 20.0})) == []


@pytest.mark.parametrize("name", ["=1+1", "-", 'a "b", c', "'=x"])
def test_a_frame_of_any_name_is_read_back_from_the_readings_and_is_no_formula(name):
    hung = Hung((Hangs(name, (10.0, 1500.0), (310.0, 1500.5), 1.0),), ())
    _, row = csv.reader(io.StringIO(as_readings(hung, 4.0)))
    assert plain(row[0]) == name and not row[0].startswith("=")
    assert row[1:] == ["1500.00 mm", "1500.50 mm", "6.00 mm", "1.00 mm"]
