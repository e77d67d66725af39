"""Plain words and lines of them: what every part of the program says alike."""

from __future__ import annotations

import re
from collections.abc import Sequence

UNIT_NAMES = {"in": "inches", "cm": "centimetres", "mm": "millimetres"}
"""What the units of a job are called in a sentence."""

MOST_NAMED = 8
"""Names that are listed in full; a longer list ends in how many more there are.  Our own design, no source."""


def counted(number: int, noun: str) -> str:
    """The number and the noun: "1 hook", "2 hooks"."""
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"


def some(names: Sequence[str]) -> str:
    """Names in a row, the first of them where there are many."""
    if len(names) <= MOST_NAMED:
        return ", ".join(names)
    shown = MOST_NAMED - 1
    return f"{', '.join(names[:shown])} and {len(names) - shown} more"


def capital(text: str) -> str:
    """The same with a capital at its start."""
    return text[:1].upper() + text[1:]


def with_article(noun: str) -> str:
    """A noun behind "a" or "an", by its first letter."""
    return f"{'an' if noun[:1].casefold() in 'aeiou' else 'a'} {noun}"


def feature_place(number: int, name: str, *fields: str) -> str:
    """Where a field of a feature stands, in words: "feature 2 (switch), left"."""
    return ", ".join((f"feature {number} ({name})", *fields))


def lines_of(text: str, width: int, first: str = "", later: str = "") -> list[str]:
    """The text in lines of at most so many letters.  None parts a number from its unit, or an option or file's name.

    `first` and `later` stand before the first line and the others.
    """
    import textwrap

    tied = re.sub(r"(?<=\broll) (?=\d)|(?<=\d') (?=\d)|(?<=\d) (?=\d+/\d|(?:in|mm|cm|m|lb|kg|N)\b|%)", "\u00a0", text)
    lines = textwrap.wrap(tied, width, initial_indent=first, subsequent_indent=later, break_on_hyphens=False)
    return [line.replace("\u00a0", " ") for line in lines]
