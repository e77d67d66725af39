"""The corrections as a table for a terminal of 80 columns, as a spreadsheet, and as data for a machine."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

from templates_gen.arranging.plan import Plan
from templates_gen.base.csv_cells import as_csv as table_csv
from templates_gen.base.units import tenth
from templates_gen.base.words import lines_of
from templates_gen.checks.sentences import listed
from templates_gen.documents.correcting import sentences as say
from templates_gen.documents.correcting.holes import Cured, least_between

COLUMNS = (21, 29, 25)
"""Widths of the moves' columns: 75 in all, for a terminal of 80."""

WIDTH, INDENT = 79, "    "
"""Letters of a line for a terminal of 80.  Common practice, no source."""

CSV_HEADER = (
    "frame", "nail", "right_mm", "up_mm", "from_old_hole_mm", "by_hand", "aside_mm", "cure", "hook_below_mm",
    "turn_deg", "too_high_mm", "too_far_right_mm", "drop_longer_mm", "wire_longer_mm",
)  # fmt: skip


def as_text(plan: Plan, done: tuple[Cured, ...]) -> str:
    """Every frame with how it was found, what to do by hand, and the moves of its nails from the old hole."""
    unit = plan.job.unit
    title = f"{plan.job.title}: what to move, from the old hole to the new one"
    lines = [*lines_of(title, WIDTH), "left and right as you face the wall"]
    for cured in done:
        lines += ["", *_frame_lines(cured, unit)]
    lines += ["", *(line for words in foot(plan, done) for line in lines_of(words, WIDTH))]
    return "\n".join(lines)


def foot(plan: Plan, done: tuple[Cured, ...]) -> tuple[str, ...]:
    """What goes for all frames: those not read, what is left alone, holes too near, and the cautions."""
    unit = plan.job.unit
    limits = min((cured.correction.limits for cured in done), key=lambda limits: limits.step)
    missing = not_read(plan, done)
    return (
        *([f"Not read: {listed(missing)}."] if missing else []),
        *say.together(done, unit),
        *say.wires_words(done),
        *say.near_words(done, unit),
        f"Left alone: {say.limits_words(limits, unit)}. {say.SEEN_WORDS}.",
        *_cautions(done),
    )


def not_read(plan: Plan, done: tuple[Cured, ...]) -> list[str]:
    """The frames of which nothing was read."""
    read = {cured.hung.frame.id for cured in done}
    return [hung.frame.id for hung in plan.frames if hung.frame.id not in read]


def _cautions(done: tuple[Cured, ...]) -> tuple[str, ...]:
    """That of taking a frame down, also for its wire alone; and that of new holes."""
    if any(cured.correction.moves for cured in done):
        return say.CAUTIONS
    down = any(cured.wire or cured.correction.by_hand == "teeth" for cured in done)
    return say.CAUTIONS[:1] if down else ()


def name_of(cured: Cured) -> str:
    """The frame, and what it hangs by."""
    hung = cured.hung
    return "  ".join(part for part in (hung.frame.id, hung.frame.title, say.hanger_words(hung)) if part)


def _frame_lines(cured: Cured, unit: str) -> Iterator[str]:
    hung, correction = cured.hung, cured.correction
    name = name_of(cured)
    yield name if len(name) <= WIDTH else f"{name[: WIDTH - 1]}…"
    yield from lines_of(f"found: {say.found_words(correction, unit)}", WIDTH, INDENT, INDENT)
    for move, cure in zip(correction.moves, cured.cures, strict=True):
        told = say.side_words(move, hung.frame), *say.moved_words(move, cure, hung.frame, unit)
        yield INDENT + "".join(f"{text:<{width}}" for text, width in zip(told, COLUMNS, strict=True)).rstrip()
    for words in say.what_to_do(cured, unit):
        yield from lines_of(words, WIDTH, INDENT, INDENT)


def as_data(plan: Plan, done: tuple[Cured, ...]) -> dict[str, Any]:
    """The corrections for a machine; lengths in mm to 0.1 mm, turns in degrees, positive right, up and right end up."""
    return {
        "format": 1,
        "job": plan.job.title,
        "unit": plan.job.unit,
        "frames": [_frame_data(cured, plan.job.unit) for cured in done],
        "not_read": not_read(plan, done),
    }


def _frame_data(cured: Cured, unit: str) -> dict[str, Any]:
    correction = cured.correction
    pose, frame, wire = correction.pose, correction.hung.frame, cured.wire
    return {
        "id": frame.id,
        "hanger": frame.hanger.kind,
        "found": {"turn": round(math.degrees(pose.turn), 2) + 0.0, "up": _tenth(pose.up), "right": _tenth(pose.right)},
        "seen_from": {"turn": round(math.degrees(correction.limits.turn), 2), "step": tenth(correction.limits.step)},
        "by_hand": correction.by_hand,
        "aside": tenth(correction.aside),
        "apart": _tenth(cured.apart),
        "drop_longer": _tenth(wire.longer if wire else None),
        "wire_longer": _tenth(wire.wire if wire else None),
        "moves": [
            {
                "nail": move.nail, "from": move.old, "right": tenth(move.right), "up": tenth(move.up),
                "distance": tenth(move.distance), "least_distance": tenth(least_between(frame.fixing)),
                "cure": cure.way, "hook_below": _tenth(cure.sold.below if cure.sold else None),
            }
            for move, cure in zip(correction.moves, cured.cures, strict=True)
        ],
        "text": [say.found_words(correction, unit), *say.what_to_do(cured, unit)],
    }  # fmt: skip


def _tenth(mm: float | None) -> float | None:
    return None if mm is None else tenth(mm)


def as_csv(plan: Plan, done: tuple[Cured, ...]) -> str:
    """The corrections as a spreadsheet: a row for every nail that moves, and one for a frame of which none does."""
    return table_csv(
        CSV_HEADER,
        (
            (
                data["id"], *(move.get(key) for key in ("nail", "right", "up", "distance")), data["by_hand"],
                data["aside"], *(move.get(key) for key in ("cure", "hook_below")), *data["found"].values(),
                data["drop_longer"], data["wire_longer"],
            )
            for data in as_data(plan, done)["frames"]
            for move in data["moves"] or [{}]
        ),
    )  # fmt: skip
