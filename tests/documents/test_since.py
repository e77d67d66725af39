"""Old paper for a job that has changed: kept sheets show what the new plan has there, and the others are printed."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from pathlib import Path
from typing import Any

import numpy as np
import pypdf
import pypdfium2
import pytest
from hypothesis import Phase, assume, given, settings
from hypothesis import strategies as st

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.record import replace
from templates_gen.documents.old_paper import old_paper, sheets_file, sheets_on
from templates_gen.documents.template import draw_template
from templates_gen.documents.updating import updated
from templates_gen.drawing.items import Item, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.writing import write_pdf
from templates_gen.job.model import Frame, Hanger, Job, Spot
from templates_gen.tiling.demand import nail_box
from templates_gen.tiling.kept import unserved
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.effort import cuts, effort
from templates_gen.tolerance.expected import expected_error
from templates_gen.tolerance.holding import plan_sheets
from tests.jobs import frame, group, job, paper
from tests.made import CROWDED, LINKED, SAMPLE_NAMES, UNCUT, made, twelve
from tests.running import begun, run

LETTERING = Lettering()
NO_SHRINKING = (Phase.explicit, Phase.reuse, Phase.generate)
"""A case takes a second, and shrinking it minutes."""
DPI = 50


def update(old: Job, new: Job) -> tuple[Plan, SheetPlan, Plan, SheetPlan | str]:
    """The old plan and sheets, and the new plan with what becomes of the old paper."""
    one, two = plan_wall(old), plan_wall(new)
    sheets = plan_sheets(one, old.paper)
    kept = old_paper(sheets_file(one, sheets)[1], "old.pdf")
    return one, sheets, two, updated(one, two, kept, None, LETTERING)


def pictures(plan: Plan, sheets: SheetPlan) -> dict[str, Any]:
    """Every sheet of a template as it is written, in pixels, by its name; without its title, for how many pages come
    before the sheets may change."""
    every = replace(sheets, printed=None, gone=())
    drawn = draw_template(plan, (), every, expected_error(plan, every), LETTERING, bare=True)
    drawn = replace(drawn, pages=tuple(replace(page, page_items=_untitled(page.page_items)) for page in drawn.pages))
    file = pypdfium2.PdfDocument(write_pdf(drawn, LETTERING))
    return {
        page.label: file[at].render(scale=DPI / 72, grayscale=True).to_numpy() for at, page in enumerate(drawn.pages)
    }


def _untitled(items: Iterable[Item]) -> tuple[Item, ...]:
    return tuple(item for item in items if not (isinstance(item, Text) and item.text.startswith("sheet ")))


def apart(one: Any, two: Any) -> int:
    """How many pixels differ by more than half of black."""
    return int((np.abs(one.astype(int) - two.astype(int)) > 128).sum())


def four(**more: Any) -> tuple[Frame, ...]:
    return (
        frame("A", 300, 400, 60, title="Moonwort"), frame("B", 260, 340, 50), frame("C", 260, 340, 56, title="Bracken"),
        frame("D", 420, 300, 80, hanger=Hanger(kind="rings", left=40.0, right=40.0, drop_left=70.0, drop_right=72.0)),
    )  # fmt: skip


def placed(frames: tuple[Frame, ...], order: str = "ABCD", **more: Any) -> Job:
    """The frames side by side at places that are given, so that none moves when another goes."""
    places = dict(zip("ABCD", (-700.0, -250.0, 150.0, 640.0), strict=True))
    spots = tuple((one.id, Spot(point="centre", x=places[at], y=30.0)) for one, at in zip(frames, order, strict=False))
    return job(*frames, group=group((tuple(one.id for one in frames),), "placed", spots=spots), **more)


CHANGES = ("drop", "swap", "title", "hanger", "narrower", "higher", "unmeasured")


def changed(frames: tuple[Frame, ...], what: str, at: int, by: float) -> tuple[tuple[Frame, ...], str]:
    """The frames with one change, and the order that they hang in."""
    one = frames[at]
    if what == "swap":
        return (frames[0], frames[2], frames[1], frames[3]), "ABCD"
    values: dict[str, Any] = {
        "drop": {"drop": (one.drop or 60.0) + by},
        "title": {"title": f"Fern {by:.0f}"},
        "hanger": {"hanger": Hanger(kind="keyholes", left=50.0 + by, right=50.0)},
        "narrower": {"width": one.width - by},
        "higher": {"height": one.height + by},
        "unmeasured": {"drop": None},
    }
    return tuple(replace(each, **values[what]) if each is one else each for each in frames), "ABCD"


@settings(max_examples=7, deadline=None, phases=NO_SHRINKING)
@given(
    what=st.sampled_from(CHANGES), at=st.integers(0, 3), by=st.floats(1.0, 60.0),
    cover=st.sampled_from(["marks", "linked", "all", "nails"]), trim=st.sampled_from(["cut", "cut", "none"]),
)  # fmt: skip
def test_kept_sheets_show_exactly_what_the_new_plan_has_there(
    what: str, at: int, by: float, cover: str, trim: str
) -> None:
    """In the pixels of the two written files: what is kept is the same, what is printed is not, and every nail of the
    new plan lies whole on one sheet."""
    on = paper("a4", cover=cover, trim=trim)
    frames, order = changed(four(), what, at, by)
    one, old, two, found = update(placed(four(), paper=on), placed(frames, order, paper=on))
    assume(not isinstance(found, str))
    assert isinstance(found, SheetPlan) and found.printed is not None
    before, after = pictures(one, old), pictures(two, found)
    assert list(before) == list(after)
    new = {*found.printed, *found.gone}
    # half a pixel's worth of rounding, and a place to a thousandth of a millimetre
    assert {name for name in after if apart(before[name], after[name]) > 0} <= new
    for nail in two.nails:
        assert sum(sheet.inner.holds(nail_box(nail.x, nail.y)) for sheet in found.sheets) == 1
    for sheet in found.sheets:
        if sheet.name in found.gone:
            assert not any(nail_box(nail.x, nail.y).overlaps(sheet.cell) for nail in two.nails)
    if what in ("drop", "hanger"):
        moved = [nail for nail in two.nails if all((nail.x, nail.y) != (was.x, was.y) for was in one.nails)]
        holders = {sheet.name for sheet in found.sheets for nail in moved if sheet.inner.has_point(nail.x, nail.y)}
        assert holders <= set(found.printed)


@settings(max_examples=4, deadline=None, phases=NO_SHRINKING)
@given(at=st.integers(0, 11), by=st.floats(1.0, 8.0))
def test_a_drop_that_changes_a_little_takes_a_few_sheets(at: int, by: float) -> None:
    old = twelve(paper("a4"))
    frames = tuple(
        replace(one, drop=one.drop + by) if place == at and one.drop is not None else one
        for place, one in enumerate(old.frames)
    )
    one, sheets, two, found = update(old, replace(old, frames=frames))
    assume(not isinstance(found, str))
    assert isinstance(found, SheetPlan) and found.printed is not None
    assert len(found.printed) <= len(sheets.sheets) / 2 and found.gone == ()
    if [nail.y for nail in one.nails] != [nail.y for nail in two.nails]:
        assert 1 <= len(found.printed) and effort(found).minutes < effort(sheets).minutes


def test_paper_of_a_job_that_is_the_same_serves_as_it_is() -> None:
    for cover, trim in (("marks", "cut"), ("linked", "cut"), ("all", "none"), ("nails", "cut")):
        same = placed(four(), paper=paper("letter", cover=cover, trim=trim), unit="in")
        found = update(same, same)[3]
        assert isinstance(found, SheetPlan) and (found.printed, found.gone) == ((), ())


@pytest.mark.parametrize("cover, asked", [("marks", "linked"), ("linked", "marks"), ("nails", "all")])
def test_paper_of_another_cover_than_its_job_says_serves_as_it_is(cover: str, asked: str) -> None:
    """As when the cover was asked for at the command line: the job inside the template says another."""
    told = placed(four(), paper=paper("letter", cover=cover), unit="in")
    plan = plan_wall(replace(told, paper=replace(told.paper, cover=asked)))
    kept = old_paper(sheets_file(plan, plan_sheets(plan, plan.job.paper))[1], "old.pdf")
    found = updated(plan_wall(told), plan, kept, None, LETTERING)
    assert isinstance(found, SheetPlan) and (found.printed, found.gone) == ((), ())


@pytest.mark.parametrize("name", [name for name in (*SAMPLE_NAMES, *UNCUT, *CROWDED, *LINKED)])
def test_every_template_serves_its_own_job(name: str) -> None:
    """The account of its sheets, read back, is of the same sheets, and they show all that they have to."""
    done = made(name)
    old = old_paper(sheets_file(done.plan, done.sheets)[1], "old.pdf")
    asked, again = sheets_on(old, done.plan, done.job.paper, None)
    assert unserved(asked, again) == ""
    for one, two in zip(done.sheets.sheets, again.sheets, strict=True):
        assert (one.name, one.strip, one.page) == (two.name, two.strip, two.page)
        assert one.cell.grown(1e-6).holds(two.cell) and two.cell.grown(1e-6).holds(one.cell)
    assert {(join.over, join.under) for join in done.sheets.joins} == {(join.over, join.under) for join in again.joins}


def test_a_group_that_hangs_higher_has_other_heights_on_every_nails_sheet() -> None:
    """All that moves is how high the group hangs, and with it every height above the floor that is written."""
    old = placed(four())
    new = replace(old, group=replace(old.group, height=replace(old.group.height, at=1500.0)))
    found = update(old, new)[3]
    assert isinstance(found, SheetPlan) and found.printed is not None
    two = plan_wall(new)
    holding = {s.name for s in found.sheets for nail in two.nails if s.inner.holds(nail_box(nail.x, nail.y))}
    assert holding <= set(found.printed)


def test_a_frame_that_goes_leaves_sheets_that_come_off() -> None:
    old = placed(four())
    found = update(old, placed(four()[:3]))[3]
    assert isinstance(found, SheetPlan) and found.gone
    for sheet in found.sheets:
        if sheet.name in found.gone:
            assert sheet.cell.x0 > 300.0  # right of frames A to C, where D was
    assert not set(found.gone) & set(found.printed or ())


def test_a_nail_on_a_trim_line_or_beside_the_paper_takes_all_sheets_anew() -> None:
    old = placed(four())
    wider = (*four()[:3], replace(four()[3], width=900.0))
    why = update(old, placed(wider))[3]
    assert isinstance(why, str) and "old paper" in why
    one, sheets, _, _ = update(old, old)
    level = [join for join in sheets.joins if not join.upright]
    single = [(hung, *hung.nails) for hung in one.frames if len(hung.nails) == 1]
    hung, low = next(
        (hung, join.y0) for hung, nail in single for join in level
        if join.x0 < nail.x < join.x1 and hung.rect.y0 < join.y0 < hung.rect.y1
    )  # fmt: skip
    onto = tuple(replace(each, drop=hung.rect.y1 - low) if each.id == hung.frame.id else each for each in four())
    why = update(old, placed(onto))[3]
    assert why == "a nail or the target would lie on a trim line or beside the old paper"


def test_a_new_sheet_is_cut_on_every_side_on_which_it_meets_another() -> None:
    """Worked out from the joins: 10 s a sheet, 20 s a join, 15 s a side; our own estimate."""
    sheets = made("fern-prints").sheets
    name = sheets.sheets[5].name
    one = replace(sheets, printed=(name,))
    met = [join for join in sheets.joins if name in (join.over, join.under)]
    sides = {(join.upright, join.over == name) for join in met}
    done = effort(one)
    assert (done.sheets, done.joins, done.cuts, done.pieces) == (1, len(met), len(sides), 1)
    assert done.minutes == pytest.approx((10 + 20 * len(met) + 15 * len(sides)) / 60)
    names = {(True, True): "left", (False, True): "foot", (True, False): "right", (False, False): "head"}
    assert {cut.side for cut in cuts(one)} == {names[side] for side in sides}


# The command


def with_template(folder: Path, steps: str) -> Path:
    """A folder with the fern prints and their template."""

    def made_there() -> None:
        assert run("start", "--sample", "fern-prints", "ferns.toml").code == 0
        assert run("template", "ferns.toml").code == 0

    begun(folder, f"ferns, {steps}", made_there)
    return folder


@pytest.fixture
def ferns(folder: Path, sheets_searched_as_usual: None) -> Path:
    """The fern prints with the sheets that one gets; C's drop has been measured anew since."""
    return with_template(folder, "as usual")


