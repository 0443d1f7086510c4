"""The chain of digests, rebuilt by hand with hashlib from the fields as documented."""

import hashlib
import json

import pytest

from inventory import ledger
from inventory.ledger import Line
from inventory.ledger.digest import digest_of
from inventory.models import BookSeal, Movement
from tests import makers

pytestmark = pytest.mark.django_db


@pytest.fixture
def rows(db):
    yard = makers.make_yard()
    makers.put(makers.make_shed(), {"stand": 5, "box-deep-10": 3})
    ledger.move(
        source=makers.make_shed(), target=yard, lines=[Line("stand", 2)], day=makers.DAY, who=None, key="é"
    )
    return list(Movement.objects.order_by("id"))


def test_each_row_carries_the_digest_of_its_fields_and_of_the_row_before(rows):
    before = ""
    for row in rows:
        ends = [[end.kind, end.yard_id, end.colony_id] for end in (row.source, row.target)]
        act = row.act
        stamp = act.recorded_at.strftime("%Y-%m-%dT%H:%M:%S.%f+00:00")
        fields = [before, act.key, act.name, act.day.isoformat(), None, act.note, None, stamp]
        fields += [row.day.isoformat(), row.part_id, "sound", row.quantity, *ends[0], *ends[1]]
        fields += [row.reason, None, False]
        assert row.digest == hashlib.sha256(json.dumps(fields).encode("ascii")).hexdigest()
        before = row.digest


def test_the_seal_knows_the_length_and_the_last_digest(rows):
    seal = BookSeal.objects.get()
    assert (seal.length, seal.head) == (3, rows[-1].digest)


@pytest.mark.parametrize(
    ("field", "value"), [("quantity", 4), ("condition", "to mend"), ("reason", "lost"), ("found", True)]
)
def test_a_row_with_another_value_has_another_digest(rows, field, value):
    row = rows[-1]
    setattr(row, field, value)
    assert digest_of(row, rows[-2].digest) != row.digest


def test_a_row_after_another_row_has_another_digest(rows):
    assert digest_of(rows[-1], rows[0].digest) != rows[-1].digest
