"""The expected error: every source by itself, and what helps most."""

import math

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.record import replace
from templates_gen.job.accuracy import NORMAL_95, Accuracy
from templates_gen.tiling.rulers import rulers
from templates_gen.tolerance.advice import advice
from templates_gen.tolerance.expected import expected_error, sources_95
from tests.exactly import NOTHING, of, planned, printer, row
from tests.jobs import Hanger, frame, job, paper
from tests.made import NAMES, made

# Every source by itself


def test_without_any_error_none_is_expected():
    for name in NAMES:
        done = made(name)
        if len(done.job.frames) > 1:
            exact = replace(done.plan, job=replace(done.job, accuracy=NOTHING))
            found = expected_error(exact, done.sheets)
            assert found is not None
            assert [pair.error for pair in (found.worst, found.typical, found.ends)] == [0.0, 0.0, 0.0]
            assert advice(found).name == "none"


def long_row():
    """Seven frames, 3000 mm from the first nail to the last, on pages that all lie alike."""
    return row(count=7, pitch=500.0, paper=paper("a4", cover="all"))


def test_the_scale_of_half_a_per_cent_over_three_metres():
    # 0.5 % of 3000 mm is 15 mm; 95 % of cases within 1.96 times that: worked out by hand here
    ends = of(long_row(), scale=0.5).ends
    assert ends.gap_error == pytest.approx(15.0 * NORMAL_95)
    assert ends.step == 0.0  # all nails are equally high


def test_the_scale_of_a_measured_printer_is_what_reading_its_rules_leaves():
    asked = long_row()
    length = rulers(planned(asked).page, asked.paper.overlap, "mm")[0].length
    # √2 · 0.2 mm / ruler (propagation of two independent readings, worked out by hand here)
    assert of(asked, reading=0.2).measured_scales[0] == pytest.approx(math.sqrt(2) * 0.2 / length)


def test_moisture_grows_paper_across_its_grain_more():
    asked = long_row()
    upright = planned(asked).page.height > planned(asked).page.width
    along, across = (
        of(asked, humidity=20.0, **{name: 0.1}).ends.gap_error for name in ("moisture_along", "moisture_across")
    )
    # 0.1 % for 10 % of humidity is 0.2 % for 20 %, of 3000 mm 6 mm: worked out by hand here
    grown = 6.0 * NORMAL_95
    assert (along, across) == pytest.approx((0.0, grown) if upright else (grown, 0.0))


def test_drops_and_nails_of_two_frames_add_up_by_their_squares():
    worst = of(row(), drop=0.3, nailing=0.4).worst
    assert worst.step == pytest.approx(NORMAL_95 * math.sqrt(2) * 0.5)  # 0.3, 0.4, 0.5
    assert worst.gap_error == pytest.approx(NORMAL_95 * math.sqrt(2) * 0.4)  # a drop moves nothing sideways


def test_two_nails_of_a_frame_share_its_errors():
    pair = Hanger(kind="rings", left=40.0, right=40.0)
    frames = frame("A", hanger=pair), frame("B", hanger=pair)
    found = of(job(*frames), nailing=0.4)
    # the corners 200 mm aside of the middle between nails 320 mm apart: of each frame 0.4² · (½ + 2 · (200 / 320)²)
    assert found.worst.step == pytest.approx(NORMAL_95 * 0.4 * math.sqrt(1 + 4 * 0.625**2))  # worked out by hand here
    assert found.worst.untilted == pytest.approx(NORMAL_95 * 0.4 * math.sqrt(2))  # √(½ + ½), both ways


def test_pieces_of_paper_apart_are_placed_each_by_itself():
    asked = row(pitch=800.0, paper=paper("a4", cover="nails"))
    together = row(pitch=800.0)
    assert of(asked, placing=1.0).worst.step == pytest.approx(NORMAL_95 * math.sqrt(2))
    assert of(together, placing=1.0).worst.step == 0.0


def test_of_pieces_apart_the_scale_counts_on_each_sheet_only():
    """Their places are measured on the wall, from the two lines to the rulers of each, which stand by its corner."""
    asked = row(count=3, pitch=800.0, paper=paper("a4", cover="nails"))
    cells = [sheet.cell for sheet in planned(asked).sheets]
    first, *_, last = (
        next(nail.x - cell.x0 for cell in cells if cell.has_point(nail.x, nail.y)) for nail in plan_wall(asked).nails
    )
    found = of(asked, scale=1.0).ends.gap_error
    assert found == pytest.approx(NORMAL_95 * 0.01 * abs(last - first))
    assert found < NORMAL_95 * 0.01 * 210.0  # no sheet is wider


def test_a_string_keeps_a_row_from_bending():
    asked = made("low and wide").job
    bent, straight = (of(asked, match=0.4, string=string).ends.step for string in (False, True))
    assert 0 < straight < bent / 2


