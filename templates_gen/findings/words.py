"""Lists of names in the sentences of findings."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

MOST_NAMES = 8
"""A longer list ends in how many more there are.  Our own design, no source."""


WHO_DECIDES = "The maker's rating and the wall decide; where in doubt, ask a professional."


def listed(names: Sequence[str], noun: str = "frame") -> str:
    """The noun with each name once: "frame A", "frames A, B", "nails A, B, C, D, E, F, G and 5 more"."""
    names = tuple(dict.fromkeys(names))
    shown, more = names[: MOST_NAMES - 1], len(names) - MOST_NAMES + 1
    names_in_words = f"{', '.join(shown)} and {more} more" if more > 1 else ", ".join(names)
    return f"{noun if len(names) == 1 else noun + 's'} {names_in_words}"


def same_words(said: Iterable[tuple[str, str]], noun: str = "frame") -> Iterator[tuple[tuple[str, ...], str]]:
    """Of (name, sentence) pairs: the names about which the same is said, and that with the names before it."""
    by_words: dict[str, list[str]] = {}
    for name, words in said:
        by_words.setdefault(words, []).append(name)
    for words, names in by_words.items():
        yield tuple(names), f"{capital(listed(names, noun))}: {words}"


def capital(text: str) -> str:
    """The same with a capital at its start."""
    return text[:1].upper() + text[1:]
