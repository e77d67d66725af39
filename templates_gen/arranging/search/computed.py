"""The arrangement that a job leaves to be found, on its wall."""

from __future__ import annotations

from templates_gen.arranging.search.free_wall import free_wall
from templates_gen.arranging.search.salon import salon
from templates_gen.arranging.search.task import Pile
from templates_gen.arranging.search.watch import Watch
from templates_gen.base.errors import InputError
from templates_gen.base.geometry import Rect
from templates_gen.job.model import Group, Job

MASS_PER_AREA = 1e-5
"""kg per mm² (10 kg/m²) of a frame whose weight is not known, to compare with those that are.  Our own design."""


def arranged(pile: Pile, watch: Watch | None = None) -> dict[str, Rect]:
    """The rectangle of every frame of a pile (wall mm), found by a search that takes a second for a dozen frames.

    Raises InputError when there is no room.
    """
    found = salon(pile, watch)
    if found is None:
        raise InputError(
            "group, arrangement", "no arrangement of these frames with their gaps has room on this wall",
            "smaller gaps, fewer frames, less clear space around features, or another height or centre_on",
        )  # fmt: skip
    return found.rects


def pile_of(job: Job, group: Group, centre: float, height: float) -> Pile:
    """What there is to arrange for a job, with this group's gaps and wishes, about an upright line at x = `centre`, its
    middle or the edge that the group says at this height (wall mm)."""
    room = free_wall(job.wall, group.gap_across, group.gap_down)
    pins = group.wishes.pins if group.wishes else ()
    sizes = {frame.id: (frame.width, frame.height) for frame in job.frames}
    pinned = {name: Rect.about(centre + x, height + y, *sizes[name]) for name, x, y in pins}
    loose = tuple(name for name in sizes if name not in pinned)
    masses = {
        frame.id: frame.weight if frame.weight is not None else frame.width * frame.height * MASS_PER_AREA
        for frame in job.frames
    }
    return Pile(loose, tuple(sizes[name] for name in loose), group, room, centre, height, pinned, masses)
