"""Slips do not reach paper, and sound jobs are left in peace: both shares, measured.

The limits are ours: of slips at least 85 in 100 are noticed, of sound jobs at most 3 in 100 are doubted.
"""

import ast
from pathlib import Path

import pytest

from templates_gen import checks as findings
from templates_gen.arranging.plan import plan_wall
from templates_gen.base.record import replace
from templates_gen.checks import find
from templates_gen.job.reading.building import build_job, read_job
from tests.jobs import SAMPLES
from tests.made import SAMPLE_NAMES
from tests.odd_jobs import odd_jobs
from tests.slips import get, noticed, sound, tables
from tests.slips_by_hand import SLIPS
from tests.slips_of_fields import field_slips
from tests.sound_jobs import random_jobs

NOTICED, DOUBTED = 0.85, 0.03
FIELD_SLIPS = list(field_slips())
RANDOM = random_jobs(170)
ODD = odd_jobs()


def doubts(raw):
    """What is doubted about a job of these tables."""
    return [each for each in find(plan_wall(build_job(raw, SAMPLES / "job.toml"))) if each.confirm]


def missed(slips):
    return [f"{slip.base}: {slip.words}" for slip in slips if not noticed(slip)]


def test_slips_made_from_the_fields_are_noticed():
    assert len(FIELD_SLIPS) >= 150
    through = missed(FIELD_SLIPS)
    assert len(through) <= (1 - NOTICED) * len(FIELD_SLIPS), through


def test_slips_that_were_written_after_the_doubts_are_noticed():
    assert len(SLIPS) >= 100
    through = missed(SLIPS)
    assert len(through) <= (1 - NOTICED) * len(SLIPS), through


@pytest.mark.parametrize("name", SAMPLE_NAMES)
def test_nothing_is_doubted_about_a_sample(name):
    assert [each.text for each in find(plan_wall(read_job(SAMPLES / f"{name}.toml"))) if each.confirm] == []


def test_sound_jobs_are_not_doubted():
    jobs = [*RANDOM, *ODD.values()]
    assert len(jobs) + len(SAMPLE_NAMES) >= 200
    doubted = [[each.text for each in found] for raw in jobs if (found := doubts(raw))]
    assert len(doubted) <= DOUBTED * (len(jobs) + len(SAMPLE_NAMES)), doubted


def test_the_jobs_that_slips_are_put_into_are_not_doubted():
    bases = {slip.base for slip in (*FIELD_SLIPS, *SLIPS)}
    assert {rule for base in bases for rule, _ in sound(base) if rule.startswith("doubtful")} == set()


def rules_in_code():
    """The rules of all doubts, as the code names them."""
    files = sorted((Path(findings.__file__).parent / "doubts").glob("*.py"))
    assert len(files) > 5
    names = [node.value for path in files for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
             if isinstance(node, ast.Constant) and isinstance(node.value, str)]  # fmt: skip
    return {name for name in names if name.startswith("doubtful-") and " " not in name}


def test_every_doubt_is_raised_by_a_slip():
    raised = {rule for slip in (*FIELD_SLIPS, *SLIPS) for rule, _ in noticed(slip)}
    assert rules_in_code() - raised - {"doubtful-paper"} == set()


def in_cm(width, **job):
    """The doubts about a frame of 16 × 20 in that was measured in cm."""
    raw = tables("settee")
    raw["frame"][1] |= {"width": width, "height": 50.8}
    raw["job"] |= job
    return [each for each in doubts(raw) if "B" in each.about and each.rule == "doubtful-size"]


def test_a_doubt_says_where_what_why_and_what_was_probably_meant():
    (found,) = in_cm(40.6)  # 16 in are 40.6 cm
    assert found.text.startswith("Frame B, width: 40 5/8 in, ")
    assert found.text.endswith("Is it in cm? 40.6 cm is 16 in.")
    assert found.level == "warn" and found.confirm == ("frame B, width: 40 5/8 in",)


def test_a_value_is_confirmed_in_the_words_of_the_doubt_until_it_changes():
    confirmed = ["Frame B, width:  40 5/8 in"]  # letters and blanks do not matter
    assert in_cm(40.6, confirmed=confirmed) == []
    assert len(in_cm(40.9, confirmed=confirmed)) == 1


def test_a_unit_that_was_written_leaves_more_room():
    raw = tables("alphabet-column")
    raw["wall"]["width"] = 1200  # cm: more than 8 m, and 1.2 m if it is in mm
    (found,) = doubts(raw)
    assert found.text.endswith("Is it in mm? 1200 mm is 120.0 cm.")
    raw["wall"]["width"] = "12 m"
    assert doubts(raw) == []


def test_frames_of_which_the_same_is_doubted_share_one_warn():
    raw = tables("bakery")
    raw["frame_type"]["loaf"]["depth"] = 25  # cm
    (found,) = doubts(raw)
    assert found.text.startswith("Frames 1, 2, 3, 4, 5, 6, depth: 25.0 cm, more than is usual")
    assert found.confirm[1] == "frame 2, depth: 25.0 cm"
    assert get(raw, "frame.1.depth") is None
    job = build_job(raw, SAMPLES / "job.toml")
    assert not [each for each in find(plan_wall(replace(job, confirmed=found.confirm))) if each.confirm]
