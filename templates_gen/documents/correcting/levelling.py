"""Readings of frames that hang crooked where they could be level: they do not tell where the frame will be."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

from templates_gen.base.errors import InputError
from templates_gen.base.units import DIVISION, show_both
from templates_gen.checks.sentences import listed
from templates_gen.documents.correcting.moves import Limits
from templates_gen.documents.correcting.poses import Pose
from templates_gen.documents.correcting.readings import Reading

LEVEL_FIRST = 2.0
"""Degrees; a frame on a wire over one nail that hangs more crooked is levelled and measured again, because its height
then changes by more than a tape shows: φ²/2 · (D (D − s) / (4 h) − c), 0.3 mm at 2° for 434 and 0 mm.  Our own
choice."""


def check_level(readings: Sequence[Reading], found: Sequence[Pose], limits: Mapping[str, Limits], unit: str) -> None:
    """Raises InputError, naming every frame on a wire that was measured before it was level.

    Over two nails that is any tilt that is seen: levelling it takes the frame to the side by several mm, and neither
    its height nor its side now tells where it will be.
    """
    crooked = [
        (reading, pose)
        for reading, pose in zip(readings, found, strict=True)
        if _placed(pose)
        and abs(pose.turn)
        > (limits[pose.hung.frame.id].turn if len(pose.hung.bearings) > 1 else math.radians(LEVEL_FIRST))
    ]
    if not crooked:
        return
    reading, pose = crooked[0]
    others = [other.hung.frame.id for _, other in crooked[1:]]
    raise InputError(
        reading.where,
        f"found the frame with its {higher_words(pose, unit)}, expected it level: on a wire it goes up, down or aside "
        "as it is levelled",
        "level the frame, then measure: slide its wire until a spirit level on its top edge is level"
        + (f"; the same goes for {listed(others)}" if others else ""),
    )


def _placed(pose: Pose) -> bool:
    """True for a frame on a wire of which more was read than its tilt."""
    return pose.hung.frame.hanger.traits.on_wire and (pose.up is not None or pose.right is not None)


def higher_words(pose: Pose, unit: str) -> str:
    """Which end of a crooked frame is the higher, and by how much."""
    side = "right" if pose.turn > 0 else "left"
    rise = abs(pose.hung.rect.width * math.sin(pose.turn))
    return f"{side} end {show_both(rise, unit)} higher ({abs(math.degrees(pose.turn)):.1f}°)"


def tilted_words(pose: Pose, unit: str) -> Iterator[str]:
    """The same, where a tape shows it."""
    if abs(pose.hung.rect.width * math.sin(pose.turn)) >= DIVISION[unit] / 2:
        yield higher_words(pose, unit)
