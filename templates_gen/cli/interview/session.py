"""An interview as it goes on: every answer is checked by reading the job so far, and every one can be taken back.

A state is a frozen value.  It keeps the answers only; the question and the tables are what these lead to.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import Any

from templates_gen.base.errors import InputError, TemplatesError, did_you_mean
from templates_gen.base.record import Record, replace
from templates_gen.cli.interview.question import SKIP, Question, Tables
from templates_gen.cli.interview.questions import interview
from templates_gen.job.arrangements import SIDES
from templates_gen.job.hangers import HANGERS
from templates_gen.job.model import Job
from templates_gen.job.reading.building import build_job
from templates_gen.job.reading.files import check_text
from templates_gen.job.reading.other_words import is_not_given, meant

CheckFile = Callable[[Path], None]

BACK = ("<", "back")


class Interview(Record, frozen=True):
    """The answers so far, the tables they make, and the next question: None when all is told.

    `confirmed` are the values that were doubted and are right, each with the number of the answer that said so.
    `asked` says which question this is, and `offers` what was answered to some that were taken back, likewise.
    """

    answers: tuple[str, ...]
    tables: Tables
    question: Question | None
    file: str
    confirmed: tuple[tuple[int, str], ...] = ()
    asked: str = ""
    offers: tuple[tuple[str, str], ...] = ()

    @property
    def offered(self) -> Question | None:
        """The next question, with what was answered to it before it was taken back, if it was."""
        before = dict(self.offers).get(self.asked)
        return replace(self.question, default=before) if self.question and before else self.question


def begin(file: str = "") -> Interview:
    """An interview before its first answer; `file` is where the job is to go, if that is known."""
    return _after((), file)


def answered(state: Interview, text: str, check_file: CheckFile | None = None) -> Interview:
    """The interview with one more answer.  Raises InputError, or what `check_file` raises, for one that will not do."""
    question = state.offered
    if question is None:
        raise ValueError("there are no more questions")
    answer = _completed(" ".join(text.split()), question)
    after = _after((*state.answers, answer), state.file, state.confirmed, state.offers)
    if "file" in after.tables and check_file is not None:
        check_file(Path(after.tables["file"]))
    job_so_far(after.tables)
    return after


def taken_back(state: Interview) -> Interview:
    """The interview without its last answer, which is offered again; at its first question it stays there."""
    before = _after(state.answers[:-1], state.file, state.confirmed)
    taken = {before.asked: state.answers[-1]} if state.answers else {}
    return replace(before, offers=tuple((dict(state.offers) | taken).items()))


def confirmed(state: Interview, values: Iterable[str]) -> Interview:
    """The interview with these values of the last answer said to be right, though they are doubted."""
    at = len(state.answers)
    sure = (*state.confirmed, *((at, value) for value in values))
    return _after(state.answers, state.file, sure, state.offers)


def gone_on(answers: Sequence[str], sure: Iterable[tuple[int, str]], file: str = "") -> Interview:
    """An interview that was left, as far as its answers still do."""
    state = begin(file)
    for answer in answers:
        try:
            state = answered(state, answer)
        except TemplatesError:
            break
    return _after(state.answers, file, tuple(sure))


def job_so_far(tables: Tables) -> Job:
    """The job that the tables make, as the job file's own reader builds it, with a stand-in for all that is not told.

    Raises InputError where the tables cannot be a job.
    """
    frames = [_frame(frame, number) for number, frame in enumerate(tables.get("frame", []), 1)] or [_frame({}, 1)]
    wall = {"width": "10 m", "height": "10 m", **tables.get("wall", {})}
    if "stairs" in wall:
        wall["stairs"] = _STAIRS | wall["stairs"]
    filled = {
        "job": tables.get("job", {}),
        "wall": wall | {"feature": [_FEATURE | feature for feature in wall.get("feature", [])]},
        "frame": frames,
        "fixing": _fixing(tables.get("fixing", {})),
        "group": _group(tables.get("group", {}), [frame["id"] for frame in frames]),
        "paper": tables.get("paper", {}),
    }
    check_text(filled)
    return build_job(filled, Path("job.toml"))


def _after(
    answers: tuple[str, ...],
    file: str,
    sure: tuple[tuple[int, str], ...] = (),
    offers: tuple[tuple[str, str], ...] = (),
) -> Interview:
    tables: Tables = {}
    asking = interview(tables, file)
    question: Question | None = next(asking)
    seen: Counter[str] = Counter()
    try:
        for answer in answers:
            seen[_called(question)] += 1
            question = asking.send(answer)
    except StopIteration:
        question = None
    sure = tuple((at, value) for at, value in sure if at <= len(answers))
    if sure:
        tables["job"]["confirmed"] = [value for _, value in sure]
    called = _called(question)
    return Interview(answers, tables, question, file, sure, f"{seen[called]} {called}", offers)


def _called(question: Question | None) -> str:
    """A question by its field and its words, which name the frame if there are several."""
    return f"{question.key} {question.ask}" if question else ""


def _completed(text: str, question: Question) -> str:
    """What the answer stands for: a default for nothing, a choice for how it begins.  Raises InputError."""
    if not text:
        if not question.default and not question.open:
            raise InputError("", "found nothing, expected an answer", question.means)
        return question.default
    try:
        text.encode()
    except UnicodeEncodeError:
        raise InputError("", "found text that is not UTF-8") from None
    if text.casefold() == SKIP and (question.open or question.default):
        return "" if question.open else question.default
    if is_not_given(text) and text.casefold() not in question.choices:
        if question.open:
            return ""
        text = "no" if "no" in question.choices else text
    return _chosen(text, question) if question.choices else text


def _chosen(text: str, question: Question) -> str:
    """The choice that an answer is, stands for or begins, or one of those taken also.  Raises InputError."""
    choices, plain = question.choices, " ".join(text.casefold().split())
    word = meant(question.key, text, choices)
    if word in choices or plain in question.also:
        named = question.key == "feature.kind" and word == "furniture"  # a couch is called by its own name
        return plain if named or word not in choices else word
    found = [choice for choice in choices if choice.casefold() == text.casefold()]
    found = found or [choice for choice in choices if choice.casefold().startswith(text.casefold())]
    if len(found) == 1:
        return found[0]
    raise InputError("", f"found {text!r}, expected one of {', '.join(found or choices)}", did_you_mean(text, choices))


_STAIRS: dict[str, Any] = {"up": "right", "run": "25 cm", "rise": "18 cm", "nosing": ["0 m", "0 m"]}
_FEATURE: dict[str, Any] = {"left": "0 m", "bottom": "0 m", "width": "1 m", "height": "1 m"}


def _frame(frame: Tables, number: int) -> Tables:
    filled = {"id": f"frame {number}", "width": "1 m", "height": "1 m", **frame}
    if isinstance(filled.get("hanger"), dict) and HANGERS[filled["hanger"]["kind"]].pair:
        filled["hanger"] = {"left": "1 mm", "right": "1 mm", **filled["hanger"]}
    if isinstance(filled.get("fixing"), dict):
        filled["fixing"] = _fixing(filled["fixing"])
    return filled


def _fixing(fixing: Tables) -> Tables:
    return {"below": "1 mm", **fixing} if fixing.get("kind") == "hook" else fixing


def _group(group: Tables, ids: list[str]) -> Tables:
    """As a grid, about twice as wide as high, before it is told how the frames sit."""
    if "arrangement" not in group:
        return {"arrangement": "grid", "across": max(1, round((2 * len(ids)) ** 0.5)), **group}
    there = [name for side in SIDES for name in group.get(side, [])]
    rest = [name for name in ids if name not in there]
    around = {"below": rest} if rest and "below" not in group else {}
    listed: dict[str, Tables] = {
        "grid": {"across": 1}, "rows": {"rows": [ids]}, "columns": {"columns": [ids]}, "around": around,
    }  # fmt: skip
    filled: Tables = {**listed.get(group["arrangement"], {}), **group}
    height = group.get("height")
    if height is not None and not set(height) - {"above"}:
        filled["height"] = {**height, "by": "1 m"} if height else {"centre": "1 m"}
    return filled
