"""What the files of the package import, read from their source without running it."""

from __future__ import annotations

import ast
import sys
from functools import cache
from pathlib import Path

import templates_gen

PACKAGE = Path(templates_gen.__file__).parent
NAME = PACKAGE.name


def module_name(path: Path) -> str:
    """`templates_gen/drawing/png.py` is `drawing.png`; a package's own file is its name, and the outermost is ""."""
    parts = path.relative_to(PACKAGE).with_suffix("").parts
    return ".".join(part for part in parts if part != "__init__")


FILES = {module_name(path): path for path in sorted(PACKAGE.rglob("*.py"))}


@cache
def tree(module: str) -> ast.Module:
    return ast.parse(FILES[module].read_text(encoding="utf-8"))


def is_for_types(node: ast.AST) -> bool:
    return isinstance(node, ast.If) and isinstance(node.test, ast.Name) and node.test.id == "TYPE_CHECKING"


@cache
def imported(module: str) -> frozenset[str]:
    """The full names that a file imports when it runs, within its functions too; not those only for types."""
    found: set[str] = set()
    waiting: list[ast.AST] = [tree(module)]
    while waiting:
        node = waiting.pop()
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{module}: a relative import"
            found |= {f"{node.module}.{alias.name}" for alias in node.names}
        waiting += node.orelse if is_for_types(node) else ast.iter_child_nodes(node)
    return frozenset(found)


@cache
def neighbours(module: str) -> frozenset[str]:
    """The files of the package that a file imports from."""
    own = {name.removeprefix(NAME).lstrip(".") for name in imported(module) if name.split(".")[0] == NAME}
    return frozenset(file_of(name) for name in own) - {module}


def file_of(name: str) -> str:
    """The file that a dotted name of the package lives in: the longest part of it that is one."""
    parts = name.split(".")
    return next(known for length in range(len(parts), -1, -1) if (known := ".".join(parts[:length])) in FILES)


def foreign(module: str) -> frozenset[str]:
    """The libraries that a file imports: what is neither in the package nor comes with Python."""
    tops = {name.split(".")[0] for name in imported(module)}
    return frozenset(tops - {NAME} - set(sys.stdlib_module_names))
