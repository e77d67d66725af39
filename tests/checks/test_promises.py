"""Nothing the program says promises that a wall, a nail or a spot is safe."""

import ast
import re

from templates_gen.arranging.plan import plan_wall
from templates_gen.checks import find
from tests.checks.test_findings import CASES
from tests.importing import FILES

# our own list: what would be read as a promise by whoever nails
PROMISES = (
    "is safe", "are safe", "be safe", "safe to", "safely", "safe zone", "safe spot", "guarantee", "will hold",
    "can hold", "holds up to", "no cable", "no pipe", "no wire", "free of cables", "clear of cables",
    "clear of pipes", "free of pipes", "nothing behind", "without risk", "no risk", "secure enough",
    "strong enough", "is clear", "are clear", "all clear", "no danger", "not dangerous", "harmless", "cannot hit",
    "will not hit", "not in a zone", "outside the zone", "outside every zone", "free to nail", "may be nailed",
    "rely on these", "cannot fall", "will not fall", "meets the code", "complies",
)  # fmt: skip
FOUND = re.compile("|".join(rf"\b{re.escape(words)}" for words in PROMISES), re.IGNORECASE)


def shown_texts(source: str, docstrings: bool) -> list[str]:
    """The texts of a source; a run of one f-string is one text.  Docstrings only where a screen shows them."""
    tree = ast.parse(source)
    hidden = set() if docstrings else {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    texts = []
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            parts = [part.value if isinstance(part, ast.Constant) else "…" for part in node.values]
            texts.append("".join(map(str, parts)))
        elif isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in hidden:
            texts.append(node.value)
    return texts


def promises(source: str, docstrings: bool) -> list[str]:
    return [match[0] for text in shown_texts(source, docstrings) if (match := FOUND.search(" ".join(text.split())))]


def test_no_text_of_the_program_makes_a_promise():
    found = {module: promises(path.read_text(encoding="utf-8"), _is_command(module)) for module, path in FILES.items()}
    assert {module: words for module, words in found.items() if words} == {}
    assert sum(map(_is_command, FILES)) > 10


def _is_command(module: str) -> bool:
    """Its docstrings are help on the screen."""
    return module.split(".")[0] == "cli"


def test_the_search_finds_a_promise_in_a_text_and_in_parts_of_one():
    source = '"""Is safe."""\nx = "This wall is\\n safe"\ny = f"frame {x} will hold {x}"\n'
    assert set(promises(source, docstrings=False)) == {"is safe", "will hold"}
    assert "Is safe" in promises(source, docstrings=True)


def test_no_finding_makes_a_promise():
    texts = [found.text for case in CASES for found in find(plan_wall(case[3]))]
    assert len(texts) >= len(CASES)
    assert [text for text in texts if FOUND.search(text)] == []
