"""What linked paper takes, in the report and in a line each beside the other ways."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from templates_gen.documents.other_ways import other_ways
from tests.jobs import SAMPLES, paper
from tests.made import made, twelve
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


def test_the_other_ways_are_a_line_each() -> None:
    lines = other_ways(twelve(paper("letter", cover="linked"), "in"))
    assert [line.split(":")[0] for line in lines] == ["marks", "nails", "one piece"]
    assert "joins" in lines[0] and "neighbours within" in lines[0] and "roll" in lines[2]


def test_the_command_ends_with_them(tmp_path: Path) -> None:
    out = tmp_path / "out.pdf"
    job = SAMPLES / "fern-prints.toml"
    ran = run("template", job, "--cover", "linked", "-o", out, "--report", tmp_path / "out.json")
    report = json.loads((tmp_path / "out.json").read_text(encoding="utf-8"))
    said = f"{out}: {len(report['sheets'])} sheets of letter paper, {len(report['joins'])} joins, about "
    lines = ran.out.splitlines()
    assert ran.code == 0 and any(line.startswith(said) for line in lines), ran.out
    assert [line.split(":")[0].strip() for line in lines[-3:]] == ["marks", "nails", "one piece"]
