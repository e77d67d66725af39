"""What a frame is made of: does its size go with its parts, and is its weight weighed or worked out."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from templates_gen.findings.finding import NOTE, WARN, Finding
from templates_gen.findings.words import capital, listed
from templates_gen.geometry import TOLERANCE
from templates_gen.model import Frame
from templates_gen.planning import Plan
from templates_gen.units import show, show_both

SIZE_SLACK = 3.0
"""mm between a given outside size and the one worked out: the allowance that frames are cut with, 1/8 in, rounded."""


def _size_differs(plan: Plan) -> Iterator[Finding]:
    """One for each frame: an outside that is not what its print, mat and moulding come to."""
    for hung in plan.frames:
        frame = hung.frame
        if frame.worked_out and _off(frame, frame.worked_out) > SIZE_SLACK + TOLERANCE:
            given, built = (_size(size, plan.job.unit) for size in ((frame.width, frame.height), frame.worked_out))
            off = show_both(_off(frame, frame.worked_out), plan.job.unit)
            text = (
                f"Frame {frame.id} is given as {given}, but its print, mat and moulding come to {built}: up to {off} "
                "apart. The given size is used: measure the frame."
            )
            yield Finding(WARN, "size-differs", (frame.id,), text, "arithmetic of framers' trade texts")


def _off(frame: Frame, built: tuple[float, float]) -> float:
    return max(abs(frame.width - built[0]), abs(frame.height - built[1]))


def _size(size: tuple[float, float], unit: str) -> str:
    return f"{show(size[0], unit)} × {show(size[1], unit)}"


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
    lacking: dict[tuple[str, ...], list[str]] = {}
    for hung in plan.frames:
        if hung.frame.lacking:
            lacking.setdefault(hung.frame.lacking, []).append(hung.frame.id)
    for fields, names in lacking.items():
        text = f"{capital(listed(names))}: the weight cannot be estimated without {', '.join(fields)}. Or weigh it."
        yield Finding(NOTE, "weight-unfinished", tuple(names), text)


RULES: tuple[Callable[[Plan], Iterator[Finding]], ...] = (_size_differs, _weight_estimated, _weight_unfinished)
