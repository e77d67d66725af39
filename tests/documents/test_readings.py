"""What is read after hanging: units, the two ways to measure, blanks, slips, and what the form asks for."""

import csv
import io
import math

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import InputError
from templates_gen.documents.correcting.form import FORM, form_csv
from templates_gen.documents.correcting.moves import limits_of
from templates_gen.documents.correcting.pointed import read_pointed
from templates_gen.documents.correcting.poses import poses
from templates_gen.documents.correcting.readings import read_readings
from templates_gen.job.model import Wall
from tests.jobs import frame, group, job

# frames of 400 x 500 mm 60 mm apart about x = 2000, y = 1450 (the least job of tests/jobs): the top edges are at 1700,
# A from 1540 to 1940, B from 2000... worked out by hand here
THREE = plan_wall(job(frame("A"), frame("B"), frame("C"), group=group((("A", "B", "C"),))))


@pytest.fixture
def read(tmp_path):
    def read_text(text, plan=THREE):
        path = tmp_path / "hung.csv"
        path.write_text(text, encoding="utf-8")
        return poses(read_readings(path, plan), plan)

    return read_text


def refused(read, text, plan=THREE):
    with pytest.raises(InputError) as error:
        read(text, plan)
    return error.value


def test_the_plan_is_what_is_worked_out_here():
    tops = [(hung.rect.x0, hung.rect.y1) for hung in THREE.frames]
    assert tops == [(1340.0, 1700.0), (1800.0, 1700.0), (2260.0, 1700.0)]
    assert (THREE.centre_line, THREE.level_line) == (2000.0, 1450.0)


def test_two_corners_give_height_and_turn(read):
    (pose,) = read("frame,left,right\nB,1697,1701\n")
    assert (pose.up, pose.right) == (pytest.approx(-1.0), None)
    assert math.sin(pose.turn) == pytest.approx(4 / 400)


def test_distances_from_the_level_line_say_the_same_with_a_sign_or_a_word(read):
    frames = frame("A", height=100.0), frame("B", height=700.0)
    low = plan_wall(job(*frames, group=group((("B", "A"),), arrangement="column")))
    # 700 + 60 + 100 high about the line: A's top is 330 below it; read 2 mm higher
    found = [
        read(f"frame,left_from_level,right_from_level\nA,{way},{way}\n", low)[0].up for way in ("-328", "328 below")
    ]
    assert found == pytest.approx([2.0, 2.0])
    # B's top is as far above the line as A's is below its bottom, 430: read 1 mm higher, with the sign of "above"
    assert read("frame,left_from_level,right_from_level\nB,+431,+431\n", low)[0].up == pytest.approx(1.0)


def test_a_level_gives_the_turn_with_one_corner_or_with_none(read):
    one, alone = read("frame,left,tilt\nA,1700,10\nB,,-5\n")
    # 10 mm in a metre over the 200 mm from corner to middle is 2: worked out by hand here
    assert (one.up, 1000 * math.sin(one.turn)) == (pytest.approx(2.0), pytest.approx(10.0))
    assert (alone.up, 1000 * math.sin(alone.turn)) == (None, pytest.approx(-5.0))


def test_a_level_is_at_odds_with_two_heights_only_when_it_says_another_turn(read):
    # 8 mm over 400 mm are 20 mm in a metre: worked out by hand here; the level goes before the tape
    (pose,) = read("frame,left,right,tilt\nA,1696,1704,25\n")
    assert (pose.up, 1000 * math.sin(pose.turn)) == (pytest.approx(0.0), pytest.approx(25.0))
    assert "the two heights make it 20" in refused(read, "frame,left,right,tilt\nA,1696,1704,-20\n").problem


def test_the_left_edge_counts_from_the_centre_line_and_the_gap_from_the_neighbour_as_it_hangs(read):
    a, b, c = read(
        "frame,left,right,left_edge,gap,beside\nA,1700,1700,657 left,,\nB,1700,1700,,62,A\nC,1700,1700,,60,B\n"
    )
    # A's left edge should be 660 left of the centre line; B is 2 mm too far from it; C as it should be from B
    assert (a.right, b.right, c.right) == pytest.approx((3.0, 5.0, 5.0))


