"""Which frames two people lift, and which heavy ones hang on bare nails that nobody has rated."""

from __future__ import annotations

from templates_gen.base.geometry import TOLERANCE
from templates_gen.hanging.weight_classes import is_heavy
from templates_gen.job.model import Frame

ONE_PERSON = 1200.0
"""mm; a frame with a longer side is lifted by two people, for one cannot hold both its ends and see what it is hung on.
Our own choice, no source."""


def wants_two(frame: Frame) -> bool:
    """True for a frame that two people lift: from 20 lb on, where a hook alone is no longer the advice, or large."""
    heavy = frame.weight is not None and is_heavy(frame.weight)
    return heavy or max(frame.width, frame.height) > ONE_PERSON + TOLERANCE


def on_bare_nails(frame: Frame) -> bool:
    """True for a heavy frame on plain nails of no given rating; the screws of a cleat are none."""
    heavy = frame.weight is not None and is_heavy(frame.weight)
    return heavy and frame.fixing.kind == "nail" and frame.fixing.rating is None
