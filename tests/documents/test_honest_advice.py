"""What is advised can be had, and what is found is said where it is looked for."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.record import replace
from templates_gen.checks import find
from templates_gen.documents.correcting.moves import Limits
from templates_gen.documents.correcting.sentences import limits_words
from templates_gen.documents.options.score_words import plan_score
from templates_gen.documents.other_ways import closer_words
from templates_gen.documents.schedule.carrying import carried
from templates_gen.tiling.large_pages import comes_off_a_roll
from templates_gen.tolerance.advice import advice
from templates_gen.tolerance.expected import expected_error
from tests.jobs import SAMPLES, frame, group, job, paper
from tests.made import Everything, asked, lying, made, make, twelve
from tests.running import run


@cache
def uncut_kiln() -> Everything:
    """The kiln tiles on sheets that are not cut, which leave two of the frames centimetres off each other."""
    cut = asked("kiln-tiles")
    return make(replace(cut, paper=replace(cut.paper, trim="none")))


def test_a_print_shop_in_one_piece_is_advised_only_where_a_roll_is_that_wide() -> None:
    """Twelve ferns stand 1.6 m high and wider, the row of three 456 mm: rolls are 610 to 1067 mm wide, and to 44 in."""
    wide, low = plan_wall(twelve(paper("a4"))), plan_wall(lying(paper("letter")))
    assert (comes_off_a_roll(wide), comes_off_a_roll(low)) == (False, True)
    for done in (made("kiln-tiles"), made("twelve, a4, marks"), uncut_kiln()):
        expected = expected_error(done.plan, done.sheets)
        assert expected and not expected.shop and advice(expected).name != "one-piece"
        assert not any("--one-piece" in line for line in closer_words(done.plan, expected))


def test_strips_off_a_roll_are_named_where_one_page_is_too_wide_for_every_roll() -> None:
    done = uncut_kiln()
    lines = closer_words(done.plan, expected_error(done.plan, done.sheets))
    assert any('--paper "roll 1067 mm"' in line for line in lines)


def test_what_neighbours_may_be_off_is_a_finding_with_its_level_in_check(tmp_path: Path) -> None:
    text = (SAMPLES / "kiln-tiles.toml").read_text(encoding="utf-8")
    assert text.count('size = "a3"\n') == 1
    uncut = tmp_path / "uncut.toml"
    uncut.write_text(text.replace('size = "a3"\n', 'size = "a3"\ntrim = "none"\n'), encoding="utf-8")
    out = run("check", uncut).out
    assert re.search(r"\nwarn  \w+ and \w+ may come out", out)
    assert out.rstrip().splitlines()[-1] == "found: 1 warn, 4 notes"


@pytest.mark.parametrize("name", ["alphabet-column", "paste-papers", "lock-keepers", "kiln-tiles"])
def test_the_schedule_shows_what_was_found_about_its_nails(name: str) -> None:
    plan = made(name).plan
    lines = carried(plan, find(plan))
    assert {number for line in lines for number in line.see}


def test_nothing_is_said_of_nails_of_which_nothing_is_known_and_nothing_found() -> None:
    plan = plan_wall(job(frame("A", 300.0, 300.0, 80.0), group=group((("A",),))))
    assert carried(plan, ()) == ()


def test_what_frames_hang_around_is_no_hole_in_their_arrangement() -> None:
    plan = made("kiln-tiles").plan
    with_window, holed = plan_score(plan), plan_score(replace(plan, job=_without_window(plan.job)))
    assert with_window and holed
    assert holed.total < 0.1 and holed.filled < 0.5
    assert with_window.total > 0.5 and with_window.filled > 0.9
    assert (with_window.balance, with_window.left_heavy) == (holed.balance, holed.left_heavy)


def _without_window(of):
    return replace(of, group=replace(of.group, around=None))


def test_limits_are_in_the_jobs_unit_first() -> None:
    done = made("fern-prints").plan
    words = limits_words(Limits(turn=0.01, step=1.6), done.job.unit)
    assert words.endswith("a step under 0.06 in · 1.6 mm")
    assert limits_words(Limits(turn=0.01, step=1.6), "mm").endswith("a step under 1.6 mm")
