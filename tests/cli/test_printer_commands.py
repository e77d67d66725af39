"""The commands about printers: what they write, say and refuse."""

import json

import pypdf
import pytest
from shapely import LineString
from shapely import box as rectangle

from templates_gen.documents.scale_page import scale_of, scale_page
from templates_gen.drawing.items import Line, Text
from templates_gen.drawing.lettering import Lettering
from tests.running import MINIMAL, listing, run

INCH = 25.4  # mm; international inch of 1959
RECORD = ("printer", "record", "study", "--paper", "a4", "--across", "179.4", "--along", "260.4")


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """A folder with one small job, as the current folder; printers are kept below it."""
    (tmp_path / "job.toml").write_text(MINIMAL)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    return tmp_path


# across and along as whole centimetres or half inches that leave 7.5 mm inside margins of 7, 7, 13 and 7 mm: worked
# out by hand here from 210 x 297 and 297 x 420 (ISO 216) and 215.9 x 279.4 and 279.4 x 431.8 mm (PWG 5101.1)
LENGTHS = {"a4": (180, 260), "a3": (260, 380), "letter": (7 * INCH, 9.5 * INCH), "tabloid": (9.5 * INCH, 15.5 * INCH)}


@pytest.mark.parametrize("paper", LENGTHS)
def test_the_rules_of_a_scale_page_are_as_long_as_the_paper_allows(paper):
    box = scale_of(paper).box
    assert (box.width, box.height) == pytest.approx(LENGTHS[paper])


@pytest.mark.parametrize("paper", [*LENGTHS, "b5", "legal", "a0", "arch c", "super b"])
def test_words_and_lines_of_a_scale_page_keep_clear_of_each_other_and_within_reach(paper):
    lettering, scale = Lettering(), scale_of(paper)
    template = scale_page(scale, lettering)
    (page,) = template.pages
    texts = [lettering.box(item) for item in page.page_items if isinstance(item, Text)]
    lines = [item for item in page.page_items if isinstance(item, Line)]
    right, top = (points * INCH / 72 - 7 for points in template.page_size)
    for at, box in enumerate(texts):
        assert 7 <= box.x0 and box.x1 <= right and 13 <= box.y0 and box.y1 <= top
        assert not any(box.grown(-0.1).overlaps(other) for other in texts[at + 1 :])
        assert not any(meets(line, box) for line in lines)
    for line in lines:
        assert all(7 <= x <= right and 13 <= y <= top for x, y in ((line.x0, line.y0), (line.x1, line.y1)))


def meets(line, box):
    """True when some of the line lies in the box."""
    return LineString([(line.x0, line.y0), (line.x1, line.y1)]).intersects(rectangle(box.x0, box.y0, box.x1, box.y1))


def test_a_roll_has_no_scale_page(folder):
    ran = run("printer", "page", "--paper", "roll 24 in")
    assert ran.code == 2 and "found 'roll 24 in', expected sheets" in ran.err


def test_the_scale_page_says_how_it_is_recorded(folder):
    ran = run("printer", "page", "--paper", "Super  B")
    assert (ran.code, ran.out, ran.err) == (0, "scale-page.pdf: the scale page on 1 page of super b paper\n", "")
    (page,) = pypdf.PdfReader("scale-page.pdf").pages
    text = " ".join(page.extract_text().split())
    assert 'templates-gen printer record NAME --paper "super b" --across L1 --along L2 --diagonals D1 D2' in text
    assert run("printer", "page", "--paper", "super b").code == 0  # takes the place of our own file


@pytest.mark.parametrize("paper", ["a5", "a44", "na_x_90x90mm"])
def test_paper_that_no_scale_page_fits_is_refused(folder, paper):
    ran = run("printer", "page", "--paper", paper)
    assert (ran.code, ran.out) == (2, "") and ran.err.startswith("error: --paper")
    assert not (folder / "scale-page.pdf").exists()


def test_a_scale_page_replaces_no_file_of_another_program(folder):
    (folder / "scale-page.pdf").write_text("mine")
    assert run("printer", "page").code == 2
    assert (folder / "scale-page.pdf").read_text() == "mine"
    assert run("printer", "page", "--force").code == 0


def test_what_a_record_takes_the_place_of_is_told(folder):
    assert "in place of" not in run(*RECORD).out
    again = run("printer", "record", "Study", "--paper", "letter", "--across", "177.8", "--along", "241.3")
    assert "in place of  study: a4, 99.67% across, 100.15% along, " in again.out  # 179.4 / 180 and 260.4 / 260
    assert "in place of" not in run("printer", "record", "hall", *RECORD[3:]).out


