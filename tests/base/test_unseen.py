"""Characters that show nothing: they reach neither terminal nor paper nor any file that is made."""

import io
import json
import re

import pypdf
import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates_gen.base.csv_cells import cell, plain
from templates_gen.base.unseen import unseen_spelt, without_unseen
from templates_gen.cli.showing import as_json
from tests.running import MINIMAL, run, spawn

CONTROLS = [*"\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\u200b\u200e\u200f\u2060\ufeff\u00ad\u061c\u180e",
            *"\U000e0001\U000e0041\U0001d173\u3164\ufff9"]  # fmt: skip
"""Of every kind that Unicode has (15.0, 23.2 to 23.8)."""

NEEDED = {
    "a Persian word": "می\u200cخواهم",
    "a Persian word before a mark": "می\u064e\u200cخواهم",
    "a shortened word": "ه\u200d.ق",
    "half a Devanagari letter": "क्\u200dष",
    "Devanagari letters side by side": "क्\u200cष",
    "a family of signs": "👩\u200d👩\u200d👧",
    "a heart of fire": "❤\ufe0f\u200d🔥",
    "a painter": "👩🏽\u200d🎨",
}
"""Texts whose joiners belong to their letters (RFC 5892, appendix A; Unicode Technical Standard 51; from memory)."""


@pytest.mark.parametrize("name", NEEDED)
def test_a_joiner_stays_where_its_letters_need_it(name):
    assert without_unseen(NEEDED[name]) == unseen_spelt(NEEDED[name]) == NEEDED[name]


@pytest.mark.parametrize("char", [*CONTROLS, "\u200c", "\u200d"])
@pytest.mark.parametrize("text", ["a{}b", "{}a", "a{}", "{}", "א{}ב", "{0}{0}", "क{}ष", "1{}2", "☃{}a"])
def test_what_shows_nothing_is_left_out(char, text):
    given_text = text.format(char)
    assert without_unseen(given_text) == text.replace("{0}", "{}").replace("{}", "")
    assert json.loads(f'"{unseen_spelt(given_text)}"') == given_text and char not in unseen_spelt(given_text)


@given(st.text(st.sampled_from([*CONTROLS, "\u200c", "\u200d", "a", "ی", "क", "\u094d", "👩", "\u064e", " "])))
def test_leaving_out_twice_leaves_out_no_more(text):
    once = without_unseen(text)
    assert without_unseen(once) == once and not set(CONTROLS) & set(once)


EVIL = "\u202egpj.\u2066exe\u2069\u202c\u200b"
JOB = MINIMAL.replace("Tile rubbings", f"Tile{EVIL} rubbings").replace('id = "A"', f'id = "A{EVIL}"\ntitle = "x{EVIL}"')
JOB = JOB.replace("[wall]\n", f'client = "c{EVIL}"\n[wall]\nname = "hall{EVIL}"\n').replace(
    'kind = "switch"', f'kind = "switch"\nname = "switch{EVIL}"'
)
RAW = re.compile("[\u200b-\u200f\u202a-\u202e\u2060-\u206f]")


@pytest.fixture
def evil(folder):
    (folder / "job.toml").write_text(JOB, encoding="utf-8")
    return folder


@pytest.mark.parametrize(
    "command",
    ["check job.toml", "check job.toml --format json", "schedule job.toml", "schedule job.toml --format json",
     "schedule job.toml --format csv", "proof job.toml -o proof.svg", "template job.toml --report out.json",
     "labels job.toml", "measure job.toml --csv out.csv", "check no-such\u202e.toml"],
)  # fmt: skip
def test_no_title_turns_what_the_program_says_or_writes(command, evil):
    ran = run(*command.split())
    assert ran.code in (0, 2) and not RAW.search(ran.out + ran.err)
    written = [path for path in evil.iterdir() if path.name != "job.toml"]
    for path in written:  # a PDF file has the job file itself inside, as it is
        assert path.suffix == ".pdf" or not RAW.search(path.read_text(encoding="utf-8"))
    if "json" in command:
        assert json.loads((evil / "out.json").read_text(encoding="utf-8") if "report" in command else ran.out)


def test_no_title_turns_what_stands_on_paper(evil):
    assert run("template", "job.toml").code == 0
    reader = pypdf.PdfReader(io.BytesIO((evil / "job.pdf").read_bytes()))
    told = [page.extract_text() for page in reader.pages]
    assert not RAW.search("".join([*told, *map(str, reader.metadata.values())]))
    assert "Tilegpj.exe rubbings" in told[0]


def test_two_ids_that_differ_by_nothing_that_shows_are_one(folder):
    more = '[[frame]]\nid = "A\\u200b"\nwidth = 100\nheight = 100\n'
    (folder / "job.toml").write_text(MINIMAL + more, encoding="utf-8")
    assert "expected each frame to have its own id" in run("check", "job.toml").err


def test_a_name_with_a_needed_joiner_is_a_name(folder):
    (folder / "job.toml").write_text(
        MINIMAL.replace('id = "A"', f'id = "{NEEDED["a Persian word"]}"'), encoding="utf-8"
    )
    assert run("check", "job.toml").code == 0


def test_a_job_without_a_title_has_its_files_name_without_them(folder):
    (folder / "job\u202e.toml").write_text(MINIMAL.replace('title = "Tile rubbings"', ""), encoding="utf-8")
    ran = run("schedule", "job\u202e.toml")
    assert ran.code == 0 and ran.out.startswith("job\n") and not RAW.search(ran.out)


def test_a_file_with_such_a_name_is_found_under_it(folder):
    (folder / "list\u200b.csv").write_text("id,width,height,drop\nB,300,200,60\n")
    (folder / "job.toml").write_text(MINIMAL.replace("[job]", '[job]\nframes = "list\\u200b.csv"'), encoding="utf-8")
    assert run("check", "job.toml").code == 0


def test_a_path_on_the_terminal_shows_what_is_in_it(folder):
    (folder / "job\u202e.toml").write_text(MINIMAL, encoding="utf-8")
    ran = spawn("template", "job\u202e.toml", cwd=folder)
    assert ran.code == 0 and ran.out.startswith("job\\u202e.pdf: 2 sheets of a4 paper")


def test_json_says_the_same_in_signs_of_its_own():
    data = {"text": f"a{EVIL}b", "list": [EVIL]}
    assert json.loads(as_json(data)) == data and not RAW.search(as_json(data))


@pytest.mark.parametrize("sign", "=+-@＝＋－＠\t\n")
@pytest.mark.parametrize("before", ["", "\u200b", "\u202e", "\ufeff"])
def test_no_cell_is_a_formula_in_whatever_width_it_is_written(sign, before):
    told = cell(f"{before}{sign}1+cmd")
    assert told == f"'{sign}1+cmd"
    assert plain(told) == f"{sign}1+cmd"
