"""The schedule: every frame and every nail of a plan, as values, as rows to print, and as data for a machine."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.csv_cells import as_csv as table_csv
from templates_gen.base.units import other_unit, show, show_both, tenth
from templates_gen.base.words import lines_of
from templates_gen.checks import Finding, findings_data
from templates_gen.checks.cables.wiring import nail_zones
from templates_gen.checks.sentences import no_drop_words
from templates_gen.documents.schedule.carrying import KEY, Carried, carried, carried_words, flagged_nails, with_mark
from templates_gen.documents.schedule.distances import (
    above_floor,
    left_end,
    nail_called,
    pitch_words,
    sideways,
    stood_on,
    upward,
)
from templates_gen.hanging.bearings import Nail
from templates_gen.hanging.fixings import wanted_hooks
from templates_gen.hanging.studs import on_stud
from templates_gen.job.weights import weight_words

HEADER = ("frame", "title", "size", "drop", "nail", "floor", "centre line", "level line", "left end")
ON_STAIRS = "stairs"
"""What a column of heights above treads and landings is called; it comes before the floor's."""

CSV_HEADER = (
    "id", "title", "left_mm", "bottom_mm", "width_mm", "height_mm", "drop_mm", "nail", "x_mm", "y_mm",
    "from_centre_mm", "from_level_mm", "bears_y_mm", "load_n", "weight_is", "pull_n", "fixing", "stud", "zones",
    "think_first",
)  # fmt: skip


def header(plan: Plan) -> tuple[str, ...]:
    """The columns of `rows`."""
    return (*HEADER[:5], ON_STAIRS, *HEADER[5:]) if plan.job.wall.stairs else HEADER


def rows(plan: Plan, flagged: frozenset[str] = frozenset()) -> Iterator[tuple[str, ...]]:
    """A row of text for every nail, in the job's unit; a frame without a nail has one row that says so.

    The nails named in `flagged` get a mark.
    """
    unit = plan.job.unit
    for hung in plan.frames:
        frame, rect = hung.frame, hung.rect
        own = (frame.id, frame.title, f"{_bare(rect.width, unit)} × {_bare(rect.height, unit)}")
        for nail in hung.nails:
            yield (
                *own, show(rect.y1 - nail.bears_y, unit),
                with_mark(nail_called(nail.name, frame.id), nail.name, flagged), *_on_stairs(nail, plan),
                show(nail.y, unit), sideways(nail.x - plan.centre_line, unit), upward(nail.y - plan.level_line, unit),
                show(nail.x, unit),
            )  # fmt: skip
        if hung.unmeasured:
            x = hung.unmeasured[0].x
            none = with_mark("none yet", _flagged_one(hung, flagged), flagged)
            stairs = ("",) if plan.job.wall.stairs else ()
            yield (*own, "measure", none, *stairs, "", sideways(x - plan.centre_line, unit), "", show(x, unit))


def _on_stairs(nail: Nail, plan: Plan) -> tuple[str, ...]:
    """How high a nail is above the tread or landing under it; nothing where there is no stair."""
    under, height = stood_on(plan, nail.x)
    return (f"{show(nail.y - height, plan.job.unit)}, {under}",) if plan.job.wall.stairs else ()


def _flagged_one(hung: Hung, flagged: frozenset[str]) -> str:
    """The name of a nail that is flagged before its drop is measured; "" when none is."""
    names = (bearing.nail_of(hung.frame.id) for bearing in hung.unmeasured)
    return next((name for name in names if name in flagged), "")


def _bare(mm: float, unit: str) -> str:
    return show(mm, unit).rpartition(" ")[0]


COLUMNS = (13, 12, 14, 19, 21)
"""Widths of the text schedule's columns: 79 in all, for a terminal of 80."""

WIDTH = sum(COLUMNS)


def as_text(plan: Plan, findings: Sequence[Finding] = ()) -> str:
    """The schedule for a terminal: for every nail a line in the job's unit and one in the other system.

    Below both, what it carries and goes into.  A nail that wants thought, by the zones and the findings, has a mark;
    the findings that it names by number, and the key to the mark, are at the end.
    """
    flagged = flagged_nails(plan, findings)
    lines = [plan.job.title, *lines_words(plan), "", _columns("nail", "drop", "floor", "centre line", "level line")]
    about = {line.name: line for line in carried(plan, findings)}
    for hung in plan.frames:
        lines += [_headline(hung, plan.job.unit), *_nail_lines(hung, plan, flagged, about)]
    lines += _seen(findings, {number for line in about.values() for number in line.see})
    lines += ["", KEY] if flagged else []
    return "\n".join(lines)


def lines_words(plan: Plan) -> tuple[str, ...]:
    """Where the centre line, the level line and the pitch line are, each in words."""
    unit = plan.job.unit
    return (
        f"centre line {show_both(plan.centre_line, unit)} from {left_end(plan)}",
        f"level line {show_both(plan.level_line, unit)} {above_floor(plan)}",
        *pitch_words(plan),
    )


def _columns(*cells: str) -> str:
    return "".join(f"{cell:<{width}}" for cell, width in zip(cells, COLUMNS, strict=False)).rstrip()


def _headline(hung: Hung, unit: str) -> str:
    frame = hung.frame
    size = f"{_bare(hung.rect.width, unit)} × {show(hung.rect.height, unit)}"
    others = [part for part in (frame.id, size, weight_words(frame, unit)) if part]
    room = WIDTH - len("  ".join([*others, ""]))
    title = frame.title if len(frame.title) <= room else f"{frame.title[: max(0, room - 1)]}…"  # rather than the size
    return "  ".join(part for part in (frame.id, title if room > 1 else "", *others[1:]) if part)


