"""Which way text runs: the Unicode bidirectional algorithm (UAX #9), for one line.

The library python-bidi is used rule by rule, because its one call gives the turned text but not its levels.
It leaves out rule N0, which keeps a pair of brackets together; that one is here.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from typing import Any

_TURNING = frozenset(("R", "AL", "AN", "RLE", "RLO"))
"""Classes of characters that can make text run from right to left (UAX #9, table 4)."""

_BRACKETS = {"(": ")", "[": "]", "{": "}"}
"""Pairs that rule N0 keeps together: those on a keyboard (Unicode 15.0, BidiBrackets.txt, has 64)."""

_DEEPEST = 63
"""So many open brackets are kept in mind (UAX #9, BD16)."""


def levels(text: str) -> list[int]:
    """The embedding level of every character: even from left to right, odd from right to left."""
    if not any(unicodedata.bidirectional(char) in _TURNING for char in text):
        return [0] * len(text)
    from bidi import algorithm

    storage: dict[str, Any] = algorithm.get_empty_storage()
    base = int(algorithm.get_base_level(text))
    storage |= {"base_level": base, "base_dir": "LR"[base]}
    algorithm.get_embedding_levels(text, storage)
    for index, char in enumerate(storage["chars"]):
        char["index"] = index
        # a character newer than Python's tables has no class; most run from left to right
        char["type"] = char["type"] or "L"
    algorithm.explicit_embed_and_overrides(storage)
    algorithm.resolve_weak_types(storage)
    _resolve_brackets(storage)
    algorithm.resolve_neutral_types(storage, False)
    algorithm.resolve_implicit_levels(storage, False)
    known = {char["index"]: int(char["level"]) for char in storage["chars"]}
    found: list[int] = []
    for index in range(len(text)):
        # marks of direction have been taken out (X9); they go with what stands before them
        found.append(known.get(index, found[-1] if found else base))
    return _with_end(text, found, base)


def _with_end(text: str, found: list[int], base: int) -> list[int]:
    """Rule L1: blanks at the end of the line go the line's own way."""
    kept = len(text.rstrip())
    return found[:kept] + [base] * (len(found) - kept)


def _resolve_brackets(storage: dict[str, Any]) -> None:
    """Rule N0: both brackets of a pair go the way of what is in them, or of what is around."""
    for run in storage["runs"]:
        chars = storage["chars"][run["start"] : run["start"] + run["length"]]
        for first, last in sorted(_pairs(chars)):
            way = _bracket_way(chars, first, last, run["sor"])
            if way:
                chars[first]["type"] = chars[last]["type"] = way


def _pairs(chars: list[dict[str, Any]]) -> Iterator[tuple[int, int]]:
    """Where brackets open and close (BD16)."""
    open_ones: list[tuple[str, int]] = []
    for index, char in enumerate(chars):
        if char["type"] != "ON":
            continue
        if char["ch"] in _BRACKETS:
            if len(open_ones) == _DEEPEST:
                return
            open_ones.append((_BRACKETS[char["ch"]], index))
        for back in range(len(open_ones) - 1, -1, -1):
            if open_ones[back][0] == char["ch"]:
                yield open_ones[back][1], index
                del open_ones[back:]
                break


def _bracket_way(chars: list[dict[str, Any]], first: int, last: int, before: str) -> str:
    own = "LR"[chars[first]["level"] % 2]
    inside = {_strong(char) for char in chars[first + 1 : last]} - {""}
    if not inside or own in inside:
        return own if inside else ""
    around = next((way for char in reversed(chars[:first]) if (way := _strong(char))), before)
    return own if around == own else around


def _strong(char: dict[str, Any]) -> str:
    """Numbers count as right to left here (N0)."""
    kind = str(char["type"])
    return "R" if kind in ("EN", "AN") else kind if kind in ("L", "R") else ""
