"""What one command writes the next one reads: a day's files, for jobs made by chance in three units."""

from __future__ import annotations

import csv
import io
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen import correct
from templates_gen.arranging.plan import Plan, placed, plan_wall
from templates_gen.arranging.search import salon as searching
from templates_gen.base.record import replace
from templates_gen.base.toml import toml
from templates_gen.base.units import exact
from templates_gen.checks import find
from templates_gen.cli.interview.taken_back import from_template
from templates_gen.documents.correcting.form import form_csv
from templates_gen.documents.correcting.readings import read_readings
from templates_gen.documents.measuring.fields import to_fill_in
from templates_gen.documents.options.choices import options
from templates_gen.documents.options.keeping import kept
from templates_gen.drawing.pdf.attached import Attached
from templates_gen.job.model import Job
from templates_gen.job.reading.building import read_job
from templates_gen.job.reading.other_wall import read_job_on
from tests.anyjobs import FREE, AnyJob
from tests.running import run

ORDERLY = tuple(kind for kind in FREE if kind != "salon")
SHOWN = 25.4 / 32 + 1e-6  # mm; half of the sixteenth of an inch that lengths are shown to

any_job = st.builds(AnyJob, st.integers(0, 10**6), st.sampled_from(["in", "cm", "mm"]), st.just(ORDERLY))


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """A new folder for every example."""
    return lambda: tmp_path_factory.mktemp("day")


def same(one: Plan, two: Plan, within: float = 1e-6) -> None:
    """Two plans have all frames, nails and lines at the same places, and the same is found about them.

    `within` is what `geometry.TOLERANCE` takes for the same length (mm).
    """
    assert (two.centre_line, two.level_line) == pytest.approx((one.centre_line, one.level_line), abs=within)
    assert [hung.frame.id for hung in two.frames] == [hung.frame.id for hung in one.frames]
    for a, b in zip(one.frames, two.frames, strict=True):
        assert (b.rect.x0, b.rect.y0, b.rect.x1, b.rect.y1) == pytest.approx(
            (a.rect.x0, a.rect.y0, a.rect.x1, a.rect.y1), abs=within
        )
    assert [nail.name for nail in two.nails] == [nail.name for nail in one.nails]
    for nail, other in zip(one.nails, two.nails, strict=True):
        assert (other.x, other.y) == pytest.approx((nail.x, nail.y), abs=within)
    found = [[(a.level, a.rule, a.about) for a in find(plan) if not a.confirm] for plan in (two, one)]
    assert found[0] == found[1]  # but for doubts, of which a unit written beside the number takes some away


@settings(max_examples=25, deadline=None)
@given(made=any_job, third=st.floats(-50, 50), seventh=st.floats(-50, 50))
def test_an_arrangement_that_is_kept_is_read_again_as_it_was(made, third, seventh, folder):
    path = made.written(folder())
    job = read_job(path)
    rects = {h.frame.id: h.rect.shifted(third * at, seventh * at) for at, h in enumerate(plan_wall(job).frames)}
    asked = placed(job, rects)
    again = path.with_name("kept.toml")
    again.write_text(kept(path.read_text(encoding="utf-8"), asked, "a comment"), encoding="utf-8")
    same(plan_wall(asked), plan_wall(read_job(again)))


@pytest.mark.parametrize("seed", [1, 2])
@pytest.mark.parametrize("unit", ["in", "cm", "mm"])
def test_every_option_is_picked_and_read_again(seed, unit, folder):
    """All of a job's options, through the command, which said of picks 2 to 5 that they could not be read."""
    path = AnyJob(seed, unit, ("rows", "salon")).written(folder())
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(searching, "_steps", lambda count: 60)
        for option in options(read_job(path), 3):
            ran = run(
                "options", path, "--count", "3", "--pick", str(option.number), "-o", path.with_name("p.toml"), "--force"
            )
            assert (ran.code, ran.err) == (0, "")
            same(option.plan, plan_wall(read_job(path.with_name("p.toml"))))


@settings(max_examples=25, deadline=None)
@given(made=any_job)
def test_a_spreadsheet_for_measuring_changes_nothing_until_something_is_measured(made, folder):
    path = made.written(folder())
    job = read_job(path)
    path.with_name("m.csv").write_text(to_fill_in(job), encoding="utf-8-sig")
    path.write_text(made.text.replace("[job]\n", '[job]\nmeasured = "m.csv"\n'), encoding="utf-8")
    again = read_job(path)
    same(plan_wall(job), plan_wall(again))
    for one, two in zip(job.frames, again.frames, strict=True):
        assert (two.id, two.title, two.type, two.fixing) == (one.id, one.title, one.type, one.fixing)
        assert (two.weight or 0.0) == pytest.approx(one.weight or 0.0, abs=1e-9)


