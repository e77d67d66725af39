"""Files that no sane person writes: valid ones with something replaced, deleted, doubled, nested or garbled.

All of it follows from a `random.Random`, so that a seed gives the same files again.
"""

from __future__ import annotations

import copy
import datetime
import json
import random
import tomllib
from typing import Any

from tests.jobs import SAMPLES
from tests.running import MINIMAL

BASES = [tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted(SAMPLES.glob("*.toml"))]
BASES.append(tomllib.loads(MINIMAL))

TEXTS = [
    "", " ", "0", "-0", "1", "-1", "1e400", "1e308", "nan", "inf", "-inf", "1/0", "0/0", "999999/1", "1/999999",
    "14 3/8", "14 8/3", "1,234", "1,5", "12' 6\"", "5 ft", "0 mm", "200 m", "201 m", "1e3 mm", "½", "14½", "²", "١٢",
    "１２ mm", "4 lb 3 oz", "4 kg", "0 kg", "9999 kg", "a4", "roll", "roll 24 in", "roll 0 mm", "roll 99 m",
    "om_x_1x1mm", "om_x_99999999999x0.0000001in", "wall", "A", "tall", "wire", "hook", "rings", "cleat", "sawtooth",
    "nails", "none", "8 x 10", "8 × 0", "x", "glass 2 mm", "glass 9 m", "glass", "x" * 200, "9" * 400, "0." + "3" * 400,
    "مرحبا",
    "שלום 12", "👩‍👩‍👧‍👦", "拓片", "e\u0301\u0323\u0308", "\u202eevil\u202c", "\ufeff", "\u200b", "\x00", "\x1b[31m",
    "a\nb", "\u2028", "\\", '"', "'", "%s{}", "../../etc", "/dev/null", "2026-13-45", "2026-03-01", "en", "zz-" * 30,
]  # fmt: skip
NUMBERS: list[Any] = [
    0, -0.0, 1, -1, 2, 7, 100, 5000, 2**31, 2**63, 2**64, -(2**63), 10**400, 0.1, 5e-324, 1e-9, 1e308, -1e308,
    float("inf"), float("-inf"), float("nan"), 199999.0, 200000.0, 200001.0, True, False,
]  # fmt: skip
OTHERS: list[Any] = [
    [], {}, [[]], [{}], [0], [0, 0], ["A"], [["A"]], [["A"], []], [["A", "A"]], ["8", "10"], [-5, 5], [1, 2, 3],
    [float("nan")] * 2, {"x": 1}, {"": ""}, {"kind": "wire"}, {"kind": 3}, {"kind": "rings", "left": 1, "right": 1},
    {"kind": "hook", "below": 0}, {"centre": 1}, {"centre": [0, 0]}, {"above": "bench", "by": 1},
    {"A": {"centre": [0, 0]}},
    datetime.date(1, 1, 1), datetime.time(23, 59, 59), datetime.datetime(2026, 3, 1, 12, 0),
    datetime.datetime(9999, 12, 31, tzinfo=datetime.UTC),
]  # fmt: skip

ALPHABET = "0123456789 ./,-'\"½⅞′″mcinftklbozgMx×()\t\u00a0\u2009−–e+_٣²Ⅷ①\x00\u0301👍"


