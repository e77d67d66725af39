"""Paper from a roll, and a bound on the number of sheets: names, lengths, and what would have to give.

That the pages of a roll show what they must is tested beside those in one piece.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import InputError
from templates_gen.base.record import replace
from templates_gen.documents.fewer_sheets import too_many
from templates_gen.job.paper_sizes import roll_width
from templates_gen.job.reading.building import read_job
from templates_gen.tolerance.holding import plan_sheets
from tests.jobs import SAMPLES, frame, group, job, paper
from tests.made import made, roll, twelve
from tests.running import MINIMAL, run

POINT = 25.4 / 72  # mm; ISO 32000-1, 8.3.2.3, and the international inch of 1959


@pytest.mark.parametrize(
    ("name", "width"),
    # inches of 25.4 mm (1959), worked out by hand here
    [("roll 24 in", 609.6), ("Roll 36 in", 914.4), ('roll 42"', 1066.8), ("roll 610 mm", 610.0), ("roll 61 cm", 610.0)],
)
def test_a_roll_is_known_by_its_width(name: str, width: float) -> None:
    assert roll_width(name, "paper, size") == pytest.approx(width)


@pytest.mark.parametrize("name", ["roll", "roll 24", "roll of paper", "roll 24 furlongs", "roll 0 mm"])
def test_a_roll_without_a_width_and_its_unit_is_refused_with_examples(name: str) -> None:
    with pytest.raises(InputError, match="roll 24 in") as raised:
        roll_width(name, "paper, size")
    assert raised.value.where == "paper, size"


@pytest.mark.parametrize("name", ["roll 60 mm", "roll 6 m"])
def test_a_roll_too_narrow_or_too_wide_for_a_page_is_refused(name: str) -> None:
    """The limits are 80 mm and 5000 mm, as for any sheet; our own design."""
    with pytest.raises(InputError, match="expected sides of 80 to 5000 mm"):
        roll_width(name, "paper, size")


def test_other_papers_are_no_rolls() -> None:
    assert roll_width("a4", "paper, size") is None and roll_width("letter", "paper, size") is None


@pytest.mark.parametrize(("name", "width"), [("roll 610", 610.0), ("roll 24 in", 609.6), ("long roll", 610.0)])
def test_one_side_of_every_page_is_the_rolls_width(name: str, width: float) -> None:
    sides = sorted((made(name).sheets.page.width, made(name).sheets.page.height))
    assert int(width / POINT + 1e-6) in sides and max(sides) * POINT <= 5000.0


@pytest.mark.parametrize("name", ["roll 610", "roll 24 in", "long roll"])
def test_no_shorter_pages_would_do_and_no_longer_ones_do_with_fewer(name: str) -> None:
    done = made(name)
    plan, used, count = done.plan, done.sheets.paper, len(done.sheets.sheets)
    assert count > 1
    for change, fewer_or_more in ((-POINT, "more"), (5000.0 - used.height, "as many")):
        sheet = replace(used, kind="sheets", height=used.height + change)
        found = len(plan_sheets(plan, sheet).sheets)
        assert found > count if fewer_or_more == "more" else found == count


def test_a_small_group_takes_a_short_piece_of_a_roll() -> None:
    """A frame 400 mm wide and 500 mm high on 610 mm of roll: one piece, about as long as frame, rulers and margins,
    500 + 30 mm at least, and less than 600 mm."""
    each = job(frame("A", 400, 500, 80), group=group((("A",),)), paper=roll(610.0))
    sheets = plan_sheets(plan_wall(each), each.paper)
    assert len(sheets.sheets) == 1
    assert 430.0 < min(sheets.page.width, sheets.page.height) * POINT < 600.0


def test_a_roll_in_the_job_file_is_as_good_as_one_in_the_command(small: Path) -> None:
    (small / "file.toml").write_text(MINIMAL + '\n[paper]\nsize = "roll 24 in"\n')
    assert run("template", "file.toml").code == 0
    assert run("template", "job.toml", "--paper", "roll 24 in").code == 0
    one, two = (read_job(small / "file.toml").paper, read_job(small / "job.toml").paper)
    assert (one.kind, two.kind) == ("roll", "sheets")
    assert len((small / "file.pdf").read_bytes()) == pytest.approx(len((small / "job.pdf").read_bytes()), rel=0.05)
    assert (small / "file-first-pages.pdf").exists() and (small / "job-first-pages.pdf").exists()


@pytest.mark.parametrize("where", ["file", "command"])
def test_an_unknown_roll_is_refused_with_examples(where: str, small: Path) -> None:
    if where == "file":
        (small / "job.toml").write_text(MINIMAL + '\n[paper]\nsize = "roll 24"\n')
    ran = run("template", "job.toml", *(["--paper", "roll 24"] if where == "command" else []))
    assert ran.code == 2 and "roll 24 in" in ran.err and "roll 914" in ran.err and not list(small.glob("*.pdf"))


def test_a_job_within_the_bound_is_made(small: Path) -> None:
    ran = run("template", "job.toml", "--sheets-at-most", "9", "-o", "out.pdf")
    assert ran.code == 0 and (small / "out.pdf").exists()


def test_a_job_beyond_the_bound_is_refused_and_nothing_is_written(tmp_path: Path) -> None:
    out, report = tmp_path / "out.pdf", tmp_path / "report.json"
    ran = run("template", SAMPLES / "fern-prints.toml", "--sheets-at-most", "6", "-o", out, "--report", report)
    assert (ran.code, ran.out) == (1, "")
    needed = len(made("fern-prints").sheets.sheets)
    assert f"needs {needed} sheets of letter paper, but at most 6 may be used; this would do:" in ran.err
    assert list(tmp_path.iterdir()) == []


def test_every_line_of_the_answer_is_true(tmp_path: Path) -> None:
    """Each names options that, given to the command, take as many sheets as it says, and no more than the bound."""
    ran = run("template", SAMPLES / "fern-prints.toml", "--sheets-at-most", "8", "-o", tmp_path / "out.pdf")
    offers = re.findall(r"^  (--.*?)  +(\d+) sheets?", ran.err, re.M)
    assert len(offers) >= 4
    for options, count in offers:
        words = [part.strip('"') for part in re.findall(r'"[^"]*"|\S+', options)]
        again = run("template", SAMPLES / "fern-prints.toml", *words, "-o", tmp_path / "out.pdf")
        assert again.code == 0 and re.search(rf": {count} sheets? ", again.out), options
        assert int(count) <= 8


def test_nothing_is_said_where_the_bound_is_kept() -> None:
    each = twelve(paper("a4"))
    plan = plan_wall(each)
    needed = len(plan_sheets(plan, each.paper).sheets)
    assert too_many(plan, needed, needed) == [] and too_many(plan, needed, needed - 1) != []


def test_the_fewest_are_named_where_no_way_is_few_enough() -> None:
    """The frieze of 9.2 m takes two pages of at most 5 m; worked out by hand here."""
    first, *ways = too_many(made("two panels").plan, 2, 1)
    assert "nothing gets by with so few" in first and len(ways) == 1
