"""Small slides at the end: an edge that is almost in line with a neighbour's is brought in line, a gap to its width."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from templates_gen.arranging.search.boxes import Box, shifted
from templates_gen.arranging.search.ground import Ground
from templates_gen.arranging.search.improving import Found, Judge, hung

SLIDE, BESIDE = 0.6, 1.6
"""Gaps that a frame slides at most, and within which another is its neighbour.  Our own design, no source."""

IN_LINE, NEARLY = 0.5, 0.5
"""mm and gaps: edges that differ by more than the first and less than the second look like a slip.  Our own design."""

SLIP = 0.05
"""What a slip for every frame costs beside the looks.  Our own design, by looking, no source."""

ROUNDS, MOST = 3, 300
"""Times that every frame is slid, and slides that are tried in all.  Our own design, no source."""


def slips(boxes: Sequence[Box], gap: float) -> float:
    """Edges of neighbours that are almost in line, for every frame."""
    count = 0
    for at, one in enumerate(boxes):
        for two in boxes[:at]:
            across, up = min(one[2], two[2]) - max(one[0], two[0]), min(one[3], two[3]) - max(one[1], two[1])
            if across > 0 > up >= -BESIDE * gap:
                count += sum(IN_LINE < abs(one[side] - two[side]) < NEARLY * gap for side in (0, 2))
            elif up > 0 > across >= -BESIDE * gap:
                count += sum(IN_LINE < abs(one[side] - two[side]) < NEARLY * gap for side in (1, 3))
    return count / len(boxes)


def slid(found: Found, ground: Ground, judge: Judge) -> Iterator[Found | None]:
    """The group with its frames slid a little, after every slide that was tried."""
    gap = max(ground.gaps)
    best, worth, tried = found, found.cost + SLIP * slips(found.boxes, gap), 0
    for _ in range(ROUNDS):
        before = worth
        for at in range(len(best.boxes)):
            for dx, dy in _slides(best.boxes, at, ground):
                tried += 1
                if tried > MOST:
                    return
                trial = _with(best, at, dx, dy, ground, judge)
                cost = trial.cost + SLIP * slips(trial.boxes, gap) if trial else worth
                better = trial if cost < worth - 1e-6 else None
                yield better
                if better:
                    best, worth = better, cost
                    break
        if worth > before - 1e-5:
            return


def _with(found: Found, at: int, dx: float, dy: float, ground: Ground, judge: Judge) -> Found | None:
    """The group with one frame slid, where the gaps are kept."""
    box = shifted(found.boxes[at], dx, dy)
    others = [*found.boxes[:at], *found.boxes[at + 1 :]]
    if not ground.clear(box, others):
        return None
    boxes = hung(ground, [*found.boxes[:at], box, *found.boxes[at + 1 :]])
    return Found(judge(boxes, found.cost + SLIP), boxes) if boxes else None


def _slides(boxes: Sequence[Box], at: int, ground: Ground) -> list[tuple[float, float]]:
    """How far a frame may slide to be in line with a neighbour or at the gap from it, nothing twice."""
    across, down = ground.gaps
    x0, y0, x1, y1 = boxes[at]
    found: dict[tuple[float, float], None] = {}
    for a0, b0, a1, b1 in [*boxes[:at], *boxes[at + 1 :], *ground.fixed]:
        if max(a0 - x1, x0 - a1) > BESIDE * across or max(b0 - y1, y0 - b1) > BESIDE * down:
            continue
        for dx in (a0 - x0, a1 - x1, a0 - across - x1, a1 + across - x0, (a0 + a1 - x0 - x1) / 2):
            if IN_LINE / 10 < abs(dx) < SLIDE * across:
                found[round(dx, 6), 0.0] = None
        for dy in (b0 - y0, b1 - y1, b0 - down - y1, b1 + down - y0, (b0 + b1 - y0 - y1) / 2):
            if IN_LINE / 10 < abs(dy) < SLIDE * down:
                found[0.0, round(dy, 6)] = None
    return list(found)
