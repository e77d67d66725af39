"""Arrangements to choose from: different in kind, drawn to scale, and the chosen one kept exactly."""

from __future__ import annotations

import io
import re
import shutil
import signal
import subprocess
import sys
import time
import tomllib
from itertools import combinations
from pathlib import Path

import pypdf
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates_gen.arranging.plan import as_it_is, placed, plan_wall
from templates_gen.arranging.search import salon as searching
from templates_gen.arranging.search.variety import alike, mirrored, shared
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import replace
from templates_gen.checks import STOP, WARN, Finding
from templates_gen.documents.options import choices
from templates_gen.documents.options.choices import Option, options
from templates_gen.documents.options.keeping import kept
from templates_gen.documents.options.page import laid_out, options_page
from templates_gen.drawing.blocks import named_in
from templates_gen.drawing.items import Picture, Polygon
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.reading.building import read_job
from templates_gen.job.reading.other_wall import read_job_on
from tests.jobs import SAMPLES, Height, Spot, frame, group, job, paper, sides
from tests.page_texts import on_page, overlapping
from tests.running import run

FREE = ("paste-papers", "fern-prints", "loom-drawings", "tile-rubbings")
"""Samples whose frames have free places."""


@pytest.fixture(scope="module", autouse=True)
def short_searches():
    """A quarter of the usual steps, for the tests' sake."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(searching, "_steps", lambda count: 250)
        yield


@pytest.fixture(scope="module")
def found(short_searches) -> tuple[Option, ...]:
    return options(read_job(SAMPLES / "paste-papers.toml"), 6)


def rects_of(option: Option) -> dict[str, Rect]:
    return {hung.frame.id: hung.rect for hung in option.plan.frames}


def test_the_arrangement_as_it_is_comes_first_then_others_and_no_two_are_alike(found):
    assert [option.number for option in found] == list(range(1, len(found) + 1)) and len(found) >= 3
    own = plan_wall(read_job(SAMPLES / "paste-papers.toml"))
    assert found[0].kind == "as it is"
    for hung in own.frames:
        assert sides(rects_of(found[0])[hung.frame.id]) == pytest.approx(sides(hung.rect), abs=1e-6)
    for one, two in combinations(found, 2):
        assert not alike(rects_of(one), rects_of(two))
    assert any(option.kind.startswith("in ") for option in found)  # rows, columns or a grid: always one
    assert len({option.kind for option in found}) > 1
    for option in found:
        assert option.findings == () and option.paper.startswith("about ")
        assert option.plan.group.y0 == pytest.approx(850.0 + 200.0)


def test_a_mirror_image_is_alike_and_another_shape_is_not():
    rects = {"a": Rect(0, 0, 400, 500), "b": Rect(450, 0, 650, 300)}
    assert alike(rects, mirrored(rects, 999.0))
    assert shared(rects, {"a": Rect(0, 0, 200, 300), "b": Rect(250, 0, 650, 500)}) < 1
    assert not alike(rects, {"a": Rect(0, 0, 400, 500), "b": Rect(0, 550, 200, 850)})


@pytest.mark.parametrize("name", ["a4", "letter", "a3", "a5"])
@pytest.mark.parametrize("count", [2, 5, 6])
def test_the_page_keeps_texts_apart_and_draws_frames_to_scale(found, name, count):
    lettering = Lettering(())
    template = options_page(found[:count], paper(name), lettering)
    layout, *_ = laid_out(found[:count], paper(name), lettering)
    page = on_page(template, lettering, 1)
    inside = layout.page.printable.grown(0.01)
    assert overlapping(page.texts, 0.01) == []
    assert [text.text for text in page.texts if not inside.holds(text.box)] == []
    shown, key = [text.text for text in page.texts], " · ".join(text.text for text in page.texts)
    for hung in found[0].plan.frames:
        # its name whole in every option, or a sign for it that the key tells; frames under 4 mm have room for neither:
        # a letter is 1.8 mm high (ISO 3098-1 series, from memory)
        sign = re.search(rf"(?:^| )(\w+): {hung.frame.id}(?: |$)", key)
        small = min(hung.rect.width, hung.rect.height) / layout.scale < 4.0
        assert shown.count(sign[1] if sign else hung.frame.id) >= len(found[:count]) or small, hung.frame.id
    assert not [text for text in shown if "…" in text]
    drawn = {
        (round(max(xs) - min(xs), 6), round(max(ys) - min(ys), 6))
        for item in template.pages[0].page_items
        if isinstance(item, Polygon)
        for xs, ys in [tuple(zip(*item.points, strict=True))]
    }
    for hung in found[0].plan.frames:
        size = hung.rect.width / layout.scale, hung.rect.height / layout.scale
        assert any(size == pytest.approx(other, abs=1e-5) for other in drawn)


@pytest.mark.parametrize("name", ["a4", "letter"])
def test_only_what_is_said_of_an_option_takes_room_from_its_picture(found, name, monkeypatch):
    layout, *_ = laid_out(found[:4], paper(name), Lettering(()))
    monkeypatch.setattr("templates_gen.documents.options.page.LINES", 20)
    assert laid_out(found[:4], paper(name), Lettering(()))[0].scale == layout.scale


def test_where_frames_are_on_the_page_is_where_they_are_on_the_wall(found):
    """Read from the file as another library has it: the outlines of the first option, from its wall's corner."""
    own = paper("a4")
    lettering = Lettering(())
    layout, *_ = laid_out(found, own, lettering)
    boxes = {
        (item.points[0], item.points[2])
        for item in options_page(found, own, lettering).pages[0].page_items
        if isinstance(item, Polygon)
    }
    cell, wall = layout.cells[0], found[0].plan.job.wall
    for hung in found[0].plan.frames:
        left = cell.x0 + hung.rect.x0 / layout.scale
        top = cell.y1 - (wall.height - hung.rect.y1) / layout.scale
        assert any(a[0] == pytest.approx(left) and b[1] == pytest.approx(top) for a, b in boxes)


