"""Doubts about how far in hangers are, beside those of frames that ought to be alike, and from where they were seen."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from statistics import median

from templates_gen.base.units import exact, show, show_both
from templates_gen.checks.doubts.doubt import Doubt, Written, frame_place
from templates_gen.checks.doubts.hangers import drops, insets, sides
from templates_gen.checks.doubts.readings import Usual, probably
from templates_gen.job.model import Frame

SIDES_AGREE, SIDE_OFF, SURELY, OFF_SURELY = 10.0, 30.0, (5, 6.0), 18.0
"""mm that the distances of all other hangers from their sides differ by at most, and that one is off at least: frames
of one make have their rings put on alike.  So many that differ by less, and how far one is off those.  Our own, no
source."""


def twin_sides(twins: Sequence[Frame], known: Written) -> Iterator[Doubt]:
    """What is doubtful about how far in from their sides the hangers of frames of one size are."""
    yield from _one_off(twins, known)
    yield from _other_side(twins, known)


def _one_off(twins: Sequence[Frame], known: Written) -> Iterator[Doubt]:
    """One distance from a frame's side that is unlike all others of its twins and itself, which agree."""
    each_side = [
        (frame, name, mm) for frame in twins if len(twins) > 1 and not frame.hanger.traits.rail
        for name, mm in (("left", frame.hanger.left), ("right", frame.hanger.right)) if mm is not None
    ]  # fmt: skip
    for frame, name, mm in each_side:
        others = [other for *whose, other in each_side if whose != [frame, name]]
        low, high = min(others, default=mm), max(others, default=mm)
        off = OFF_SURELY if len(others) >= SURELY[0] and high - low <= SURELY[1] else SIDE_OFF
        if high - low <= SIDES_AGREE and not low - off < mm < high + off:
            seen = {"left": "right", "right": "left"}[name] if known.seen_from(frame.id) == "back" else name
            place = frame_place(frame.id, "hanger", seen)
            likely = probably(mm, known.unit_of(place), Usual(low - SIDES_AGREE, high + SIDES_AGREE, figures=True))
            yield Doubt(
                rule="doubtful-hanger", place=place, shown=show(mm, known.unit), about=(frame.id,),
                uses=(frame_place(frame.id, "width"),),
                why=f"where all others on frames of this size have {show_both(median(others), known.unit)}",
                ask=likely.ask or "Measure it again, from its own side.", meant=likely.meant(place),
            )  # fmt: skip


ASIDE, MIRRORED, PAIR_ASIDE = 4.5, 3.2, 9.0
"""mm that hangers of twins are nearer to one side than to the other, how exactly those of one are so to the other side,
and how much where there are but two.  Our own, no source."""


def _other_side(twins: Sequence[Frame], known: Written) -> Iterator[Doubt]:
    """The one of several twins, or the second of two, whose hangers are the mirror image of those of all others."""
    paired = [each for each in twins if each.hanger.left is not None and each.hanger.right is not None]
    for frame in paired[1 if len(paired) == 2 else 0 :]:
        others = [insets(each) for each in paired if each is not frame]
        (left, right), least = insets(frame), ASIDE if len(others) > 1 else PAIR_ASIDE
        mirrored = all(abs(left - theirs[1]) + abs(right - theirs[0]) <= 2 * MIRRORED for theirs in others)
        aside = [theirs[0] - theirs[1] for theirs in others]
        if others and mirrored and min(map(abs, aside)) >= least and min(aside) * max(aside) > 0.0:
            own = [(frame_place(frame.id, "hanger", name), mm) for name, mm in sides(frame, known)]
            yield Doubt(
                rule="doubtful-hanger", place=own[0][0], shown=show(own[0][1], known.unit), about=(frame.id,),
                uses=(own[1][0],), why="with left and right the other way round than on all others of this size",
                ask="Was it seen from the other side? Then the two change places.",
                meant=tuple((own[at][0], exact(own[1 - at][1], known.unit)) for at in (0, 1)),
            )  # fmt: skip


TOLD, FEWEST = 2.9, 3
"""mm that the two sides of a frame differ by for which it matters from where they were seen; and so many or more
others tell of it, of one size one less.  Our own, no source."""


def seen_alone(frames: Sequence[Frame], known: Written) -> Iterator[Doubt]:
    """The one of several frames, with unlike sides, that was seen from another side than all others."""
    seen = {frame.id: known.seen_from(frame.id) for frame in frames}
    count = Counter(filter(None, seen.values()))
    of_a_kind = len({frame.hanger.kind for frame in frames}) == 1
    enough = count.total() > FEWEST - (len({(frame.width, frame.height) for frame in frames}) == 1)
    for frame in frames if len(count) == 2 and of_a_kind and enough else ():
        (left, right), mine, own = insets(frame), seen[frame.id], drops(frame, known)
        unlike = max(abs(left - right), abs(own[0][1] - own[-1][1]) if own else 0.0) >= TOLD
        if mine and count[mine] == 1 and unlike:
            place, other = frame_place(frame.id, "hanger", "seen_from"), next(each for each in count if each != mine)
            yield Doubt(
                rule="doubtful-hanger", place=place, shown=mine, about=(frame.id,),
                why="but all others were seen from the other side, and its two sides differ",
                ask=f'Is it "{other}"?', meant=((place, other),),
            )  # fmt: skip
