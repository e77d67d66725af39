"""The paper that hung the group on its own wall hangs it on another one: where it goes there, on a page or two."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import Any

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.file_names import quoted
from templates_gen.base.geometry import TOLERANCE, Rect, Span
from templates_gen.base.record import Record, replace
from templates_gen.base.units import show_both
from templates_gen.checks import Finding, findings_data
from templates_gen.checks.untold import not_checked, not_checked_words
from templates_gen.documents.instructions.cautions import take_care
from templates_gen.documents.instructions.first_pages import found_words, schedule_words
from templates_gen.documents.instructions.hanging_day import hanging_steps
from templates_gen.documents.instructions.sheet_map import to_map
from templates_gen.documents.instructions.taping_steps import diagonals
from templates_gen.documents.of_job import numbered, of_job, text_area, whose
from templates_gen.documents.proof.features import outline
from templates_gen.documents.schedule.carrying import flagged_nails
from templates_gen.documents.schedule.distances import above_floor, left_end
from templates_gen.drawing.flow import Flow
from templates_gen.drawing.items import Circle, Item, Line, Polygon, Template, Text
from templates_gen.drawing.lettering import Lettering
from templates_gen.drawing.pdf.writing import write_pdf
from templates_gen.drawing.placing import Room, placed_near
from templates_gen.drawing.sizes import H7, H18, H25, MEDIUM, NARROW
from templates_gen.drawing.strokes import CENTRE_DASH
from templates_gen.job.model import Feature, Frame
from templates_gen.job.paper_sizes import own_paper
from templates_gen.tiling.long_lines import centre_spans, level_spans
from templates_gen.tiling.page import page_of
from templates_gen.tiling.sheet import SheetPlan

STEPS = ("Mark the wall", "Paper up", "Check the pitch", "Mark the rest")
"""The steps of the hanging day that put the paper up; the others are as on the paper's own first pages."""

HIGHEST, NAIL, TARGET, BESIDE, BY_LINE = 62.0, 0.7, 2.2, 12.0, 0.4
"""mm that the picture of the wall is high at most; a nail's radius on it, half the target, how far a name may stand
beside what it names, and what it keeps from the two lines.  Our own design, no source."""


class SamePaper(Record, frozen=True):
    """What is written in place of sheets: the pages, their bytes, and what a machine reads of them."""

    template: Template
    pdf: bytes
    report: dict[str, Any]


def serves(old: Plan, new: Plan) -> bool:
    """Whether the paper of one plan shows the other: frames, nails and both lines stand to each other as they do there.

    What is written on it of heights above the floor may be another.
    """
    if old.slope != new.slope or [_frame(hung) for hung in old.frames] != [_frame(hung) for hung in new.frames]:
        return False
    pairs = zip(_places(old), _places(new), strict=True)
    return all(abs(one - two) <= TOLERANCE for one, two in pairs)


def _frame(hung: Hung) -> Frame:
    """A frame but for its picture, which no sheet shows."""
    return replace(hung.frame, image="", image_missing=False)


def _places(plan: Plan) -> list[float]:
    """Where all that the paper shows is, from the two lines (mm), in one order."""
    x, y = plan.centre_line, plan.level_line
    rects = [hung.rect.shifted(-x, -y) for hung in plan.frames]
    spans: list[Span] = [(low - x, high - x) for low, high in level_spans(plan)]
    spans += [(low - y, high - y) for low, high in centre_spans(plan)]
    places = [side for rect in rects for side in (rect.x0, rect.y0, rect.x1, rect.y1)]
    places += [end for span in spans for end in span]
    return places + [place for nail in plan.nails for place in (nail.x - x, nail.y - y)]


