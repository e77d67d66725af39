"""What a photograph tells of frames that hang, as data and as the readings that `correct` takes."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from typing import Any

from templates_gen.base.csv_cells import as_csv, own_text
from templates_gen.base.words import some
from templates_gen.photo.hung import Hangs, Hung


def as_data(hung: Hung) -> dict[str, Any]:
    """The readings for other programs (mm)."""
    frames = [{"id": one.id, "left": list(one.left), "right": list(one.right), "sure": one.sure} for one in hung.frames]
    return {"format": 1, "frames": frames, "not_read": [{"id": name, "why": why} for name, why in hung.doubts]}


def reading(one: Hangs, centre_line: float) -> dict[str, str]:
    """The readings of a frame by their columns."""
    across = one.left[0] - centre_line
    return {"left": f"{one.left[1]:.2f} mm", "right": f"{one.right[1]:.2f} mm", "left_edge": f"{across:.2f} mm"}


def not_read(hung: Hung) -> Iterator[str]:
    """What to do about every frame that was not read."""
    for name, why in hung.doubts:
        yield f"Frame {name} was not read: {why}. Measure it by hand."


def without_depth(names: Iterable[str], known: Collection[str]) -> Iterator[str]:
    """What to do about frames of which the job does not have the depth."""
    if shallow := [name for name in names if name not in known]:
        said = "How far they stand off the wall is read from their sides on the photograph."
        yield f"Frames without a depth in the job: {some(shallow)}. {said} With their depths more frames can be read."


RELATIVE = "Places are relative to each other: the frames together are taken to be where they were planned."
"""What a photograph does not tell."""


def as_readings(hung: Hung, centre_line: float) -> str:
    """The readings as the spreadsheet that `correct` reads."""
    rows = ((own_text(one.id), *reading(one, centre_line).values()) for one in hung.frames)
    return as_csv(("frame", "left", "right", "left_edge"), rows)
