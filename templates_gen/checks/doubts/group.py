"""Doubts about the group: its gap, its height, and what it hangs over."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median

from templates_gen.arranging.plan import centre_line
from templates_gen.base.adding import added
from templates_gen.base.record import replace
from templates_gen.checks.doubts import usual
from templates_gen.checks.doubts.all_frames import all_frames
from templates_gen.checks.doubts.doubt import Doubt, Written, unusual, written
from templates_gen.checks.doubts.readings import Usual
from templates_gen.job.model import Job

RULE = "doubtful-place"

HEIGHTS = {
    "centre": (usual.CENTRE, "the middle of a group above the floor"),
    "top": (usual.TOP, "the top of a group above the floor"),
    "bottom": (usual.BOTTOM, "the bottom of a group above the floor"),
    "above": (usual.ABOVE, "the room above furniture"),
    "above_nosings": (usual.ABOVE_NOSINGS, "a group above nosings"),
}

SLIM = 3.0
"""A frame slimmer than 1 to this counts as so wide: what is tall needs room, too.  Our own, no source."""

BY_SIDE = Usual(0.08, 0.35, 0.04, 0.6)
"""Of frames' shorter side: gaps that are usual, too, between small frames and large ones.  Our own, no source."""

IN_A_ROW = 1.2
"""Of frames' shorter side: a gap in one row, where in a gallery each frame has room of its own.  Our own, no source."""

EVENLY = (0.5, 1.6)
"""Of the gap, the room at either end of a long wall along which frames are spread out evenly.  Our own, no source."""

FLANKING = (0.8, 1.03)
"""Of the width of what they hang above, that two frames take which hang over its ends.  Our own, no source."""

LONG_WALL, FOR_SEVERAL, GALLERY = 6000.0, 3500.0, 1.3
"""mm of a wall along which two frames, and three or more, are spread out as in a gallery, and of their shorter side how
wide the gaps of a row are then.  Our own, no source."""

CORRIDOR, SEVERAL, ALONG = 5000.0, 4, 0.55
"""mm of a wall, so many frames, and of its width how much their row takes, that are spread out along it.  Our own."""

MANY, SPREAD, FAR_APART = 6, 2.6, 6.0
"""So many frames in a row that is still on the wall are spread out on purpose, at so much of their shorter side, or
along a long wall: with a slip in the gap so many would reach beyond it.  Our own, no source."""

HIGH_ROOM, IN_THE_MIDDLE, HIGH_CENTRE = 2900.0, 0.3, 0.68
"""mm of a room in which a group hangs well above a seat, halfway to the ceiling, give or take this part; and of its
height, how high a group's middle is at most.  Our own, no source."""

UP_A_HIGH_WALL = 0.8
"""Of the wall's height: how high a group may hang on a wall higher than usual.  Our own, no source."""


def group_doubts(job: Job) -> Iterator[Doubt]:
    """What is doubtful about how the group is arranged and where it hangs, by the job file alone."""
    known = written(job)
    yield from _gaps(job, known)
    yield from _height(job, known)
    yield from all_frames(job, known)


