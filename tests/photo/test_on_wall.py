"""The group on a photograph of a wall with cards: where frames are drawn, how exactly, what is read of a feature."""

from __future__ import annotations

import json
from functools import cache

import cv2
import numpy as np
import pytest

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.documents.photo_card import cards_of
from templates_gen.documents.photographed import Face
from templates_gen.photo.cards import OnWall, see_wall, within
from templates_gen.photo.on_wall import drawn, measured, placed
from templates_gen.photo.picture import Photo
from tests.photo.made.cameras import Camera, standing
from tests.photo.made.carded import cards_at
from tests.photo.made.examples import write_examples
from tests.photo.made.photograph import Look, photograph
from tests.running import run

MIDDLE = (1500.0, 1450.0)
FACE = Face("A", Rect(1700, 1200, 2000, 1600), Rect(1715, 1215, 1985, 1585), Rect(1750, 1260, 1950, 1540), None)


@cache
def seen(count: int, kind: str = "brown") -> tuple[Camera, Photo, OnWall]:
    chance = np.random.default_rng(11)
    cards = cards_at([MIDDLE, (MIDDLE[0] + 1600.0, MIDDLE[1] - 200.0)][:count], chance)
    camera = standing(chance, (3000, 2250), (MIDDLE[0] + 800, MIDDLE[1]), 3000.0, 1500.0, kind)
    photo = Photo("wall.jpg", b"", photograph(cards, camera, Look(), chance))
    return camera, photo, see_wall(photo, cards_of("a4"))


def off(count: int, kind: str, away: float) -> tuple[float, float]:
    """How far a point is drawn from its place, and what is claimed (mm)."""
    camera, _, wall = seen(count, kind)
    point = np.array([[away, 100.0]])
    true = camera.pixel(np.array([[MIDDLE[0] + away, MIDDLE[1] + 100.0, 0.0]]))
    return float(np.linalg.norm(wall.wall(true) - point)), float(wall.sure(point)[0])


@pytest.mark.parametrize(("count", "most"), [(1, 30.0), (2, 10.0)])
@pytest.mark.parametrize("kind", ["brown", "divided"])
def test_two_metres_from_the_card_places_are_known_as_exactly_as_claimed(count, most, kind):
    error, claimed = off(count, kind, 2000.0)
    assert error < most and error < 2 * claimed


def test_the_second_card_makes_it_more_exact_and_so_does_being_near():
    claims = [off(count, "brown", away)[1] for count, away in ((1, 2000.0), (2, 2000.0), (2, 300.0))]
    assert claims[0] > 2 * claims[1] > 2 * claims[2] > 0


def test_pixels_and_points_of_the_wall_are_each_others_inverse():
    _, _, wall = seen(1)
    points = np.array([[-400.0, 200.0], [1800.0, -300.0], [30.0, 700.0]])
    assert np.abs(wall.wall(wall.pixels(points)) - points).max() < 1e-3


def test_a_frame_is_drawn_where_it_will_hang():
    camera, photo, wall = seen(2)
    (told,) = placed(wall, [FACE], MIDDLE)
    r = FACE.frame
    true = camera.pixel(np.array([(r.x0, r.y1, 0), (r.x1, r.y1, 0), (r.x1, r.y0, 0), (r.x0, r.y0, 0)], float))
    assert np.abs(np.array(told["corners"]) - true).max() < 3.0 and told["id"] == "A"
    colours = np.repeat(photo.grey[..., None], 3, 2)
    picture = cv2.imdecode(np.frombuffer(drawn(colours, wall, [FACE], MIDDLE, "png"), np.uint8), cv2.IMREAD_COLOR)
    changed = np.abs(picture.astype(int) - colours).max(2) > 12
    rows, columns = np.nonzero(changed)
    assert abs(columns.min() - true[:, 0].min()) < 20 and abs(columns.max() - true[:, 0].max()) < 30
    assert abs(rows.min() - true[:, 1].min()) < 20 and abs(rows.max() - true[:, 1].max()) < 30
    x, y = np.round(true.mean(0)).astype(int)
    assert picture[y, x].tolist() == [225] * 3  # the picture that is not given
    left = np.round(true[[0, 3]].mean(0) + np.array([5, 0])).astype(int)
    assert picture[left[1], left[0]].tolist() == [70, 74, 80]  # the moulding


def test_the_focal_length_that_was_noted_is_where_the_fit_begins():
    camera, photo, wall = seen(1)
    again = see_wall(replace(photo, focal=camera.focal), cards_of("a4")).fit
    assert wall.fit.scene.focal == 3000 * 3 / 4 and again.scene.focal == camera.focal
    fits = [fit.scene.focal * np.exp(fit.state.lens[0]) for fit in (wall.fit, again)]
    assert abs(fits[1] - camera.focal) < abs(fits[0] - camera.focal)


def test_a_feature_is_read_from_its_four_corners_in_any_order():
    camera, _, wall = seen(2)
    corners = np.array([(2500, 300, 0), (2300, 300, 0), (2300, 380, 0), (2500, 380, 0)], float)
    rect, sure = measured(wall, camera.pixel(corners), MIDDLE)
    assert np.abs(np.subtract((rect.x0, rect.y0, rect.x1, rect.y1), (2300, 300, 2500, 380))).max() < 12.0
    assert 0 < sure < 15


def test_a_wall_without_a_card_is_refused_with_what_to_do():
    blank = Photo("wall.jpg", b"", np.full((900, 1200), 170, np.uint8))
    with pytest.raises(InputError, match=r"wall.jpg: shows no whole photo card: 0 of its four tags were found"):
        see_wall(blank, cards_of("a4"))


def test_the_command_writes_the_picture_and_reads_a_feature(folder):
    write_examples(folder)
    ran = run("photo", "wall", "job.toml", "wall.jpg", "-o", "out.png", "--format", "json")
    told = json.loads(ran.out)
    assert ran.code == 0 and {one["id"] for one in told["frames"]} == {"A", "B"} and told["cards"] == [1, 2]
    with (folder / "out.png").open("rb") as file:
        assert file.read(4) == b"\x89PNG"
    corners = " ".join(f"{x:.1f},{y:.1f}" for x, y in told["frames"][0]["corners"])
    ran = run("photo", "wall", "job.toml", "wall.jpg", "--feature", "vent", "--corners", corners, "--format", "json")
    read = json.loads(ran.out)["feature"]
    assert abs(read["width"] - 300) < 0.1 and abs(read["height"] - 400) < 0.1
    ran = run("photo", "wall", "job.toml", "wall.jpg", "--feature", "vent", "--corners", "1,2 3,4")
    assert ran.code == 2 and "--corners: found '1,2 3,4', expected four corners in pixels" in ran.err


def test_places_are_within_what_is_said_in_one_direction_and_in_both():
    """1.960 deviations of a normal distribution, and 2.448 from a middle where both directions are alike: the square
    roots of 3.841 and 5.991, the chi-squared distribution's 95 % of one and two numbers."""
    one, both = within(np.array([np.diag([4.0, 0.0]), np.diag([4.0, 4.0])]))
    assert one == pytest.approx(2 * 1.960, rel=0.02) and both == pytest.approx(2 * 2.448, rel=0.01)
