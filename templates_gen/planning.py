"""A job becomes a plan: every frame and every nail on the wall, in mm from the floor's left end."""

from __future__ import annotations

from templates_gen.arranging.rows import arrange
from templates_gen.geometry import Rect, bounds
from templates_gen.hanging import Bearing, Nail, bearings, nails
from templates_gen.model import Feature, Frame, Group, Job, Wall
from templates_gen.record import Record


class Hung(Record, frozen=True):
    """A frame on the wall: its outside edge, the points it bears on, and its nails."""

    frame: Frame
    rect: Rect
    bearings: tuple[Bearing, ...]
    nails: tuple[Nail, ...]


class Plan(Record, frozen=True):
    """Every frame and nail on the wall, and the two lines that all is measured from.

    `centre_line` is an x, `level_line` a y; `group` is the smallest rectangle around all frames.
    """

    job: Job
    frames: tuple[Hung, ...]
    centre_line: float
    level_line: float
    group: Rect

    @property
    def nails(self) -> tuple[Nail, ...]:
        return tuple(nail for hung in self.frames for nail in hung.nails)


def plan_wall(job: Job) -> Plan:
    """The plan of a job.  Raises InputError where a hanger cannot be as described."""
    group, wall = job.group, job.wall
    rects = arrange(group, {frame.id: (frame.width, frame.height) for frame in job.frames})
    centre, level = centre_line(group, wall), _level_line(group, wall, bounds(rects.values()))
    hung = tuple(_hung(frame, rects[frame.id].shifted(centre, level)) for frame in job.frames)
    return Plan(job=job, frames=hung, centre_line=centre, level_line=level, group=bounds(item.rect for item in hung))


def _hung(frame: Frame, rect: Rect) -> Hung:
    return Hung(frame=frame, rect=rect, bearings=bearings(frame, rect), nails=nails(frame, rect))


def centre_line(group: Group, wall: Wall) -> float:
    """The x of the group's vertical axis: the middle of the wall or of a feature, or a distance from the left end."""
    if isinstance(group.centre_on, float):
        return group.centre_on
    return wall.width / 2 if group.centre_on == "wall" else _feature(group.centre_on, wall).rect.cx


def _level_line(group: Group, wall: Wall, box: Rect) -> float:
    """The height of the level line, which goes through the origin that the group was arranged about.

    `box` is the group about that origin: a height given for its top or bottom edge moves the line with it.
    """
    height = group.height
    if height.by == "centre":
        return height.at
    if height.by == "top":
        return height.at - box.y1
    floor = _feature(height.feature, wall).rect.y1 if height.by == "above" else 0.0
    return floor + height.at - box.y0


def _feature(name: str, wall: Wall) -> Feature:
    return next(feature for feature in wall.features if feature.name == name)
