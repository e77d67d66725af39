"""Two hundred sound jobs, by chance but as people have them, and odd ones that are right all the same."""

from __future__ import annotations

from random import Random
from typing import Any

from templates_gen.units import MM, inches

Raw = dict[str, Any]

INCH_SIZES = ((8, 10), (11, 14), (12, 12), (12, 16), (16, 20), (18, 24), (20, 24), (20, 28), (24, 36), (5, 7), (9, 12))
CM_SIZES = (
    (21, 29.7),
    (30, 40),
    (40, 50),
    (50, 70),
    (30, 30),
    (20, 25),
    (24, 30),
    (60, 80),
    (13, 18),
    (18, 24),
    (50, 50),
)
FURNITURE = (("sofa", 1800, 2300, 780, 900), ("sideboard", 1200, 2000, 700, 900), ("bench", 1100, 1700, 420, 500),
             ("desk", 1200, 1600, 720, 760), ("bed", 1400, 1800, 450, 1150), ("chest", 800, 1200, 750, 1000))  # fmt: skip


class Maker:
    """Draws one job; all lengths in mm until they are typed."""

    def __init__(self, seed: int) -> None:
        self.random = Random(seed)
        self.alike: dict[object, float] = {}
        self.unit = self.random.choice(("in", "in", "cm", "mm"))

    def typed(self, mm: float) -> Any:
        """A length as someone types it in the job's unit: a number, a text, now and then with the unit."""
        number = mm / MM[self.unit]
        if self.unit == "in":
            text = inches(mm)
            return self.random.choice((text, text.replace(" ", "-"), f"{text} in", f'{text}"'))
        number = round(number) if self.unit == "mm" else round(number, 1)
        return self.random.choice((number, number, f"{number:g}", f"{number:g} {self.unit}"))

    def length(self, low: float, high: float) -> float:
        return self.random.uniform(low, high)

    def some(self, share: float) -> bool:
        return self.random.random() < share

    def job(self) -> Raw:
        sizes = self._sizes()
        frames = [self._frame(f"{chr(65 + at)}", size) for at, size in enumerate(sizes)]
        gap = self.length(35, 100)
        listing, width, height = self._listing(sizes, gap)
        wall, place = self._wall(width, height)
        raw: Raw = {"job": {"title": "Ferns", "unit": self.unit, "date": "2026-03-14"}, "wall": wall, "frame": frames}
        raw["group"] = {**listing, "gap": self.typed(gap), **place}
        if self.some(0.6):
            raw["fixing"] = self._fixing()
        raw["paper"] = {"size": "letter" if self.unit == "in" else "a4"}
        return raw

    def _sizes(self) -> list[tuple[float, float]]:
        known = INCH_SIZES if self.unit == "in" else CM_SIZES
        scale = MM["in" if self.unit == "in" else "cm"]
        more = self.length(0, 60) if self.some(0.6) else 0.0  # the moulding
        count, kinds = self.random.randint(1, 8), self.random.randint(1, 3)
        chosen = [self.random.choice(known) for _ in range(kinds)]
        sizes = [self.random.choice(chosen) for _ in range(count)]
        wide = self.some(0.25)
        return [
            (max(size) * scale + more, min(size) * scale + more)
            if wide or self.some(0.03)
            else (size[0] * scale + more, size[1] * scale + more)
            for size in sizes
        ]

    def _frame(self, name: str, size: tuple[float, float]) -> Raw:
        width, height = size
        frame: Raw = {"id": name, "width": self.typed(width), "height": self.typed(height)}
        if self.some(0.7):
            frame["title"] = f"Fern {name}"
        if self.some(0.4):
            frame["depth"] = self.typed(self.length(12, 45))
        if self.some(0.5):
            frame["weight"] = self._weight(width * height * 1e-6)
        kind = self.random.choices(("wire", "sawtooth", "rings", "keyholes"), (6, 2, 2, 1))[0]
        if kind == "wire":
            frame["drop"] = self.typed(self._wire(height))
        elif kind == "sawtooth":
            frame |= {"hanger": "sawtooth", "drop": self.typed(self.length(10, 24))}
        else:
            frame["hanger"] = self._pair(kind, width, height)
        if self.some(0.1):
            frame.pop("drop", None)
        return frame

    def _wire(self, height: float) -> float:
        """Twins have wires alike, by half an inch; others are by their height, more or less."""
        share = self.alike.setdefault(("wire", round(height)), self.random.gauss(0.18, 0.025))
        return max(22.0, height * share) + self.length(-7, 7)

    def _weight(self, area: float) -> str:
        kg = area * self.random.gauss(11, 1.6) + 0.15
        if self.unit == "in":
            return f"{kg / 0.45359237:.1f} lb"
        return f"{kg:.1f} kg" if kg > 1 else f"{kg * 1000:.0f} g"

    def _pair(self, kind: str, width: float, height: float) -> Raw:
        inset = width * self.length(0.07, 0.2) + 8
        share = self.alike.setdefault((kind, round(height)), self.length(0.1, 0.25))
        drop = height * share if kind == "rings" else 120 * share
        off = [self.length(-1.5, 1.5) for _ in range(4)]
        return {
            "kind": kind, "left": self.typed(inset + off[0]), "right": self.typed(inset + off[1]),
            "drop_left": self.typed(drop + off[2] / 2), "drop_right": self.typed(drop + off[3] / 2),
            "seen_from": self.random.choice(("back", "back", "front")),
        }  # fmt: skip

    def _listing(self, sizes: list[tuple[float, float]], gap: float) -> tuple[Raw, float, float]:
        """How they are arranged, and how wide and high that gets at most."""
        ids = [chr(65 + at) for at in range(len(sizes))]
        across, up = sum(w for w, _ in sizes) + gap * len(sizes), sum(h for _, h in sizes) + gap * len(sizes)
        widest, highest = max(w for w, _ in sizes), max(h for _, h in sizes)
        if len(sizes) < 3 or across < 2200:
            return {"arrangement": "row"}, across, highest
        if up < 1500 and self.some(0.3):
            return {"arrangement": "column"}, widest, up
        half = (len(ids) + 1) // 2
        if len(set(sizes)) == 1 and self.some(0.5):
            return {"arrangement": "grid", "across": half}, half * (widest + gap), 2 * highest + gap
        if self.some(0.3):
            columns = [ids[at : at + 2] for at in range(0, len(ids), 2)]
            return {"arrangement": "columns", "columns": columns}, len(columns) * (widest + gap), 2 * highest + gap
        return {"arrangement": "rows", "rows": [ids[:half], ids[half:]]}, half * (widest + gap), 2 * highest + gap

    def _wall(self, width: float, height: float) -> tuple[Raw, Raw]:
        room = max(width + self.length(600, 2500), 2200.0)
        ceiling = max(self.length(2300, 3000), height + 1000.0)
        wall: Raw = {"width": self.typed(room), "height": self.typed(ceiling)}
        place: Raw = {}
        if self.some(0.4):
            wall["build"] = self.random.choice(("drywall", "plaster", "timber", "drywall"))
            if self.some(0.5):
                wall["board"] = self.typed(self.random.choice((9.5, 12.7, 15.9)))
            if self.some(0.4):
                spacing = self.random.choice((406.4, 609.6) if self.unit == "in" else (400, 600, 625))
                wall["studs"] = {"first": self.typed(self.length(50, 390)), "spacing": self.typed(spacing)}
        elif self.some(0.4):
            wall["build"] = "masonry"
        features: list[Raw] = []
        if self.some(0.5) and ceiling - height > 1350:
            name, narrow, broad, low, high = self.random.choice(FURNITURE)
            wide, tall = min(self.length(narrow, broad), room - 100), self.length(low, high)
            if ceiling - height - tall > 300:
                left = self.length(0.2, 0.8) * (room - wide)
                left = min(max(left, width / 2 - wide / 2 + 30), room - wide / 2 - width / 2 - 30)
                left = max(0.0, min(left, room - wide))
                features.append(self._feature("furniture", left, 0.0, wide, tall) | {"name": name})
                by = self.length(110, 240)
                if tall + by + height < ceiling - 60:
                    place = {"centre_on": name, "height": {"above": name, "by": self.typed(by)}}
        if not place and self.some(0.7):
            centre = min(max(self.length(1350, 1600), height / 2 + 200), ceiling - height / 2 - 60)
            place = {"height": {"centre": self.typed(centre)}}
        if self.some(0.4):
            features.append(
                self._feature("switch", 60.0, self.length(1000, 1250), self.length(70, 90), self.length(80, 120))
            )
        if self.some(0.4):
            features.append(self._feature("outlet", room - 300.0, self.length(200, 400), 80.0, 110.0))
        if features:
            wall["feature"] = features
        return wall, place

    def _feature(self, kind: str, left: float, bottom: float, width: float, height: float) -> Raw:
        sides = {"left": left, "bottom": bottom, "width": width, "height": height}
        return {"kind": kind, **{name: self.typed(mm) for name, mm in sides.items()}}

    def _fixing(self) -> Raw:
        kind = self.random.choice(("nail", "hook", "screw"))
        if kind == "nail":
            return {
                "kind": kind,
                "diameter": f"{self.random.choice((1.6, 1.8, 2.0, 2.5))} mm",
                "length": self.typed(32),
            }
        if kind == "screw":
            return {"kind": kind, "diameter": f"{self.random.choice((3.5, 4, 4.5, 5))} mm", "length": self.typed(50)}
        rating = self.random.choice((10, 20, 30, 50, 75))
        return {
            "kind": kind, "below": self.typed(self.length(15, 28)), "length": self.typed(32), "angle": 45,
            "rating": f"{rating} lb" if self.unit == "in" else f"{rating // 2} kg",
        }  # fmt: skip


