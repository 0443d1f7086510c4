"""Purchase orders: what they cost, what they bring, what is owed, and each refusal."""

import datetime as dt
from decimal import Decimal
from importlib import import_module

import pytest
from django.apps import apps

from inventory import ledger, orders
from inventory.errors import (
    BeforeOrdered,
    FutureDay,
    NothingGiven,
    NotWhole,
    OrderClosed,
    OtherSupplier,
    ReferenceTaken,
    TooManyPacks,
)
from inventory.ledger import Arrival
from inventory.models import Claim, Invoice, LineClosing, Order
from inventory.orders import (
    OrderItem,
    answer_claim,
    billed_lines,
    broken_in,
    cancel_order,
    cents,
    claim,
    close_lines,
    cost_of,
    enter_invoice,
    owed_everywhere,
    owed_lines,
    place_order,
    reopen_line,
)
from inventory.orders.refusals import (
    AnsweredBefore,
    ClaimAnswered,
    ClosedBefore,
    LineClosed,
    LineOpen,
    NoReason,
    NotAnAnswer,
    NothingOwed,
    NotPrice,
    NotReceipt,
    TooManyClaimed,
    UnknownLine,
)
from tests import makers

cancelled = import_module("inventory.migrations.0008_cancelled")
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


def receive(order, shed, sound, **more):
    arrivals = [Arrival(part="box-medium-10", sound=sound, **more)]
    told = {"day": DAY, "who": None, "key": makers.fresh_key()}
    return ledger.receive(order=order, into=shed, arrivals=arrivals, **told)


def on(days):
    return DAY + dt.timedelta(days=days)


def test_a_cancellation_counts_from_its_day_only():
    order = makers.make_order()
    cancel_order(order, day=on(5), reason="too late for the flow")
    assert [row.owed for row in owed_lines(order, as_of=on(4))] == [10]
    assert [row.owed for row in owed_everywhere(as_of=on(4))] == [10]
    assert [row.owed for row in owed_lines(order, as_of=on(5))] == [0]
    assert owed_everywhere(as_of=on(5)) == [] == owed_everywhere()
    assert LineClosing.objects.get().reason == "too late for the flow"


def test_a_line_is_closed_short_with_the_reason_and_the_order_is_done():
    order = makers.make_order()
    receive(order, makers.make_shed(), 6)
    closed = close_lines(order, {order.lines.get().pk}, why="short", day=on(2), reason="no more made")
    (row,) = owed_lines(order)
    assert (row.came, row.owed, row.missing, row.closed) == (6, 0, 4, "short")
    assert closed.status == Order.Status.RECEIVED


def test_one_line_may_be_cancelled_and_the_other_stays_owed():
    supplier = makers.make_supplier()
    one, two = (makers.make_offer({code: 1}, supplier=supplier) for code in ("stand", "floor-10"))
    order = makers.make_order({one: 3, two: 2})
    close_lines(order, {order.lines.get(offer=one).pk}, why="cancelled", day=DAY)
    assert {row.part.code: row.owed for row in owed_everywhere()} == {"floor-10": 2}
    assert Order.objects.get().status == "placed"


def test_a_closed_line_opened_again_is_owed_from_that_day():
    order = makers.make_order()
    cancel_order(order, day=on(2))
    reopen_line(LineClosing.objects.get(), day=on(4))
    assert [[row.owed for row in owed_lines(order, as_of=on(n))] for n in (1, 2, 3, 4)] == [
        [10],
        [0],
        [0],
        [10],
    ]
    assert Order.objects.get().status == "placed"
    cancel_order(order, day=on(6))
    assert Order.objects.get().status == "cancelled"


