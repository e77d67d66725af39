"""The take-along page: one file that asks nobody, with every nail where the plan has it."""

import json
import re
from html.parser import HTMLParser

import pytest

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.geometry import Rect
from templates_gen.base.output import is_ours
from templates_gen.base.units import parse_length
from templates_gen.documents.take_along.maps import map_of
from templates_gen.documents.take_along.page import make_guide
from templates_gen.job.reading.building import read_job
from tests.jobs import SAMPLES, frame, job
from tests.running import run

SHORT = ("fern-prints", "lock-keepers", "kiln-tiles", "seed-drawers", "alphabet-column", "loom-drawings")
"""The samples whose places need not be found first."""


class Read(HTMLParser):
    """The texts behind every box to tick by its key, and every attribute that names something to load."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.ticks: dict[str, str] = {}
        self.loads: list[str] = []
        self._key = ""
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        told = dict(attrs)
        self.loads += [value for name, value in attrs if name in ("src", "href", "action", "srcset") and value]
        if tag == "input":
            assert told["data-key"] not in self.ticks, "two boxes would be ticked as one"
            self._key = told["data-key"]
            self.ticks[self._key] = ""

    def handle_endtag(self, tag):
        self._key = "" if tag == "label" else self._key

    def handle_data(self, data):
        if self._key:
            self.ticks[self._key] += data


def page(name):
    plan = plan_wall(read_job(SAMPLES / f"{name}.toml"))
    return plan, make_guide(plan)


@pytest.mark.parametrize("name", SHORT)
def test_every_nail_stands_on_the_page_where_the_plan_has_it(name):
    plan, content = page(name)
    ticks = Read(content.decode()).ticks
    unit = plan.job.unit
    least = 0.51 * (25.4 / 16 if unit == "in" else 1.0)  # half of what is shown, and what that rounds
    for nail in plan.nails:
        words = ticks[f"nail {nail.name}"]
        across = re.search(r"([\d /.]+ (?:in|cm|mm)) (left|right) of the centre line", words)
        up = re.search(r"([\d /.]+ (?:in|cm|mm)) (above|below) the level line", words)
        for found, far, plus in ((across, nail.x - plan.centre_line, "right"), (up, nail.y - plan.level_line, "above")):
            if found is None:
                assert abs(far) < least
                continue
            shown = parse_length(found[1], unit) * (1 if found[2] == plus else -1)
            assert shown == pytest.approx(far, abs=least)
        assert {f"hung {hung.frame.id}" for hung in plan.frames} < {*ticks}


def test_no_sheets_number_runs_into_the_next_sheet():
    """Sheets 10 mm and 4 mm wide and 13 mm high, worked out by hand here: 100 mm are 1000 mm on the wall.  A bold digit
    of a usual font is as wide as it is high (DejaVu Sans Bold: 0.696 of the size and 0.729, from memory)."""
    plan = plan_wall(job(frame()))
    windows = [(f"{10 + at}", Rect.sized(wide, 0.0, wide, 130.0)) for at, wide in enumerate((100.0, 40.0))]
    drawing = map_of(plan, Rect(0.0, 0.0, 1000.0, 200.0), windows)
    sizes = {
        name: float(size) for size, name in re.findall(r'<text[^>]* font-size="([\d.]+)"[^>]*>(\d+)</text>', drawing)
    }
    assert sizes["10"] * 2 * 0.696 <= 10.0 and sizes["11"] * 2 * 0.696 <= 4.0
    assert sizes["10"] * 0.7 == pytest.approx(4.0, abs=0.1)


@pytest.mark.parametrize("name", SHORT)
def test_it_loads_nothing_and_is_the_same_file_for_the_same_job(name):
    _, content = page(name)
    text = content.decode()
    assert all(load.startswith("data:image/jpeg;base64,") for load in Read(text).loads)
    assert re.findall(r"https?://[^\s\"'<]+", text) == ["http://www.w3.org/2000/svg"]  # a name, not an address
    assert "default-src 'none'" in text
    assert page(name)[1] == content


def test_signs_with_a_meaning_in_html_are_only_signs():
    odd = job(frame('<b>"&', title="</script><script>alert(1)</script>"))
    text = make_guide(plan_wall(odd)).decode()
    assert "<script>alert" not in text and text.count("<script>") == 1
    assert 'nail <b>"&' in Read(text).ticks


def test_a_page_of_ours_may_be_written_again_and_another_may_not(tmp_path):
    ours, other = tmp_path / "ours.html", tmp_path / "other.html"
    ours.write_bytes(page("fern-prints")[1])
    other.write_text("<!doctype html><title>A letter</title>")
    assert is_ours(ours) and not is_ours(other)


def test_the_sheets_to_tick_are_those_that_were_printed(folder):
    """The template is of linked paper, of which the job says nothing; once the job has changed, that is said."""
    assert run("start", "--sample", "fern-prints", "ferns.toml").code == 0

    def sheets():
        ran = run("guide", "ferns.toml", "--force")
        assert ran.code == 0
        ticks = Read((folder / "ferns-guide.html").read_text(encoding="utf-8")).ticks
        return [key for key in ticks if key.startswith("sheet ")], " ".join(ran.err.split())

    before, said = sheets()
    assert "The sheets are" not in said
    assert run("template", "ferns.toml", "--cover", "linked", "--report", "report.json").code == 0
    report = json.loads((folder / "report.json").read_text(encoding="utf-8"))
    after, said = sheets()
    assert after == [f"sheet {sheet['name']}" for sheet in report["sheets"]] and len(after) < len(before)
    assert "The sheets are those of ferns.pdf, beside ferns.toml." in said
    with (folder / "ferns.toml").open("a") as job_file:
        job_file.write("# looked over\n")
    again, said = sheets()
    assert again == before and "ferns.toml has changed since ferns.pdf was made" in said
