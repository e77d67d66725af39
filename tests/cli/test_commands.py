"""The commands on the samples: exit codes, what goes to which stream, and the shapes that machines read."""

import csv
import io
import json
import re
import shlex
import shutil

import click
import pytest

from templates_gen.cli import program
from templates_gen.documents.other_ways import HEADING
from templates_gen.documents.schedule.table import CSV_HEADER
from tests.jobs import SAMPLES
from tests.running import MINIMAL, run

NAMES = sorted(path.stem for path in SAMPLES.glob("*.toml"))
MAIN = {name: program.get_command(click.Context(program), name) for name in program.commands}
COMMANDS = {
    "": program,
    **MAIN,
    **{f"{name} {inner}": command for name, group in MAIN.items() if isinstance(group, click.Group)
       for inner, command in group.commands.items()},
}  # fmt: skip


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """The repository's root as a user has it, as the current folder: the samples without what was made of them."""
    shutil.copytree(SAMPLES, tmp_path / "samples", ignore=shutil.ignore_patterns("*.pdf"))
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    return tmp_path


@pytest.mark.parametrize("name", NAMES)
def test_check_shows_its_findings_on_stdout_and_ends_with_nought(name, folder):
    ran = run("check", f"samples/{name}.toml")
    assert (ran.code, ran.err) == (0, "")
    assert re.fullmatch(r"nothing found|found: \d+ (warn|note)s?(, \d+ notes?)?", ran.out.splitlines()[-1])


def test_check_ends_with_one_when_something_stops_the_job(small):
    (small / "job.toml").write_text(MINIMAL.replace("width = 300", "width = 4300"))
    ran = run("check", "job.toml")
    assert (ran.code, ran.err) == (1, "")
    assert ran.out.startswith("stop  Frame A reaches beyond the wall: 150 mm")
    assert ran.out.splitlines()[-1] == "found: 1 stop, 1 note"  # and two people lift what is so wide


def test_check_says_when_nothing_is_found(small):
    path = small / "job.toml"
    *untold, last = run("check", "job.toml").out.splitlines()
    assert last == "nothing found" and untold[0].startswith("Not told in the job, so not checked: what holds any frame")
    told = 'wiring = "uk"\nbuilt = 2010\nearthquake = false\npublic = false'
    path.write_text(MINIMAL.replace('wiring = "uk"', told).replace('id = "A"', 'id = "A"\nweight = "2 kg"'))
    assert run("check", "job.toml").out == "nothing found\n"
    path.write_text(MINIMAL.replace('wiring = "uk"', told.replace("built = 2010\n", "")))
    unchecked = json.loads(run("check", "job.toml", "--format", "json").out)["not_checked"]
    assert unchecked == ["what holds any frame, and who lifts what (weight)", "lead and asbestos (wall.built)"]


@pytest.mark.parametrize("name", NAMES)
def test_check_gives_its_findings_to_a_machine(name, folder):
    ran = run("check", f"samples/{name}.toml", "--format", "json", "--report", "report.json")
    data = json.loads(ran.out)
    assert (ran.code, ran.err, data["format"]) == (0, "report.json: the report\n", 1)
    assert json.loads((folder / "report.json").read_text(encoding="utf-8")) == data
    for finding in data["findings"]:
        assert [name for name in finding if name != "cures"] == ["level", "rule", "about", "text", "source"]
        assert finding["level"] in ("warn", "note")


@pytest.mark.parametrize("name", NAMES)
def test_the_schedule_fits_a_terminal_and_names_every_frame(name, folder):
    ran = run("schedule", f"samples/{name}.toml")
    assert (ran.code, ran.err) == (0, "")
    assert max(len(line) for line in ran.out.splitlines()) <= 80
    starts = {line.partition(" ")[0] for line in ran.out.splitlines()}
    ids = {
        frame["id"] for frame in json.loads(run("schedule", f"samples/{name}.toml", "--format", "json").out)["frames"]
    }
    assert ids <= starts


@pytest.mark.parametrize("name", NAMES)
def test_the_schedule_for_a_machine_has_the_keys_it_always_has(name, folder):
    ran = run("schedule", f"samples/{name}.toml", "--format", "json", "--report", "s.json")
    data = json.loads(ran.out)
    assert (ran.code, ran.err) == (0, "s.json: the report\n")
    assert json.loads((folder / "s.json").read_text(encoding="utf-8")) == data
    keys = {"format", "job", "unit", "wall", "centre_line", "level_line", "frames", "findings"}
    assert keys <= set(data) and data["format"] == 1
    assert {"width", "height"} <= set(data["wall"])
    for frame in data["frames"]:
        assert {"id", "left", "bottom", "width", "height", "drop", "weight_kg", "weight_is", "nails"} <= set(frame)
        assert frame["weight_is"] in ("given", "estimated", "unknown")
        assert (frame["weight_kg"] is None) == (frame["weight_is"] == "unknown")
        for nail in frame["nails"]:
            assert {"name", "x", "y", "from_centre", "from_level", "bears_y", "load_n"} <= set(nail)
            assert nail["x"] - nail["from_centre"] == pytest.approx(data["centre_line"], abs=0.11)  # rounded to 0.1
            assert nail["y"] - nail["from_level"] == pytest.approx(data["level_line"], abs=0.11)