@pytest.fixture
def any_ferns(folder: Path) -> Path:
    """The same with any sheets, where it is what is said of old paper that matters."""
    return with_template(folder, "little")


def measured(folder: Path) -> None:
    text = (folder / "ferns.toml").read_text(encoding="utf-8")
    assert text.count('drop = "3"\n') == 1
    (folder / "ferns.toml").write_text(text.replace('drop = "3"\n', 'drop = "2 7/8"\n'), encoding="utf-8")


def test_the_command_prints_only_what_the_old_paper_lacks(ferns: Path) -> None:
    measured(ferns)
    ran = run("template", "ferns.toml", "--since", "ferns.pdf", "--report", "update.json")
    assert ran.code == 0
    last = ran.out.splitlines()[-1]
    report = json.loads((ferns / "update.json").read_text(encoding="utf-8"))
    count = len(report["sheets"])
    keeps = f" paper ({count - 1} old ones stay), "
    assert last.startswith(f"ferns-update.pdf: 1 sheet of letter{keeps}")
    (new,) = [sheet for sheet in report["sheets"] if sheet["page"] is not None]
    reader = pypdf.PdfReader(ferns / "ferns-update.pdf")
    assert new["page"] == len(reader.pages) and f"sheet {new['name']} " in reader.pages[-1].extract_text()
    assert f"page {new['page']} of {len(reader.pages)}" in reader.pages[-1].extract_text()  # of this file
    (nail,) = [nail for nail in report["nails"] if nail["name"] == "C"]
    assert nail["pages"] == [new["page"]]
    first = " ".join(reader.pages[0].extract_text().split())
    assert (
        f"Of the template's {count} sheets, 1 comes anew" in first
        and f"Sheet {new['name']}: cut along every line" in first
    )
    assert "thick: printed anew" in first
    everywhere = " ".join(" ".join(page.extract_text().split()) for page in reader.pages)
    assert "Cut the new slits." in everywhere and "release" not in everywhere  # what is cut has one name on all paper
    assert all(each["page"] == new["page"] for each in report["cuts"])


