"""What the program plans, draws and tells of a few jobs, held against how it was when somebody last looked at it.

A record is not right by itself: other tests say what has to hold.  It shows whatever moved, and where to.
"""

from __future__ import annotations

import pytest

from tests.recorded.records import FILES, FOLDER, RECORDS, as_kept, kept, moved, place, same


@pytest.mark.parametrize("title", RECORDS)
def test_nothing_moved_that_was_not_meant_to(title: str, sheets_searched_little: int) -> None:
    changed = moved(kept(title), as_kept(title, sheets_searched_little))
    assert changed == [], "if all of it was meant: python -m tests.recorded, and read its diff"


def test_every_record_is_asked_for() -> None:
    assert set(FOLDER.glob("*.txt")) == set(map(place, FILES))


def test_only_the_last_digit_of_a_number_may_differ() -> None:
    was = 'label: "3.5 in" 10.00 -20.125'
    assert same(was, 'label: "3.5 in" 10.01 -20.126')
    for now in ('"3.6 in" 10.00 -20.125', '"3.5 in" 10.02 -20.125', '"3.5 in" 10.00 20.125', '"3.5 in" 10.0 -20.125'):
        assert not same(was, f"label: {now}")
    assert moved(["a", "b"], ["a", "c", "d"]) == ["- b\n+ c", "2 lines were, 3 are now"]
