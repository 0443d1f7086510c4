"""A sum over several hives is shared out by what the book has on each."""

import datetime as dt

import pytest

from inventory import ledger
from inventory.gear import Condition
from inventory.ledger import Line
from inventory.locations import place_of, store_of
from inventory.yardwork.sharing import booked_at, carried, rest, suspected, taken, worked_later
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


@pytest.fixture
def hives(db):
    yard = makers.make_yard("creek")
    hives = [makers.make_colony(tag, yard=yard) for tag in ("A1", "A2")]
    makers.put(hives[0], {"box-deep-10": 1})
    makers.put(hives[1], {"box-deep-10": 2, "cover-10": 1})
    return [place_of(hive) for hive in hives]


def told(shares):
    return [(str(place), line.part.code, line.quantity) for place, line in shares]


def test_places_give_in_their_order_and_the_lack_falls_to_one(hives):
    booked = booked_at(hives, DAY)
    box = makers.part("box-deep-10")
    shares = taken([Line(box, 5)], booked, beyond=hives[0])
    assert told(shares) == [("A1", "box-deep-10", 1), ("A2", "box-deep-10", 2), ("A1", "box-deep-10", 2)]
    assert told(rest(booked)) == [("A2", "cover-10", 1)]


def test_only_what_is_not_gone_later_can_be_taken(hives):
    later = DAY + dt.timedelta(days=4)
    colony = hives[1].colony
    lines = [Line("box-deep-10", 1)]
    ledger.take_off(colony=colony, target=colony.yard, lines=lines, day=later, who=None, key="off")
    box = makers.part("box-deep-10")
    assert booked_at(hives, DAY)[hives[1]][box, Condition.SOUND] == 1
    assert [problem.later_day for problem in worked_later(hives, DAY, "sold")] == [later]
    assert list(worked_later(hives, later, "sold")) == []


def test_shares_become_entries_to_one_target(hives):
    shed = store_of(makers.make_shed())
    entries = carried(rest(booked_at(hives, DAY)), shed, "moved")
    assert {entry.target for entry in entries} == {shed}
    assert sum(entry.quantity for entry in entries) == 4


def test_gear_held_back_makes_a_hive_suspected(hives):
    assert list(suspected(hives, "sold")) == []
    lines = [Line("cover-10", 1)]
    ledger.mark(at=hives[1], lines=lines, becomes="held back", day=DAY, who=None, key="mark")
    assert ["A2" in str(problem) for problem in suspected(hives, "sold")] == [True]