def same_paper(
    old: Plan, plan: Plan, findings: Sequence[Finding], sheets: SheetPlan, command: str, lettering: Lettering
) -> SamePaper:
    """What is to be known to hang the old paper on the new wall; `command` writes all sheets all the same."""
    page = page_of(own_paper(plan.job), turned=False)
    flow = Flow(text_area(page), lettering)
    flow.paragraph(plan.job.title, H7, bold=True)
    flow.paragraph(" · ".join(filter(None, (whose(plan.job), "the paper you have, on another wall"))), H25)
    flow.heading("The paper serves here, too")
    for words in _serves_words(old, plan, command):
        flow.paragraph(words)
    flow.picture(_height(plan, flow.area), partial(_wall, plan, lettering))
    flow.heading("Put it up")
    flow.steps(_steps(plan, sheets))
    flagged = flagged_nails(plan, findings)
    flow.together(partial(schedule_words, plan=plan, flagged=flagged), lines=len(plan.frames))
    found_words(flow, findings, not_checked_words(not_checked(plan)))
    flow.together(partial(take_care, wall=plan.job.wall))
    template = of_job(plan.job, "the same paper on another wall", page, numbered(flow.pages), attach=True)
    return SamePaper(template, write_pdf(template, lettering), _data(old, plan, findings))


def _serves_words(old: Plan, plan: Plan, command: str) -> Iterator[str]:
    """Why no sheet is printed, what on the old paper is not true here, and how to have all sheets."""
    where = f"“{old.job.wall.name}”" if old.job.wall.name else "the wall it was made for"
    yield (
        f"The frames, the nails and both lines are arranged as on {where}. So the taped paper that hung them there "
        f"hangs them here, and no sheet is printed. To print every sheet anyway:  {command}"
    )
    wrong = list(_wrong(old, plan))
    if wrong:
        yield (
            f"What the paper says of the old wall is not true here: {'; '.join(wrong)}. The table below has the new "
            "figures. Where the paper shows the old wall's edges, steps or features, ignore them."
        )


def _wrong(old: Plan, plan: Plan) -> Iterator[str]:
    """How far the heights and the distances from the wall's end that are on the paper are from those here."""
    up, right = plan.level_line - old.level_line, plan.centre_line - old.centre_line
    unit = plan.job.unit
    if abs(up) > TOLERANCE:
        way = "higher" if up > 0 else "lower"
        yield f"all heights above the floor are {show_both(abs(up), unit)} {way} here than it says"
    if abs(right) > TOLERANCE:
        way = "farther from" if right > 0 else "nearer to"
        yield f"all is {show_both(abs(right), unit)} {way} the wall's left end than it says"


def _steps(plan: Plan, sheets: SheetPlan) -> Iterator[str]:
    """From the paper that was kept to the nails."""
    yield "Lay the paper out and look it over: tape torn joins again. Its slits are cut already."
    yield from diagonals(plan, len(sheets.sheets))
    for step in hanging_steps(plan, sheets):
        if step.name in STEPS:
            yield step.words
    if covered := _covered(plan):
        yield f"The paper covers what is on this wall: {'; '.join(covered)}. Cut it out there, or fold the paper back."
    yield "Look for cables and pipes. Then nail, take the paper off and hang, as its own first pages say."


def _covered(plan: Plan) -> list[str]:
    """The features behind the paper, and where they are."""
    return [
        f"{feature.called}, {show_both(feature.rect.x0, plan.job.unit)} from {left_end(plan)} and "
        f"{show_both(feature.rect.y0, plan.job.unit)} {above_floor(plan)}"
        for feature in plan.job.wall.features
        if feature is not plan.job.group.around and feature.rect.overlaps(plan.group)
    ]


def _height(plan: Plan, area: Rect) -> float:
    """How high the picture of the wall is (mm)."""
    rect = plan.job.wall.rect
    return min(HIGHEST, area.width * rect.height / rect.width)


