"""The questions against plain counting, now and on past evenings."""

import datetime as dt

import pytest

from apiary import colonies
from inventory import ledger, stock
from inventory.gear import Condition, Gear
from inventory.ledger import Arrival, Line
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
MAY = dt.date(2025, 5, 1)
JUNE = dt.date(2025, 6, 1)
STAND = Gear(part="stand")
BOX = Gear(part="box-medium-10")


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"stand": 10, "box-medium-10": 6})
    return shed


@pytest.fixture
def creek(shed):
    """Four stands went to Creek on 1 May, one colony there got a box on 1 June."""
    creek = makers.make_yard("creek")
    lines = [Line("stand", 4), Line("box-medium-10", 3)]
    ledger.move(source=shed, target=creek, lines=lines, day=MAY, who=None, key="m")
    colony = makers.make_colony("A1", yard=creek)
    ledger.place(source=creek, colony=colony, lines=[Line("box-medium-10", 1)], day=JUNE, who=None, key="p")
    return creek


@pytest.fixture
def colony(creek):
    return creek.colonies.get()


def test_on_hand_now_and_on_a_past_evening(shed, creek):
    assert stock.on_hand(shed) == {BOX: 3, STAND: 6}
    assert stock.on_hand(shed, as_of=MAY - dt.timedelta(days=1)) == {BOX: 6, STAND: 10}
    assert stock.on_hand(creek, as_of=MAY) == {BOX: 3, STAND: 4}
    assert stock.on_hand(creek) == {BOX: 2, STAND: 4}


def test_nothing_is_told_of_a_place_where_nothing_lies(shed):
    assert stock.on_hand(makers.make_yard()) == {}
    assert stock.on_hand(shed, as_of=dt.date(2020, 1, 1)) == {}


def test_on_a_colony(colony):
    assert stock.on_colony(colony) == {BOX: 1}
    assert stock.on_colony(colony, as_of=MAY) == {}
    assert stock.on_colonies() == {colony.pk: {BOX: 1}}
    assert stock.on_colonies(as_of=MAY) == {}


def test_in_a_yard_are_its_store_and_the_colonies_that_stood_there(creek, colony):
    assert stock.in_yard(creek) == {BOX: 3, STAND: 4}
    hill = makers.make_yard("hill")
    colonies.move(colony, yard=hill, day=dt.date(2025, 6, 10), who=None)
    assert stock.in_yard(creek) == {BOX: 2, STAND: 4}
    assert stock.in_yard(hill) == {BOX: 1}
    assert stock.in_yard(creek, as_of=JUNE) == {BOX: 3, STAND: 4}
    assert stock.in_yard(hill, as_of=JUNE) == {}


def test_what_is_owned_is_all_inside_whatever_lies_outside(shed, creek):
    ledger.scrap(at=shed, lines=[Line("stand", 1)], day=JUNE, who=None, key="s")
    ledger.mark(at=shed, lines=[Line("stand", 2)], becomes="to mend", day=JUNE, who=None, key="t")
    mend = Gear(part="stand", condition=Condition.TO_MEND)
    assert stock.owned() == {BOX: 6, STAND: 7, mend: 2}
    assert stock.owned(as_of=MAY) == {BOX: 6, STAND: 10}


def test_by_place_tells_part_by_store_and_by_the_colonies_of_a_yard(creek):
    rows = [(row.part, row.yard, row.on_colonies, row.quantity) for row in stock.by_place()]
    assert rows == [
        ("box-medium-10", "creek", False, 2),
        ("box-medium-10", "creek", True, 1),
        ("box-medium-10", "shed", False, 3),
        ("stand", "creek", False, 4),
        ("stand", "shed", False, 6),
    ]
    box = stock.by_place()[0]
    assert (box.name, box.kind, box.yard_name) == ("medium box, 10 frames", "box", "Creek")
    assert box.value_cents == 2 * makers.part("box-medium-10").list_price_cents


def test_by_place_on_a_past_evening(creek):
    rows = [(row.part, row.yard, row.quantity) for row in stock.by_place(as_of=MAY)]
    assert ("box-medium-10", "creek", 3) in rows
    assert not any(row.on_colonies for row in stock.by_place(as_of=MAY))


def test_now_and_the_evening_of_the_last_act_are_the_same(creek):
    assert stock.by_place() == stock.by_place(as_of=JUNE)
    assert stock.owned() == stock.owned(as_of=JUNE)
    assert stock.on_colonies() == stock.on_colonies(as_of=JUNE)


def test_the_number_of_questions_to_the_database_does_not_grow(creek, django_assert_max_num_queries):
    for number in range(12):
        makers.make_colony(f"B{number}", yard=creek, gear=True)
    for question in (stock.by_place, stock.owned, stock.on_colonies):
        for day in (None, JUNE):
            with django_assert_max_num_queries(6 if day is None else 15):
                question(as_of=day)


def test_owed_is_what_was_ordered_less_what_came(shed):
    order = makers.make_order({makers.make_offer({"box-medium-10": 5, "stand": 1}): 2})
    makers.make_order({makers.make_offer({"stand": 4}): 1})
    arrivals = [Arrival(part="box-medium-10", sound=3, scrapped=1), Arrival(part="stand", sound=2)]
    ledger.receive(order=order, into=shed, arrivals=arrivals, day=JUNE, who=None, key="r")
    assert [(row.part.code, row.units, row.came, row.owed) for row in stock.owed(order)] == [
        ("box-medium-10", 10, 4, 6),
        ("stand", 2, 2, 0),
    ]
    assert stock.owed_by_part() == {"box-medium-10": 6, "stand": 4}
    assert stock.owed_by_part(as_of=MAY) == {"box-medium-10": 10, "stand": 6}


def test_history_is_told_newest_first_by_part_place_and_day(shed, creek, colony):
    box = makers.part("box-medium-10")
    assert [row.reason for row in stock.history(box)] == ["placed on a colony", "moved", "opening stock"]
    assert [row.part.code for row in stock.history(location=colony)] == ["box-medium-10"]
    assert [row.reason for row in stock.history(box, as_of=MAY)] == ["moved", "opening stock"]


def test_ended_colonies_that_still_hold_gear_are_told_with_their_pieces(creek):
    ended = makers.make_dead_colony(tag="C-9", yard=creek, ended=JUNE)
    makers.make_dead_colony(tag="C-8", yard=creek, ended=JUNE)
    makers.put(ended, {"box-medium-10": 2, "stand": 1}, day=MAY)
    assert [(row.tag, row.pieces) for row in stock.ended_with_gear(on=JUNE)] == [("C-9", 3)]
    assert not stock.ended_with_gear(on=MAY)
