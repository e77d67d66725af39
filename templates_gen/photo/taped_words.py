"""What photographs of taped paper tell, in sentences and as data."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from templates_gen.base.record import Record
from templates_gen.base.words import counted, some
from templates_gen.documents.photographed import Papers
from templates_gen.photo.screening import Misplaced
from templates_gen.photo.taped import Joined, NailOff, Taped

NAMED, MUST = 1.25, 1.5
"""mm: a join is taped anew where it is off by more than the first; it is doubtful where it may be off by more than the
second.  An eye sees a step of 1.5 mm between frames (our own estimate)."""

FAR = 3.0
"""mm: where half of all joins are farther off, the paper is rather of another print.  Our own design, no source."""

HALF, SURELY = 0.5, 1.4
"""A join is surely off where it is so even if half of what is unsure is taken away, or by so many mm.  Our own
simulation, no source."""

SMALL, BLURRED, POOR = 14.0, 1.6, 0.35
"""Pixels: a tag's side, a blur, and how far tags are off the fit, from which a picture is poor.  Our own simulation."""

STANDS_OFF = 0.2
"""mm: how far tags stand off the wall, from which a second photograph helps.  Our own simulation, no source."""

LITTLE, TURNED = 0.3, 0.2
"""mm, and degrees of a turn, that are not worth a word.  Our own design, no source."""


class Said(Record, frozen=True):
    """A sentence with its level, as findings have one."""

    level: str
    text: str


def bad_joins(taped: Taped) -> list[Joined]:
    """The joins to tape anew, the worst first."""
    return sorted((join for join in taped.joins if _bad(join)), key=lambda join: -join.off)


def _bad(join: Joined) -> bool:
    return join.off > min(NAMED + HALF * join.sure, SURELY)


def doubtful_joins(taped: Taped) -> list[Joined]:
    """Joins of which the photographs do not tell whether they are right."""
    return [join for join in taped.joins if not _bad(join) and (join.off > NAMED or join.off + join.sure > MUST)]


def heading(taped: Taped, papers: Papers) -> str:
    """How much was read, and how much of it is to be done anew."""
    joins = f"{len(bad_joins(taped))} of {len(taped.joins)} joins to tape anew"
    return f"{len(taped.sheets)} of {len(papers.cells)} sheets read, {joins}"


def sentences(taped: Taped, scaled: bool, name: str = "this template") -> Iterator[Said]:
    """What to do, what was not seen, and what the photographs do not tell; `name` is what the paper is known by."""
    far = sum(join.off > FAR for join in taped.joins)
    if far and 2 * far >= len(taped.joins):
        off = f"{far} of {counted(len(taped.joins), 'join')} would be off by more than {FAR:.0f} mm"
        asked = f"is this the paper of {name}, and not that of another print?"
        yield Said("warn", f"{off}. People seldom tape so far off: {asked}")
    for join in bad_joins(taped):
        yield Said("warn", _bad_join(join))
    for sheet in taped.elsewhere:
        yield Said("warn", _misplaced(sheet))
    if taped.unseen:
        yield Said("warn", f"Not seen: {counted(len(taped.unseen), 'sheet')}, {some(list(taped.unseen))}. "
                   "Are their tags covered, in glare, or out of the picture? Take another photograph.")  # fmt: skip
    if doubt := doubtful_joins(taped):
        names = some([f"{join.under} and {join.over}" for join in doubt])
        yield Said("warn", f"May be off by more than {MUST:.1f} mm: the joins of {names}. {_more(taped)}")
    yield from _poor(taped)
    if not taped.by_lines:
        yield Said("note", "Too little of the level line or not the target was seen: places are by the middle of all "
                   "sheets, not by the two lines.")  # fmt: skip
    how = (
        "it was printed for a measured printer" if scaled else "measure the rulers on the sheets, or record the printer"
    )
    yield Said("note", f"A photograph does not show the scale of the print: {how}.")


def _more(taped: Taped) -> str:
    """What tells more of a join than the photographs do."""
    if len(taped.sides) == 1:
        return ("In one photograph paper that stands off the wall looks like paper that slipped: take a second one "
                "from the side, and give both.")  # fmt: skip
    return "The photographs do not tell it surely: press the paper flat, and look whether its bars go on straight."