def _seen(findings: Sequence[Finding], numbers: set[int]) -> list[str]:
    """The findings with these numbers, under a line that says so; nothing for none."""
    lines = [] if not numbers else ["", "found about these nails:"]
    for number, finding in enumerate(findings, 1):
        if number in numbers:
            lines += lines_of(f"{number:>3} {finding.level}  {finding.sourced}", WIDTH, later=" " * 10)
    return lines


def _nail_lines(hung: Hung, plan: Plan, flagged: frozenset[str], about: Mapping[str, Carried]) -> Iterator[str]:
    for nail in hung.nails:
        second = "(facing)" if nail.side else ""  # the left or right one as one faces the wall
        names = with_mark(nail.side or "nail", nail.name, flagged), second
        for unit, name in zip((plan.job.unit, other_unit(plan.job.unit)), names, strict=True):
            yield _columns(
                f"    {name}",
                show(hung.rect.y1 - nail.bears_y, unit),
                show(nail.y, unit),
                sideways(nail.x - plan.centre_line, unit),
                upward(nail.y - plan.level_line, unit),
            )
        yield from lines_of(_from_end(nail, plan), WIDTH, " " * COLUMNS[0], " " * COLUMNS[0])
        yield from _carried_lines(about.get(nail.name))
    if hung.unmeasured:
        none_yet = with_mark("no nail yet", _flagged_one(hung, flagged), flagged)
        yield from lines_of(f"{none_yet}: {no_drop_words(plan.job.paper.cover)}", WIDTH, " " * 4, " " * COLUMNS[0])
        for bearing in hung.unmeasured:
            yield from _carried_lines(about.get(bearing.nail_of(hung.frame.id)))


def _from_end(nail: Nail, plan: Plan) -> str:
    """How far a nail is from the wall's left end and, on stairs, above what one stands on."""
    unit, (under, height) = plan.job.unit, stood_on(plan, nail.x)
    end = f"{show_both(nail.x, unit)} from {left_end(plan)}"
    return f"{show_both(nail.y - height, unit)} above the {under}; {end}" if plan.job.wall.stairs else end


def _carried_lines(line: Carried | None) -> list[str]:
    if line is None:
        return []
    indent = " " * COLUMNS[0]
    return lines_of(carried_words(line), WIDTH, indent, indent)


def as_data(plan: Plan, findings: Sequence[Finding]) -> dict[str, Any]:
    """The schedule for a machine; all lengths in mm, to 0.1 mm."""
    wall, zones, flagged = plan.job.wall, nail_zones(plan), flagged_nails(plan, findings)
    # its rise for every mm to the right, and how high it is straight above the nosings
    pitch = {"slope": round(plan.slope, SLOPE_PLACES), "above_nosings": tenth(plan.job.group.height.at)}
    return {
        "format": 1,
        "job": plan.job.title,
        "unit": plan.job.unit,
        "wall": {"width": tenth(wall.width), "height": tenth(wall.height)},
        "centre_line": tenth(plan.centre_line),
        "level_line": tenth(plan.level_line),
        **({"pitch_line": pitch} if plan.slope else {}),
        "frames": [_frame_data(hung, plan, zones, flagged) for hung in plan.frames],
        "findings": findings_data(findings),
    }


SLOPE_PLACES = 6
"""Decimals of a slope: 0.2 mm on the longest wall.  Our own design, no source."""


def _frame_data(hung: Hung, plan: Plan, zones: Mapping[str, Sequence[str]], flagged: frozenset[str]) -> dict[str, Any]:
    frame, rect, wall = hung.frame, hung.rect, plan.job.wall
    hooks = wanted_hooks(frame, wall, tuple(bearing.x for bearing in hung.bearings))
    return {
        "id": frame.id,
        "title": frame.title,
        "left": tenth(rect.x0),
        "bottom": tenth(rect.y0),
        "width": tenth(rect.width),
        "height": tenth(rect.height),
        "drop": None if frame.drop is None else tenth(frame.drop),
        "weight_kg": None if frame.weight is None else round(frame.weight, 3),
        "weight_is": frame.weight_is,
        "nails": [
            {
                "name": nail.name, "x": tenth(nail.x), "y": tenth(nail.y),
                "from_centre": tenth(nail.x - plan.centre_line), "from_level": tenth(nail.y - plan.level_line),
                "bears_y": tenth(nail.bears_y), "load_n": None if nail.load is None else round(nail.load, 1),
                "zones": list(zones.get(nail.name, ())),
                "pull_n": None if nail.pull is None else round(nail.pull, 1),
                "stud": on_stud(nail.x, wall), "hooks_needed": hooks, "fixing": frame.fixing.called,
                "think_first": nail.name in flagged,
                **({"above_stairs": tenth(nail.y - stood_on(plan, nail.x)[1])} if wall.stairs else {}),
            }
            for nail in hung.nails
        ],
    }  # fmt: skip


def as_csv(plan: Plan, findings: Sequence[Finding] = ()) -> str:
    """The schedule as a spreadsheet: a row for every nail, and one for a frame without."""
    rows: list[list[object]] = []
    for data in as_data(plan, findings)["frames"]:
        own = [data[name] for name in ("id", "title", "left", "bottom", "width", "height", "drop")]
        for nail in data["nails"] or [{}]:
            where = [nail.get(name) for name in ("name", "x", "y", "from_centre", "from_level", "bears_y", "load_n")]
            holds = [nail.get(name) for name in ("pull_n", "fixing", "stud", "zones", "think_first")]
            rows.append([*own, *where, data["weight_is"], *holds])
    return table_csv(CSV_HEADER, rows)
