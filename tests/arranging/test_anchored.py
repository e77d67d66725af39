"""A frame in the middle: its own middle on the middle of the wall or over a feature's, and at eye level."""

import pytest

from templates_gen.arranging.plan import Plan, placed, plan_wall
from templates_gen.base.errors import InputError
from templates_gen.checks import find
from templates_gen.documents.options.choices import options
from templates_gen.documents.options.keeping import kept
from templates_gen.job.reading.building import read_job
from templates_gen.job.reading.other_wall import read_job_on

BENCH = '[[wall.feature]]\nkind = "furniture"\nname = "bench"\nleft = 500\nbottom = 0\nwidth = 1200\nheight = 700\n'
FRAMES = {"small": (200, 300), "mirror": (600, 900), "print": (400, 500), "map": (500, 400)}
ARRANGEMENTS = {
    "row": 'arrangement = "row"',
    "column": 'arrangement = "column"',
    "rows": 'arrangement = "rows"\nrows = [["small", "mirror"], ["print", "map"]]',
    "columns": 'arrangement = "columns"\ncolumns = [["small", "mirror"], ["print", "map"]]',
    "grid": 'arrangement = "grid"\nacross = 2',
    "placed": 'arrangement = "placed"\nplace = { small = { centre = [-500, 0] }, mirror = { centre = [0, 40] }, '
    "print = { centre = [700, 0] }, map = { bottom_left = [-100, -900] } }",
    "salon": 'arrangement = "salon"',
}


def written(path, group: str, wall: str = BENCH, frames=FRAMES):
    """A job file on a wall of 5 m by 3 m."""
    made = "".join(f'[[frame]]\nid = "{name}"\nwidth = {w}\nheight = {h}\n' for name, (w, h) in frames.items())
    path.write_text(f"[wall]\nwidth = 5000\nheight = 3000\n{wall}[group]\ngap = 50\n{group}\n{made}", encoding="utf-8")
    return path


@pytest.fixture
def hang(tmp_path, short_searches):
    """A function that plans a job with this group."""
    return lambda group, **more: plan_wall(read_job(written(tmp_path / "job.toml", group, **more)))


@pytest.mark.parametrize("arrangement", ARRANGEMENTS)
@pytest.mark.parametrize(
    ("centre", "x"),  # the wall's middle is at 2500, the bench's at 500 + 1200 / 2 = 1100
    [('"mirror"', 2500.0), ('{ frame = "mirror" }', 2500.0), ('{ frame = "mirror", over = "bench" }', 1100.0),
     ('{ frame = "mirror", over = "2.1 m" }', 2100.0)],
)  # fmt: skip
def test_a_frame_hangs_with_its_middle_where_the_group_is_centred(hang, arrangement, centre, x):
    plan = hang(f"{ARRANGEMENTS[arrangement]}\ncentre_on = {centre}\nheight = {{ centre = 1900 }}")
    assert plan.rects["mirror"].cx == pytest.approx(x) and plan.centre_line == pytest.approx(x)


@pytest.mark.parametrize("arrangement", sorted({*ARRANGEMENTS} - {"salon"}))  # that looks for another one
def test_the_others_hang_about_it_as_they_would_about_the_groups_middle(hang, arrangement):
    plain = hang(f"{ARRANGEMENTS[arrangement]}\nheight = {{ centre = 1600 }}")
    one = hang(f'{ARRANGEMENTS[arrangement]}\ncentre_on = "mirror"\nheight = {{ centre = 1600, of = "mirror" }}')
    before, after = plain.rects, one.rects
    moved = {(round(after[n].x0 - before[n].x0, 6), round(after[n].y0 - before[n].y0, 6)) for n in before}
    assert len(moved) == 1
    assert (after["mirror"].cx, after["mirror"].cy, one.level_line) == pytest.approx((2500.0, 1600.0, 1600.0))


