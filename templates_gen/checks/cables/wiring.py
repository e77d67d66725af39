"""Where cables may run behind a wall: the zones that a country's rule names, and how deep a nail goes.

A zone is where cables may be, so it is where a nail wants thought.  Outside the zones cables may lie as well: where
they were laid by another rule or by none.  Nothing here ever clears a spot.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from templates_gen.arranging.plan import Hung, Plan
from templates_gen.base.geometry import TOLERANCE, Rect
from templates_gen.base.record import Record
from templates_gen.base.units import inches, show_both
from templates_gen.checks.cables.edges import FLOOR, LEFT, RIGHT, TOP, edge_pieces
from templates_gen.hanging.fixings import tip_below
from templates_gen.job.model import Feature, Wall

CABLE_KINDS = ("outlet", "switch", "light", "thermostat")
"""The features that a cable leads to."""

UK_SOURCE = "BS 7671, 522.6.202"
UK_EDGE = 150.0
"""mm from the top of the wall, and from an angle with an adjoining wall (BS 7671, 522.6.202(i))."""

UK_DEPTH = 50.0
"""mm; a cable deeper than this need not keep to the zones (BS 7671, 522.6.202)."""

DE_SOURCE = "DIN 18015-3:2016-09, whose upright zones count from rough edges, not from the finished ones given here"
DE_LEVEL = (150.0, 450.0)
"""mm below the finished ceiling, and above the finished floor (DIN 18015-3:2016-09)."""

DE_WORKTOP = (1000.0, 1300.0)
"""mm above the finished floor, only in rooms with worktops (DIN 18015-3:2016-09)."""

DE_UPRIGHT = (100.0, 300.0)
"""mm beside the rough edge of doors, windows and corners (DIN 18015-3:2016-09; at a single door on its lock side only,
but which side that is is not known here).  A job gives finished edges, and is told so."""

DE_LINES_SOURCE = "common practice: cables lead straight to every switch and outlet (from memory)"

US_SOURCE = "common practice: a cable runs up or down along the stud beside a box (from memory); NEC 300.4"
US_STUD = 38.0
"""mm, 1 1/2 in, when the studs' width is not given: a nominal 2 in stud (DOC PS 20, from memory)."""

US_FROM_EDGE = 31.75
"""mm, 1 1/4 in, from the nearest edge of a wooden stud to a cable in or along it (NEC 300.4(A)(1), 300.4(D))."""


class Zone(Record, frozen=True):
    """A part of the wall (mm) where cables may run: the reason in a few words, and the source of the rule."""

    rect: Rect
    reason: str
    source: str

    def meets(self, entry: Entry) -> bool:
        """True when the line that a nail takes up touches the zone, its edge included."""
        rect, near = self.rect, TOLERANCE
        beside = not rect.x0 - near <= entry.x <= rect.x1 + near
        return not beside and entry.low <= rect.y1 + near and entry.high >= rect.y0 - near


def zones(wall: Wall) -> tuple[Zone, ...]:
    """The zones of a wall by its `wiring`: "uk", "de" or "us"; none where the rule is not known."""
    if wall.wiring == "uk":
        return (*_uk_edges(wall), *_lines(wall, UK_SOURCE))
    if wall.wiring == "de":
        return (*_de_edges(wall), *_de_openings(wall), *_lines(wall, DE_LINES_SOURCE))
    return tuple(_us_boxes(wall)) if wall.wiring == "us" else ()


def _uk_edges(wall: Wall) -> Iterator[Zone]:
    for edge in edge_pieces(wall):
        if edge.side != FLOOR:
            place = "the top of the wall" if edge.side == TOP else "a corner with the next wall"
            yield Zone(edge.band(0.0, UK_EDGE), f"within {show_both(UK_EDGE, 'mm')} of {place}", UK_SOURCE)


def _de_edges(wall: Wall) -> Iterator[Zone]:
    for edge in edge_pieces(wall):
        if edge.side in (LEFT, RIGHT):
            yield Zone(edge.band(*DE_UPRIGHT), f"{_span(DE_UPRIGHT)} beside a corner of the wall", DE_SOURCE)
            continue
        place = "below the ceiling" if edge.side == TOP else "above the floor"
        yield Zone(edge.band(*DE_LEVEL), f"{_span(DE_LEVEL)} {place}", DE_SOURCE)
        if edge.side == FLOOR and wall.worktop:
            reason = f"{_span(DE_WORKTOP)} above the floor of a room with a worktop"
            yield Zone(edge.band(*DE_WORKTOP), reason, DE_SOURCE)


