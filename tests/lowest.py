"""The suite with the lowest of everything: each dependency in the lowest version that pyproject.toml allows.

`python tests/lowest.py` makes an environment of its own and runs all tests in it; what is given besides goes to pytest.
It fails when a lower bound is not true, and when one cannot be installed with this Python.
"""

from __future__ import annotations

import re
import subprocess
import sys
import tempfile
import tomllib
import venv
from pathlib import Path

ROOT = Path(__file__).parent.parent

BOUND = re.compile(r"([A-Za-z0-9-]+)\s*(?:>=|==)\s*([0-9][0-9.]*)(?:,<[0-9.]+)?")
"""A dependency as this project writes it: a name, its lower bound or only version, and perhaps an upper one."""


def lowest() -> list[str]:
    """Each dependency, those of the tests too, held to its lowest version.  Raises ValueError for one without."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    extras = [name for more in project["optional-dependencies"].values() for name in more]
    own = f"{project['name']}["  # one extra takes another's, which has its own bounds
    named = [*project["dependencies"], *(name for name in extras if not name.startswith(own))]
    found = {name: BOUND.fullmatch(name.partition(";")[0].strip()) for name in named}
    if loose := [name for name, bound in found.items() if bound is None]:
        raise ValueError(f"no lower bound: {', '.join(loose)}")
    return [f"{bound[1]}=={bound[2]}" for bound in found.values() if bound]


def main() -> int:
    """Install them and run the suite; its exit code."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        venv.create(folder / "venv", with_pip=True)
        python = folder / "venv" / ("Scripts" if sys.platform == "win32" else "bin") / "python"
        held = folder / "lowest.txt"
        held.write_text("\n".join(lowest()) + "\n", encoding="utf-8")
        for step in (["pip", "install", "--quiet", "-e", f"{ROOT}[test]", "-c", str(held)], ["pip", "freeze"],
                     ["pytest", "-q", *sys.argv[1:]]):  # fmt: skip
            code = subprocess.run([python, "-m", *step], cwd=ROOT, check=False).returncode
            if code:
                return code
    return 0


if __name__ == "__main__":
    sys.exit(main())
