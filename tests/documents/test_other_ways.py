"""What every cover takes, in the report, on the first page and in a line each beside the other ways."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.documents.making import on_paper
from templates_gen.documents.other_ways import FAR, HEADING, Way, closer_words, other_ways, way_lines
from templates_gen.drawing.items import Text
from templates_gen.tiling.demand import nail_box
from templates_gen.tiling.planning import linked_of
from templates_gen.tolerance.effort import effort
from templates_gen.tolerance.expected import expected_error
from templates_gen.tolerance.holding import plan_sheets
from tests.jobs import SAMPLES, many
from tests.made import made
from tests.running import run

NAME = "twelve, letter, linked"


def test_the_report_has_every_cut_and_the_minutes() -> None:
    """10 s a sheet, 20 s a join, 15 s a side cut: our own estimate."""
    done = made(NAME)
    report, sheets = done.report, {sheet.name: sheet for sheet in done.sheets.sheets}
    named = {told["page"]: sheets[told["name"]] for told in report["sheets"]}
    seconds = 10 * len(report["sheets"]) + 20 * len(report["joins"]) + 15 * len(report["cuts"])
    assert report["minutes"] == pytest.approx(seconds / 60)
    over = {(join["over"], "left" if join["line"][0] == join["line"][2] else "foot") for join in report["joins"]}
    assert {(cut["page"], cut["side"]) for cut in report["cuts"]} == over
    for cut in report["cuts"]:
        window = named[cut["page"]].window
        assert cut["length"] == (window.height if cut["side"] == "left" else window.width)


@pytest.mark.parametrize("name", ["fern-prints", "twelve, a4, nails", "twelve, letter, all", "roll 24 in", "one piece"])
def test_every_report_has_its_joins_its_cuts_its_pieces_and_its_minutes(name: str) -> None:
    """Worked out from the sheets and joins of the same report: 10 s a sheet, 20 s a join, 15 s a side that is cut and
    120 s for each piece after the first: our own estimate."""
    report = made(name).report
    cut = {(join["over"], join["line"][0] == join["line"][2]) for join in report["joins"]}
    assert {(told["page"], told["side"] == "left") for told in report["cuts"]} == cut
    seconds = 10 * len(report["sheets"]) + 20 * len(report["joins"]) + 15 * len(cut) + 120 * (report["pieces"] - 1)
    assert report["minutes"] == pytest.approx(seconds / 60)
    assert report["pieces"] == pieces([sheet["page"] for sheet in report["sheets"]], report["joins"])


def pieces(pages: list[int], joins: list[dict[str, Any]]) -> int:
    """How many pieces the pages hang in once they are taped: those that joins lead to from each other are one."""
    piece = {page: page for page in pages}
    for join in joins:
        one, two = piece[join["over"]], piece[join["under"]]
        piece = {page: one if of == two else of for page, of in piece.items()}
    return len(set(piece.values()))


def test_sheets_that_nobody_cuts_have_no_cuts() -> None:
    report = made("uncut a4").report
    assert report["cuts"] == [] and len(report["joins"]) > 10
    assert report["minutes"] == pytest.approx((10 * len(report["sheets"]) + 20 * len(report["joins"])) / 60)


@pytest.mark.parametrize(
    ("name", "ways"),
    [
        ("twelve, letter, linked", ["marks", "nails", "one piece"]),
        ("twelve, a4, marks", ["linked", "nails", "one piece"]),
        ("twelve, a4, nails", ["linked", "marks", "one piece"]),
        ("twelve, letter, all", ["linked", "marks", "nails", "one piece"]),
        ("roll 24 in", ["nails", "one piece"]),
        ("one piece", ["linked", "marks", "nails"]),
    ],
)
def test_the_other_ways_are_a_line_each(name: str, ways: list[str]) -> None:
    plan = made(name).plan
    found = other_ways(plan)
    lines = list(way_lines(found, plan.job.unit))
    assert [line.split(":")[0] for line in lines] == [way.name for way in found] == ways
    assert max(map(len, lines)) <= 78  # with two spaces before it, a line of a terminal of 80 letters


@pytest.mark.parametrize("name", ["fern-prints", "twelve, letter, all", "lock-keepers"])
def test_the_options_of_a_way_make_what_it_says(name: str) -> None:
    """Of what is searched for it is rough: two fifths more or less at most; the others take just that."""
    plan = made(name).plan
    for way in other_ways(plan):
        cover = way.options.removeprefix("--cover ")
        if way.shop:
            continue
        job = on_paper(plan.job, cover=cover)
        sheets = plan_sheets(replace(plan, job=job), job.paper)
        done = effort(sheets)
        assert bool(way.rough) == (cover in ("linked", "marks"))
        assert 0.6 <= done.minutes / way.effort.minutes <= 1.4 if way.rough else done == way.effort
        if not way.rough:
            error = expected_error(replace(plan, job=job), sheets)
            assert error and way.off == error.worst.error
            assert way.words("mm").endswith(f"; {error.worst.error:.1f} mm off")  # as `closer_words` says


@pytest.mark.parametrize("cover", ["marks", "nails"])
def test_linked_paper_of_three_frames_is_foretold_as_it_is_made(cover: str) -> None:
    job = made("tram-tickets").job
    plan = plan_wall(on_paper(job, "a4", cover))
    (way,) = [way for way in other_ways(plan) if way.name == "linked"]
    linked = replace(plan, job=on_paper(job, "a4", "linked"))
    sheets = plan_sheets(linked, linked.job.paper)
    error = expected_error(linked, sheets)
    assert (way.effort, way.rough) == (effort(sheets), "")
    assert error and way.off == error.worst.error


def test_a_wall_that_comes_out_far_off_is_told_what_brings_it_closer() -> None:
    """Eighteen frames in three rows: by any taping some neighbours are more than a centimetre off."""
    job = many(18, across=6)
    plan = plan_wall(job)
    expected = expected_error(plan, plan_sheets(plan, job.paper))
    assert expected is not None and expected.worst.error > FAR
    first, *ways = closer_words(plan, expected)
    assert f"may come out {expected.worst.error:.1f} mm off each other" in first
    assert [way.split(",")[0] for way in ways] == ["loose pieces", "larger paper", "a print shop"]
    strips = {"size": "roll 1067 mm"}  # no usual roll is as wide as the group
    for way, options in zip(ways, ({"cover": "nails"}, {"size": "a3"}, strips), strict=True):
        other = replace(plan, job=on_paper(job, **options))
        sheets = plan_sheets(other, other.job.paper)
        error = expected_error(other, sheets)
        assert error is not None and error.worst.error < expected.worst.error
        assert f": {error.worst.error:.1f} mm (" in way
        assert (effort(sheets).words if len(sheets.sheets) > 1 else "1 page") in way


def test_a_way_that_shows_the_same_figure_is_not_said_to_bring_them_closer(monkeypatch: pytest.MonkeyPatch) -> None:
    done = made("twelve, a4, marks")
    expected = expected_error(done.plan, done.sheets)
    assert expected is not None
    error, taken = expected.worst.error, effort(done.sheets)
    shown = {"same": error - 1e-6, "nearer": error - 1.0, "not known": None}

    def offered(*_: object) -> list[Way]:
        return [Way(name, "--option", taken, off=off) for name, off in shown.items()]

    monkeypatch.setattr("templates_gen.documents.other_ways._closer", offered)
    monkeypatch.setattr("templates_gen.documents.other_ways.FAR", 0.0)
    first, *ways = closer_words(done.plan, expected)
    assert f"may come out {error:.1f} mm off" in first and [way.split(",")[0] for way in ways] == ["nearer"]


def test_paper_that_is_not_cut_is_told_what_cutting_brings() -> None:
    """Slanting lines over a blank margin meet worse than bars on a cut edge."""
    job = many(18, across=6)
    job = replace(job, paper=replace(job.paper, trim="none"))
    plan = plan_wall(job)
    expected = expected_error(plan, plan_sheets(plan, job.paper))
    assert expected is not None
    _, cut, *others = closer_words(plan, expected)
    assert cut.startswith("cutting the sheets, --trim cut: ") and len(others) == 3
    other = replace(plan, job=replace(job, paper=replace(job.paper, trim="cut")))
    better = expected_error(other, plan_sheets(other, other.job.paper))
    assert better is not None and f": {better.worst.error:.1f} mm (" in cut


def test_a_wall_that_comes_out_close_is_told_nothing() -> None:
    done = made("fern-prints")
    assert closer_words(done.plan, expected_error(done.plan, done.sheets)) == []
    assert closer_words(done.plan, None) == []


def test_the_command_names_them_before_its_last_line(tmp_path: Path) -> None:
    out = tmp_path / "out.pdf"
    ran = run("template", SAMPLES / "fern-prints.toml", "-o", out, "--report", tmp_path / "out.json")
    report = json.loads((tmp_path / "out.json").read_text(encoding="utf-8"))
    counts = [len(report[name]) for name in ("sheets", "joins", "cuts")]
    said = "{} sheets of letter paper, {} joins, {} cuts, about {:.0f} min".format(*counts, report["minutes"])
    assert (ran.code, ran.out) == (0, f"{out}: {said}\n")
    lines = ran.err.splitlines()
    at = lines.index(HEADING)
    assert [line.split(":")[0].strip() for line in lines[at + 1 : at + 4]] == ["linked", "nails", "one piece"]


def test_the_first_page_says_what_there_is_to_tape() -> None:
    for name in ("fern-prints", "twelve, a4, nails", "uncut a4"):
        done = made(name)
        texts = " ".join(item.text for item in done.template.pages[0].page_items if isinstance(item, Text))
        assert f"To tape it: {effort(done.sheets).work}, by our own estimate." in texts


def test_linked_paper_on_a_roll_is_refused_with_what_to_do(tmp_path: Path) -> None:
    options = ["--cover", "linked", "--paper", "roll 24 in", "-o", tmp_path / "out.pdf"]
    ran = run("template", SAMPLES / "fern-prints.toml", *options)
    assert ran.code == 2 and "--cover marks" in ran.err and "--paper letter" in ran.err
    assert list(tmp_path.iterdir()) == []


def test_linked_paper_is_named_where_it_would_do(tmp_path: Path) -> None:
    ran = run("template", SAMPLES / "fern-prints.toml", "--sheets-at-most", "12", "-o", tmp_path / "out.pdf")
    (line,) = [line for line in ran.err.splitlines() if "--cover linked" in line]
    plan = made("fern-prints").plan
    job = on_paper(plan.job, cover="linked")
    assert f" {len(plan_sheets(replace(plan, job=job), job.paper).sheets)} sheets" in line


def test_a_wall_of_very_many_frames_is_not_planned_anew(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("templates_gen.documents.other_ways.MOST_FRAMES", 4)
    ran = run("template", SAMPLES / "fern-prints.toml", "-o", tmp_path / "out.pdf")
    assert ran.code == 0 and "The other ways are not worked out for more than" in ran.err


def test_check_says_it_too(folder: Path) -> None:
    """Eighteen frames of 48 by 54 cm in three rows."""
    frames = "".join(f'[[frame]]\nid = "{at}"\nwidth = 480\nheight = 540\ndrop = 60\n' for at in range(18))
    rows = [[f"{at}" for at in range(row, row + 6)] for row in (0, 6, 12)]
    group = f'[group]\narrangement = "rows"\nrows = {json.dumps(rows)}\ngap = 60\n'
    (folder / "wide.toml").write_text(f'[job]\nunit = "mm"\n[wall]\nwidth = 4000\nheight = 2600\n{group}{frames}')
    ran = run("check", "wide.toml")
    said = " ".join(ran.out.split())
    assert ran.code == 0 and "What brings them closer: loose pieces, --cover nails: " in said
    assert "a print shop, in strips off a roll, --paper " in said and "warn " in ran.out
    assert ran.out.splitlines()[-1].startswith("found: 1 warn")
    ways = [line for line in ran.out.splitlines() if line.lstrip().startswith(("loose pieces", "a print shop"))]
    assert len(ways) == 2 and all(line.startswith("      ") for line in ways)  # under the line that they belong to


@pytest.mark.parametrize("name", ["twelve, a4, marks", "uncut a4", "fern-prints"])
def test_linked_paper_is_what_is_left_of_the_sheets_of_every_mark(name: str) -> None:
    """It holds every nail and the target whole, hangs in one piece, and has no sheet that the template has not."""
    done = made(name)
    linked = linked_of(done.plan, done.sheets)
    left = {sheet.cell for sheet in linked.sheets}
    assert left < {sheet.cell for sheet in done.sheets.sheets} and len(linked.sheets) == len(left)
    boxes = [nail_box(nail.x, nail.y) for nail in done.plan.nails]
    boxes.append(Rect.about(done.plan.centre_line, done.plan.level_line, 30.0, 30.0))
    assert all(any(sheet.inner.holds(box) for sheet in linked.sheets) for box in boxes)
    assert effort(linked).pieces == 1
    (told,) = [way for way in other_ways(done.plan, sheets=done.sheets) if way.name == "linked"]
    cut = done.plan.job.paper.trim == "cut"
    assert told.words("mm").startswith(("about ", "at most about ")[not cut :])
    assert told.effort == effort(linked) or cut


@pytest.mark.parametrize(("times", "begins"), [(1.5, "at most about "), (1.3, "about ")])
def test_linked_paper_that_is_to_be_laid_otherwise_takes_at_most_what_every_mark_does(
    times: float, begins: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where what is left of the sheets errs far more than they do, the search lays others, and these may be more."""
    done = made("twelve, a4, marks")
    off = "templates_gen.documents.other_ways.farthest_off"
    monkeypatch.setattr(off, lambda _, sheets: 8.0 if sheets is done.sheets else 8.0 * times)
    (told,) = [way for way in other_ways(done.plan, sheets=done.sheets) if way.name == "linked"]
    assert told.words("mm").startswith(begins)
    assert (told.effort == effort(done.sheets)) == (times > 1.4)