def test_closing_and_opening_refuse_what_makes_no_sense():
    order, other = makers.make_order(), makers.make_order()
    line = order.lines.get().pk
    told = {"why": "cancelled", "day": DAY}
    with pytest.raises(UnknownLine):
        close_lines(order, {other.lines.get().pk}, **told)
    with pytest.raises(NothingGiven):
        close_lines(order, set(), **told)
    with pytest.raises(NoReason):
        close_lines(order, {line}, why="short", day=DAY, reason="  ")
    with pytest.raises(BeforeOrdered):
        close_lines(order, {line}, why="cancelled", day=on(-1))
    with pytest.raises(FutureDay):
        close_lines(order, {line}, why="cancelled", day=dt.date(2999, 1, 1))
    assert not LineClosing.objects.exists()
    close_lines(order, {line}, why="cancelled", day=on(3))
    with pytest.raises(LineClosed):
        close_lines(order, {line}, **told)
    closing = LineClosing.objects.get()
    with pytest.raises(ClosedBefore):
        reopen_line(closing, day=on(2))
    with pytest.raises(FutureDay):
        reopen_line(closing, day=dt.date(2999, 1, 1))
    reopen_line(closing, day=on(3))
    with pytest.raises(LineOpen):
        reopen_line(closing, day=on(3))
    receive(order, makers.make_shed(), 10)
    with pytest.raises(NothingOwed):
        close_lines(order, {line}, **told)


def broken(pieces=3):
    order = makers.make_order()
    act = receive(order, makers.make_shed(), 10 - pieces, to_mend=1, scrapped=pieces - 1)
    return order, act, {"line": order.lines.get(), "part": makers.part("box-medium-10")}


def test_broken_pieces_are_claimed_once_and_what_is_replaced_is_owed_again():
    order, act, told = broken(3)
    asked = claim(act, pieces=2, day=on(1), **told)
    assert list(broken_in(act).values()) == [1]
    assert Order.objects.get().status == "received"
    answer_claim(asked, answer="replaced", day=on(3))
    assert [row.owed for row in owed_lines(order)] == [2]
    assert [row.owed for row in owed_lines(order, as_of=on(2))] == [0]
    assert Order.objects.get().status == "placed"


def test_claims_and_answers_refuse_what_makes_no_sense():
    _order, act, told = broken(3)
    for pieces in (0, 4, True, 1.5):
        with pytest.raises(TooManyClaimed):
            claim(act, pieces=pieces, day=DAY, **told)
    with pytest.raises(NotReceipt):
        claim(act, pieces=1, day=on(-1), **told)
    with pytest.raises(FutureDay):
        claim(act, pieces=1, day=dt.date(2999, 1, 1), **told)
    asked = claim(act, pieces=1, day=on(1), **told)
    with pytest.raises(NotAnAnswer):
        answer_claim(asked, answer="open", day=on(1))
    with pytest.raises(AnsweredBefore):
        answer_claim(asked, answer="refused", day=DAY)
    for money in (0, -1, 1.5, True):
        with pytest.raises(NotPrice):
            answer_claim(asked, answer="credited", day=on(1), credit_cents=money)
    answer_claim(asked, answer="refused", day=on(1))
    with pytest.raises(ClaimAnswered):
        answer_claim(asked, answer="credited", day=on(1), credit_cents=5)
    assert Claim.objects.get().credit == 0


def test_an_invoice_prices_each_line_of_a_receipt_that_stands():
    _order, act, told = broken(2)
    key = (told["line"].pk, None)
    assert billed_lines(act) == {key}
    for paid in ({}, {key: 5, (999, None): 5}):
        with pytest.raises(UnknownLine):
            enter_invoice(act, paid=paid, shipping_cents=0, day=DAY)
    for money in (-1, 1.5, True):
        with pytest.raises(NotPrice):
            enter_invoice(act, paid={key: money}, shipping_cents=0, day=DAY)
    with pytest.raises(NotPrice):
        enter_invoice(act, paid={key: 5}, shipping_cents=-1, day=DAY)
    ledger.reverse(act=act, who=None, key="back")
    act = type(act).objects.get(pk=act.pk)
    with pytest.raises(NotReceipt):
        enter_invoice(act, paid={key: 5}, shipping_cents=0, day=DAY)
    opening = makers.put(makers.make_shed(), {"stand": 1})
    with pytest.raises(NotReceipt):
        enter_invoice(opening, paid={}, shipping_cents=0, day=DAY)
    assert not Invoice.objects.exists()


def test_lines_of_orders_cancelled_before_are_closed_from_the_day_they_were_placed():
    order = makers.make_order()
    Order.objects.update(status="cancelled")
    cancelled.close_cancelled(apps, None)
    assert [row.owed for row in owed_lines(order, as_of=DAY)] == [0]
