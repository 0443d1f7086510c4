"""Gear on its way between stores and colonies."""

import datetime as dt

import pytest

from inventory import ledger, stock
from inventory.errors import ColonyEnded, NotAColony, NotAStore, NotEnough, SamePlace
from inventory.gear import Condition, Gear
from inventory.ledger import Line
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
WHO = {"day": DAY, "who": None}


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"box-medium-10": 6, "comb-medium-honey": 48})
    return shed


def test_a_load_of_many_lines_is_one_act(shed):
    yard = makers.make_yard()
    lines = [Line("box-medium-10", 4), Line("comb-medium-honey", 32)]
    act = ledger.move(source=shed, target=yard, lines=lines, key="k", **WHO)
    assert act.movements.count() == 2
    assert stock.on_hand(yard) == {Gear(part="box-medium-10"): 4, Gear(part="comb-medium-honey"): 32}


def test_supers_go_on_and_come_off_again(shed):
    colony = makers.make_colony(yard=shed)
    lines = [Line("box-medium-10", 1), Line("comb-medium-honey", 8)]
    before = stock.on_hand(shed)
    ledger.place(source=shed, colony=colony, lines=lines, key="on", **WHO)
    assert stock.on_colony(colony) == {Gear(part="box-medium-10"): 1, Gear(part="comb-medium-honey"): 8}
    ledger.take_off(colony=colony, target=shed, lines=lines, key="off", **WHO)
    assert (stock.on_colony(colony), stock.on_hand(shed)) == ({}, before)


def test_gear_held_back_may_be_carried_to_another_store(shed):
    yard = makers.make_yard()
    makers.put(shed, {"floor-10": 1}, condition="held back")
    ledger.move(source=shed, target=yard, lines=[Line("floor-10", 1, "held back")], key="k", **WHO)
    assert stock.on_hand(yard) == {Gear(part="floor-10", condition=Condition.HELD): 1}


def test_a_move_to_where_it_lies_is_refused(shed):
    with pytest.raises(SamePlace, match="Shed"):
        ledger.move(source=shed, target=shed, lines=[Line("box-medium-10", 1)], key="k", **WHO)


def test_moves_are_between_stores_only(shed):
    with pytest.raises(NotAStore):
        ledger.move(
            source=shed, target=makers.make_colony(), lines=[Line("box-medium-10", 1)], key="k", **WHO
        )


def test_gear_is_placed_on_colonies_only(shed):
    with pytest.raises(NotAColony):
        ledger.place(source=shed, colony=makers.make_yard(), lines=[Line("stand", 1)], key="k", **WHO)


def test_more_cannot_come_off_than_the_book_has_on_the_colony(shed):
    with pytest.raises(NotEnough) as refused:
        ledger.take_off(
            colony=makers.make_colony("B7"), target=shed, lines=[Line("box-medium-10", 1)], key="k", **WHO
        )
    assert (refused.value.booked, str(refused.value.location)) == (0, "B7")


def test_what_comes_off_beyond_the_book_is_found_where_that_is_allowed(shed):
    colony = makers.make_colony()
    act = ledger.take_off(
        colony=colony, target=shed, lines=[Line("box-medium-10", 1)], key="k", found_allowed=True, **WHO
    )
    assert [(row.quantity, row.found) for row in act.movements.all()] == [(1, True), (1, False)]
    assert stock.on_hand(shed)[Gear(part="box-medium-10")] == 7


def test_gear_placed_beyond_the_book_is_found_where_that_is_allowed(shed):
    colony = makers.make_colony()
    ledger.place(
        source=shed, colony=colony, lines=[Line("box-medium-10", 7)], key="k", found_allowed=True, **WHO
    )
    assert stock.on_colony(colony) == {Gear(part="box-medium-10"): 7}
    assert [row.quantity for row in stock.found_gear()] == [1]


def test_a_dead_colony_is_salvaged_not_stripped(shed):
    colony = makers.make_dead_colony(gear=True)
    with pytest.raises(ColonyEnded, match="salvage"):
        ledger.take_off(
            colony=colony,
            target=shed,
            lines=[Line("box-deep-10", 1)],
            day=dt.date(2025, 6, 2),
            who=None,
            key="k",
        )
