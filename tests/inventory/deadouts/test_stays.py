"""Where each colony stood and when."""

import datetime as dt

import pytest

from apiary import colonies
from inventory.deadouts.stays import stays_until, yard_at
from tests import makers

pytestmark = pytest.mark.django_db
UNTIL = dt.date(2025, 12, 1)
MOVED = dt.date(2025, 6, 1)


def test_a_colony_moved_has_two_stays_that_meet(yard):
    far = makers.make_yard("long-acre")
    bees = makers.make_colony("F-1", yard=yard)
    colonies.move(bees, yard=far, day=MOVED, who=None)
    stays = stays_until(UNTIL)[bees.pk]
    assert [(stay.yard, stay.first, stay.last) for stay in stays] == [
        (yard, makers.DAY, MOVED),
        (far, MOVED, UNTIL),
    ]
    assert [yard_at(stays, day) for day in (makers.DAY, MOVED - dt.timedelta(days=1), MOVED)] == [
        yard,
        yard,
        far,
    ]


def test_a_stay_ends_with_the_colony(yard):
    bees = makers.make_dead_colony(tag="F-1", yard=yard, ended=MOVED)
    assert [stay.last for stay in stays_until(UNTIL)[bees.pk]] == [MOVED]


def test_what_starts_later_is_not_known_yet(yard):
    bees = makers.make_colony("F-1", yard=yard)
    assert bees.pk not in stays_until(makers.DAY - dt.timedelta(days=1))


def test_before_it_started_a_colony_counts_to_its_first_yard(yard):
    bees = makers.make_colony("F-1", yard=yard)
    assert yard_at(stays_until(UNTIL)[bees.pk], dt.date(2024, 1, 1)) == yard
