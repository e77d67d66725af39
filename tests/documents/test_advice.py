"""Every advice, made in the job as data, passes `check`; and what it says of the wall is what the job then plans.

The job so changed is planned anew: where its hooks' seats then are, less where they were, is what the advice moves them
by, less what the frame was found off by.  So the frame comes to the place that the plan has for it.
"""

import json
import random

import pytest

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.record import replace
from templates_gen.checks import NOTE, find, stops
from templates_gen.documents.correcting import Cured, correct
from templates_gen.job.model import Fixing, Hanger, Studs, Wall
from tests.jobs import SAMPLES, frame, group, job
from tests.running import run

STEPS = {"mm": 1.0, "cm": 1.0, "in": 25.4 / 16}
"""mm; what a tape shows: common practice, no source."""

KINDS = (
    "wire", "wire, rings known", "two hooks", "two hooks, drop alone", "rings", "keyholes", "sawtooth", "cleat",
    "plates",
)  # fmt: skip
WALL = Wall(name="", width=4000.0, height=2600.0, build="drywall", board=12.5, wiring="us",
            studs=Studs(first=300.0, spacing=406.4, width=38.1))  # fmt: skip


def hanger_of(kind: str, width: float, height: float, chance: random.Random) -> Hanger:
    rings = {"ring_separation": width * 0.75, "ring_depth": height * 0.3}
    pair = {"left": width * 0.15, "right": width * 0.2}
    return {
        "wire": Hanger(kind="wire"),
        "wire, rings known": Hanger(kind="wire", **rings),
        "two hooks": Hanger(kind="wire", apart=width * 0.25, **rings),
        "two hooks, drop alone": Hanger(kind="wire", apart=width * 0.25, drop_at_two=height * 0.2),
        "rings": Hanger(kind="rings", **pair, drop_left=chance.uniform(20, 90), drop_right=chance.uniform(20, 90)),
        "keyholes": Hanger(kind="keyholes", **pair),
        "sawtooth": Hanger(kind="sawtooth"),
        "cleat": Hanger(kind="cleat", **pair, screw_below=20.0),
        "plates": Hanger(kind="plates", **pair, drop_left=height + 12.0, drop_right=height + 13.0),
    }[kind]


def case(kind: str, unit: str, seed: int) -> Plan:
    """A frame beside another, of random size, drop and fixing."""
    chance = random.Random(f"{kind} {unit} {seed}")
    width, height = chance.uniform(220, 800), chance.uniform(250, 800)
    fixing = chance.choice([
        Fixing(), Fixing(kind="hook", below=19.0, rating=9.1), Fixing(kind="hook", below=31.0, nails=2),
        Fixing(kind="screw", diameter=4.0, length=40.0),
    ])  # fmt: skip
    drop = {"sawtooth": 9.0, "two hooks, drop alone": None}.get(kind, height * chance.uniform(0.1, 0.27))
    own = frame("A", width, height, drop, hanger=hanger_of(kind, width, height, chance), fixing=fixing,
                weight=chance.choice([None, 2.0, 6.0]))  # fmt: skip
    return plan_wall(job(own, frame("B"), group=group((("A", "B"),)), unit=unit, wall=WALL))


def off(plan: Plan, seed: int, folder) -> tuple[Cured, complex]:
    """What is advised for its first frame, found level and off by so much (right + i up)."""
    chance = random.Random(seed)
    rect, step = plan.frames[0].rect, STEPS[plan.job.unit]
    wrong = [round(chance.choice([0, 1]) * chance.uniform(-28, 28) / step) * step for _ in range(2)]
    up, right = wrong[0] or 3 * step, wrong[1]
    path = folder / "readings.csv"
    path.write_text(
        f"frame,left,right,left_edge\nA,{rect.y1 + up} mm,{rect.y1 + up} mm,{rect.x0 + right - plan.centre_line} mm\n"
    )
    return correct(plan, path)[0], complex(right, up)


def changed(plan: Plan, done: Cured) -> Plan:
    """The plan of the job in which the frame is as the advice makes it."""
    frames = tuple(done.frame if own.id == "A" else own for own in plan.job.frames)
    return plan_wall(replace(plan.job, frames=frames))


@pytest.mark.parametrize("unit", STEPS)
@pytest.mark.parametrize("kind", KINDS)
def test_every_advice_made_in_the_job_passes_check_and_brings_the_frame_to_its_place(kind, unit, tmp_path):
    ways = set()
    for seed in range(40):
        plan = case(kind, unit, seed)
        before = find(plan)
        if stops(before):
            continue  # this job is not hung before it is put right
        done, wrong = off(plan, seed, tmp_path)
        after = changed(plan, done)
        found = find(after)
        assert not stops(found), (seed, done, found)
        worse = {f.rule for f in found if f.level != NOTE} - {f.rule for f in before if f.level != NOTE}
        assert not worse, (seed, done, found)
        ways |= {cure.way for cure in done.cures} | ({"wire"} if done.wire else set())
        if done.left_alone:
            continue
        moved = {move.old: complex(move.right, move.up) for move in done.correction.moves}
        old = {nail.name: complex(nail.x, nail.bears_y) for nail in plan.frames[0].nails}
        new = {nail.name: complex(nail.x, nail.bears_y) for nail in after.frames[0].nails}
        if done.apart is not None:
            continue  # tests/documents/test_holes.py
        for name, seat in old.items():
            slid = complex(done.correction.aside, 0.0)  # along a rail, by hand
            rest = new[name] - seat - moved.get(name, 0j) - wrong - slid
            whole = done.correction.moves and (kind != "cleat" or done.correction.by_hand)
            seen = 0.0 if whole else max(STEPS[unit], 60.0 * 0.01048)  # gap times tan 0.6°
            assert abs(rest.real) <= seen + 1e-6 and abs(rest.imag) <= 1e-6, (seed, done)
    assert ways >= {"wire": {"wire"}, "wire, rings known": {"wire"}, "two hooks": {"wire"}, "cleat": {"rail"},
                    "two hooks, drop alone": {"wire"}, "rings": {"hook", "fill"}, "keyholes": {"fill"},
                    "sawtooth": {"fill"}, "plates": {"fill"}}[kind]  # fmt: skip
    assert "hook" not in ways or kind == "rings"


def test_the_advice_for_the_ferns_written_into_their_file_passes_check(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    text = (SAMPLES / "fern-prints.toml").read_text(encoding="utf-8")
    hung = (SAMPLES / "fern-prints-hung.csv").read_text(encoding="utf-8")
    (tmp_path / "job.toml").write_text(text, encoding="utf-8")
    (tmp_path / "hung.csv").write_text(hung, encoding="utf-8")
    data = json.loads(run("correct", "job.toml", "hung.csv", "--format", "json").out)
    a, b, *_ = data["frames"]
    # A's drop of 3 1/8 in is 79.375 mm
    text = text.replace('drop = "3 1/8"', f'drop = "{79.375 + a["drop_longer"]:.1f} mm"')
    seat = b["moves"][0]["hook_below"]
    text = text.replace('below = "7/8", rating = "10 lb"', f'below = "{seat} mm", rating = "30 lb"')
    (tmp_path / "changed.toml").write_text(text, encoding="utf-8")
    said = [json.loads(run("check", name, "--format", "json").out)["findings"] for name in ("job.toml", "changed.toml")]
    before, after = ({(found["level"], found["rule"]) for found in each if found["level"] != "note"} for each in said)
    assert after <= before and run("check", "changed.toml").code == 0
    assert f'below = "{seat} mm"' in text and 'drop = "3 1/8"' not in text
