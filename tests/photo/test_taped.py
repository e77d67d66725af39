"""Taped paper read from made photographs, and what is said of it; tests/bench/photographs.py has the distributions."""

from __future__ import annotations

import dataclasses
from functools import cache

import cv2
import numpy as np
import pytest

from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.photo.picture import Photo
from templates_gen.photo.screening import screened
from templates_gen.photo.tags import Seen
from templates_gen.photo.taped import Taped, printed_tags, read_taped
from templates_gen.photo.taped_picture import marked
from templates_gen.photo.taped_words import as_data, bad_joins, doubtful_joins, sentences
from tests.photo.made.cameras import standing
from tests.photo.made.examples import as_file
from tests.photo.made.photograph import Look, photograph
from tests.photo.made.runs import Outcome, Setting, compared, one, printed, rms
from tests.photo.made.taped import Laid, taped
from tests.photo.made.truth import truth

SMALL = Setting(size=(2400, 1800), dots=300.0)
"""Four million pixels: the tags are as large as twelve million show them on a group of 2.5 m."""


@cache
def flat() -> tuple[list[Laid], list[Photo], Taped]:
    laid, photos = one("ferns", SMALL, 3)
    return laid, photos, read_taped(photos, printed("ferns")[1])


def seen_by(laid: list[Laid], look: Look) -> Photo:
    """One photograph of these sheets."""
    _, known = printed("ferns")
    chance = np.random.default_rng(5)
    box = [pick(edge for _, c in known.cells for edge in edges(c)) for edges in (_across, _up) for pick in (min, max)]
    middle = (box[0] + box[1]) / 2, (box[2] + box[3]) / 2
    camera = standing(chance, SMALL.size, middle, box[1] - box[0], box[3] - box[2])
    return Photo("wall.jpg", b"", photograph(laid, camera, look, chance))


def _across(cell: Rect) -> tuple[float, float]:
    return cell.x0, cell.x1


def _up(cell: Rect) -> tuple[float, float]:
    return cell.y0, cell.y1


def text(found: Taped) -> str:
    return "\n".join(said.text for said in sentences(found, False))


def test_joins_and_nails_are_read_to_a_tenth_of_a_millimetre():
    laid, _, found = flat()
    outcome = Outcome()
    compared(found, truth(laid, printed("ferns")[1]), outcome)
    assert len(outcome.joins) == len(printed("ferns")[1].joins) and not found.unseen
    assert rms(outcome.joins) < 0.15 and rms(outcome.nails) < 0.3  # mm


def test_paper_whose_edges_lift_is_read_as_paper_that_is_never_in_the_wall():
    """What stands off may look moved: that no tag is in the wall tells by how much."""
    larger = dataclasses.replace(SMALL, size=(2800, 2100), off=3.0, loose=True)  # else tags have 14 pixels, the least
    laid, photos = one("ferns", larger, 3)
    outcome, found = Outcome(), read_taped(photos, printed("ferns")[1])
    compared(found, truth(laid, printed("ferns")[1]), outcome)
    assert rms(outcome.joins) < 0.1 and rms(outcome.nails) < 0.2  # mm
    assert found.fit.state.heights.min() > -0.5 < 1.0 < found.fit.state.heights.max()


def test_every_join_that_is_far_off_is_named_and_no_other():
    laid, _, found = flat()
    true = truth(laid, printed("ferns")[1])
    named = {(join.over, join.under) for join in bad_joins(found)}
    far = {pair for pair, (off, _, _) in true.joins.items() if off > 1.5}
    near = {pair for pair, (off, _, _) in true.joins.items() if off < 1.0}
    assert far and far <= named and not near & named
    assert all(f"Join of {under} and {over}:" in text(found) for over, under in named)
    assert not {(join.over, join.under) for join in doubtful_joins(found)} & named


