"""Sums come out the same on every Python, to the last bit, and so do sheets and places that are found by them."""

import builtins
import sys

import pytest

from templates_gen.base.adding import added
from tests.running import run

DONE = (
    ("template", "kiln-tiles", "--cover", "linked"),
    ("template", "lock-keepers"),
    ("options", "fern-prints"),
    ("proof", "paste-papers"),
)
"""What a run does, and with which sample: rows, stairs, places that are found."""


def test_adds_one_after_the_other():
    in_order = 0.1 + 0.1 + 0.1 + 0.1 + 0.1 + 0.1 + 0.1 + 0.1 + 0.1 + 0.1
    assert in_order != 1.0  # The Python Tutorial, 15 "Floating-Point Arithmetic: Issues and Limitations"
    assert added([0.1] * 10) == in_order
    assert added([]) == 0.0
    assert added(iter([1j, 2.0])) == 2.0 + 1j


@pytest.mark.parametrize(
    ("command", "name", "more"), [(c, n, more) for c, n, *more in DONE], ids=[" ".join(done[:2]) for done in DONE]
)
def test_the_program_adds_no_fractions_by_sum(command, name, more, tmp_path, monkeypatch):
    plain, odd = builtins.sum, []

    def watched(values, /, start=0):
        total = plain(values, start)
        caller = sys._getframe(1).f_code
        if "templates_gen" in caller.co_filename and isinstance(total, float | complex):
            odd.append(caller.co_qualname)
        return total

    monkeypatch.setattr(builtins, "sum", watched)
    run("start", "--sample", name, tmp_path / "job.toml")
    done = run(command, tmp_path / "job.toml", "-o", tmp_path / "job.pdf", *more)
    assert done.code == 0, done.err
    assert odd == [], "`sum` rounds otherwise from Python 3.12 on: take templates_gen.base.adding.added"
