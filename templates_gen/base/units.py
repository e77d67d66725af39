"""Text becomes millimetres, kilograms or degrees here, and nowhere else.  They become text here, too.

Inside, a length is a float in mm that is never rounded.  A shown number is never used again."""

from __future__ import annotations

import math
import re
from fractions import Fraction

from templates_gen.base.adding import added
from templates_gen.base.errors import clipped
from templates_gen.base.fraction import fraction_problem

INCH, METRE = 25.4, 1000.0
"""mm, exactly (the inch: international yard and pound agreement, 1959)."""

MM = {"mm": 1.0, "cm": 10.0, "m": METRE, "in": INCH, "ft": 304.8}
"""Millimetres in one of each; the foot is 12 in, 304.8 mm exactly (same agreement)."""

GRAVITY = 9.80665
"""N/kg, the standard acceleration of free fall (3rd CGPM, 1901)."""

SIXTEENTHS, HALF = 16, 0.5 + 5e-10
DIVISION = {"in": INCH / SIXTEENTHS, "cm": 1.0, "mm": 1.0}
"""mm; what a tape measure shows, and lengths are told to: a half goes up, also where a sum of floats lost its last
digits (its 5e-10 of a step is far above them).  Common practice, no source."""

KG = {"kg": 1.0, "g": 0.001, "lb": 0.45359237, "oz": 0.45359237 / 16}
"""Kilograms in one of each.  The pound is 0.453 592 37 kg exactly (same agreement)."""

LONGEST, HEAVIEST = 200_000.0, 2_000.0
"""mm and kg.  A longer wall or a heavier frame is taken for a slip of the unit.  Common practice, no source."""

LENGTH_EXAMPLE = 'a length such as "14 3/8", "1\' 2 3/8\\"", "36.5 cm" or "365 mm"'
MASS_EXAMPLE = 'a weight with its unit, such as "4.2 lb", "4 lb 3 oz", "1.9 kg" or "850 g"'

UNIT_WORDS = {
    "mm": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
    "cm": "cm", "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
    "m": "m", "metre": "m", "metres": "m", "meter": "m", "meters": "m",
    "in": "in", "inch": "in", "inches": "in", '"': "in",
    "ft": "ft", "foot": "ft", "feet": "ft", "'": "ft",
}  # fmt: skip
MASS_WORDS = {
    "kg": "kg", "kilo": "kg", "kilos": "kg", "g": "g", "gram": "g", "grams": "g",
    "lb": "lb", "lbs": "lb", "pound": "lb", "pounds": "lb", "oz": "oz", "ounce": "oz", "ounces": "oz",
}  # fmt: skip

# What word processors, phones and spreadsheets write, brought to the plain signs.
_PLAIN = str.maketrans({
    "”": '"', "“": '"', "″": '"', "„": '"', "’": "'", "‘": "'", "′": "'", "−": "-", "–": "-", "‐": "-", "‑": "-",
    "⁄": "/", "∕": "/", "\u00a0": " ", "\u202f": " ", "\u2009": " ", "\u2007": " "})  # fmt: skip
_VULGAR = {
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3",
    "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅐": "1/7", "⅑": "1/9", "⅒": "1/10",
}  # fmt: skip

_NUMBER = r"(?:\d{1,12}(?:[.,]\d{1,20})?|[.,]\d{1,20})"
_QUANTITY = re.compile(
    rf"\s*(?:(?P<whole>\d{{1,12}})(?:\s+|\s*-\s*)(?P<part>\d{{1,6}}/\d{{1,6}})|(?P<fraction>\d{{1,6}}/\d{{1,6}})|(?P<number>{_NUMBER}))\s*"
    r"(?P<unit>[a-z]+|\"|'{1,2})?\s*"
)


def parse_length(value: object, unit: str) -> float:
    """Millimetres of a size as people write it; a bare number is in `unit` ("in", "cm" or "mm").

    Bare fractions but halves are on no metric tape: in a job of cm or mm they are ambiguous.  Raises ValueError, saying
    what was found and an example, for anything negative, ambiguous or not a length.
    """
    length = parse_offset(value, unit)
    if length < 0:
        raise ValueError(f"found {_shown(value)}, expected a size of zero or more")
    return length


