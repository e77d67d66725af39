"""What hangs, read from a made photograph on which somebody pointed: readings that `correct` takes."""

from __future__ import annotations

import json

import numpy as np
import pytest

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.documents.photo_card import cards_of
from templates_gen.documents.photographed import Face
from templates_gen.photo.edges import edges
from templates_gen.photo.hung import _candidates, read_hung
from templates_gen.photo.picture import Photo
from tests.photo.made.examples import of_hung, write_examples
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


def test_edges_cross_at_the_corners():
    grey = np.full((400, 500), 220.0, np.float32)
    grey[100:300, 150:400] = 40
    points = np.array([(150, 100), (400, 100), (400, 300), (150, 300)], float) - 0.5
    sides = [edges(grey, points[at] + 2, points[(at + 1) % 4] - 3, 1.0)[:1] for at in range(4)]
    assert np.abs(_candidates(sides)[0] - points).max() < 0.1


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
    true = of_hung(folder / "job.toml")[2]
    read = {one["id"]: np.array([one["left"], one["right"]]) for one in told["frames"]}
    assert set(read) == {"A", "B"}
    off = np.array([read[name] - true[name] for name in read])
    assert np.abs(off - off.mean((0, 1))).max() < 1.5  # mm, relative to each other
    after = run("correct", "job.toml", "readings.csv")
    assert after.code == 0 and "A" in after.out and "B" in after.out


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
