"""Running balances from a day on, against a plain count over all movements."""

import datetime as dt

import pytest

from inventory import ledger
from inventory.gear import Condition, Reason
from inventory.ledger import Line
from inventory.ledger.balances import balances_from, booked, net_changes
from inventory.ledger.posting import Entry
from inventory.locations import outside, store_of
from inventory.models import Location
from tests import makers

pytestmark = pytest.mark.django_db


def day(number):
    return dt.date(2025, 5, number)


@pytest.fixture
def key(db):
    shed, yard = makers.make_shed(), makers.make_yard()
    makers.put(shed, {"stand": 10}, day=day(1))
    for number, quantity in ((3, 4), (7, 5), (9, 1)):
        ledger.move(
            source=shed,
            target=yard,
            lines=[Line("stand", quantity)],
            day=day(number),
            who=None,
            key=f"k{number}",
        )
    return (store_of(shed), makers.part("stand"), Condition.SOUND)


def test_the_balance_of_each_later_day_is_given(key):
    assert balances_from(day(2), {key})[key] == [(day(2), 10), (day(3), 6), (day(7), 1), (day(9), 0)]


def test_a_day_with_movements_of_its_own_is_told_by_its_evening(key):
    assert balances_from(day(7), {key})[key] == [(day(7), 1), (day(9), 0)]


def test_before_anything_was_there_the_balance_is_zero(key):
    assert balances_from(dt.date(2025, 4, 30), {key})[key][0] == (dt.date(2025, 4, 30), 0)


def test_a_key_without_movements_is_zero(key):
    other = (key[0], makers.part("sugar"), Condition.HELD)
    assert booked({other}) == {other: 0}
    assert balances_from(day(1), {other}) == {other: [(day(1), 0)]}


def test_entries_that_cancel_out_change_nothing_and_outside_ends_are_not_counted(key):
    store, part, condition = key
    bench = outside(Location.Kind.BENCH)
    there = Entry(part=part, quantity=3, source=store, target=bench, reason=Reason.MOVED)
    back = Entry(part=part, quantity=3, source=bench, target=store, reason=Reason.MOVED)
    assert net_changes([there, back]) == {(store, part, condition): 0}