def test_the_updated_paper_can_be_updated_again(ferns: Path) -> None:
    measured(ferns)
    assert run("template", "ferns.toml", "--since", "ferns.pdf").code == 0
    ran = run("template", "ferns.toml", "--since", "ferns-update.pdf", "-o", "next.pdf")
    assert (ran.code, ran.out) == (0, "ferns-update.pdf: its paper serves as it is, no sheet changes\n")
    assert not (ferns / "next.pdf").exists()
    again = (ferns / "ferns-update.pdf").read_bytes()
    assert run("template", "ferns.toml", "--since", "ferns.pdf").code == 0
    assert (ferns / "ferns-update.pdf").read_bytes() == again


def test_printing_all_anew_is_named_where_it_takes_less(ferns: Path) -> None:
    text = (ferns / "ferns.toml").read_text(encoding="utf-8")
    (ferns / "ferns.toml").write_text(text.replace('title = "Hart', 'title = "The Hart'), encoding="utf-8")
    few = run("template", "ferns.toml", "--since", "ferns.pdf")
    assert few.code == 0 and "Printing all anew" not in few.err
    (ferns / "wall.toml").write_text('[wall]\nwidth = "170 in"\nheight = "110 in"\n[group.height]\ncentre = "58 in"\n')
    moved = ("--wall", "wall.toml", "-o", "moved.pdf", "--report", "moved.json")
    ran = run("template", "ferns.toml", "--since", "ferns.pdf", *moved)
    report = json.loads((ferns / "moved.json").read_text(encoding="utf-8"))
    said = re.search(r"Printing all anew takes less: \d+ sheets, \d+ joins, about (\d+) min", " ".join(ran.err.split()))
    assert ran.code == 0 and said and int(said[1]) < report["minutes"]


