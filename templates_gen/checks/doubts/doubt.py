"""A value that is doubted: what was found, why it is doubtful, and what was probably meant.

A doubt is no error: the job can be right.  Whoever knows that it is writes the doubted value into `confirmed`.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from templates_gen.base.record import Record, replace
from templates_gen.base.units import INCH, MASS_WORDS, MM, UNIT_WORDS, exact, show, show_mass_both
from templates_gen.base.words import capital, some
from templates_gen.checks.doubts.readings import Usual, other_readings, probably, swapped_figures
from templates_gen.checks.finding import WARN, Finding
from templates_gen.job.model import Frame, Job

EXPLICIT = 2.0
"""So many times further from what is usual may lie a length whose own unit was written: it was thought of.  Our own."""

GRAMS = 1000.0
"""In a kilogram."""

ROUGH, TINY = 12 * INCH, 0.1
"""mm from which on a limit is told in whole inches; kg below which a weight is told in grams.  Our own, no source."""


class Doubt(Record, frozen=True, kw_only=True):
    """One doubted value: `place` is its field ("frame B, width"), `shown` the value as it is shown.

    `about` names the frames it is about, `uses` the other fields that the doubt rests on.  `why` goes on after the
    value, and `ask` is the question that settles it; `meant` is what the job file says where its answer is yes, as
    (field, text).
    """

    rule: str
    place: str
    shown: str
    why: str
    ask: str
    about: tuple[str, ...] = ()
    uses: tuple[str, ...] = ()
    meant: tuple[tuple[str, str], ...] = ()

    @property
    def confirming(self) -> str:
        """What is written into `confirmed` when the value is right."""
        return f"{self.place}: {self.shown}"


class Written(Record, frozen=True):
    """The lengths of a job whose own unit was written beside them."""

    unit: str
    texts: dict[str, str]

    def unit_of(self, place: str) -> str:
        """The unit that the number at this place was written in."""
        words = re.findall(r"[a-z]+|\"|'", self.texts.get(place, "").lower())
        return UNIT_WORDS.get(words[0], self.unit) if words else self.unit

    def seen_from(self, frame: str) -> str:
        """From where the two sides of a frame's hanger were seen: "front", "back", or "" where it is not said."""
        return self.texts.get(frame_place(frame, "hanger", "seen_from"), "")

    def mass_unit(self, frame: str) -> str:
        """The unit that a frame's weight was written in, of two the first: kg, g, lb or oz; "" if it is not known."""
        words = re.findall("[a-z]+", self.texts.get(frame_place(frame, "weight"), "").lower())
        return MASS_WORDS.get(words[0], "") if words else ""

    def metric_mass(self, frame: str) -> bool | None:
        """True for a frame's weight in kilograms or grams, False for pounds or ounces; None where it is not known."""
        unit = self.mass_unit(frame)
        return unit in ("kg", "g") if unit else None

    def explicit(self, place: str) -> bool:
        """True where the unit was written beside the number."""
        return place in self.texts


def written(job: Job) -> Written:
    """What a job's lengths were written in."""
    return Written(job.unit, dict(job.written))


