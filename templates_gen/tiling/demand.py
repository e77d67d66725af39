"""What of a plan has to be on paper: what must stay whole, and what may go on on the next sheet."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import Rect
from templates_gen.base.record import Record
from templates_gen.drawing.sizes import INNER_EDGE, MEDIUM, NAIL_ARM, NAIL_CLEAR, SCALE_FAR, SLIT_TO, TARGET
from templates_gen.tiling.cells import Clearance
from templates_gen.tiling.covered import Covered
from templates_gen.tiling.long_lines import centre_spans, level_spans, pieces, pitch_line

SCALE_LEAST = 120.0
"""mm that a drop scale is long, unless the frame is shorter; a third of the frame's height where that is more, since
rings usually sit about a third down.  Common practice, no source."""

EDGE_CLEAR = 3.0
"""mm between a frame's edge, or a long line, and a line to cut along it, so that nobody takes one for the other.  Our
own design."""

UNCUT_CLEAR = 1.5
"""mm between a frame's edge and the strip along it that is hidden where nothing is cut.  Our own design."""

BORDER = 4.0
"""mm between the group and a sheet's own marks where both are in one piece.  Our own design, no source."""

LINE_CLEAR = 7.0
"""mm on either side of the centre line and the level line for their ticks and names.  Our own design."""

PIECE = 20.0
"""mm of the pitch line, across or up, that are asked for at a time.  Our own design, no source."""

ARM = 15.0
"""mm from a frame's corner along either edge that are on paper, whatever else of its edges is.  Our own design."""

FOR_A_TWIN, ABOVE_FOOT = 40.0, 5.0
"""mm that a drop scale goes on past its drop, for that of a twin, and ends above the frame's lower edge.  Our own
design, no source."""


class Demand(Record, frozen=True):
    """Rectangles on the wall (mm) that sheets must show: `whole` inside one sheet, `divisible` on any; and `lines` that
    no trim line may run along: with whole edges, or the whole group, they have to be on some sheet, too."""

    whole: tuple[Rect, ...]
    divisible: tuple[Rect, ...]
    lines: tuple[Rect, ...]


def demand(plan: Plan, cover: str, clear: Clearance, hides: Covered | None = None, spare: bool = False) -> Demand:
    """What must be on paper for `cover`: "all" the group's rectangle, "panels" that with a border around it for the
    sheet's own marks, "edges" every mark with whole edges, "marks" that with the corners of the frames alone, "linked"
    the nails, and the drop scales on which a nail is still to be marked, with no cut along a line, "nails" only
    the nails.

    `clear` is what a sheet's own marks take on its four sides: the two long lines keep out of it.  `hides` is what
    the next sheet covers where nothing is cut: no edge and no drop scale may lie there along its whole length; with
    `spare` the scale of a known drop may, for its nail is on the paper.
    """
    nails = [nail_box(nail.x, nail.y) for nail in plan.nails]
    target = Rect.about(plan.centre_line, plan.level_line, 2 * TARGET, 2 * TARGET)
    whole = (*nails, target)
    if cover == "nails":
        return Demand(whole, (), ())
    if cover == "linked":
        return Demand(whole, tuple(_marked_by_hand(plan)), (*_edges(plan, hides), *_beside_long_lines(plan, hides)))
    edges = tuple(_edges(plan, hides))
    if hides:
        beyond = hides.beyond(True)
        edges += tuple(Rect(r.x0, r.y0, r.x1 + beyond, r.y1) for r in _drop_scales(plan, unknown=spare))
    if cover == "marks":
        parts = (*_corners(plan, hides), *_drop_scales(plan), *_pitch(plan), *_long_lines(plan, clear, False))
        return Demand(whole, parts, (*edges, *_beside_long_lines(plan, hides)))
    lines = (*_long_lines(plan, clear), *edges)
    if cover == "edges":
        return Demand(whole, (*_drop_scales(plan), *_pitch(plan)), lines)
    return Demand(whole, (bordered(plan.group, clear) if cover == "panels" else plan.group.grown(MEDIUM),), lines)


def not_hidden(parts: Iterable[Rect], hides: Covered | None) -> Iterator[Rect]:
    """The parts (wall mm) with what the next sheet may hide of its neighbour to the left or below: a search asks for so
    much more, that nothing is in the hidden strip alone."""
    right, top = (hides.beyond(True), hides.beyond(False)) if hides else (0.0, 0.0)
    return (Rect(r.x0, r.y0, r.x1 + right, r.y1 + top) for r in parts)


def bordered(group: Rect, clear: Clearance) -> Rect:
    """The group with room around it for a sheet's rulers and title, so that these stand beside the frames."""
    return Rect(
        group.x0 - clear.left - BORDER, group.y0 - clear.bottom - BORDER,
        group.x1 + clear.right + BORDER, group.y1 + clear.top + BORDER,
    )  # fmt: skip


