"""Every sample and a few more jobs, made once for all tests: from the job to the bytes and the report."""

from __future__ import annotations

import io
from dataclasses import dataclass
from functools import cache, cached_property, partial
from itertools import product
from typing import Any

import pypdf

from templates_gen.arranging.plan import Plan, plan_wall
from templates_gen.base.record import replace
from templates_gen.checks import find
from templates_gen.documents.report import template_report
from templates_gen.documents.template import draw_template
from templates_gen.drawing.items import Template
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.writing import write_pdf
from templates_gen.job.model import Fixing, Hanger, Job, Paper, Wall
from templates_gen.job.paper_sizes import large_page
from templates_gen.job.reading.building import read_job
from templates_gen.printer.profile import Printer
from templates_gen.tiling import quickest
from templates_gen.tiling.sheet import SheetPlan
from templates_gen.tolerance.expected import expected_error
from templates_gen.tolerance.holding import plan_sheets
from tests.crowded import crowded
from tests.jobs import SAMPLES, frame, group, job, paper
from tests.pdf_reading import Marks, page_marks
from tests.shared import made_once

SAMPLE_NAMES = tuple(sorted(path.stem for path in SAMPLES.glob("*.toml")))

RINGS = Hanger(kind="rings", left=38.0, right=45.0, drop_left=70.0, drop_right=72.5)
TWO_HOOKS = Hanger(kind="wire", apart=160.0, ring_separation=320.0, ring_depth=150.0)
KEYHOLES = Hanger(kind="keyholes", left=30.0, right=30.0)
HOOK = Fixing(kind="hook", below=22.0)

SAWTOOTH = Hanger(kind="sawtooth")
TWELVE = (
    frame("1", 280, 360, 62, title="Hart's-tongue"),
    frame("2", 410, 510, None, title="Royal fern", hanger=RINGS, fixing=HOOK),
    frame("3", 400, 300, 90, title="Polypody", hanger=TWO_HOOKS, fixing=HOOK),
    frame("4", 200, 250, 45, title="Wall rue"),
    frame("5", 320, 320, 7, title="Bracken", hanger=SAWTOOTH),  # its nail is within 9 mm of the edge
    frame("6", 150, 200, None, title="Adder's-tongue"),
    frame("7", 600, 450, 120, title="The fern house in winter, seen from the north", fixing=HOOK),
    frame("8", 250, 300, 25, title="Moonwort", hanger=KEYHOLES, fixing=Fixing(kind="screw", diameter=4.0)),
    frame("9", 360, 280, 70, title="Lady fern"),
    frame("10", 280, 360, 66, title="Male fern", hanger=RINGS),
    frame("11", 410, 510, 80, title="Filmy fern"),
    frame("12", 100, 150, 14, title="Spleenwort", hanger=SAWTOOTH),
)
ROWS = (("1", "2", "3", "4"), ("5", "6", "7", "8"), ("9", "10", "11", "12"))


def twelve(on: Paper, unit: str = "mm") -> Job:
    """Twelve frames of many sizes with every kind of hanger."""
    return job(*TWELVE, group=group(ROWS, gap=45.0), paper=on, unit=unit, title="Twelve ferns")


def low_and_wide() -> Job:
    """A row of frames no higher than half a page, with the nails close under their top edges."""
    names = ("W", "X", "Y", "Z")
    frames = [frame(name, 480, 130, 15, title="Frieze", hanger=SAWTOOTH) for name in names]
    return job(*frames, group=group((names,), gap=30.0), title="Friezes", paper=paper("a4"))


def nail_on_target() -> Job:
    """A frame that hangs from its very middle: its nail point lies a millimetre off the two lines' crossing."""
    return job(frame("N", 300, 200, 100, title="Nail on the target"))


GENERATED = {
    "twelve, a4, marks": lambda: twelve(paper("a4")),
    "twelve, letter, all": lambda: twelve(paper("letter", cover="all"), "in"),
    "twelve, a4, nails": lambda: twelve(paper("a4", cover="nails"), "cm"),
    "twelve, letter, linked": lambda: twelve(paper("letter", cover="linked"), "in"),
    "low and wide": low_and_wide,
    "nail on target": nail_on_target,
}
NAMES = (*SAMPLE_NAMES, *GENERATED)


def frieze(on: Paper) -> Job:
    """Eleven wide frames in a row of 9.2 m: more than a page of 5 m can show."""
    names = tuple(f"F{number}" for number in range(1, 12))
    frames = [frame(name, 780, 430, 70, title="Frieze") for name in names]
    wide = Wall(name="", width=12000.0, height=3000.0)
    return job(*frames, group=group((names,), gap=62.0), title="The long frieze", paper=on, wall=wide)


