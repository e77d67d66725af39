"""Files for the examples in the help of `photo`: a job, and made photographs of its taped paper and its wall."""

from __future__ import annotations

import io
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np
from PIL import Image

from templates_gen.arranging.plan import plan_wall
from templates_gen.documents.photographed import drawn_tags, faces, papers
from templates_gen.job.model import Job
from templates_gen.job.reading.building import read_job
from tests.made import make
from tests.photo.made.cameras import standing
from tests.photo.made.carded import cards_at
from tests.photo.made.framed import hanging, pointed, shadow
from tests.photo.made.photograph import Look, developed, lay, photograph, wall
from tests.photo.made.taped import taped

JOB = """
[job]
title = "Tile rubbings"
unit = "mm"
[wall]
width = 2400
height = 2400
[group]
arrangement = "row"
gap = 60
height = { centre = 1450 }
[paper]
photo = true
cover = "linked"
[[frame]]
id = "A"
width = 300
height = 400
drop = 60
[[frame]]
id = "B"
width = 300
height = 400
drop = 62
"""


def as_file(grey: np.ndarray, kind: str) -> bytes:
    """A made photograph as a camera writes it."""
    out = io.BytesIO()
    Image.fromarray(grey).save(out, kind, quality=92)
    return out.getvalue()


@cache
def _job() -> Job:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "job.toml"
        path.write_text(JOB)
        return read_job(path)


@cache
def photographed() -> bytes:
    """The taped paper of the small job."""
    done = make(_job())
    known = papers(done.plan, done.sheets, drawn_tags(done.plan, done.sheets, done.template))
    chance = np.random.default_rng(3)
    laid = taped(done, chance, aside=0.4, turn=0.05, dots=300.0)
    x0, x1 = (pick(edge for _, c in known.cells for edge in (c.x0, c.x1)) for pick in (min, max))
    y0, y1 = (pick(edge for _, c in known.cells for edge in (c.y0, c.y1)) for pick in (min, max))
    camera = standing(chance, (1600, 1200), ((x0 + x1) / 2, (y0 + y1) / 2), x1 - x0, y1 - y0)
    return as_file(photograph(laid, camera, Look(), chance), "JPEG")


@cache
def of_wall() -> bytes:
    """The wall of the small job with both photo cards, the first where its lines cross."""
    plan, chance = plan_wall(_job()), np.random.default_rng(4)
    middle = plan.centre_line, plan.level_line
    cards = cards_at([middle, (middle[0] + 900.0, middle[1])], chance)
    camera = standing(chance, (1600, 1200), middle, 2200.0, 1400.0)
    return as_file(photograph(cards, camera, Look(), chance), "JPEG")


@cache
def of_hung() -> tuple[bytes, str, dict[str, np.ndarray]]:
    """The frames of the small job as they hang, with a card; where somebody pointed; their true upper corners."""
    plan, chance = plan_wall(_job()), np.random.default_rng(2)
    frames = hanging(faces(plan), 20.0, chance)
    middle = plan.centre_line, plan.level_line
    camera = standing(chance, (2000, 1500), middle, 1100.0, 800.0, most=8.0)
    picture = wall(camera, chance)
    for frame in frames:
        shadow(picture, frame, camera, chance)
    for sheet in [*frames, *cards_at([(middle[0], middle[1] - 330.0)], chance, level=0.0)]:
        lay(picture, sheet, camera)
    rows = ["frame,top_left,top_right,bottom_right,bottom_left"]
    for frame in frames:
        rows.append(",".join([frame.name, *(f"{x:.0f} {y:.0f}" for x, y in pointed(frame, camera, chance, 4.0))]))
    true = {frame.name: frame.lies(np.array(frame.paper.corners)[[3, 2]]) for frame in frames}
    return as_file(developed(picture, Look(), chance), "JPEG"), "\n".join(rows) + "\n", true


def write_examples(folder: Path) -> None:
    """job.toml, and photographs of its taped paper, its wall, and what hangs there, with corners.csv."""
    (folder / "job.toml").write_text(JOB)
    (folder / "taped.jpg").write_bytes(photographed())
    (folder / "wall.jpg").write_bytes(of_wall())
    content, corners, _ = of_hung()
    (folder / "hung.jpg").write_bytes(content)
    (folder / "corners.csv").write_text(corners)
