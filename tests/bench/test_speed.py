"""What whole processes take, as ratios to what their imports alone cost on the same machine at the same time.

Run by hand: `pytest -s tests/bench/test_speed.py`.  Processor time, medians of interleaved runs.

The reach was: `--help` and `--version` at most 1.1 times `import click`, and a template of twelve frames (49 sheets) at
most 1.7 times its imports.  Measured with CPython 3.11 on a busy machine: `--help` 1.0, `--version` 0.95.  The template
of the whole group, `--cover all`, which needs no search, takes 1.6 to 1.9 times everything it imports, the program's
own files too, and 2.7 to 3.1 times its libraries alone (seven runs, little else on): it is not surely 1.7 times.  No
part stands out of what it takes beyond its imports: the sheets, what to expect, the first pages with their maps, every
mark and letter in its place, writing, the other ways.  The template as it is without `--cover`, sheets of every mark,
is searched for fewer minutes, which takes a second and a half for a quarter of an hour less of taping.

Run as a script, `python -m tests.bench.test_speed OTHER [runs]`, it tells the same command's time here and with the
package in the folder OTHER, another revision's, for 12, 60 and 200 frames.
"""

from __future__ import annotations

import sys
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from tests.bench.processes import importing, medians

RUNS = 21

# how many times its bare imports a command may take; our own design, no source
HELP_MOST, VERSION_MOST, TEMPLATE_MOST, LIBRARIES_MOST = 1.2, 1.1, 2.1, 3.5

LOOP = "total = 0.0\nfor at in range(5_000_000):\n    total = max(total, at * 0.5 - total)"
"""Five million turns of plain Python, nothing of the program: as fast or slow as the machine is just then."""

SEARCHED_RUNS, SEARCH_MOST = 3, 1.1
"""How many times that loop the search for the sheets of twelve frames may take.  It was 0.76 to 0.98 times, 0.9 in the
middle of five, with 14 steps a sheet; a fifth more is allowed, as for 17 steps.  It stands for the two seconds that
somebody waits: it is as long on a machine that runs the loop in 1.8 s.  Our own trials, CPython 3.11, much else on."""

PROGRAM = Path(sys.executable).parent / "templates-gen"

LIBRARIES = "click, msgspec, tomllib, reportlab.pdfbase.pdfdoc, reportlab.pdfbase.ttfonts"
EVERYTHING = f"{LIBRARIES}, templates_gen.__main__, templates_gen.job.reading.building, templates_gen.documents.making"

ROOT = Path(__file__).parents[2]
RUN = "import sys; sys.path[0] = {!r}; from templates_gen.__main__ import main; main()"
"""A Python that runs the package of a folder."""

KINDS = ('"wire"', '"sawtooth"', '{ kind = "rings", left = 30, right = 30 }')


SIZES = ((3, 4), (5, 12), (5, 40))
"""Rows, and frames in each, that two revisions are compared by."""


def job_of(down: int, across: int) -> str:
    """A job of so many rows of frames of twelve sizes, with wires, sawteeth and rings."""
    rows = [[f"F{row * across + place}" for place in range(across)] for row in range(down)]
    wide, high = max(4000, 500 * across), max(2600, 500 * down + 700)
    lines = [
        '[job]\ntitle = "Twelve"\ndate = "2026-03-01"\nunit = "mm"',
        f'[wall]\nname = "hall"\nwidth = {wide}\nheight = {high}',
    ]
    lines += [
        f'[group]\narrangement = "rows"\nrows = {rows}\ngap = 50\nheight = {{ centre = {high // 2 + 150} }}',
        '[paper]\nsize = "a4"',
    ]
    for number in range(down * across):
        of = number % 12
        size = f"width = {250 + 15 * of}\nheight = {400 - 10 * of}"
        lines.append(f'[[frame]]\nid = "F{number}"\n{size}\ndrop = {60 + of}\nhanger = {KINDS[number % 3]}')
    return "\n".join(lines)


def job_of_twelve() -> str:
    """A job of twelve frames in three rows, with wires, sawteeth and rings."""
    return job_of(*SIZES[0])


def against(other: Path, runs: int) -> None:
    """Print what a template takes here and with the package in another folder (s), by the number of frames."""
    for down, across in SIZES:
        with TemporaryDirectory() as folder:
            job, pdf = Path(folder) / "job.toml", Path(folder) / "out.pdf"
            job.write_text(job_of(down, across), encoding="utf-8")
            words = ["template", job, "-o", pdf, "--force", "--cover", "all"]
            there, here = medians(
                [[sys.executable, "-c", RUN.format(str(tree)), *words] for tree in (other, ROOT)], runs
            )
        print(f"{down * across} frames: there {there:.3f} s, here {here:.3f} s, {here / there:.2f} x", flush=True)


def test_help_and_version_cost_little_more_than_importing_click() -> None:
    told, version, floor = medians([[PROGRAM, "--help"], [PROGRAM, "--version"], importing("click")], RUNS)
    print(f"\n--help {told / floor:.2f} x, --version {version / floor:.2f} x import click, {1000 * floor:.1f} ms")
    assert told <= HELP_MOST * floor
    assert version <= VERSION_MOST * floor


@pytest.fixture
def command(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[str | Path]:
    """What writes the template of twelve frames, but for its cover."""
    monkeypatch.chdir(tmp_path)
    Path("twelve.toml").write_text(job_of_twelve(), encoding="utf-8")
    return [PROGRAM, "template", "twelve.toml", "-o", "twelve.pdf", "--force", "--cover"]


def test_a_template_of_twelve_frames_costs_a_few_times_its_imports(command: list[str | Path]) -> None:
    commands = [[*command, "all"], importing(EVERYTHING), importing(LIBRARIES)]
    ours, everything, libraries = medians(commands, RUNS)
    assert Path("twelve.pdf").read_bytes().startswith(b"%PDF-1.7")
    print(f"\ntemplate, 12 frames {1000 * ours:.1f} ms")
    print(f"all its imports {1000 * everything:.1f} ms, {ours / everything:.2f} x")
    print(f"its libraries alone {1000 * libraries:.1f} ms, {ours / libraries:.2f} x")
    assert ours <= TEMPLATE_MOST * everything
    assert ours <= LIBRARIES_MOST * libraries


def test_the_search_for_fewer_minutes_takes_about_as_long_as_a_fixed_loop(command: list[str | Path]) -> None:
    commands = [[*command, "all"], [*command, "marks"], [sys.executable, "-c", LOOP]]
    ours, searched, loop = medians(commands, SEARCHED_RUNS)
    print(f"\nsheets of every mark, searched for fewer minutes: {searched - ours:.2f} s more, {searched:.2f} s in all")
    print(f"the loop {loop:.2f} s, {(searched - ours) / loop:.2f} x")
    assert searched - ours <= SEARCH_MOST * loop


if __name__ == "__main__":
    against(Path(sys.argv[1]).resolve(), int(sys.argv[2]) if len(sys.argv) > 2 else 3)
