"""Broken job files, through the whole program: one message that says where and what, and nothing left behind."""

import pytest

from templates_gen.job.reading.toml_slips import (
    FIELD_TWICE,
    OPEN_LIST,
    OPEN_TABLE,
    OPEN_TEXT,
    QUOTES,
    TABLE_TWICE,
    slip,
)
from tests.broken_jobs import BROKEN, HEAD, SPREADSHEETS
from tests.broken_places import PLACES
from tests.running import MINIMAL, Ran, listing, run, spawn

WRONG_USE = 2


def one_message(ran: Ran) -> str:
    """The only message of a refused job: a line, and perhaps a hint below it, wrapped to 80 columns."""
    assert ran.code == WRONG_USE, ran
    assert ran.out == ""
    first, *more = ran.err.splitlines()
    assert first.startswith("error: ")
    assert "Traceback" not in ran.err
    assert len(more) <= 4 and all(line.startswith("  ") and line.strip() for line in more), ran.err
    assert all(len(line) <= 80 for line in more)
    assert not first.rstrip().endswith(":")
    return ran.err


@pytest.mark.parametrize("name", [*BROKEN, *PLACES])
def test_a_broken_job_is_refused_with_one_message_and_nothing_left_behind(name, folder):
    text, words = (BROKEN | PLACES)[name]
    (folder / "job.toml").write_text(text, encoding="utf-8")
    before = listing(folder)
    message = one_message(run("template", "job.toml"))
    assert [word for word in words if word not in message] == [], message
    assert listing(folder) == before


@pytest.mark.parametrize("name", SPREADSHEETS)
def test_a_broken_spreadsheet_is_refused_with_one_message_and_nothing_left_behind(name, folder):
    content, words = SPREADSHEETS[name]
    (folder / "job.toml").write_text(HEAD, encoding="utf-8")
    (folder / "frames.csv").write_bytes(content)
    before = listing(folder)
    message = one_message(run("template", "job.toml"))
    assert [word for word in words if word not in message] == [], message
    assert listing(folder) == before


@pytest.mark.parametrize("command", ["template", "check", "schedule"])
def test_the_job_file_itself_is_the_first_thing_every_message_names(command, folder):
    (folder / "job.toml").write_text(MINIMAL.replace("width = 300", "width = 0"), encoding="utf-8")
    assert one_message(run(command, "job.toml")).startswith("error: job.toml, frame 1 (A), width: found 0")


@pytest.mark.parametrize("name", ["fixings wider than the rings", "an outline that crosses itself"])
def test_a_fault_found_while_computing_names_the_job_file_too(name, folder):
    (folder / "job.toml").write_text(BROKEN[name][0], encoding="utf-8")
    assert one_message(run("template", "job.toml")).startswith("error: job.toml, ")


@pytest.mark.parametrize("command", ["template", "check", "schedule"])
def test_every_command_refuses_an_outline_that_crosses_itself(command, folder):
    (folder / "job.toml").write_text(BROKEN["an outline that crosses itself"][0], encoding="utf-8")
    assert "crosses itself" in one_message(run(command, "job.toml"))


@pytest.mark.parametrize("command", ["template", "check", "schedule"])
def test_a_missing_job_file_is_named_with_the_nearest_there_is(command, folder):
    (folder / "fern.toml").write_text(MINIMAL)
    message = one_message(run(command, "fren.toml"))
    assert "fren.toml: there is no such file" in message
    assert "did you mean 'fern.toml'?" in message
    assert "did you mean" not in one_message(run(command, "nofile.toml"))  # all end alike


def test_a_folder_instead_of_a_job_file_is_refused(folder):
    (folder / "job.toml").mkdir()
    assert "job.toml: found a folder, expected a file" in one_message(run("template", "job.toml"))


@pytest.mark.parametrize("content", [b"title = \xff", b"\x00\x01\x02", b"\xff\xfea", b"%PDF-1.7\n\xe2\xe3"])
def test_a_job_file_that_is_no_text_is_refused(content, folder):
    (folder / "job.toml").write_bytes(content)
    assert "job.toml" in one_message(run("template", "job.toml"))


def test_a_job_file_too_large_to_be_one_is_refused_unread(folder):
    with (folder / "job.toml").open("wb") as file:
        file.truncate(20_000_001)  # bytes; a byte over our own limit
    assert "more than 20 MB" in one_message(run("template", "job.toml"))


@pytest.mark.parametrize(
    ("frames", "words"),
    [("no.csv", "no.csv: there is no such file"), (".", "found a folder"), ("job.toml", "has no column that is known")],
)
def test_a_spreadsheet_that_is_not_one_is_refused(frames, words, folder):
    (folder / "job.toml").write_text(HEAD.replace("frames.csv", frames))
    assert words in one_message(run("template", "job.toml"))


def test_a_name_that_no_file_can_have_is_refused(folder):
    assert "cannot be read" in one_message(run("template", "a" * 300 + ".toml"))


def test_a_font_named_in_the_job_file_is_looked_for_beside_it(folder):
    (folder / "jobs").mkdir()
    (folder / "jobs" / "own.ttf").write_bytes(b"not a font")
    (folder / "jobs" / "job.toml").write_text(MINIMAL + '[paper]\nfont = "own.ttf"\n')
    assert "cannot be used" in one_message(run("template", "jobs/job.toml"))


