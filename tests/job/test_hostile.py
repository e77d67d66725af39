"""Sizes, names and numbers that nobody means: taken at their word where that can be, refused in words where not."""

import time
from dataclasses import replace

import pytest

from templates_gen.checks.fitting import MOST_PAIRS
from templates_gen.job.reading.building import read_job
from templates_gen.job.reading.frame_list import MOST_FRAMES
from tests.broken_jobs import added, swapped
from tests.job.test_broken_jobs import one_message
from tests.running import Ran, run

SECONDS = 6.0
"""of a processor's time for thousands of frames; less than one is usual, and what grows with their square takes many
more.  Our own design, no source."""


def job(*ids: str, group: str = "", wall: str = "width = 9000\nheight = 2600", size: str = "width = 300\nheight = 200",
        title: str = "t") -> str:  # fmt: skip
    frames = "".join(f'[[frame]]\nid = "{name}"\n{size}\ndrop = 60\n' for name in ids)
    return f'[job]\ntitle = "{title}"\ndate = "2026-03-01"\n[wall]\n{wall}\nwiring = "none"\n[group]\n{group}\n{frames}'


def at_one_point(*ids: str) -> str:
    return 'arrangement = "placed"\n' + "".join(f"place.{name} = {{ centre = [0, 0] }}\n" for name in ids)


MANY = [f"F{number}" for number in range(MOST_FRAMES)]

LARGE = 'width = "190 m"\nheight = "190 m"'

WHOLE = {  # a job that comes out whole
    "frames of a millimetre": job("A", "B", size="width = 1\nheight = 1").replace("drop = 60\n", ""),
    "a wall of 20 m with a frame at each end": job(
        "A", "B", wall='width = "20 m"\nheight = 2600',
        group='arrangement = "placed"\nplace.A = { centre = ["-9 m", 0] }\nplace.B = { centre = ["9 m", 0] }',
    ),
    "no gap at all": job("A", "B", "C", group="gap = 0"),
    "a gap below zero by its sign only": job("A", "B", group="gap = -0.0"),
    "ids of 200 letters": job("a" * 200, "b" * 200),
    "ids of many words": job("ab " * 60 + "c", "ab " * 60 + "d"),
    "a title of 5,000 letters": job("A", title="T" * 5000),
    "names from right to left": job("אבג", "دفتر ١٢", "ב" * 200, title="שלום 12 abc עולם"),
    "letters under thirty accents": job("A", title="e" + "\u0301\u0323" * 15),
    "ids that differ by capitals": job("a", "A"),
    "paper of five metres": job("A") + "[paper]\nsize = [5000, 5000]\nmargin = 0\n",
}  # fmt: skip

STOPPED = {  # a job that is read and then stopped, with what the finding says
    "a frame larger than its wall": (job("A", size=LARGE), "reaches beyond the wall"),
    "the middle of the wall's lower left corner": (
        job("A", group="centre_on = -0.0\nheight = { centre = 0 }"),
        "reaches beyond the wall",
    ),
    "a frame of a millimetre with a nail": (job("A", size="width = 1\nheight = 1"), "its drop is"),
    "fifty frames at one point": (job(*MANY[:50], group=at_one_point(*MANY[:50])), "More frames overlap than"),
}

