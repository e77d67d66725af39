"""Doubts about how far in hangers are, beside those of frames that ought to be alike, and from where they were seen."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from statistics import median

from templates_gen.base.adding import added
from templates_gen.base.units import exact, show, show_both
from templates_gen.checks.doubts.doubt import Doubt, Written, frame_place
from templates_gen.checks.doubts.hangers import drops, insets, sides
from templates_gen.checks.doubts.readings import Usual, probably
from templates_gen.job.model import Frame

SIDES_AGREE, SIDE_OFF, OF_WIDTH = 10.0, 30.0, 0.09
"""mm that the distances of all other hangers from their sides differ by at most, and that one frame's are off them, or
of its width: frames of one make have their rings put on alike.  Our own, no source."""


def twin_sides(twins: Sequence[Frame], known: Written) -> Iterator[Doubt]:
    """What is doubtful about how far in from their sides the hangers of frames of one size are."""
    yield from _one_off(twins, known)
    yield from _other_side(twins, known)


def _one_off(twins: Sequence[Frame], known: Written) -> Iterator[Doubt]:
    """The one of several twins, or the more uneven of two, whose hangers are far from where those of all others are."""
    hidden = [each for each in twins if not each.hanger.traits.rail and not each.hanger.traits.shows]
    paired = [each for each in hidden if each.hanger.left is not None and each.hanger.right is not None]
    if len(paired) == 2:
        paired.sort(key=lambda each: abs(insets(each)[0] - insets(each)[1]))
    for frame in paired[1 if len(paired) == 2 else 0 :]:
        theirs = [added(insets(each)) / 2 for each in paired if each is not frame]
        mine = added(insets(frame)) / 2
        off = max(SIDE_OFF, OF_WIDTH * frame.width)
        if theirs and max(theirs) - min(theirs) <= SIDES_AGREE and abs(mine - median(theirs)) > off:
            own = max(sides(frame, known), key=lambda side: abs(side[1] - median(theirs)))
            place = frame_place(frame.id, "hanger", own[0])
            fits = Usual(min(theirs) - SIDES_AGREE, max(theirs) + SIDES_AGREE, figures=True)
            likely = probably(own[1], known.unit_of(place), fits)
            yield Doubt(
                rule="doubtful-hanger", place=place, shown=show(own[1], known.unit), about=(frame.id,),
                uses=(frame_place(frame.id, "width"),),
                why=f"where all others on frames of this size have {show_both(median(theirs), known.unit)}",
                ask=likely.ask or "Measure both again, each from its own side.", meant=likely.meant(place),
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


ACROSS, DOWN, FEWEST = 4.5, 2.9, 3
"""mm that the two sides of a frame, or its two drops, differ by for which it matters from where they were seen: a tilt
shows before a shift does.  And so many or more others tell of it, of one size one less.  Our own, no source."""


def seen_alone(frames: Sequence[Frame], known: Written) -> Iterator[Doubt]:
    """The one of several frames, with unlike sides, that was seen from another side than all others."""
    seen = {frame.id: known.seen_from(frame.id) for frame in frames}
    count = Counter(filter(None, seen.values()))
    of_a_kind = len({frame.hanger.kind for frame in frames}) == 1
    enough = count.total() > FEWEST - (len({(frame.width, frame.height) for frame in frames}) == 1)
    for frame in frames if len(count) == 2 and of_a_kind and enough else ():
        (left, right), mine, own = insets(frame), seen[frame.id], drops(frame, known)
        unlike = abs(left - right) >= ACROSS or (own and abs(own[0][1] - own[-1][1]) >= DOWN)
        if mine and count[mine] == 1 and unlike:
            place, other = frame_place(frame.id, "hanger", "seen_from"), next(each for each in count if each != mine)
            yield Doubt(
                rule="doubtful-hanger", place=place, shown=mine, about=(frame.id,),
                why="but all others were seen from the other side, and its two sides differ",
                ask=f'Is it "{other}"?', meant=((place, other),),
            )  # fmt: skip
