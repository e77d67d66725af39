"""Doubts about what goes into the wall: nails of impossible sizes, ratings, fixings on top of each other."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.base.units import show_mass_both
from templates_gen.checks.doubts import usual
from templates_gen.checks.doubts.doubt import Doubt, Written, frame_place, unusual, written
from templates_gen.checks.doubts.readings import Usual
from templates_gen.job.model import Fixing, Frame, Job

RULE = "doubtful-fixing"

LENGTHS = {"nail": usual.NAIL_LENGTH, "hook": usual.HOOK_NAIL, "screw": usual.SCREW_LENGTH}

LEAST_RATING, MOST_RATING = 0.9, {"nail": 120.0, "hook": 120.0, "screw": 500.0}
"""kg: 2 lb to 265 lb.  Picture hooks are sold for 5 to 100 lb, anchors for some hundreds.  Common practice, no
source."""

MOST_NAILS, LEAST_ANGLE, MOST_ANGLE = 5, 10.0, 60.0
"""Nails of one hook, and degrees they are driven at, if not straight in.  Common practice, no source: hooks have 1 to
3 nails, at 30° to 45°."""


def fixing_doubts(job: Job) -> Iterator[Doubt]:
    """What is doubtful about each frame's fixing."""
    known = written(job)
    for frame in job.frames:
        if not frame.hanger.traits.rail or frame.fixing.kind == "screw":
            yield from _sizes(frame.fixing, frame_place(frame.id, "fixing"), known, (frame.id,))
            yield from _kind(frame.fixing, frame_place(frame.id, "fixing"), known, (frame.id,))
            yield from _rating(frame, known)


def _rating(frame: Frame, known: Written) -> Iterator[Doubt]:
    """A rating so small that the frame alone is several times as heavy, which nobody buys for it."""
    rating, weight, place = frame.fixing.rating, frame.weight, frame_place(frame.id, "fixing", "rating")
    if rating is not None and weight is not None and LEAST_RATING <= rating < weight / TOO_HEAVY:
        yield Doubt(
            rule=RULE, place=place, shown=show_mass_both(rating, known.unit), about=(frame.id,),
            uses=(frame_place(frame.id, "weight"),),
            why=f"but the frame weighs {show_mass_both(weight, known.unit)}", ask="Is a figure missing?",
        )  # fmt: skip


TOO_HEAVY = 2.0
"""So many times as heavy as its fixing is rated for is a frame that nobody chose it for.  Our own, no source."""


def _sizes(fixing: Fixing, place: str, known: Written, about: tuple[str, ...]) -> Iterator[Doubt]:
    thick = usual.SCREW if fixing.kind == "screw" else usual.NAIL
    called = f"a {fixing.kind}" if fixing.kind != "hook" else "a hook's nail"
    given = None if fixing.kind == "screw" and fixing.diameter == Fixing().diameter else fixing.diameter
    measures: list[tuple[str, float | None, Usual, str]] = [
        ("diameter", given, thick, f"the diameter of {called}"),
        ("length", fixing.length, LENGTHS[fixing.kind], f"the length of {called}"),
    ]
    if fixing.kind == "hook":
        measures.append(("below", fixing.below, usual.BELOW, "a hook's seat under its nail"))
    bare = Written(known.unit, {})  # held to the same limits whether its unit was written or not
    for name, mm, expected, what in measures:
        if mm is not None:
            yield from unusual(RULE, f"{place}, {name}", mm, expected, bare, what, about)


def _kind(fixing: Fixing, place: str, known: Written, about: tuple[str, ...]) -> Iterator[Doubt]:
    if fixing.kind != "hook" and fixing.below:
        yield Doubt(
            rule=RULE, place=f"{place}, kind", shown=fixing.kind, about=about, uses=(f"{place}, below",),
            why="but 'below' is given, which only a hook has, and it is not counted",
            ask="Is it a hook?",
        )  # fmt: skip
    if fixing.rating is not None and not LEAST_RATING <= fixing.rating <= MOST_RATING[fixing.kind]:
        yield Doubt(
            rule=RULE, place=f"{place}, rating", shown=show_mass_both(fixing.rating, known.unit), about=about,
            why=f"a rating that no {'anchor' if fixing.kind == 'screw' else 'picture hook'} is sold with",
            ask="Is it in another unit, or is its point misplaced?",
        )  # fmt: skip
    if fixing.nails > MOST_NAILS:
        yield Doubt(
            rule=RULE, place=f"{place}, nails", shown=str(fixing.nails), about=about,
            why="more than any hook has", ask="How many nails are driven through one hook?",
        )  # fmt: skip
    if (fixing.angle or 0.0) > MOST_ANGLE:
        yield Doubt(
            rule=RULE, place=f"{place}, angle", shown=f"{fixing.angle:g}°", about=about,
            why="steeper than any hook holds its nail", ask="How many degrees from straight in?",
        )  # fmt: skip
    if fixing.angle and fixing.angle < LEAST_ANGLE:
        yield Doubt(
            rule=RULE, place=f"{place}, angle", shown=f"{fixing.angle:g}°", about=about,
            why="so slight that no hook is made for it", ask="Is a figure missing? Straight in is 0.",
        )  # fmt: skip