def _gaps(job: Job, known: Written) -> Iterator[Doubt]:
    """The gaps, against what is usual for frames of this size."""
    side = median(max(min(sides), max(sides) / SLIM) for sides in ((each.width, each.height) for each in job.frames))
    beside, share = _room_beside(job), _share_of_side(job)
    expected = Usual(
        min(usual.GAP.least, BY_SIDE.least * side), max(usual.GAP.most, share * side, beside),
        min(usual.GAP.far_least, BY_SIDE.far_least * side), max(usual.GAP.far_most, BY_SIDE.far_most * side, beside),
    )  # fmt: skip
    expected = replace(expected, far_most=max(expected.most, min(expected.far_most, A_FRAME * side)))
    gaps = {"gap_across": job.group.gap_across, "gap_down": job.group.gap_down}
    twice = len(set(gaps.values())) > 1 and max(gaps.values()) < 2 * expected.least  # each thought of by itself
    if _in_parts(job) or twice or job.unit == "in":  # 1/8 in: nobody writes that for another unit
        expected = replace(expected, least=PARTS_APART)
    if len(set(gaps.values())) == 1:
        gaps = {"gap": job.group.gap_across}
    if job.group.around is not None:
        gaps["gap_around"] = job.group.gap_around
    for name, mm in gaps.items() if len(job.frames) > 1 or job.group.around else ():
        if mm == 0.0:  # frames that touch are meant to
            continue
        place, usually = f"group, {name}", expected
        if name in WIDE_AS:  # one of two that were thought of, and no wider than a frame
            most = max(expected.most, median(getattr(frame, WIDE_AS[name]) for frame in job.frames))
            usually = replace(expected, most=most, far_most=max(expected.far_most, most))
        if name == "gap_around":  # round a window or a door it is as wide as its trim asks
            usually = replace(expected, most=max(expected.most, AROUND), far_most=max(expected.far_most, AROUND))
        yield from unusual("doubtful-gap", place, mm, usually, known, "the room between frames", again=FROM_MIDDLE)


A_FRAME, FROM_MIDDLE = 0.95, "Was it measured from middle to middle? The room from side to side counts."
"""Of frames' shorter side: a gap in which another would hang is doubted, where frames are not spread out.  Our own."""

WIDE_AS = {"gap_across": "width", "gap_down": "height"}
"""The side of a frame that a gap of its own may be as wide as."""

AROUND = 250.0
"""mm from a window, a door or a large frame to those around it at most.  Our own, no source."""

PARTS_APART = 2.5
"""mm from one part of a picture to the next at least.  Our own, no source."""


def _in_parts(job: Job) -> bool:
    """True for frames on two points each, as parts of one picture have: no wire is so exact."""
    return not any(frame.hanger.traits.swings for frame in job.frames)


def _share_of_side(job: Job) -> float:
    """How much of frames' shorter side the gaps are at most."""
    if job.group.arrangement not in ("row", "stairs"):
        return IN_A_ROW if job.group.arrangement == "column" else BY_SIDE.most
    long = _length_of_row(job)
    along = job.wall.width >= CORRIDOR and len(job.frames) >= SEVERAL and long >= ALONG * job.wall.width
    even = EVENLY[0] <= (job.wall.width - long) / max(2 * job.group.gap_across, 1.0) <= EVENLY[1]
    along = along or (job.wall.width >= CORRIDOR and even)
    if long <= job.wall.width and along:
        return FAR_APART
    if long <= job.wall.width and len(job.frames) >= MANY:
        return SPREAD
    return GALLERY if job.wall.width >= (FOR_SEVERAL if len(job.frames) > 2 else LONG_WALL) else IN_A_ROW


NO_PLATE, WIDE_ENOUGH, TOO_WIDE, OFF_MIDDLE = 200.0, 0.3, 2.0, 0.25
"""mm that a thing is wide at least which frames hang on either side of, what part of the gap it takes at least and at
most (frames may hang over the ends of a bed), and what part of the gap it may be off the row's middle.  Our own, no
source."""


def _room_beside(job: Job) -> float:
    """The widest gap (mm) of a row that hangs on either side of a door, a window, a bed; 0 where it does not."""
    group, gap = job.group, job.group.gap_across
    under = next((each.rect.width for each in job.wall.features if each.name == group.height.feature), 0.0)
    over_ends = FLANKING[0] * under <= _length_of_row(job) <= FLANKING[1] * under
    if group.height.by == "above" and len(job.frames) == 2 and over_ends:
        return gap
    between = [each.rect.width for each in job.wall.features if NO_PLATE <= each.rect.width <= gap]
    if group.arrangement == "row" and len(job.frames) > 2 and len(between) >= len(job.frames) - 1:
        return max(between) + 2 * usual.ABOVE.most
    even = all(len(line) % 2 == 0 for line in group.rows)
    if group.arrangement not in ("row", "rows", "grid") or not even or group.height.by == "above" or group.anchor:
        return 0.0
    line = centre_line(group, job.wall)
    widths = [
        each.rect.width
        for each in job.wall.features
        if max(NO_PLATE, WIDE_ENOUGH * gap) <= each.rect.width <= TOO_WIDE * gap
        and abs(each.rect.cx - line) <= OFF_MIDDLE * gap
    ]
    return max(widths) + 2 * usual.ABOVE.most if widths else 0.0


