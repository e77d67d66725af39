"""Sound jobs by chance, as people have them: what is likely of each measure, typed in each unit and manner."""

from __future__ import annotations

from random import Random
from typing import Any

from templates_gen.base.units import MM, inches

Raw = dict[str, Any]

INCH_SIZES = ((8, 10), (11, 14), (12, 12), (12, 16), (16, 20), (18, 24), (20, 24), (20, 28), (24, 36), (5, 7), (9, 12))
CM_SIZES = (
    (21, 29.7), (30, 40), (40, 50), (50, 70), (30, 30), (20, 25), (24, 30), (60, 80), (13, 18), (18, 24), (50, 50)
)  # fmt: skip
FURNITURE = (
    ("sofa", 1800, 2300, 780, 900), ("sideboard", 1200, 2000, 700, 900), ("bench", 1100, 1700, 420, 500),
    ("desk", 1200, 1600, 720, 760), ("bed", 1400, 1800, 450, 1150), ("chest", 800, 1200, 750, 1000),
)  # fmt: skip
"""Names, and the least and the most of their widths and heights (mm).  Common practice, no source."""


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
        if self.some(0.4):
            wall["build"] = self.random.choice(("drywall", "plaster", "timber", "drywall"))
            if self.some(0.5):
                wall["board"] = self.typed(self.random.choice((9.5, 12.7, 15.9)))
            if self.some(0.4):
                spacing = self.random.choice((406.4, 609.6) if self.unit == "in" else (400, 600, 625))
                wall["studs"] = {"first": self.typed(self.length(50, 390)), "spacing": self.typed(spacing)}
        elif self.some(0.4):
            wall["build"] = "masonry"
        features, place = self._furniture(room, ceiling, width, height)
        if not place and self.some(0.7):
            centre = min(max(self.length(1350, 1600), height / 2 + 200), ceiling - height / 2 - 60)
            place = {"height": {"centre": self.typed(centre)}}
        if self.some(0.4):
            wide, high = self.length(70, 90), self.length(80, 120)
            features.append(self._feature("switch", 60.0, self.length(1000, 1250), wide, high))
        if self.some(0.4):
            features.append(self._feature("outlet", room - 300.0, self.length(200, 400), 80.0, 110.0))
        if features:
            wall["feature"] = features
        return wall, place

    def _furniture(self, room: float, ceiling: float, width: float, height: float) -> tuple[list[Raw], Raw]:
        """Furniture that the group hangs over, where there is room for it, and where the group hangs then."""
        name, narrow, broad, low, high = self.random.choice(FURNITURE)
        wide, tall = min(self.length(narrow, broad), room - 100), self.length(low, high)
        if self.some(0.5) or ceiling - height < max(1350, tall + 300):
            return [], {}
        left = self.length(0.2, 0.8) * (room - wide)
        left = min(max(left, width / 2 - wide / 2 + 30), room - wide / 2 - width / 2 - 30)
        left = max(0.0, min(left, room - wide))
        feature, by = self._feature("furniture", left, 0.0, wide, tall) | {"name": name}, self.length(110, 240)
        fits = tall + by + height < ceiling - 60
        place = {"centre_on": name, "height": {"above": name, "by": self.typed(by)}} if fits else {}
        return [feature], place

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
