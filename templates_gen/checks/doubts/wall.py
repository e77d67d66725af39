"""Doubts about the wall, its studs and its stair: sizes in another unit, sides that changed places, what lies off."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.base.adding import added
from templates_gen.base.record import replace
from templates_gen.base.units import INCH, exact, show
from templates_gen.checks.doubts import usual
from templates_gen.checks.doubts.doubt import Doubt, Written, unusual, written
from templates_gen.job.model import Job, Studs, Wall
from templates_gen.job.stairs import Stairs


def wall_doubts(job: Job) -> Iterator[Doubt]:
    """What is doubtful about the wall itself."""
    wall, known = job.wall, written(job)
    high = usual.STAIR_WALL_HEIGHT if wall.stairs else usual.WALL_HEIGHT
    high = replace(high, figures=not USUAL_FIGURES[0] <= wall.height <= USUAL_FIGURES[1])
    full = any(each.kind in FULL_HEIGHT for each in wall.features)
    if full:
        high = replace(high, far_least=max(high.far_least, LEAST_ROOM))
    if not wall.outline:
        room, wide = _least_width(job), usual.GALLERY_WIDTH if _spread(job) else usual.WALL_WIDTH
        if job.group.arrangement == "column" or len(job.frames) == 1:
            wide = replace(wide, least=usual.PIER)
        yield from unusual("doubtful-wall", "wall, width", wall.width, wide, known, "a wall", needed=room)
        if full or not usual.low_wall(job):
            yield from unusual("doubtful-wall", "wall, height", wall.height, high, known, "a wall's height")
    yield from unusual("doubtful-wall", "wall, clear", wall.clear, usual.CLEAR, known, "the room along its edges")
    if wall.board is not None:
        yield from unusual("doubtful-board", "wall, board", wall.board, usual.BOARD, known, "board or plaster")
    yield from _outline(wall, known)
    if wall.studs is not None:
        yield from _studs(wall.studs, wall, known)
    if wall.stairs is not None:
        yield from _stairs(wall.stairs, wall, known)
    yield from _built(job)


USUAL_FIGURES = 2000.0, 6000.0
"""mm between which the figures of a wall's height did not change places: halls are so high.  Our own, no source."""

FULL_HEIGHT, LEAST_ROOM = ("switch", "door", "window", "thermostat"), 1900.0
"""What is in rooms that one stands in, and mm that these are high at least.  Our own, no source."""

SPREAD = 190.0
"""mm of a gap that frames have in a row along a long wall.  Our own, no source."""


def _spread(job: Job) -> bool:
    """True for a row with wide gaps, as along a corridor or in a gallery."""
    return job.group.arrangement == "row" and len(job.frames) > 2 and job.group.gap_across >= SPREAD


SIDE_BY_SIDE = ("row", "rows", "grid")
"""Arrangements whose rows are as wide as their frames and the gaps between them."""


def _least_width(job: Job) -> float:
    """The width (mm) that the wall cannot be less than, for what is on it: its features, and frames side by side."""
    widths = {frame.id: frame.width for frame in job.frames}
    rows = job.group.rows if job.group.arrangement in SIDE_BY_SIDE else ()
    across = max(
        (added(widths[one] for one in row) + (len(row) - 1) * job.group.gap_across for row in rows), default=0.0
    )
    spots = [spot.x for _, spot in job.group.spots]
    placed = max(spots) - min(spots) if spots else 0.0
    return max((across, placed, *widths.values(), *(each.rect.x1 for each in job.wall.features)))


def _outline(wall: Wall, known: Written) -> Iterator[Doubt]:
    """A corner of an outline whose decimal point is out of place, or a figure lost: ten times as much is another's."""
    heights = [y for _, y in wall.outline]
    for at, (_, up) in enumerate(wall.outline, 1):
        others = [*heights[: at - 1], *heights[at:]]
        lost = up > 0 and any(abs(10 * up - each) < SAME_CORNER for each in others)
        if lost or up > max(HALL, TOWER * max(others)):
            meant = up * 10 if lost else up / 10
            yield Doubt(
                rule="doubtful-wall", place=f"wall, outline, corner {at}", shown=f"{show(up, known.unit)} up",
                uses=("wall, outline",), why=f"where other corners are up to {show(max(others), known.unit)} up",
                ask=f"Is a figure missing, or one too many? Is it {show(meant, known.unit)}?",
            )  # fmt: skip


SAME_CORNER, HALL, TOWER = 1.0, 4000.0, 2.2
"""mm that two corners are of one height; mm that no corner of a room is up, if so many times higher than all others.
Our own, no source."""


