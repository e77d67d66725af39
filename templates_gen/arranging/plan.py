"""A job becomes a plan: every frame and every nail on the wall, in mm from the floor's left end."""

from __future__ import annotations

from collections.abc import Mapping

from templates_gen.arranging.rows import arrange
from templates_gen.arranging.search.free_wall import free_wall
from templates_gen.arranging.search.salon import arranged
from templates_gen.arranging.search.task import Pile, Watch, pile_of
from templates_gen.base.geometry import Rect, bounds
from templates_gen.base.record import Record, replace
from templates_gen.hanging.bearings import Bearing, Nail, bearings, nails, shares
from templates_gen.job.arrangements import SIDES
from templates_gen.job.model import Feature, Frame, Group, Job, Paper, Spot, Wall

OVER_FEATURE = 45.0
"""mm from the top of a feature with frames on its sides alone up to the level line: room for the target and the line's
name on the wall.  Our own design, no source."""


class Hung(Record, frozen=True):
    """A frame on the wall: its outside edge, the points it bears on, and its nails."""

    frame: Frame
    rect: Rect
    bearings: tuple[Bearing, ...]
    nails: tuple[Nail, ...]

    @property
    def unmeasured(self) -> tuple[Bearing, ...]:
        """The points whose drop is not known yet, and which so have no nail."""
        return tuple(bearing for bearing in self.bearings if bearing.drop is None)

    @property
    def drops(self) -> list[float]:
        """The drops that are known (mm)."""
        return [bearing.drop for bearing in self.bearings if bearing.drop is not None]

    @property
    def shares(self) -> tuple[float, ...]:
        """The part of the frame's weight on each of its bearings."""
        return shares(self.bearings, self.rect.cx)


class Plan(Record, frozen=True):
    """Every frame and nail on the wall in reading order, and the two lines that all is measured from.

    `centre_line` is an x, `level_line` a y; `group` is the smallest rectangle around all frames (`rects`, by id).
    """

    job: Job
    frames: tuple[Hung, ...]
    centre_line: float
    level_line: float
    group: Rect

    @property
    def nails(self) -> tuple[Nail, ...]:
        return tuple(nail for hung in self.frames for nail in hung.nails)

    @property
    def rects(self) -> dict[str, Rect]:
        return {hung.frame.id: hung.rect for hung in self.frames}

    @property
    def slope(self) -> float:
        """How far the pitch line rises for every mm to the right; 0 where the frames do not climb with a stair."""
        return self.job.group.slope

    def on(self, paper: Paper) -> Plan:
        """The same plan for another paper."""
        return replace(self, job=replace(self.job, paper=paper))

    def pitch_at(self, x: float) -> float:
        """The height of the pitch line at x (mm)."""
        return self.level_line + self.slope * (x - self.centre_line)


def plan_wall(job: Job, watch: Watch | None = None) -> Plan:
    """The plan of a job.  Raises InputError where a hanger cannot be as described, or frames find no room.

    `watch` is told how much is done (0 to 1) where an arrangement has to be found.
    """
    group = job.group
    about, centre, level = _arranged(job, watch)
    at = (group.around.rect.cx, group.around.rect.cy) if group.around else (centre, level)
    rects = {name: rect.shifted(*at) for name, rect in about.items()}
    frames = {frame.id: frame for frame in job.frames}
    hung = tuple(hung_at(frames[name], rects[name]) for name in reading_order(rects, group.slope))
    return Plan(job=job, frames=hung, centre_line=centre, level_line=level, group=bounds(rects.values()))


def _arranged(job: Job, watch: Watch | None) -> tuple[dict[str, Rect], float, float]:
    """Every frame about the group's own origin, and the two lines that cross there."""
    group, wall = job.group, job.wall
    centre = centre_line(group, wall)
    if group.arrangement != "salon":
        rects = _anchored(group, arrange(group, {frame.id: (frame.width, frame.height) for frame in job.frames}))
        return rects, centre, _level_line(group, wall, rects)
    hung = arranged(free_pile(job, group), watch)
    level = _origin(group, hung)
    return {name: rect.shifted(-centre, -level) for name, rect in hung.items()}, centre, level


def free_pile(job: Job, group: Group) -> Pile:
    """The frames of a job to be arranged with this group's gaps and wishes, where it hangs."""
    return pile_of(job, group, centre_line(group, job.wall), height_line(group, job.wall))


def placed(job: Job, rects: Mapping[str, Rect]) -> Job:
    """The job with its frames placed at these rectangles (wall mm), about its centre line and their middle, or the
    height that was given for it."""
    return _about_lines(job, rects, centre_line(job.group, job.wall), _origin(job.group, rects))


def _about_lines(job: Job, rects: Mapping[str, Rect], x: float, y: float) -> Job:
    """The job with its frames placed at these rectangles about two lines, an upright and a level one (wall mm)."""
    about = {name: rect.shifted(-x, -y) for name, rect in rects.items()}
    spots = tuple((name, Spot(point="centre", x=rect.cx, y=rect.cy)) for name, rect in about.items())
    group = Group(
        arrangement="placed", rows=(tuple(rects),), gap_across=job.group.gap_across, gap_down=job.group.gap_down,
        spots=spots, centre_on=job.group.centre_on, anchor=job.group.anchor, height=job.group.height,
    )  # fmt: skip
    return replace(job, group=group)


