"""Gear found beyond the book asks where it came from, until an act or a word answers."""

import datetime as dt

import pytest

from inventory import counting, ledger, stock
from inventory.errors import (
    AlreadyAnswered,
    BeforeOrdered,
    ColonyNotStarted,
    KeyTaken,
    NotEnough,
    NotFoundGear,
    NotOnOrder,
    SamePlace,
    UnknownRecipe,
)
from inventory.gear import Gear
from inventory.ledger import Line
from inventory.models import FoundAnswer
from inventory.orders import owed_lines
from inventory.proof import prove
from tests import makers

pytestmark = pytest.mark.django_db
DAY, STAND, BOX = makers.DAY, Gear(part="stand"), Gear(part="box-medium-10")


def find(place, target, part="stand", number=4, day=DAY):
    """So many pieces are hauled on from a store that has none by the book; gives the found movement."""
    act = ledger.move(
        source=place,
        target=target,
        lines=[Line(part, number)],
        day=day,
        who=None,
        key=makers.fresh_key(),
        found_allowed=True,
    )
    return act.movements.get(found=True)


@pytest.fixture
def movement(shed, yard):
    return find(yard, shed)


def test_found_gear_asks_and_settled_it_asks_no_more(movement):
    assert list(counting.unanswered()) == [movement]
    said = counting.settle(movement, who=None, note="never booked")
    assert (said.how, said.act) == (FoundAnswer.How.MISSING, None)
    assert not counting.unanswered().exists()
    assert list(stock.found_gear()) == [movement]


def test_it_came_from_another_store_and_is_found_no_more(movement, shed, yard):
    mill = makers.make_yard("mill")
    makers.put(mill, {"stand": 6})
    owned = stock.owned()[STAND]
    act = counting.answer(movement, who=None, key="k", came_from=mill)
    assert stock.on_hand(mill)[STAND] == 2
    assert stock.on_hand(shed)[STAND] == 14 and STAND not in stock.on_hand(yard)
    assert stock.owned()[STAND] == owned - 4
    assert act.day == DAY and {row.reason for row in act.movements.all()} == {"moved", "found"}
    assert not counting.unanswered().exists()


def test_a_resend_answers_once(movement):
    mill = makers.make_yard("mill")
    makers.put(mill, {"stand": 6})
    acts = {counting.answer(movement, who=None, key="k", came_from=mill) for _ in range(2)}
    assert len(acts) == 1 and FoundAnswer.objects.count() == 1
    with pytest.raises(AlreadyAnswered):
        counting.answer(movement, who=None, key="other", came_from=mill)
    with pytest.raises(AlreadyAnswered):
        counting.settle(movement, who=None)


def test_a_key_of_another_act_is_refused(movement, shed):
    ledger.scrap(at=shed, lines=[Line("stand", 1)], day=DAY, who=None, key="k")
    with pytest.raises(KeyTaken):
        counting.answer(movement, who=None, key="k", came_from=shed)


def test_reversed_the_answer_asks_again_and_may_be_given_anew(movement):
    mill = makers.make_yard("mill")
    makers.put(mill, {"stand": 6})
    act = counting.answer(movement, who=None, key="k", came_from=mill)
    ledger.reverse(act=act, who=None, key="r")
    assert stock.on_hand(mill)[STAND] == 6
    assert list(counting.unanswered()) == [movement]
    counting.answer(movement, who=None, key="k2", came_from=mill)
    assert not counting.unanswered().exists()


def test_the_act_that_found_it_reversed_asks_nothing(movement):
    ledger.reverse(act=movement.act, who=None, key="r")
    assert not counting.unanswered().exists()
    with pytest.raises(NotFoundGear):
        counting.settle(movement, who=None)


def test_a_movement_that_was_not_found_is_refused(movement):
    other = movement.act.movements.get(found=False)
    with pytest.raises(NotFoundGear):
        counting.settle(other, who=None)


def test_it_came_off_a_hive_living_or_dead(shed, yard, colony):
    movement = find(yard, shed, part="box-medium-10", number=1)
    act = counting.answer(movement, who=None, key="k", came_from=colony)
    assert BOX not in stock.on_hand(colony)
    assert act.movements.filter(reason="taken off a colony").exists()
    dead = makers.make_dead_colony(tag="F-09", yard=yard, gear=True, ended=DAY)
    movement = find(yard, shed, part="box-deep-10", number=2)
    act = counting.answer(movement, who=None, key="k2", came_from=dead)
    assert act.movements.filter(reason="salvaged").exists()


