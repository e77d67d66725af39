"""A question of an interview, and how its answer goes into the tables of a job file."""

from __future__ import annotations

from collections.abc import Generator
from typing import Any

from templates_gen.base.record import Record
from templates_gen.job.reading.other_words import two_sides
from templates_gen.job.tables.contents import field_of
from templates_gen.job.tables.field import Words

Tables = dict[str, Any]
"""The tables of a job file as they are written, and under "file" where it goes."""


class Question(Record, frozen=True, kw_only=True):
    """What is asked for the field `key`: `means` explains it in a line, `choices`, if any, are the only answers
    besides those that are taken `also`, and `example` shows how to write one.

    When nothing is typed, `default` is the answer; without one the field is left open where `open` says what that
    means, and else an answer is needed.  `begins` is set where one thing is told and the next begins.
    """

    key: str
    ask: str
    means: str
    example: str = ""
    choices: tuple[str, ...] = ()
    also: tuple[str, ...] = ()
    default: str = ""
    open: str = ""
    begins: bool = False


Asking = Generator[Question, str, None]

NO_FIELDS = {
    "more": Words(
        "same: with the size, the weight and the kind of hanger of the last one, its drop measured separately",
        ask="Another frame: the same as the last, another size, or no more?",
    ),
    "file": Words(
        "a text file, to be read and changed with any editor",
        ask="Which file should the job be written to?",
    ),
}
"""What is asked besides the fields of a job file."""


def question_for(key: str, names: Tables | None = None, **more: Any) -> Question:
    """The question of a field, with `names` in its words; `more` are other fields of it."""
    words = NO_FIELDS.get(key) or field_of(key).words
    return Question(**{"key": key, "ask": words.ask.format(**names or {}), "means": words.means, **more})


def fill(table: Tables, key: str, names: Tables | None = None, **more: Any) -> Asking:
    """Ask for one field of a table, and put what was typed into it."""
    text = yield question_for(key, names, **more)
    if text:
        table[key.partition(".")[2]] = text


def fill_sides(table: Tables, kind: str, names: Tables | None = None) -> Asking:
    """Ask for width and height; who answers the first with both, such as "24 x 36", is not asked for the second."""
    text = yield question_for(f"{kind}.width", names)
    if sides := two_sides(text):
        table["width"], table["height"] = sides
        return
    table["width"] = text
    yield from fill(table, f"{kind}.height", names)