def test_the_numbers_of_a_schedule_worked_out_by_hand(small):
    data = json.loads(run("schedule", "job.toml", "--format", "json").out)
    (frame,) = data["frames"]
    # wall 4000 wide: the middle is at 2000; 57 in = 1447.8; frame 300 x 200 about them; its top edge at 1547.8,
    # it bears 60 lower, and the nail of 1.8 mm is 0.9 mm below: worked out by hand here
    assert (data["centre_line"], data["level_line"]) == (2000.0, 1447.8)
    assert (frame["left"], frame["bottom"], frame["drop"]) == (1850.0, 1347.8, 60.0)
    (nail,) = frame["nails"]
    assert (nail["x"], nail["y"], nail["bears_y"]) == (2000.0, 1486.9, 1487.8)
    assert (nail["from_centre"], nail["from_level"], nail["load_n"]) == (0.0, 39.1, None)


@pytest.mark.parametrize("name", NAMES)
def test_the_schedule_as_a_spreadsheet_has_a_row_for_every_nail(name, folder):
    ran = run("schedule", f"samples/{name}.toml", "--format", "csv")
    data = json.loads(run("schedule", f"samples/{name}.toml", "--format", "json").out)
    header, *rows = csv.reader(io.StringIO(ran.out))
    assert tuple(header) == CSV_HEADER
    assert [row[0] for row in rows] == [f["id"] for f in data["frames"] for _ in range(max(1, len(f["nails"])))]
    assert all(len(row) == len(header) for row in rows)
    by_hand = [[nail["x"], nail["y"]] for frame in data["frames"] for nail in frame["nails"]]
    at = [header.index(column) for column in ("nail", "x_mm", "y_mm")]
    assert [[float(row[at[1]]), float(row[at[2]])] for row in rows if row[at[0]]] == by_hand


@pytest.mark.parametrize("form", ["txt", "csv", "json", "md"])
def test_the_schedule_goes_into_a_file_by_its_ending(form, small):
    ran = run("schedule", "job.toml", "-o", f"s.{form}")
    assert (ran.code, ran.out, ran.err) == (0, f"s.{form}: the schedule\n", "")
    shown = run("schedule", "job.toml", "--format", {"txt": "text"}.get(form, form)).out
    assert (small / f"s.{form}").read_text(encoding="utf-8-sig") == shown
    assert run("schedule", "job.toml", "-o", "job.toml", "--force").code == 2


@pytest.mark.parametrize(
    ("command", "name", "expected"),
    [
        *((command, "x.txt", ".pdf") for command in ("template", "labels", "measure", "printer page", "photo card")),
        ("guide", "x.pdf", ".html"),
    ],
)
def test_a_name_whose_ending_says_otherwise_is_refused(command, name, expected, small):
    job = [] if " " in command else ["job.toml"]
    ran = run(*command.split(), *job, "-o", name)
    assert (ran.code, ran.out) == (2, "") and not (small / name).exists()
    assert ran.err == f"error: {name}: found the ending '{name[1:]}', expected {expected}\n"


@pytest.mark.parametrize("name", ["s.xlsx", "s", "s.pdf"])
def test_a_schedule_of_no_known_ending_is_refused_unless_its_form_is_said(name, small):
    ran = run("schedule", "job.toml", "-o", name)
    assert (
        ran.code == 2
        and ran.err.startswith(f"error: {name}: found the ending")
        and ".txt, .csv, .json or .md" in ran.err
    )
    assert run("schedule", "job.toml", "-o", name, "--format", "csv").code == 0


def test_a_title_that_a_spreadsheet_would_run_is_disarmed(small):
    (small / "job.toml").write_text(MINIMAL.replace('id = "A"', 'id = "=1+1"\ntitle = "@SUM(A1)"'))
    _, row = csv.reader(io.StringIO(run("schedule", "job.toml", "--format", "csv").out))
    assert row[:2] == ["'=1+1", "'@SUM(A1)"]


@pytest.mark.parametrize("name", NAMES)
def test_template_writes_a_file_beside_the_job_and_says_how_many_sheets(name, folder):
    ran = run("template", f"samples/{name}.toml")
    assert ran.code == 0
    work = r"(, \d+ joins?)?(, \d+ loose pieces)?(, \d+ cuts?)?, about \d+ min"
    assert re.fullmatch(rf"samples/{name}\.pdf: \d+ sheets? of \w+ paper{work}\n", ran.out)
    *found, other = ran.err.partition(f"{HEADING}\n")[::2]
    assert all(re.match(r"warn  |note  |      ", line) for line in found[0].splitlines())
    assert all(re.match(r"  (linked|marks|nails|one piece): +\S", line) for line in other.splitlines())
    assert (folder / "samples" / f"{name}.pdf").read_bytes().startswith(b"%PDF-")


