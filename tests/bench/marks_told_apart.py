"""How much more every mark looks like its own kind than like any other, on every sheet of every job that is cut.

python tests/bench/marks_told_apart.py [JOB...]
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from itertools import product
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from templates_gen.base.record import replace
from templates_gen.job.paper_sizes import own_paper
from tests.documents.test_lines_told_apart import margins
from tests.documents.test_marks_told_apart import kinds, places, shares, worst
from tests.looking import HALVES, WHOLE
from tests.made import SAMPLE_NAMES, Everything, asked, make


def jobs() -> Iterator[tuple[str, str, str, bool]]:
    """Every sample on both papers, with every cover, with and without photo tags."""
    return product(SAMPLE_NAMES, ("a4", "letter"), ("marks", "linked", "nails", "all"), (False, True))


def told(name: str, done: Everything) -> None:
    """Prints the margins of one job."""
    shapes = kinds()
    pair = {kind: shapes[kind] for kind in ("nail", "registration")}
    found = list(places(done))
    all_of_it = min(worst(looks, kind, shapes, WHOLE) for kind, _, looks in found)
    both = [(kind, looks) for kind, _, looks in found if kind in pair]
    nail = min(worst(looks, kind, pair, WHOLE) for kind, looks in both)
    half = min(worst(looks, kind, pair, part) for kind, looks in both for part in HALVES.values())
    print(f"{name}: {len(found)} marks; margin {all_of_it:.2f}, nail and registration {nail:.2f}, half {half:.2f}")
    for kind, own, other, what in shares(done):
        print(f"  {kind}: every one {own:.2f} like its kind, nothing else more than {other:.2f} ({what})")
    by_kind: dict[str, list[tuple[float, str, str, str]]] = {}
    for one in margins(done):
        by_kind.setdefault(one[1], []).append(one)
    for kind, some in by_kind.items():
        margin, _, other, where = min(some)
        print(f"  {kind}, {len(some)} places: margin {margin:.2f} ({other}, {where})", flush=True)


def main() -> None:
    for sample, size, cover, photo in jobs():
        if not sys.argv[1:] or sample in sys.argv[1:]:
            job = asked(sample)
            paper = replace(own_paper(job, size), cover=cover, photo=photo, trim="cut")
            told(f"{sample}, {size}, {cover}{', photo' * photo}", make(replace(job, paper=paper)))


if __name__ == "__main__":
    main()
