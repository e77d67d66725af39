"""What a frame is made of: does its size go with its parts, is its weight weighed, and is its picture there."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.base.geometry import exceeds
from templates_gen.base.units import show_both, show_size
from templates_gen.base.words import some
from templates_gen.checks.finding import NOTE, WARN, Finding
from templates_gen.checks.sentences import listed, same_words
from templates_gen.job.model import Frame

SIZE_SLACK = 3.0
"""mm between a given outside size and the one worked out: the allowance that frames are cut with, 1/8 in, rounded."""


def _size_differs(plan: Plan) -> Iterator[Finding]:
    """One for all frames of one size: an outside that is not what their print, mat and moulding come to."""
    said = ((hung.frame.id, _differs(hung.frame, plan.job.unit)) for hung in plan.frames)
    for names, text in same_words(said):
        yield Finding(WARN, "size-differs", names, text, "common practice of framers: how sizes add up")


def _differs(frame: Frame, unit: str) -> str:
    """How far the given size is from the one worked out, as a sentence; "" when they go together."""
    built = frame.worked_out
    if built is None or not exceeds(_off(frame, built), SIZE_SLACK):
        return ""
    given = show_size(frame.width, frame.height, unit)
    return (
        f"given as {given}, but print, mat and moulding come to {show_size(*built, unit)}: up to "
        f"{show_both(_off(frame, built), unit)} apart. The given size is used: measure it again."
    )


def _measured_otherwise(plan: Plan) -> Iterator[Finding]:
    """One for each frame whose size was measured and is not what the job file says."""
    for hung in plan.frames:
        frame, unit = hung.frame, plan.job.unit
        sides = (("wide", frame.width, frame.listed[0]), ("high", frame.height, frame.listed[1]))
        for word, own, told in sides:
            if told is not None and exceeds(abs(own - told), SIZE_SLACK):
                text = (
                    f"Frame {frame.id} was measured {show_both(own, unit)} {word}, but the job file says "
                    f"{show_both(told, unit)}. The measured size is used: check that it is the same frame."
                )
                yield Finding(WARN, "measured-otherwise", (frame.id,), text)


def _off(frame: Frame, built: tuple[float, float]) -> float:
    return max(abs(frame.width - built[0]), abs(frame.height - built[1]))


def _weight_estimated(plan: Plan) -> Iterator[Finding]:
    names = tuple(hung.frame.id for hung in plan.frames if hung.frame.weight_is == "estimated")
    if names:
        text = (
            f"The weight of {listed(names)} is estimated from glazing, mat, backing and moulding, without print and "
            "fittings: weigh before you choose the fixings."
        )
        yield Finding(NOTE, "weight-estimated", names, text)


def _weight_unfinished(plan: Plan) -> Iterator[Finding]:
    """One for all frames that lack the same."""
    said = (
        (frame.id, f"the weight cannot be estimated without {', '.join(frame.lacking)}. Give that, or weigh.")
        for frame in (hung.frame for hung in plan.frames)
        if frame.lacking
    )
    for names, text in same_words(said):
        yield Finding(NOTE, "weight-unfinished", names, text)


def _image_missing(plan: Plan) -> Iterator[Finding]:
    frames = [hung.frame for hung in plan.frames if hung.frame.image_missing]
    if frames:
        text = (
            f"The image of {listed([frame.id for frame in frames])} is not there "
            f"({some([frame.image for frame in frames])}): a proof shows a blank in its place. The template needs none."
        )
        yield Finding(NOTE, "image-missing", tuple(frame.id for frame in frames), text)


RULES = (_size_differs, _measured_otherwise, _weight_estimated, _weight_unfinished, _image_missing)
