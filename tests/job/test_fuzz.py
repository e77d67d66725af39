"""A bounded run of odd files: each is taken, or refused in words.  `tests/bench/fuzz.py` runs as long as asked."""

import random
from collections import Counter

import pytest

from templates_gen.base.errors import MOST_SAID, InputError
from templates_gen.job.reading.files import parse_toml
from tests.fuzz_targets import TARGETS
from tests.fuzzing import BASES, document

TIMES = {"lengths": 1500, "readings": 300, "frames.csv": 300, "template": 24, "job bytes": 120, "job file": 120}


@pytest.mark.parametrize("name", TARGETS)
def test_odd_files_are_taken_or_refused_in_words(name, tmp_path, hardly_searched):
    counts = Counter(
        TARGETS[name](random.Random(f"{name} {number}"), tmp_path) for number in range(TIMES.get(name, 200))
    )
    # some of both, so that this is no test of one message
    assert min(counts[True], counts[False]) >= 5, counts


def test_what_is_mutated_is_a_job_before_it_is():
    assert all(parse_toml(document(base).encode(), "") == base for base in BASES)


def test_a_message_neither_runs_on_nor_garbles_the_terminal():
    said = str(InputError("x.toml", "found \x1b[31m\x00\u202e\udcff" + "y" * 9000, "z" * 9000))
    assert len(said) <= 2 * MOST_SAID + 40
    assert said.startswith(r"x.toml: found \x1b[31m\x00\u202e\udcffyyy") and said.endswith("zzz")