LARGER = {
    "scale": 1.0, "match": 1.0, "moisture_along": 0.2, "moisture_across": 0.2, "humidity": 30.0, "drop": 2.0,
    "nailing": 2.0, "placing": 3.0,
}  # fmt: skip


@pytest.mark.parametrize("name", LARGER)
@pytest.mark.parametrize("cover", ["marks", "nails"])
def test_more_of_any_error_never_makes_frames_hang_better(name, cover):
    asked = made("twelve, a4, marks").job
    asked = replace(asked, paper=replace(asked.paper, cover=cover))
    usual = Accuracy()
    less, more = (
        expected_error(plan_wall(changed), planned(asked))
        for changed in (replace(asked, accuracy=usual), replace(asked, accuracy=replace(usual, **{name: LARGER[name]})))
    )
    assert less is not None and more is not None
    for pair in ("worst", "typical", "ends"):
        # paper that grows more across its grain makes up, by a little, for pages that lie the other way
        assert getattr(more, pair).error >= getattr(less, pair).error * (0.999 if "moisture" in name else 1.0)
    # in one piece nothing is placed by itself; what hangs on a sheet of its own depends on no join, and nails in the
    # middles of their pages are moved alike by what befalls all pages alike
    alike = ("match", "scale", "moisture_along", "moisture_across", "humidity")
    assert (more.ends.error > less.ends.error) == (name not in {"marks": ("placing",), "nails": alike}[cover])


def test_a_finer_reading_of_the_rules_counts_only_once_the_printer_is_measured():
    asked = row()
    assert of(asked, printer(0.4)).worst.error > of(asked, printer(0.2)).worst.error > 0
    assert of(asked, reading=0.4).worst.error == 0


@pytest.mark.parametrize("name", [name for name in NAMES if name != "nail on target"])
def test_the_sources_add_up_by_their_squares(name):
    found = expected_error(made(name).plan, made(name).sheets)
    assert found is not None
    for pair in (found.worst, found.typical, found.ends):
        assert math.hypot(*dict(sources_95(pair)).values()) == pytest.approx(pair.error)
    assert found.typical.error <= found.worst.error


def test_what_an_eye_sees_at_a_gap():
    # gap · tan 0.6°: 50 mm 0.52 mm, 63.5 mm 0.66 mm (computed from Vision Research 30(10), 1990)
    assert of(row(pitch=390.0)).worst.seen == pytest.approx(0.52, abs=0.005)
    assert of(row(pitch=403.5)).worst.seen == pytest.approx(0.66, abs=0.005)


def test_a_single_frame_has_nothing_to_be_compared_with():
    assert expected_error(made("nail on target").plan, made("nail on target").sheets) is None


# What would help most


@pytest.mark.parametrize(
    ("step", "errors"),
    [
        ("drops", {"drop": 2.0, "nailing": 0.5, "scale": 0.1}),
        ("nailing", {"nailing": 2.0, "drop": 0.5, "scale": 0.1}),
        ("rest", {"moisture_along": 0.3, "moisture_across": 0.3, "humidity": 30.0, "nailing": 0.5}),
        ("calibrate", {"scale": 2.0, "reading": 0.1, "nailing": 0.5}),
        ("one-piece", {"match": 2.0, "nailing": 0.5, "scale": 0.5, "reading": 0.2}),
        # larger paper leaves half of it, which the nails' error nearly hides: a print shop would gain little more
        ("larger-paper", {"match": 1.0, "nailing": 0.5}),
    ],
)
def test_what_helps_most_is_what_errs_most(step, errors):
    found = of(row(), **errors)
    assert advice(found).name == step
    assert advice(found).error < found.worst.error


def test_a_measured_printer_is_not_to_be_measured_again():
    assert advice(of(row(), printer(2.0), scale=2.0)).name != "calibrate"


def test_a_step_that_the_worst_pair_does_not_make_stays_as_it_is():
    """The pair with the largest gap may have no step at all, where next to nothing but the scale errs."""
    found = of(row(), printer(2.0), scale=2.0, nailing=0.1)
    level = replace(found, worst=replace(found.worst, by_step=dict.fromkeys(found.worst.by_step, 0.0)))
    assert advice(level).step == found.step > 0.0


def test_what_hangs_in_pieces_had_better_be_one():
    assert advice(of(row(pitch=800.0, paper=paper("a4", cover="nails")), placing=1.0, drop=0.1)).name == "one-piece"


def test_no_larger_paper_than_a_print_shops_is_advised():
    asked = made("two panels").job
    assert planned(asked).joins
    assert advice(of(asked, match=2.0)).name == "none"


def test_what_is_in_one_piece_is_not_to_be_joined_better():
    asked = row(count=2, pitch=360.0, paper=paper("a0"))
    assert not planned(asked).joins
    assert advice(of(asked, scale=0.3, nailing=0.01)).name == "calibrate"
