"""Jobs that look wrong and are right: panoramas, miniatures, high walls, and the like."""

from __future__ import annotations

from typing import Any

from tests.sound_jobs import Raw


def _row(unit: str, frames: list[Raw], wall: Raw, **group: Any) -> Raw:
    frames = [{"id": chr(65 + at), **frame} for at, frame in enumerate(frames)]
    job = {"title": "Odd", "unit": unit, "date": "2026-03-14"}
    return {"job": job, "wall": wall, "group": {"arrangement": "row", **group}, "frame": frames}


CM_ROOM: Raw = {"width": 400, "height": 250}


def odd_jobs() -> dict[str, Raw]:
    """Jobs that look wrong and are right."""
    room = {"width": 5200, "height": 2600}
    rings = {"kind": "rings", "left": 300, "right": 302, "drop_left": 90, "drop_right": 91, "seen_from": "back"}
    headboard = {"kind": "furniture", "name": "headboard", "left": "45", "bottom": "24", "width": "60", "height": "12"}
    ledge = {"kind": "furniture", "name": "ledge", "left": 1500, "bottom": 900, "width": 2200, "height": 30}
    left_wall = {
        "width": 430,
        "height": 520,
        "stairs": {"run": 27, "rise": 17.5, "up": "left", "nosing": [390, 17.5], "steps": 14},
    }
    return {
        "panorama, mm": _row("mm", [{"width": 3000, "height": 600, "hanger": rings}], room),
        "panorama, in": _row(
            "in", [{"width": "118", "height": "24", "drop": "4 1/2"}], {"width": "200", "height": "96"}
        ),
        "panorama, m": _row("cm", [{"width": "3 m", "height": 70, "drop": 11}], {"width": "5 m", "height": "2.6 m"}),
        "panorama and prints": _row(
            "cm",
            [{"width": 30, "height": 40, "drop": 7}, {"width": 300, "height": 60, "drop": 10},
             {"width": 30, "height": 40, "drop": "7,3"}],
            {"width": 520, "height": 260}, gap=8,
        ),
        "miniature, mm": _row("mm", [{"width": 70, "height": 90, "hanger": "sawtooth", "drop": 8}] * 3, room, gap=40),
        "miniature, cm": _row("cm", [{"width": 7, "height": 9, "drop": "1,6"}] * 2, CM_ROOM, gap=5),
        "miniature, in": _row(
            "in", [{"width": "3", "height": "3 1/2", "hanger": "sawtooth", "drop": "3/8"}] * 4,
            {"width": "130", "height": "96"}, gap="2",
        ),
        "a miniature beside large ones": _row(
            "mm", [{"width": 600, "height": 800, "drop": 130}, {"width": 90, "height": 120, "drop": 22},
                   {"width": 500, "height": 700, "drop": 120}], room, gap=70,
        ),
        "headboard": _row(
            "in", [{"width": "16", "height": "20", "drop": "3 1/4"}] * 2,
            {"width": "150", "height": "96", "feature": [headboard]},
            centre_on="headboard", height={"above": "headboard", "by": "7"},
        ),
        "stair hall, no stair": _row(
            "cm", [{"width": 50, "height": 70, "drop": 11}] * 2, {"width": 310, "height": 520}, height={"centre": 230}
        ),
        "stair to the left": {
            **_row("cm", [{"width": 40, "height": 50, "drop": "7,5"}] * 4, left_wall),
            "group": {"arrangement": "stairs", "gap": 8, "height": {"above_nosings": 150}},
        },
        "tall stair, in": {
            **_row("in", [{"width": "16", "height": "20", "drop": "3 1/2"}] * 4, {
                "width": "160", "height": "210",
                "stairs": {"run": "10 1/2", "rise": "7 1/4", "up": "right", "nosing": ["14", "7 1/4"], "steps": 14},
            }),
            "group": {"arrangement": "stairs", "gap": "3", "height": {"above_nosings": "57"}},
        },
        "gallery": _row(
            "mm",
            [{"width": 900, "height": 1200, "drop": 210, "weight": "14 kg"}] * 4,
            {"width": 11_000, "height": 4200},
            gap=250, height={"centre": 1550},
        ),
        "gallery, ft": _row(
            "in", [{"width": "36", "height": "48", "drop": "9"}] * 5, {"width": "36 ft", "height": "14 ft"}, gap="6",
            height={"centre": "60"},
        ),
        "canvas": _row("cm", [{"width": 80, "height": 100, "drop": 6, "weight": "2.1 kg"}] * 2, CM_ROOM),
        "mirror": _row(
            "in", [{"width": "30", "height": "40", "weight": "38 lb", "hanger": {
                "kind": "rings", "left": "2", "right": "2", "drop_left": "6", "drop_right": "6"}}],
            {"width": "130", "height": "100", "build": "drywall"},
        ),
        "triptych": _row(
            "cm", [{"width": 40, "height": 60, "drop": 9}, {"width": 60, "height": 40, "drop": 7},
                   {"width": 40, "height": 60, "drop": 9}], CM_ROOM, gap=5,
        ),
        "for children": _row(
            "cm", [{"width": 30, "height": 40, "drop": 6}] * 4, CM_ROOM, height={"centre": 105}
        ),
        "shelf": _row(
            "mm", [{"width": 300, "height": 400, "drop": 60}] * 3,
            {**room, "feature": [ledge]},
            centre_on="ledge", height={"above": "ledge", "by": 120},
        ),
        "tight grid": {
            **_row("cm", [{"width": 20, "height": 20, "hanger": "sawtooth", "drop": "1,2"}] * 9, CM_ROOM),
            "group": {"arrangement": "grid", "across": 3, "gap": 2},
        },
        "narrow wall": _row("cm", [{"width": 40, "height": 50, "drop": 8}], {"width": 95, "height": 255}),
        "deep box": _row("mm", [{"width": 300, "height": 300, "depth": 90, "drop": 40, "weight": "3.2 kg"}] * 2, room),
        "scroll": _row("cm", [{"width": 45, "height": 180, "drop": 2, "hanger": "sawtooth"}] * 2, CM_ROOM),
        "square canvases, ft": _row(
            "in", [{"width": "3'", "height": "3'", "drop": "4 1/2"}] * 3, {"width": "18'", "height": "9'"}, gap="4"
        ),
        "gallery, a frame's room between frames": _row(
            "in", [{"width": "30", "height": "40", "drop": "6"}] * 6, {"width": "30 ft", "height": "12 ft"}, gap="18",
            height={"centre": "60"},
        ),
        "a wall of nine metres": _row(
            "cm", [{"width": 60, "height": 80, "drop": 10}] * 8, {"width": 900, "height": 300}, gap=15
        ),
        "over a door": _row(
            "in", [{"width": "36", "height": "12", "drop": "1 1/2"}],
            {"width": "100", "height": "120",
             "feature": [{"kind": "door", "left": 32, "bottom": 0, "width": 36, "height": 82}]},
            height={"bottom": "88"},
        ),
        "small frames on short wires": _row(
            "cm", [{"width": 13, "height": 18, "drop": "1,2"}, {"width": 20, "height": 30, "drop": 2},
                   {"width": 20, "height": 30, "drop": "2,3"}], CM_ROOM, gap=4,
        ),
        "a gallery's long wall": _row(
            "in", [{"width": "36", "height": "36", "drop": "5"}] * 4, {"width": "62 ft", "height": "12 ft"}, gap="36",
        ),
        "over a desk with a screen": _row(
            "in", [{"width": "16", "height": "20", "drop": "3 1/4"}] * 2,
            {"width": "150", "height": "96",
             "feature": [{"kind": "furniture", "name": "desk", "left": 45, "bottom": 0, "width": 60, "height": 30}]},
            centre_on="desk", height={"above": "desk", "by": "16"},
        ),
        "beside a chimney": _row("cm", [{"width": 30, "height": 40, "drop": 5}], {"width": 45, "height": 250}),
    }  # fmt: skip
