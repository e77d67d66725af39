"""Moving house: the same group on another wall, and a file that can be made again from its own pages."""

import io

import pypdf
import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import InputError
from templates_gen.job.reading.other_wall import read_job_on
from tests.running import MINIMAL, run

HALL = """
[job]
unit = "cm"
[wall]
name = "hall"
width = 300
height = 250
[[wall.feature]]
kind = "furniture"
name = "chest"
left = 20
bottom = 0
width = 100
height = 80
"""
BENCH = '[[wall.feature]]\nkind = "furniture"\nname = "bench"\nleft = 1000\nbottom = 0\nwidth = 900\nheight = 700\n'
ABOVE = f'{MINIMAL}{BENCH}[group]\ncentre_on = "bench"\nheight = {{ above = "bench", by = 200 }}\n'


@pytest.fixture
def files(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)

    def write(job=MINIMAL, wall=HALL, name="hall.toml"):
        (tmp_path / "job.toml").write_text(job)
        (tmp_path / name).write_text(wall)
        return read_job_on(tmp_path / "job.toml", tmp_path / name)

    return write


def test_the_wall_is_the_others_in_its_own_unit_and_the_frames_are_the_jobs(files):
    job = files()
    plan = plan_wall(job)
    assert (job.wall.name, job.wall.width, job.unit) == ("hall", 3000.0, "mm")
    assert plan.centre_line == 1500.0
    assert [hung.frame.id for hung in plan.frames] == ["A"]
    assert [name for name, _ in job.sources] == ["job.toml", "hall.toml"]


def test_a_unit_that_the_wall_does_not_say_is_the_jobs(files):
    assert files(wall="[wall]\nwidth = 3100\nheight = 2500\n").wall.width == 3100.0


@pytest.mark.parametrize("wall", [HALL, HALL + '[group]\ncentre_on = "chest"\n'])
def test_a_group_on_what_the_new_wall_has_not_is_refused_with_what_to_give(files, wall):
    with pytest.raises(InputError, match="bench") as error:
        files(job=ABOVE, wall=wall)
    assert error.value.where.startswith("--wall hall.toml, group")
    assert "[group]" in error.value.hint


def test_with_that_given_it_hangs_there(files):
    plan = plan_wall(
        files(job=ABOVE, wall=HALL + '[group]\ncentre_on = "chest"\nheight = { above = "chest", by = 20 }\n')
    )
    # the chest's middle is at 20 + 50 cm, its top at 80, the frame begins 20 higher: worked out by hand here
    assert plan.centre_line == 700.0
    assert plan.group.y0 == pytest.approx(1000.0)


def test_a_distance_from_the_old_walls_end_means_nothing_on_the_new(files):
    job = f"{MINIMAL}[group]\ncentre_on = 1200\n"
    with pytest.raises(InputError, match="of its own wall, which means nothing"):
        files(job=job)
    assert plan_wall(files(job=job, wall=HALL + "[group]\ncentre_on = 160\n")).centre_line == 1600.0


@pytest.mark.parametrize(
    ("wall", "where"),
    [
        ("", ""), ("[wal]", ""), ("[wall", ""), ("[wall]\nwidth = 0\nheight = 2", ", wall, width"),
        ("[job]\nunit = 'yd'\n[wall]\nwidth = 3\nheight = 2", ", job, unit"),
    ],
)  # fmt: skip
def test_a_bad_wall_file_is_told_as_the_walls(files, wall, where):
    with pytest.raises(InputError) as error:
        files(wall=wall)
    assert error.value.where == f"--wall hall.toml{where}"


@pytest.mark.parametrize(("wall", "words"), [("no.toml", "there is no such file"), (".", "found a folder")])
def test_a_wall_file_that_cannot_be_read_is_not_looked_for_in_the_job(files, wall, words):
    files()
    ran = run("check", "job.toml", "--wall", wall)
    assert ran.code == 2 and ran.err.startswith("error: --wall") and words in ran.err and "job.toml, " not in ran.err


def test_the_template_has_its_own_name_and_can_be_made_again_from_its_attachments(files, tmp_path):
    files()
    assert run("template", "job.toml").code == 0
    first = (tmp_path / "job.pdf").read_bytes()
    ran = run("template", "job.toml", "--wall", "hall.toml", "--all-sheets")
    assert ran.code == 0 and ran.out.startswith("job-hall.pdf:")
    made = (tmp_path / "job-hall.pdf").read_bytes()
    assert (tmp_path / "job.pdf").read_bytes() == first != made
    reader = pypdf.PdfReader(io.BytesIO(made))
    assert "templates-gen template job.toml --wall hall.toml" in " ".join(reader.pages[0].extract_text().split())
    (tmp_path / "again").mkdir()
    for name, contents in reader.attachments.items():
        (tmp_path / "again" / name).write_bytes(contents[0])
    again = run("template", "again/job.toml", "--wall", "again/hall.toml", "--all-sheets")
    assert again.code == 0
    assert (tmp_path / "again" / "job-hall.pdf").read_bytes() == made


def test_two_files_of_one_name_travel_under_two(files, tmp_path):
    files()
    (tmp_path / "flat").mkdir()
    (tmp_path / "flat" / "job.toml").write_text(HALL)
    job = read_job_on(tmp_path / "job.toml", tmp_path / "flat" / "job.toml")
    assert [name for name, _ in job.sources] == ["job.toml", "job-wall.toml"]
    assert job.moved_to == "job-wall.toml"


def test_findings_and_schedule_are_those_of_the_new_wall(files):
    files(wall="[wall]\nwidth = 200\nheight = 2500\n")
    ran = run("check", "job.toml", "--wall", "hall.toml")
    assert ran.code == 1 and "reaches beyond the wall" in ran.out
    assert "100 mm" in run("schedule", "job.toml", "--wall", "hall.toml").out.splitlines()[1]


def test_the_walls_file_is_not_written_over(files):
    files()
    ran = run("template", "job.toml", "--wall", "hall.toml", "-o", "hall.toml", "--force")
    assert ran.code == 2 and "hall.toml" in ran.err


def test_a_group_around_a_feature_goes_around_the_one_that_is_named_there(files):
    window = BENCH.replace("furniture", "window").replace("bench", "window").replace("bottom = 0", "bottom = 900")
    around = f'{MINIMAL}{window}[group]\narrangement = "around"\naround = "window"\nleft = ["A"]\n'
    with pytest.raises(InputError, match="window"):
        files(job=around)
    plan = plan_wall(files(job=around, wall=HALL.replace("bottom = 0", "bottom = 60") + '[group]\naround = "chest"\n'))
    # the chest is 20 to 120 cm from the left end; A's right edge is 2 1/2 in, the usual gap, left of it
    assert plan.centre_line == 700.0 and plan.group.x1 == pytest.approx(200.0 - 63.5)


def test_a_group_on_stairs_wants_stairs(files):
    nosing = 'stairs = { run = 250, rise = 180, up = "right", nosing = [500, 180] }\n'
    stairs = MINIMAL.replace("[wall]\n", f"[wall]\n{nosing}") + '[group]\narrangement = "stairs"\n'
    with pytest.raises(InputError, match="on this wall found 'stairs' on a wall that has none"):
        files(job=stairs)
    wall = "[wall]\nwidth = 4000\nheight = 4000\n" + nosing.replace("right", "left").replace("[500", "[3500")
    assert plan_wall(files(job=stairs, wall=wall)).job.group.slope < 0
