"""Days, keys and the hives of the invented year are told the same each time."""

import datetime as dt

import pytest
from django.contrib.auth import get_user_model

from apiary.models import Colony, Yard
from inventory.gear import Condition
from planner.demo.telling import Year, all_at, sound_at

pytestmark = pytest.mark.django_db


def test_days_count_from_the_opening_and_no_key_is_told_twice(lived):
    year = told()
    assert year.day(14) == dt.date(2025, 3, 15)
    assert [year.key(), year.key()] == ["invented-2025-1", "invented-2025-2"]


def test_a_yards_room_is_its_stands_less_the_colonies_of_that_day(lived):
    year = told()
    for yard in year.yards:
        assert year.room(yard, 0) == yard.stands - len(year.living(0, yard=yard))
        assert year.room(yard, 259) >= 0
    assert all(colony.mother_id is None for colony in year.living(100, new=False))


def test_sound_gear_of_a_store_is_all_of_it_less_what_is_to_mend_or_held_back(lived):
    shed = Yard.objects.get(is_shed=True)
    lines = {(line.part, line.condition): line.quantity for line in all_at(shed)}
    assert sound_at(shed) == {part: n for (part, word), n in lines.items() if word == Condition.SOUND}
    assert any(word != Condition.SOUND for _, word in lines)


def told():
    who = get_user_model().objects.get(username="demo-keeper")
    assert Colony.objects.exists()
    return Year(who=who, opened_on=dt.date(2025, 3, 1), seed=1)
