"""Full-scale paper templates for hanging a group of framed pictures, with the nails already in them.

One function for each phase, each from one finished value to the next:

    read_job(path) -> Job
    plan_wall(job) -> Plan
    find(plan) -> tuple[Finding, ...]
    plan_sheets(plan, paper, printer) -> SheetPlan
    expected_error(plan, sheets) -> Expected | None
    draw_template(plan, findings, sheets, expected, lettering) -> Template
    write_pdf(template, lettering) -> bytes

and `make_template(job)` for all of them after the first, `finish_template(plan, findings, sheets)` for all after the
sheets; `make_proof(job)` for the picture of the wall; after hanging, `correct(plan, readings)`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from templates_gen.arranging.plan import Plan, plan_wall
    from templates_gen.base.errors import InputError, OutputError, TemplatesError
    from templates_gen.checks import Finding, find
    from templates_gen.documents.correcting import correct
    from templates_gen.documents.making import Made, finish_template, make_template
    from templates_gen.documents.proof.making import Proof, make_proof
    from templates_gen.documents.template import draw_template
    from templates_gen.drawing.items import Template
    from templates_gen.drawing.lettering import Lettering
    from templates_gen.drawing.pdf.writing import write_pdf
    from templates_gen.job.model import Job
    from templates_gen.job.reading.building import read_job
    from templates_gen.printer.profile import Printer, Readings, measured
    from templates_gen.tiling.sheet import SheetPlan
    from templates_gen.tolerance.expected import Expected, expected_error
    from templates_gen.tolerance.holding import plan_sheets

__version__ = "0.1.0"

# Imported on first use: starting the program must not cost what only one of its commands needs.
_NAMES_OF = {
    "arranging.plan": "Plan plan_wall",
    "base.errors": "InputError OutputError TemplatesError",
    "checks": "Finding find",
    "documents.correcting": "correct",
    "documents.making": "Made finish_template make_template",
    "documents.proof.making": "Proof make_proof",
    "documents.template": "draw_template",
    "drawing.items": "Template",
    "drawing.lettering": "Lettering",
    "drawing.pdf.writing": "write_pdf",
    "job.model": "Job",
    "job.reading.building": "read_job",
    "printer.profile": "Printer Readings measured",
    "tiling.sheet": "SheetPlan",
    "tolerance.expected": "Expected expected_error",
    "tolerance.holding": "plan_sheets",
}
_HOME = {name: home for home, names in _NAMES_OF.items() for name in names.split()}

__all__ = [
    "Expected", "Finding", "InputError", "Job", "Lettering", "Made", "OutputError", "Plan", "Printer", "Proof",
    "Readings", "SheetPlan", "Template", "TemplatesError", "correct", "draw_template", "expected_error", "find",
    "finish_template", "make_proof", "make_template", "measured", "plan_sheets", "plan_wall", "read_job", "write_pdf",
]  # fmt: skip


def __getattr__(name: str) -> object:
    if name not in _HOME:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from importlib import import_module

    return getattr(import_module(f"{__name__}.{_HOME[name]}"), name)