def as_it_is(own: Plan, job: Job) -> Job:
    """The job with every frame placed where it is about the two lines of its own plan."""
    return _about_lines(job, own.rects, own.centre_line, own.level_line)


def as_found(own: Plan, there: Job) -> Job:
    """A job on another wall with its frames about the two lines where they were found on their own wall.

    Without a change where one of them would then hang beyond that wall, or over what is on it.
    """
    kept = as_it_is(own, there)
    room = free_wall(there.wall, there.group.gap_across, there.group.gap_down)
    return kept if all(room.free(hung.rect) for hung in plan_wall(kept).frames) else there


def found_key(job: Job) -> tuple[object, ...]:
    """All that places which are found depend on: what hangs and where, but not what it is called or held by."""
    return job.group, job.wall, tuple((frame.id, frame.width, frame.height, frame.weight) for frame in job.frames)


def _anchored(group: Group, rects: Mapping[str, Rect]) -> dict[str, Rect]:
    """The frames about the point that the lines cross at: the middle of a frame, where the group goes by one.

    On stairs they move along the pitch line.
    """
    dx = -rects[group.anchor].cx if group.anchor else 0.0
    dy = -rects[group.height.of].cy if group.height.of and group.height.by == "centre" else group.slope * dx
    return {name: rect.shifted(dx, dy) for name, rect in rects.items()}


def _origin(group: Group, rects: Mapping[str, Rect]) -> float:
    """The height that frames with free places are measured from: the level line, or the group's middle."""
    return group.height.at if group.height.by == "centre" else bounds(rects.values()).cy


def hung_at(frame: Frame, rect: Rect) -> Hung:
    """A frame that hangs at this rectangle (wall mm).  Raises InputError for a wire that cannot be as described."""
    return Hung(frame=frame, rect=rect, bearings=bearings(frame, rect), nails=nails(frame, rect))


def centre_line(group: Group, wall: Wall) -> float:
    """The x of the upright that the group's middle, or its anchor's, is on: that of the middle of the wall or of a
    feature, or a distance from the left end."""
    if isinstance(group.centre_on, float):
        return group.centre_on
    return wall.rect.cx if group.centre_on == "wall" else _feature(group.centre_on, wall).rect.cx


def _level_line(group: Group, wall: Wall, rects: Mapping[str, Rect]) -> float:
    """The height of the level line, which most often goes through the origin that the group was arranged about.

    `rects` are the frames about that origin: a height given for their top or bottom edge, or for that of one of them,
    moves the line with it.  On stairs the line meets the pitch line on the centre line.
    """
    height = group.height
    if group.around:
        return _beside_feature(group, group.around.rect, rects)
    if height.by == "above_nosings" and wall.stairs:
        return wall.stairs.line_at(centre_line(group, wall)) + height.at
    line = height_line(group, wall)
    if height.by == "centre":
        return line
    box = rects[height.of] if height.of else bounds(rects.values())
    return line - (box.y1 if height.by == "top" else box.y0)


def height_line(group: Group, wall: Wall) -> float:
    """The height of what is given one: the middle, the top or the bottom edge of the group or of a frame of it."""
    return group.height.at + (_feature(group.height.feature, wall).rect.y1 if group.height.by == "above" else 0.0)


def _beside_feature(group: Group, feature: Rect, rects: Mapping[str, Rect]) -> float:
    """A height at which the centre line is not on the feature: that of the frames above it, else below it."""
    sides = dict(zip(SIDES, group.rows, strict=True))
    for names in (sides["above"], sides["below"]):
        if names:
            return feature.cy + bounds(rects[name] for name in names).cy
    return feature.y1 + OVER_FEATURE


def _feature(name: str, wall: Wall) -> Feature:
    return next(feature for feature in wall.features if feature.name == name)


ALIKE = 6
"""Decimals of a height (mm) by which two are the same: far below what hangs askew.  Common practice, no source."""


def reading_order(rects: Mapping[str, Rect], slope: float = 0.0) -> list[str]:
    """The names of the rectangles in reading order.

    Two are in one row when at least half of the lower one lies beside the other; a row's rectangles all are so to each
    other.  `slope` is how far rows rise for every mm to the right: frames on a stair are one row.  Of those that begin
    at one point the higher one is first, and of two alike the one whose name is: never the one that was given first.
    """
    levelled = {name: _band(rect, slope * rect.cx) for name, rect in rects.items()}
    left = sorted(levelled, key=lambda name: (-levelled[name][1], rects[name].x0, -rects[name].y1, name))
    order: list[str] = []
    while left:
        row, rest, bands = [left[0]], [], {levelled[left[0]]}  # thousands of frames may share a band
        for at, name in enumerate(left[1:], 1):
            band = levelled[name]
            if band[1] <= max(foot for foot, _ in bands):
                rest += left[at:]
                break
            if band in bands or all(_beside(band, other) for other in bands):
                row.append(name)
                bands.add(band)
            else:
                rest.append(name)
        order += sorted(row, key=lambda name: rects[name].x0)
        left = rest
    return order


def _band(rect: Rect, rise: float) -> tuple[float, float]:
    """From which height to which it reaches (mm), once its row is level; rounded, for equal frames to share it."""
    return round(rect.y0 - rise, ALIKE), round(rect.y1 - rise, ALIKE)


def _beside(one: tuple[float, float], two: tuple[float, float]) -> bool:
    shared = min(one[1], two[1]) - max(one[0], two[0])
    return shared >= min(one[1] - one[0], two[1] - two[0]) / 2
