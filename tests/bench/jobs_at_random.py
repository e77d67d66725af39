"""Sound jobs by chance, for `slips_at_random.py`: what a person could hang, every number from a range of its own.

All ranges are our own, no source: sizes, drops, gaps and heights as they are met with, none looked up in the doubts.
"""

from __future__ import annotations

import random
from collections.abc import Callable
from fractions import Fraction
from typing import Any

from templates_gen.base.units import INCH, KG, MM

Tables = dict[str, Any]

METRIC = ((210, 297), (297, 420), (300, 400), (400, 500), (500, 700), (600, 800), (130, 180), (180, 240), (700, 1000),
          (300, 300), (500, 500))  # fmt: skip
INCHES = ((4, 6), (5, 7), (8, 10), (11, 14), (12, 16), (16, 20), (18, 24), (20, 24), (24, 36), (12, 12), (10, 20))
GAPS = (20, 30, 40, 50, 50, 60, 75, 80, 100, 120)
CEILINGS = (2300, 2400, 2438.4, 2500, 2600, 2743.2, 2700, 2800, 3000)
HANGERS = ("wire",) * 5 + ("two", "rings", "rings", "sawtooth", "keyholes", "cleat", "plates")


def inches(number: float, parts: int) -> str:
    """A number of inches as people write it, to so many parts of one."""
    whole, rest = divmod(max(1, round(number * parts)), parts)
    return " ".join(str(each) for each in (whole, Fraction(rest, parts)) if each)


def number(value: Any) -> float:
    """A length's number in the job's unit."""
    return float(sum(Fraction(part) for part in value.split())) if isinstance(value, str) else float(value)


def written(value: float, unit: str) -> Any:
    return inches(value, 16) if unit == "in" else round(value, 2)


def other(value: Any, unit: str) -> str:
    """A length read off the other tape, its unit left out."""
    return f"{number(value) * INCH / MM['cm']:.1f}" if unit == "in" else inches(number(value) * MM[unit] / INCH, 8)


