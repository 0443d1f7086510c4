"""Columns, heads and sums of the tables."""

from decimal import Decimal

import pytest

from inventory.gear_sums import by_part, sums_of
from inventory.models import Part
from inventory.order_sums import all_orders
from inventory.sales import all_sales
from inventory.stock import by_place
from inventory.tables import GearTable, OrdersTable, SalesTable
from inventory.yardwork.selling import Terms, sell
from tests import makers

pytestmark = pytest.mark.django_db


def gear_table(**kwargs):
    makers.put(makers.make_shed(), {"box-deep-10": 1200})
    rows = by_part(by_place(), Part.objects.all())
    return GearTable(rows, sums=sums_of(rows), **kwargs)


def test_gear_has_sums_at_its_foot_and_thousands_apart():
    table = gear_table(shows_value=True)
    assert [str(column.footer) for column in table.columns] == [
        "Sum of pieces",
        "1,200",
        "0",
        "1,200",
        "31,200.00",
    ]
    row = table.rows[0]
    assert row.get_cell("quantity") == "1,200"
    assert row.get_cell("on_colonies") == ""


def test_value_is_left_out_for_those_it_is_not_for():
    assert [column.name for column in gear_table(shows_value=False).columns][-1] == "quantity"


def test_two_tables_have_sums_of_their_own():
    first, second = gear_table(shows_value=True), gear_table(shows_value=True)
    assert (str(first.columns["quantity"].footer), str(second.columns["quantity"].footer)) == (
        "1,200",
        "2,400",
    )


def test_an_order_leads_to_its_page():
    order = makers.make_order(fee=Decimal("0.00"))
    row = OrdersTable(all_orders()).rows[0]
    assert f'href="/orders/{order.pk}/"' in str(row.get_cell("reference"))
    assert (row.get_cell("owed"), row.get_cell("cost")) == ("10", "40.00")


def test_sales_sum_prices_and_deposits_held_in_cents():
    nuc = makers.make_colony("N-1", hive_set="nuc-5", gear=True)
    terms = Terms(buyer="Invented", price_cents=12_345_67, deposit_cents=4050, back_by=makers.DAY)
    told = {"day": makers.DAY, "who": None, "key": "sell"}
    sell(colonies=[nuc], terms=terms, goes=None, stays_at=nuc.yard, **told)
    table = SalesTable(all_sales())
    feet = {column.name: str(column.footer) for column in table.columns}
    assert (feet["price"], feet["held"]) == ("12,345.67", "40.50")
    assert table.rows[0].get_cell("price") == "12,345.67"