def test_a_gap_to_the_right_counts_the_other_way(read):
    (pose,) = read("frame,left,right,gap,beside\nA,1700,1700,57,B\n")
    assert pose.right == pytest.approx(3.0)


def test_any_unit_and_any_delimiter(read):
    (pose,) = read("\ufeffframe;left;right\nB;66 15/16 in;170,1 cm\n")
    assert pose.up == pytest.approx((66.9375 * 25.4 + 1701.0) / 2 - 1700.0)


def test_the_column_of_the_frames_may_be_called_as_in_every_other_spreadsheet(read):
    assert read("frame,left,right\nA,1700,1700\n") == read("id,left,right\nA,1700,1700\n")


@pytest.mark.parametrize(
    ("text", "words"),
    [("left,right\n1700,1700\n", "has no column 'frame'"), ("\n", "no header line, expected one such as frame,left")],
)
def test_a_column_or_header_that_is_missing_is_named(read, text, words):
    assert words in str(refused(read, text))


def test_frames_come_in_the_order_of_the_plan_and_blank_rows_are_left_out(read):
    assert [pose.hung.frame.id for pose in read("frame,left,right\nC,1700,1700\nA,,\nB,1700,1700\n")] == ["B", "C"]


SLIPS = [  # the row of frame B: what the message names, and what it asks
    ("B,,1700", "right of B only", "left", "both top corners"),
    ("B,1200,1200", "bottom edge", "left", "is this its bottom edge?"),
    ("B,900,900", "from the ceiling", "left", "is this the distance from the ceiling?"),
    ("B,250,250", "from the line", "left", "is this the distance from the level line?"),
    ("B,66.9,66.9", "inches", "left", "is this in in?"),
    ("B,3,1700", "how far off", "left", "is this how far off it hangs?"),
    ("B,+3,1700", "how far off, with a sign", "left", "how high the corner is above the floor; the plan has 1700 mm"),
    ("B,1700,-1/8 in", "how far off, below", "right", "goes into right_from_level"),
    ("B,3 low,1700", "how far off, in words", "left", "found '3 low'"),
    ("B,170,170", "centimetres", "left", "is this in cm?"),
    ("B,1700,1590", "another frame", "right", "was it read from another edge"),
    ("Bee,1700,1700", "unknown", "frame", "which is not a frame"),
    (",1700,1700", "no id", "frame", "is blank"),
    ("B,x,1700", "no length", "left", "expected a length"),
]


@pytest.mark.parametrize(("row", "kind", "column", "words"), SLIPS, ids=[slip[1] for slip in SLIPS])
def test_a_slip_is_named_by_row_and_column_with_what_it_may_be(read, row, kind, column, words):
    error = refused(read, f"frame,left,right\n{row}\n")
    assert error.where.startswith("hung.csv, line 2") and error.where.endswith(f", {column}")
    assert words in f"{error.problem} {error.hint}"


def test_an_unknown_frame_is_told_the_nearest_one(read):
    plan = plan_wall(job(frame("fern"), frame("moss")))
    assert refused(read, "frame,left,right\nfren,1700,1700\n", plan).hint == "did you mean 'fern'?"


