"""The jobs that are recorded: small ones, that together have every kind of paper, hanger, line and mark."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.job.model import Feature, Fixing, Height, Job, Wall
from templates_gen.job.paper_sizes import large_page
from templates_gen.job.stairs import Stairs
from templates_gen.printer.profile import Printer, Readings
from templates_gen.printer.profile import measured as profile
from tests.crowded import crowded
from tests.jobs import frame, group, job, paper
from tests.made import HOOK, KEYHOLES, RINGS, SAMPLE_NAMES, SAWTOOTH, TWO_HOOKS, asked, roll


class Recorded(NamedTuple):
    """A job, with all steps of a user's search or a fifth of them, and the printer that it is corrected for."""

    make: Callable[[], Job]
    as_usual: bool = False
    printer: Printer | None = None


MIXED = (
    frame("1", 260, 320, 62, title="Hart's-tongue"),
    frame("2", 410, 300, None, title="Royal fern", hanger=RINGS, fixing=HOOK),
    frame("3", 400, 280, 90, title="Polypody, on a wall", hanger=TWO_HOOKS, fixing=HOOK),
    frame("4", 200, 250, None, title="Wall rue"),
    frame("5", 300, 240, 25, title="Moonwort", hanger=KEYHOLES, fixing=Fixing(kind="screw", diameter=4.0)),
)
"""A frame for every kind of hanger, one of them not measured yet.  Made up."""


def mixed(on: str, unit: str, **more: object) -> Job:
    """Two rows of frames with all kinds of hangers."""
    rows = (("1", "2"), ("3", "4", "5"))
    return job(*MIXED, group=group(rows, gap=45.0), paper=paper(on, **more), unit=unit, title="Mixed ferns")


def pair(on: str, unit: str, **more: object) -> Job:
    """Two small frames beside each other."""
    frames = (frame("left", 150, 210, 30, title="Adder's-tongue"), frame("I", 130, 180, 12, hanger=SAWTOOTH))
    return job(*frames, group=group((("left", "I"),), gap=30.0), paper=paper(on, **more), unit=unit, title="A pair")


def crowd(on: str, unit: str, seed: int = 3, **more: object) -> Job:
    """Four frames of a crowded wall."""
    whole = crowded(seed, paper(on, **more), unit)
    one, two, three, four = (item.id for item in whole.frames[2:6])
    return replace(whole, frames=whole.frames[2:6], group=replace(whole.group, rows=((one, two), (three, four))))


def on_stairs(on: str, unit: str, slope: float, **more: object) -> Job:
    """Three frames up a flight of stairs, over a bench with a switch beside it."""
    wall = Wall(
        name="stair", width=4200.0, height=4600.0, stairs=Stairs(x=500.0, y=180.0, slope=slope, run=250.0, rise=170.0),
        features=(Feature(kind="switch", name="switch", rect=Rect.sized(600.0, 1100.0, 80.0, 120.0)),),
    )  # fmt: skip
    names = ("Ada", "Bruno", "Cleo")
    frames = [frame(name, 220 + 40 * at, 280 - 30 * at, 40 + at, title="Locks") for at, name in enumerate(names)]
    asked_for = group((names,), "stairs", gap=60.0, slope=slope, align="centre", height=Height(by="centre", at=1450.0))
    return job(*frames, group=asked_for, wall=wall, unit=unit, title="Stairs", paper=paper(on, **more))


def near() -> Job:
    """Two frames so small that their corners meet, the nail of one of them 14 mm under the target."""
    frames = (frame("N", 90, 56, 42, title="Near"), frame("m", 45, 50, 8, hanger=SAWTOOTH))
    return job(*frames, group=group((("N",), ("m",)), gap=25.0, height=Height(by="top", at=1528.0)), title="Small")


def printer() -> Printer:
    """A printer that prints a little short, more so across, and leans.  Made up."""
    sides = {"asked_across": 180.0, "asked_along": 250.0, "across": 179.2, "along": 249.5}
    return profile("office", "a4", Readings(**sides, diagonals=(307.0, 307.8)), "2026-03-01")


DRAWN = {
    "linked": Recorded(lambda: mixed("a4", "mm", cover="linked"), as_usual=True),
    "marks": Recorded(lambda: mixed("tabloid", "in"), as_usual=True),
    "all": Recorded(lambda: pair("a5", "cm", cover="all")),
    "loose": Recorded(lambda: mixed("letter", "cm", cover="nails")),
    "uncut": Recorded(lambda: pair("a4", "in", trim="none", overlap=20.0)),
    "one-piece": Recorded(lambda: replace(mixed("a4", "in"), paper=large_page(paper("letter")))),
    "stairs": Recorded(lambda: on_stairs("a4", "mm", 0.68, cover="nails")),
    "led": Recorded(lambda: crowd("letter", "in", 12, trim="none", cover="all")),  # a label is led to
    "crowded": Recorded(lambda: crowd("tabloid", "in", cover="all", photo=True)),
    "corrected": Recorded(lambda: pair("a4", "mm", photo=True), printer=printer()),
    "near": Recorded(near),
    "down": Recorded(lambda: on_stairs("a3", "cm", -0.55, cover="linked")),
    "one-frame": Recorded(lambda: job(frame("O", 180, 240, 60), paper=paper("a4", cover="nails"), title="One")),
}
"""Of these every mark and word on every sheet is recorded."""


NAMES = tuple(name for name in SAMPLE_NAMES if name != "paste-papers")
"""The samples but one, whose places take a second to find."""


def _on(names: Sequence[str], paper_words: str, size: str, **more: object) -> dict[str, Recorded]:
    """These samples on other paper.  They are named, so that a new sample moves no record of another."""
    return {
        f"{name}, {paper_words}": Recorded(lambda name=name: replace(asked(name), paper=paper(size, **more)))
        for name in names
    }


PLANNED = {
    **_on(NAMES, "letter, linked", "letter", cover="linked"),
    **_on(("fern-prints", "lock-keepers"), "a4, marks", "a4"),
    **_on(("fern-prints", "loom-drawings"), "a4, all", "a4", cover="all"),
    **_on(("alphabet-column", "kiln-tiles", "loom-drawings", "tile-rubbings"), "letter, nails", "letter",
          cover="nails"),
    **_on(("alphabet-column", "lock-keepers", "tile-rubbings"), "a4, uncut", "a4", trim="none"),
    **_on(("fern-prints", "loom-drawings", "tram-tickets"), "letter, uncut, linked", "letter",
          trim="none", cover="linked"),
    "stairs down, a3": Recorded(lambda: on_stairs("a3", "cm", -0.55)),
    "stairs, linked": Recorded(lambda: on_stairs("a4", "in", 0.68, cover="linked")),
    "two panels": Recorded(lambda: asked("two panels")),
    "roll": Recorded(lambda: replace(mixed("a4", "mm"), paper=roll(610.0))),
    "lying": Recorded(lambda: asked("one piece, lying")),
    "crowded, linked": Recorded(lambda: crowd("a4", "mm", cover="linked")),
    "low and wide": Recorded(lambda: asked("low and wide")),
}  # fmt: skip
"""Of these the sheets are recorded, and what is told of them."""

__all__ = ["DRAWN", "PLANNED", "Recorded"]