def parse_offset(value: object, unit: str) -> float:
    """Millimetres of a distance that may be negative (to the left, or down); otherwise as `parse_length`."""
    if isinstance(value, bool) or not isinstance(value, (int, float, str)):
        raise ValueError(f"found {_shown(value)}, expected {LENGTH_EXAMPLE}")
    if isinstance(value, str):
        length = _signed(value, unit)
    else:
        length = float(value) * MM[unit] if abs(value) < LONGEST * 10 else math.inf
    if not math.isfinite(length) or abs(length) > LONGEST:
        raise ValueError(f"found {_shown(value)}, expected a length of at most {LONGEST / METRE:g} m")
    return length


def parse_mass(value: object) -> float:
    """Kilograms of a weight as people write it; the unit has to be there.  Raises ValueError."""
    if not isinstance(value, str):
        raise ValueError(f"found {_shown(value)}, expected {MASS_EXAMPLE}")
    total = added(amount * KG[unit] for amount, unit in _quantities(value, MASS_WORDS, "", MASS_EXAMPLE))
    if not total <= HEAVIEST:
        raise ValueError(f"found {_shown(value)}, expected a weight of at most {HEAVIEST:g} kg")
    return total


def _signed(text: str, unit: str) -> float:
    plain = text.translate(_PLAIN).strip()
    parts = _quantities(plain[1:] if plain.startswith(("-", "+")) else plain, UNIT_WORDS, unit, LENGTH_EXAMPLE)
    total = added(amount * MM[name] for amount, name in parts)
    return -total if plain.startswith("-") else total


def _quantities(text: str, words: dict[str, str], bare: str, example: str) -> list[tuple[float, str]]:
    """The (amount, unit) pairs that the text is made of, the larger unit first."""
    plain = _with_fractions(text.translate(_PLAIN)).lower().strip()
    found: list[tuple[float, str]] = []
    at = 0
    while at < len(plain):
        match = _QUANTITY.match(plain, at)
        if match is None or match.end() == at:
            raise ValueError(f"found {_shown(text)}, expected {example}")
        found.append((_amount(match, text), _unit(match, words, bare, found, text, example)))
        at = match.end()
    if len(found) != 1 and [name for _, name in found] not in (["ft", "in"], ["lb", "oz"]):  # nothing else is written
        raise ValueError(f"found {_shown(text)}, expected {example}")
    fewer, larger = {"in": (12, "feet"), "oz": (16, "pounds")}.get(found[-1][1], (math.inf, ""))
    if found[1:] and found[1][0] >= fewer:  # as many as make the larger unit
        raise ValueError(f"found {_shown(text)}, expected fewer than {fewer} {found[1][1]} behind the {larger}")
    return found


def _with_fractions(text: str) -> str:
    for sign, digits in _VULGAR.items():
        text = text.replace(sign, f" {digits} ")
    return text


def _amount(match: re.Match[str], text: str) -> float:
    if match["number"] is not None:
        return _decimal(match["number"], text, UNIT_WORDS.get(match["unit"] or "") == "m")
    whole, part = int(match["whole"] or 0), match["part"] or match["fraction"]
    over, under = (int(digits) for digits in part.split("/"))
    if problem := fraction_problem(over, under, match["whole"] is not None):
        raise ValueError(f"found {_shown(text)}, {problem}")
    return float(whole + Fraction(over, under))


def _decimal(number: str, text: str, metres: bool) -> float:
    """A number with a point or a comma; of metres three figures behind it are millimetres, for no wall is 1 km long."""
    before, comma, after = number.partition(",")
    if comma and len(after) == 3 and before.strip("0") and not metres:
        raise ValueError(
            f"found {_shown(text)}, which may be {before}.{after} or {before}{after}: write it with a point, or without"
        )
    return float(number.replace(",", "."))


