"""The questions of a job in a person's order: which comes next depends on what was answered before.

Nothing here reads or writes anything.  An answer goes into the tables of a job file as it was typed.
"""

from __future__ import annotations

import re

from templates_gen.cli.interview.on_fixings import ask_fixings
from templates_gen.cli.interview.on_frames import ask_frames
from templates_gen.cli.interview.on_group import ask_group
from templates_gen.cli.interview.on_wall import ask_features, ask_wall
from templates_gen.cli.interview.question import Asking, Tables, fill, question_for
from templates_gen.job.paper_sizes import USUAL_SIZES
from templates_gen.job.tables.contents import field_of

PRINTED = {"linked": {"cover": "linked"}, "outlines": {}, "shop": {"print_shop": True}}
"""How a template may be printed, in the words of the question, and what stands in the job's paper for it."""

PRINTED_MEANS = (
    "linked: on your printer, the nails on a strip of sheets, the quickest to tape; outlines: on your printer, with "
    "every frame's corners; shop: in one piece at a print shop, nothing to tape"
)

LONGEST_NAME = 60
"""Letters of a title that go into a file's name.  Our own design, no source."""


def interview(tables: Tables, file: str) -> Asking:
    """Every question of a job; the answers sent back fill the tables.  `file` is where the job goes, if it is known."""
    job = tables.setdefault("job", {})
    yield from fill(job, "job.title")
    yield from fill(job, "job.client", open="no client")
    yield from fill(job, "job.unit", choices=field_of("job.unit").choices)
    yield from ask_wall(tables.setdefault("wall", {}))
    yield from ask_features(tables["wall"])
    yield from ask_frames(tables.setdefault("frame", []))
    yield from ask_fixings(tables)
    yield from ask_group(tables.setdefault("group", {}), tables)
    default = USUAL_SIZES[job["unit"]]
    paper = tables.setdefault("paper", {})
    printed = yield question_for(
        "paper.print_shop", means=PRINTED_MEANS, choices=tuple(PRINTED), default="outlines", begins=True
    )
    yield from fill(paper, "paper.size", default=default)
    paper |= PRINTED[printed]
    tables["file"] = yield question_for("file", default=file or _file_name(job["title"]), begins=True)


def _file_name(title: str) -> str:
    return f"{re.sub(r'[^a-z0-9]+', '-', title.casefold())[:LONGEST_NAME].strip('-') or 'job'}.toml"
