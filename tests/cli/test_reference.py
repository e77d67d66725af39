"""The reference of the job file: made from its tables, current beside the samples, and true in what it says."""

import re
import tomllib

import pytest

from templates_gen.base.errors import InputError
from templates_gen.base.units import INCH
from templates_gen.cli.reference import EXAMPLE, WIDTH, reference, table_names
from templates_gen.job import accuracy, frame_sizes, paper_sizes, weights
from templates_gen.job.model import Fixing
from templates_gen.job.reading import grouping, place, walling
from templates_gen.job.reading.building import read_job
from templates_gen.job.reading.typed import read_table
from templates_gen.job.tables.contents import CHAPTERS
from templates_gen.job.tables.field import Limits, fields_of
from templates_gen.job.tables.frame import FrameTable
from tests.jobs import SAMPLES
from tests.running import run

FIELDS = {(chapter.name, name): field for chapter in CHAPTERS for name, field in fields_of(chapter.table).items()}
BESIDE = SAMPLES / "job-reference.txt"


def test_the_reference_beside_the_samples_is_current():
    ran = run("help", "job")
    assert (ran.code, ran.err) == (0, "")
    beside = BESIDE.read_text(encoding="utf-8")
    assert beside == ran.out, "write it anew: templates-gen help job > samples/job-reference.txt"


def test_the_reference_fits_a_terminal_and_has_every_field():
    lines = reference().splitlines()
    assert max(map(len, lines)) <= WIDTH == 80
    assert [line for line in lines if line != line.rstrip()] == []
    begun = {line.partition(" =")[0].strip() for line in lines if line.startswith("  ")}
    assert {name for _, name in FIELDS} - begun == {"feature"} and "  [[wall.feature]]" in lines


@pytest.mark.parametrize("name", table_names())
def test_a_table_alone_is_a_part_of_the_whole(name):
    ran = run("help", "job", name)
    assert (ran.code, ran.err) == (0, "")
    assert ran.out in reference() and len(ran.out.splitlines()) > 5


def test_a_field_is_found_in_every_table_that_has_it():
    told = reference("drop")
    assert "[[frame]]" in told and "[accuracy]" in told and told.count("  drop = ") == 2


def test_the_whole_job_of_the_reference_is_one(tmp_path):
    path = tmp_path / "ferns.toml"
    path.write_text(EXAMPLE, encoding="utf-8")
    job = read_job(path)
    assert [frame.id for frame in job.frames] == ["A", "B", "C"]
    assert job.frames[1].fixing.below == 7 / 8 * INCH
    assert "".join(f"  {line}".rstrip() + "\n" for line in EXAMPLE.splitlines()) in reference()


NEEDED = {"feature": {"kind": "door"}, "stairs": {"up": "left", "nosing": [0, 0]}, "part": {"kind": "glass"}}
READ = [each for each in FIELDS if each not in [("wall", "feature"), ("job", "date")]]
"""All but what is no field in a line, and a date, which is made a text before."""


@pytest.mark.parametrize("chapter, name", READ)
def test_an_example_is_what_the_reader_takes(chapter, name):
    table = next(each.table for each in CHAPTERS if each.name == chapter)
    written = tomllib.loads(f"{name} = {FIELDS[chapter, name].words.example}")
    told = read_table(NEEDED.get(chapter, {}) | written, table, "in", chapter)
    usual = FIELDS[chapter, name].default
    assert getattr(told, name) != usual or (usual, name) == ("row", "arrangement")


def test_an_example_is_not_taken_for_anything():
    with pytest.raises(InputError, match="expected a length"):
        read_table(tomllib.loads("width = []"), FrameTable, "in", "frame")