@pytest.mark.parametrize(
    ("more", "words"),
    [
        (["--paper", "a4"], "is on letter paper, but a4 is asked for now add --paper letter, or leave"),
        (["--cover", "linked"], "has cover marks, but linked is asked for now"),
        (["--one-piece"], "found one piece, expected paper in sheets"),
        (["--only", "3"], "--since and --only take one job, and not both of them"),
        (["-o", "ferns.pdf"], "is a file that this command reads"),
    ],
)
def test_other_paper_cannot_be_taped_to_the_old(more: list[str], words: str, any_ferns: Path) -> None:
    before = (any_ferns / "ferns.pdf").read_bytes()
    ran = run("template", "ferns.toml", "--since", "ferns.pdf", *more)
    assert ran.code == 2 and words in " ".join(ran.err.split()), ran.err
    assert (any_ferns / "ferns.pdf").read_bytes() == before and not list(any_ferns.glob("*update*"))


def test_a_file_that_says_nothing_of_sheets_is_refused(any_ferns: Path) -> None:
    assert run("template", "ferns.toml", "--anonymous", "-o", "hidden.pdf").code == 0
    assert run("labels", "ferns.toml", "-o", "labels.pdf").code == 0
    (any_ferns / "text.pdf").write_text("no PDF")
    for name in ("hidden.pdf", "labels.pdf", "text.pdf", "no.pdf"):
        ran = run("template", "ferns.toml", "--since", name)
        assert ran.code == 2 and name in ran.err and "Traceback" not in ran.err


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"{}",
        b"[1]",
        b'{"format":1,"sheets":[["A"]]}',
        b'{"format":2}',
        b"\xff",
        b"[" * 10**6,
        b'{"format":1,"paper":{},"printer":null,"rows":1,"lying":1,"spine":0,"sheets":[["1",0,0,0,0,1'
        + b"0" * 400
        + b",1]]}",
    ],
)
def test_a_broken_account_of_sheets_is_refused(content: bytes) -> None:
    from templates_gen.base.errors import InputError

    with pytest.raises(InputError, match="leave --since out"):
        old_paper(content, "old.pdf")