def test_a_place_that_has_fewer_by_the_book_is_refused_and_nothing_is_written(movement):
    mill = makers.make_yard("mill")
    makers.put(mill, {"stand": 3})
    with pytest.raises(NotEnough):
        counting.answer(movement, who=None, key="k", came_from=mill)
    assert list(counting.unanswered()) == [movement] and not FoundAnswer.objects.exists()


def test_it_cannot_have_come_from_where_it_was_found_nor_from_a_hive_not_yet_there(movement, yard):
    with pytest.raises(SamePlace):
        counting.answer(movement, who=None, key="k", came_from=yard)
    young = makers.make_colony("F-07", yard=yard, day=DAY + dt.timedelta(days=1))
    with pytest.raises(ColonyNotStarted):
        counting.answer(movement, who=None, key="k", came_from=young)


def test_it_came_on_an_order_and_is_owed_no_more(movement):
    order = makers.make_order({makers.make_offer({"stand": 2}): 3}, placed_on=DAY - dt.timedelta(days=9))
    counting.answer(movement, who=None, key="k", order=order)
    assert [row.owed for row in owed_lines(order)] == [2]
    assert not counting.unanswered().exists()


def test_an_order_without_it_or_placed_later_is_refused(movement):
    other = makers.make_order({makers.make_offer({"cover-10": 2}): 3}, placed_on=DAY)
    with pytest.raises(NotOnOrder):
        counting.answer(movement, who=None, key="k", order=other)
    late = makers.make_order({makers.make_offer({"stand": 2}): 3}, placed_on=DAY + dt.timedelta(days=1))
    with pytest.raises(BeforeOrdered):
        counting.answer(movement, who=None, key="k", order=late)


def test_it_was_assembled_there_and_the_pieces_are_gone(shed, yard):
    makers.put(yard, {"box-medium-10-flat": 6})
    movement = find(yard, shed, part="box-medium-10", number=4)
    counting.answer(movement, who=None, key="k", recipe="assemble-box-medium-10")
    assert stock.on_hand(yard)[Gear(part="box-medium-10-flat")] == 2
    with pytest.raises(UnknownRecipe):
        again = find(yard, shed, part="box-medium-10", number=1)
        counting.answer(again, who=None, key="k2", recipe="assemble-frame-deep")


def test_recipes_are_named_while_the_book_has_all_they_take_there(shed, yard):
    movement = find(yard, shed, part="frame-medium-foundation", number=5)
    assert counting.makings_of(movement) == []
    makers.put(yard, {"frame-medium": 5, "foundation-medium": 4})
    assert counting.makings_of(movement) == []
    makers.put(yard, {"foundation-medium": 1})
    (making,) = [one for one in counting.makings_of(movement) if one.recipe == "fit-foundation-medium"]
    taken = {(code, pieces) for code, _, pieces in making.takes}
    assert {("frame-medium", 5), ("foundation-medium", 5)} <= taken


def test_nothing_is_assembled_on_a_hive_nor_into_gear_to_mend(shed, yard, colony):
    on_hive = ledger.place(
        source=shed,
        colony=colony,
        lines=[Line("box-medium-10", 1)],
        day=DAY,
        who=None,
        key="p",
        found_allowed=True,
    ).movements.filter(found=True)
    assert all(counting.makings_of(row) == [] for row in on_hive.filter(target__kind="colony"))
    makers.put(yard, {"box-medium-10-flat": 6})
    broken = ledger.move(
        source=yard,
        target=shed,
        lines=[Line("box-medium-10", 2, "to mend")],
        day=DAY,
        who=None,
        key="m",
        found_allowed=True,
    ).movements.get(found=True)
    assert counting.makings_of(broken) == []
    with pytest.raises(UnknownRecipe):
        counting.answer(broken, who=None, key="k", recipe="assemble-box-medium-10")


def test_the_books_are_proven_after_answers_of_each_kind(shed, yard, colony):
    order = makers.make_order({makers.make_offer({"stand": 4}): 1}, placed_on=DAY)
    counting.answer(find(yard, shed), who=None, key="o", order=order)
    found = find(yard, shed, part="box-medium-10", number=1)
    counting.answer(found, who=None, key="c", came_from=colony)
    ledger.reverse(
        act=counting.answer(find(yard, shed), who=None, key="s", came_from=shed), who=None, key="r"
    )
    assert prove().faults == ()
