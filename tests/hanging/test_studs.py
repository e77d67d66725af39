"""Where studs are, by what was measured and by nothing else."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.checks import find
from templates_gen.hanging.studs import centres, known, nearest_stud, on_stud
from templates_gen.job.model import Studs, Wall
from templates_gen.job.reading.building import read_job
from tests.finding_cases_holding import nailed, on_board, on_wall, pair, pulled, railed
from tests.jobs import frame, job, named
from tests.running import MINIMAL

INCH = 25.4  # mm exactly (international yard and pound agreement, 1959)

# Centres at 16, 32, 48, … in, 1 1/2 in wide, so that panel edges fall on them: US Navy NAVEDTRA 14044 (Builder),
# figure 1-40
SIXTEEN = Studs(first=16 * INCH, spacing=16 * INCH, width=1.5 * INCH)


def wall(studs: Studs | None, width: float = 100 * INCH) -> Wall:
    return Wall(name="", width=width, height=2600.0, studs=studs)


def test_centres_from_a_measured_first_one():
    assert [x / INCH for x in centres(SIXTEEN, INCH, 81 * INCH)] == pytest.approx([16, 32, 48, 64, 80])
    assert [x / INCH for x in centres(SIXTEEN, 16 * INCH, 32 * INCH)] == pytest.approx([16, 32])


def test_studs_go_on_to_the_left_of_the_first_one_measured():
    far = Studs(first=48 * INCH, spacing=16 * INCH, width=1.5 * INCH)
    assert [x / INCH for x in centres(far, INCH, 81 * INCH)] == pytest.approx([16, 32, 48, 64, 80])


def test_the_nearest_stud_and_by_how_much_it_is_missed():
    # 45 in: the stud at 48 is 3 in to its right; faces at 15 1/4 and 16 3/4: worked out by hand here
    assert nearest_stud(45 * INCH, wall(SIXTEEN)) == pytest.approx(48 * INCH)
    hits = [on_stud(x * INCH, wall(SIXTEEN)) for x in (15.24, 15.25, 16.75, 16.76, 48.75, 48.76)]
    assert hits == [False, True, True, False, True, False]


def test_no_stud_is_looked_for_beyond_the_walls_end():
    assert nearest_stud(79 * INCH, wall(SIXTEEN, width=79 * INCH)) == pytest.approx(64 * INCH)


@pytest.mark.parametrize(
    "studs",
    [
        None,
        Studs(first=None, spacing=600.0, width=38.0),
        Studs(first=400.0, spacing=600.0, width=38.0, confirmed=False),
    ],
)
def test_nothing_is_guessed(studs):
    assert not known(studs)
    assert centres(studs, 0.0, 4000.0) == ()
    assert nearest_stud(1000.0, wall(studs)) is None
    assert on_stud(1000.0, wall(studs)) is None


def test_the_one_stud_that_was_measured_is_one_whatever_the_spacing():
    lone = wall(Studs(first=400.0, spacing=600.0, width=38.0, confirmed=False))
    assert [on_stud(x, lone) for x in (381.0, 419.0, 420.0)] == [True, True, None]


at = st.floats(min_value=0.0, max_value=4000.0)


@given(at, at, st.floats(min_value=200.0, max_value=700.0))
def test_the_nearest_stud_is_never_further_than_half_a_spacing_within_the_wall(x, first, spacing):
    studs = Studs(first=first, spacing=spacing, width=38.0)
    where, ends = wall(studs, width=4000.0), centres(studs, 0.0, 4000.0)
    near = nearest_stud(x, where)
    assert near is not None
    off, hit = abs(near - x), min(abs(near - x), abs(first - x))
    assume(abs(hit - 19.0) > 1e-3)
    assert on_stud(x, where) == (hit < 19.0)
    if ends[0] <= x <= ends[-1]:
        assert off <= spacing / 2 + 1e-6


@pytest.fixture
def read(tmp_path):
    """The studs of a wall with this line."""

    def from_line(line: str) -> Studs | None:
        path = tmp_path / "job.toml"
        path.write_text(MINIMAL.replace("height = 2600", f"height = 2600\nstuds = {line}"), encoding="utf-8")
        return read_job(path).wall.studs

    return from_line


# 600 mm and 38 mm where nothing is given: UK practice, and a nominal 2 in stud (both from memory)
@pytest.mark.parametrize(
    ("line", "studs"),
    [
        ("{ first = 310 }", Studs(first=310.0, spacing=600.0, width=38.0, confirmed=False)),
        ("{ spacing = 400 }", Studs(first=None, spacing=400.0, width=38.0, confirmed=False)),
        ("{ first = 310, spacing = 400 }", Studs(first=310.0, spacing=400.0, width=38.0)),
        ("{ first = 310, second = 722 }", Studs(first=310.0, spacing=412.0, width=38.0)),
        ("{ first = 722, second = 310 }", Studs(first=722.0, spacing=412.0, width=38.0)),
        ("{ first = 310, second = 1522, spacing = 400 }", Studs(first=310.0, spacing=404.0, width=38.0)),
        ("{ second = 722 }", Studs(first=None, spacing=600.0, width=38.0, confirmed=False)),
    ],
)
def test_a_second_stud_tells_or_confirms_the_spacing(read, line, studs):
    assert read(line) == studs


def texts(of, rule: str) -> list[str]:
    return [found.text for found in find(plan_wall(of)) if found.rule == rule]


def test_a_heavy_frame_on_board_is_told_which_way_the_nearest_stud_is():
    (text,) = texts(on_board(16.0, 2076.0), "board-heavy")
    assert "76 mm" in text and "to the right of its nail" in text
    (text,) = texts(on_board(16.0), "board-heavy")
    assert "unless in a stud" in text and "nearest" not in text
    assert texts(on_board(16.0, 2076.0), "stud-missed") == []  # said once


def test_a_frame_on_board_is_told_how_many_hooks_are_usual_and_for_which_depth():
    # 5 kg each, nothing above 15 kg, up to 300 mm deep: common practice in Germany (hausjournal); 11.0, 33.1 lb
    ((usual,), (heavy,), (deep,)) = (
        named("board-heavy", on_board(weight, depth=depth))
        for weight, depth in ((11.0, 50.0), (16.0, None), (2.0, 301.0))
    )
    assert "about 5.0 kg · 11.0 lb on each, for frames up to 300 mm · 11 13/16 in deep: 3 would be wanted" in usual.text
    assert "Above 15.0 kg · 33.1 lb, common practice hangs nothing on hooks there: use a stud" in heavy.text
    assert "hold for frames up to 300 mm · 11 13/16 in deep; this one is deeper: use a stud" in deep.text
    assert usual.source == heavy.source == deep.source and "hausjournal" in usual.source


def test_a_frame_is_told_of_the_nearer_of_two_nails():
    # rings at 1900 and 2100, studs at 1850 and 2450: 50 to the left of the first
    (text,) = texts(on_board(10.0, 1850.0, hanger=pair()), "stud-missed")
    assert "50 mm" in text and "to the left" in text


def test_a_cleat_is_told_which_studs_its_rail_crosses():
    # screws at 1900 and 2100, studs every 200 at 1930 and 2130: one between the screws
    (text,) = texts(railed(1930.0), "cleat-off-studs")
    assert "2 screws are not in a stud" in text and "193.0 cm" not in text and "1930 mm" in text
    assert "2130" not in text and "the rail crosses the stud at 1930 mm · 76 in from the wall's left end" in text
    # every 100 mm from 1880 on: 1900 is within 19 of none, 1980 and 2080 lie between the screws
    ((two,), (beside,), (none,)) = (
        texts(job(frame(hanger=pair(kind="cleat")), **on_wall(first=first, spacing=spacing)), "cleat-off-studs")
        for first, spacing in ((1880.0, 100.0), (1910.0, 250.0), (1850.0, 300.0))
    )
    assert "2 screws are not in a stud" in two
    assert "the studs at 1980 mm · 77 15/16 in, 2080 mm · 81 7/8 in from" in two
    assert "1 screw is not in a stud" in beside and "crosses the stud at 1910 mm" in beside
    assert "2 screws are not in a stud. Between its screws the rail crosses no stud: put" in none


def test_a_short_nail_is_told_what_is_least_or_what_pulls_at_it():
    assert "6 of its diameters" in texts(nailed(20.0), "nail-short")[0]
    # 12 kg and 95 mm deep, as in the case of the rule: 13.31 N, where 13.18 N are allowed
    (found,) = named("nail-short", nailed(23.7, 12.0, 95.0))
    # over 9.80665 N/kg, and 0.45359237 kg: 1.36 kg, 2.99 lb, and 1.34 kg, 2.96 lb
    assert "pulls at it with 13.3 N (1.4 kg · 3.0 lb)" in found.text
    assert "allows a permanent pull of 13.2 N (1.3 kg · 3.0 lb) in the lightest usual stud wood" in found.text
    assert "11.2-3" in found.source and "screw" not in found.source
    (found,) = named("nail-short", pulled(324.0, kind="screw"))
    assert "of the screw is in the stud" in found.text and "12.2.2, wood screws" in found.source
