"""What a field of a job file is: how its value is written, and all that is said of it anywhere."""

from __future__ import annotations

import math
from collections.abc import Mapping
from functools import cache
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from templates_gen.base.record import NEEDED, Record, Table, declared


class Limits(Record, frozen=True, kw_only=True):
    """What a number may be: from `least` to `most`, without these where it has to be `above` or `under` them.

    Lengths are in mm, weights in kg; other numbers have their unit in `unit`.  `expected` says it in words.
    """

    expected: str
    least: float
    most: float = math.inf
    above: bool = False
    under: bool = False
    unit: str = ""

    def hold(self, value: float) -> bool:
        """True for a number within them."""
        low = self.least < value if self.above else self.least <= value
        return low and (value < self.most if self.under else value <= self.most) and math.isfinite(value)


class Words(Record, frozen=True):
    """What a field means, in a few words without a full stop, and an example: its value as the job file has it.

    `means` is also what "?" answers, the remark in a new job file, and what an editor shows.  `ask` is its question,
    empty where it is never asked.  What `must` be given may still be left out of its table, which serves more than one
    purpose or has an error of its own for it.  An `offered` field stands as a comment in a new job file that leaves it
    open, with its example, or with the `metric` one in a job of cm or mm.  `usual` says what holds where the field is
    left out and its table has no value for that; `more` are whole sentences for the reference.  `later` is the type of
    a field that its table leaves untyped, for it is read by itself; `limits` are those of a number.  `called` says what
    the words mean of which its value is one, a short name and, behind a colon, more about it.
    """

    means: str
    example: str = ""
    ask: str = ""
    must: bool = False
    offered: bool = False
    metric: str = ""
    usual: str = ""
    more: str = ""
    later: Any = None
    limits: Limits | None = None
    called: Mapping[str, str] = {}


class Field(Record, frozen=True, kw_only=True):
    """One field of a table: how it is called, the `type` of its value, what is said of it, and whether it is `needed`.

    `default` is the value that its table gives it where the file gives none; None where that is worked out later.
    """

    @property
    def written(self) -> Any:
        """The type of what a job file has for it, which its table may leave untyped to have it read by itself."""
        return self.type if self.words.later is None else self.words.later

    @property
    def choices(self) -> tuple[str, ...]:
        """The words of which its value may be one, in their order."""
        return choices(self.type)

    name: str
    type: Any
    words: Words
    needed: bool
    default: Any = None


@cache
def fields_of(table: type[Table]) -> Mapping[str, Field]:
    """The fields of a table by their names, in the order in which they are written."""
    return {name: _field(name, kind, default) for name, kind, default in declared(table)}


def _field(name: str, kind: Any, default: Any) -> Field:
    plain, words = get_args(kind) if get_origin(kind) is Annotated else (kind, Words(""))
    needed = default is NEEDED
    return Field(name=name, type=plain, words=words, needed=needed, default=None if needed else default)


def options(kind: Any) -> tuple[Any, ...]:
    """The types of which a value may have one, none of them for "not given"."""
    several = get_args(kind) if get_origin(kind) in (Union, UnionType) else (kind,)
    return tuple(one for one in several if one is not type(None))


def choices(kind: Any) -> tuple[str, ...]:
    """The words of which a value may be one, in their order."""
    return tuple(word for one in options(kind) if get_origin(one) is Literal for word in get_args(one))


def tables_in(kind: Any) -> tuple[type[Table], ...]:
    """The tables that a value may be, or may have inside: in a list, or under a name each."""
    inner = [part for one in options(kind) if get_origin(one) in (list, dict, tuple) for part in get_args(one)]
    return tuple(one for one in (*options(kind), *inner) if is_table(one))


def is_table(kind: Any) -> bool:
    """True for the type of a table."""
    return isinstance(kind, type) and issubclass(kind, Table)
