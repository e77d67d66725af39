"""Paper by name: width and height in mm, upright; and the sheets that are taken where the job has a roll.

ISO 216 (A and B series); ANSI/ASME Y14.1 and the PWG 5101.1 names of the US sizes, in inches of 25.4 mm.  A table
of our own because published lists differ in the rounding, and a rounded page is printed scaled.
"""

from __future__ import annotations

import re

from templates_gen.base.errors import InputError, did_you_mean
from templates_gen.base.record import Record, replace
from templates_gen.base.units import INCH, parse_length
from templates_gen.job.model import Job, Paper

SIZES: dict[str, tuple[float, float]] = {
    # ISO 216
    "a0": (841, 1189), "a1": (594, 841), "a2": (420, 594), "a3": (297, 420), "a4": (210, 297), "a5": (148, 210),
    "b1": (707, 1000), "b2": (500, 707), "b3": (353, 500), "b4": (250, 353), "b5": (176, 250),
    # PWG 5101.1: na_letter, na_legal, na_ledger (11 x 17 upright), na_super-b
    "letter": (8.5 * INCH, 11 * INCH), "legal": (8.5 * INCH, 14 * INCH), "tabloid": (11 * INCH, 17 * INCH),
    "ledger": (11 * INCH, 17 * INCH), "super b": (13 * INCH, 19 * INCH),
    # ANSI/ASME Y14.1
    "ansi c": (17 * INCH, 22 * INCH), "ansi d": (22 * INCH, 34 * INCH), "ansi e": (34 * INCH, 44 * INCH),
    # architectural sizes, PWG 5101.1 (na_arch-…)
    "arch a": (9 * INCH, 12 * INCH), "arch b": (12 * INCH, 18 * INCH), "arch c": (18 * INCH, 24 * INCH),
    "arch d": (24 * INCH, 36 * INCH), "arch e": (36 * INCH, 48 * INCH),
}  # fmt: skip

USUAL_SIZES = {"in": "letter", "cm": "a4", "mm": "a4"}
"""What is in most printers where people measure in a unit.  Common practice, no source."""

DEFAULT_MARGIN = (7.0, 7.0, 13.0, 7.0)
"""Top, right, bottom, left in mm.  All but a few of 1,244 A4 printer drivers reach this far: in 100 % the sides are
within 6.35 mm, in 99.8 % the top is, in 95.9 % the bottom is within 12.7 mm (our count over the published driver
data of escpr, hplip and gutenprint)."""

DEFAULT_OVERLAP = 12.0
"""mm that two neighbouring sheets share: room for a registration mark and a trim line.  Common practice, no source."""

LEAST_OVERLAP, MOST_OVERLAP = 10.0, 40.0
"""mm.  Below the first, a registration mark does not fit into a join.  Our own marks decide, no source."""

LEAST_SIDE, MOST_SIDE = 80.0, 5000.0
"""mm.  A sheet smaller than the first has no room for its own marks (our design); one larger than the second is more
than 14,400 PDF units, which readers refuse (ISO 32000-1, Annex C.2)."""

ROLLS = "roll 24 in, roll 36 in, roll 42 in, roll 44 in, roll 610 mm, roll 914 mm"
"""Rolls to name as examples: 24, 36, 42 and 44 in (from memory), 609 and 914 mm among the roll sizes that a
wide-format printer offers (istopwg/ippsample, issue 216)."""

SHOP_MARGIN = (5.0, 5.0, 5.0, 5.0)
"""mm; a print shop's roll printer reaches nearly to the edge.  Common practice, no source."""

_ROLL = re.compile(r"roll[\s_-]+(?P<width>.*)", re.IGNORECASE | re.DOTALL)
_PWG = re.compile(r"[a-z]+_[a-z0-9.-]+_(\d+(?:\.\d+)?)x(\d+(?:\.\d+)?)(mm|in)", re.IGNORECASE)


def checked_size(width: float, height: float, where: str) -> tuple[float, float]:
    """The same size (mm).  Raises InputError when no page of a template can be that small or large."""
    if not (LEAST_SIDE <= width <= MOST_SIDE and LEAST_SIDE <= height <= MOST_SIDE):
        problem = f"found {width:g} × {height:g} mm, expected sides of {LEAST_SIDE:g} to {MOST_SIDE:g} mm"
        raise InputError(where, problem, "choose larger paper" if min(width, height) < LEAST_SIDE else "")
    return width, height


def roll_width(name: str, where: str) -> float | None:
    """The width in mm of a roll by its name, such as "roll 24 in"; None for the name of any other paper.

    Raises InputError for a roll without a width, or without its unit: 24 and 610 are both widths of a roll.
    """
    match = _ROLL.fullmatch(name.strip()) if name.strip().lower() != "roll" else None
    if match is None and not name.strip().lower().startswith("roll"):
        return None
    try:
        width = parse_length(match["width"], "mm") if match and re.search(r"[a-z\"”″]", match["width"].lower()) else 0.0
    except ValueError:
        width = 0.0
    if not width:
        problem = f"found {name!r}, expected a roll by its width and unit"
        raise InputError(where, problem, f"such as {ROLLS}")
    return checked_size(width, MOST_SIDE, where)[0]


