"""The expected error: who is whose neighbour, what a job may say about it, and where it is said."""

import json

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.record import replace
from templates_gen.documents.check import MOST_FRAMES, check_plan
from templates_gen.job.accuracy import Accuracy
from templates_gen.job.model import Job
from templates_gen.job.reading.building import read_job
from templates_gen.tolerance import sources
from templates_gen.tolerance import statement as errorwords
from templates_gen.tolerance.expected import MOST_PAIRS, expected_error
from templates_gen.tolerance.holding import plan_sheets
from templates_gen.tolerance.neighbours import neighbours
from tests.jobs import Height, Spot, frame, group, job
from tests.made import made
from tests.running import MINIMAL, run

# Neighbours


def names(asked: Job) -> set[tuple[str, str, bool, float]]:
    return {(n.one.frame.id, n.two.frame.id, n.beside, round(n.gap, 6)) for n in neighbours(plan_wall(asked))}


def test_neighbours_face_each_other_across_the_gap():
    four = [frame(name, 200.0, 200.0) for name in "ABCD"]
    assert names(job(*four, group=group((("A", "B"), ("C", "D")), gap=50.0))) == {
        ("A", "B", True, 50.0), ("C", "D", True, 50.0), ("A", "C", False, 50.0), ("B", "D", False, 50.0),
    }  # fmt: skip


def test_a_frame_far_from_all_has_the_nearest_for_its_neighbour():
    spots = tuple((name, Spot(point="centre", x=x, y=0.0)) for name, x in (("A", -1200.0), ("B", -200.0), ("C", 100.0)))
    asked = group((("A", "B", "C"),), "placed", spots=spots, height=Height(by="centre", at=1450.0))
    three = [frame(name, 200.0, 200.0) for name in "ABC"]
    # middles 1000 and 300 apart, 200 wide: worked out by hand here
    assert names(job(*three, group=asked)) == {("A", "B", True, 800.0), ("B", "C", True, 100.0)}


def test_no_more_pairs_are_worked_out_than_keep_it_quick(monkeypatch):
    calls = []
    wall = replace(job().wall, width=9000.0)
    rows = tuple(tuple(f"{up}-{at}" for at in range(20)) for up in range(4))
    asked = job(*(frame(name, 90.0, 90.0) for line in rows for name in line), group=group(rows), wall=wall)
    plan = plan_wall(asked)
    sheets = plan_sheets(plan, asked.paper, quick=True)
    monkeypatch.setattr(sources, "effects", lambda tape, terms: calls.append(1) or ())
    found = expected_error(plan, sheets)
    assert found.pairs == 4 * 19 + 3 * 20 > MOST_PAIRS
    assert len(calls) == 2 * (MOST_PAIRS + 1)  # to the side and upward, and the two ends


# Where it is said


def test_a_job_says_how_exactly_its_people_work(tmp_path):
    text = 'scale = 1\nmatch = "1/4 in"\nmoisture_along = 0.1\nhumidity = 5.5\nnailing = 2\nstring = false\n'
    (tmp_path / "job.toml").write_text(f"{MINIMAL}[accuracy]\n{text}")
    assert read_job(tmp_path / "job.toml").accuracy == Accuracy(
        scale=1.0, match=6.35, moisture_along=0.1, humidity=5.5, nailing=2.0, string=False
    )


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("scale = 6", "job.toml, accuracy, scale: found 6 per cent, expected 0 to 5 per cent"),
        ("scale = -1", "job.toml, accuracy, scale: found -1 per cent, expected 0 to 5 per cent"),
        ("humidity = nan", "job.toml, accuracy, humidity: found nan per cent, expected 0 to 50 per cent"),
        ('match = "4 in"', "job.toml, accuracy, match: found 101.6 mm (4 in), expected 0 to 50 mm"),
        ("joins = 1", "job.toml, accuracy: unknown field 'joins'"),
        ("string = 1", "job.toml, accuracy, string: found 1, expected true or false"),
    ],
)
def test_what_cannot_be_how_exactly_anyone_works(line, message, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "job.toml").write_text(f"{MINIMAL}[accuracy]\n{line}\n")
    ran = run("check", "job.toml")
    assert (ran.code, ran.out) == (2, "")
    assert message in ran.err


TWO = MINIMAL + '[[frame]]\nid = "B"\nwidth = 300\nheight = 200\ndrop = 60\n'


def test_check_says_what_to_expect_in_two_sentences_and_to_a_machine(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "job.toml").write_text(TWO)
    lines = run("check", "job.toml").out.splitlines()
    for start in ("expected, 19 times in 20: all neighbours within ", "what would help most: "):
        assert sum(line.startswith(start) for line in lines) == 1
    assert max(map(len, lines)) <= 80
    data = json.loads(run("check", "job.toml", "--format", "json").out)["expected_error"]
    assert data["worst"]["frames"] == ["A", "B"] and data["probability"] == 0.95
    run("template", "job.toml", "--report", "report.json")
    assert json.loads((tmp_path / "report.json").read_text(encoding="utf-8"))["expected_error"] == data


def test_paper_too_small_for_a_plan_is_a_finding_of_check(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "job.toml").write_text(f"{TWO}[paper]\nsize = [80, 80]\n")
    ran = run("check", "job.toml", "--format", "json")
    data = json.loads(ran.out)
    assert (ran.code, ran.err, data["expected_error"]) == (0, "", None)
    (finding,) = [found for found in data["findings"] if found["rule"] == "no-sheet-plan"]
    assert finding["level"] == "warn" and "larger paper" in finding["text"]
    order = [("stop", "warn", "note").index(found["level"]) for found in data["findings"]]
    assert order == sorted(order)
    assert run("template", "job.toml").code == 2


def test_every_way_out_of_paper_that_cannot_be_planned_is_told_apart(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "job.toml").write_text(f'{TWO}[paper]\nsize = "roll 24 in"\ncover = "linked"\n')
    told = " ".join(run("check", "job.toml").out.split())
    assert 'cover = "marks" under [paper]; for linked paper, print on sheets' in told


def test_check_does_not_plan_the_sheets_of_very_many_frames(monkeypatch):
    monkeypatch.setattr("templates_gen.documents.check.plan_sheets", lambda *_: pytest.fail("sheets were planned"))
    frames = [frame(str(at), 100.0, 100.0) for at in range(MOST_FRAMES + 1)]
    assert check_plan(plan_wall(job(*frames))).expected is None


def test_check_says_that_it_leaves_the_error_of_very_many_frames_out(monkeypatch, tmp_path):
    path = tmp_path / "job.toml"
    path.write_text(MINIMAL + MINIMAL[MINIMAL.index("[[frame]]") :].replace('"A"', '"B"'))
    assert "\nexpected, 19 times in 20: " in run("check", path).out
    monkeypatch.setattr("templates_gen.documents.check.MOST_FRAMES", 1)
    assert "\nexpected error: left out for more than 200 frames; " in run("check", path).out


def test_the_first_pages_say_it_and_what_an_eye_sees():
    every = made("fern-prints")
    found = expected_error(every.plan, every.sheets)
    assert found is not None
    texts = " ".join(
        item.text for page in every.template.pages[:3] for item in page.page_items if hasattr(item, "text")
    )
    for words in errorwords.first_page_words(found, "in"):
        assert words in texts
    assert "Stretch a string along the level line" in texts
    assert errorwords.fine(2.54, "in") == "0.10 in · 2.5 mm"
    assert errorwords.fine(2.54, "cm") == "2.5 mm"
