"""What is found about one frame is what is found about it among all."""

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import TemplatesError
from templates_gen.checks import NOTE, find, find_about
from templates_gen.documents.correcting import changing, correct
from templates_gen.job.reading.building import build_job
from tests.jobs import SAMPLES, many
from tests.slips import tables
from tests.slips_by_hand import SLIPS


def rules(found, name):
    return {(each.level, each.rule) for each in found if name in each.about}


@pytest.mark.parametrize("base", ["mill", "bakery", "stair", "settee"])
def test_what_is_found_about_one_frame_is_what_is_found_among_all(base):
    """For sound jobs and for those with slips in them; what hides behind another doubt may come out."""
    jobs = [tables(base)]
    for slip in [slip for slip in SLIPS if slip.base == base][:12]:
        jobs.append(tables(base))
        slip.put(jobs[-1])
    compared = 0
    for raw in jobs:
        try:
            plan = plan_wall(build_job(raw, SAMPLES / "job.toml"))
        except TemplatesError:  # a slip that is refused
            continue
        everything = find(plan)
        for frame in plan.job.frames:
            own = rules(find_about(plan, frame.id), frame.id)
            assert rules(everything, frame.id) <= own
            compared += len(own)
            hidden = own - rules(everything, frame.id)
            assert all(rule.startswith("doubtful") and level != NOTE for level, rule in hidden)
    assert compared


def test_all_frames_are_compared_with_each_other_once_however_many_move(tmp_path, monkeypatch):
    """For 150 frames that took 15 s: each was compared with each, anew for every frame that moves."""
    calls = []
    monkeypatch.setattr(changing, "find", lambda plan: calls.append(1) or find(plan))
    plan = plan_wall(many(25))
    rows = [f"{hung.frame.id},{hung.rect.y1 - 9},{hung.rect.y1 - 9}" for hung in plan.frames]
    file = tmp_path / "readings.csv"
    file.write_text("frame,left,right\n" + "\n".join(rows) + "\n", encoding="utf-8")
    assert len(correct(plan, file)) == 25
    assert len(calls) == 1