USUAL = {  # what the reference says, and the constant that is used
    ("group", "gap"): (f"2 1/2 in ({grouping.DEFAULT_GAP:g} mm)", 2.5 * INCH, grouping.DEFAULT_GAP),
    ("group", "height"): (f"57 in ({place.DEFAULT_CENTRE:.0f} mm)", 57 * INCH, place.DEFAULT_CENTRE),
    ("studs", "spacing"): ("16 in, or 600 mm", (16 * INCH, 600), tuple(walling.STUD_SPACING.values())),
    ("studs", "width"): ("38 mm (1 1/2 in)", 38, walling.STUD_WIDTH),
    ("fixing", "diameter"): ("1.8 mm", 1.8, Fixing().diameter),
    ("fixing", "nails"): ("1", 1, Fixing().nails),
    ("mat", "overlap"): ("1/4 in (6.35 mm)", 0.25 * INCH, frame_sizes.MAT_OVERLAP),
    ("moulding", "rabbet"): ("1/4 in (6.35 mm)", 0.25 * INCH, frame_sizes.RABBET),
    ("moulding", "allowance"): ("1/8 in (3.175 mm)", 0.125 * INCH, frame_sizes.ALLOWANCE),
    ("part", "thickness"): (
        "glass and acrylic 2 mm, foam board 5 mm, mat board 1.4 mm, hardboard and mdf 3 mm",
        {"glass": 2, "acrylic": 2, "foam board": 5, "mat board": 1.4, "hardboard": 3, "mdf": 3},
        weights.USUAL,
    ),
    ("paper", "size"): (
        "letter in a job in inches, else a4",
        {"in": "letter", "cm": "a4", "mm": "a4"},
        paper_sizes.USUAL_SIZES,
    ),
    ("paper", "margin"): ("7 mm, at the bottom 13 mm", (7, 7, 13, 7), paper_sizes.DEFAULT_MARGIN),
    ("paper", "overlap"): ("12 mm", 12, paper_sizes.DEFAULT_OVERLAP),
    **{
        ("margin", side): (f"{mm:g} mm", mm, mm)
        for side, mm in zip(("top", "right", "bottom", "left"), paper_sizes.DEFAULT_MARGIN, strict=True)
    },
    ("accuracy", "scale"): ("0.3; a plotter is taken to be 0.1", (0.3, 0.1), (accuracy.SCALE, accuracy.WIDE_SCALE)),
    **{
        ("accuracy", name): (f"{value:g}", value, value)
        for name in ("reading", "match", "moisture_along", "moisture_across", "humidity", "drop", "nailing", "placing")
        for value in [getattr(accuracy.Accuracy(), name)]
    },
}


def test_what_is_taken_where_a_field_is_left_out_is_what_is_used():
    """Every number that the reference gives as usual is in the table above."""
    told = {
        place for place, field in FIELDS.items() if any(map(str.isdigit, field.words.usual)) and place[1] != "clear"
    }
    assert told == set(USUAL)
    for (chapter, name), (words, value, used) in USUAL.items():
        assert FIELDS[chapter, name].words.usual.startswith(words) or words in FIELDS[chapter, name].words.usual
        assert value == used


def test_limits_that_are_said_are_those_that_are_held():
    said = {name: field.words.limits for (_, name), field in FIELDS.items() if field.words.limits}
    assert len(said) > 14
    for limits in said.values():
        numbers = [float(number) for number in re.findall(r"\d+", limits.expected)]
        if numbers:
            least, *most = numbers
            assert (limits.least, *([limits.most] if most else [])) == (least, *most) or limits.hold(least)
    assert "10 to 40 mm" in reference("overlap") and "0 to 5 per cent" in reference("scale")


@pytest.mark.parametrize(
    ("limits", "inside", "outside"),
    [
        (Limits(least=1, expected="1 or more"), (1, 1.5, 9e9), (0.999, -1, float("nan"), float("inf"))),
        (Limits(least=0, most=20, above=True, expected=""), (1e-9, 20), (0, 20.1)),
        (Limits(least=0, most=90, under=True, expected=""), (0, 89.9), (90, -1e-9)),
    ],
)
def test_limits(limits, inside, outside):
    assert all(map(limits.hold, inside)) and not any(map(limits.hold, outside))


@pytest.mark.parametrize(
    "asked, words",
    [
        (("job", "hangr"), ("'hangr'", "did you mean 'hanger'?")),
        (("job", "qqq"), ("'qqq'", "tables: job, wall")),
        (("templat",), ("'templat'", "did you mean 'template'?")),
        (("wall",), ("'wall'", "templates-gen help job wall")),
        (("qqq",), ("'qqq'", "a command, a text, or job", "known: job, ")),
        (("printer", "pag"), ("'pag'", "did you mean 'page'?")),
        (("check", "more"), ("'more'", "nothing more")),
    ],
)
def test_a_wrong_name_gets_the_nearest(asked, words):
    ran = run("help", *asked)
    assert (ran.code, ran.out) == (2, "")
    assert [word for word in words if word not in " ".join(ran.err.split())] == []


@pytest.mark.parametrize("command", ["template", "printer", "printer page", "help"])
def test_help_on_a_command_is_its_help(command):
    assert run("help", *command.split()).out == run(*command.split(), "--help").out


def test_help_alone_is_the_help_of_the_program_and_where_the_job_file_is_told_of():
    ran = run("help")
    assert ran.code == 0
    assert ran.out.startswith(run("--help").out.rstrip()) and "templates-gen help job" in ran.out.splitlines()[-1]