REFUSED = {  # what is refused, with words of the message
    "a width of 1e308": (swapped("width = 300", "width = 1e308"), ("frame 1 (A), width", "1e+308", "200 m")),
    "a width of 1e400": (swapped("width = 300", 'width = "1e400"'), ("frame 1 (A), width", "'1e400'")),
    "a width without end": (swapped("width = 300", "width = inf"), ("frame 1 (A), width", "inf")),
    "a width in words without end": (swapped("width = 300", 'width = "inf"'), ("frame 1 (A), width", "'inf'")),
    "a drop that is no number": (swapped("drop = 60", "drop = nan"), ("frame 1 (A), drop", "nan")),
    "a gap below zero without end": (added("[group]\ngap = -inf"), ("group, gap", "-inf")),
    "an angle that is no number": (added('[fixing]\nkind = "nail"\nangle = nan'), ("fixing, angle", "nan")),
    "a scale that is no number": (added("[accuracy]\nscale = nan"), ("accuracy, scale", "nan")),
    "a count of steps beyond any": (
        swapped("height = 2600", f"height = 2600\nstairs = {{ run = 1, rise = 1, steps = 1{'0' * 400} }}"),
        ("wall, stairs, steps", "401 figures"),
    ),
    "a scale beyond any": (added(f"[accuracy]\nscale = 1{'0' * 400}"), ("accuracy, scale", "401 figures")),
    "one over nothing": (swapped("width = 300", 'width = "1/0"'), ("frame 1 (A), width", "'1/0'")),
    "a fraction of thousands of figures": (
        swapped("width = 300", f'width = "1/{"9" * 5000}"'), ("frame 1 (A), width", "99..."),
    ),
    "a frame narrower than any": (swapped("width = 300", "width = 5e-324"), ("frame 1 (A), width", "1 mm at least")),
    "studs like a comb": (
        swapped("height = 2600", "height = 2600\nstuds = { first = 0, spacing = 0.001, width = 0.0001 }"),
        ("wall, studs", "0.001 mm", "100 mm or more"),
    ),
    "an emoji in a title": (job("A", title="👍"), ("no font", "U+1F44D", "--font")),
    "an emoji for an id": (job("👍"), ("no font", "U+1F44D", "--font")),
    "ids that differ by their normal form": (job("ñ", "n\u0303"), ("which look the same",)),
    "ids that differ by their script": (job("A", "\u0410"), ("and 'A', which look the same",)),
    "ids that differ by spaces": (job("a b", "a  b"), ("'a  b' and 'a b', which look the same",)),
    "an id of 201 letters": (job("a" * 201), ("frame 1", "short name")),
    "a title of 100,000 letters": (job("A", title="T" * 100_000), ("job, title", "a text of 100000 letters")),
    "a separator of lines in a title": (job("A", title="a\u2028b"), ("job, title", "U+2028")),
    "more frames than any": (job(*MANY, "one more"), ("found 10001 frames", "1 to 10000")),
    "sheets beyond any": (
        job("A", wall='width = "199 m"\nheight = "199 m"', size=LARGE, group='height = { centre = "99 m" }')
        + '[paper]\ncover = "all"\nsize = "a5"\n',
        ("paper", "20,000 sheets"),
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", WHOLE)
def test_odd_but_possible(name, folder, hardly_searched):
    (folder / "job.toml").write_text(WHOLE[name], encoding="utf-8")
    for command in ("check", "schedule", "template"):
        ran = run(command, "job.toml")
        assert ran.code == 0, ran.err


@pytest.mark.parametrize("name", STOPPED)
def test_possible_but_stopped(name, folder):
    text, words = STOPPED[name]
    (folder / "job.toml").write_text(text, encoding="utf-8")
    assert run("schedule", "job.toml").code == 0
    ran = run("template", "job.toml")
    assert ran.code == 1 and words in " ".join(ran.err.split())
    assert len(ran.err.splitlines()) < MOST_PAIRS + 20


@pytest.mark.parametrize("name", REFUSED)
def test_refused_in_words(name, folder):
    text, words = REFUSED[name]
    (folder / "job.toml").write_text(text, encoding="utf-8")
    message = one_message(_without_findings(run("template", "job.toml")))
    assert [word for word in words if word not in message] == [], message
    assert not (folder / "job.pdf").exists()


def _without_findings(ran: Ran) -> Ran:
    """The run with what follows its findings."""
    return replace(ran, err=ran.err[ran.err.index("error: ") :])


THOUSANDS = MANY[:5000]


@pytest.mark.parametrize(
    "group",
    ['arrangement = "column"\ngap = 1', at_one_point(*THOUSANDS)],
    ids=["column", "at one point"],
)
def test_thousands_of_frames_are_read_and_checked_in_seconds(group, folder):
    small = "width = 15\nheight = 15"
    wall = 'width = "180 m"\nheight = "180 m"'
    text = job(*THOUSANDS, group=f'height = {{ centre = "90 m" }}\n{group}', wall=wall, size=small)
    (folder / "job.toml").write_text(text.replace("drop = 60", "drop = 7"))
    start = time.process_time()
    ran = run("check", "job.toml")
    assert time.process_time() - start < SECONDS
    assert ran.code == ("place.F0" in group)
    assert len(ran.out) < 20_000


@pytest.mark.parametrize("stamp", ["abc", "1e9", "99999999999999999999", "12 34", "½"])
@pytest.mark.parametrize("command", ["template job.toml", "check no-date.toml", "printer page", "proof job.toml"])
def test_a_day_that_the_build_names_is_a_number_of_seconds(stamp, command, folder, monkeypatch):
    (folder / "job.toml").write_text(job("A"), encoding="utf-8")
    (folder / "no-date.toml").write_text(job("A").replace('date = "2026-03-01"', ""), encoding="utf-8")
    monkeypatch.setenv("SOURCE_DATE_EPOCH", stamp)
    ran = run(*command.split())
    assert ran.code == 2 and "SOURCE_DATE_EPOCH: found" in ran.err and "expected seconds since 1970" in ran.err
    assert not list(folder.glob("*.pdf"))


@pytest.mark.parametrize("stamp", ["", " ", "0", "1772323200", " 1772323200 "])
def test_a_day_that_the_build_names_is_the_jobs(stamp, folder, monkeypatch):
    (folder / "job.toml").write_text(job("A").replace('date = "2026-03-01"', ""), encoding="utf-8")
    monkeypatch.setenv("SOURCE_DATE_EPOCH", stamp)
    assert run("template", "job.toml").code == 0
    if stamp.strip():
        day = "1970-01-01" if stamp == "0" else "2026-03-01"  # 1772323200 is 20,513 days: worked out by hand here
        assert read_job(folder / "job.toml").date == day
