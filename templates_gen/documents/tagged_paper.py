"""Paper with photo tags, as a template tells of it inside its file: what was printed, whatever the job says since."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from templates_gen.base.geometry import Rect
from templates_gen.documents.photographed import Papers, Seam, Spot
from templates_gen.documents.sheets.photo_tags import Tag
from templates_gen.drawing.tags import CARDS_FROM


def as_told(papers: Papers) -> dict[str, Any]:
    """Tags, joins and nails as the file has them, from the two lines (mm); the cells stand there already."""
    x, y = papers.centre_line, papers.level_line
    return {
        "tags": [[tag.number, tag.sheet, tag.box.x0 - x, tag.box.y0 - y, tag.box.width] for tag in papers.tags],
        "joins": [
            [join.over, join.under, *(end - line for end, line in zip(join.line, (x, y, x, y), strict=True))]
            for join in papers.joins
        ],
        "nails": [[nail.name, nail.sheet, nail.x - x, nail.y - y] for nail in papers.nails],
    }


def told(data: Any, cells: Mapping[str, Rect], scaled: bool) -> Papers:
    """The paper by what a file says of it, its lines at 0; `cells` are those of its sheets by their names.

    Raises ValueError, KeyError, TypeError or IndexError for what this program did not write so.
    """
    tags = tuple(_tag(tag, cells) for tag in data["tags"])
    joins = tuple(
        Seam(_sheet(over, cells), _sheet(under, cells), (_mm(x0), _mm(y0), _mm(x1), _mm(y1)))
        for over, under, x0, y0, x1, y1 in data["joins"]
    )
    nails = tuple(Spot(str(name), _sheet(sheet, cells), _mm(x), _mm(y)) for name, sheet, x, y in data["nails"])
    if len({tag.number for tag in tags}) < len(tags):
        raise ValueError
    return Papers(tuple(cells.items()), tags, joins, nails, 0.0, 0.0, scaled)


def _tag(data: Any, cells: Mapping[str, Rect]) -> Tag:
    """A tag that lies on its sheet."""
    number, name, box = int(data[0]), _sheet(data[1], cells), Rect.sized(*map(_mm, data[2:4]), *[_mm(data[4])] * 2)
    if not (0 <= number < CARDS_FROM and box.width > 0.0 and cells[name].holds(box)):
        raise ValueError
    return Tag(number, name, box)


def _sheet(name: Any, cells: Mapping[str, Rect]) -> str:
    if name not in cells:
        raise ValueError
    return str(name)


def _mm(value: Any) -> float:
    length = float(value)
    if not math.isfinite(length):
        raise ValueError
    return length
