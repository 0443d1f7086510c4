"""What This week asks about counts and found gear, of whom."""

import pytest

from apiary.rights import HELPER, READER
from inventory import counting
from inventory.templatetags.counting import counting_waits, counts_waiting
from tests import makers

pytestmark = pytest.mark.django_db
TODAY = makers.DAY


@pytest.fixture
def keeper():
    return makers.make_person("keeper", is_superuser=True)


@pytest.fixture
def yards():
    yards = makers.make_shed(), makers.make_yard("fern-hollow")
    for yard in yards:
        makers.put(yard, {"stand": 3})
    return yards


def names(user):
    return [(str(row["name"]), row["sub"], row["word"]) for row in counts_waiting(user, TODAY)]


def test_yards_due_are_asked_for_and_a_draft_stands_for_its_yard(keeper, yards):
    counting.begin(location=yards[0], day=TODAY, who=None, key="k")
    assert names(keeper) == [
        ("Shed", "a count of 1 April is a draft", "Look at it"),
        ("Fern Hollow", "never counted", "Count"),
    ]


def test_a_helper_is_asked_about_their_yards_and_a_reader_about_none(yards):
    helper = makers.make_person("helper", role=HELPER, yards=[yards[1]])
    counting.begin(location=yards[0], day=TODAY, who=None, key="k")
    assert [name for name, _, _ in names(helper)] == ["Fern Hollow"]
    assert names(makers.make_person("reader", role=READER, yards=[yards[1]])) == []


def test_nothing_waits_where_nothing_is(keeper, db):
    waits = counting_waits({"user": keeper}, TODAY)
    assert (list(waits["found"]), waits["found_number"], waits["counts"]) == ([], 0, [])
