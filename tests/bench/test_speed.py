"""How long whole processes take, as ratios to what their imports alone cost on the same machine at the same time.

Run by hand: `pytest tests/bench`.  Pairs are interleaved, so that a busy machine slows both sides alike.
"""

from __future__ import annotations

import compileall
import os
import subprocess
import sys
import time
from collections.abc import Sequence
from pathlib import Path
from statistics import median

import templates_gen

PAIRS = 21

# how many times its bare imports a command may take; our own design, no source
HELP_REACH, TEMPLATE_REACH = 1.3, 1.6

PROGRAM = Path(sys.executable).parent / "templates-gen"

KINDS = ('"wire"', '"sawtooth"', '{ kind = "rings", left = 30, right = 30 }')


def job_of_twelve() -> str:
    """A job of twelve frames in three rows, with wires, sawteeth and rings."""
    rows = [[f"F{row * 4 + place}" for place in range(4)] for row in range(3)]
    lines = [
        '[job]\ntitle = "Twelve"\ndate = "2026-03-01"\nunit = "mm"',
        '[wall]\nname = "hall"\nwidth = 4000\nheight = 2600',
    ]
    lines += [
        f'[group]\narrangement = "rows"\nrows = {rows}\ngap = 50\nheight = {{ centre = 1450 }}',
        '[paper]\nsize = "a4"',
    ]
    for number in range(12):
        size = f"width = {250 + 15 * number}\nheight = {400 - 10 * number}"
        lines.append(f'[[frame]]\nid = "F{number}"\n{size}\ndrop = {60 + number}\nhanger = {KINDS[number % 3]}')
    return "\n".join(lines)


def seconds(command: Sequence[str | Path], folder: Path) -> float:
    """How long the command takes; it must succeed."""
    clean = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    start = time.perf_counter()
    subprocess.run(command, cwd=folder, env=clean, check=True, capture_output=True)
    return time.perf_counter() - start


def ratio(name: str, ours: Sequence[str | Path], floor: Sequence[str | Path], folder: Path) -> float:
    """The ratio of the two commands' median times, over interleaved pairs."""
    compileall.compile_dir(Path(templates_gen.__file__).parent, quiet=1)
    for command in (ours, floor):  # once for the disk
        seconds(command, folder)
    pairs = [(seconds(ours, folder), seconds(floor, folder)) for _ in range(PAIRS)]
    one, other = (median(times) for times in zip(*pairs, strict=True))
    print(f"\n{name}: {one * 1000:.1f} ms, its imports alone {other * 1000:.1f} ms, ratio {one / other:.2f}")
    return one / other


def test_help_costs_little_more_than_importing_click(tmp_path: Path) -> None:
    found = ratio("--help", [PROGRAM, "--help"], [sys.executable, "-c", "import click"], tmp_path)
    assert found <= HELP_REACH


def test_a_template_of_twelve_frames_costs_little_more_than_its_libraries(tmp_path: Path) -> None:
    (tmp_path / "twelve.toml").write_text(job_of_twelve(), encoding="utf-8")
    imports = "import click, reportlab.pdfgen.canvas, pypdf"
    command = [PROGRAM, "template", "twelve.toml", "-o", "twelve.pdf", "--force"]
    found = ratio("template, 12 frames", command, [sys.executable, "-c", imports], tmp_path)
    assert (tmp_path / "twelve.pdf").read_bytes().startswith(b"%PDF-1.7")
    assert found <= TEMPLATE_REACH