def toml(value: Any) -> str:
    """A value as TOML writes it, tables inline."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{_quoted(name)} = {toml(inner)}" for name, inner in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(toml, value)) + "]"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return _quoted(value)
    return value.isoformat() if isinstance(value, (datetime.date, datetime.time)) else repr(value)


def document(tables: dict[str, Any]) -> str:
    """A whole TOML file."""
    return "\n".join(f"{_quoted(name)} = {toml(value)}" for name, value in tables.items())


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def odd(rng: random.Random) -> Any:
    """A value of any type that TOML has, most of them out of place anywhere."""
    kind = rng.random()
    if kind < 0.4:
        return rng.choice(TEXTS)
    if kind < 0.7:
        return rng.choice(NUMBERS)
    if kind < 0.95:
        return copy.deepcopy(rng.choice(OTHERS))
    deep: Any = rng.choice(NUMBERS)
    for _ in range(rng.choice((3, 30, 150))):
        deep = [deep] if rng.random() < 0.7 else {"x": deep}
    return deep


def scribble(rng: random.Random, most: int = 12) -> str:
    """A short text of figures, units and signs, now and then near a length."""
    return "".join(rng.choice(ALPHABET) for _ in range(rng.randint(0, most)))


_MILD = ("scale", "digit", "exchange", "delete", "double")
_WAYS = (*_MILD, "garble", "nest", "add", "replace", "replace", "replace")


def mutated(rng: random.Random, base: dict[str, Any], rough: bool = True) -> dict[str, Any]:
    """The tables with one to three things replaced, deleted, doubled, exchanged or nested.

    When not `rough`, with what is there made smaller, larger, left out or exchanged, which often leaves a job.
    """
    tables = copy.deepcopy(base)
    for _ in range(rng.choice((1, 1, 2, 3))):
        spots = list(_spots(tables))
        if spots:
            _change(rng, *rng.choice(spots), spots, rough)
    return tables


def _spots(value: Any) -> Any:
    """Every place in the tables, as the table or list it is in and its name or number there."""
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, item in list(inner):
        yield value, key
        yield from _spots(item)


def _change(rng: random.Random, holder: Any, key: Any, spots: list[tuple[Any, Any]], rough: bool) -> None:
    old = holder[key]
    way = rng.choice(_WAYS if rough else _MILD)
    if way == "delete":
        del holder[key]
    elif way == "double" and isinstance(holder, list):
        holder.insert(key, copy.deepcopy(old))
    elif way == "double":
        holder[rng.choice(TEXTS)] = copy.deepcopy(old)
    elif way == "exchange":
        other, place = rng.choice(spots)
        holder[key], other[place] = copy.deepcopy(other[place]), copy.deepcopy(old)
    elif way == "add" and isinstance(old, dict):
        old[rng.choice(_names(spots))] = odd(rng)
    else:
        holder[key] = _changed(rng, old, way, rough)


def _changed(rng: random.Random, old: Any, way: str, rough: bool) -> Any:
    """What stands in the place of a value."""
    if way == "nest":
        return rng.choice(([old], {"kind": old}, {"x": old}, [old, old], {"width": old}))
    if way == "garble" and isinstance(old, str):
        at = rng.randint(0, len(old))
        return old[:at] + scribble(rng, 3) + old[at + rng.randint(0, 2) :]
    if way == "scale" and isinstance(old, (int, float)):
        return old * rng.choice((0, -1, 0.001, 0.5, 0.9, 1.1, 2, 10, 1000))
    if way == "digit" and isinstance(old, str):
        return "".join(rng.choice("0123456789") if char.isdigit() else char for char in old)
    return odd(rng) if rough else old


def _names(spots: list[tuple[Any, Any]]) -> list[str]:
    return [key for _, key in spots if isinstance(key, str)] or ["x"]


_BYTES = (b"\x00", b"\xff", b"\xfe\xff", b"\n", b"\r", b'"', b"[", b"=", b"\xef\xbb\xbf")


def garbled(rng: random.Random, content: bytes) -> bytes:
    """The bytes with some of them changed, cut out, doubled, or put in another encoding; or bytes by chance."""
    way = rng.randrange(6)
    if way == 0:
        return rng.randbytes(rng.randint(0, 300))
    if way == 1:
        encoding = rng.choice(("utf-16", "utf-16-le", "utf-8-sig", "latin-1", "utf-7", "cp037", "utf-32"))
        return content.decode("utf-8", "replace").encode(encoding, "replace")
    found = bytearray(content)
    for _ in range(rng.randint(1, 8)):
        at = rng.randrange(len(found) + 1)
        end = at + rng.randint(0, 20)
        if way == 2:
            found[at : at + 1] = rng.choice(_BYTES)
        elif way == 3:
            del found[at:end]
        elif way == 4:
            found[at:at] = found[at:end] * rng.choice((1, 50))
        else:
            found[at : at + 1] = rng.randbytes(1)
    return bytes(found)


def spreadsheet(rng: random.Random, names: list[str], rows: list[list[str]]) -> bytes:
    """A spreadsheet of these columns and rows, some cells exchanged or blank, rows ragged, badly quoted or encoded."""
    delimiter, end = rng.choice(",;\t|"), rng.choice(("\n", "\r\n", "\r"))
    lines = [list(names), *map(list, rows)]
    for _ in range(rng.choice((0, 1, 1, 2, 3))):
        line = rng.choice(lines[rng.random() < 0.8 :])
        at = rng.randrange(len(line) or 1)
        line[at : at + 1] = [_cell(rng, "".join(line[at : at + 1]))]
        if rng.random() < 0.1:
            line[rng.randrange(len(line) + 1) :] = [rng.choice(TEXTS)] * rng.randint(0, 4)
    text = end.join(delimiter.join(_in_quotes(rng, cell, delimiter) for cell in line) for line in lines) + end
    content = text.encode(rng.choice(("utf-8", "utf-8", "utf-8-sig", "utf-16")), "replace")
    return garbled(rng, content) if rng.random() < 0.2 else content


def _cell(rng: random.Random, cell: str) -> str:
    return rng.choice(("", scribble(rng), rng.choice(TEXTS), cell * 2, f"-{cell}", f"{cell} mm", f"{cell} left"))


def _in_quotes(rng: random.Random, cell: str, delimiter: str) -> str:
    plain = delimiter not in cell and not set(cell) & set('"\n\r')
    return cell if plain or rng.random() < 0.1 else '"' + cell.replace('"', '""') + '"'
