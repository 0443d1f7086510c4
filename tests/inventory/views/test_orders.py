"""Orders through their pages: listed with what is owed, received in full, in part, over and broken, cancelled."""

import datetime as dt

import pytest
from django.urls import reverse

from inventory import stock
from inventory.gear import Condition, Gear
from inventory.models import Movement, Order
from tests import makers
from tests.inventory.views.sending import faults, opened, said, send, text

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def signed_in(keeper):
    return keeper


@pytest.fixture
def order(shed):
    """Ten medium boxes and four excluders, 4 × 20.00 and 2 × 20.00, shipping 15.00."""
    supplier = makers.make_supplier("mill-end", order_fee_cents=1500)
    boxes = makers.make_offer({"box-medium-10": 5}, supplier=supplier)
    both = makers.make_offer({"excluder-10": 2}, supplier=supplier)
    return makers.make_order({boxes: 2, both: 2})


def receive(order):
    return reverse("order-receive", args=[order.pk])


def page(client, order):
    return client.get(reverse("order", args=[order.pk]))


def test_the_list_tells_what_is_owed_and_what_it_costs(client, order):
    words = text(client.get(reverse("orders")))
    assert f"{order.reference}" in words
    assert "14 of 14 owed" in words
    assert "95.00" in words  # 2 × 20.00 + 2 × 20.00 + 15.00


def test_an_empty_list_says_where_orders_come_from(client, db):
    assert "Approve a season's order and it stands here." in text(client.get(reverse("orders")))


def test_an_order_shows_lines_reason_and_what_came(client, order):
    order.lines.update(why="In 31 seasons of 100 Fern Hollow runs short.")
    words = text(page(client, order))
    assert "14 owed" in words and "In 31 seasons of 100 Fern Hollow runs short." in words
    assert "Nothing yet." in words


def test_in_full_is_one_press(client, order, shed):
    assert opened(client, receive(order))["sound__box-medium-10"] == 10
    answer = send(client, receive(order))
    assert said(answer) == ["Received 14 pieces into the store of Shed."]
    order.refresh_from_db()
    assert order.status == Order.Status.RECEIVED
    assert "nothing owed" in text(page(client, order))
    assert "Receive the order" not in text(page(client, order))


def test_in_part_leaves_the_rest_owed(client, order, shed):
    send(client, receive(order), **{"sound__box-medium-10": "6", "sound__excluder-10": "0"})
    order.refresh_from_db()
    assert order.status == Order.Status.PLACED
    assert opened(client, receive(order))["sound__box-medium-10"] == 4
    assert "came in part" in text(client.get(reverse("orders")))


def test_broken_pieces_are_to_mend_or_scrapped(client, order, shed):
    changed = {"sound__box-medium-10": "7", "to_mend__box-medium-10": "2", "scrapped__box-medium-10": "1"}
    answer = send(client, receive(order), **changed)
    assert said(answer) == [
        "Received 14 pieces into the store of Shed, of them 2 pieces to mend, 1 piece scrapped."
    ]
    assert stock.on_hand(shed)[Gear(part="box-medium-10", condition=Condition.TO_MEND)] == 2
    assert Movement.objects.get(target__kind="scrap").quantity == 1


def test_more_than_owed_is_asked_about_then_booked(client, order, shed):
    answer = send(client, receive(order), **{"sound__box-medium-10": "12"})
    assert answer.status_code == 422
    assert "12 of medium box, 10 frames came, but 10 are owed" in faults(answer)[0]
    assert "More came than is owed: book all of it" in text(answer)
    assert 'value="12"' in answer.content.decode()
    send(client, receive(order), over_allowed="on", **{"sound__box-medium-10": "12"})
    assert stock.on_hand(shed)[Gear(part="box-medium-10")] == 12


def test_nothing_came_is_refused(client, order):
    answer = send(client, receive(order), **{"sound__box-medium-10": "0", "sound__excluder-10": "0"})
    assert faults(answer) == ["Nothing was given to receive: name at least one part and how many."]


def test_before_it_was_placed_nothing_comes(client, order):
    answer = send(client, receive(order) + "?day=2025-03-01")
    assert "was placed on 1 April 2025, after 1 March 2025" in faults(answer)[0]


def test_another_store_and_day_may_be_told(client, order, yard):
    send(client, receive(order) + "?day=2025-04-20", into="fern-hollow")
    assert stock.on_hand(yard, as_of=dt.date(2025, 4, 20))[Gear(part="box-medium-10")] == 10
    assert stock.on_hand(yard, as_of=dt.date(2025, 4, 19)) == {}


def test_undoing_a_receipt_owes_it_again(client, order):
    send(client, receive(order))
    act = Movement.objects.filter(order_line__order=order).first().act
    client.post(reverse("books-reverse", args=[act.pk]))
    order.refresh_from_db()
    assert order.status == Order.Status.PLACED
    assert "reversed a receipt" in text(page(client, order))


def test_an_order_is_cancelled_after_asking_once_more(client, order):
    address = reverse("order-cancel", args=[order.pk])
    assert "This is not taken back." in text(client.get(address))
    order.refresh_from_db()
    assert order.status == Order.Status.PLACED
    answer = client.post(address, follow=True)
    assert said(answer)[0].startswith(f"Order {order} is cancelled: nothing more is owed.")
    assert "nothing owed" in text(answer)


def test_a_cancelled_order_is_neither_cancelled_again_nor_received(client, order):
    address = reverse("order-cancel", args=[order.pk])
    client.post(address)
    assert said(client.post(address, follow=True))[1:] == [
        f"Order {order} is cancelled: nothing is owed on it."
    ]
    assert "there is nothing to cancel" in text(client.get(address))
    answer = send(client, receive(order), **{"sound__box-medium-10": "1"})
    assert faults(answer) == [f"Order {order} is cancelled: nothing is owed on it."]
