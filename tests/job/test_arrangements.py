"""A kind of arrangement is one record: what it takes are fields of the group, and their words."""

import pytest

from templates_gen.job.arrangements import ARRANGEMENTS, ArrangementKind
from templates_gen.job.tables.field import fields_of
from templates_gen.job.tables.group import GroupTable

FIELDS = fields_of(GroupTable)


@pytest.mark.parametrize("kind", ARRANGEMENTS.values(), ids=ARRANGEMENTS)
def test_a_kind_takes_fields_and_words_that_a_group_has(kind: ArrangementKind):
    assert {*kind.takes} <= {*FIELDS}
    assert {*kind.align} <= {*FIELDS["align"].choices} and {*kind.set} <= {*FIELDS["set"].choices}
    assert "centre" in kind.align and "centre" in kind.set  # what is usual of both
    assert kind.line in ("row", "column", "")


def test_what_people_say_means_one_kind_only():
    said = [word for kind in ARRANGEMENTS.values() for word in (kind.name, *kind.said)]
    assert len(said) == len({*said})
