"""The schedule as Markdown: its table read back has the cells of the schedule, whatever frames are called."""

import re

from hypothesis import example, given
from hypothesis import strategies as st

from templates_gen.arranging.plan import plan_wall
from templates_gen.checks import find
from templates_gen.documents.schedule.carrying import flagged_nails
from templates_gen.documents.schedule.markdown import as_markdown
from templates_gen.documents.schedule.table import header, rows
from templates_gen.job.model import Fixing
from templates_gen.job.reading.building import read_job
from tests.jobs import SAMPLES, frame, job


def cells(line: str) -> list[str]:
    """The cells of a table's row: a bar parts them unless a backslash stands before it (GFM 0.29, 4.10)."""
    found = re.findall(r"((?:\\.|[^|\\])*)\|", line.removeprefix("|"))
    return [re.sub(r"\\(.)", r"\1", cell).strip() for cell in found]


def table(text: str) -> list[list[str]]:
    return [cells(line) for line in text.splitlines() if line.startswith("|")]


def test_the_table_has_the_rows_of_the_schedule():
    for name in ("fern-prints", "alphabet-column", "tram-tickets"):
        plan = plan_wall(read_job(SAMPLES / f"{name}.toml"))
        findings = find(plan)
        columns, line, *body = table(as_markdown(plan, findings))
        assert tuple(columns) == header(plan) and set(line) == {"---"}
        assert [tuple(row) for row in body] == [*rows(plan, flagged_nails(plan, findings))]


@given(st.text(min_size=1, max_size=20))
@example("a|b")
@example("\\")
@example("*A* [x](y) <b> `c` ~d~ &amp; # e")
@example("two\nlines")
def test_whatever_a_frame_is_called_is_in_one_cell(title):
    plan = plan_wall(job(frame(title=title), title=title))
    text = as_markdown(plan, find(plan))
    assert {len(row) for row in table(text)} == {len(header(plan))}
    assert table(text)[2][1] == " ".join(title.split())
    assert not re.search(r"(?<!\\)[`<\[&~]", re.sub(r"\\.", "", text))  # none that Markdown takes for its own


def test_findings_have_the_numbers_that_check_gives_them():
    weak = Fixing(kind="hook", below=22.0, rating=1.0)
    plan = plan_wall(job(frame("A", weight=10.0, fixing=weak), frame("B")))
    findings = find(plan)
    said = dict(re.findall(r"^- \*\*(\d+) \w+\*\*: (.*)", as_markdown(plan, findings), re.MULTILINE))
    about = {number for number, finding in enumerate(findings, 1) if set(finding.about) & {"A", "B"}}
    assert {int(number) for number in said} == about and len(about) > 1
    (rating,) = [number for number, finding in enumerate(findings, 1) if finding.rule == "rating-exceeded"]
    assert "rated" in said[str(rating)]


def test_a_job_that_tells_nothing_has_the_table_alone():
    plan = plan_wall(job())
    assert "##" not in as_markdown(plan, find(plan))