def test_the_page_says_in_plain_words_what_sets_an_option_apart_and_who_settles_the_rest(found):
    """A client chooses by it: what all options share is for whoever hangs, and no finding's level is named."""
    heavy = Finding(WARN, "rating-exceeded", ("net",), "too heavy")
    near = Finding(WARN, "cable-zone", ("a1",), "near a cable")
    off = Finding(STOP, "frame-off-wall", ("a1",), "off the wall")
    some = [replace(option, findings=(heavy, *own)) for option, own in zip(found, ((), (near,), (off,)), strict=False)]
    for own in (paper("a5"), paper("letter")):
        page = on_page(options_page(some, own, Lettering()), Lettering(), 1)
        words = " ".join(text.text for text in page.texts)
        assert "to settle first: cable zone" in words and "cannot be hung like this: frame off wall" in words
        assert words.count("option has something to settle before it is hung") == 1
        assert not [word for word in ("rating", "warn", "stop") if word in words]
        assert overlapping(page.texts, 0.01) == []
        inside = laid_out(some, own, Lettering())[0].page.printable
        assert [text.text for text in page.texts if not inside.holds(text.box)] == []


def test_an_id_is_level_before_it_is_cut_and_cut_along_the_longer_side():
    """Boxes in mm; the sizes of lettering are of the ISO 3098-1 series (from memory)."""
    lettering, sizes = Lettering(), ((3.5, True), (1.8, False))
    wide, tall = Rect(0.0, 0.0, 11.0, 8.0), Rect(0.0, 0.0, 3.0, 9.0)
    cut, upright = named_in(wide, "sluice-gate", sizes, lettering), named_in(tall, "eel", ((1.8, True),), lettering)
    assert cut and cut.angle == 0 and cut.text.startswith("sluice") and cut.text.endswith("…")
    assert upright and (upright.angle, upright.text) == (90, "eel")
    assert wide.holds(lettering.box(cut)) and tall.holds(lettering.box(upright))
    assert named_in(Rect(0.0, 0.0, 1.0, 1.0), "eel", sizes, lettering) is None


@pytest.mark.parametrize("name", FREE)
def test_the_chosen_arrangement_is_kept_to_a_thousandth_of_a_millimetre(name, tmp_path):
    for path in SAMPLES.glob("*.toml"):
        shutil.copy(path, tmp_path)
    for path in SAMPLES.glob("*.csv"):
        shutil.copy(path, tmp_path)
    source = tmp_path / f"{name}.toml"
    job = read_job(source)
    plan = plan_wall(job)
    rects = {hung.frame.id: hung.rect.shifted(11.1 * at, 7.77 * at) for at, hung in enumerate(plan.frames)}
    target = tmp_path / "kept.toml"
    text = source.read_text(encoding="utf-8")
    target.write_text(kept(text, placed(job, rects), "a comment"), encoding="utf-8")
    again = plan_wall(read_job(target))
    level = plan.level_line if job.group.height.by == "centre" else again.group.cy
    assert (again.centre_line, again.level_line) == pytest.approx((plan.centre_line, level))
    for hung in again.frames:
        rect = rects[hung.frame.id]
        if job.group.height.by != "centre":  # hung by an edge, the group keeps that edge where it was
            edge = "y1" if job.group.height.by == "top" else "y0"
            rect = rect.shifted(0.0, getattr(again.group, edge) - getattr(bounds(rects.values()), edge))
        assert (hung.rect.x0, hung.rect.y0) == pytest.approx((rect.x0, rect.y0), abs=1e-6)
    before, after = tomllib.loads(text), tomllib.loads(target.read_text(encoding="utf-8"))
    assert {**before, "group": 0} == {**after, "group": 0}
    written = target.read_text(encoding="utf-8").splitlines()
    outside = text.split("[group]")[0].splitlines() + text.partition("[[frame]]")[2].splitlines()
    assert [line for line in outside if line and line not in written] == []  # comments, too


