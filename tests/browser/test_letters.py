"""An order to send, a supplier and the operation in a real browser: they fit a phone and a desktop, for anyone."""

import pytest
from django.urls import reverse

from inventory.models import Order
from tests.browser.conftest import hard_to_use, too_wide

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]


def addresses(live_server):
    order = Order.objects.get()
    paths = (
        reverse("order-send", args=[order.pk]),
        reverse("supplier", args=[order.supplier_id]),
        reverse("operation"),
    )
    return [live_server.url + path for path in paths]


def test_the_pages_do_not_scroll_sideways_or_complain(sheet, live_server):
    assert (too_wide(sheet, addresses(live_server)), sheet.said) == ([], [])


@pytest.mark.parametrize("width", [390, pytest.param(1440, marks=pytest.mark.long)])
def test_the_pages_are_accessible(sheet, live_server, width):
    assert not hard_to_use(sheet, addresses(live_server), scheme="light", width=width)
