"""What is found of what was told so far, and stays so whatever is answered to the questions that are still to come.

The interview is ended twice, by answers that differ as far as they can: what is found of both jobs rests on neither.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from templates_gen.base.errors import TemplatesError
from templates_gen.checks import NOTE, Finding, find
from templates_gen.cli.interview.question import Question, Tables
from templates_gen.cli.interview.questions import interview
from templates_gen.cli.interview.session import Interview
from templates_gen.job.reading.building import build_job

Ways = Mapping[str, tuple[str, str]]

ENDINGS: Ways = {
    "wall.width": ("10 m", "14 m"), "wall.height": ("3 m", "5 m"),
    "feature.left": ("0 m", "4 m"), "feature.bottom": ("0 m", "2 m"),
    "feature.width": ("10 cm", "30 cm"), "feature.height": ("10 cm", "30 cm"),
    "frame.width": ("20 cm", "30 cm"), "frame.height": ("20 cm", "30 cm"),
    "frame.weight": ("", "500 g"), "frame.drop": ("", "3 cm"),
    "hanger.left": ("3 cm", "4 cm"), "hanger.right": ("3 cm", "4 cm"), "hanger.screw_below": ("1 cm", "2 cm"),
    "hanger.drop_left": ("", "3 cm"), "hanger.drop_right": ("", "3 cm"),
    "hanger.apart": ("5 cm", "6 cm"), "hanger.drop_at_two": ("", "4 cm"), "more": ("no", "no"),
    "fixing.kind": ("", "hook"), "fixing.below": ("2 cm", "3 cm"), "fixing.rating": ("", "200 kg"),
    "group.arrangement": ("row", "column"), "group.gap": ("", "30 cm"), "group.across": ("1", "2"),
    "group.height": ("eye", "bottom"), "height.centre": ("1 m", "2 m"), "height.top": ("1 m", "2 m"),
    "height.bottom": ("1 m", "2 m"), "height.by": ("10 cm", "1 m"), "height.above_nosings": ("", "2 m"),
    "wall.build": ("", "masonry"), "wall.wiring": ("", "none"), "studs.first": ("", "20 cm"),
    "stairs.run": ("25 cm", "30 cm"), "stairs.rise": ("18 cm", "15 cm"),
    "nosing.across": ("0 m", "2 m"), "nosing.up": ("0 m", "1 m"),
}  # fmt: skip
"""Two answers to each question that has no choice or default, and to those that much depends on: sizes that raise no
doubt by themselves.  Our own, no source."""


def found_so_far(state: Interview) -> tuple[Finding, ...]:
    """The stops and warns of which it is certain, about frames that were told; none where places have to be found.

    Before there is a frame only what is doubtful of the wall: the rest tells of a stand-in.
    """
    told = {str(frame["id"]) for frame in state.tables.get("frame", []) if "id" in frame}
    if state.tables.get("group", {}).get("arrangement") == "salon":
        return ()
    one, two = (_found(state, way) for way in (0, 1))
    certain = [finding for finding in one if finding in two and told.issuperset(finding.about)]
    return tuple(finding for finding in certain if told or finding.confirm)


def _found(state: Interview, way: int) -> tuple[Finding, ...]:
    import templates_gen as tg

    try:
        plan = tg.plan_wall(build_job(_ended(state, way), Path("job.toml")))
    except TemplatesError:  # what is still to be told cannot be just anything
        return ()
    return tuple(finding for finding in find(plan) if finding.level != NOTE)


def _ended(state: Interview, way: int) -> Tables:
    """The tables of the job when every question to come is answered in one way."""
    tables: Tables = {}
    asking = interview(tables, state.file or "job.toml")
    question = next(asking)
    answers = list(state.answers)
    try:
        while True:
            question = asking.send(answers.pop(0) if answers else _answer(question, way))
    except StopIteration:
        pass
    tables.pop("file")
    if sure := [value for _, value in state.confirmed]:
        tables["job"]["confirmed"] = sure
    return tables


def _answer(question: Question, way: int) -> str:
    usual = question.default or ("" if question.open else (*question.choices, question.example, "1")[0])
    answer = ENDINGS.get(question.key, (usual, usual))[way]
    return answer if not question.choices or answer in question.choices else usual
