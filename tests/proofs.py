"""Proofs for tests: drawn from any job, and the frames read back from an SVG file."""

from __future__ import annotations

from functools import cache
from xml.etree import ElementTree as Xml

from templates_gen.arranging.plan import plan_wall
from templates_gen.documents.proof.layers import Asked, draw_proof, view_of
from templates_gen.documents.proof.view import View
from templates_gen.drawing.items import Template
from templates_gen.drawing.lettering import Lettering
from templates_gen.job.model import Job
from templates_gen.job.reading.building import read_job
from tests.jobs import SAMPLES
from tests.made import GENERATED, SAMPLE_NAMES

PLAIN, ALL = Asked(), Asked(sign=True, zones=True)
SVG = "{http://www.w3.org/2000/svg}"  # namespace of SVG 2, W3C
EDGE = 0.25
"""mm: the width that a frame's outside edge is drawn with (ISO 128-2 series, from memory)."""


@cache
def job_of(name: str) -> Job:
    return read_job(SAMPLES / f"{name}.toml") if name in SAMPLE_NAMES else GENERATED[name]()


def drawn(of: Job, asked: Asked = PLAIN) -> tuple[Template, View, Lettering]:
    """The proof without its pictures, in place of which there are blanks."""
    plan, lettering = plan_wall(of), Lettering()
    view = view_of(plan, asked, lettering)
    return draw_proof(plan, view, {}, asked, lettering), view, lettering


def svg_frames(svg: bytes) -> list[tuple[float, ...]]:
    """Left, top, right and lower edge of each frame, in mm from the page's upper left corner."""
    frames = Xml.fromstring(svg).find(f"{SVG}g[@class='frames']")
    edges = [line.get("points", "") for line in frames if float(line.get("stroke-width", 0)) == EDGE]
    corners = [[tuple(map(float, pair.split(","))) for pair in points.split()] for points in edges]
    return [(min(xs), min(ys), max(xs), max(ys)) for xs, ys in (zip(*found, strict=True) for found in corners)]