@pytest.mark.parametrize("arrangement", ARRANGEMENTS)
@pytest.mark.parametrize(
    ("height", "edge", "at"),  # the bench's top is at 700
    [("centre = 1600", "cy", 1600.0), ("top = 2000", "y1", 2000.0), ("bottom = 1000", "y0", 1000.0),
     ('above = "bench", by = 450', "y0", 1150.0)],
)  # fmt: skip
def test_a_frame_hangs_as_high_as_is_said_of_it(hang, arrangement, height, edge, at):
    frames = FRAMES | {"mirror": (600, 700)}
    plan = hang(f'{ARRANGEMENTS[arrangement]}\nheight = {{ {height}, of = "mirror" }}', wall="" if "bench" not in height
                else BENCH.replace("left = 500", "left = 100"), frames=frames)  # fmt: skip
    assert getattr(plan.rects["mirror"], edge) == pytest.approx(at)


def test_on_stairs_the_group_moves_along_the_pitch_line(hang):
    stairs = "stairs = { run = 250, rise = 180, up = 'right', nosing = [500, 180] }\n"
    group = 'arrangement = "stairs"\nheight = { above_nosings = 1450 }'
    plain, one = hang(group, wall=stairs), hang(f'{group}\ncentre_on = "mirror"', wall=stairs)
    before, after = plain.rects, one.rects
    assert after["mirror"].cx == pytest.approx(2500.0)
    dx = 2500.0 - before["mirror"].cx
    for name in before:
        assert after[name].x0 - before[name].x0 == pytest.approx(dx)
        assert after[name].y0 - before[name].y0 == pytest.approx(dx * 180 / 250)


@pytest.mark.parametrize("height", ["centre = 1700", 'centre = 1700, of = "map"', 'bottom = 1000, of = "map"'])
@pytest.mark.parametrize("centre", ['"mirror"', '{ frame = "mirror", over = "bench" }'])
def test_an_arrangement_that_is_kept_hangs_where_it_did(tmp_path, short_searches, centre, height):
    path = written(tmp_path / "job.toml", f"{ARRANGEMENTS['salon']}\ncentre_on = {centre}\nheight = {{ {height} }}")
    job = read_job(path)
    found = plan_wall(job)
    asked = placed(job, found.rects)
    again = tmp_path / "kept.toml"
    for text in (
        path.read_text(encoding="utf-8"),
        path.read_text(encoding="utf-8").split("[group]")[0]
        + "[group]\n"
        + "".join(f'[[frame]]\nid = "{n}"\nwidth = {w}\nheight = {h}\n' for n, (w, h) in FRAMES.items()),
    ):
        again.write_text(kept(text, asked, "kept"), encoding="utf-8")  # with its own words for the place, and without
        back = plan_wall(read_job(again))
        for name, rect in found.rects.items():
            assert (back.rects[name].x0, back.rects[name].y0) == pytest.approx((rect.x0, rect.y0), abs=1e-6)
        assert (back.centre_line, back.level_line) == pytest.approx((found.centre_line, found.level_line), abs=1e-6)


def test_every_option_has_the_frame_in_the_middle(tmp_path, short_searches):
    path = written(tmp_path / "job.toml", f'{ARRANGEMENTS["rows"]}\ncentre_on = {{ frame = "mirror", over = "bench" }}')
    for option in options(read_job(path), 4):
        assert option.plan.rects["mirror"].cx == pytest.approx(1100.0)


def test_on_another_wall_the_frame_is_in_the_middle_of_that(tmp_path):
    path = written(tmp_path / "job.toml", 'centre_on = "mirror"')
    hall = tmp_path / "hall.toml"
    hall.write_text("[wall]\nwidth = 4200\nheight = 2600\n", encoding="utf-8")
    assert plan_wall(read_job_on(path, hall)).rects["mirror"].cx == pytest.approx(2100.0)
    hall.write_text(
        '[job]\nunit = "cm"\n[wall]\nwidth = 420\nheight = 260\n[group]\n'
        'centre_on = { frame = "print", over = 150 }\n', encoding="utf-8",
    )  # fmt: skip
    assert plan_wall(read_job_on(path, hall)).rects["print"].cx == pytest.approx(1500.0)
    path = written(tmp_path / "job.toml", 'centre_on = { frame = "mirror", over = "bench" }')
    hall.write_text("[wall]\nwidth = 4200\nheight = 2600\n", encoding="utf-8")
    with pytest.raises(InputError, match="'bench' of its own wall"):
        read_job_on(path, hall)