def _unit(
    match: re.Match[str], words: dict[str, str], bare: str, found: list[tuple[float, str]], text: str, example: str
) -> str:
    word = '"' if match["unit"] == "''" else match["unit"]
    if word is not None:
        if word not in words:
            raise ValueError(f"found {_shown(text)}: {word!r} is not a unit here, expected {example}")
        return words[word]
    if found and found[-1][1] == "ft":
        return "in"  # 5' 2 is five feet two inches to anyone who writes it
    if found or not bare:
        raise ValueError(f"found {_shown(text)}, expected {example}")
    if bare != "in" and (match["part"] or match["fraction"] or "/2").partition("/")[2] != "2":
        raise ValueError(f"found {_shown(text)}, which may be inches or {bare}: write the unit behind it")
    return bare


def _shown(value: object) -> str:
    return clipped(repr(value) if isinstance(value, str) else str(value))


def inches(mm: float) -> str:
    """The length in inches to the nearest 1/16, reduced, without a unit: `14 3/8`, `-1/2`, `0`."""
    sixteenths = math.floor(abs(mm) / INCH * SIXTEENTHS + HALF)
    whole, rest = divmod(sixteenths, SIXTEENTHS)
    sign = "-" if mm < 0 and sixteenths else ""
    if not rest:
        return f"{sign}{whole}"
    part = f"{rest // (common := math.gcd(rest, SIXTEENTHS))}/{SIXTEENTHS // common}"
    return f"{sign}{whole} {part}" if whole else f"{sign}{part}"


def show(mm: float, unit: str) -> str:
    """The length as someone measures it: inches to 1/16, whole millimetres, centimetres to one place."""
    if unit == "in":
        return f"{inches(mm)} in"
    whole = math.floor(abs(mm) + HALF)
    sign = "-" if mm < 0 and whole else ""
    return f"{sign}{whole / 10:.1f} cm" if unit == "cm" else f"{sign}{whole} mm"


def show_size(width: float, height: float, unit: str) -> str:
    """Width and height as someone measures them."""
    return f"{show(width, unit)} × {show(height, unit)}"


def as_found(mm: float) -> str:
    """A length that cannot be used, for an error, which knows nothing of the job's unit: `127 mm (5 in)`."""
    return f"{mm:g} mm ({show(mm, 'in')})"


FINEST = 9
"""Places behind the point in what is read again: over ten frames far below `geometry.TOLERANCE`.  Our own design."""


def exact(mm: float, unit: str) -> str:
    """The length for a file that is read again: `3.125 in`, never as `9e-15`, which no tape and no reader knows.

    Nothing is rounded that could be measured, nor so much that a sum over a wall is another.
    """
    return f"{_fixed(mm / MM[unit])} {unit}"


def exact_mass(kg: float, unit: str) -> str:
    """Likewise the weight, in pounds for an inch job and in kilograms otherwise."""
    name = "lb" if unit == "in" else "kg"
    return f"{_fixed(kg / KG[name])} {name}"


def _fixed(value: float) -> str:
    """The number with a point, as short as it can be: `3.125`, `40`, `0`."""
    return f"{round(value, FINEST) + 0.0:.{FINEST}f}".rstrip("0").rstrip(".")


def other_unit(unit: str) -> str:
    """The unit shown beside `unit`: millimetres beside inches, inches beside the metric ones."""
    return "mm" if unit == "in" else "in"


def show_both(mm: float, unit: str, between: str = " · ") -> str:
    """The length in `unit` and then in the other system."""
    return f"{show(mm, unit)}{between}{show(mm, other_unit(unit))}"


def show_mass(kg: float, unit: str) -> str:
    """The weight in pounds for an inch job, in kilograms otherwise, to one place; less than one to two figures."""
    mass = kg / KG["lb"] if unit == "in" else kg
    return f"{mass:{'.1f' if mass >= 1 or not mass else '.2g'}} {'lb' if unit == 'in' else 'kg'}"


def show_mass_both(kg: float, unit: str) -> str:
    """The weight in the job's system and then in the other."""
    return f"{show_mass(kg, unit)} · {show_mass(kg, other_unit(unit))}"


def tenth(mm: float) -> float:
    """A length as it is written for machines: to 0.1 mm, and never as a negative nought."""
    return round(mm, 1) + 0.0