def test_what_was_recorded_is_shown_and_listed(folder):
    assert run("printer", "list").out == "no printer has been recorded yet\n"
    ran = run(*RECORD, "--diagonals", "316.4", "316.0")
    assert (ran.code, ran.err) == (0, "")
    assert run("printer", "show", "study").out == ran.out
    # 179.4 of 180 and 260.4 of 260; sigma √2 · 0.2 / 180 = 0.157 %, shown doubled; sin γ = 0.4 · 632.4 / (4 · 179.4 ·
    # 260.4), its sigma √2 · 0.2 · √(316.4² + 316²) / (2 · 179.4 · 260.4): worked out by hand here
    assert ran.out.splitlines()[1:] == [
        "  across     179.4 mm for 180.0 mm: 99.67%, give or take 0.31%",
        "  along      260.4 mm for 260.0 mm: 100.15%, give or take 0.22%",
        "  diagonals  316.4 mm and 316.0 mm: leans 0.08° to the right, give or take 0.16°",
    ]
    shown = json.loads(run("printer", "show", "study", "--format", "json").out)
    listed = json.loads(run("printer", "list", "--format", "json").out)
    assert shown["format"] == listed["format"] == 1 and listed["printers"] == [shown["printer"]]
    assert shown["printer"]["across"] == pytest.approx(179.4 / 180)
    assert shown["printer"]["measured"]["diagonals"] == [316.4, 316.0]
    assert run("printer", "list").out.startswith("study: a4, 99.67% across, 100.15% along, ")


def test_lengths_are_read_as_everywhere(folder):
    given = ("--across", "7 1/16 in", "--along", "24,1 cm", "--reading-error", "1/64 in")
    ran = run("printer", "record", "attic", "--paper", "letter", *given)
    assert ran.code == 0 and "diagonals  not measured" in ran.out
    shown = json.loads(run("printer", "show", "attic", "--format", "json").out)["printer"]
    assert shown["measured"] == {"across": 7.0625 * INCH, "along": 241.0, "diagonals": None}
    # √2 · 25.4 / 64 / 177.8: worked out by hand here
    assert shown["sigma"]["across"] == pytest.approx(0.0031567, abs=1e-6)


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ((*RECORD[:6], "170.4", *RECORD[7:]), "fit to page"),
        ((*RECORD[:6], "far", *RECORD[7:]), "error: --across: found 'far'"),
        ((*RECORD[:6], "0", *RECORD[7:]), "above zero"),
        ((*RECORD, "--diagonals", "316", "330"), "diagonal 2"),
        (("printer", "record", "../x", *RECORD[3:]), "expected letters"),
        (("printer", "record", "study"), "Missing option"),
        (("printer", "show", "study"), "no printer “study” has been recorded"),
        (("template", "job.toml", "--printer", "study"), "no printer “study” has been recorded"),
    ],
)
def test_what_cannot_be_used_is_refused_and_nothing_is_kept(folder, arguments, words):
    before = listing(folder)
    ran = run(*arguments)
    assert (ran.code, ran.out) == (2, "") and words in ran.err
    assert listing(folder) == before


def test_a_damaged_profile_is_listed_as_a_warning_beside_the_others(folder):
    assert run(*RECORD).code == 0
    (folder / "config" / "templates-gen" / "printers" / "old.toml").write_text("format = ")
    ran = run("printer", "list")
    assert ran.code == 0 and ran.out.startswith("study: ")
    assert ran.err.startswith("warn  ") and "damaged" in ran.err


def test_without_a_home_folder_there_is_one_clear_message(folder, monkeypatch):
    monkeypatch.delenv("XDG_CONFIG_HOME")
    monkeypatch.setenv("HOME", str(folder / "gone"))
    ran = run(*RECORD)
    assert (ran.code, ran.out) == (2, "") and "no home folder" in ran.err
    assert not (folder / "gone").exists()


def test_other_paper_than_the_printer_was_measured_on_is_warned_of(folder):
    assert run(*RECORD).code == 0
    ran = run("template", "job.toml", "--printer", "study")
    assert ran.code == 0 and "Printer study" not in ran.err
    ran = run("template", "job.toml", "--printer", "study", "--paper", "letter")
    assert ran.code == 0
    assert "warn  Printer study was measured on a4 paper, and this is letter" in " ".join(ran.err.split("\n"))
