"""How taped paper lies, from one or more photographs of it: sheets, joins and nails, each with how sure it is.

Limits and sizes without a source beside them are our own, no source.
"""

from __future__ import annotations

from collections.abc import Sequence

from templates_gen.base.errors import InputError
from templates_gen.base.record import Record
from templates_gen.documents.photographed import Papers
from templates_gen.photo.fit import NORMAL, Fit, fitted
from templates_gen.photo.gauge import Gauge, gauge, spots
from templates_gen.photo.picture import Photo
from templates_gen.photo.scene import PER_WIDTH, Printed, scene
from templates_gen.photo.screening import Misplaced, Screened, overlooked, screened
from templates_gen.photo.tags import Seen, seen_tags, side_of
from templates_gen.photo.vision import Array, View, corners_of, np

FLOOR = 0.004
"""mm that are added to the fit's own deviation: what no tag tells.  Our own simulation, no source."""

NEAR_BY, BY_LINES = 1.25, 1.45
"""How many times as far off as the fit says joins are, and places by the two lines, which are far away: what a lens and
paper do beside the model adds up on the way there.  Our own simulation, no source."""

TINY = 1e-9
"""mm under which a join is off in no direction."""

LEAST_TAGS, LEAST_SHEETS = 6, 2

ONE_SHEET = "measure its two rulers and its diagonals instead, as the first page says"

OTHER = "other paper is on the wall, or the picture was edited: name the PDF that the paper was printed from"
"""What to do where a photograph shows other sheets than those that it is compared with."""

OUTLIER, OUTLIERS = 4.0, 6.0
"""Pixels on a picture of 12 megapixels, and times the usual, that a tag may be off the flat fit.  Our own."""


class Lie(Record, frozen=True):
    """How a sheet lies: the middle of its cell from its place (mm, right and up), its turn (degrees,
    counter-clockwise), and what 95 of 100 such readings keep within (mm).  `tags` is how many of its tags were seen."""

    name: str
    dx: float
    dy: float
    turn: float
    sure: float
    tags: int


class Joined(Record, frozen=True):
    """How two sheets meet: how far the upper one is from where it should be on the lower, along the join and across it
    at its middle, and `off` at the end where it is worse, with what 95 of 100 such readings of `off` keep within (mm);
    `turned` in degrees."""

    over: str
    under: str
    off: float
    along: float
    across: float
    turned: float
    sure: float
    upright: bool


class NailOff(Record, frozen=True):
    """How far a nail's mark is from its place, relative to the two lines (mm)."""

    name: str
    dx: float
    dy: float
    sure: float


class Taped(Record, frozen=True):
    """All that the photographs tell.  `sides` are the tags' middle sides in pixels, `blurs` the blur of each picture;
    `by_lines` is false where too little of the two lines was seen to say where they are."""

    pixels_per_mm: float
    residual_px: float
    sheets: tuple[Lie, ...]
    joins: tuple[Joined, ...]
    nails: tuple[NailOff, ...]
    unseen: tuple[str, ...]
    elsewhere: tuple[Misplaced, ...]
    strays: int
    sides: tuple[float, ...]
    blurs: tuple[float, ...]
    heights: float
    by_lines: bool
    fit: Fit


def read_taped(photos: Sequence[Photo], papers: Papers, name: str = "this template") -> Taped:
    """What the photographs tell of the taped sheets of a template, which is called by its `name`.

    Raises InputError where they show too little, or sheets of another template."""
    if len(papers.cells) < LEAST_SHEETS:
        raise InputError(name, "is one sheet, and a photograph tells how sheets lie to each other", ONE_SHEET)
    size = photos[0].size
    for photo in photos[1:]:
        if photo.size != size:
            found = f"has {photo.size[0]} × {photo.size[1]} pixels, {photos[0].name} has {size[0]} × {size[1]}"
            raise InputError(photo.name, found, "take all with the same camera, held the same way")
    printed, middles, centre = printed_tags(papers)
    seen = [seen_tags(photo.grey) for photo in photos]
    views = [screened(one, printed, max(size) / PER_WIDTH) for one in seen]
    for photo, view, one in zip(photos, views, seen, strict=True):
        _check_enough(photo.name, view, one, printed, name)
    fit = _fit([view.view for view in views], photos, seen, printed, middles, centre)
    return _told(fit, papers, views, seen, centre)


def printed_tags(papers: Papers) -> tuple[Printed, dict[str, Array], Array]:
    """Every tag with its corners, the middle of every cell, and the middle of all (wall mm)."""
    printed = {tag.number: (tag.sheet, corners_of(tag.box)) for tag in papers.tags}
    middles = {name: np.array([cell.cx, cell.cy]) for name, cell in papers.cells}
    return printed, middles, np.mean(list(middles.values()), axis=0)


def _check_enough(photo: str, view: Screened, seen: Seen, printed: Printed, name: str) -> None:
    sheets = {printed[number][0] for number in view.view}
    if len(view.view) >= LEAST_TAGS and len(sheets) >= max(LEAST_SHEETS, len(view.elsewhere)):
        return
    tags = len({number for number, _ in seen.tags})
    if tags >= LEAST_TAGS:
        raise InputError(photo, f"shows {tags} photo tags, but they do not lie as on the sheets of {name}", OTHER)
    found = f"shows {tags} photo tags, expected {LEAST_TAGS} on {LEAST_SHEETS} sheets"
    raise InputError(photo, found, "photograph the taped paper whole and sharp, from nearer")