def _wall(plan: Plan, lettering: Lettering, place: Rect) -> Iterator[Item]:
    """The wall with what is on it, the frames with their nails, both lines and the target."""
    wall = plan.job.wall
    _, at = to_map(wall.rect, place)
    yield Polygon(tuple((at(Rect(x, y, x, y)).x0, at(Rect(x, y, x, y)).y0) for x, y in wall.corners), MEDIUM, False)
    for feature in wall.features:
        yield from outline(feature, at(feature.rect))
    yield from (Polygon(at(hung.rect).corners, NARROW, False) for hung in plan.frames)
    cross = at(Rect(plan.centre_line, plan.level_line, plan.centre_line, plan.level_line))
    yield Line(cross.x0, place.y0, cross.x0, place.y1, NARROW, CENTRE_DASH)
    whole = at(wall.rect)
    yield Line(whole.x0, cross.y0, whole.x1, cross.y0, NARROW)
    spots = (at(Rect(nail.x, nail.y, nail.x, nail.y)) for nail in plan.nails)
    yield from (Circle(spot.x0, spot.y0, NAIL, 0.0, True) for spot in spots)
    x, y = cross.x0, cross.y0
    yield Polygon(((x - TARGET, y), (x, y + TARGET), (x + TARGET, y), (x, y - TARGET)), MEDIUM, False)
    yield from _names(plan, at, whole, lettering)


def _names(plan: Plan, at: Callable[[Rect], Rect], whole: Rect, lettering: Lettering) -> Iterator[Item]:
    """The names of frames and features that have room, and where the target is."""
    room = Room(whole)
    line = at(Rect(plan.centre_line, plan.level_line, plan.centre_line, plan.level_line))
    room.take(Rect(line.x0 - BY_LINE, whole.y0, line.x0 + BY_LINE, whole.y1))
    room.take(Rect(whole.x0, line.y0 - BY_LINE, whole.x1, line.y0))
    room.take(Rect.about(line.x0, line.y0, 2 * TARGET, 2 * TARGET))
    for nail in plan.nails:
        spot = at(Rect(nail.x, nail.y, nail.x, nail.y))
        room.take(spot.grown(NAIL))
    frames = [at(hung.rect) for hung in plan.frames]
    room.lines += frames
    room.take(*(at(feature.rect) for feature in plan.job.wall.features if not _holds(feature, at, lettering)))
    told: list[tuple[str, tuple[float, ...], Rect, Rect]] = [("target", (H18,), line, line.grown(BESIDE))]
    told += [(hung.frame.id, (H25, H18), rect, rect) for hung, rect in zip(plan.frames, frames, strict=True)]
    told += [
        (feature.name, (H18,), at(feature.rect), at(feature.rect).grown(BESIDE)) for feature in plan.job.wall.features
    ]
    for text, heights, near, within in told:
        texts = (Text(0.0, 0.0, text, height) for height in heights)
        placed = (placed_near(text, near.cx, near.cy, within, room, lettering) for text in texts)
        yield from filter(None, (next(filter(None, placed), None),))


def _holds(feature: Feature, at: Callable[[Rect], Rect], lettering: Lettering) -> bool:
    """Whether the feature's picture is large enough for its name; on a smaller one no lettering can be read."""
    name, place = lettering.box(Text(0.0, 0.0, feature.name, H18)), at(feature.rect)
    return name.width < place.width and name.height < place.height


def _data(old: Plan, plan: Plan, findings: Sequence[Finding]) -> dict[str, Any]:
    """For a machine: that the old paper serves, how far it moves on the wall, and where its nails then are (mm)."""
    return {
        "format": 1,
        "job": plan.job.title,
        "same_paper": True,
        "centre_line": plan.centre_line,
        "level_line": plan.level_line,
        "moved": [plan.centre_line - old.centre_line, plan.level_line - old.level_line],
        "nails": [{"name": nail.name, "x": nail.x, "y": nail.y} for nail in plan.nails],
        "findings": findings_data(findings),
    }


def command_for(path: str, wall: str) -> str:
    """What writes every sheet all the same."""
    return f"templates-gen template {quoted(path)} --wall {quoted(wall)} --all-sheets"