def paper_size(name: str, where: str) -> tuple[float, float]:
    """Width and height in mm, upright, of a paper by its name or its PWG 5101.1 self-describing name.

    Raises InputError for an unknown name, naming the known ones, and for a size that no page of a template can have.
    """
    key = re.sub(r"^(us|iso|din) ", "", " ".join(re.split(r"[\s_-]+", name.strip().lower())))
    if key in SIZES:
        return SIZES[key]
    if match := _PWG.fullmatch(name.strip()):
        scale = INCH if match[3].lower() == "in" else 1.0
        return checked_size(float(match[1]) * scale, float(match[2]) * scale, where)
    known = f"known: {', '.join(SIZES)}, [width, height], or {ROLLS}"
    raise InputError(where, f"found {name!r}, expected a paper size", did_you_mean(key, SIZES, known))


def sheet_size(name: str, where: str) -> tuple[float, float]:
    """The same of what a sheet can be printed on.  Raises InputError for a roll, too."""
    if roll_width(name, where):
        raise InputError(where, f"found {name!r}, expected sheets", "a roll is for the template alone")
    return paper_size(name, where)


def named_sheet(name: str, where: str) -> tuple[Paper, str]:
    """A sheet of this size as it is without a job, and the unit of it: "in" where its sides are of half inches, else
    "mm".  Raises InputError for an unknown size, and for a roll."""
    plain = " ".join(name.split()).lower()
    width, height = sheet_size(plain, where)
    halves = [side / INCH * 2 for side in (width, height)]
    unit = "in" if all(abs(half - round(half)) < 1e-6 for half in halves) else "mm"
    sheet = Paper(name=plain, width=width, height=height, margin=DEFAULT_MARGIN, overlap=DEFAULT_OVERLAP, cover="marks")
    return sheet, unit


def first_paper(paper: Paper, unit: str) -> Paper:
    """The sheets that the first pages are printed on: the job's own, else letter where inches are used, or a4."""
    if paper.kind == "sheets":
        return paper
    name = USUAL_SIZES[unit]
    width, height = SIZES[name]
    plain = replace(paper, name=name, width=width, height=height, margin=DEFAULT_MARGIN, kind="sheets", first=None)
    return paper.first or plain


def large_page(paper: Paper) -> Paper:
    """The paper of one large page for a print shop or plotter; what the first pages are on is kept in `first`."""
    return replace(
        paper, kind="one piece", width=MOST_SIDE, height=MOST_SIDE, margin=SHOP_MARGIN, cover="panels", trim="cut",
        first=paper.first if paper.kind != "sheets" else paper,
    )  # fmt: skip


def own_paper(job: Job, size: str | None = None) -> Paper:
    """The paper of this size, or the job's sheets, or what the first pages of a roll or of one piece are printed on.

    Raises InputError for an unknown size, and for a roll.
    """
    paper = first_paper(job.paper, job.unit)
    if size is None:
        return paper
    width, height = sheet_size(size, "--paper")
    return replace(paper, name=size, width=width, height=height)


class Roll(Record, frozen=True):
    """A roll: its width in mm, the name that `--paper` takes for it, and the width in both systems."""

    width: float
    name: str
    both: str


def _inches(width: int) -> Roll:
    return Roll(width * INCH, f"{width} in", f"{width} in ({width * INCH:.0f} mm)")


def _mm(width: int) -> Roll:
    return Roll(float(width), f"{width} mm", f"{width} mm ({width / INCH:.0f} in)")


_IN_INCHES = tuple(map(_inches, (24, 36, 42, 44)))
_IN_MM = tuple(map(_mm, (610, 914, 1067)))
"""24, 36, 42 and 44 in, and 1067 mm: from memory.  609 (sold as 610) and 914 mm are among the roll sizes that a
wide-format printer offers (istopwg/ippsample, issue 216)."""


def usual_rolls(unit: str) -> tuple[Roll, ...]:
    """The usual rolls where people measure in this unit, the narrowest first."""
    return _IN_INCHES if unit == "in" else _IN_MM


def roll_for(side: float, unit: str) -> Roll | None:
    """The narrowest usual roll that is as wide as this side of a page (mm); None where none is."""
    return next((roll for roll in usual_rolls(unit) if side <= roll.width), None)


def on_its_side(width: float, height: float, unit: str) -> bool:
    """Whether a page of this size (mm) comes off a narrower roll when it is turned by a quarter."""
    upright, turned = roll_for(width, unit), roll_for(height, unit)
    return turned is not None and (upright is None or turned.width < upright.width)
