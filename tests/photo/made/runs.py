"""Many made photographs of taped paper, read, and compared with the truth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cache

import numpy as np

from templates_gen.documents.photographed import Papers, drawn_tags, papers
from templates_gen.photo.picture import Photo
from templates_gen.photo.taped import Taped, read_taped
from templates_gen.photo.taped_words import bad_joins, doubtful_joins
from tests.jobs import paper
from tests.made import Everything, make, read_job, twelve
from tests.photo.made.cameras import standing
from tests.photo.made.photograph import Look, photograph
from tests.photo.made.taped import Laid, taped
from tests.photo.made.truth import Truth, truth

TWELVE_MILLION = (4000, 3000)


@dataclass(frozen=True)
class Setting:
    """What the photographs of a run have in common: `odd` is by a camera, a blur, noise and paper of other kinds than
    those that the fit was tuned on; the edges of `loose` paper lift, by default half of the odd ones do."""

    odd: bool = False
    off: float = 0.0
    views: int = 1
    size: tuple[int, int] = TWELVE_MILLION
    dots: float = 600.0
    loose: bool | None = None


@dataclass
class Outcome:
    """Errors in mm, a row for each join or nail: found less true, along x and y; and what was claimed.  `offs` are
    found and true at a join's worse end, `named` whether it was said to be bad or doubtful."""

    joins: list[np.ndarray] = field(default_factory=list)
    join_sure: list[float] = field(default_factory=list)
    offs: list[tuple[float, float]] = field(default_factory=list)
    named: list[str] = field(default_factory=list)
    nails: list[np.ndarray] = field(default_factory=list)
    nail_sure: list[float] = field(default_factory=list)
    unread: int = 0


@cache
def printed(name: str) -> tuple[Everything, Papers]:
    """A template with photo tags, and what is on it."""
    jobs = {
        "linked": lambda: twelve(paper("letter", cover="linked", photo=True), "in"),
        "marks": lambda: twelve(paper("a4", photo=True)),
        "ferns": lambda: _ferns(),
    }
    done = make(jobs[name]())
    return done, papers(done.plan, done.sheets, drawn_tags(done.plan, done.sheets, done.template))


def _ferns():
    from templates_gen.documents.making import on_paper
    from tests.jobs import SAMPLES

    return on_paper(read_job(SAMPLES / "fern-prints.toml"), photo=True)


def look_of(setting: Setting, chance: np.random.Generator) -> Look:
    if not setting.odd:
        return Look(blur=chance.uniform(0.5, 1.2), noise=chance.uniform(1, 4), uneven=chance.uniform(0, 0.4),
                    quality=int(chance.integers(80, 96)))  # fmt: skip
    return Look(blur=chance.uniform(0.3, 0.8), motion=chance.uniform(0, 2.0), noise=chance.uniform(1, 4), grain=True,
                uneven=chance.uniform(0, 0.6), quality=int(chance.integers(70, 95)), tapes=int(chance.integers(5, 25)),
                glares=int(chance.integers(0, 3)))  # fmt: skip


def one(name: str, setting: Setting, seed: int) -> tuple[list[Laid], list[Photo]]:
    """Sheets as taped, and their photographs."""
    done, known = printed(name)
    chance = np.random.default_rng(seed)
    spread = 0.06 if setting.odd else 0.0
    loose = setting.odd and bool(seed % 2) if setting.loose is None else setting.loose
    laid = taped(done, chance, aside=chance.uniform(0.3, 1.2), turn=chance.uniform(0.05, 0.2), most_off=setting.off,
                 spread=spread, dots=setting.dots, loose=loose)  # fmt: skip
    x0, x1 = (pick(edge for _, c in known.cells for edge in (c.x0, c.x1)) for pick in (min, max))
    y0, y1 = (pick(edge for _, c in known.cells for edge in (c.y0, c.y1)) for pick in (min, max))
    photos = []
    kind, bends = ("divided" if setting.odd else "brown"), None
    for view in range(setting.views):
        aside = None if setting.views == 1 else chance.uniform(10, 20) * (-1) ** view
        camera = standing(chance, setting.size, ((x0 + x1) / 2, (y0 + y1) / 2), x1 - x0, y1 - y0, kind, aside)
        if bends is not None:  # the same telephone
            camera = type(camera)(camera.size, camera.at, camera.axes, *bends, kind)
        bends = camera.focal, camera.centre, camera.bends
        grey = photograph(laid, camera, look_of(setting, chance), chance)
        photos.append(Photo(f"{view}.jpg", b"", grey))
    return laid, photos


def compared(found: Taped, true: Truth, outcome: Outcome) -> None:
    bad, doubtful = bad_joins(found), doubtful_joins(found)
    for join in found.joins:
        off, dx, dy = true.joins[join.over, join.under]
        own = (join.across, join.along) if join.upright else (join.along, join.across)
        outcome.joins.append(np.subtract(own, (dx, dy)))
        outcome.join_sure.append(join.sure)
        outcome.offs.append((join.off, off))
        outcome.named.append("bad" if join in bad else "doubtful" if join in doubtful else "")
    for nail in found.nails:
        outcome.nails.append(np.array([nail.dx, nail.dy]) - true.nails[nail.name])
        outcome.nail_sure.append(nail.sure)


def run(setting: Setting, count: int, names: Sequence[str] = ("linked", "ferns"), first: int = 0) -> Outcome:
    """So many photographs, each of other sheets."""
    from templates_gen.base.errors import InputError

    outcome = Outcome()
    for seed in range(first, first + count):
        name = names[seed % len(names)]
        laid, photos = one(name, setting, seed)
        try:
            found = read_taped(photos, printed(name)[1])
        except InputError:
            outcome.unread += 1
            continue
        compared(found, truth(laid, printed(name)[1]), outcome)
    return outcome


def rms(errors: Sequence[np.ndarray]) -> float:
    """The root of the mean square of the lengths of the errors."""
    return float(np.sqrt((np.array(errors) ** 2).sum(-1).mean()))


def covered(errors: Sequence[np.ndarray], sure: Sequence[float]) -> float:
    """How many of the errors, right and up, keep within what was claimed."""
    return float((np.abs(np.array(errors)) <= np.array(sure)[:, None]).mean())
