"""The hives an act is done to: locked, alive, counted; all that is wrong told together."""

import datetime as dt

import pytest
from django.utils import timezone

from apiary import colonies
from inventory import ledger
from inventory.errors import ColonyEnded, NothingGiven, NotWhole, Several
from inventory.ledger import Line
from inventory.models import Location
from inventory.yardwork.hives import hives_told, sound_gear_on, standing
from tests import makers

pytestmark = pytest.mark.django_db
DAY, LATER = makers.DAY, dt.date(2025, 5, 1)


@pytest.fixture
def creek(db):
    return makers.make_yard("creek")


def told(numbers):
    return hives_told(numbers, day=LATER, act="super up", what="boxes")


def test_hives_come_in_the_order_told_and_zeros_are_left_out(creek):
    a, b, c = (makers.make_colony(tag, yard=creek) for tag in "abc")
    assert [(hive.colony, hive.number) for hive in told({c: 1, a: 2, b: 0})] == [(c, 1), (a, 2)]
    assert Location.objects.filter(kind="colony").count() == 2


def test_nothing_told_is_refused(creek):
    with pytest.raises(NothingGiven):
        told({makers.make_colony(yard=creek): 0})
    with pytest.raises(NothingGiven):
        told({})


@pytest.mark.parametrize("number", [-1, 1.5, "2", True])
def test_a_number_of_boxes_is_whole(creek, number):
    with pytest.raises(NotWhole):
        told({makers.make_colony(yard=creek): number})


def test_all_colonies_that_are_no_more_are_named(creek):
    dead = [makers.make_dead_colony(tag=tag, yard=creek, ended=DAY) for tag in ("x", "y")]
    with pytest.raises(ColonyEnded):
        told({dead[0]: 1, makers.make_colony(yard=creek): 1})
    with pytest.raises(Several, match=r"x ended.*y ended"):
        told(dict.fromkeys(dead, 1))


def test_who_stands_in_a_yard_is_asked_of_the_day(creek):
    stays, goes = makers.make_colony("a", yard=creek), makers.make_colony("b", yard=creek)
    makers.make_dead_colony(tag="c", yard=creek, ended=DAY)
    hill = makers.make_yard("hill")
    colonies.move(goes, yard=hill, day=LATER, who=None)
    assert standing(creek, on=DAY) == [stays, goes]
    assert standing(creek, on=LATER) == [stays]
    today = timezone.localdate() + dt.timedelta(days=400)
    assert standing(creek, on=today) == [stays]


def test_gear_on_hives_is_asked_of_the_day_and_counts_sound_pieces(creek):
    colony, bare = makers.make_colony(yard=creek), makers.make_colony(yard=creek)
    makers.put(colony, {"box-medium-10": 1})
    makers.put(colony, {"box-medium-10": 1}, condition="to mend")
    makers.put(creek, {"box-medium-10": 1})
    line = [Line("box-medium-10", 1)]
    ledger.place(source=creek, colony=colony, lines=line, day=LATER, who=None, key="p")
    box = makers.part("box-medium-10")
    assert sound_gear_on([colony, bare]) == {colony.pk: {box: 2}, bare.pk: {}}
    assert sound_gear_on([colony, bare], as_of=DAY) == {colony.pk: {box: 1}, bare.pk: {}}
