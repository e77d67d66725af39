"""How much more every mark looks like its own kind than like any other, on every sheet of every job that is cut.

python tests/bench/marks_told_apart.py [JOB...]
"""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from tests.documents.test_lines_told_apart import margins
from tests.documents.test_marks_told_apart import kinds, places, shares, worst
from tests.looking import HALVES, WHOLE
from tests.made import NAMES, made


def main() -> None:
    shapes = kinds()
    pair = {kind: shapes[kind] for kind in ("nail", "registration")}
    for name in sys.argv[1:] or [name for name in NAMES if made(name).job.paper.trim == "cut"]:
        found = list(places(name))
        all_of_it = min(worst(looks, kind, shapes, WHOLE) for kind, _, looks in found)
        told = [(kind, looks) for kind, _, looks in found if kind in pair]
        nail = min(worst(looks, kind, pair, WHOLE) for kind, looks in told)
        half = min(worst(looks, kind, pair, part) for kind, looks in told for part in HALVES.values())
        print(f"{name}: {len(found)} marks; margin {all_of_it:.2f}, nail and registration {nail:.2f}, half {half:.2f}")
        for kind, own, other, what in shares(name, 1):
            print(f"  {kind}: every one {own:.2f} like its kind, nothing else more than {other:.2f} ({what})")
        for kind, some in lines_by_kind(name).items():
            margin, _, other, where = min(some)
            print(f"  {kind}, {len(some)} places: margin {margin:.2f} ({other}, {where})")


def lines_by_kind(name: str) -> dict[str, list[tuple[float, str, str, str]]]:
    """How much more every line of a job looks like its own kind than like any other, by its kind."""
    found: dict[str, list[tuple[float, str, str, str]]] = {}
    for one in margins(name):
        found.setdefault(one[1], []).append(one)
    return found


if __name__ == "__main__":
    main()