def test_only_some_sheets_are_printed_as_they_were(ferns: Path) -> None:
    """Their pages draw what the template's own pages draw, operator by operator."""
    ran = run("template", "ferns.toml", "--only", "3,7-9", "--report", "only.json")
    assert ran.code == 0 and ran.out.startswith("ferns-sheets.pdf: 4 sheets of letter paper, ")
    assert "Sheets 3, 7, 8, 9: cut along every line" in ran.err and "over the old sheet of the same number" in " ".join(
        ran.err.split()
    )
    whole, some = pypdf.PdfReader(ferns / "ferns.pdf"), pypdf.PdfReader(ferns / "ferns-sheets.pdf")
    names = [sheet.name for sheet in made("fern-prints").sheets.sheets]
    wanted = [names[at - 1] for at in (3, 7, 8, 9)]
    assert some.page_labels == wanted
    by_label = dict(zip(whole.page_labels, whole.pages, strict=True))
    for label, page in zip(some.page_labels, some.pages, strict=True):
        assert page.extract_text() == by_label[label].extract_text()
    report = json.loads((ferns / "only.json").read_text(encoding="utf-8"))
    assert [sheet["name"] for sheet in report["sheets"] if sheet["page"]] == wanted


@pytest.mark.parametrize("asked", ["99", "0", "3-99", "3-7-9", "", "3,,4", "7-3", "x"])
def test_a_sheet_that_is_not_there_is_refused(asked: str, ferns: Path) -> None:
    ran = run("template", "ferns.toml", "--only", asked)
    assert ran.code == 2 and "--only" in ran.err and not (ferns / "ferns-sheets.pdf").exists()


def test_torn_sheets_of_a_job_that_has_changed_are_doubted(ferns: Path) -> None:
    assert "since" not in run("template", "ferns.toml", "--only", "3").err
    measured(ferns)
    assert "ferns.pdf was made before the job changed" in " ".join(
        run("template", "ferns.toml", "--only", "3").err.split()
    )