@settings(max_examples=25, deadline=None)
@given(made=any_job, unit=st.sampled_from(["in", "cm", "mm"]))
def test_a_wall_in_a_file_of_its_own_and_in_any_unit_is_the_same_wall(made, unit, folder):
    path = made.written(folder())
    job = read_job(path)
    same(plan_wall(job), plan_wall(read_job_on(path, path)))
    path.with_name("wall.toml").write_text(wall_file(job, unit), encoding="utf-8")
    same(plan_wall(job), plan_wall(read_job_on(path, path.with_name("wall.toml"))))


def wall_file(job: Job, unit: str) -> str:
    """The wall of a job and where its group goes, with bare numbers, a text where that may be one."""

    def bare(mm: float) -> float:
        return float(exact(mm, unit).split()[0])

    wall, group = job.wall, job.group
    size = {"outline": [[bare(x), bare(y)] for x, y in wall.outline]}
    lines = [f"[job]\nunit = {toml(unit)}\n[wall]"]
    for name, value in (size if wall.outline else {"width": bare(wall.width), "height": bare(wall.height)}).items():
        lines.append(f"{name} = {toml(value)}")
    for one in wall.features:
        sides = {"left": one.rect.x0, "bottom": one.rect.y0, "width": one.rect.width, "height": one.rect.height}
        lines.append(f"[[wall.feature]]\nkind = {toml(one.kind)}\nname = {toml(one.name)}")
        lines += [f"{name} = {bare(mm)}" for name, mm in sides.items()]
    centre: object = group.centre_on if isinstance(group.centre_on, str) else str(bare(group.centre_on))
    at = bare(group.height.at)
    height = {"above": group.height.feature, "by": at} if group.height.by == "above" else {group.height.by: at}
    if group.anchor:
        centre = {"frame": group.anchor, "over": centre}
    if group.height.of:
        height["of"] = group.height.of
    return "\n".join([*lines, f"[group]\ncentre_on = {toml(centre)}\nheight = {toml(height)}\n"])


@pytest.mark.parametrize("centre", ["½ m", ".5 m", "  50", "50 cm", "1' 7 11/16\""])
def test_a_distance_is_in_the_unit_of_the_file_that_says_it_however_it_is_written(centre, folder):
    """All are 0.5 m, or 19 11/16 in = 500.1 mm; by hand.  Bare, 50 are of the wall's cm, not of the job's in."""
    path = AnyJob(1, "in", ("row",)).written(folder())
    other = path.with_name("wall.toml")
    other.write_text(
        f'[job]\nunit = "cm"\n[wall]\nwidth = 600\nheight = 300\n[group]\ncentre_on = {toml(centre)}\n'
        "height = { centre = 150 }\n"
    )
    assert plan_wall(read_job_on(path, other)).centre_line == pytest.approx(500.0, abs=0.07)


@settings(max_examples=10, deadline=None)
@given(made=any_job)
def test_a_paper_gives_back_a_job_that_makes_the_same_plan(made, folder):
    path = made.written(folder())
    paper = path.with_name("paper.pdf")
    assert run("measure", path, "-o", paper).code == 0
    back = folder()
    for target, content in from_template(Attached.of(paper), back / "again.toml").files.items():
        target.write_bytes(content)
    job, again = read_job(path), read_job(back / "again.toml")
    assert replace(again, sources=()) == replace(job, sources=())


@settings(max_examples=25, deadline=None)
@given(made=any_job, seed=st.integers(0, 10**6))
def test_what_the_form_says_should_be_measured_is_taken_as_a_reading_and_moves_nothing(made, seed, folder):
    path = made.written(folder())
    plan = plan_wall(read_job(path))
    if min(hung.rect.y0 for hung in plan.frames) < 0:
        return  # nobody measures below the floor
    header, *rows = csv.reader(io.StringIO(form_csv(plan)))
    filled = [as_told(dict(zip(header, row, strict=True)), random.Random(seed)) for row in rows]
    out = io.StringIO()
    writer = csv.DictWriter(out, header, delimiter=";")
    writer.writeheader()
    writer.writerows(filled)
    path.with_name("hung.csv").write_text(out.getvalue(), encoding="utf-8-sig")
    for reading in read_readings(path.with_name("hung.csv"), plan):
        rect = reading.hung.rect
        assert (reading.left, reading.right) == pytest.approx((rect.y1, rect.y1), abs=SHOWN)
        assert reading.left_edge == pytest.approx(rect.x0, abs=SHOWN)
    done = correct(plan, path.with_name("hung.csv"))
    assert [move for cured in done for move in cured.correction.moves] == [] and len(done) == len(plan.frames)


def as_told(row: dict[str, str], chance: random.Random) -> dict[str, str]:
    """The row with what should be measured as what was measured, from the floor or from the line."""
    from_level = "_from_level" if chance.random() < 0.5 else ""
    top = row[f"plan{from_level or '_top'}"]
    return row | {f"left{from_level}": top, f"right{from_level}": top, "left_edge": row["plan_left_edge"]}