class Maker:
    """One job at a time, in one unit, as finely as one person measures."""

    def __init__(self, seed: int) -> None:
        self.chance = random.Random(seed)
        self.unit = self.chance.choice(("mm", "cm", "in"))
        self.fine = self.chance.random() < 0.5

    def said(self, mm: float) -> Any:
        """A length as it is written."""
        if self.unit == "mm":
            return round(mm)
        if self.unit == "cm":
            return round(mm / 10, 1) if self.fine else round(mm / 5) / 2
        return inches(mm / INCH, 16 if self.fine else 4)

    def read(self, mm: float) -> float:
        """The length (mm) as it was written."""
        return number(self.said(mm)) * MM[self.unit]

    def size(self) -> tuple[float, float]:
        """A frame's sides (mm): one sold by size, with or without a rim, or any."""
        between = self.chance.uniform
        if self.chance.random() < 0.45:
            short, long = self.chance.choice(INCHES if self.unit == "in" else METRIC)
            times, rim = (INCH if self.unit == "in" else 1.0), self.chance.choice((0, 0, between(15, 60)))
            sides = short * times + rim, long * times + rim
            return sides if self.chance.random() < 0.7 else sides[::-1]
        width = between(180, 900)
        return width, min(1100.0, max(150.0, width * between(0.6, 1.6)))

    def frames(self) -> tuple[list[Tables], list[tuple[float, float]]]:
        """Frames with one kind of hanger, and their sides (mm)."""
        chance, between, said = self.chance, self.chance.uniform, self.said
        count, same = chance.choice((1, 1, 2, 2, 3, 3, 3, 4, 4, 5, 6, 6, 8, 9, 9, 12)), chance.random() < 0.55
        sizes = [self.size() for _ in range(1 if same else chance.randint(2, 4))]
        hung, turned = self.hanger(), chance.random() < 0.2
        density = between(4, 11) if chance.random() < 0.5 else 0.0
        depth = between(15, 45) if chance.random() < 0.4 else 0.0
        frames, sides = [], []
        for at in range(count):
            width, height = map(self.read, chance.choice(sizes)[:: -1 if turned and chance.random() < 0.4 else 1])
            frame = {"id": "ABCDEFGHIJKL"[at], "width": said(width), "height": said(height), **hung(width, height)}
            if density:
                kg = width * height / 1e6 * density * between(0.75, 1.35) + 0.15
                frame["weight"] = f"{kg:.1f} kg" if self.unit != "in" else f"{kg / KG['lb']:.1f} lb"
            if depth:
                frame["depth"] = said(depth)
            frames.append(frame)
            sides.append((width, height))
        return frames, sides

    def hanger(self) -> Callable[[float, float], Tables]:
        """What is on the back of all frames of a job, from a frame's sides (mm)."""
        chance, between, said = self.chance, self.chance.uniform, self.said
        kind, by_height, scatter = chance.choice(HANGERS), chance.random() < 0.5, chance.choice((2, 5, 9))
        deep, share, inset, slot = between(25, 90), between(0.08, 0.28), between(15, 70), between(12, 60)

        def hung(width: float, height: float) -> Tables:
            drop = (height * share if by_height else min(deep, height * 0.35)) + between(-scatter, scatter)
            side, drop = min(inset, width * 0.35), max(12.0, drop)
            both = {"kind": kind, "left": said(side), "right": said(side)}
            if kind == "wire":
                return {"drop": said(drop)}
            if kind == "two":
                apart = said(width * between(0.3, 0.55))
                return {"hanger": {"kind": "wire", "apart": apart, "drop_at_two": said(drop)}}
            if kind == "rings":
                level = {"drop_left": said(drop), "drop_right": said(drop + between(-1.5, 1.5)), "seen_from": "back"}
                return {"hanger": {**both, **level}}
            if kind == "sawtooth":
                return {"hanger": "sawtooth", "drop": said(between(4, 18))}
            if kind == "plates":
                over = said(between(8, 18))
                drops = f"-{over}" if isinstance(over, str) else -over
                return {"hanger": {**both, "drop_left": drops, "drop_right": drops}}
            least = min(height * 0.3, slot + 20) if kind == "cleat" else slot + between(-1, 1)
            return {"hanger": both, "drop": said(least)}

        return hung

    def group(self, frames: list[Tables], sides: list[tuple[float, float]]) -> tuple[Tables, float, float]:
        """The group without its height, and how wide and high (mm) it is."""
        chance, names = self.chance, [frame["id"] for frame in frames]
        gap = self.read(chance.choice(GAPS) if chance.random() < 0.6 else chance.uniform(20, 130))
        most = {"row": 6, "column": 3}
        arrangement = chance.choice(("row", "column", "grid", "rows", "columns")) if len(names) > 1 else "row"
        if len(names) > most.get(arrangement, 12) or (arrangement == "grid" and len(set(sides)) > 1):
            arrangement = "rows"
        each = {"row": len(names), "column": 1}.get(arrangement, chance.randint(2, 5))
        if arrangement == "grid":
            each = chance.choice([k for k in range(2, len(names) + 1) if len(names) % k == 0])
        lines = [names[at : at + each] for at in range(0, len(names), each)]
        group = {"arrangement": arrangement, "gap": self.said(gap)}
        group |= {"across": each} if arrangement == "grid" else {}
        group |= {arrangement: lines} if arrangement in ("rows", "columns") else {}
        of, across = dict(zip(names, sides, strict=True)), int(arrangement == "columns")
        long = max(sum(of[one][across] for one in line) + gap * (len(line) - 1) for line in lines)
        deep = sum(max(of[one][1 - across] for one in line) for line in lines) + gap * (len(lines) - 1)
        return (group, deep, long) if across else (group, long, deep)

    def job(self) -> Tables | None:
        """A job's tables; None where what came up would not go on a wall."""
        chance, between, said = self.chance, self.chance.uniform, self.said
        frames, sides = self.frames()
        group, wide, high = self.group(frames, sides)
        width = max(between(1800, 6000), wide + between(150, 2000))
        ceiling = chance.choice((*CEILINGS, between(2250, 3200)))
        if high > 1750:
            return None
        wall = {"width": said(width), "height": said(ceiling)}
        if chance.random() < 0.5:
            wall["build"] = chance.choice(("drywall", "plaster", "masonry", "timber"))
        if wall.get("build") == "drywall" and chance.random() < 0.5:
            apart = 16 * INCH if self.unit == "in" else chance.choice((400, 600, 625))
            wall["board"] = "1/2 in" if self.unit == "in" else "12.5 mm"
            wall["studs"] = {"first": said(between(80, 600)), "spacing": said(apart)}
        features = self.placed(group, wide, high, width, ceiling)
        if features is None:
            return None
        wall["feature"] = features
        job = {"title": "By chance", "unit": self.unit, "date": "2026-03-14"}
        size = "letter" if self.unit == "in" else "a4"
        tables = {"job": job, "wall": wall, "group": group, "frame": frames, "paper": {"size": size}}
        if isinstance(frames[0].get("hanger"), dict) and frames[0]["hanger"]["kind"] != "wire":
            tables["fixing"] = {"kind": "screw", "diameter": "4 mm"}
        elif chance.random() < 0.5:
            tables["fixing"] = {"kind": "hook", "below": said(between(8, 26))}
        return tables

    def placed(self, group: Tables, wide: float, high: float, width: float, ceiling: float) -> list[Tables] | None:
        """Puts the group somewhere on the wall; what else is on it.  None where there is no room for the group."""
        chance, between, said = self.chance, self.chance.uniform, self.said
        middle, features = width / 2, list[Tables]()
        if chance.random() < 0.4 and high < 1100 and ceiling > 2350:
            long = min(between(1400, 2300) if wide < 2200 else wide * between(0.8, 1.1), width - 20)
            name = "sideboard" if long > 2300 else chance.choice(("sofa", "sideboard", "bench", "bed"))
            up, by = between(430, 520) if name == "bench" else between(650, 900), between(150, 300)
            left = between(0, width - long) if chance.random() < 0.5 else (width - long) / 2
            if wide / 2 > min(left + long / 2, width - left - long / 2) - 60:
                left = (width - long) / 2
            by = min(by, max(80.0, ceiling - 60 - high - up))
            at = {"left": said(left), "bottom": 0, "width": said(long), "height": said(up)}
            features.append({"kind": "furniture", "name": name, **at})
            group |= {"centre_on": name, "height": {"above": name, "by": said(by)}}
            middle = left + long / 2
        else:
            up = max(min(between(1450, 1600), ceiling - high / 2 - 80), high / 2 + 250)
            if up > ceiling - high / 2:
                return None
            by = chance.choice(("centre", "centre", "top", "bottom"))
            group["height"] = {by: said(up + {"centre": 0.0, "top": high / 2, "bottom": -high / 2}[by])}
            if chance.random() < 0.3 and width > wide + 900:
                middle = between(wide / 2 + 300, width - wide / 2 - 300)
                group["centre_on"] = said(middle)
        beside = chance.choice((middle - wide / 2 - between(200, 500), middle + wide / 2 + between(100, 400)))
        if chance.random() < 0.4 and 30 < beside < width - 120:
            box = {"width": said(chance.choice((70, 80, 86))), "height": said(chance.choice((80, 86, 115)))}
            features.append({"kind": "switch", "left": said(beside), "bottom": said(between(950, 1250)), **box})
        elif chance.random() < 0.3 and not features and middle - wide / 2 > 1200:
            left = said(between(50, middle - wide / 2 - 1000))
            door = {"width": said(between(760, 915)), "height": said(between(1981, 2100))}
            features.append({"kind": "door", "left": left, **door})
        return features