def test_torn_sheets_of_a_spreadsheet_that_has_changed_are_doubted_too(any_ferns: Path) -> None:
    assert run("start", "--sample", "tile-rubbings").code == run("template", "tile-rubbings.toml").code == 0
    assert "since" not in run("template", "tile-rubbings.toml", "--only", "1").err
    table = any_ferns / "tile-rubbings.csv"
    table.write_text(table.read_text(encoding="utf-8").replace("tile;18;", "tile;19;"), encoding="utf-8")
    assert "made before the job changed" in " ".join(run("template", "tile-rubbings.toml", "--only", "1").err.split())


def test_the_account_of_sheets_stays_inside_when_the_job_is_taken_out(ferns: Path) -> None:
    (ferns / "back").mkdir()
    ran = run("start", "--from", "ferns.pdf", "back/job.toml")
    assert ran.code == 0 and "left inside" not in ran.err
    assert [path.name for path in (ferns / "back").iterdir()] == ["job.toml"]


@pytest.mark.parametrize(("name", "found"), [("folder", "found a folder"), ("ferns.toml", "is not a PDF file")])
def test_what_is_no_older_template_is_said_of_the_option(name: str, found: str, any_ferns: Path) -> None:
    (any_ferns / "folder").mkdir()
    ran = run("template", str(any_ferns / "ferns.toml"), "--since", str(any_ferns / name))
    assert ran.code == 2
    assert re.search(rf"^error: --since (\S*/)?{name}: {found}", ran.err, re.MULTILINE)


def cells(report: Path) -> dict[str, list[float]]:
    return {sheet["name"]: sheet["cell"] for sheet in json.loads(report.read_text(encoding="utf-8"))["sheets"]}


def test_torn_sheets_without_their_template_are_said_to_be_laid_anew(ferns: Path) -> None:
    """Nothing was said: the job may have changed since, and a sheet then fits between no others."""
    said = " ".join(run("template", "ferns.toml", "--only", "3").err.split())
    assert "laid anew" not in said
    (ferns / "ferns.pdf").unlink()
    said = " ".join(run("template", "ferns.toml", "--only", "3").err.split())
    assert "note ferns.pdf: there is no such file. So these sheets are laid anew" in said


def test_torn_sheets_are_those_of_the_paper_that_is_there(ferns: Path) -> None:
    """After an update the paper has the old sheets, though the changed job by itself would have others."""
    text = (ferns / "ferns.toml").read_text(encoding="utf-8")
    (ferns / "ferns.toml").write_text(text.replace('drop = "3"\n', 'drop = "1 1/4"\n'), encoding="utf-8")
    assert run("template", "ferns.toml", "--since", "ferns.pdf", "--report", "update.json").code == 0
    assert run("template", "ferns.toml", "-o", "anew.pdf", "--report", "anew.json").code == 0
    update = cells(ferns / "update.json")
    assert update != cells(ferns / "anew.json")
    ran = run("template", "ferns.toml", "--only", "3", "--report", "only.json")
    assert "The sheets are those of ferns-update.pdf: others would be laid now." in " ".join(ran.err.split())
    for name, cell in cells(ferns / "only.json").items():
        assert cell == pytest.approx(update[name], abs=1e-6)


@pytest.mark.parametrize(
    ("asked", "words"),
    [
        (["--paper", "a4"], "ferns.pdf is on letter paper, but a4 is asked for now"),
        (["--cover", "linked"], "ferns.pdf has cover marks, but linked is asked for now"),
        (["--photo-marks"], "ferns.pdf has no photo tags, but they are asked for now"),
        (["--printer", "study"], "ferns.pdf was drawn for no printer that was measured"),
    ],
)
def test_torn_sheets_that_do_not_fit_the_paper_that_is_there_are_doubted(
    asked: list[str], words: str, any_ferns: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    recorded(any_ferns, monkeypatch, "177.5")
    said = " ".join(run("template", "ferns.toml", "--only", "3", *asked).err.split())
    wanted = {"--paper": "add --paper letter", "--cover": "add --cover marks"}.get(asked[0], f"leave {asked[0]} out")
    fits = "these sheets do not fit between those of that paper. To print for that paper"
    assert f"{words}: {fits}, {wanted}." in said


def recorded(folder: Path, monkeypatch: pytest.MonkeyPatch, across: str) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(folder / "settings"))
    lengths = ("--across", across, "--along", "241.4")
    assert run("printer", "record", "study", "--paper", "letter", *lengths).code == 0


