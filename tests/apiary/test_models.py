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