def _studs(studs: Studs, wall: Wall, known: Written) -> Iterator[Doubt]:
    if studs.first is not None and studs.first > wall.width:
        yield Doubt(
            rule="doubtful-studs", place="wall, studs, first", shown=show(studs.first, known.unit),
            uses=("wall, width",),
            why=f"beyond the wall, which is {show(wall.width, known.unit)} wide",
            ask="Measure the stud's centre again, from the wall's left end.",
        )  # fmt: skip
    elif studs.first is not None and studs.first > max(wall.width / 2, FIRST * studs.spacing):
        yield Doubt(
            rule="doubtful-studs", place="wall, studs, first", shown=show(studs.first, known.unit),
            uses=("wall, width", "wall, studs, spacing"),
            why="nearer to the wall's right end",
            ask="Was it measured from the other end?",
        )  # fmt: skip
    place = "wall, studs, spacing"
    yield from unusual("doubtful-studs", place, studs.spacing, usual.STUD_SPACING, known, "studs, centre to centre")
    yield from unusual("doubtful-studs", "wall, studs, width", studs.width, usual.STUD_WIDTH, known, "a stud")
    second = 0.0 if studs.first is None or not studs.confirmed else studs.first + studs.spacing
    off, from_first = _from_stud(studs.spacing), _from_stud(second) <= OFF_STUD[0]
    even = from_first or wall.build != LATH_AND_PLASTER
    near = usual.STUD_SPACING.least <= studs.spacing <= usual.STUD_SPACING.far_most
    even = even and (studs.first or 0.0) > END_STUD  # which stands at the wall's end, off the others' measure
    if second and even and near and off > OFF_STUD[not from_first]:
        from_left = show(second + (studs.first or 0.0), known.unit)
        yield Doubt(
            rule="doubtful-studs", place="wall, studs, first", shown=show(studs.first or 0.0, known.unit),
            uses=("wall, studs, second", "wall, studs, spacing"),
            why=f"and the next {show(studs.spacing, known.unit)} on, as studs are hardly ever built",
            ask=f"Was the second measured from the first? Then it is {from_left} from the wall's left end."
            if from_first
            else "Measure both again, from the wall's left end.",
        )  # fmt: skip
    if wall.build == "masonry":
        yield Doubt(
            rule="doubtful-studs", place="wall, build", shown="masonry", uses=(place,),
            why="but studs are given, which masonry has none of",
            ask="Is the wall drywall or plaster on studs?",
        )  # fmt: skip


FIRST = 1.5
"""Spacings from the wall's left end that the first stud is, or less.  Our own, no source."""

OFF_STUD, BUILT = (4.0, 12.0), (300.0, 12 * INCH, 16 * INCH, 24 * INCH, 19.2 * INCH, 400.0, 450.0, 500.0, 600.0, 625.0)
"""mm that a stud is off the line it was set by, and that two are at most; and from stud to stud: 12, 16, 19.2 and 24 in
(IRC Table R602.3(5), the first and third from memory), 300 to 625 mm (from memory)."""

END_STUD = 45.0
"""mm from the wall's end to the middle of a stud that stands there.  Our own, no source."""

LATH_AND_PLASTER = "plaster"
"""The build of which studs stand as the carpenter put them (common practice, no source)."""


def _from_stud(spacing: float) -> float:
    """How far (mm) a distance is from one that studs are built at."""
    return min(abs(spacing - each) for each in BUILT)