@pytest.mark.parametrize(
    ("off", "sure", "bad", "doubtful"),
    [(1.24, 0.02, False, False), (1.27, 0.02, True, False), (1.3, 0.2, False, True), (1.36, 0.2, True, False),
     (1.2, 0.35, False, True), (1.41, 0.9, True, False), (0.9, 0.5, False, False)],
)  # fmt: skip
def test_a_join_is_named_where_it_is_surely_off_and_doubted_where_it_may_be(off, sure, bad, doubtful):
    """Off by more than 1.25 mm it is one or the other; what may be more than 1.5 mm is never left out."""
    _, _, found = flat()
    one = replace(found, joins=(replace(found.joins[0], off=off, sure=sure),))
    assert (len(bad_joins(one)), len(doubtful_joins(one))) == (bad, doubtful)
    words = text(one)
    assert ("Join of" in words) == bad and ("take a second one from the side" in words) == doubtful
    two = text(replace(one, sides=(20.0, 20.0), blurs=(0.8, 0.8)))
    assert ("press the paper flat, and look whether its bars go on straight" in two) == doubtful


def test_what_is_stated_of_flat_paper_is_little_and_kept():
    """On pages of 600 dots to the inch: those of 300 put a tag's edges a thirtieth of a millimetre off."""
    laid, photos = one("ferns", dataclasses.replace(SMALL, size=(3200, 2400), dots=600.0), 3)
    found, true = read_taped(photos, printed("ferns")[1]), truth(laid, printed("ferns")[1])
    off = np.array([join.off - true.joins[join.over, join.under][0] for join in found.joins])
    sure = np.array([join.sure for join in found.joins])
    assert (np.abs(off) <= sure).mean() > 0.9 and np.median(sure) < 0.05  # mm


