"""What people type for the words and lengths of a job file, in answers, in the file and in spreadsheets.

A word for one of a field's words is taken for it, in small or capital letters; "24 x 36" is a width and a height; and
"none" is what a length is that is not given.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.job.arrangements import ARRANGEMENTS
from templates_gen.job.hangers import HANGERS, WIRE

_INCH, _CM, _MM = ("inch", "inches", '"', "''"), ("centimetre", "centimeter"), ("millimetre", "millimeter")
_HANGER_WORDS = {kind.name: kind.said for kind in HANGERS.values()}
_FIXINGS = {
    "nail": ("nails", "pin", "pins"),
    "hook": ("hooks", "picture hook", "picture hooks"),
    "screw": ("screws",),
}

_WORDS: dict[str, dict[str, tuple[str, ...]]] = {
    "job.unit": {
        "in": _INCH,
        "cm": (*_CM, *(f"{word}s" for word in _CM)),
        "mm": (*_MM, *(f"{word}s" for word in _MM)),
    },
    "wall.build": {
        "drywall": (
            "sheetrock", "sheet rock", "gypsum", "gypsum board", "gypsum wallboard", "gyprock", "wallboard",
            "plaster board", "dry wall", "dry-wall",
        ),
        "plaster": ("lath and plaster", "plaster and lath"),
        "masonry": ("brick", "bricks", "concrete", "stone", "block", "blocks", "breeze block", "cinder block"),
        "timber": ("wood", "wooden", "boards", "panelling", "paneling"),
    },
    "wall.wiring": {"us": ("usa", "u.s."), "uk": ("gb", "britain", "u.k."), "de": ("germany",)},
    "feature.kind": {
        "outlet": (
            "socket", "sockets", "wall socket", "power socket", "plug", "plug socket", "power point", "receptacle",
            "outlets", "power outlet", "wall outlet",
        ),
        "switch": ("light switch", "light-switch", "switches", "dimmer"),
        "light": ("lamp", "wall light", "sconce", "lights"),
        "furniture": (
            "sofa", "couch", "settee", "bench", "chair", "armchair", "bed", "daybed", "crib", "cot", "table", "desk",
            "sideboard", "console", "chest", "chest of drawers", "dresser", "cabinet", "cupboard", "bookcase", "shelf",
            "shelves", "piano", "counter",
        ),
        "vent": ("air vent", "grille"),
        "radiator": ("heater",),
        "pipe": ("pipes",),
    },
    "group.arrangement": {kind.name: kind.said for kind in ARRANGEMENTS.values()},
    "hanger.kind": _HANGER_WORDS,
    "frame.hanger": _HANGER_WORDS,
    "fixing.kind": _FIXINGS,
    "frame.fixing": _FIXINGS,
}  # fmt: skip
"""By field, what else is said for each of its words.  Our own list, of the trade's words and what people say for them
in the US and in Britain; no source."""

MEANT = {field: {other: word for word, others in words.items() for other in others} for field, words in _WORDS.items()}
"""By field, the word that each of the others stands for."""

TWO_HOOKS = ("two hooks", "2 hooks", "two nails", "2 nails")
"""A wire on two fixings, which has to be told how far apart they are."""

NOT_GIVEN = ("none", "no", "-", "–", "—", "n/a", "na", "not known", "unknown", "?")
"""What stands where a length or a weight is not given, or an answer.  Common practice, no source."""

HOW_MANY = ("count", "quantity", "qty", "copies", "amount", "how_many", "pieces", "number")
"""What people call how many frames are alike.  Our own list, no source."""

EACH_ITS_OWN = (
    "every frame has its own table, for two of one size hang differently; what they share stands once, in a frame_type"
)
"""What a frame's table is told that has to stand for several frames."""

_BY = re.compile(r"\s*(?:[x×*]|\bby\b)\s*", re.IGNORECASE)


def is_not_given(text: str) -> bool:
    """True for a word, or a dash, that says that there is nothing to say."""
    return " ".join(text.casefold().split()) in NOT_GIVEN


def meant(field: str, text: str, known: tuple[str, ...]) -> str:
    """The one of the `known` words of a field, such as "wall.build", that a text stands for; the text where none is."""
    plain = " ".join(text.casefold().split())
    return plain if plain in known else MEANT.get(field, {}).get(plain, text)


def two_sides(text: str) -> tuple[str, str] | None:
    """Width and height of a text such as "24x36", "24 × 36 in" or `24" by 36"`; None for any other.

    A unit behind the second is that of the first, too, where this has none.
    """
    parts = _BY.split(text.strip())
    if len(parts) != 2 or not all(any(map(str.isnumeric, part)) for part in parts):
        return None
    width, height = parts
    return f"{width}{_unit(height)}" if not _unit(width) else width, height


def _unit(length: str) -> str:
    """What stands behind the last figure of a length."""
    last = max(at for at, sign in enumerate(length) if sign.isnumeric())
    return length[last + 1 :]


def sides_apart(raw: Mapping[str, Any], where: str) -> Mapping[str, Any]:
    """A table whose width is both sides, with a width and a height.  Raises InputError where it has a height, too."""
    width = raw.get("width")
    sides = two_sides(width) if isinstance(width, str) else None
    if sides is None:
        return raw
    if raw.get("height") is not None:
        raise InputError(f"{where}, width", f"found {width!r} and a height, expected a width", "leave one of them out")
    return {**raw, "width": sides[0], "height": sides[1]}


def on_two(hanger: object, where: str) -> object:
    """A hanger with "two hooks" for its kind as the wire it is.  Raises InputError where it does not say how far
    apart they are."""
    kind = hanger.get("kind") if isinstance(hanger, Mapping) else hanger
    if not isinstance(kind, str) or " ".join(kind.casefold().split()) not in TWO_HOOKS:
        return hanger
    if not isinstance(hanger, Mapping) or hanger.get("apart") is None:
        hint = f'for example  hanger = {{ kind = "{WIRE.name}", apart = "8 in" }}'
        raise InputError(f"{where}, hanger", f"found {kind!r}, expected how far apart they are, too", hint)
    return {**hanger, "kind": WIRE.name}
