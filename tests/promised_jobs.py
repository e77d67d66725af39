"""Jobs by chance for what the first page promises: every kind of hanger, paper cut or not, measured printers or not."""

from __future__ import annotations

import random

from templates_gen.job.accuracy import Accuracy
from templates_gen.job.model import Frame, Hanger, Job
from templates_gen.printer.profile import Printer, Readings, measured
from tests.jobs import frame, group, job, paper

KINDS = ("wire", "rings", "cleat", "sawtooth", "keyholes", "two hooks")


def promised(seed: int) -> tuple[Job, Printer | None]:
    """Two to twelve frames in rows; a third of the jobs for a measured printer, a third not cut, a fifth in pieces."""
    chance = random.Random(seed)
    rows, across = chance.randint(1, 3), chance.randint(2, 4)
    kinds = chance.sample(KINDS, 2)
    alike = chance.random() < 0.4
    size = _size(chance)
    names = [[f"{row}{place}" for place in range(across)] for row in range(rows)]
    frames = [
        _frame(name, size if alike else _size(chance), chance.choice(kinds), chance) for row in names for name in row
    ]
    on = paper(
        chance.choice(("a4", "letter", "a3")), trim="none" if seed % 3 == 1 else "cut",
        cover=chance.choice(("marks", "marks", "all", "nails")) if seed % 3 != 1 else "marks",
    )  # fmt: skip
    works = Accuracy(string=chance.random() < 0.7, match=chance.choice((0.4, 0.4, 0.8)))
    gap = chance.uniform(30.0, 90.0)
    asked = job(
        *frames, group=group(tuple(map(tuple, names)), gap=gap), paper=on, accuracy=works, title=f"By chance {seed}"
    )
    return asked, profile(on.name, chance) if seed % 3 == 2 else None


def _size(chance: random.Random) -> tuple[int, int]:
    return chance.randint(200, 450), chance.randint(200, 450)


def _frame(name: str, size: tuple[int, int], kind: str, chance: random.Random) -> Frame:
    width, height = map(float, size)
    drop, aside = chance.uniform(30.0, height / 3), chance.uniform(30.0, width / 3)
    if kind == "two hooks":
        apart = chance.uniform(80.0, width * 0.6)
        return frame(name, width, height, None, hanger=Hanger(kind="wire", apart=apart, drop_at_two=drop))
    if kind in ("wire", "sawtooth"):
        return frame(name, width, height, drop, hanger=Hanger(kind=kind))
    more = {"screw_below": 12.0} if kind == "cleat" else {}
    hanger = Hanger(kind=kind, left=aside, right=aside + 4.0, drop_left=drop, drop_right=drop + 1.5, **more)
    return frame(name, width, height, None, hanger=hanger)


def profile(on: str, chance: random.Random) -> Printer:
    """A printer by chance, its diagonals measured or not, read to 0.1 to 0.5 mm."""
    across, along = 185.0, 262.0
    kx, ky, lean = (chance.gauss(mean, sd) for mean, sd in ((0.998, 0.002), (1.001, 0.002), (0.0, 0.002)))
    diagonals = tuple(
        (((kx * across) ** 2 + (ky * along) ** 2 + sign * 2 * lean * kx * across * ky * along) ** 0.5)
        for sign in (1, -1)
    )
    readings = Readings(
        asked_across=across, asked_along=along, across=kx * across, along=ky * along,
        diagonals=(diagonals[0], diagonals[1]) if chance.random() < 0.5 else None,
        reading_error=chance.choice((0.1, 0.2, 0.5)),
    )  # fmt: skip
    return measured("by chance", on, readings, "2026-03-01")
