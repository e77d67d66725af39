"""Doubts about what was measured behind a frame: drops from the wrong edge or slack, sides from the wrong one."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.base.adding import added
from templates_gen.base.units import INCH, exact, show, show_both
from templates_gen.checks.doubts import usual
from templates_gen.checks.doubts.doubt import Doubt, Written, frame_place, unusual, written
from templates_gen.checks.doubts.readings import Usual, other_readings, probably, swapped_figures, tenfold
from templates_gen.checks.doubts.wires import as_deep, wire_doubts
from templates_gen.job.model import Frame, Job, Studs

NEAREST, NEAREST_RAIL, INMOST, CLOSE = 6.0, 12.0, 0.42, 0.25
"""mm from a frame's side that a ring, and a screw of a rail, lies at least; of the width that it lies in at most; of
the width that two are apart at least.  Our own, no source."""

UNEVEN, UNEVEN_DROPS, EVEN = 15.0, 6.0, (0.2, 3.0)
"""mm that the two sides' distances, or the two drops, may differ on one frame; if they differ by more, a slip is asked
about that would leave no more than the last part of the difference, or mm.  Our own, no source: rings are put on by
eye, and some are put beside an old hole."""

PLAQUE = (220.0, 25.0)
"""mm that a house number or a tile is wide, whose keyholes are close together, and how close.  Our own, no source."""

FAR_ASIDE, FAR_LOWER = 0.22, 20.0
"""Of the width, and mm, that nobody puts them off by: doubted whatever may have been meant.  Our own, no source."""

FRONT_ASIDE, FRONT_LOWER = 6.0, 5.5
"""mm likewise for what was seen from the front, where nobody sees a hanger.  Our own, no source."""

SCROLL, TIED_LOW = (3.0, 8.0), 0.43
"""So many times as high as wide is a scroll, whose cord is hardly longer than its rod, and mm of its drop; and of the
height, where an old wire is tied low, if no slip explains it.  Our own, no source."""

LEAST_DROP = 0.1
"""Of the height: the least that another drop may have been meant by.  Our own, no source."""


def hanger_doubts(job: Job) -> Iterator[Doubt]:
    """What is doubtful about each frame's hanger by itself."""
    known = written(job)
    for frame in job.frames:
        for place, drop in drops(frame, known):
            if not as_deep(frame, drop, job):
                yield from _drop(frame, place, drop, known)
        by_studs = _by_studs(frame, job.wall.studs) and min(insets(frame)) >= NEAREST_RAIL
        if frame.hanger.left is not None and frame.hanger.right is not None and not by_studs:
            yield from _insets(frame, known)
            yield from _uneven(frame, known)
            yield from _from_front(frame, job, known)
            yield from _plates(frame, known) if frame.hanger.traits.shows else ()
        if frame.hanger.traits.on_wire:
            yield from wire_doubts(frame, known)
        if frame.hanger.screw_below is not None:
            place, what = frame_place(frame.id, "hanger", "screw_below"), "a rail's screws under its edge"
            below = frame.hanger.screw_below
            yield from unusual("doubtful-hanger", place, below, usual.SCREW_BELOW, known, what, (frame.id,))


SPACINGS, ON_STUD = (16 * INCH, 24 * INCH, 400.0, 600.0, 625.0), 20.0
"""mm from stud to stud where the job does not tell (IRC Table R602.3(5); 400 to 625 mm from memory), and mm that a
screw may be off a stud's middle: half its face."""


def _by_studs(frame: Frame, studs: Studs | None) -> bool:
    """True for a cleat whose screws are as far apart as studs are: the wall tells where they are, not the frame."""
    apart = frame.width - added(insets(frame))
    spacings = SPACINGS if studs is None or studs.spacing is None else (studs.spacing,)
    return frame.hanger.traits.rail and any(
        apart > ON_STUD and abs(apart - max(round(apart / each), 1) * each) <= ON_STUD for each in spacings
    )


def insets(frame: Frame) -> tuple[float, float]:
    """How far in from a frame's left and right side its hanger is (mm); 0 where that is not told."""
    return frame.hanger.left or 0.0, frame.hanger.right or 0.0


def drops(frame: Frame, known: Written) -> list[tuple[str, float]]:
    """The drops that were measured of a frame (mm), each with its place in the job file."""
    hanger, back = frame.hanger, known.seen_from(frame.id) == "back"
    sides = [("drop_right" if back else "drop_left", hanger.drop_left)]
    sides += [("drop_left" if back else "drop_right", hanger.drop_right)]
    own = [(frame_place(frame.id, "hanger", name), drop) for name, drop in sides if drop is not None]
    if len(own) < 2 and frame.drop is not None:
        own.append((frame_place(frame.id, "drop"), frame.drop))
    return own