def _de_openings(wall: Wall) -> Iterator[Zone]:
    near, far = DE_UPRIGHT
    for feature in wall.features:
        if feature.kind in ("door", "window"):
            reason = f"{_span(DE_UPRIGHT)} beside the {feature.called}"
            left, right = feature.rect.x0, feature.rect.x1
            for x0, x1 in ((left - far, left - near), (right + near, right + far)):
                yield Zone(Rect(x0, wall.rect.y0, x1, wall.rect.y1), reason, DE_SOURCE)


def _span(limits: tuple[float, float]) -> str:
    """As the rule says it, and in the other system."""
    return f"{limits[0]:g} to {limits[1]:g} mm · {inches(limits[0])} to {inches(limits[1])} in"


def _lines(wall: Wall, source: str) -> Iterator[Zone]:
    """Level and upright from each accessory, as wide as it is drawn: no rule gives the band another width."""
    for feature in _boxes(wall):
        rect, whole = feature.rect, wall.rect
        yield Zone(Rect(rect.x0, whole.y0, rect.x1, whole.y1), f"straight above or below the {feature.called}", source)
        yield Zone(Rect(whole.x0, rect.y0, whole.x1, rect.y1), f"level with the {feature.called}", source)


def _us_boxes(wall: Wall) -> Iterator[Zone]:
    """The stud beside each box, on either side of it: which side it is on is not known."""
    stud = wall.studs.width if wall.studs else US_STUD
    for feature in _boxes(wall):
        reason = f"above or below the {feature.called}, or on the stud beside it"
        yield Zone(Rect(feature.rect.x0 - stud, wall.rect.y0, feature.rect.x1 + stud, wall.rect.y1), reason, US_SOURCE)


def _boxes(wall: Wall) -> list[Feature]:
    return [feature for feature in wall.features if feature.kind in CABLE_KINDS]


def zones_met(plan: Plan) -> dict[Zone, list[Entry]]:
    """The zones that nails lie in, and the nails of each, both in the order they are known."""
    places = entries(plan)
    met = {zone: [entry for entry in places if zone.meets(entry)] for zone in zones(plan.job.wall)}
    return {zone: nails for zone, nails in met.items() if nails}


def nail_zones(plan: Plan) -> Mapping[str, tuple[str, ...]]:
    """The reasons of the zones that each nail lies in, by the nail's name; a nail in none is left out."""
    reasons: dict[str, dict[str, None]] = {}
    for zone, nails in zones_met(plan).items():
        for nail in nails:
            reasons.setdefault(nail.name, {})[zone.reason] = None
    return {name: tuple(given) for name, given in reasons.items()}


def cable_depth(wall: Wall) -> float | None:
    """How deep behind the face of the wall (mm) cables may begin outside every zone; None where no rule says it.

    In the US that is within a stud: the board, counted as nothing when it is not given, and 1 1/4 in.  Between the
    studs a cable may lie at any depth, and masonry has no studs.
    """
    if wall.wiring == "us":
        if wall.build == "masonry":
            return None
        return (wall.board or 0.0) + US_FROM_EDGE
    return UK_DEPTH if wall.wiring == "uk" else None


class Entry(Record, frozen=True):
    """The upright line at `x` from `low` to `high` (mm) that a nail takes up or may take up behind the wall's face.

    `name` is the nail's, `frame` its frame's id.
    """

    name: str
    frame: str
    x: float
    low: float
    high: float


def entries(plan: Plan) -> tuple[Entry, ...]:
    """Where each nail of a plan goes in: from its nail point down to its tip, which a slanting nail has below it.

    A nail whose drop is not measured yet may come anywhere in the upper half of its frame, where its drop scale is.
    """
    return tuple(entry for hung in plan.frames for entry in _entries(hung))


def _entries(hung: Hung) -> Iterator[Entry]:
    tip = tip_below(hung.frame.fixing)
    for nail in hung.nails:
        yield Entry(nail.name, nail.frame, nail.x, nail.y - tip, nail.y)
    for bearing in hung.unmeasured:
        yield Entry(bearing.nail_of(hung.frame.id), hung.frame.id, bearing.x, hung.rect.cy - tip, hung.rect.y1)
