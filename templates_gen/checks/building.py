"""The building: earthquake country, and what old paint, plaster and board may hold, by country."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.base.record import Record
from templates_gen.checks.finding import NOTE, Finding
from templates_gen.checks.sentences import listed
from templates_gen.hanging.weight_classes import weight_class
from templates_gen.job.model import Wall

ALLIANCE_SOURCE = "Earthquake Country Alliance, step 1"
FEMA_SOURCE = "FEMA, Mount Framed Pictures and Mirrors Securely, April 2008"

CORNERS = "all four corners secured"
UNDER_20 = f"one hook each, and {CORNERS} with putty or tabs"
TO_50 = f"a closed-loop hanger screwed into a stud, and {CORNERS}"
PROFESSIONAL = "have a professional hang it"

SHAKING = {
    "light": UNDER_20,
    "medium": TO_50,
    "heavy": PROFESSIONAL,
    "": f"weigh first; under 20 lb (9.1 kg): {UNDER_20}; to 50 lb (22.7 kg): {TO_50}; above that {PROFESSIONAL}",
}  # fmt: skip
"""What is advised for each class of weight (Earthquake Country Alliance, step 1)."""

HOOKS = "long-shanked open eye-hooks, at least 1 to 2 in (25 to 50 mm) into the stud"
"""What another source advises for large pictures (FEMA, April 2008)."""

IN_MASONRY = "Which anchor holds in this masonry is for its maker's rating and a professional to say."

IF_ANY = " if the wall has any"

CODE_DECIDES = "The local building code decides."


def _earthquake(plan: Plan) -> Iterator[Finding]:
    """One finding for each class of weight."""
    wall = plan.job.wall
    if not wall.earthquake:
        return
    classes: dict[str, list[str]] = {}
    for hung in plan.frames:
        classes.setdefault(weight_class(hung.frame.weight), []).append(hung.frame.id)
    for name, advice in SHAKING.items():
        if ids := classes.get(name):
            text = f"In earthquake country, for {listed(ids)}: {_for_wall(advice, wall)} {CODE_DECIDES}"
            yield Finding(NOTE, "earthquake", tuple(ids), text, ALLIANCE_SOURCE)


def _for_wall(advice: str, wall: Wall) -> str:
    """The same without a stud where a wall has none, or where it is not told that it has, as a sentence."""
    if wall.build == "masonry":
        plain = advice.replace(" screwed into a stud", "")
        return f"{plain}." if plain == advice else f"{plain}. {IN_MASONRY}"
    return f"{advice if _has_studs(wall) else advice.replace('into a stud', f'into a stud{IF_ANY}')}."


def _has_studs(wall: Wall) -> bool:
    return wall.studs is not None or wall.build == "drywall"


def _eye_hooks(plan: Plan) -> Iterator[Finding]:
    """What another source says, of its own: not of light ones, nor of what a professional hangs."""
    wall = plan.job.wall
    ids = [hung.frame.id for hung in plan.frames if weight_class(hung.frame.weight) in ("medium", "")]
    if wall.earthquake and ids and wall.build != "masonry":
        studs = "" if _has_studs(wall) else IF_ANY
        text = f"Another source, for {listed(ids)} if large: {HOOKS}{studs}, and not only into board. {CODE_DECIDES}"
        yield Finding(NOTE, "earthquake-hooks", tuple(ids), text, FEMA_SOURCE)


class Country(Record, frozen=True):
    """Before which years a country's paint may hold lead (None: nothing is said), and its walls asbestos."""

    lead: int | None
    asbestos: int
    lead_source: str
    asbestos_source: str


MEMORY = "the years are from memory, no source"

COUNTRIES = {
    "us": Country(1978, 1980, "EPA, 40 CFR 745", "16 CFR 1304 and home-safety texts"),
    "uk": Country(1992, 2000, MEMORY, MEMORY),
    "de": Country(None, 1994, "", MEMORY),
}
"""By whose rule a wall was wired.  US: paint from 1978 on (EPA, 40 CFR 745), and about 1980 (home-safety texts;
consumer patching compounds with asbestos were banned in 1977, 16 CFR 1304).  Britain: lead paint was sold in shops
until 1992, and asbestos was forbidden in 1999; Germany: in 1993 (all from memory; of lead there nothing is said)."""

ANYWHERE = Country(1992, 2000, MEMORY, MEMORY)
"""Where the country is not told, the latest of these years."""

HOLDERS = "plaster, joint and patching compound, textured coatings and insulating-board partitions may hold asbestos"
"""16 CFR 1304 names the compounds; coatings and boards are named on British trade pages."""


def _old_house(plan: Plan) -> Iterator[Finding]:
    wall = plan.job.wall
    told = COUNTRIES.get(wall.wiring, ANYWHERE)
    if wall.built is None or wall.built >= told.asbestos:
        return
    lead = told.lead is not None and wall.built < told.lead
    holds = f"paint may hold lead; {HOLDERS}" if lead else HOLDERS
    where = "" if wall.wiring in COUNTRIES else " How late these were in use differs by country."
    text = (
        f"Built in {wall.built}: {holds}. Do not drill, sand or scrape them before someone certified has tested them; "
        f"a nail makes dust as well.{where}"
    )
    sources = dict.fromkeys((told.lead_source, told.asbestos_source) if lead else (told.asbestos_source,))
    yield Finding(NOTE, "old-house", (), text, "; ".join(sources))


RULES = (_earthquake, _eye_hooks, _old_house)