OTHERS = [
    ("frame,left,right\nA,1700,1700\nA,1700,1700", "line 3 (A), frame", "earlier row"),
    ("frame,left,right,left_from_level\nA,1700,1700,250", "left_from_level", "one of the two"),
    ("frame,left,right,left_edge\nA,1700,1700,660", "left_edge", "left of the line? then write  left  behind it"),
    ("frame,left,right,left_edge\nA,1700,1700,1340", "left_edge", "the wall's left end"),
    ("frame,left,right,gap\nA,1700,1700,60", "beside", "is blank"),
    ("frame,left,right,gap,beside\nA,1700,1700,60,A", "line 2 (A), beside", "the frame itself"),
    ("frame,left,right,gap,beside\nA,1700,1700,60,Z", "line 2 (A), beside", "not a frame of this job"),
    ("frame,left,right,gap,beside\nA,1700,1700,60,B\nB,1700,1700,60,A", "gap", "in a ring"),
    ("frame,left,right,tilt\nA,1700,1700,30", "tilt", "the two heights make it 0"),
    ("frame,tilt\nA,steep", "tilt", "at most 100"),
    ("frame,tilt\nA,400", "tilt", "at most 100"),
    ("frame,lft\nA,1700", "line 2 (A)", "did you mean 'left'?"),
    ("frame,left,right\n,,", "hung.csv", "holds no reading"),
    ("", "hung.csv", "no header"),
]


@pytest.mark.parametrize(
    ("text", "where", "words"), OTHERS, ids=[other[2] + str(at) for at, other in enumerate(OTHERS)]
)
def test_what_contradicts_itself_is_refused(read, text, where, words):
    error = refused(read, text)
    assert where in error.where and not error.where.endswith("beside, frame")
    assert words in f"{error.problem} {error.hint}"


def test_the_form_comes_back_as_it_was_printed_and_says_what_to_measure(read):
    odd = plan_wall(job(frame("=1+1", title="@A1"), frame("-b"), group=group((("=1+1", "-b"),)), unit="in",
                        wall=Wall(name="", width=4000.0, height=2600.0)))  # fmt: skip
    header, *rows = csv.reader(io.StringIO(form_csv(odd)))
    assert tuple(header) == FORM
    assert [row[0] for row in rows] == ["'=1+1", "'-b"]  # no spreadsheet takes them for formulas
    # the top edges are at 1700 mm, 66 15/16 in, 250 mm above the level line; left edges 430 mm left, 30 mm right
    assert [row[2:5] for row in rows] == [["66 15/16 in", "9 13/16 in above", "16 15/16 in left"],
                                          ["66 15/16 in", "9 13/16 in above", "1 3/16 in right"]]  # fmt: skip
    at = header.index("left")
    for row in rows:
        row[at : at + 2] = [row[2], row[2]]
        row[header.index("left_edge")] = row[4]
    text = "\n".join(",".join(row) for row in (header, *rows))
    found = read(text, odd)
    assert [pose.hung.frame.id for pose in found] == ["=1+1", "-b"]
    assert max(abs(pose.up) for pose in found) < 25.4 / 32 and max(abs(pose.right) for pose in found) < 25.4 / 32


def test_what_is_seen_is_the_angle_and_the_step_over_the_gap_or_what_a_tape_shows():
    # gaps of 60 mm: 60 tan 0.6° = 0.63 mm, less than a tape shows; of 200 mm: 2.09 mm: worked out by hand here
    assert limits_of(THREE)["A"].step == 1.0
    wide = plan_wall(job(frame("A"), frame("B"), group=group((("A", "B"),), gap=200.0)))
    assert limits_of(wide)["A"].step == pytest.approx(2.09, abs=0.005)
    assert math.degrees(limits_of(wide)["A"].turn) == pytest.approx(0.6)


@pytest.mark.parametrize(
    ("row", "words"),
    [
        (",1 1,2 1,2 2,1 2", "line 2, frame: is blank"),
        ("A,1 1,,2 2,1 2", "line 2, top_right: is blank, expected a corner"),
        ("Z,1 1,2 1,2 2,1 2", "line 2, frame: found 'Z', which is not a frame of this job"),
    ],
)
def test_a_blank_cell_of_a_file_of_corners_is_said_to_be_blank(row, words, tmp_path):
    path = tmp_path / "corners.csv"
    path.write_text(f"frame,top_left,top_right,bottom_right,bottom_left\n{row}\n", encoding="utf-8")
    with pytest.raises(InputError, match=words):
        read_pointed(path, THREE)
