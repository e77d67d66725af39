"""What every nail carries and goes into, which findings are about it, and which nails want thought before they are
driven: in words, for the schedule and on paper."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.record import Record
from templates_gen.base.units import GRAVITY, show_mass_both
from templates_gen.checks import STOP, WARN, Finding
from templates_gen.checks.cables.wiring import Entry, entries, nail_zones
from templates_gen.documents.schedule.distances import FACING, nail_called
from templates_gen.hanging.studs import on_stud
from templates_gen.job.model import Fixing, Wall

LOOK_FIRST = "look first"

HEADER = ("nail", "carries", "fixing", "stud", "cables", "before you hang")


NAMES = 48
"""How many letters of nails' names stand in a cell, if there is more than one.  Our own design, no source."""


class Carried(Record, frozen=True):
    """One nail in words: what it carries, its fixing, stud or not, cables; "" for what has nothing to say.

    `see` holds the numbers, from 1, of the findings about it or its frame.
    """

    name: str
    called: str
    load: str
    fixing: str
    stud: str
    cables: str
    see: tuple[int, ...]


def carried(plan: Plan, findings: Sequence[Finding]) -> tuple[Carried, ...]:
    """A line for every nail of a plan, those not measured yet too; none where the job tells nothing to say in them."""
    zones, wall = nail_zones(plan), plan.job.wall
    told = wall.wiring not in ("", "none") or wall.studs is not None or flagged_nails(plan, findings)
    about = numbers_by_nail(plan, findings)
    if not told and not about and all(hung.frame.weight is None for hung in plan.frames):
        return ()
    by_id = {hung.frame.id: hung for hung in plan.frames}
    return tuple(
        Carried(
            name=entry.name,
            called=nail_called(entry.name, entry.frame),
            load=_load(entry, by_id[entry.frame], plan.job.unit),
            fixing=_fixing(by_id[entry.frame].frame.fixing, plan.job.unit),
            stud=_stud(entry.x, wall),
            cables=_cables(entry, wall, zones),
            see=about.get(entry.name, ()),
        )
        for entry in entries(plan)
    )


def carried_rows(lines: Sequence[Carried], flagged: frozenset[str]) -> Iterator[tuple[str, ...]]:
    """Rows of text under `HEADER`, one for the nails of which the same is to be said, as many as have room in its cell;
    those named in `flagged` get a mark."""
    alike: dict[tuple[str, ...], list[str]] = {}
    for line in lines:
        same = line.load, line.fixing, line.stud, line.cables, ", ".join(map(str, line.see))
        mark = MARK if line.name in flagged else ""
        alike.setdefault((mark, *same), []).append(line.called)
    for (mark, *told), called in alike.items():
        yield from ((f"{mark} {names}".lstrip(), *told) for names in _in_cells(called))


def _in_cells(called: Sequence[str]) -> Iterator[str]:
    """Names of nails in a row, as many as have room in a cell; the last of those that are so is called facing."""
    some: list[str] = []
    for name in called:
        more = [other.removesuffix(FACING) for other in some] if name.endswith(FACING) else some
        if some and len(", ".join([*more, name])) > NAMES:
            yield ", ".join(some)
            more = []
        some = [*more, name]
    yield ", ".join(some)


def carried_words(line: Carried) -> str:
    """All there is to say of a nail, in one line."""
    load = f"carries {line.load}" if line.load else ""
    see = f"see {', '.join(map(str, line.see))}" if line.see else ""
    stud = f"stud {line.stud}" if line.stud == NOT_KNOWN else line.stud
    return "; ".join(filter(None, (load, line.fixing, stud, f"cables: {line.cables}", see)))


def _load(entry: Entry, hung: Hung, unit: str) -> str:
    """The nail's share of the weight, and its force; that of a wire between two fixings is more than the share."""
    if hung.frame.weight is None:
        return ""
    share = hung.frame.weight * next(
        part for point, part in zip(hung.bearings, hung.shares, strict=True) if point.nail_of(entry.frame) == entry.name
    )
    pull = next((nail.pull for nail in hung.nails if nail.name == entry.name), None)
    down, whole = f"{share * GRAVITY:.0f} N", f"{pull or share * GRAVITY:.0f} N"
    force = down if down == whole else f"{down} down, {whole} with the wire's pull"
    return f"{'est. ' if hung.frame.estimated else ''}{show_mass_both(share, unit)} ({force})"


def _fixing(fixing: Fixing, unit: str) -> str:
    return fixing.called + ("" if fixing.rating is None else f", rated {show_mass_both(fixing.rating, unit)}")


NOT_KNOWN = "not known"


def _stud(x: float, wall: Wall) -> str:
    hit = on_stud(x, wall)
    if hit is None:
        return NOT_KNOWN if wall.studs is not None or wall.build == "drywall" else ""
    return "in a stud" if hit else "no stud"


def _cables(entry: Entry, wall: Wall, zones: Mapping[str, Sequence[str]]) -> str:
    """Where cables may run, or that one has to look all the same: never that there are none."""
    if reasons := zones.get(entry.name):
        return f"may run here: {'; '.join(reasons)}"
    return LOOK_FIRST if wall.wiring not in ("", "none") else f"not known, {LOOK_FIRST}"


MARK = "!"

KEY = f"{MARK} means: read what was found about this nail or its frame before you nail."


def flagged_nails(plan: Plan, findings: Iterable[Finding]) -> frozenset[str]:
    """The names of the nails that lie in a zone where cables may run, or that a stop or a warn finding is about.

    A finding about one nail of a frame counts for that nail, one about a frame for all its nails.
    """
    grave = [finding for finding in findings if finding.level in (STOP, WARN)]
    return frozenset(nail_zones(plan)) | frozenset(numbers_by_nail(plan, grave))


def numbers_by_nail(plan: Plan, findings: Iterable[Finding]) -> Mapping[str, tuple[int, ...]]:
    """The numbers, from 1, of the findings about each nail or its whole frame; a nail without any is left out."""
    nails_of: dict[str, list[str]] = {}
    for entry in entries(plan):
        nails_of.setdefault(entry.frame, []).append(entry.name)
    found: dict[str, list[int]] = {}
    for number, finding in enumerate(findings, 1):
        names = finding.nails or [name for frame in finding.about for name in nails_of.get(frame, ())]
        for name in dict.fromkeys(names):
            found.setdefault(name, []).append(number)
    return {name: tuple(numbers) for name, numbers in found.items()}


def with_mark(text: str, name: str, flagged: frozenset[str]) -> str:
    """The text, with the mark before it when the nail of this name is one of the flagged.

    Before it, because a long name is cut at its end where it does not fit.
    """
    return f"{MARK} {text}" if name in flagged else text


def has_mark(row: Iterable[str]) -> bool:
    """True for a row of a table with a cell that `with_mark` has marked."""
    return any(cell.startswith(f"{MARK} ") for cell in row)
