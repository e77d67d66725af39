"""Numbers in function bodies: each should have a name at its module's top, with its source beside it.

`python -m tests.test_numbers` lists those that have none.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

from tests.importing import PACKAGE

PLAIN = {0, 1, 2, 3, 0.5, 4, 10, 100}
"""Plain arithmetic: nothing, one, halves, counts of corners and sides, decimals and per cent."""

ANGLES = {90, 180, 360}
"""Quarter, half and whole turns."""

TOP = 1e-3
"""Below this a number keeps a rounding out of a comparison, and says nothing of walls or paper."""

MOST = 20
"""Numbers without a name that are left: a new one may only take the place of another.  To be lowered, never raised."""


def unnamed(tree: ast.Module) -> Iterator[tuple[int, float]]:
    """The numbers in function bodies that are more than plain arithmetic, with their lines.

    Defaults of parameters have a name, the parameter's; places in a sequence and formats are no measures.
    """
    for function in ast.walk(tree):
        if not isinstance(function, ast.FunctionDef):
            continue
        skipped = {id(node) for part in _no_measures(function) for node in ast.walk(part)}
        for statement in function.body:
            for node in ast.walk(statement):
                if isinstance(node, ast.Constant) and type(node.value) in (int, float) and id(node) not in skipped:
                    if abs(node.value) >= TOP and node.value not in PLAIN | ANGLES:
                        yield node.lineno, node.value


def _no_measures(function: ast.FunctionDef) -> Iterator[ast.AST]:
    for node in ast.walk(function):
        if isinstance(node, ast.Subscript):
            yield node.slice
        elif isinstance(node, ast.FormattedValue) and node.format_spec:
            yield node.format_spec
        elif isinstance(node, ast.FunctionDef) and node is not function:
            yield node


def counted() -> dict[Path, list[tuple[int, float]]]:
    """Every file that has some, with these."""
    files = (
        (path, sorted(set(unnamed(ast.parse(path.read_text(encoding="utf-8")))))) for path in PACKAGE.rglob("*.py")
    )
    return {path: found for path, found in files if found}


def test_no_more_numbers_in_function_bodies_are_without_a_name() -> None:
    assert sum(map(len, counted().values())) <= MOST, "name it at its file's top: python -m tests.test_numbers"


def unsourced(text: str) -> Iterator[str]:
    """The numbers at a file's top with nothing told of them: beside, above, or below them all."""
    lines, body = text.splitlines(), ast.parse(text).body
    for at, node in enumerate(body):
        if not isinstance(node, SETS) or not any(_number(one) for one in ast.walk(node)):
            continue
        below = next((one for one in body[at:] if not isinstance(one, SETS)), None)
        told = isinstance(below, ast.Expr) and isinstance(below.value, ast.Constant)
        beside = lines[max(0, node.lineno - 2) : node.end_lineno]
        if not told and not any("# " in line and "# fmt" not in line for line in beside):
            yield lines[node.lineno - 1]


SETS = (ast.Assign, ast.AnnAssign)


def _number(node: ast.AST) -> bool:
    return isinstance(node, ast.Constant) and type(node.value) in (int, float) and node.value not in PLAIN


def test_every_number_at_a_files_top_has_something_told_of_it() -> None:
    found = {path.name: bare for path in PACKAGE.rglob("*.py") if (bare := [*unsourced(path.read_text("utf-8"))])}
    assert found == {}, "say below or beside it what it is, and its source, or that there is none"
    assert [*unsourced("FAR = 7.5\nNEAR = 2\n\ndef f(): ...\n")] == ["FAR = 7.5"]
    assert [*unsourced('A = 7.5\nB = 8.5\n"""mm.  Our own."""\nC = 9  # our own\n')] == []


def test_a_number_without_a_name_is_seen_and_plain_arithmetic_is_not() -> None:
    tree = ast.parse("LIMIT = 7.5\ndef f(x, far=9.0):\n    return x[12] / 2 + 1e-9 + 7.25 + 100 * LIMIT + 6.0\n")
    assert sorted(unnamed(tree)) == [(3, 6.0), (3, 7.25)]


def main() -> None:
    for path, found in sorted(counted().items(), key=lambda one: -len(one[1])):
        print(
            f"{len(found):4} {path.relative_to(PACKAGE)}: {', '.join(f'{number:g} ({line})' for line, number in found)}"
        )


if __name__ == "__main__":
    main()