def _bad_join(join: Joined) -> str:
    sideways, upward = ("too far right", "too far left"), ("too high", "too low")
    across, along = (sideways, upward) if join.upright else (upward, sideways)
    parts = [part for part in (_way(join.across, *across), _way(join.along, *along)) if part]
    if not parts or (
        LITTLE < join.off and abs(join.turned) > TURNED and join.off > 2 * max(abs(join.across), abs(join.along))
    ):
        parts.append(f"turned by {abs(join.turned):.1f}°")
    back = " and ".join(
        part for part in (_back(join.across, join.upright), _back(join.along, not join.upright)) if part
    )
    do = f"Loosen it and move it {back}" if back else "Loosen it and turn it back"
    return (
        f"Join of {join.under} and {join.over}: off by up to {join.off:.1f} mm (± {join.sure:.1f}). Sheet {join.over} "
        f"lies {', '.join(parts)}. {do}, until its slanting bars go on straight."
    )


def _way(by: float, ahead: str, back: str) -> str:
    return f"{abs(by):.1f} mm {ahead if by > 0 else back}" if abs(by) >= LITTLE else ""


def _back(by: float, level: bool) -> str:
    return _way(by, "left" if level else "down", "right" if level else "up")


def _misplaced(sheet: Misplaced) -> str:
    turned = "upside down" if abs(sheet.turn) > 90 else "elsewhere"
    aside = f"{abs(sheet.dx):.0f} mm {'right' if sheet.dx > 0 else 'left'}"
    up = f"{abs(sheet.dy):.0f} mm {'above' if sheet.dy > 0 else 'below'}"
    return f"Sheet {sheet.name} lies {turned}, {aside} of its place and {up}. Take it off and tape it anew."


def _poor(taped: Taped) -> Iterator[Said]:
    """Why a picture is poor, and what would help."""
    for at, (side, blur) in enumerate(zip(taped.sides, taped.blurs, strict=True), 1):
        which = f"Photograph {at}" if len(taped.sides) > 1 else "The photograph"
        if side < SMALL:
            yield Said(
                "warn", f"{which} shows the tags only {side:.0f} pixels wide: go nearer, or take two that overlap."
            )
        if blur >= BLURRED:
            yield Said("warn", f"{which} is blurred: hold the phone still, with more light.")
    if taped.residual_px > POOR:
        yield Said("warn", f"The tags are {taped.residual_px:.2f} pixels off where a camera would see them: was the "
                   "picture edited, or made of several? Take a plain one.")  # fmt: skip
    if taped.heights > STANDS_OFF and len(taped.sides) == 1:
        yield Said("note", "The paper stands off the wall in places. Press it flat, or take a second photograph from "
                   "the side: both together tell it more exactly.")  # fmt: skip


def table(taped: Taped) -> Iterator[str]:
    """The nails, a line each: how far every mark is from its place by the two lines."""
    for nail in taped.nails:
        yield f"  nail {nail.name}: {_off(nail)} (± {nail.sure:.1f} mm)"


def _off(nail: NailOff) -> str:
    across = f"{abs(nail.dx):.1f} mm {'right' if nail.dx > 0 else 'left'}"
    return f"{across}, {abs(nail.dy):.1f} mm {'high' if nail.dy > 0 else 'low'}"


def as_data(taped: Taped) -> dict[str, Any]:
    """All of it for other programs, in mm and degrees."""
    return {
        "format": 1,
        "pixels_per_mm": taped.pixels_per_mm,
        "residual_px": taped.residual_px,
        "sheets": [
            {"name": one.name, "dx": one.dx, "dy": one.dy, "turn": one.turn, "sure": one.sure, "tags": one.tags}
            for one in taped.sheets
        ],
        "joins": [
            {
                "sheets": [one.under, one.over], "off": one.off, "along": one.along, "across": one.across,
                "turned": one.turned, "sure": one.sure,
            }
            for one in taped.joins
        ],
        "nails": [{"name": one.name, "dx": one.dx, "dy": one.dy, "sure": one.sure} for one in taped.nails],
        "unseen": list(taped.unseen),
        "elsewhere": [{"name": one.name, "dx": one.dx, "dy": one.dy, "turn": one.turn} for one in taped.elsewhere],
        "by_lines": taped.by_lines,
    }  # fmt: skip
