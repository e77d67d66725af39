"""Names and lengths in the sentences of findings, and what several of them say."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from templates_gen.arranging.plan import Plan
from templates_gen.base.record import Record
from templates_gen.base.units import DIVISION, INCH, show, show_both
from templates_gen.base.words import capital, some
from templates_gen.job.model import Wall

WHO_DECIDES = "The maker's rating and the wall decide; where in doubt, ask a professional."


def ground(plan: Plan) -> str:
    """What heights are above, in words."""
    return "the floor or the stairs" if plan.job.wall.stairs else "the floor"


def expert(trade: str, wall: Wall) -> str:
    """Someone of a trade by the word of the country by whose rule the wall was wired: "a licensed electrician"."""
    return f"a {'registered or qualified' if wall.wiring == 'uk' else 'licensed'} {trade}"


def once(names: Iterable[str]) -> tuple[str, ...]:
    """Each name once, in the order they come."""
    return tuple(dict.fromkeys(names))


def listed(names: Sequence[str], noun: str = "frame") -> str:
    """The noun with each name once: "frame A", "frames A, B", "nails A, B, C, D, E, F, G and 5 more".

    The left and right nails of a frame are those of someone who faces the wall: "nails B left, B right (facing)".
    """
    names = once(names)
    facing = " (facing)" if noun == "nail" and any(name.endswith((" left", " right")) for name in names) else ""
    return f"{noun if len(names) == 1 else noun + 's'} {some(names)}{facing}"


def same_words(said: Iterable[tuple[str, str]], noun: str = "frame") -> Iterator[tuple[tuple[str, ...], str]]:
    """Of (name, sentence) pairs: the names about which the same is said, and that with the names before it.

    Of a name whose sentence is "" nothing is said.
    """
    by_words: dict[str, list[str]] = {}
    for name, words in said:
        by_words.setdefault(words, []).append(name)
    for words, names in by_words.items():
        if words:
            yield tuple(names), f"{capital(listed(names, noun))}: {words}"


def no_drop_words(cover: str) -> str:
    """What to do about a drop that was not measured, by what the paper covers."""
    none = "; paper for nails alone has no drop scale to mark it by"
    return f"measure the drop{none if cover == 'nails' else ', or mark it by hand on the drop scale'}"


def by_how_much(mm: float, unit: str) -> str:
    """A length that is not nought in both systems, also where no tape measure shows it."""
    least = DIVISION[unit]
    return show_both(mm, unit) if mm >= least / 2 else f"less than {show_both(least, unit)}"


def short_of(wanted: float, mm: float, unit: str) -> str:
    """A length that is less than the one wanted, in both systems; also where a tape measure shows them alike."""
    shown = show_both(mm, unit)
    return f"a little less than {shown}" if shown == show_both(wanted, unit) else shown


class Printed(Record, frozen=True):
    """A length as a standard prints it, in inches and in mm; a job is held to the figure of its own unit."""

    inches: float
    metric: float

    def mm(self, unit: str) -> float:
        """The length that a job in this unit is held to (mm)."""
        return self.inches * INCH if unit == "in" else self.metric

    def words(self, unit: str) -> str:
        """In the job's unit and then in the other, both as the standard prints them."""
        if unit == "in":
            return f"{self.inches:g} in · {self.metric:g} mm"
        return f"{show(self.metric, unit)} · {self.inches:g} in"

    def shown(self, unit: str) -> str:
        """The figure of the job's unit, and what that is in the other."""
        return show_both(self.mm(unit), unit)