def test_sheets_for_a_printer_measured_anew_are_not_taped_to_older_ones(
    any_ferns: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Measured to be the same, on whatever day, it is the same; a scale that differs is said, and what to do."""
    since = ("template", "ferns.toml", "--since", "ferns.pdf")
    recorded(any_ferns, monkeypatch, "177.5")
    assert "leave --printer out, or leave --since out" in " ".join(run(*since, "--printer", "study").err.split())
    assert run("template", "ferns.toml", "--printer", "study").code == 0
    measured(any_ferns)
    assert "give --printer study, or leave --since out" in " ".join(run(*since).err.split())
    profile = next((any_ferns / "settings").rglob("study.toml"))
    day = re.search(r"\d{4}-\d\d-\d\d", profile.read_text(encoding="utf-8"))
    assert day
    profile.write_text(profile.read_text(encoding="utf-8").replace(day[0], "2026-03-02"), encoding="utf-8")
    assert run(*since, "--printer", "study", "--report", "update.json").code == 0
    anew = json.loads((any_ferns / "update.json").read_text(encoding="utf-8"))
    assert anew["printer"]["across"] != 1.0
    recorded(any_ferns, monkeypatch, "177.2")
    ran = run(*since, "--printer", "study")
    words = " ".join(ran.err.split())
    assert ran.code == 2 and "which was measured anew since: sheets drawn now would be of another scale" in words


def test_places_that_were_found_anew_are_said_to_be_others_and_how_to_keep_those_on_paper(folder: Path) -> None:
    run("start", "--sample", "paste-papers", "job.toml")
    run("template", "job.toml", "-o", "old.pdf")
    job = folder / "job.toml"
    job.write_text(job.read_text().replace("width = 500", "width = 501"))  # mm, of frame leaf
    said = run("template", "job.toml", "--since", "old.pdf").err
    assert "are not those on the paper of old.pdf" in " ".join(said.split())
    for words in ("start --from old.pdf then.toml", "options then.toml --pick 1 -o kept.toml"):
        assert words in " ".join(said.split())
        assert run(*words.split()).code == 0
    kept = folder / "kept.toml"
    kept.write_text(kept.read_text().replace("width = 500", "width = 501"))
    again = run("template", "kept.toml", "--since", "old.pdf")
    assert again.code == 0 and "found anew" not in again.err


def test_paper_whose_nails_are_elsewhere_than_planned_now_is_taken_for_no_other(
    any_ferns: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As where another version found other places for the same job: the job alone does not tell it."""
    from templates_gen.documents import template

    def moved(*given: Any) -> tuple[str, bytes]:
        name, content = sheets_file(*given)
        data = json.loads(content)
        data["nails"][0][1] += 2.0
        return name, json.dumps(data).encode()

    with monkeypatch.context() as another:
        another.setattr(template, "sheets_file", moved)
        assert run("template", "ferns.toml").code == 0
    (any_ferns / "hall.toml").write_text(
        '[wall]\nwidth = "150 in"\nheight = "100 in"\n[group]\ncentre_on = "wall"\nheight = { centre = "60 in" }\n'
    )
    where = "nails elsewhere than they would be planned now for the same job"
    for asked, words in (
        (("template", "ferns.toml", "--only", "3"), f"{where}, as by another version: these sheets do not fit"),
        (("template", "ferns.toml", "--since", "ferns.pdf", "-o", "u.pdf"), "All sheets are printed anew."),
        (
            ("template", "ferns.toml", "--wall", "hall.toml"),
            f"{where}, as by another version: that paper does not serve",
        ),
        (
            ("check", "ferns.toml", "--taped", "a=48 9/16,b=48 3/4,width=43 3/4"),
            f"laid anew from ferns.toml: ferns.pdf has {where}",
        ),
        (("guide", "ferns.toml"), f"{where}, as by another version: the page is of these"),
    ):
        ran = run(*asked)
        assert ran.code == 0 and words in " ".join(ran.err.split()), (asked, ran.err)
    assert "sheets of letter paper" in run("template", "ferns.toml", "--wall", "hall.toml", "--force").out
