"""Purchase orders: what they cost, what they bring, what is owed, and each refusal."""

import datetime as dt
from decimal import Decimal

import pytest

from inventory import ledger, orders
from inventory.errors import NothingGiven, NotWhole, OrderClosed, OtherSupplier, ReferenceTaken, TooManyPacks
from inventory.ledger import Arrival
from inventory.models import Order
from inventory.orders import OrderItem, cancel_order, cents, cost_of, owed_everywhere, owed_lines, place_order
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
STEPS = ((1, 1000), (10, 900), (50, 800))


@pytest.mark.parametrize(
    ("packs", "cost"), [(1, "10"), (9, "90"), (10, "90"), (49, "441"), (50, "400"), (60, "480")]
)
def test_all_packs_at_the_price_of_their_step(packs, cost):
    assert cost_of(makers.make_offer({"stand": 1}, steps=STEPS), packs) == Decimal(cost)


@pytest.mark.parametrize(
    ("packs", "cost"), [(1, "10"), (9, "90"), (10, "99"), (49, "450"), (50, "458"), (60, "538")]
)
def test_each_pack_at_the_price_of_its_own_step(packs, cost):
    """By hand: 9 at 10, 40 at 9, the rest at 8."""
    offer = makers.make_offer({"stand": 1}, steps=STEPS, price_rule="incremental")
    assert cost_of(offer, packs) == Decimal(cost)


def test_an_offer_without_a_price_costs_nothing_anybody_could_say():
    with pytest.raises(NotWhole):
        cost_of(makers.make_offer({"stand": 1}, steps=()), 1)


def test_money_is_whole_cents():
    assert cents(Decimal("12.34")) == 1234
    with pytest.raises(ValueError, match="cents"):
        cents(Decimal("0.001"))


def test_an_order_says_what_each_line_costs_and_brings():
    supplier = makers.make_supplier("invented-one", order_fee_cents=4500, lead_weeks=3)
    kit = makers.make_offer({"box-medium-10": 5, "frame-medium": 50}, supplier=supplier, steps=((1, 20000),))
    item = OrderItem(offer=kit, packs=2, why="Creek runs short in May.")
    order = place_order(supplier, [item], placed_on=DAY)
    line = order.lines.get()
    assert (order.reference, order.status, order.fee_cents) == ("invented-one-20250401-1", "placed", 4500)
    assert order.due_on == DAY + dt.timedelta(weeks=3)
    assert (line.packs, line.cost_cents, line.why) == (2, 40000, "Creek runs short in May.")
    assert [(row.part.code, row.units, row.came, row.owed) for row in owed_lines(order)] == [
        ("box-medium-10", 10, 0, 10),
        ("frame-medium", 100, 0, 100),
    ]


def test_what_is_told_is_kept_as_told():
    offer = makers.make_offer({"stand": 1}, lead_weeks=9)
    due = DAY + dt.timedelta(days=4)
    item = OrderItem(offer=offer, packs=3, cost=Decimal("1.50"))
    order = place_order(
        offer.supplier, [item], placed_on=DAY, due_on=due, fee=Decimal("7.25"), reference="winter"
    )
    assert (order.reference, order.due_on, order.fee_cents) == ("winter", due, 725)
    assert order.lines.get().cost_cents == 150


def test_the_longest_lead_of_the_lines_sets_the_due_day():
    supplier = makers.make_supplier(lead_weeks=2)
    slow = makers.make_offer({"stand": 1}, supplier=supplier, lead_weeks=8)
    now = makers.make_offer({"stand": 1}, supplier=supplier, lead_weeks=0)
    assert makers.make_order({slow: 1, now: 1}).due_on == DAY + dt.timedelta(weeks=8)
    assert makers.make_order({now: 1}).due_on == DAY


@pytest.mark.parametrize(("packs", "fee"), [(4, 900), (5, 0), (6, 0)])
def test_shipping_is_free_from_the_suppliers_own_mark_on(packs, fee):
    supplier = makers.make_supplier(order_fee_cents=900, free_from_cents=10000)
    offer = makers.make_offer({"stand": 1}, supplier=supplier, steps=((1, 2000),))
    assert makers.make_order({offer: packs}).fee_cents == fee


def test_orders_of_one_day_are_numbered_on():
    supplier = makers.make_supplier("one")
    offer = makers.make_offer({"stand": 1}, supplier=supplier)
    assert [makers.make_order({offer: 1}).reference[-2:] for _ in range(3)] == ["-1", "-2", "-3"]


def test_a_reference_is_given_once():
    makers.make_order(reference="winter")
    with pytest.raises(ReferenceTaken):
        makers.make_order(reference="winter")


def test_an_order_goes_to_one_supplier():
    offer = makers.make_offer({"stand": 1})
    with pytest.raises(OtherSupplier):
        place_order(makers.make_supplier(), [OrderItem(offer=offer, packs=1)], placed_on=DAY)


@pytest.mark.parametrize("packs", [0, -1, 1.5, True, "2"])
def test_packs_are_a_whole_number(packs):
    offer = makers.make_offer({"stand": 1})
    with pytest.raises(NotWhole):
        place_order(offer.supplier, [OrderItem(offer=offer, packs=packs)], placed_on=DAY)


def test_an_order_takes_no_more_packs_than_the_offer_allows():
    offer = makers.make_offer({"stand": 1}, max_packs=5)
    makers.make_order({offer: 5})
    with pytest.raises(TooManyPacks) as refused:
        makers.make_order({offer: 6})
    assert refused.value.max_packs == 5


def test_an_order_of_nothing_is_refused():
    with pytest.raises(NothingGiven):
        place_order(makers.make_supplier(), [], placed_on=DAY)
    assert not Order.objects.exists()


def test_a_cancelled_order_owes_nothing_and_keeps_what_came():
    order, shed = makers.make_order(), makers.make_shed()
    act = ledger.receive(
        order=order,
        into=shed,
        arrivals=[Arrival(part="box-medium-10", sound=4)],
        day=DAY,
        who=None,
        key="k",
    )
    order = cancel_order(order, day=DAY)
    assert [(row.came, row.owed) for row in owed_lines(order)] == [(4, 0)]
    assert owed_everywhere() == []
    ledger.reverse(act=act, who=None, key="r")
    assert orders.derived_status(Order.objects.get()) == "cancelled"


def test_an_order_that_came_or_was_cancelled_cannot_be_cancelled():
    order = makers.make_order()
    cancel_order(order, day=DAY)
    with pytest.raises(OrderClosed):
        cancel_order(order, day=DAY)
    received = makers.make_order()
    ledger.receive(order=received, into=makers.make_shed(), day=DAY, who=None, key="k")
    with pytest.raises(OrderClosed, match="received"):
        cancel_order(received, day=DAY)


def test_what_was_owed_on_a_past_day_is_told_as_of_then():
    order = makers.make_order()
    later = DAY + dt.timedelta(days=20)
    ledger.receive(order=order, into=makers.make_shed(), day=later, who=None, key="k")
    order.refresh_from_db()
    before = DAY + dt.timedelta(days=19)
    assert [row.owed for row in owed_lines(order, as_of=before)] == [10]
    assert [row.owed for row in owed_everywhere(as_of=before)] == [10]
    assert [row.owed for row in owed_lines(order, as_of=DAY - dt.timedelta(days=1))] == [0]
    assert owed_everywhere() == []