def unusual(
    rule: str,
    place: str,
    mm: float,
    usual: Usual,
    known: Written,
    what: str,
    about: tuple[str, ...] = (),
    needed: float = 0.0,
    again: str = "Measure it again.",
) -> Iterator[Doubt]:
    """A doubt about a length that is not usual for `what`, where another reading of its number is or it is far off.

    A unit that was written leaves more room, but not where the number would be usual in the job's own.  Another reading
    of less than is `needed` (mm) cannot be meant, for the rest of the job would not fit it; where none is, `again` says
    what to do.
    """
    alone = known.explicit(place) and usual.holds(mm / MM[known.unit_of(place)] * MM[known.unit])
    room = EXPLICIT if known.explicit(place) and not alone else 1.0
    if usual.least / room <= mm <= usual.most * room:
        return
    unit = known.unit_of(place)
    readings = (*other_readings(mm, unit), *(swapped_figures(mm, unit) if usual.figures else ()))
    elsewhere = any(usual.holds(reading.mm) and reading.mm >= needed for reading in readings)
    if not elsewhere and usual.far_least / room <= mm <= usual.far_most * room:
        return
    much = "more" if mm > usual.most else "less"
    least, most = (_roughly(each, known.unit) for each in (usual.least, usual.most))
    likely = probably(mm, unit, replace(usual, least=max(usual.least, needed)))
    yield Doubt(
        rule=rule, place=place, shown=_shown(mm, known.unit), about=about,
        why=f"{much} than is usual for {what} ({least} to {most})",
        ask=likely.ask or again, meant=likely.meant(place),
    )  # fmt: skip


def _shown(mm: float, unit: str) -> str:
    """A length as it is shown; less than 1 mm in tenths, for a screw of 0 mm is not what was written."""
    return show(mm, unit) if mm >= 1.0 or not mm else f"{mm:.2g} mm"


def _roughly(mm: float, unit: str) -> str:
    """A limit as one says it: no sixteenths of what is longer than a foot."""
    step = {"in": INCH, "cm": 10.0, "mm": 10.0}[unit]
    return show(round(mm / step) * step if mm >= ROUGH else mm, unit)


def as_findings(doubts: Iterable[Doubt], job: Job) -> Iterator[Finding]:
    """The doubts that nobody has confirmed, one of each field; frames of which the same is doubted in one."""
    confirmed = {_compared(text) for text in job.confirmed}
    alike: dict[object, list[Doubt]] = {}
    for each in first_of_each(doubts):
        if _compared(each.confirming) not in confirmed:
            field = each.place.partition(", ")[2] if each.place.startswith("frame ") else each.place
            alike.setdefault((each.rule, field, each.shown, each.why, each.ask), []).append(each)
    for same in alike.values():
        yield _finding(same)


def _compared(text: str) -> str:
    """A text in small letters, with one blank in place of several."""
    return " ".join(text.split()).casefold()


def first_of_each(doubts: Iterable[Doubt]) -> Iterator[Doubt]:
    """Of each field its first doubt, or that whose answer changes it: one question is enough to look again."""
    seen: set[str] = set()
    for doubt in doubts:
        if doubt.place not in seen:
            seen |= {doubt.place, *(place for place, _ in doubt.meant)}
            yield doubt


def _finding(same: list[Doubt]) -> Finding:
    first = same[0]
    text = f"{capital(_places(same))}: {first.shown}, {first.why}. {first.ask}"
    about = tuple(dict.fromkeys(name for each in same for name in each.about))
    meant = tuple(change for each in same for change in each.meant)
    return Finding(WARN, first.rule, about, text, confirm=tuple(each.confirming for each in same), meant=meant)


def _places(same: list[Doubt]) -> str:
    """The field, with the names of all frames before it: "frames A, B, width"."""
    if len(same) == 1:
        return same[0].place
    field = same[0].place.partition(", ")[2]
    return f"frames {some([each.about[0] for each in same])}, {field}"


def shown_mass(kg: float, unit: str) -> str:
    """A weight in both systems; a tiny one in grams, which is what it was typed in."""
    return show_mass_both(kg, unit) if kg >= TINY or not kg else f"{kg * GRAMS:.3g} g"


def swapped_sides(frame: Frame, unit: str) -> tuple[tuple[str, str], ...]:
    """A frame's width and height the other way round, as they are then written."""
    width, height = exact(frame.width, unit), exact(frame.height, unit)
    return (frame_place(frame.id, "width"), height), (frame_place(frame.id, "height"), width)


def frame_place(name: str, *fields: str) -> str:
    """The place of a frame's field: "frame B, hanger, left"."""
    return ", ".join((f"frame {name}", *fields))