def test_a_job_with_a_stopping_finding_ends_with_one_and_writes_nothing(folder):
    (folder / "job.toml").write_text(MINIMAL.replace("width = 300", "width = 4300"))
    before = listing(folder)
    ran = run("template", "job.toml")
    assert ran.code == 1
    assert ran.out == ""
    assert "Frame A reaches beyond the wall: " in ran.err
    assert ran.err.splitlines()[-1] == "error: job.toml: no template: settle what is marked stop first"
    assert listing(folder) == before


def test_a_day_in_the_environment_that_no_calendar_has_is_no_crash(folder, monkeypatch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "9" * 17)
    (folder / "job.toml").write_text(MINIMAL.replace('date = "2026-03-01"', ""))
    assert run("check", "job.toml").code in (0, WRONG_USE)


@pytest.mark.parametrize("name", ["a line that is not TOML", "a hook without below", "a title no font can write"])
def test_a_process_of_its_own_refuses_in_the_same_way(name, folder):
    text, words = (BROKEN | PLACES)[name]
    (folder / "job.toml").write_text(text, encoding="utf-8")
    before = listing(folder)
    message = one_message(spawn("template", "job.toml", cwd=folder, env={"PYTHONIOENCODING": "utf-8"}))
    assert [word for word in words if word not in message] == [], message
    assert listing(folder) == before


@pytest.mark.parametrize(("asked", "there"), [("ferns.toml", "ferns.toml.txt"), ("ferns", "ferns.toml")])
def test_a_file_with_an_ending_more_is_named(asked, there, folder):
    (folder / there).write_text(MINIMAL)
    assert one_message(run("check", asked)) == f"error: {asked}: there is no such file\n  did you mean {there!r}?\n"


def test_there_are_many_kinds_of_broken_job():
    texts = [text for text, _ in BROKEN.values()] + [content for content, _ in SPREADSHEETS.values()]
    assert len(set(texts)) == len(texts) >= 80


@pytest.mark.parametrize(
    ("text", "found", "hint"),
    [
        ('[job]\ntitle = "a"\n[job]\n', "[job]", "written once"),
        ('[[frame]]\nid = "A"\n[frame]\n', "[frame]", "[[frame]]"),
        ('[job]\ntitle = "a"\ntitle = "b"\n', 'title = "b"', "there already"),
        ('[group]\nrows = [["A", "B"]\n[paper]\n', "[paper]", "ends with ]"),
        ("[job\n", "[job", "stands in [ ]"),
        ('[group]\nrows = [["A"],\n["B"]\n\nalign = "top"\n', 'align = "top"', "ends with ]"),
        ('[job]\ntitle = "a\n', 'title = "a', "ends with the quote"),
        ("[wall]\nwidth = 14 3/8\n", "width = 14 3/8", "in quotes"),
        ('[wall]\nwidth = "12\' 6""\n', 'width = "12\' 6""', "12 ft 6 in"),
        ("[wall]\nwidth = '12' 6\"'\n", "width = '12' 6", "12 ft 6 in"),
        ("[wall]\nwidth = “14”\n", "width = “14”", "curly"),
        ("[wall]\nwidth\xa0= 14\n", "width", "shows nothing"),
        ("[wall]\n\u200bwidth = 14\n", "", "shows nothing"),
        ("[wall]\nwidth = 14\n\x1a", "", "shows nothing"),
        ('[group]\norder = ["A" "B"]\n', "order", "a comma stands"),
        ('[group]\nheight = { centre = "57"\n', "height", "end with }"),
        ("[wall]\nwidth = 6,4\n", "width", "has a point"),
        ("wall\nwidth = 14\n", "wall", "stands in [ ]"),
        ('[wall]\nwidth: "14"\n', "width:", "an = stands"),
        ('[wall]\nwidth "14"\n', "width", "an = stands"),
        ("[wall]\nthe long wall\n", "the long wall", "a remark after #"),
        ('[job]\ntitle = "C:\\Users"\n', "title", "backslash"),
        ('[wall]\nwidth = "14";\n', "width", "begins with #"),
        ('[wall]\nwidth = "14", # outside\n', "width", "begins with #"),
        ('[wall]\nwidth = "14"  // outside\n', "width", "begins with #"),
        ("[wall]\nwidth = " + "9 " * 500, "width = 9 9 9", "in quotes"),
    ],
)
def test_a_slip_of_the_text_editor_is_shown_with_its_line_and_what_to_do(text, found, hint, tmp_path):
    (tmp_path / "job.toml").write_text(text, encoding="utf-8")
    problem, _, helps = one_message(run("check", tmp_path / "job.toml")).partition("\n")
    assert f" is not valid TOML, found  {found}" in problem
    assert len(problem) < 300 and hint in " ".join(helps.split())


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("[job]\nunit = 'mm'\nunit = 'in'", FIELD_TWICE),
        ('[group]\nrows = [["A"]', OPEN_LIST),
        ('[job]\ntitle = "a', OPEN_TEXT),
        ("[job]\ntitle =", QUOTES),
        ('[job]\ntitle = "[a"\n[job]', TABLE_TWICE),
        ("[job", OPEN_TABLE),
    ],
)
def test_a_slip_is_told_by_the_shape_of_the_text_whatever_the_readers_words(text, hint):
    """At the end of a text the reader names no line; later Pythons give it by number, in words of their own."""

    class LaterError(ValueError):
        lineno = text.count("\n") + 1

    problem, helps = slip(LaterError("anything at all"), text)
    assert problem.endswith(f"found  {text.splitlines()[-1]}") and helps == hint
    assert slip(ValueError("other words"), text) == ("is not valid TOML: other words", hint)