def random_jobs(count: int, first: int = 0) -> list[Raw]:
    """So many of them, the same ones each time."""
    return [Maker(seed).job() for seed in range(first, first + count)]


def _row(unit: str, frames: list[Raw], wall: Raw, **group: Any) -> Raw:
    frames = [{"id": chr(65 + at), **frame} for at, frame in enumerate(frames)]
    job = {"title": "Odd", "unit": unit, "date": "2026-03-14"}
    return {"job": job, "wall": wall, "group": {"arrangement": "row", **group}, "frame": frames}


def odd_jobs() -> dict[str, Raw]:
    """Jobs that look wrong and are right."""
    room = {"width": 5200, "height": 2600}
    rings = {"kind": "rings", "left": 300, "right": 302, "drop_left": 90, "drop_right": 91, "seen_from": "back"}
    headboard = {"kind": "furniture", "name": "headboard", "left": "45", "bottom": "24", "width": "60", "height": "12"}
    stairs = {"run": 27, "rise": 17.5, "up": "left", "nosing": [390, 17.5], "steps": 14}
    return {
        "panorama, mm": _row("mm", [{"width": 3000, "height": 600, "hanger": rings}], room),
        "panorama, in": _row("in", [{"width": "118", "height": "24", "drop": "4 1/2"}], {"width": "200", "height": "96"}),
        "panorama, m": _row("cm", [{"width": "3 m", "height": 70, "drop": 11}], {"width": "5 m", "height": "2.6 m"}),
        "panorama and prints": _row(
            "cm",
            [{"width": 30, "height": 40, "drop": 7}, {"width": 300, "height": 60, "drop": 10},
             {"width": 30, "height": 40, "drop": "7,3"}],
            {"width": 520, "height": 260}, gap=8,
        ),
        "miniature, mm": _row("mm", [{"width": 70, "height": 90, "hanger": "sawtooth", "drop": 8}] * 3, room, gap=40),
        "miniature, cm": _row("cm", [{"width": 7, "height": 9, "drop": "1,6"}] * 2, {"width": 320, "height": 250}, gap=5),
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
            **_row("cm", [{"width": 40, "height": 50, "drop": "7,5"}] * 4, {"width": 430, "height": 520, "stairs": stairs}),
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
            "mm", [{"width": 900, "height": 1200, "drop": 210, "weight": "14 kg"}] * 4, {"width": 11_000, "height": 4200},
            gap=250, height={"centre": 1550},
        ),
        "gallery, ft": _row(
            "in", [{"width": "36", "height": "48", "drop": "9"}] * 5, {"width": "36 ft", "height": "14 ft"}, gap="6",
            height={"centre": "60"},
        ),
        "canvas": _row("cm", [{"width": 80, "height": 100, "drop": 6, "weight": "2.1 kg"}] * 2, {"width": 400, "height": 250}),
        "mirror": _row(
            "in", [{"width": "30", "height": "40", "weight": "38 lb", "hanger": {
                "kind": "rings", "left": "2", "right": "2", "drop_left": "6", "drop_right": "6"}}],
            {"width": "130", "height": "100", "build": "drywall"},
        ),
        "triptych": _row(
            "cm", [{"width": 40, "height": 60, "drop": 9}, {"width": 60, "height": 40, "drop": 7},
                   {"width": 40, "height": 60, "drop": 9}], {"width": 400, "height": 250}, gap=5,
        ),
        "for children": _row(
            "cm", [{"width": 30, "height": 40, "drop": 6}] * 4, {"width": 400, "height": 250}, height={"centre": 105}
        ),
        "shelf": _row(
            "mm", [{"width": 300, "height": 400, "drop": 60}] * 3,
            {**room, "feature": [{"kind": "furniture", "name": "ledge", "left": 1500, "bottom": 900, "width": 2200, "height": 30}]},
            centre_on="ledge", height={"above": "ledge", "by": 120},
        ),
        "tight grid": {
            **_row("cm", [{"width": 20, "height": 20, "hanger": "sawtooth", "drop": "1,2"}] * 9, {"width": 300, "height": 250}),
            "group": {"arrangement": "grid", "across": 3, "gap": 2},
        },
        "narrow wall": _row("cm", [{"width": 40, "height": 50, "drop": 8}], {"width": 95, "height": 255}),
        "deep box": _row("mm", [{"width": 300, "height": 300, "depth": 90, "drop": 40, "weight": "3.2 kg"}] * 2, room),
        "scroll": _row("cm", [{"width": 45, "height": 180, "drop": 2, "hanger": "sawtooth"}] * 2, {"width": 300, "height": 260}),
        "square canvases, ft": _row(
            "in", [{"width": "3'", "height": "3'", "drop": "4 1/2"}] * 3, {"width": "18'", "height": "9'"}, gap="4"
        ),
    }  # fmt: skip
