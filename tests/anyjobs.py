"""Job files by chance, as people write them: any unit, arrangement, hanger and way to write a length."""

from __future__ import annotations

import random
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from templates_gen.base.csv_cells import own_text
from templates_gen.base.toml import toml

MM = {"in": 25.4, "cm": 10.0, "mm": 1.0}  # the inch exactly (international yard and pound agreement, 1959)
IDS = ("A", "B 2", "=C", "-d", "№ 5", "'e", "Ñ", "8", "no", "two  blanks", "–")
TYPE = "tall  one"
FREE = ("row", "column", "rows", "columns", "grid", "placed", "salon")
"""Arrangements whose frames have free places."""


class AnyJob:
    """A job file made by chance in `text`, and in `sheets` the spreadsheets that it names."""

    def __init__(self, seed: int, unit: str, arrangements: Sequence[str] = FREE) -> None:
        self.chance, self.unit = random.Random(seed), unit
        self.ids = self.chance.sample(IDS, self.chance.randint(2, 4))
        self.arrangement = self.chance.choice(arrangements)
        self.sheets: dict[str, str] = {}
        self.text = self._text()

    def written(self, folder: Path, name: str = "job.toml") -> Path:
        """The job file and its spreadsheets in this folder."""
        for sheet, content in self.sheets.items():
            (folder / sheet).write_text(content, encoding="utf-8")
        path = folder / name
        path.write_text(self.text, encoding="utf-8")
        return path

    def length(self, least: float, most: float) -> str | float:
        """A length between the two (mm), as someone might write it."""
        mm, own = self.chance.uniform(least, most), MM[self.unit]
        way = self.chance.randrange(6)
        if way == 0:
            return f"{mm:.1f} mm"
        if way == 1:
            whole, rest = divmod(round(mm / 25.4 * 16), 16)
            return f"{whole} {rest}/16 in"
        if way == 2:
            return f"{mm / 1000:.7f} m"
        if way == 3:
            return float(f"{mm / own:.6f}")
        return round(mm / own, 2) if way == 4 else f"{mm / own:.3f}"

    def offset(self, most: float) -> str | float:
        """A distance to either side."""
        size = self.length(0.0, most)
        if self.chance.random() < 0.5:
            return size
        return f"-{size}" if isinstance(size, str) else -size

    def _text(self) -> str:
        job: dict[str, Any] = {"title": "Tile rubbings", "unit": self.unit, "date": "2026-03-01"}
        frames = [self._frame(name) for name in self.ids]
        tables = [f"[wall]\n{self._wall()}", *map(self._feature, ("bench", "2nd shelf")), self._group()]
        if "two  blanks" not in self.ids and self.chance.random() < 0.3:
            job["frames"], frames = "frames.csv", self._to_sheet(frames)
        tables += [self._table(frame) for frame in frames]
        if any("type" in frame for frame in frames):
            shared = {"width": self.length(200, 500), "hanger": {"kind": "wire", "ring_depth": "95 mm"}}
            tables.append(f"[frame_type.{toml(TYPE)}]\n{_fields(shared)}")
        if self.chance.random() < 0.3:
            tables.append(f"[fixing]\n{_fields({'kind': 'hook', 'below': self.length(10, 25)})}")
        return f"[job]\n{_fields(job)}\n" + "\n".join(tables)

    def _table(self, frame: dict[str, Any]) -> str:
        """The table of a frame, perhaps with its size from its parts, or with a fixing of its own."""
        if self.chance.random() < 0.2:
            height = frame.pop("height")
            frame |= {"print": [self.length(80, 120), height], "mat": self.length(30, 50)}
            frame["moulding"] = {"face": self.length(20, 30), "rabbet": "6 mm"}
            frame.pop("width", None)
        if self.chance.random() < 0.2:
            frame["fixing"] = {"kind": "screw", "diameter": "4 mm", "rating": "20 lb"}
        return f"[[frame]]\n{_fields(frame)}"

    def _wall(self) -> str:
        if self.chance.random() < 0.7:
            return f"width = {toml(self.length(7000, 9000))}\nheight = {toml(self.length(4000, 5000))}\n"
        corners = [[0, 0], [self.length(7000, 9000), 0], [self.length(5000, 6500), self.length(4000, 5000)]]
        return f"outline = {toml([*corners, [0, self.length(4000, 4500)]])}\n"

    def _feature(self, name: str) -> str:
        place = {"left": self.length(100, 5000), "bottom": 0, "width": self.length(300, 900), "height": "400 mm"}
        return f"[[wall.feature]]\n{_fields({'kind': 'furniture', 'name': name, **place})}"

    def _frame(self, name: str) -> dict[str, Any]:
        frame: dict[str, Any] = {"id": name, "width": self.length(200, 500), "height": self.length(200, 500)}
        if self.chance.random() < 0.5:
            frame["title"] = self.chance.choice(("Wheat; oats", '"Barley"', "–", "'=1", "  Rye"))
        if self.chance.random() < 0.5:
            frame["weight"] = self.chance.choice(("1.25 kg", "3 lb 4 oz", "850 g", "0.00004 kg"))
        drop = self.chance.random() < 0.8
        if self.chance.random() < 0.15:
            del frame["width"]
            frame |= {"type": TYPE, **({"drop": self.length(30, 80)} if drop else {})}
            return frame | ({"hanger": {"apart": self.length(40, 60)}} if self.chance.random() < 0.5 else {})
        kind = self.chance.choice(("wire", "two", "sawtooth", "rings", "keyholes", "cleat"))
        if kind in ("wire", "sawtooth"):
            frame["hanger"] = kind
        elif kind == "two":
            frame["hanger"] = {"kind": "wire", "apart": self.length(40, 60)}
            frame["hanger"] |= {"ring_separation": self.length(140, 180), "ring_depth": self.length(90, 120)}
            frame |= {"drop": self.length(30, 60)} if drop else {}
            return frame
        else:
            pair = {"left": self.length(20, 80), "right": self.length(20, 80), "seen_from": "back"}
            frame["hanger"] = {"kind": kind, **pair}
            if kind == "cleat":
                frame["hanger"]["screw_below"] = self.length(20, 40)
            elif self.chance.random() < 0.5:
                frame["hanger"] |= {"drop_left": self.length(30, 80), "drop_right": self.length(30, 80)}
        return frame | ({"drop": self.length(30, 80)} if drop else {})

    def _to_sheet(self, frames: list[dict[str, Any]]) -> list[dict[str, Any]]:
        """All frames but the last into a spreadsheet of simple columns."""
        simple = [{"width": "300 mm", **frame, "hanger": "wire", "title": ""} for frame in frames[:-1]]
        names = ("id", "width", "height", "drop")
        rows = [";".join(str(_cell(frame.get(name, ""))) for name in names) for frame in simple]
        self.sheets["frames.csv"] = "\n".join([";".join(names), *rows, ""])
        return frames[-1:]

    def _group(self) -> str:
        fields: dict[str, Any] = {"arrangement": self.arrangement, "gap": self.length(30, 90)}
        half = (len(self.ids) + 1) // 2
        if self.arrangement in ("rows", "columns"):
            fields[self.arrangement] = [self.ids[:half], self.ids[half:]]
        if self.arrangement == "grid":
            fields["across"] = half
        fields["centre_on"] = self.chance.choice(("wall", "bench", "2nd shelf", self.length(3000, 4000)))
        where = self.chance.choice(("centre", "top", "bottom", "above"))
        fields["height"] = {where: self.length(1700, 1900)}
        if where == "above":
            fields["height"] = {"above": "bench", "by": self.length(300, 900)}
        if self.chance.random() < 0.3:
            over = fields["centre_on"]
            plain = over == "wall" and self.ids[0] != "8"  # which is a distance, too
            fields["centre_on"] = self.ids[0] if plain else {"frame": self.ids[-1], "over": over}
            fields["height"]["of"] = self.chance.choice(self.ids)
        text = f"[group]\n{_fields(fields)}"
        if self.arrangement == "placed":
            middles = [(self.offset(100), 600.0 * at) for at in range(len(self.ids))]
            places = {name: [side, f"{up} mm"] for name, (side, up) in zip(self.ids, middles, strict=True)}
            text += "[group.place]\n" + "".join(f"{toml(n)} = {{ centre = {toml(at)} }}\n" for n, at in places.items())
        return text


def _fields(table: dict[str, Any]) -> str:
    return "".join(f"{name} = {toml(value)}\n" for name, value in table.items())


def _cell(value: object) -> object:
    return own_text(value) if isinstance(value, str) else value