def test_joins_farther_off_than_people_tape_are_taken_for_those_of_another_print():
    _, _, found = flat()
    assert "another print" not in text(found)
    count = len(found.joins)
    for far, said in ((count // 2 - 1, False), (count // 2 + 1, True)):
        joins = tuple(replace(join, off=4.0 if at < far else 0.5) for at, join in enumerate(found.joins))
        assert (f"{far} of {count} joins would be off by more than 3 mm" in text(replace(found, joins=joins))) == said


def test_a_sheet_that_is_moved_back_as_said_meets_its_neighbour():
    """Right is right and up is up: the worst join, moved by what is said, is off less."""
    laid, _, found = flat()
    worst = bad_joins(found)[0]
    _, dx, dy = truth(laid, printed("ferns")[1]).joins[worst.over, worst.under]
    said = (worst.across, worst.along) if worst.upright else (worst.along, worst.across)
    assert np.hypot(dx - said[0], dy - said[1]) < 0.1 < np.hypot(dx, dy)
    sentence = text(found).splitlines()[0]
    if abs(dy) > 0.5:
        assert (
            ("too high" in sentence and "down" in sentence) if dy > 0 else ("too low" in sentence and " up" in sentence)
        )


def test_the_data_hold_every_sheet_join_and_nail():
    _, _, found = flat()
    data, known = as_data(found), printed("ferns")[1]
    assert data["format"] == 1 and {one["name"] for one in data["sheets"]} == {name for name, _ in known.cells}
    assert len(data["joins"]) == len(known.joins) and {one["name"] for one in data["nails"]} == {
        nail.name for nail in known.nails
    }
    assert 0.5 < data["pixels_per_mm"] < 3 and data["residual_px"] < 0.2


def test_turns_are_counter_clockwise_as_one_faces_the_wall():
    laid, _, found = flat()
    turns = {sheet.name: np.degrees(sheet.pose[2]) for sheet in laid}
    read = np.array([one.turn - turns[one.name] for one in found.sheets])
    assert (read - read.mean()).std() < 0.03 < np.std(list(turns.values()))


@cache
def spoiled() -> tuple[list[Laid], Laid, Laid, Taped]:
    """A sheet upside down, one not there, tape and glare, and another template's sheets of the same numbers.

    These lie elsewhere on the wall, and in other places to each other.
    """
    laid = taped(printed("ferns")[0], np.random.default_rng(7), aside=0.4, turn=0.05, dots=300.0)
    upside, gone = laid[5], laid.pop(4)
    laid[4] = dataclasses.replace(upside, pose=upside.pose + np.array([0, 0, np.pi]))
    others = [
        dataclasses.replace(sheet, pose=sheet.pose + np.array([700.0 - 350 * at, -950.0 + 30 * at, 0.1 * at]))
        for at, sheet in enumerate(laid[-3:])
    ]
    photo = seen_by([*others, *laid], Look(tapes=20, glares=2, blur=0.7))
    return laid, upside, gone, read_taped([photo], printed("ferns")[1])


def test_a_sheet_upside_down_and_one_that_is_not_there_are_said():
    _, upside, gone, found = spoiled()
    assert [one.name for one in found.elsewhere] == [upside.name] and gone.name in found.unseen
    assert f"Sheet {upside.name} lies upside down, " in text(found)
    assert "Not seen:" in text(found) and gone.name in text(found)


def test_tape_glare_and_another_template_in_the_picture_spoil_little():
    laid, upside, gone, found = spoiled()
    assert len(found.sheets) >= len(laid) - 2
    true, worst = truth(laid, printed("ferns")[1], {gone.name: gone}), 0.0
    for join in found.joins:
        assert upside.name not in (join.over, join.under) and gone.name not in (join.over, join.under)
        _, dx, dy = true.joins[join.over, join.under]
        own = (join.across, join.along) if join.upright else (join.along, join.across)
        worst = max(worst, float(np.hypot(dx - own[0], dy - own[1])))
    assert worst < 0.5  # mm


def test_swapped_and_stray_tags_are_left_out():
    _, known = printed("ferns")
    printed_by, _, _ = printed_tags(known)
    tags = {number: corners * 2.0 * [1, -1] + [0, 4000] for number, (_, corners) in printed_by.items()}
    numbers = sorted(tags)
    tags[numbers[0]], tags[numbers[-1]] = tags[numbers[-1]], tags[numbers[0]]
    seen = Seen([*tags.items(), (numbers[4], tags[numbers[4]] + 300.0)], 0.8)
    view = screened(seen, printed_by, 1.0)
    assert set(numbers) - set(view.view) == {numbers[0], numbers[-1]} and view.strays == 2
    assert (view.view[numbers[4]] == tags[numbers[4]]).all()


def test_a_poor_photograph_is_told_and_how_to_take_a_better_one():
    _, _, found = flat()
    poor = text(replace(found, sides=(12.0,), blurs=(1.8,), residual_px=0.5, heights=1.0, by_lines=False))
    for words in (
        "go nearer",
        "hold the phone still",
        "Take a plain one",
        "The paper stands off",
        "Too little of the level",
    ):
        assert words in poor and words not in text(found)


def test_the_scale_is_not_read_from_a_photograph_and_that_is_said():
    _, _, found = flat()
    assert "measure the rulers" in text(found)
    assert any("measured printer" in said.text for said in sentences(found, True))


def test_a_photograph_without_the_tags_is_refused():
    _, known = printed("ferns")
    blank = Photo("wall.jpg", b"", np.full((1800, 2400), 180, np.uint8))
    with pytest.raises(InputError, match=r"wall.jpg: shows 0 photo tags, expected 6 on 2 sheets"):
        read_taped([blank], known)


def test_photographs_of_two_cameras_are_refused():
    _, photos, _ = flat()
    other = Photo("other.jpg", b"", np.full((2400, 1800), 180, np.uint8))
    with pytest.raises(InputError, match=r"other.jpg: has 1800 × 2400 pixels"):
        read_taped([photos[0], other], printed("ferns")[1])


def test_the_joins_are_marked_where_they_are_on_the_photograph():
    """Only where lines and letters go is the picture another; bad joins are red."""
    _, photos, found = flat()
    photo = Photo("wall.jpg", as_file(photos[0].grey, "PNG"), photos[0].grey)
    seen = cv2.imdecode(np.frombuffer(marked(photo, found, printed("ferns")[1], "png"), np.uint8), cv2.IMREAD_COLOR)
    changed = np.abs(seen.astype(int) - photos[0].grey[..., None]).max(2) > 40
    assert 0.001 < changed.mean() < 0.05
    red = (seen[..., 2] > 150) & (seen[..., 0] < 90) & (seen[..., 1] < 90)
    assert red.any()
