"""Planned beside paid."""

import pytest

from inventory import ledger
from inventory.orders import enter_invoice
from inventory.paid_sums import paid_receipts
from tests import makers

pytestmark = pytest.mark.django_db


def receive(order, key):
    return ledger.receive(order=order, into=makers.make_shed(), day=makers.DAY, who=None, key=key)


def test_each_line_tells_what_more_or_less_was_paid():
    order = makers.make_order(fee=0)
    act = receive(order, "a")
    (before,) = paid_receipts(order)
    assert (before.whole.planned_cents, before.whole.paid, before.whole.difference) == (4000, None, "")
    enter_invoice(act, paid={(order.lines.get().pk, None): 3900}, shipping_cents=250, day=makers.DAY)
    (after,) = paid_receipts(order)
    assert [line.difference for line in after.lines] == ["1.00 less", "2.50 more"]
    assert after.whole.difference == "1.50 more"


def test_a_receipt_reversed_does_not_stand():
    order = makers.make_order()
    ledger.reverse(act=receive(order, "a"), who=None, key="b")
    assert paid_receipts(order) == []
