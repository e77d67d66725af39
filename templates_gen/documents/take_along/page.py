"""Plan, sheets and findings become one HTML file: map, nails one after another, boxes to tick, proof, cautions."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator, Sequence
from html import escape
from pathlib import Path

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.output import MADE_BY
from templates_gen.base.units import show, show_both
from templates_gen.checks import NOTE, STOP, WARN, Finding, find
from templates_gen.checks.sentences import no_drop_words
from templates_gen.documents.instructions.cautions import cautions
from templates_gen.documents.instructions.hanging_day import hanging_order, hanging_steps
from templates_gen.documents.instructions.sheet_map import map_area
from templates_gen.documents.instructions.wording import TOOLS, own_tools
from templates_gen.documents.of_job import whose
from templates_gen.documents.on_wall import Unknown, as_printed, template_beside
from templates_gen.documents.proof.making import proof_of
from templates_gen.documents.schedule.distances import (
    above_floor,
    facing,
    from_behind,
    left_end,
    sideways,
    stood_on,
    upward,
)
from templates_gen.documents.take_along.maps import map_of, wall_of
from templates_gen.hanging.bearings import Nail
from templates_gen.printer.profile import Printer
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.holding import plan_sheets

POLICY = "default-src 'none'; img-src data:; style-src 'unsafe-inline'; script-src 'unsafe-inline'"
"""The page loads nothing from anywhere (Content Security Policy Level 3, W3C)."""

LEVELS = {STOP: "Stop", WARN: "To settle"}
"""How grave what was found is: the words of the desk."""


def make_guide(plan: Plan, sheets: SheetPlan | None = None, printer: Printer | None = None) -> bytes:
    """The page of a plan, with these sheets, or those that its template would have for a printer.

    It is made whatever the findings say, which stand on it first.  Raises InputError for paper too small, or a picture
    that cannot be read.
    """
    svg = proof_of(plan, "svg", bare=True).content.decode()
    sheets = sheets or plan_sheets(plan, plan.job.paper, printer)
    return take_along(plan, find(plan), sheets, svg[svg.index("<svg") :])


def sheets_beside(
    path: Path, plan: Plan, wall: Path | None = None, printer: Printer | None = None
) -> tuple[Plan, SheetPlan | None, tuple[str, str] | None]:
    """The plan with the sheets of the template beside its job's file, which are on the wall, where it is of this plan;
    and what there is to say of that: level and text.  Raises InputError for a broken template.
    """
    found = template_beside(path, plan.job, wall, {"printer": printer.name if printer else None})
    if isinstance(found, Unknown):
        return plan, None, None
    if found.changed:
        name = found.pdf.name
        said = f"{path.name} has changed since {name} was made: the page is of the job as it is now."
        return plan, None, (WARN, said)
    made = as_printed(found, plan)
    if isinstance(made, Unknown):
        return plan, None, (WARN, f"{made.why}: the page is of these, not of that paper.")
    return *made, (NOTE, found.said(path))


def take_along(plan: Plan, findings: Sequence[Finding], sheets: SheetPlan, proof: str) -> bytes:
    """The page of a job; `proof` is the wall as SVG.  It is the same file for the same job."""
    job = plan.job
    parts = [
        f"<h1>{escape(job.title)}</h1><p>{escape(whose(job))}</p>",
        _section("Before you nail", _graver(findings)),
        _section("Take with you", [_ticks("tool", [*TOOLS, *own_tools(plan)])]),
        _section("The wall", [f'<figure class="proof">{proof}</figure>']),
        _section("The paper", _paper(plan, sheets)),
        _section("Step by step", [_steps(plan, sheets)]),
        _section("The nails, one after another", _nails(plan)),
        _section("Take care", (_caution(lead, words) for lead, words in cautions(job.wall))),
    ]
    own = hashlib.sha256(repr((job.title, job.date, plan.frames)).encode()).hexdigest()[:12]
    text = (
        f'<!doctype html>\n<html lang="{escape(job.language)}">\n<head>\n<meta charset="utf-8">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f'<meta name="generator" content="{MADE_BY}">\n'
        f"<title>{escape(job.title)}: at the wall</title>\n<style>{STYLE}</style>\n</head>\n"
        f'<body data-job="{own}">\n<main>\n{"".join(parts)}</main>\n<script>{SCRIPT}</script>\n</body>\n</html>\n'
    )
    return text.encode()


def _section(title: str, parts: Iterable[str]) -> str:
    inner = "\n".join(parts)
    return f"<section>\n<h2>{title}</h2>\n{inner}\n</section>\n" if inner else ""


def _graver(findings: Sequence[Finding]) -> Iterator[str]:
    for finding in findings:
        if finding.level in LEVELS:
            yield f'<p class="{finding.level}"><b>{LEVELS[finding.level]}:</b> {escape(finding.sourced)}</p>'


def _caution(lead: str, words: str) -> str:
    return f"<p><b>{escape(lead)}{'' if lead.endswith('?') else '.'}</b> {escape(words)}</p>"


def _ticks(kind: str, lines: Sequence[str]) -> str:
    items = (_tick(f"{kind} {number}", escape(line)) for number, line in enumerate(lines, 1))
    return f'<ul class="ticks">{"".join(f"<li>{item}</li>" for item in items)}</ul>'


def _tick(key: str, words: str) -> str:
    return f'<label><input type="checkbox" data-key="{escape(key)}"> <span>{words}</span></label>'


def _paper(plan: Plan, sheets: SheetPlan) -> Iterator[str]:
    if len(sheets.sheets) > 1:
        windows = [(sheet.name, sheet.cell) for sheet in sheets.sheets]
        yield f"<figure>{map_of(plan, map_area(plan, sheets), windows)}</figure>"
        yield "<p>Tick each sheet when it is taped.</p>"
        items = (_tick(f"sheet {sheet.name}", f"<b>{escape(sheet.name)}</b>") for sheet in sheets.sheets)
        yield f'<div class="grid">{"".join(items)}</div>'


def _steps(plan: Plan, sheets: SheetPlan) -> str:
    items = (
        f"<li>{_tick(f'step {step.name}', f'<b>{escape(step.name)}.</b> {escape(step.words)}')}</li>"
        for step in hanging_steps(plan, sheets)
    )
    return f'<ol class="ticks">{"".join(items)}</ol>'


def _nails(plan: Plan) -> Iterator[str]:
    unit = plan.job.unit
    yield (
        f"<p>The centre line is {show_both(plan.centre_line, unit)} from {left_end(plan)}, the level line "
        f"{show_both(plan.level_line, unit)} {above_floor(plan)}. Left and right as you face the wall.</p>"
    )
    for hung in hanging_order(plan):
        yield _frame(hung, plan)


def _frame(hung: Hung, plan: Plan) -> str:
    name, title = escape(hung.frame.id), escape(hung.frame.title)
    lines = [_tick(f"nail {nail.name}", _nail(nail, hung, plan)) for nail in hung.nails]
    if hung.unmeasured:
        lines.append(f"<p>No nail yet: {no_drop_words(plan.job.paper.cover)}.</p>")
    lines.append(_tick(f"hung {hung.frame.id}", f"Frame {name} hangs, and is level"))
    heading = f"<h3>{name}{f' <small>{title}</small>' if title else ''}</h3>"
    return f'<article>{heading}<figure class="small">{wall_of(plan, hung)}</figure>{"".join(lines)}</article>'


def _nail(nail: Nail, hung: Hung, plan: Plan) -> str:
    """Where a nail goes, from the two lines, the floor and the wall's end; and what hangs on it."""
    unit, fixing = plan.job.unit, hung.frame.fixing
    behind = f" ({from_behind(nail.side, hung.frame.hanger)})" if nail.side else ""
    name = facing(nail.side, fixing)
    what = "" if fixing.called == facing("", fixing) else f", {fixing.called}"
    under, height = stood_on(plan, nail.x)
    stairs = f"{show_both(nail.y - height, unit)} above the {under}, " if plan.job.wall.stairs else ""
    return (
        f"<b>{escape(name)}</b>{escape(behind + what)}:"
        f'<span class="far">{_line("centre", sideways(nail.x - plan.centre_line, unit))}</span>'
        f'<span class="far">{_line("level", upward(nail.y - plan.level_line, unit))}</span>'
        f"<span>{stairs}{show_both(nail.y, unit)} {above_floor(plan)}, {show(nail.x, unit)} from {left_end(plan)}"
        "</span>"
    )


