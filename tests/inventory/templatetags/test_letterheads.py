"""Suppliers for the page of the operation, by name."""

import pytest

from inventory.templatetags.letterheads import suppliers_told
from tests import makers


@pytest.mark.django_db
def test_suppliers_stand_in_the_order_of_their_names():
    second, first = makers.make_supplier("b", name="Mill End"), makers.make_supplier("a", name="Brook Side")
    assert suppliers_told() == {"suppliers": [first, second]}