def test_template_reports_to_a_machine(small):
    ran = run("template", "job.toml", "-o", "out.pdf", "--report", "report.json", "--paper", "letter")
    assert ran.code == 0 and "report.json: the report" in ran.err.splitlines()
    data = json.loads((small / "report.json").read_text(encoding="utf-8"))
    keys = {"format", "paper", "sheets", "register_marks", "rules", "nails"}
    assert keys <= set(data) and data["format"] == 1
    # letter is 8 1/2 x 11 in of 25.4 mm (PWG 5101.1, na_letter)
    assert sorted([data["paper"]["width"], data["paper"]["height"]]) == pytest.approx([215.9, 279.4])
    assert all({"page", "name", "window", "to_page"} <= set(sheet) for sheet in data["sheets"])
    assert all({"page", "from", "to", "length"} <= set(rule) for rule in data["rules"])
    assert [nail["name"] for nail in data["nails"]] == ["A"] and data["nails"][0]["pages"]
    assert (data["nails"][0]["x"], data["nails"][0]["y"]) == pytest.approx((2000.0, 1486.9))


def test_several_jobs_are_each_written_beside_their_file(small):
    (small / "two.toml").write_text(MINIMAL)
    ran = run("template", "job.toml", "two.toml")
    assert (ran.code, len(ran.out.splitlines())) == (0, 2)
    assert (small / "job.pdf").exists() and (small / "two.pdf").exists()


@pytest.mark.parametrize("option", ["-o", "--report"])
def test_one_output_for_several_jobs_is_wrong_use(option, small):
    ran = run("template", "job.toml", "job.toml", option, "x")
    assert (ran.code, ran.out) == (2, "")
    assert "take one job" in ran.err and not (small / "x").exists()


@pytest.mark.parametrize(
    "arguments",
    [["template"], ["hang"], ["check", "--colour"], ["schedule", "job.toml", "--format", "xml"], ["check", "a", "b"],
     ["template", "job.toml", "--cover", "some"], ["template", "job.toml", "--paper", "a44"]],
)  # fmt: skip
def test_wrong_use_ends_with_two_and_says_so_on_stderr(arguments, small):
    ran = run(*arguments)
    assert (ran.code, ran.out) == (2, "")
    assert "rror: " in ran.err and "Traceback" not in ran.err
    assert [path.name for path in small.iterdir()] == ["job.toml"]


# Help


def examples() -> list[str]:
    """The line below "Example:" in the help of every command."""
    return [line for command in COMMANDS.values() for line in example(command)]


def example(command: click.Command) -> list[str]:
    lines = (command.help or "").replace("\b", "").splitlines()
    return [lines[at + 1].strip() for at, line in enumerate(lines) if line.strip() == "Example:"]


@pytest.mark.parametrize("name", COMMANDS)
def test_the_help_of_every_command_has_an_example_of_that_command(name):
    (line,) = example(COMMANDS[name])
    assert f"{line} ".startswith(f"templates-gen {name}".rstrip() + " ")
    for way in ("-h", "--help"):
        ran = run(*name.split(), way)
        assert (ran.code, ran.err) == (0, "")
        assert line in ran.out and max(map(len, ran.out.splitlines())) <= 80


def test_the_help_lists_every_command_in_the_order_of_the_work_each_in_one_whole_line():
    lines = run("--help").out.partition("In the browser:")[2].splitlines()
    told = [line.split(maxsplit=1) for line in lines if line.startswith("  ")]
    assert [name for name, _ in told] == [
        "desk", "start", "check", "options", "proof", "measure", "template", "schedule", "guide", "labels", "photo",
        "correct", "printer", "schema", "help",
    ], "name a new command here, where it stands in the order of the work"  # fmt: skip
    assert {name for name, _ in told} == set(program.commands)
    assert all(words.endswith(".") and "..." not in words for _, words in told)


@pytest.mark.parametrize("line", examples())
def test_every_example_of_the_help_runs(line, folder, short_searches):
    called, *arguments = shlex.split(line)
    assert run("printer", "record", "study", "--paper", "a4", "--across", "179.4", "--along", "260.4").code == 0
    if arguments[0] == "photo":  # what it reads is made, for it has to be of the sheets as they are now
        from tests.photo.made.examples import write_examples

        write_examples(folder)
    ran = run(*arguments)
    assert (called, ran.code) == ("templates-gen", 0), ran
    assert ran.out


def test_the_version_is_that_of_the_package():
    import templates_gen

    assert run("--version").out.split()[-1] == templates_gen.__version__


def test_an_interrupted_run_ends_with_130_and_leaves_nothing(small, monkeypatch):
    def interrupted(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("templates_gen.documents.making.finish_template", interrupted)
    ran = run("template", "job.toml")
    assert (ran.code, ran.out) == (130, "")  # 128 + SIGINT, as shells report it
    assert ran.err.split() == ["interrupted"]
    assert [path.name for path in small.iterdir()] == ["job.toml"]
