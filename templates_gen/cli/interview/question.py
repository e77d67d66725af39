"""A question of an interview, and how its answer goes into the tables of a job file."""

from __future__ import annotations

import re
from collections.abc import Generator, Iterable
from typing import Any

from templates_gen.base.errors import InputError
from templates_gen.base.record import Record
from templates_gen.base.units import parse_length
from templates_gen.job.reading.other_words import two_sides
from templates_gen.job.tables.contents import field_of
from templates_gen.job.tables.field import Words

Tables = dict[str, Any]
"""The tables of a job file as they are written, and under "file" where it goes."""


class Question(Record, frozen=True, kw_only=True):
    """What is asked for the field `key`: `means` explains it in a line, `choices`, if any, are the only answers
    besides those that are taken `also`, and `example` shows how to write one.

    When nothing is typed, `default` is the answer; without one the field is left open where `open` says what that
    means, and else an answer is needed; SKIP leaves it open where it may be.  `begins` is set where one thing is told
    and the next begins.
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

    @property
    def answers(self) -> tuple[str, ...]:
        """What may be typed, in words: the choices, an example, what Enter stands for, and what leaves it open."""
        enter = self.default or self.open
        return tuple(filter(None, (
            ", ".join(self.choices),
            f"such as {self.example}" if self.example else "",
            f"Enter: {enter}" if enter else "",
            f"{SKIP}: {self.open}" if self.default and self.open else "",
        )))  # fmt: skip


SKIP = "skip"
"""What is typed to leave a question open, else for what Enter stands for: nothing is called by that."""

Asking = Generator[Question, str, None]

YES_NO = ("yes", "no")

NO_FIELDS = {
    "pictures": Words(
        "files such as images/fern-a.jpg, beside the job file: the client's proof shows them in the frames",
        ask="Are there pictures of the frames, as files?",
    ),
    "others": Words(
        "names with a comma between them: they are asked about by themselves",
        ask="Which frames need another fixing than that?",
    ),
    "stairs": Words("the template and the questions then go by the stair", ask="Does a stair run along the wall?"),
    "nosing.across": Words(
        "the nosing is the front edge of a step; the lowest is that of the first step",
        ask="How far is the lowest nosing from the wall's left end?",
    ),
    "nosing.up": Words("usually as high as one step climbs", ask="How far above the floor is it?"),
    "which": Words(
        "that name was given to both; the group's middle goes there", ask="Is {name} here the frame or the {other}?"
    ),
    "more": Words(
        "same: with the size, the weight and the kind of hanger of the last one, its drop measured separately",
        ask="Another frame: the same as the last, another size, or no more?",
    ),
    "file": Words(
        "a text file, to be read and changed with any editor", ask="Which file should the job be written to?"
    ),
}
"""What is asked besides the fields of a job file."""


def question_for(key: str, names: Tables | None = None, about: str = "", **more: Any) -> Question:
    """The question of a field, with `names` in its words; `more` are other fields of it.

    It may be asked `about` some: "What goes into the wall for frames H, I?".
    """
    words = NO_FIELDS.get(key) or field_of(key).words
    ask = words.ask.format(**names or {})
    ask = f"{ask.removesuffix('?')} for {about}?" if about else ask
    return Question(**{"key": key, "ask": ask, "means": words.means, **more})


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


def count(text: str) -> int:
    """The whole number that was typed.  Raises InputError."""
    if not re.fullmatch(r"[0-9]{1,6}", text):
        raise InputError("", f"found {text!r}, expected a whole number")
    return int(text)


def is_length(text: str, unit: str) -> bool:
    """True for a text that reads as a length."""
    try:
        parse_length(text, unit)
    except ValueError:
        return False
    return True


def names_in(text: str, ids: Iterable[str]) -> list[str]:
    """Names with a comma between, or a space where that can mean nothing else."""
    parts = [" ".join(part.split()) for part in text.split(",")]
    return parts if len(parts) > 1 or parts[0] in ids else parts[0].split()