def _line(name: str, words: str) -> str:
    """A distance from one of the two lines, in words: "4 in left of the centre line"."""
    if words == "on the line":
        return f"on the {name} line"
    return f"{words} of the centre line" if name == "centre" else f"{words} the level line"


STYLE = """
:root { color-scheme: light dark; --ink: #22303a; --page: #f3f1ec; --card: #fffdf9; --line: #d8d3c7; --chalk: #1d5a7d;
  --stop: #a12d1d; --warn: #805300; }
@media (prefers-color-scheme: dark) { :root { --ink: #e9e6df; --page: #191d20; --card: #22282c; --line: #3a4247;
  --chalk: #8cc4e2; --stop: #ff9d8c; --warn: #eec170; } }
* { box-sizing: border-box; }
body { margin: 0; font: 1.1rem/1.45 system-ui, sans-serif; color: var(--ink); background: var(--page); }
main { max-width: 44rem; margin: 0 auto; padding: .7rem; }
h1 { font-size: 1.4rem; margin: .3rem 0; }
h2 { font-size: 1.2rem; margin: 0 0 .5rem; }
h3 { font-size: 1.5rem; margin: 0; }
h3 small { font-size: 1rem; font-weight: 400; }
section { background: var(--card); border: 1px solid var(--line); border-radius: .6rem; }
section { padding: .8rem; margin: .7rem 0; }
article { border-top: 1px solid var(--line); padding: .7rem 0; }
figure { margin: .4rem 0; background: #fff; border-radius: .4rem; padding: .3rem; } svg { width: 100%; height: auto; }
ul.ticks, ol.ticks { list-style: none; padding: 0; margin: 0; }
label { display: flex; gap: .7rem; padding: .5rem 0; align-items: flex-start; }
label > span { flex: 1; }
label span span { display: block; }
.far { font-size: 1.35rem; font-weight: 600; }
input { width: 1.7rem; height: 1.7rem; flex: none; accent-color: var(--chalk); }
label:has(:checked) > span { text-decoration: line-through; }
.grid { display: grid; grid-template-columns: repeat(auto-fill, minmax(4.5rem, 1fr)); gap: .2rem .6rem; }
.stop { border-left: .4rem solid var(--stop); padding-left: .6rem; }
.warn { border-left: .4rem solid var(--warn); padding-left: .6rem; }
"""

SCRIPT = """
const own = "templates-gen " + document.body.dataset.job;
let kept = {};
try {
  kept = JSON.parse(localStorage.getItem(own) || "{}");
} catch { /* no storage: the ticks last while the page is open */ }
for (const box of document.querySelectorAll("input[data-key]")) {
  box.checked = Boolean(kept[box.dataset.key]);
  box.addEventListener("change", () => {
    kept[box.dataset.key] = box.checked;
    try { localStorage.setItem(own, JSON.stringify(kept)); } catch { /* as above */ }
  });
}
"""
