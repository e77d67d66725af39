"""An arrangement that was found by computing: what could not be had, and how to keep it."""

from __future__ import annotations

from collections.abc import Iterator

from templates_gen.arranging.plan import Plan
from templates_gen.arranging.search.regret import unmet
from templates_gen.checks.finding import NOTE, WARN, Finding


def _wish_unmet(plan: Plan) -> Iterator[Finding]:
    group = plan.job.group
    for names, wish in unmet(group.wishes, plan.rects, max(group.gap_across, group.gap_down)) if group.wishes else ():
        text = (
            f"The arrangement that was found does not keep this wish: {wish}. Wish for less, or place the frames by "
            "hand."
        )
        yield Finding(WARN, "wish-unmet", names, text)


def _arrangement_found(plan: Plan) -> Iterator[Finding]:
    if plan.job.group.arrangement == "salon":
        text = (
            "The program found the places of the frames. It may find quite others once a frame is measured anew, if "
            "only by a millimetre, once the wall changes, or in a later version. When the client has agreed, keep them "
            "in the job file: options --pick 1."
        )
        yield Finding(NOTE, "arrangement-found", (), text)


RULES = (_wish_unmet, _arrangement_found)
