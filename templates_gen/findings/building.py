"""The building: where the earth may shake, and what old paint and plaster may hold."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.findings.finding import NOTE, Finding
from templates_gen.findings.words import listed
from templates_gen.holding.weightclasses import weight_class
from templates_gen.planning import Plan

LEAD_BEFORE = 1978
"""The year before which paint in US homes is taken to hold lead (EPA, 40 CFR 745)."""

ASBESTOS_BEFORE = {"us": 1980, "de": 1994, "uk": 2000, "": 2000, "none": 2000}
"""The year before which plaster and compounds may hold asbestos, by whose rule a wall was wired.  US: about 1980
(home-safety texts; consumer patching compounds with it were banned in 1977, 16 CFR 1304); Germany and Britain: it was
forbidden in 1993 and 1999 (from memory); where the country is not told, the latest of them."""

SHAKING_SOURCE = "Earthquake Country Alliance, step 1; FEMA, Mount Framed Pictures and Mirrors Securely, 2008"

SHAKING = {
    "light": "a hook each, and putty or tabs at the corners",
    "medium": "a closed hook with a shank of 1 to 2 in (25 to 50 mm) into a stud, not only into board, and the corners "
    "held",
    "heavy": "a professional's work",
    "": "weigh first; under 20 lb (9.1 kg) a hook and putty at the corners, to 50 lb (22.7 kg) a closed hook into a "
    "stud, above that a professional",
}  # fmt: skip


def _earthquake(plan: Plan) -> Iterator[Finding]:
    """One finding for each class of weight."""
    if not plan.job.wall.earthquake:
        return
    classes: dict[str, list[str]] = {}
    for hung in plan.frames:
        classes.setdefault(weight_class(hung.frame.weight), []).append(hung.frame.id)
    for name, advice in SHAKING.items():
        if ids := classes.get(name):
            text = f"Where the earth may shake, for {listed(ids)}: {advice}. The local building code decides."
            yield Finding(NOTE, "earthquake", tuple(ids), text, SHAKING_SOURCE)


def _old_house(plan: Plan) -> Iterator[Finding]:
    wall = plan.job.wall
    if wall.built is None or wall.built >= ASBESTOS_BEFORE[wall.wiring]:
        return
    lead = wall.built < LEAD_BEFORE
    holds = "old paint may hold lead, and old plaster" if lead else "old plaster"
    text = (
        f"Built in {wall.built}: {holds}, joint and patching compound may hold asbestos. Do not drill, sand or scrape "
        "them before someone certified has tested them; a nail makes dust as well."
    )
    asbestos = "16 CFR 1304" if wall.wiring == "us" else "common advice in home-safety texts"
    yield Finding(NOTE, "old-house", (), text, f"40 CFR 745; {asbestos}" if lead else asbestos)


RULES = (_earthquake, _old_house)
