"""Characters of a text that show nothing and change how what stands beside them is shown: found, left out, or spelt."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterator

_UNSEEN = re.compile(
    "[\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180e\u200b-\u200f\u202a-\u202e\u2060-\u206f\u3164\ufeff\uffa0"
    "\ufff0-\ufffb\U0001bca0-\U0001bca3\U0001d173-\U0001d17a\U000e0000-\U000e00ff\U000e01f0-\U000e0fff]"
)
"""What is ignored where it cannot be shown, but the selectors of variants (Unicode 15.0, DerivedCoreProperties,
Default_Ignorable_Code_Point), and the marks of annotations; from memory."""

_NON_JOINER, _JOINER = "\u200c", "\u200d"

_VIRAMA = 9
"""The combining class of what joins two letters of an Indic script (Unicode 15.0, 4.3)."""

_NEAR = 20
"""So many characters before and behind are looked at: more marks are on no letter.  Our own design, no source."""

_VARIANTS = "\ufe0e\ufe0f"


def without_unseen(text: str) -> str:
    """The text without them.  A joiner or non-joiner stays where its script, or a joined sign, needs it.

    That is after or before a virama, between letters that join, and between pictographs (RFC 5892, appendix A, rules 1
    and 2; Unicode Technical Standard 51, 1.4.5; both from memory).
    """
    return "".join(_parts(text, lambda char: "")) if _UNSEEN.search(text) else text


def unseen_spelt(text: str) -> str:
    """The text with each of them by its number, as JSON escapes it: `\\u202e`."""
    return "".join(_parts(text, spelt)) if _UNSEEN.search(text) else text


def _parts(text: str, other: Callable[[str], str]) -> Iterator[str]:
    """The text in pieces, with what is not needed as `other` has it; whether it is, goes by what stays before it."""
    before, at = "", 0
    for found in _UNSEEN.finditer(text):
        plain, char = text[at : found.start()], found[0]
        before, at = (before + plain)[-_NEAR:], found.end()
        yield plain
        if char in (_NON_JOINER, _JOINER) and _is_needed(before, char, _next(text, at)):
            before += char
            yield char
        else:
            yield other(char)
    yield text[at:]


def _next(text: str, at: int) -> str:
    """What comes next, past what is left out in any case."""
    return _UNSEEN.sub(lambda found: found[0] if found[0] in (_NON_JOINER, _JOINER) else "", text[at : at + _NEAR])


def _is_needed(before: str, char: str, after: str) -> bool:
    if not before:
        return False
    if _VIRAMA in (unicodedata.combining(before[-1]), unicodedata.combining(after[:1] or " ")):
        return True
    left, right = _letter(before[::-1]), _letter(after)
    if _joins(left) and (_joins(right) or char == _JOINER):  # a joiner at a word's end shapes the letter before it
        return True
    return char == _JOINER and _is_pictograph(before) and _is_pictograph(after[:1])


def _letter(text: str) -> str:
    """The first letter of a text, past the marks on it."""
    return next((char for char in text if unicodedata.category(char) != "Mn"), "")


def _joins(char: str) -> bool:
    """True for a letter of a script whose letters join: Arabic, Syriac and their like (UAX #9, class AL)."""
    return bool(char) and unicodedata.bidirectional(char) == "AL" and unicodedata.category(char) == "Lo"


def _is_pictograph(text: str) -> bool:
    """True for a text that ends in a pictograph, perhaps of a shade of skin or a chosen variant."""
    plain = text.rstrip(_VARIANTS)[-1:]
    return bool(plain) and (unicodedata.category(plain) == "So" or "\U0001f3fb" <= plain <= "\U0001f3ff")


def spelt(char: str) -> str:
    """A character by its number, as JSON escapes it: `\\u202e`."""
    units = char.encode("utf-16-be", "surrogatepass")
    return "".join(f"\\u{units[at]:02x}{units[at + 1]:02x}" for at in range(0, len(units), 2))