def _drop(frame: Frame, place: str, drop: float, known: Written) -> Iterator[Doubt]:
    traits = frame.hanger.traits
    least, most, shortest, longest = traits.usual_drop
    shortest = min(max(least * frame.height, shortest), traits.long_enough)
    if frame.height > SCROLL[0] * frame.width:
        shortest = min(shortest, SCROLL[1])
    fits = Usual(shortest, min(most * frame.height, longest))
    if fits.holds(drop):
        return
    much, below = "less" if drop < fits.most else "more", fits.holds(frame.height - drop)
    from_below = f" Or from its lower edge? Then it is {show(frame.height - drop, known.unit)}."
    likely = probably(drop, known.unit_of(place), Usual(max(fits.least, LEAST_DROP * frame.height), fits.most))
    if traits.on_wire and not likely.ask and not below and fits.most < drop <= TIED_LOW * frame.height:
        return
    yield Doubt(
        rule="doubtful-drop", place=place, shown=show(drop, known.unit), about=(frame.id,),
        uses=(frame_place(frame.id, "height"),),
        why=f"{much} than is usual for {traits.called} on a frame {show_both(frame.height, known.unit)} high",
        ask=(likely.ask or traits.again) + (from_below if below else ""),
        meant=likely.meant(place) or (((place, exact(frame.height - drop, known.unit)),) if below else ()),
    )  # fmt: skip


def _plates(frame: Frame, known: Written) -> Iterator[Doubt]:
    """Holes that no screw gets to, behind the frame, or that stand off its corner: a sign was lost, or put.

    One question about a frame with both of its holes behind it: its plates were measured without a sign.
    """
    hanger, doubts, hidden = frame.hanger, list[Doubt](), list[str]()
    for (name, inset), own in zip(sides(frame, known), (hanger.drop_left, hanger.drop_right), strict=True):
        side = frame_place(frame.id, "hanger", name)
        place = frame_place(frame.id, "drop") if own is None else frame_place(frame.id, "hanger", f"drop_{name}")
        drop = (frame.drop if own is None else own) or 0.0
        behind, corner = inset > 0 and 0 < drop < frame.height, inset < 0 and drop < 0
        hidden += [place, side] if behind else []
        if behind or corner:
            doubts.append(Doubt(
                rule="doubtful-hanger", place=place, shown=show(drop, known.unit), about=(frame.id,), uses=(side,),
                why=f"and {show(abs(inset), known.unit)} {'in' if behind else 'beyond'} from its side, so the hole is "
                f"{'behind the frame' if behind else 'off its corner'}",
                ask="Is a minus missing before the side or the drop that stands out?" if behind else
                "Which of the two stands out? The other is without a minus.",
            ))  # fmt: skip
    if len(hidden) < 2 * len(sides(frame, known)):
        yield from doubts
        return
    yield Doubt(
        rule="doubtful-hanger", place=frame_place(frame.id, "hanger", "kind"), shown=hanger.kind, about=(frame.id,),
        uses=tuple(hidden), why="with every hole behind the frame, where no screw gets to",
        ask='Is a minus missing? A hole beyond the left side has left = "-12 mm", one above the top edge '
        'drop_left = "-12 mm".',
    )  # fmt: skip


def sides(frame: Frame, known: Written) -> tuple[tuple[str, float], tuple[str, float]]:
    """The distances from the frame's sides by the fields that say them."""
    names = ("left", "right")
    if known.seen_from(frame.id) == "back":
        names = ("right", "left")
    left, right = insets(frame)
    return (names[0], left), (names[1], right)


def _insets(frame: Frame, known: Written) -> Iterator[Doubt]:
    """One beyond the middle was measured from the other side; two that nearly meet were, or in another unit."""
    own, width = sides(frame, known), frame.width
    traits = frame.hanger.traits
    nearest = -traits.beyond if traits.shows else NEAREST_RAIL if traits.rail else NEAREST
    fits = Usual(nearest, (width - PLAQUE[1]) / 2 if width <= PLAQUE[0] else INMOST * width)
    for name, mm in own:
        if fits.holds(mm):
            continue
        place = frame_place(frame.id, "hanger", name)
        other = f" From its own side it is {show(width - mm, known.unit)}." if fits.holds(width - mm) else ""
        likely = probably(mm, known.unit_of(place), fits)
        much = "nearer to its side than any hanger is" if mm < nearest else "too near to the middle, or beyond it"
        yield Doubt(
            rule="doubtful-hanger", place=place, shown=show(mm, known.unit), about=(frame.id,),
            uses=(frame_place(frame.id, "width"),),
            why=f"which on a frame {show_both(width, known.unit)} wide is {much}",
            ask=(likely.ask or "Was it measured from the other side?") + other,
            meant=likely.meant(place) or (((place, exact(width - mm, known.unit)),) if other else ()),
        )  # fmt: skip
    apart = width - own[0][1] - own[1][1]
    close = min(CLOSE * width, PLAQUE[1]) if width <= PLAQUE[0] else CLOSE * width
    if all(fits.holds(mm) for _, mm in own) and apart < close:
        yield Doubt(
            rule="doubtful-hanger", place=frame_place(frame.id, "hanger", "right"), about=(frame.id,),
            shown=show(dict(own)["right"], known.unit),
            uses=(frame_place(frame.id, "width"), frame_place(frame.id, "hanger", "left")),
            why=f"which leaves only {show_both(apart, known.unit)} between the two on a frame "
            f"{show(width, known.unit)} wide",
            ask="Are both measured from their own side of the frame, and in one unit?",
        )  # fmt: skip


