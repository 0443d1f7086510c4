"""Orders of the invented year come out in every way an order can."""

import pytest

from inventory import orders
from inventory.models import Claim, Invoice, InvoiceLine, LineClosing, Order, Substitution

pytestmark = pytest.mark.django_db


def test_orders_came_in_part_broken_short_instead_and_cancelled(lived):
    assert set(Order.objects.values_list("status", flat=True)) == set(Order.Status.values)
    assert Claim.objects.get().answer == Claim.Answer.CREDITED
    assert set(LineClosing.objects.values_list("why", flat=True)) == set(LineClosing.Why.values)
    assert Substitution.objects.get().instead.code == "jar"


def test_one_order_is_half_owed_and_the_others_owe_nothing(lived):
    owed = orders.owed_everywhere(as_of=lived.order_day)
    assert {row.line.order.reference for row in owed} == {"invented-2025-autumn"}
    assert {row.part.code: row.owed for row in owed} == {"guard-10": 20, "feeder-10": 4}


def test_more_sugar_came_than_was_ordered(lived):
    row = next(
        row
        for row in orders.owed_lines(Order.objects.get(reference="invented-2025-sugar"))
        if row.part.code == "sugar"
    )
    assert row.came == row.units + 50


def test_the_invoices_bill_what_came_at_the_price_of_the_order(lived):
    assert Invoice.objects.count() == 2
    order = Order.objects.get(reference="invented-2025-spring")
    for line in order.lines.exclude(offer__code="mo-guard"):
        billed = sum(InvoiceLine.objects.filter(line=line).values_list("cents", flat=True))
        assert line.cost_cents - 2 <= billed <= line.cost_cents  # whole cents, rounded down on each receipt