@given(
    st.lists(st.tuples(*(st.integers(-900, 900),) * 2), min_size=2, max_size=2),
    st.builds(
        Height, by=st.sampled_from(("centre", "top", "bottom")), at=st.just(1450.0), of=st.sampled_from(("", *"ABC"))
    ),
    st.sampled_from(("", "B")),
)
def test_an_arrangement_kept_as_it_is_moves_neither_line_nor_nail(beside, height, anchor):
    """Placed frames whose middle is at neither line; sizes and places (mm) are the test's own."""
    at = zip("ABC", ((0, 0), *beside), strict=True)
    spots = tuple((name, Spot(point="centre", x=float(x), y=float(y))) for name, (x, y) in at)
    asked = group((("A", "B", "C"),), "placed", spots=spots, anchor=anchor, height=height)
    own = plan_wall(job(*map(frame, "ABC"), group=asked))
    again = plan_wall(as_it_is(own, own.job))
    assert (again.centre_line, again.level_line) == pytest.approx((own.centre_line, own.level_line))
    before, after = ({nail.name: (nail.x, nail.y) for nail in plan.nails} for plan in (own, again))
    assert after == {name: pytest.approx(spot) for name, spot in before.items()}


ids = st.text(st.characters(codec="utf-8", categories=["L", "N", "P", "S", "Zs"]), min_size=1, max_size=8)


@settings(max_examples=40, deadline=None)
@given(st.lists(ids.filter(lambda t: t.strip() and t.isprintable()), min_size=2, max_size=4, unique=True))
def test_frames_of_any_name_are_kept(names):
    asked = job(*(frame(name) for name in names), group=group((tuple(names),), gap_across=50.0, gap_down=70.0))
    rects = {name: Rect.sized(500.0 * at, 1000.0, 400.0, 500.0) for at, name in enumerate(names)}
    text = kept('[job]\ntitle = "x"\n', placed(asked, rects), "a comment")
    written = tomllib.loads(text)["group"]
    assert list(written["place"]) == names
    assert (written["gap_across"], written["gap_down"]) == ("50 mm", "70 mm")


@pytest.mark.parametrize("name", ["two\nlines.toml", "\udcff.toml", "a\u202eb\x7f.toml"])
def test_a_job_file_of_any_name_is_kept_with_a_remark_that_is_one(name):
    asked = placed(job(), {"A": Rect.sized(0.0, 0.0, 400.0, 500.0)})
    text = kept('[job]\ntitle = "x"\n', asked, f"option 1 of {name}")
    assert "# option 1 of " in text and tomllib.loads(text)["group"]["place"] and text.encode()


def test_what_the_group_says_of_gaps_and_place_stays_as_it_was_written():
    """A bare number is doubted where one with its unit is not: keeping an arrangement takes no doubt away."""
    own = 'gap = "2 1/2"\ncentre_on = "75 1/4"\nheight = { above = "bench", by = 14.2 }\n'
    asked = placed(job(unit="in"), {"A": Rect.sized(0.0, 0.0, 400.0, 500.0)})
    for kind in ("row", "salon"):
        text = kept(f'[job]\nunit = "in"\n[group]\narrangement = "{kind}"\n{own}', asked, "a comment")
        assert own in text and tomllib.loads(text)["group"]["arrangement"] == "placed"
        assert "gap_across" not in text


def test_a_group_written_in_one_line_is_not_guessed_at():
    asked = placed(job(), {"A": Rect.sized(0.0, 0.0, 400.0, 500.0)})
    with pytest.raises(InputError, match="cannot be replaced as it is written"):
        kept('group = { arrangement = "row" }\n[job]\ntitle = "x"\n', asked, "")