SAME = BENCH.replace("bench", "mirror")


@pytest.mark.parametrize(
    ("group", "wall", "told"),
    [
        ('centre_on = "mirror"', SAME,
         ["'mirror', which is a frame and a feature", '{ frame = "mirror" }', '{ over = "mirror" }']),
        ('centre_on = "mirro"', BENCH, ["'mirro'", "a frame", "did you mean 'mirror'?"]),
        ('centre_on = { frame = "miror" }', BENCH, ["group, centre_on, frame", "did you mean 'mirror'?"]),
        ('centre_on = { frame = "mirror", over = "bnech" }', BENCH, ["centre_on, over", "did you mean 'bench'?"]),
        ('centre_on = { of = "mirror" }', BENCH, ["unknown field 'of'", "frame, over"]),
        ('height = { centre = 1500, of = "bench" }', BENCH, ["group, height, of", "not a frame"]),
        ('height = { of = "mirror" }', BENCH, ["group, height", "found nothing"]),
        ('arrangement = "salon"\ncentre_on = "mirror"\npin = { mirror = [100, 0] }', BENCH,
         ["group, pin", "mirror is pinned", "leave one"]),
        ('arrangement = "around"\naround = "bench"\nabove = ["small", "mirror", "print", "map"]\ncentre_on = '
         '{ frame = "mirror" }', BENCH, ["group, centre_on", "the feature that the frames hang around"]),
    ],
)  # fmt: skip
def test_what_cannot_be_in_the_middle_is_refused_with_what_to_do(tmp_path, group, wall, told):
    with pytest.raises(InputError) as raised:
        read_job(written(tmp_path / "job.toml", group, wall=wall))
    assert [word for word in told if word not in str(raised.value)] == []


def test_an_id_that_is_a_distance_too_is_refused_and_told_apart_by_a_table(tmp_path):
    numbers = {"12": (300, 400), "13": (500, 400)}
    with pytest.raises(InputError, match="a frame and a distance"):
        read_job(written(tmp_path / "job.toml", 'centre_on = "12"', frames=numbers))
    for table, group in (('{ frame = "12" }', ("wall", "12")), ('{ over = "12 cm" }', (120.0, ""))):
        job = read_job(written(tmp_path / "job.toml", f"centre_on = {table}", frames=numbers))
        assert (job.group.centre_on, job.group.anchor) == group
    assert read_job(written(tmp_path / "job.toml", "centre_on = 12", frames=numbers)).group.centre_on == 12.0


def test_a_feature_of_a_frames_name_is_told_apart_by_a_table(tmp_path):
    for table, group in (('{ frame = "mirror" }', ("wall", "mirror")), ('{ over = "mirror" }', ("mirror", ""))):
        job = read_job(written(tmp_path / "job.toml", f"centre_on = {table}", wall=SAME))
        assert (job.group.centre_on, job.group.anchor) == group


def told(plan: Plan, rule: str) -> list[str]:
    return [item.text for item in find(plan) if item.rule == rule]


def test_a_group_that_hangs_aside_of_its_frame_in_the_middle_is_said_to_with_the_reason(hang):
    plan = hang('centre_on = { frame = "mirror", over = "bench" }\nheight = { above = "bench", by = 300 }')
    # 200, 600, 400 and 500 wide with gaps of 50: 1850, of which 250 + 300 are left of the mirror's middle; by hand
    assert told(plan, "group-off-centre") == [
        "Frame mirror is on the centre line, so the group's middle is 375 mm · 14 3/4 in to the right of its centre "
        "line."
    ]
    assert told(plan, "doubtful-place") == []  # the mirror is over the bench


def test_a_group_above_furniture_whose_frame_in_the_middle_is_beside_it_is_asked_about(hang):
    (text,) = told(hang('centre_on = "mirror"\nheight = { above = "bench", by = 300 }'), "doubtful-place")
    assert "frame mirror's middle is 1400 mm" in text  # 2500 - 1100