def lying(on: Paper) -> Job:
    """Three frames in a row, much wider than high: one page of it comes off a narrow roll lying on its side."""
    frames = [frame(name, 500, 400, 70, title="Lying fern") for name in ("L", "M", "N")]
    return job(*frames, group=group((("L", "M", "N"),), gap=50.0), title="Lying ferns", paper=on, unit="in")


def roll(width: float) -> Paper:
    """A roll of this width (mm), cut to at most 5 m."""
    return replace(paper("a4"), name=f"roll {width:g} mm", width=width, height=5000.0, kind="roll")


LARGE = {
    "one piece": lambda: twelve(large_page(paper("a4"))),
    "one piece, inches": lambda: twelve(large_page(paper("letter")), "in"),
    "one piece, lying": lambda: lying(large_page(paper("letter"))),
    "two panels": lambda: frieze(large_page(paper("a4"))),
    "roll 610": lambda: twelve(roll(610.0)),
    "roll 24 in": lambda: twelve(roll(609.6), "in"),
    "long roll": lambda: frieze(roll(610.0)),
}
UNCUT = {
    "uncut a4": lambda: twelve(paper("a4", trim="none")),
    "uncut letter, all": lambda: twelve(paper("letter", trim="none", cover="all"), "in"),
    "uncut a4, linked": lambda: twelve(paper("a4", trim="none", cover="linked")),
    "uncut, wide overlap": lambda: twelve(paper("a3", trim="none", overlap=30.0)),
}
CROWDED = {
    f"crowded {seed}, {size}, {trim}, {cover}": partial(
        crowded, seed, paper(size, trim=trim, cover=cover), "in" if size == "letter" else "mm"
    )
    for seed, (size, trim, cover) in enumerate(
        product(("letter", "a4"), ("cut", "none"), ("all", "marks", "nails", ""))
    )
    if cover  # every fourth seed is left out
}
CROWDED |= {
    f"crowded {seed}, {size}, {trim}, linked": partial(crowded, seed, paper(size, trim=trim, cover="linked"), unit)
    for seed, size, trim, unit in ((16, "letter", "cut", "in"), (2, "letter", "cut", "in"), (4, "a4", "none", "mm"))
}
LED = "crowded 18, letter, none, all"  # a label is led to
CROWDED[LED] = partial(crowded, 18, paper("letter", trim="none", cover="all"), "in")
SPARING = ("nails", "linked")
"""What is on paper where not every mark of the wall has to be."""

LINKED = {"linked a4": lambda: twelve(paper("a4", cover="linked"))}
SPECIAL = {**LARGE, **UNCUT, **CROWDED, **LINKED}
"""Jobs for which not every test of the others holds."""


@dataclass(frozen=True)
class Everything:
    """One job with all that comes of it."""

    name: str
    job: Job
    plan: Plan
    sheets: SheetPlan
    lettering: Lettering
    template: Template
    pdf: bytes
    report: dict[str, Any]

    @cached_property
    def reader(self) -> pypdf.PdfReader:
        return pypdf.PdfReader(io.BytesIO(self.pdf), strict=True)

    @cached_property
    def marks(self) -> list[Marks]:
        """What every page of the file draws, page 1 first."""
        return made_once(("marks", self.pdf), lambda: [page_marks(page) for page in self.reader.pages])


def asked(name: str) -> Job:
    """The sample or generated job of this name."""
    return read_job(SAMPLES / f"{name}.toml") if name in SAMPLE_NAMES else {**GENERATED, **SPECIAL}[name]()


@cache
def made(name: str) -> Everything:
    """All that comes of it."""
    return made_once(("made", name), lambda: make(asked(name), name))


HARDLY = 2
"""Steps of a search where all that matters is that a job comes through (conftest.py).  Our own choice."""


def make(job: Job, name: str = "", printer: Printer | None = None) -> Everything:
    """All that comes of a job, corrected for the printer where one is given."""
    assert quickest.LEAST_STEPS > HARDLY, "other tests would take what was hardly searched"
    plan = plan_wall(job)
    findings, sheets, lettering = find(plan), plan_sheets(plan, job.paper, printer), Lettering()
    expected = expected_error(plan, sheets)
    template = draw_template(plan, findings, sheets, expected, lettering)
    report = template_report(plan, findings, sheets, expected, len(template.pages))
    return Everything(name, job, plan, sheets, lettering, template, write_pdf(template, lettering), report)
