"""What to take care of before anybody nails: once, for every wall.  The page that is read first has it in a box.

Common practice, no source, but where a line says so.  Nothing here says that a wall, a nail or a spot is safe.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from templates_gen.base.geometry import Rect
from templates_gen.base.record import replace
from templates_gen.checks.sentences import expert
from templates_gen.drawing.flow import Flow
from templates_gen.drawing.items import Item, Polygon, Text
from templates_gen.drawing.sizes import H35, MEDIUM
from templates_gen.job.model import Wall

TITLE = "Take care"

LEAD, LEAST_WIDTH = 26.0, 130.0
"""mm: the column of the words that each caution begins with, and how wide the text has to be for one.  Our own design,
no source."""

ASIDE, AIR, OVER = 3.0, 2.0, 1.5
"""mm in the box beside the words, above and below them, and how much less of that above.  Our own design, no source."""


def cautions(wall: Wall) -> Iterator[tuple[str, str]]:
    """What each caution is about, and what to do; experts by the names they go by in the wall's country.

    Makers' manuals say what a detector misses; OSHA, 29 CFR 1926.1053(b)(13), has the top step of a ladder; FEMA (April
    2008) and the Earthquake Country Alliance (step 1) advise against heavy pieces and glass over people.
    """
    yield (
        "Behind the wall",
        "Cables and water, gas and heating pipes may run behind any spot, most often straight up, down or sideways "
        "from a switch, an outlet, a light, a tap or a radiator, and beside doors, windows and corners. Look with a "
        "detector before you nail; it misses plastic pipes without water, dead cables, and all that is behind foil. "
        f"Where in doubt, ask {expert('electrician or plumber', wall)}. This template knows nothing of what is inside "
        "the wall.",
    )
    yield (
        "Ask first",
        "Someone who knows the building, before you nail into chimneys and flues, wall and floor heating, fire-rated "
        "and party walls, concrete with stressed steel, vapour barriers. Rented: the landlord's permission.",
    )
    yield (
        "Hit something?",
        "Stop, leave the nail in. Cable: touch nothing, switch off at the breaker, call an electrician. Water: close "
        "the main valve, call a plumber. Gas: no flame, no switch, all out; call the gas emergency line from outside.",
    )
    yield (
        "What holds",
        "How much a nail, a hook or the wall holds depends on the maker's rating and on the wall. For heavy pieces the "
        "local building code and a professional decide, and two people lift them.",
    )
    yield (
        "Over people",
        "Over a bed or a seat: only what is light, without glass, on two fixings. Over a crib or cot: nothing that can "
        "fall. In earthquake country: fastened as the local code asks.",
    )
    yield (
        "On a ladder",
        "Not on its top or its top step; three points of contact while climbing; someone to hold it. Not on a chair.",
    )
    yield (
        "Old walls",
        "Old paint may hold lead; plaster, textured coatings and insulating-board partitions may hold asbestos. Have "
        "them tested before you drill, sand or scrape.",
    )


def take_care(flow: Flow, wall: Wall) -> None:
    """The cautions in a box, or without one where they take more than a page."""
    area = flow.area
    inner = Flow(Rect(area.x0 + ASIDE, area.y0 + 2, area.x1 - ASIDE, area.y1 - 2 * AIR), flow.lettering)
    _written(inner, wall)
    if len(inner.pages) > 1:
        _written(flow, wall)
        return
    flow.space(H35)
    flow.picture(inner.area.y1 - inner.top + 2 * AIR, partial(_boxed, words=inner))


def _written(flow: Flow, wall: Wall) -> None:
    flow.heading(TITLE)
    for lead, words in cautions(wall):
        if flow.area.width < LEAST_WIDTH:
            flow.paragraph(f"{lead}: {words}")
        else:
            flow.paragraph(words, indent=LEAD, lead=lead)
        flow.space(0.5)


def _boxed(place: Rect, words: Flow) -> Iterator[Item]:
    """One page of words, moved into a box."""
    yield Polygon(place.corners, MEDIUM, False)
    down = words.area.y1 - place.y1 + OVER
    yield from (replace(item, y=item.y - down) for item in words.pages[0] if isinstance(item, Text))