def _long_lines(plan: Plan, clear: Clearance, whole: bool = True) -> Iterator[Rect]:
    """Both long lines; not `whole`, the centre line only as far as it runs on from the target, and on stairs, where
    nothing is measured along it, no more than the target has of it."""
    x, y = plan.centre_line, plan.level_line
    for low, high in centre_spans(plan):
        if not whole and (plan.slope or not low <= y <= high):
            continue
        yield Rect(x - LINE_CLEAR - clear.left, low, x + LINE_CLEAR + clear.right, high)
    for low, high in level_spans(plan):
        yield Rect(low, y - LINE_CLEAR - clear.bottom, high, y + LINE_CLEAR + clear.top)


def _beside_long_lines(plan: Plan, hides: Covered | None) -> Iterator[Rect]:
    """Where no line to cut runs along the centre line or the level line, which need not be on paper there."""
    for low, high in centre_spans(plan) if hides is None else ():
        yield Rect(plan.centre_line - EDGE_CLEAR, low, plan.centre_line + EDGE_CLEAR, high)
    for low, high in level_spans(plan) if hides is None else ():
        yield Rect(low, plan.level_line - EDGE_CLEAR, high, plan.level_line + EDGE_CLEAR)


def _edges(plan: Plan, hides: Covered | None) -> Iterator[Rect]:
    """Every edge of every frame, as thick as what a trim line keeps away from it, or the strip that is hidden."""
    right, top = (hides.beyond(True), hides.beyond(False)) if hides else (0.0, 0.0)
    out, into = _thickness(hides)
    for hung in plan.frames:
        r, outer = hung.rect, hung.rect.grown(out)
        for y, under, over in ((r.y0, out, into), (r.y1, into, out)):
            yield Rect(outer.x0, y - under, outer.x1, y + top + over)
        for x, left, beside in ((r.x0, out, into), (r.x1, into, out)):
            yield Rect(x - left, outer.y0, x + right + beside, outer.y1)


def _corners(plan: Plan, hides: Covered | None) -> Iterator[Rect]:
    """Both arms of every frame's corners, as thick as what a trim line keeps away from an edge."""
    out, into = _thickness(hides)
    for hung in plan.frames:
        r = hung.rect
        for x, left, right, west, east in ((r.x0, out, into, out, ARM), (r.x1, into, out, ARM, out)):
            for y, under, over, south, north in ((r.y0, out, into, out, ARM), (r.y1, into, out, ARM, out)):
                yield Rect(x - west, y - under, x + east, y + over)
                yield Rect(x - left, y - south, x + right, y + north)


def _thickness(hides: Covered | None) -> tuple[float, float]:
    """What a trim line, or what is hidden, keeps away from an edge on its outside and its inside."""
    # the dotted line to lay the next sheet on looks like a toothed one nearer to the second line inside
    return (UNCUT_CLEAR, UNCUT_CLEAR) if hides else (EDGE_CLEAR, INNER_EDGE + EDGE_CLEAR)


def _pitch(plan: Plan) -> Iterator[Rect]:
    ends = pitch_line(plan)
    return pieces(ends, PIECE) if ends else iter(())


def _drop_scales(plan: Plan, unknown: bool = False) -> Iterator[Rect]:
    """What every drop scale takes, or each for a drop that is not known yet."""
    for hung in plan.frames:
        for bearing in hung.bearings:
            length = scale_length(hung, bearing.drop)
            if length > 0.0 and not (unknown and bearing.drop is not None):
                top = hung.rect.y1
                yield Rect(bearing.x - SCALE_FAR, top - length, bearing.x + SCALE_FAR, top)


def _marked_by_hand(plan: Plan) -> Iterator[Rect]:
    """The upper part of every drop scale for a drop that is not known yet: there a nail is marked on the day."""
    for r in _drop_scales(plan, unknown=True):
        yield Rect(r.x0, max(r.y0, r.y1 - SCALE_LEAST), r.x1, r.y1)


def nail_box(x: float, y: float) -> Rect:
    """What the mark of a nail at (x, y) takes: hairlines, circle and release slit, without its label."""
    return Rect(x - NAIL_CLEAR, y - SLIT_TO, x + NAIL_CLEAR, y + NAIL_ARM)


def scale_length(hung: Hung, drop: float | None) -> float:
    """How far a drop scale reaches down from the frame's top edge (mm): past its drop, within the frame.

    0 or less where there is none, as for a hole that stands beyond the frame.
    """
    if drop is not None and not 0.0 <= drop <= hung.rect.height:
        return 0.0
    wanted = max(SCALE_LEAST, hung.rect.height / 3, (drop or 0.0) + FOR_A_TWIN)
    return min(wanted, hung.rect.height - ABOVE_FOOT)
