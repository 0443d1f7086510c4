"""A count makes the book equal what was counted."""

import datetime as dt

import pytest

from inventory import ledger, stock
from inventory.errors import ColonyNotStarted, DoesNotFit, HeldCountedFree, NotEnough, NotWhole
from inventory.gear import Condition, Gear
from inventory.ledger import Line
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"stand": 10, "floor-10": 4})
    return shed


def correct(ground, *counted, day=DAY, key="k"):
    return ledger.correct(location=ground, counted=counted, day=day, who=None, key=key)


def test_the_book_becomes_what_was_counted_and_what_was_not_counted_stays(shed):
    act = correct(shed, Line("stand", 7), Line("stand", 2, "to mend"), Line("cover-10", 0))
    assert stock.on_hand(shed) == {
        Gear(part="floor-10"): 4,
        Gear(part="stand"): 7,
        Gear(part="stand", condition=Condition.TO_MEND): 2,
    }
    assert {row.reason for row in act.movements.all()} == {"corrected"}


def test_zero_is_a_count(shed):
    correct(shed, Line("stand", 0))
    assert stock.on_hand(shed) == {Gear(part="floor-10"): 4}


def test_a_count_that_agrees_is_kept_as_an_act_without_movements(shed):
    act = correct(shed, Line("stand", 10))
    assert act.movements.count() == 0
    assert correct(shed, Line("stand", 10)) == act


def test_a_count_is_a_claim_about_its_day(shed):
    yard = makers.make_yard()
    later = DAY + dt.timedelta(days=9)
    ledger.move(source=shed, target=yard, lines=[Line("stand", 4)], day=later, who=None, key="m")
    correct(shed, Line("stand", 9), day=DAY + dt.timedelta(days=1))
    assert stock.on_hand(shed)[Gear(part="stand")] == 5


def test_a_count_that_leaves_too_little_for_a_later_day_is_refused(shed):
    yard = makers.make_yard()
    later = DAY + dt.timedelta(days=9)
    ledger.move(source=shed, target=yard, lines=[Line("stand", 4)], day=later, who=None, key="m")
    with pytest.raises(NotEnough) as refused:
        correct(shed, Line("stand", 3))
    assert refused.value.day == later


def test_a_colony_is_counted_too_but_only_what_can_stand_on_it_is_added(shed):
    colony = makers.make_colony(gear=True)
    correct(colony, Line("box-deep-10", 3))
    assert stock.on_colony(colony)[Gear(part="box-deep-10")] == 3
    with pytest.raises(DoesNotFit):
        correct(colony, Line("box-deep-8", 1), key="other")


def test_a_colony_is_not_counted_before_it_started(shed):
    with pytest.raises(ColonyNotStarted):
        correct(makers.make_colony(), Line("box-deep-10", 1), day=DAY - dt.timedelta(days=1))


def test_a_count_below_zero_is_refused(shed):
    with pytest.raises(NotWhole):
        correct(shed, Line("stand", -1))


def test_a_count_lets_no_held_pieces_go_as_sound(shed):
    makers.put(shed, {"stand": 3}, condition="held back")
    with pytest.raises(HeldCountedFree, match=r"3 fewer held back and 2 more .* inspector's written word"):
        correct(shed, Line("stand", 0, "held back"), Line("stand", 12))
    assert stock.on_hand(shed)[Gear(part="stand", condition=Condition.HELD)] == 3


def test_held_pieces_missing_and_sound_ones_of_another_part_more_are_counted(shed):
    makers.put(shed, {"stand": 3}, condition="held back")
    correct(shed, Line("stand", 2, "held back"), Line("floor-10", 6))
    assert stock.on_hand(shed)[Gear(part="stand", condition=Condition.HELD)] == 2
