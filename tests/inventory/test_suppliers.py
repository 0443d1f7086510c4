"""What is told of a supplier, and that the rest of it stays."""

import pytest

from inventory.suppliers import tell_supplier
from tests import makers


@pytest.mark.django_db
def test_a_letterhead_is_written_and_name_and_shipping_stay():
    seller = makers.make_supplier("mill-end", order_fee_cents=1500)
    told = {"address": " 2 Sawmill Road\n", "phone": "555 0199", "email": "mill@example.org"}
    row = tell_supplier(seller, customer_number="K-4711 ", **told)
    assert (row.address, row.phone, row.email) == ("2 Sawmill Road", "555 0199", "mill@example.org")
    assert (row.customer_number, row.name, row.order_fee_cents) == ("K-4711", "Invented mill-end", 1500)
