"""Sound jobs and slips that someone else wrote: how many sound ones are doubted, how many slips are noticed.

Run by hand: `python tests/bench/unseen_jobs.py LIST.py`.  The list stays with its writer, who has not read the doubts,
and is no part of the tests: jobs that the doubts were changed for measure nothing any more.  It has SOUND, a name for
each job's tables; ODD, the names of those that are odd on purpose; and SLIPS, tuples of the name of a sound job, what a
careful person would notice (None for nothing), and the job's tables with the slip in them.
"""

from __future__ import annotations

import copy
import runpy
import sys
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).parents[2]))

from templates_gen.arranging.plan import plan_wall
from templates_gen.base.errors import TemplatesError
from templates_gen.checks import NOTE, Finding, find
from templates_gen.job.reading.building import build_job

PLACE = Path("job.toml")


def found(raw: dict[str, Any]) -> list[Finding] | str:
    """The stops and warns of a job, or why it is refused."""
    try:
        return [each for each in find(plan_wall(build_job(copy.deepcopy(raw), PLACE))) if each.level != NOTE]
    except TemplatesError as error:
        return str(error)


def said(findings: list[Finding] | str) -> set[tuple[str, tuple[str, ...]]]:
    """What is said, by rule and frames, and by its field where it is a doubt."""
    if isinstance(findings, str):
        return {("refused", (findings,))}
    return {(each.rule, each.about + tuple(each.confirm)) for each in findings}


def doubted(findings: list[Finding] | str) -> list[str]:
    """The doubts about a job that is sound, and its refusal; other warns are about safety and say nothing of slips."""
    return [findings] if isinstance(findings, str) else [each.text for each in findings if each.confirm]


def share(part: int, whole: int) -> str:
    return f"{part} of {whole} ({100 * part / max(whole, 1):.1f} %)"


def main() -> None:
    names = runpy.run_path(sys.argv[1])
    sound, odd, slips = names["SOUND"], set(names["ODD"]), names["SLIPS"]
    before = {name: found(raw) for name, raw in sound.items()}
    doubts = {name: texts for name, findings in before.items() if (texts := doubted(findings))}
    for name, texts in doubts.items():
        print(f"doubted, {'odd' if name in odd else 'ordinary'} {name}: {' / '.join(texts)}")
    through = [(name, words) for name, words, raw in slips if not said(found(raw)) - said(before[name])]
    for name, words in through:
        print(f"through, {name}: {words or 'nobody could notice'}")
    seen = [words for _, words, _ in slips if words]
    print("sound jobs doubted:", share(len(doubts), len(sound)))
    print("  of the ordinary:", share(len(doubts.keys() - odd), len(sound.keys() - odd)))
    print("  of the odd:", share(len(doubts.keys() & odd), len(odd)))
    print("slips noticed:", share(len(slips) - len(through), len(slips)))
    print("  of those a careful person would notice:", share(len(seen) - sum(bool(w) for _, w in through), len(seen)))


if __name__ == "__main__":
    main()
