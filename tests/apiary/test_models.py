"""Questions of the models: who lives in a yard on a day, what a yard's year yields."""

import datetime as dt

import pytest

from apiary.models import Colony, Yard
from tests.makers import DAY, make_colony, make_dead_colony, make_window, make_yard

pytestmark = pytest.mark.django_db


def living(on):
    return {yard.code: yard.living for yard in Yard.objects.with_colonies(on=on)}


def test_living_are_those_started_and_not_ended_by_the_evening():
    yard = make_yard("fern")
    make_colony(yard=yard)
    make_dead_colony(yard=yard, ended=dt.date(2025, 6, 1))
    assert living(DAY - dt.timedelta(days=1)) == {"fern": 0}
    assert living(dt.date(2025, 5, 31)) == {"fern": 2}
    assert living(dt.date(2025, 6, 1)) == {"fern": 1}
    assert Colony.objects.alive(on=dt.date(2025, 6, 1)).count() == 1


def test_flow_and_colonies_together_count_neither_twice():
    yard = make_yard("fern")
    for number in range(3):
        make_colony(yard=yard)
        make_window(yard, name=f"flow {number}", gain_lb=20)
    row = Yard.objects.with_colonies(on=DAY).with_flow().get()
    assert (row.living, row.gain_lb) == (3, 60)


def test_a_yard_without_windows_has_no_flow():
    make_yard()
    assert Yard.objects.with_flow().get().gain_lb is None


def test_a_balance_tells_who_stood_came_left_and_died_between_two_evenings():
    """By the surveys' rule: united and sold colonies are no losses, dead and lost ones are."""
    yard, since, until = make_yard(), dt.date(2025, 4, 30), dt.date(2025, 7, 31)
    for why in (Colony.Ended.DIED, Colony.Ended.LOST, Colony.Ended.UNITED, Colony.Ended.SOLD):
        make_dead_colony(yard=yard, ended=dt.date(2025, 6, 1), why=why)
    make_dead_colony(yard=yard, ended=dt.date(2025, 4, 20))  # before
    make_dead_colony(yard=yard, ended=dt.date(2025, 9, 1))  # after: still standing
    make_colony(yard=yard, day=dt.date(2025, 5, 20), origin="split")
    balance = Colony.objects.balance(since=since, until=until)
    assert (balance.start, balance.increase, balance.removed, balance.end) == (5, 1, 2, 2)
    assert (balance.at_risk, balance.dead) == (4, 2)
    assert float(balance.loss) == 0.5