def _uneven(frame: Frame, known: Written) -> Iterator[Doubt]:
    """Two sides that are unlike, and two that differ and were seen from the front, where nobody sees them."""
    hanger, unit = frame.hanger, known.unit
    left, right = insets(frame)
    drops = (hanger.drop_left or 0.0, hanger.drop_right or 0.0)
    lower = abs(drops[0] - drops[1]) if None not in (hanger.drop_left, hanger.drop_right) else 0.0
    place, aside, right_one = frame_place(frame.id, "hanger"), abs(left - right), dict(sides(frame, known))["right"]
    meant = _evenly(right_one, left + right - right_one, frame.width, known.unit_of(f"{place}, right"))
    if aside > FAR_ASIDE * frame.width or (aside > UNEVEN and meant):
        yield Doubt(
            rule="doubtful-hanger", place=f"{place}, right", shown=show(right_one, unit),
            about=(frame.id,), uses=(f"{place}, left",),
            why=f"which is {show_both(aside, unit)} {'more' if right_one > min(left, right) else 'less'} "
            "than the left one",
            ask=meant or "Was each measured from its own side of the frame, to the hanger's middle, in one unit?",
        )  # fmt: skip
    meant = _evenly(drops[0], drops[1], frame.height, known.unit_of(f"{place}, drop_left"))
    if lower > FAR_LOWER or (lower > UNEVEN_DROPS and meant):
        yield Doubt(
            rule="doubtful-drop", place=f"{place}, drop_right", about=(frame.id,), uses=(f"{place}, drop_left",),
            shown=show(drops[0 if known.seen_from(frame.id) == "back" else 1], unit),
            why=f"which differs by {show_both(lower, unit)} from the left one, and hangers are put on level",
            ask=f"{meant} Measure both again, from the top edge.".lstrip(),
        )  # fmt: skip


def _evenly(one: float, other: float, side: float, unit: str) -> str:
    """What may have happened to one of two that are unlike, for them to be alike otherwise: a question, "" for nothing.

    One was read in another unit, lost its decimal point, has two figures the other way round, or was measured from the
    far edge of a `side` (mm).
    """
    near = min(EVEN[0] * abs(one - other), EVEN[1])
    for found, twin in ((one, other), (other, one)):
        for reading in (*other_readings(found, unit), *tenfold(found, unit), *swapped_figures(found, unit)):
            if abs(reading.mm - twin) <= near:
                return reading.ask
        if abs(side - found - twin) <= near:
            return "Was one of them measured from the far edge?"
    step, called = (INCH, "inch") if unit == "in" else (CENTIMETRE, "centimetre")
    return f"Was one of them misread by a whole {called}?" if abs(abs(one - other) - step) <= READ[called] else ""


CENTIMETRE, READ = 10.0, {"centimetre": 0.8, "inch": 3.3}
"""mm that a tape is misread by, and that two drops differ besides.  Our own, no source."""


def _from_front(frame: Frame, job: Job, known: Written) -> Iterator[Doubt]:
    """Seen from the front, where another with such a hanger was seen from the back, and its two sides differ."""
    hanger, (left, right) = frame.hanger, insets(frame)
    lower = abs((hanger.drop_left or 0.0) - (hanger.drop_right or 0.0))
    fellows = [each.id for each in job.frames if each.hanger.kind == hanger.kind and each is not frame]
    told = known.seen_from(frame.id) == "front" and any(known.seen_from(each) == "back" for each in fellows)
    if told and not hanger.traits.shows and (abs(left - right) >= FRONT_ASIDE or lower >= FRONT_LOWER):
        yield Doubt(
            rule="doubtful-hanger", place=frame_place(frame.id, "hanger", "seen_from"), shown="front",
            about=(frame.id,), uses=(frame_place(frame.id, "hanger", "left"),),
            why="but its two sides differ, and others were seen from the back",
            ask='Is it "back"? Seen from behind, left and right change places.',
            meant=((frame_place(frame.id, "hanger", "seen_from"), "back"),),
        )  # fmt: skip
