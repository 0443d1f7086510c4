"""Orders with their sums, in few questions."""

from decimal import Decimal

import pytest

from inventory import ledger
from inventory.ledger import Arrival
from inventory.order_sums import all_orders, order_sheet
from inventory.orders import cancel_order
from tests import makers

pytestmark = pytest.mark.django_db


def receive(order, number):
    return ledger.receive(
        order=order,
        into=makers.make_shed(),
        arrivals=[Arrival(part="box-medium-10", sound=number)],
        over_allowed=True,
        day=makers.DAY,
        who=None,
        key=makers.fresh_key(),
    )


def test_a_row_tells_cost_with_shipping_what_came_and_what_is_owed():
    order = makers.make_order(fee=Decimal("7.50"))
    receive(order, 4)
    (row,) = all_orders()
    assert (row.units, row.came, row.owed, row.status) == (10, 4, 6, "came in part")
    assert row.cost == Decimal("47.50")


def test_more_than_was_ordered_owes_nothing_and_a_cancelled_order_neither():
    receive(makers.make_order(), 12)
    cancel_order(makers.make_order(), day=makers.DAY)
    assert [row.owed for row in all_orders()] == [0, 0]
    assert {row.status for row in all_orders()} == {"received", "cancelled"}


def test_the_list_asks_no_more_for_more_orders(django_assert_num_queries):
    for _ in range(4):
        makers.make_order()
    with django_assert_num_queries(6):
        assert len(all_orders()) == 4


def test_a_sheet_tells_lines_receipts_and_sums():
    order = makers.make_order(fee=Decimal("7.50"))
    act = receive(order, 4)
    sheet = order_sheet(order)
    assert (sheet.total, sheet.fee, sheet.owed, sheet.came) == (Decimal("47.50"), Decimal("7.50"), 6, 4)
    assert sheet.receipts == [act]
    assert sheet.is_open and sheet.owed_words == "6 owed"
    assert dict(sheet.cells)["Status"] == "placed"


def test_a_kit_keeps_its_parts_under_one_line():
    order = makers.make_order({makers.make_offer({"box-deep-10": 1, "frame-deep-foundation": 10}): 3})
    (line,) = order_sheet(order).lines
    assert [(row.part.code, row.owed) for row in line.parts] == [
        ("box-deep-10", 3),
        ("frame-deep-foundation", 30),
    ]
    assert line.owed == 33
