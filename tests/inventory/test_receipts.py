"""What each receipt cost: planned beside paid."""

import datetime as dt

import pytest

from inventory import ledger
from inventory.ledger import Arrival, Instead
from inventory.models import Claim
from inventory.orders import answer_claim, claim, enter_invoice
from inventory.receipts import acts_without_invoice, receipts_of
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


@pytest.fixture
def order(db):
    """Ten boxes for 40.00, shipping 15.00."""
    supplier = makers.make_supplier(order_fee_cents=1500)
    return makers.make_order({makers.make_offer({"box-medium-10": 5}, supplier=supplier): 2})


def receive(order, sound, days=0, **more):
    arrivals = [Arrival(part="box-medium-10", sound=sound)] if isinstance(sound, int) else sound
    on = DAY + dt.timedelta(days=days)
    told = {"day": on, "who": None, "key": makers.fresh_key(), "over_allowed": True, **more}
    return ledger.receive(order=order, into=makers.make_shed(), arrivals=arrivals, **told)


def planned(order):
    return [(sum(r.planned.values()), r.planned_shipping) for r in receipts_of(order=order)]


def test_parts_of_a_line_add_up_to_its_price_to_the_cent(order):
    for sound in (3, 3, 4):
        receive(order, sound)
    assert planned(order) == [(1200, 450), (1200, 450), (1600, 600)]


def test_what_is_over_is_planned_at_the_same_price_without_shipping(order):
    receive(order, 10)
    receive(order, 2, days=1)
    assert planned(order) == [(4000, 1500), (800, 0)]


def test_the_newest_invoice_counts_and_shipping_it_took_is_not_planned_again(order):
    act = receive(order, 5)
    line = order.lines.get().pk
    enter_invoice(act, paid={(line, None): 2100}, shipping_cents=100, day=DAY)
    enter_invoice(act, paid={(line, None): 2200}, shipping_cents=1500, day=DAY, number="7 invented")
    receive(order, 5, days=1)
    first, second = receipts_of(order=order)
    assert (first.cents, first.planned_cents, first.invoice.number) == (3700, 2750, "7 invented")
    assert (second.cents, second.planned_shipping) == (2000, 0)


def test_pieces_that_came_instead_stand_apart(order):
    swap = Instead(ordered="box-medium-10", settles=5, came=Arrival(part="box-shallow-10", sound=4))
    receive(order, 5, substitutes=[swap])
    (receipt,) = receipts_of(order=order)
    other = (order.lines.get().pk, makers.part("box-shallow-10").pk)
    assert receipt.planned[other] == 2000 and receipt.planned_cents == 5500


def test_one_part_instead_of_two_of_a_kit_bears_what_was_planned_for_both(db):
    """A kit of two boxes and twenty frames; all of it came as shallow boxes: its price is all that was planned."""
    kit = makers.make_offer({"box-medium-10": 2, "frame-medium": 20})
    order = makers.make_order({kit: 1})
    came = {"box-medium-10": 2, "frame-medium": 20}
    swaps = [
        Instead(ordered=code, settles=n, came=Arrival(part="box-shallow-10", sound=2))
        for code, n in came.items()
    ]
    receive(order, [], substitutes=swaps)
    (receipt,) = receipts_of(order=order)
    assert receipt.planned_cents - receipt.planned_shipping == order.lines.get().cost_cents


def test_replaced_pieces_are_not_paid_twice_and_a_credit_is_told(order):
    act = receive(order, [Arrival(part="box-medium-10", sound=7, scrapped=3)])
    told = {"line": order.lines.get(), "part": makers.part("box-medium-10"), "day": DAY}
    answer_claim(claim(act, pieces=2, **told), answer=Claim.Answer.REPLACED, day=DAY)
    answer_claim(claim(act, pieces=1, **told), answer=Claim.Answer.CREDITED, day=DAY, credit_cents=400)
    receive(order, 2, days=1)
    assert planned(order) == [(4000, 1500), (0, 0)]
    assert receipts_of(order=order)[0].credit_cents == 400


def test_receipts_that_wait_for_their_invoice(order):
    act, undone = receive(order, 5), receive(order, 5, days=1)
    ledger.reverse(act=undone, who=None, key="back")
    assert list(acts_without_invoice()) == [act]
    assert not acts_without_invoice(last=DAY - dt.timedelta(days=1))
    enter_invoice(act, paid={(order.lines.get().pk, None): 0}, shipping_cents=0, day=DAY)
    assert not acts_without_invoice()