@pytest.mark.parametrize(
    ("of", "told"),
    [("lock-keepers", "'stairs', expected one whose frames are free"), ("kiln-tiles", "'around', expected one")],
)
def test_what_is_bound_to_the_wall_has_no_options(of, told):
    with pytest.raises(InputError, match=told):
        options(read_job(SAMPLES / f"{of}.toml"), 4)


def test_a_single_frame_has_no_options():
    with pytest.raises(InputError, match="found a single frame"):
        options(job(), 4)


def test_a_search_ended_early_gives_what_there_is():
    early = options(read_job(SAMPLES / "paste-papers.toml"), 4, watch=lambda done: False)
    assert early[0].kind == "as it is" and len(early) > 1
    assert all(option.kind.startswith("in ") for option in early[1:])


def test_the_watch_is_told_of_all_searches_from_none_to_all_done():
    for name in ("paste-papers", "fern-prints"):  # the first has its own places found, too
        told: list[float] = []
        options(read_job(SAMPLES / f"{name}.toml"), 3, watch=lambda done, told=told: told.append(done) or True)
        assert told == sorted(told) and 0.0 <= told[0] and 0.9 < told[-1] <= 1.0


def test_the_page_is_for_whoever_chooses_with_pictures_and_without_scores_and_commands():
    found = options(read_job(SAMPLES / "fern-prints.toml"), 4)
    template = options_page(found, paper("letter"), Lettering())
    drawn = [item for item in template.pages[0].page_items if isinstance(item, Picture)]
    assert len(drawn) == 5 * len(found)  # five frames, each with its picture, in every option
    shown = {item.pixels for item in drawn}
    assert len(shown) <= 5  # each picture is in the file once
    words = " ".join(text.text for text in on_page(template, Lettering(), 1).texts)
    assert not [word for word in ("score", "templates-gen", "--", "warn", "stop") if word in words]
    # the bench of the sample is 60 in wide, and the group as it is 43 3/4 in: 72.9 %
    assert "as it is" in words and "73 % of the width of the bench" in words and "min" in words


def test_a_name_that_has_no_room_gets_a_sign_that_no_name_begins_with():
    names = ("harbour-wall", "a1", "Bee")
    asked = job(*(frame(name, 200.0, 100.0) for name in names), group=group((names,), gap=60.0))
    found = options(asked, 2)
    words = [text.text for text in on_page(options_page(found, paper("a4"), Lettering()), Lettering(), 1).texts]
    assert any(text.startswith("c: harbour-wall") for text in words)
    assert words.count("c") == len(found)


def test_the_command_shows_the_page_and_keeps_what_is_picked(tmp_path, found):
    shutil.copy(SAMPLES / "paste-papers.toml", tmp_path / "job.toml")
    shown = run("options", tmp_path / "job.toml")
    assert (shown.code, shown.err) == (0, "")
    assert f" 1  {found[0].kind}" in shown.out and max(map(len, shown.out.splitlines()[:-2])) <= 80
    assert shown.out.endswith("job.toml --pick N -o NEW-JOB.toml\n")
    text = pypdf.PdfReader(io.BytesIO((tmp_path / "job-options.pdf").read_bytes())).pages[0].extract_text()
    assert "Paste papers: options" in text
    picked = run("options", tmp_path / "job.toml", "--pick", "3", "-o", tmp_path / "third.toml")
    assert picked.code == 0
    assert "\n".join(picked.out.splitlines()[:-1]) in shown.out  # as on the page, for whoever holds that
    plan = plan_wall(read_job(tmp_path / "third.toml"))
    for hung in plan.frames:
        rect = rects_of(found[2])[hung.frame.id]
        assert (hung.rect.x0, hung.rect.y0) == pytest.approx((rect.x0, rect.y0), abs=1e-6)
    assert run("check", tmp_path / "third.toml").code == 0


def test_to_keep_the_arrangement_as_it_is_no_other_is_searched_for(tmp_path, found, monkeypatch):
    """It is what one does before a frame is measured anew, and took as long as all of them."""
    monkeypatch.setattr(choices, "variety", lambda *_: pytest.fail("another is searched for"))
    shutil.copy(SAMPLES / "paste-papers.toml", tmp_path / "job.toml")
    (own,) = options(read_job(tmp_path / "job.toml"), 1)
    assert (own.number, own.kind, own.score, rects_of(own)) == (1, "as it is", found[0].score, rects_of(found[0]))
    assert run("options", tmp_path / "job.toml", "--pick", "1", "-o", tmp_path / "own.toml").code == 0
    for hung in plan_wall(read_job(tmp_path / "own.toml")).frames:
        assert sides(hung.rect) == pytest.approx(sides(rects_of(own)[hung.frame.id]), abs=1e-6)