def _height(job: Job, known: Written) -> Iterator[Doubt]:
    height = job.group.height
    if height.by not in HEIGHTS:
        return
    (expected, what), needed = HEIGHTS[height.by], usual.MEANT.get(height.by, 0.0)
    if height.by == "above":
        over = next((each for each in job.wall.features if each.name == height.feature), None)
        expected = usual.above(over) if over else expected
        if max(frame.height for frame in job.frames) > TALL:
            expected = replace(expected, least=min(expected.least, usual.CLOSE_ABOVE))
        free = job.wall.height - (over.rect.y1 if over else 0.0) - max(frame.height for frame in job.frames)
        if job.wall.height > HIGH_ROOM and abs(2 * height.at - free) <= IN_THE_MIDDLE * free:
            expected = replace(expected, most=max(expected.most, height.at))
    if height.by == "centre":
        expected = replace(expected, most=max(expected.most, HIGH_CENTRE * job.wall.height))
        expected = replace(expected, least=0.0, far_least=0.0) if usual.low_wall(job) else expected
    if job.wall.height > usual.WALL_HEIGHT.most and height.by in ("centre", "top", "bottom"):
        high = UP_A_HIGH_WALL * job.wall.height
        expected = Usual(expected.least, max(expected.most, high), expected.far_least, max(expected.far_most, high))
    if height.by == "top":
        expected = _top(job, expected)
    if height.by == "centre" and _frieze(job):
        expected = replace(expected, most=max(expected.most, job.wall.height))
    if height.by == "bottom":  # over a door or a cupboard it hangs as high as that is
        tops = [each.rect.y1 for each in job.wall.features if 0 <= height.at - each.rect.y1 <= usual.ABOVE.most]
        least = 0.0 if max(frame.height for frame in job.frames) > TALL else expected.least
        expected = replace(expected, least=least, most=max((expected.most, *(top + usual.ABOVE.most for top in tops))))
    place = f"group, height, {'by' if height.by == 'above' else height.by}"
    yield from unusual(RULE, place, height.at, expected, known, what, needed=needed)


def _top(job: Job, expected: Usual) -> Usual:
    """The usual top of a group: right under a sill or a shelf it hangs as low as that is, and banners reach far up."""
    top = job.group.height.at
    under = any(0 <= each.rect.y0 - top <= usual.ABOVE.most for each in job.wall.features)
    banner = max(frame.height for frame in job.frames) > BANNER
    least = 0.0 if under else expected.least
    return replace(expected, least=least, most=max(expected.most, job.wall.height) if banner else expected.most)


def _frieze(job: Job) -> bool:
    """Whether many frames run along the wall in one row: such a row may hang over doors, right under the ceiling."""
    long = _length_of_row(job) >= FRIEZE * job.wall.width
    return job.group.arrangement == "row" and len(job.frames) >= MANY and long


def _length_of_row(job: Job) -> float:
    return added(frame.width for frame in job.frames) + (len(job.frames) - 1) * job.group.gap_across


FRIEZE = 0.6
"""Of the wall's width, that a row takes which runs along all of it.  Our own, no source."""

BANNER = 2000.0
"""mm that a frame is high which may reach up to the ceiling.  Our own, no source."""

TALL = 900.0
"""mm that a frame is high which may hang as low as one likes: its middle is where people look.  Our own, no source."""
