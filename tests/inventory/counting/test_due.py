"""Yards not counted for longer than the keeper's interval are due. Six months as a start: judgement, no source."""

import datetime as dt

import pytest

from apiary.models import Keeper
from inventory import counting, ledger
from inventory.counting.due import months_before
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


@pytest.mark.parametrize(
    ("day", "months", "before"),
    [
        ((2025, 8, 31), 6, (2025, 2, 28)),
        ((2024, 8, 31), 6, (2024, 2, 29)),
        ((2025, 1, 15), 1, (2024, 12, 15)),
        ((2025, 12, 31), 12, (2024, 12, 31)),
        ((2025, 3, 31), -6, (2025, 9, 30)),
        ((2025, 6, 30), -6, (2025, 12, 30)),
    ],
)
def test_months_are_counted_on_the_calendar(day, months, before):
    assert months_before(dt.date(*day), months) == dt.date(*before)


def names(on):
    return [(row.yard.code, row.words) for row in counting.due(on=on)]


def test_a_store_with_gear_never_counted_is_due_an_empty_one_is_not(shed, yard):
    assert names(DAY) == [("shed", "never counted")]


def test_a_posted_count_puts_it_off_by_the_interval(shed, counted):
    makers.make_keeper()
    counting.post_count(counted(shed, {"stand": 10}), who=None)
    assert names(dt.date(2025, 9, 30)) == []
    assert names(dt.date(2025, 10, 1)) == [("shed", "last counted on 1 April 2025")]
    assert counting.due(on=dt.date(2025, 10, 1))[0].due_since == dt.date(2025, 10, 1)


def test_the_interval_is_the_keepers(shed, counted):
    makers.make_keeper()
    Keeper.objects.update(count_every_months=1)
    counting.post_count(counted(shed, {"stand": 10}), who=None)
    assert names(dt.date(2025, 4, 30)) == []
    assert names(dt.date(2025, 5, 1)) == [("shed", "last counted on 1 April 2025")]


def test_a_draft_or_a_count_taken_back_puts_nothing_off(shed, counted):
    act = counting.post_count(counted(shed, {"stand": 10}), who=None)
    ledger.reverse(act=act, who=None, key="r")
    counted(shed, {"stand": 9})
    assert names(DAY) == [("shed", "never counted")]


def test_never_counted_comes_first_then_the_longest_ago(shed, yard, counted):
    makers.put(yard, {"stand": 1})
    mill = makers.make_yard("mill")
    makers.put(mill, {"stand": 1})
    counting.post_count(counted(mill, {"stand": 1}), who=None)
    counting.post_count(counted(shed, {"stand": 10}, day=DAY + dt.timedelta(days=1)), who=None)
    assert [code for code, _ in names(dt.date(2026, 4, 1))] == ["fern-hollow", "mill", "shed"]