def test_options_for_another_wall_are_kept_for_that_wall(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    frames = "".join(
        f'[[frame]]\nid = "{name}"\nwidth = {wide}\nheight = 400\n'
        for name, wide in zip("abc", (300, 250, 200), strict=True)
    )
    bench = '[[wall.feature]]\nkind = "furniture"\nname = "bench"\nleft = 900\nbottom = 0\nwidth = 900\nheight = 700\n'
    group = '[group]\ncentre_on = "bench"\nheight = { above = "bench", by = 200 }\n'
    Path("job.toml").write_text(f"[wall]\nwidth = 3000\nheight = 2500\n{bench}{group}{frames}", encoding="utf-8")
    hall = "[wall]\nwidth = 2000\nheight = 2600\n[group]\ncentre_on = 900\nheight = { top = 1900 }\n"
    Path("hall.toml").write_text(hall, encoding="utf-8")
    shown = run("options", "job.toml", "--wall", "hall.toml")
    assert shown.code == 0 and shown.out.endswith("options job.toml --wall hall.toml --pick N -o NEW-JOB.toml\n")
    assert Path("job-hall-options.pdf").exists()
    picked = run("options", "job.toml", "--wall", "hall.toml", "--pick", "2")
    assert picked.code == 0 and picked.out.endswith("check job-hall-2.toml --wall hall.toml\n")
    there = plan_wall(read_job_on(Path("job-hall-2.toml"), Path("hall.toml")))
    option = options(read_job_on(Path("job.toml"), Path("hall.toml")), 6)[1]
    for hung in there.frames:
        rect = rects_of(option)[hung.frame.id]
        assert (hung.rect.x0, hung.rect.y0) == pytest.approx((rect.x0, rect.y0), abs=1e-6)
    # on its own wall the group stays where it was: 200 above the bench of 700
    assert plan_wall(read_job(Path("job-hall-2.toml"))).group.y0 == pytest.approx(900.0)


def test_a_pick_that_cannot_be_is_refused(tmp_path):
    path = tmp_path / "two.toml"
    path.write_text(
        '[wall]\nwidth = 3000\nheight = 2500\n[[frame]]\nid = "a"\nwidth = 300\nheight = 400\n'
        '[[frame]]\nid = "b"\nwidth = 300\nheight = 400\n',
        encoding="utf-8",
    )
    for number in ("0", "9", "13"):
        beyond = run("options", path, "--pick", number)
        assert beyond.code == 2 and f"found {number}, expected 1 to" in beyond.err
        assert "the page shows " in beyond.err
    (tmp_path / "elsewhere").mkdir()
    assert run("options", path, "--pick", "1", "-o", tmp_path / "elsewhere" / "x.toml").code == 0
    (tmp_path / "m.csv").write_text("id,drop\na,80\n", encoding="utf-8")
    path.write_text('[job]\nmeasured = "m.csv"\n' + path.read_text(encoding="utf-8"), encoding="utf-8")
    other = run("options", path, "--pick", "1", "-o", tmp_path / "elsewhere" / "y.toml")
    assert other.code == 2 and "the job names files in that folder: m.csv" in other.err
    assert run("options", path, "--pick", "1", "-o", path).code == 2  # never the job file itself


def test_ctrl_c_gives_the_best_so_far(tmp_path):
    frames = "".join(f'[[frame]]\nid = "f{at}"\nwidth = {200 + 17 * at}\nheight = 300\n' for at in range(30))
    path = tmp_path / "many.toml"
    path.write_text(f"[wall]\nwidth = 15000\nheight = 3000\n{frames}", encoding="utf-8")
    for wait in (1.0, 1.4, 2.0, 2.8, 4.0, 5.6, 8.0, 11.2):  # s; a busy machine takes longer to begin the search, which
        # then lasts twice as long as that or more
        run_ = subprocess.Popen(
            [sys.executable, "-m", "templates_gen", "options", str(path), "--count", "2"],
            stdout=subprocess.PIPE, stderr=subprocess.PIPE, encoding="utf-8",
        )  # fmt: skip
        time.sleep(wait)
        run_.send_signal(signal.SIGINT)
        out, err = run_.communicate(timeout=60)
        if "stopped early" in err:
            break
    assert run_.returncode == 0, err
    assert "stopped early" in err and "2 options on 1 page" in out
    assert (tmp_path / "many-options.pdf").exists()