def _stairs(stairs: Stairs, wall: Wall, known: Written) -> Iterator[Doubt]:
    where, run, rise = "wall, stairs", stairs.run, stairs.rise
    if run is not None and rise is not None:
        yield from unusual("doubtful-stairs", f"{where}, run", run, usual.RUN, known, "the run of a step")
        yield from unusual("doubtful-stairs", f"{where}, rise", rise, usual.RISE, known, "the rise of a step")
        yield from _nosing(stairs, rise, known)
        if rise > STEEP * run and usual.RUN.holds(rise) and usual.RISE.holds(run):
            yield Doubt(
                rule="doubtful-stairs", place=f"{where}, run", shown=show(run, known.unit), uses=(f"{where}, rise",),
                why=f"but the rise is {show(rise, known.unit)}, as steep as hardly any stair",
                ask="Did run and rise change places?",
                meant=((f"{where}, run", exact(rise, known.unit)), (f"{where}, rise", exact(run, known.unit))),
            )  # fmt: skip
    pitch = stairs.pitch
    ramp = run is None and stairs.y < usual.RISE.far_least and usual.RAMP[0] <= pitch <= usual.RAMP[1]
    ladder = run is None and usual.PITCH[1] < pitch <= usual.LADDER
    if not usual.PITCH[0] <= pitch <= usual.PITCH[1] and not ramp and not ladder:
        yield Doubt(
            rule="doubtful-stairs", place=f"{where}, {'pitch' if run is None else 'run'}", shown=f"{pitch:.0f}°",
            why=f"a pitch that hardly any stair has ({usual.PITCH[0]:.0f}° to {usual.PITCH[1]:.0f}°)",
            ask="Are run and rise the other way round, or measured in different units?",
        )  # fmt: skip
    yield from unusual(
        "doubtful-stairs", f"{where}, clear", stairs.clear or usual.NOSINGS_CLEAR.least, usual.NOSINGS_CLEAR, known,
        "the room above nosings",
    )  # fmt: skip
    if not ramp:  # which goes on along other walls
        yield from _flight(stairs, wall, known)


STEEP = 1.25
"""So many times its run is the rise of a step in hardly any stair, however steep.  Our own, no source."""

NOSING_SLACK = 0.2
"""Of a rise that a nosing may be off a whole number of rises above the floor.  Our own, no source."""


def _nosing(stairs: Stairs, rise: float, known: Written) -> Iterator[Doubt]:
    up, along = stairs.y / rise, stairs.x / rise
    if abs(up) < NOSING_SLACK:
        yield Doubt(
            rule="doubtful-stairs", place="wall, stairs, nosing", shown=f"{show(stairs.y, known.unit)} above the floor",
            uses=("wall, stairs, rise",), why="but the lowest nosing is one rise above it",
            ask="How high above the floor is the lowest step's edge?",
        )  # fmt: skip
        return
    if abs(up - round(up)) > NOSING_SLACK and round(along) in (1, 2) and abs(along - round(along)) < NOSING_SLACK:
        yield Doubt(
            rule="doubtful-stairs", place="wall, stairs, nosing", shown=f"{show(stairs.y, known.unit)} above the floor",
            uses=("wall, stairs, rise",),
            why=f"which is not a whole number of rises of {show(rise, known.unit)}",
            ask="Is it [from the wall's left end, above the floor], in this order?",
        )  # fmt: skip


def _flight(stairs: Stairs, wall: Wall, known: Written) -> Iterator[Doubt]:
    """Most of a flight is on the wall that it climbs along."""
    end = wall.width if stairs.slope > 0 else 0.0
    room, top = abs(end - stairs.x), wall.height if stairs.top is None else stairs.top
    wanted = max(top - stairs.y, 0.0) / abs(stairs.slope)
    outside = not 0.0 <= stairs.x <= wall.width
    if outside or (wanted > 0 and room < FLIGHT * wanted):
        yield Doubt(
            rule="doubtful-stairs", place="wall, stairs, up", shown="right" if stairs.slope > 0 else "left",
            uses=("wall, stairs, nosing", "wall, width"),
            why=f"but from its lowest nosing there is only {show(room, known.unit)} of wall that way",
            ask="Does it climb the other way, as one faces the wall? Is the nosing measured from the wall's left end?",
        )  # fmt: skip

    end = stairs.x + (wanted if stairs.slope > 0 else -wanted)
    beyond = wall.width - end if stairs.slope > 0 else end
    if wanted > 0 and beyond > BEYOND + wanted:
        yield Doubt(
            rule="doubtful-stairs", place="wall, width", shown=show(wall.width, known.unit),
            uses=("wall, stairs, nosing", "wall, stairs, run"),
            why=f"so it goes on for {show(beyond, known.unit)} beyond the stair, which takes only "
            f"{show(wanted, known.unit)}",
            ask="Did two figures change places, or is it in another unit?",
        )  # fmt: skip


BEYOND = 4000.0
"""mm that a wall goes on beyond the end of its stair by more than the stair's own length.  Our own, no source."""

FLIGHT = 0.35
"""Of a flight's run that is on its wall at least.  Our own, no source."""


def _built(job: Job) -> Iterator[Doubt]:
    if job.wall.built is not None and job.wall.built > int(job.date[:4]):
        yield Doubt(
            rule="doubtful-wall", place="wall, built", shown=str(job.wall.built),
            why=f"later than the job's own date, {job.date}", ask="Which year was the wall built in?",
        )  # fmt: skip