def _fit(
    views: Sequence[View], photos: Sequence[Photo], seen: Sequence[Seen], printed: Printed,
    middles: dict[str, Array], centre: Array,
) -> Fit:  # fmt: skip
    """First all paper flat on the wall, to drop strays and find what was overlooked; then all of it."""
    size = photos[0].size
    first = fitted(scene(views, size, printed, middles, centre, focal=photos[0].focal), flat=True)
    if first is None:
        raise InputError(photos[0].name, "no camera sees the tags like that", "take it again, without a mirror or edit")
    most = max(OUTLIER * first.scene.unit, OUTLIERS * first.widths.corner)
    kept: list[dict[int, Array]] = [{} for _ in views]
    for row, off in enumerate(first.off):
        if off <= most:
            number = first.scene.tags[first.scene.tag[row]]
            kept[first.scene.view[row]][number] = first.scene.seen[row]
    for at, (photo, one) in enumerate(zip(photos, seen, strict=True)):
        kept[at] |= dict(overlooked(photo.grey, first, at, views[at], printed, middles, centre, one.blur))
    found = fitted(scene(kept, size, printed, middles, centre, focal=photos[0].focal))
    assert found is not None  # a camera saw most of these before
    return found


def _told(
    fit: Fit, papers: Papers, views: Sequence[Screened], seen: Sequence[Seen], centre: Array
) -> Taped:  # fmt: skip
    lines = gauge(fit, papers, centre)
    names = set(fit.scene.sheets)
    sides = [side_of(corners) for corners in fit.scene.seen]
    lying = {one.name: one for view in views for one in view.elsewhere if one.name not in names}
    tag = float(np.mean([tag.box.width for tag in papers.tags]))
    return Taped(
        pixels_per_mm=float(np.mean(sides)) / tag,
        residual_px=float(np.sqrt(np.median(fit.off**2))),
        sheets=tuple(_lies(fit, papers, lines, centre)),
        joins=tuple(_joins(fit, papers, lines, centre)),
        nails=tuple(_nails(fit, papers, lines, centre)),
        unseen=tuple(name for name, _ in papers.cells if name not in names and name not in lying),
        elsewhere=tuple(lying.values()),
        strays=sum(view.strays for view in views),
        sides=tuple(float(np.mean([side_of(c) for c in view.view.values()])) for view in views),
        blurs=tuple(one.blur for one in seen),
        heights=fit.widths.height,
        by_lines=lines.by_lines,
        fit=fit,
    )


def sure(variance: Array | float, times: float) -> float:
    """What 95 of 100 readings of this variance keep within, that are off so many times as far."""
    return float(NORMAL * times * np.sqrt(np.maximum(variance, 0).max() + FLOOR**2))


def _lies(fit: Fit, papers: Papers, lines: Gauge, centre: Array) -> list[Lie]:
    cells = [(name, (cell.cx, cell.cy)) for name, cell in papers.cells if name in fit.scene.sheets]
    known = spots(fit, cells, centre, lines)
    found = []
    for at, (name, _) in enumerate(cells):
        number = fit.scene.sheets.index(name)
        turn = np.degrees(fit.state.sheets[number, 2] - lines.turn)
        tags = len(fit.scene.alike[number])
        dx, dy = known.moved[at]
        known_to = sure(known.variance[at], BY_LINES)
        found.append(Lie(name, float(dx), float(dy), float(turn), known_to, tags))
    return found


def _joins(fit: Fit, papers: Papers, lines: Gauge, centre: Array) -> list[Joined]:
    joins = [join for join in papers.joins if {join.over, join.under} <= set(fit.scene.sheets)]
    found = []
    for join in joins:
        x0, y0, x1, y1 = join.line
        points = ((x0, y0), (x1, y1), ((x0 + x1) / 2, (y0 + y1) / 2))
        known = spots(fit, [(name, point) for name in (join.over, join.under) for point in points], centre, lines)
        off = known.moved[:3] - known.moved[3:]
        across = np.concatenate([np.eye(known.moved.size // 2), -np.eye(known.moved.size // 2)], 1)
        spread = (across @ known.covariance @ across.T).reshape(len(points), 2, len(points), 2)
        turned = np.degrees(np.subtract(*(fit.state.sheets[fit.scene.sheets.index(name), 2]
                                          for name in (join.over, join.under))))  # fmt: skip
        lengths = np.linalg.norm(off[:2], axis=1)
        worse = int(np.argmax(lengths))
        way = off[worse] / max(lengths[worse], TINY)
        upright = abs(x1 - x0) < abs(y1 - y0)
        dx, dy = off[2]
        known_to = sure(way @ spread[worse, :, worse] @ way, NEAR_BY)
        found.append(
            Joined(
                join.over, join.under, float(lengths[worse]), float(dy if upright else dx),
                float(dx if upright else dy), float(turned), known_to, upright,
            )
        )  # fmt: skip
    return found


def _nails(fit: Fit, papers: Papers, lines: Gauge, centre: Array) -> list[NailOff]:
    nails = [nail for nail in papers.nails if nail.sheet in fit.scene.sheets]
    known = spots(fit, [(nail.sheet, (nail.x, nail.y)) for nail in nails], centre, lines)
    return [
        NailOff(nail.name, float(known.moved[at][0]), float(known.moved[at][1]), sure(known.variance[at], BY_LINES))
        for at, nail in enumerate(nails)
    ]
