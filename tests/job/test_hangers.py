"""A kind of hanger is one record: nothing else of the package asks which kind a hanger is."""

import ast
from collections.abc import Iterator

import pytest

from templates_gen.base.geometry import Rect
from templates_gen.documents.measuring.back_view import Back, back_view, lettered
from templates_gen.documents.measuring.fields import COLUMNS, measures
from templates_gen.job.hangers import HANGERS, HangerKind, Layout
from templates_gen.job.model import Hanger
from templates_gen.job.tables.contents import field_of
from templates_gen.job.tables.hanger import HangerTable
from tests.importing import FILES, tree
from tests.jobs import frame

EVERY = pytest.mark.parametrize("kind", HANGERS.values(), ids=HANGERS)


def compared(node: ast.AST) -> Iterator[str]:
    """Every text that a file compares with, matches, or looks something up by in a table of its own."""
    for inner in ast.walk(node):
        parts: list[ast.AST | None] = []
        if isinstance(inner, ast.Compare):
            parts = [inner.left, *inner.comparators]
        elif isinstance(inner, ast.Dict):
            parts = list(inner.keys)
        elif isinstance(inner, ast.MatchValue):
            parts = [inner.value]
        for part in parts:
            for leaf in ast.walk(part) if part is not None and not isinstance(part, ast.Call) else ():
                if isinstance(leaf, ast.Constant) and isinstance(leaf.value, str):
                    yield leaf.value


def test_only_the_records_know_the_names_of_the_kinds():
    asked = {module: {*compared(tree(module))} & {*HANGERS} for module in FILES if module != "job.hangers"}
    assert {module: names for module, names in asked.items() if names} == {}


@pytest.mark.parametrize(
    "source",
    ['hanger.kind == "rings"', 'kind in ("cleat", "wire")', 'TABLE = {"wire": 1}', 'match kind:\n case "rings": pass'],
)
def test_such_a_question_would_be_found(source):
    assert {*compared(ast.parse(source))} & {*HANGERS}


@EVERY
def test_a_kind_takes_what_it_needs_and_what_start_asks_for(kind: HangerKind):
    assert {*kind.needs} <= {*kind.takes} <= {*HangerTable.__struct_fields__} - {"kind"}
    assert all(field_of(name).words.ask for name in kind.asks)
    own = {name.removeprefix("hanger.") for name in kind.asks if name.startswith("hanger.")}
    assert {*kind.needs} <= own <= {*kind.takes}
    assert "frame.drop" in kind.asks or kind.own_drops  # a drop is asked for in any case


@EVERY
def test_what_is_measured_are_fields_that_the_kind_takes(kind: HangerKind):
    for name, _ in (*kind.measured, *kind.on_two):
        assert name in COLUMNS and name in (*kind.takes, "drop")


@EVERY
def test_every_kind_is_drawn_with_an_arrow_for_each_length(kind: HangerKind):
    sides = {name: 30.0 for name in kind.needs}
    own = frame(drop=40.0, hanger=Hanger(kind=kind.name, **sides))
    letters = lettered(measures(own, "mm"))
    plain = [item for item in back_view(Back(own, Rect(0.0, 0.0, 60.0, 75.0), 5), letters) if hasattr(item, "text")]
    assert sorted(item.text for item in plain) == sorted(letters.values())
    assert (kind.layout is Layout.PAIR) == bool(kind.strokes), "strokes are for a PAIR; other layouts draw their own"


def test_what_people_say_means_one_kind_only():
    said = [word for kind in HANGERS.values() for word in (kind.name, *kind.said)]
    assert len(said) == len({*said})
