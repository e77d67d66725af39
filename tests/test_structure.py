"""How the package is built: imports point one way, one file knows each library, and every name is explained."""

import ast
import subprocess
import sys
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

from tests.importing import FILES, foreign, imported, neighbours, tree

ROOMS = (
    "base", "job", "hanging", "drawing", "arranging", "printer", "tiling", "checks", "tolerance", "documents", "photo",
    "desk", "cli",
)  # fmt: skip
"""The folders from the ground up: each imports from those before it, and from no other."""

MOST_ROOMS, MOST_ARROWS = 15, 60
"""How many folders there may be, and how many pairs of them of which one imports from the other.  Our own rule."""

OWNERS = {  # library: the one file that knows it
    "bidi": "drawing.pdf.direction",
    "cv2": "photo.vision",
    "PIL": "drawing.images",
    "msgspec": "base.record",
    "numpy": "photo.vision",
    "pypdf": "drawing.pdf.attached",
    "pypdfium2": "drawing.png",
    "reportlab": "drawing.pdf.engine",
    "shapely": "job.outline",
    "starlette": "desk.web",
    "tomlkit": "job.editing",
    "uvicorn": "desk.serving",
    "uharfbuzz": "drawing.pdf.engine",
}

HEAVY = (
    "reportlab", "msgspec", "shapely", "numpy", "pypdf", "uharfbuzz", "bidi", "csv", "json", "tomllib", "PIL",
    "pypdfium2", "tomlkit", "cv2", "starlette", "uvicorn",
)  # fmt: skip
LONGEST = 250  # lines of a file: our own rule


def part(module: str) -> str:
    return module.split(".")[0]


def test_imports_point_one_way_those_within_functions_too():
    graph = {module: neighbours(module) for module in FILES}
    order = list(TopologicalSorter(graph).static_order())  # raises CycleError, which names the circle
    assert set(order) == set(FILES)
    # not for want of imports: every part but the lowest imports from another
    assert sum(map(len, graph.values())) > len(FILES)


def arrows() -> set[tuple[str, str]]:
    """Every pair of rooms of which the first imports from the second."""
    pairs = {(part(module), part(other)) for module in FILES for other in neighbours(module)}
    return {(one, two) for one, two in pairs if one != two and "" not in (one, two) and "__main__" not in (one, two)}


def test_every_file_is_in_a_room():
    assert {part(module) for module in FILES} == {*ROOMS, "", "__main__"}


def test_rooms_import_only_from_those_below():
    upwards = {(one, two) for one, two in arrows() if ROOMS.index(two) > ROOMS.index(one)}
    assert upwards == set(), "(room, imports from): what both need belongs into the lower one"


def test_there_are_few_rooms_and_few_arrows_between_them():
    assert len(ROOMS) <= MOST_ROOMS
    assert len(ROOMS) < len(arrows()) <= MOST_ARROWS


def test_nothing_below_the_commands_imports_them():
    users = {module for module in FILES if any(part(other) == "cli" for other in neighbours(module))}
    assert {module for module in users if part(module) not in ("cli", "__main__")} == set()


def test_only_the_commands_and_the_program_know_click():
    users = {module for module in FILES if "click" in foreign(module)}
    assert users and {part(module) for module in users} <= {"cli", "__main__"}


@pytest.mark.parametrize("library", OWNERS)
def test_one_file_imports_each_library(library):
    assert {module for module in FILES if library in foreign(module)} == {OWNERS[library]}


def test_every_library_has_its_file():
    used = set().union(*(foreign(module) for module in FILES))
    assert used == {*OWNERS, "click"}, "name its one file in OWNERS, and why it is needed in DEVELOPERS.md"


def test_the_first_page_of_the_package_imports_nothing_of_it_before_it_is_asked_for():
    assert neighbours("") == frozenset()
    assert imported("") == {"typing.TYPE_CHECKING", "importlib.import_module", "__future__.annotations"}


def documented(module: str) -> list[ast.AST]:
    """The file itself, and its public classes, their public methods, and its public functions."""
    found: list[ast.AST] = [tree(module)]
    for node in tree(module).body:
        if is_public(node):
            found.append(node)
            found += [
                method for method in getattr(node, "body", []) if isinstance(node, ast.ClassDef) and is_public(method)
            ]
    return found


def is_public(node: ast.AST) -> bool:
    return isinstance(node, (ast.ClassDef, ast.FunctionDef)) and not node.name.startswith("_")


def explains_itself(node: ast.AST) -> bool:
    """A property of one line, or a table of the job file, whose fields are its words."""
    if isinstance(node, ast.FunctionDef):
        decorators = {getattr(item, "id", "") for item in node.decorator_list}
        return bool(decorators & {"property", "cached_property"}) and len(node.body) == 1
    return isinstance(node, ast.ClassDef) and [getattr(base, "id", "") for base in node.bases] == ["Table"]


def silent(module: str) -> list[str]:
    """What should say what it is, and does not; an empty file has nothing to say."""
    nodes = documented(module) if tree(module).body else []
    found = [node for node in nodes if not explains_itself(node) and not ast.get_docstring(node)]
    return [getattr(node, "name", "the file") for node in found]


def test_every_public_name_says_what_it_is():
    assert {module: names for module in FILES if (names := silent(module))} == {}, "give them a docstring"


def test_no_file_is_longer_than_a_few_screens():
    lines = {module: len(path.read_text(encoding="utf-8").splitlines()) for module, path in FILES.items()}
    assert {module: count for module, count in lines.items() if count > LONGEST} == {}, "divide it by its questions"


def loaded(statement: str) -> set[str]:
    """The libraries that have been imported once a statement is done, in a Python of its own."""
    code = f"import sys\ntry:\n    {statement}\nfinally:\n    print(*sys.modules, file=sys.stderr)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=30, check=False)
    names = set(done.stderr.splitlines()[-1].split())
    assert "templates_gen" in names
    return names


def test_importing_the_package_imports_nothing_heavy():
    assert loaded("import templates_gen") & {"click", *HEAVY} == set()


@pytest.mark.parametrize("arguments", ["--help", "--version", "template --help", "schedule -h", "start -h"])
def test_help_imports_nothing_but_click(arguments):
    names = loaded(f"sys.argv[1:] = {arguments.split()}; from templates_gen.__main__ import main; main()")
    assert "click" in names
    assert names & {*HEAVY, "importlib.metadata"} == set()


def test_a_schedule_imports_nothing_that_only_a_template_needs():
    job = FILES[""].parents[1] / "samples" / "fern-prints.toml"
    names = loaded(f"sys.argv[1:] = ['schedule', {str(job)!r}]; from templates_gen.__main__ import main; main()")
    assert names & {"reportlab", "pypdf", "shapely", "uharfbuzz", "numpy"} == set()
    assert "msgspec" in names


BROWSER = ("playwright", "axe_playwright_python")
"""What the extra [browser] brings, which not everybody has who runs the tests."""


def test_all_tests_can_be_collected_without_the_browser():
    for path in sorted(Path(__file__).parent.rglob("*.py")):
        atop = [node for node in ast.parse(path.read_text()).body if isinstance(node, ast.Import | ast.ImportFrom)]
        names = {name.split(".")[0] for node in atop for name in modules(node)}
        assert not names.intersection(BROWSER), path


def modules(node: ast.Import | ast.ImportFrom) -> list[str]:
    return [node.module or ""] if isinstance(node, ast.ImportFrom) else [each.name for each in node.names]
