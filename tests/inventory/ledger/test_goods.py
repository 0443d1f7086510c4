"""Opening stock, and orders that come in full, in part, over or broken."""

import datetime as dt

import pytest

from inventory import ledger, stock
from inventory.errors import (
    BeforeOrdered,
    ColonyNotStarted,
    DoesNotFit,
    HeldBack,
    MoreThanOwed,
    NothingGiven,
    NotOnOrder,
    NotWhole,
    OrderClosed,
    Several,
    UnknownPart,
)
from inventory.gear import Condition, Gear
from inventory.ledger import Arrival, Line
from inventory.models import Movement, Order
from inventory.orders import cancel_order
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
MEDIUM = Gear(part="box-medium-10")


@pytest.fixture
def shed(db):
    makers.make_catalogue()
    return makers.make_shed()


def receive(order, shed, *arrivals, day=DAY, key="k", **options):
    told = arrivals or None
    return ledger.receive(order=order, into=shed, arrivals=told, day=day, who=None, key=key, **options)


def status(order):
    return Order.objects.get(pk=order.pk).status


def owed(order):
    return [(row.part.code, row.owed) for row in stock.owed(order)]


def test_opening_stock_comes_with_its_condition(shed):
    makers.put(shed, {"stand": 3}, condition="to mend")
    assert stock.on_hand(shed) == {Gear(part="stand", condition=Condition.TO_MEND): 3}


def test_many_places_open_in_one_act(shed):
    colony = makers.make_colony()
    act = ledger.open_stocks(
        stocks=[(shed, [Line("stand", 3)]), (colony, [Line("box-deep-10", 2)])], day=DAY, who=None, key="k"
    )
    assert act.movements.count() == 2
    assert stock.on_colony(colony) == {Gear(part="box-deep-10"): 2}


@pytest.mark.parametrize(
    ("line", "error"),
    [(Line("box-deep-8", 1), DoesNotFit), (Line("box-deep-10", 1, "held back"), HeldBack)],
)
def test_opening_stock_on_a_colony_must_fit_it(shed, line, error):
    with pytest.raises(error):
        ledger.open_stock(location=makers.make_colony(), lines=[line], day=DAY, who=None, key="k")


def test_one_bad_place_stops_the_whole_opening(shed):
    stocks = [(shed, [Line("stand", 3)]), (makers.make_colony(), [Line("box-deep-8", 1)])]
    with pytest.raises(DoesNotFit):
        ledger.open_stocks(stocks=stocks, day=DAY, who=None, key="k")
    assert not Movement.objects.exists()


def test_a_colony_has_no_opening_stock_before_it_started(shed):
    colony = makers.make_colony(day=DAY)
    with pytest.raises(ColonyNotStarted):
        makers.put(colony, {"box-deep-10": 1}, day=DAY - dt.timedelta(days=1))


def test_an_opening_of_nothing_is_refused(shed):
    with pytest.raises(NothingGiven):
        ledger.open_stock(location=shed, lines=[], day=DAY, who=None, key="k")


def test_an_order_received_in_full_is_received(shed):
    order = makers.make_order()
    receive(order, shed)
    assert stock.on_hand(shed) == {MEDIUM: 10}
    assert (owed(order), status(order)) == ([("box-medium-10", 0)], "received")


def test_an_order_received_in_part_owes_the_rest(shed):
    order = makers.make_order()
    receive(order, shed, Arrival(part="box-medium-10", sound=4))
    assert (owed(order), status(order)) == ([("box-medium-10", 6)], "placed")
    receive(order, shed, key="rest")
    assert (stock.on_hand(shed), status(order)) == ({MEDIUM: 10}, "received")


def test_broken_pieces_count_as_come_and_are_to_mend_or_scrapped(shed):
    order = makers.make_order()
    act = receive(order, shed, Arrival(part="box-medium-10", sound=7, to_mend=2, scrapped=1))
    assert stock.on_hand(shed) == {MEDIUM: 7, Gear(part="box-medium-10", condition=Condition.TO_MEND): 2}
    assert status(order) == "received"
    assert [(row.quantity, str(row.target)) for row in act.movements.filter(reason="broken")] == [
        (1, "scrap")
    ]


def test_more_than_is_owed_is_refused_with_its_figures(shed):
    order = makers.make_order()
    with pytest.raises(MoreThanOwed) as refused:
        receive(order, shed, Arrival(part="box-medium-10", sound=11))
    assert (refused.value.came, refused.value.owed) == (11, 10)


def test_more_than_is_owed_is_taken_in_where_it_is_said_so(shed):
    order = makers.make_order()
    receive(order, shed, Arrival(part="box-medium-10", sound=12), over_allowed=True)
    assert (stock.on_hand(shed), owed(order), status(order)) == (
        {MEDIUM: 12},
        [("box-medium-10", 0)],
        "received",
    )


def test_a_part_on_two_lines_fills_the_first_line_first(shed):
    supplier = makers.make_supplier()
    first = makers.make_offer({"box-medium-10": 5}, supplier=supplier)
    second = makers.make_offer({"box-medium-10": 1, "stand": 2}, supplier=supplier)
    order = makers.make_order({first: 1, second: 3})
    receive(order, shed, Arrival(part="box-medium-10", sound=5, to_mend=2), Arrival(part="stand", sound=1))
    assert owed(order) == [("box-medium-10", 0), ("box-medium-10", 1), ("stand", 5)]
    by_line = [(row.order_line.offer, row.quantity, row.condition) for row in order_movements(order)]
    assert by_line == [(first, 5, "sound"), (second, 2, "to mend"), (second, 1, "sound")]


def order_movements(order):
    return Movement.objects.filter(order_line__order=order).order_by("id")


def test_a_part_that_is_not_on_the_order_is_refused(shed):
    with pytest.raises(NotOnOrder, match="hive stand"):
        receive(makers.make_order(), shed, Arrival(part="stand", sound=1))


def test_every_wrong_arrival_is_told(shed):
    with pytest.raises(Several) as refused:
        receive(
            makers.make_order(),
            shed,
            Arrival(part="nothing", sound=1),
            Arrival(part="box-medium-10", sound=-1),
        )
    assert [type(problem) for problem in refused.value.problems] == [UnknownPart, NotWhole]


def test_a_receipt_of_nothing_is_refused(shed):
    order = makers.make_order()
    with pytest.raises(NothingGiven):
        receive(order, shed, Arrival(part="box-medium-10"))
    receive(order, shed)
    with pytest.raises(NothingGiven):
        receive(order, shed, key="again")


def test_nothing_comes_on_a_cancelled_order_or_before_it_was_placed(shed):
    order = makers.make_order()
    with pytest.raises(BeforeOrdered):
        receive(order, shed, day=DAY - dt.timedelta(days=1))
    cancel_order(order, day=DAY)
    with pytest.raises(OrderClosed):
        receive(order, shed)


def test_a_receipt_reversed_is_owed_again(shed):
    order = makers.make_order()
    act = receive(order, shed, Arrival(part="box-medium-10", sound=9, scrapped=1))
    ledger.reverse(act=act, who=None, key="back")
    assert (stock.on_hand(shed), owed(order), status(order)) == ({}, [("box-medium-10", 10)], "placed")


def test_a_resent_receipt_comes_once(shed):
    order = makers.make_order()
    assert receive(order, shed) == receive(order, shed)
    assert stock.on_hand(shed) == {MEDIUM: 10}
