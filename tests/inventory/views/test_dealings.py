"""What came of an order through its pages: invoices, closed lines, claims; and what makes no sense is refused."""

import pytest
from django.urls import reverse

from inventory import ledger, stock
from inventory.gear import Gear
from inventory.ledger import Arrival
from inventory.models import Claim, Invoice, LineClosing, Movement, Substitution
from tests import makers
from tests.inventory.views.sending import opened, said, send, text

pytestmark = pytest.mark.django_db
DAY = makers.DAY


@pytest.fixture(autouse=True)
def signed_in(keeper):
    return keeper


@pytest.fixture
def order(shed):
    """Ten medium boxes and four excluders, 2 × 20.00 each, shipping 15.00."""
    supplier = makers.make_supplier("mill-end", order_fee_cents=1500)
    boxes = makers.make_offer({"box-medium-10": 5}, supplier=supplier, name="Five boxes")
    both = makers.make_offer({"excluder-10": 2}, supplier=supplier, name="Two excluders")
    return makers.make_order({boxes: 2, both: 2})


@pytest.fixture
def act(order, shed):
    """All came but two boxes, two of those that came are broken."""
    arrivals = [Arrival(part="box-medium-10", sound=6, scrapped=2), Arrival(part="excluder-10", sound=4)]
    return ledger.receive(order=order, into=shed, arrivals=arrivals, day=DAY, who=None, key="came")


def page(client, order):
    return text(client.get(reverse("order", args=[order.pk])))


def invoice(order, act):
    return reverse("order-invoice", args=[order.pk, act.pk])


def test_the_invoice_opens_with_what_was_planned_and_differences_are_shown(client, order, act):
    assert "no invoice yet" in page(client, order)
    fields = opened(client, invoice(order, act))
    assert [str(fields[f"paid__{n}"]) for n in range(3)] == ["32", "40", "13.5"]
    answer = send(client, invoice(order, act), number="invented-7", paid__0="36.00", paid__2="12.00")
    assert said(answer) == ["The invoice is entered: what came counts at these prices."]
    words = page(client, order)
    assert (
        "invoice invented-7" in words
        and "4.00 more" in words
        and "1.50 less" in words
        and "2.50 more" in words
    )


def test_an_invoice_is_mended_by_entering_it_anew(client, order, act):
    send(client, invoice(order, act), paid__0="360.00")
    assert str(opened(client, invoice(order, act))["paid__0"]) == "360"
    send(client, invoice(order, act), paid__0="36.00")
    assert Invoice.objects.count() == 2
    assert "360.00" not in page(client, order)


@pytest.mark.parametrize("price", ["-1", "x", "", "1.005"])
def test_a_price_that_is_none_is_refused(client, order, act, price):
    answer = send(client, invoice(order, act), paid__0=price)
    assert answer.status_code == 422 and not Invoice.objects.exists()


def test_only_a_receipt_that_stands_has_an_invoice(client, order, act):
    other = makers.make_order()
    assert client.get(invoice(other, act)).status_code == 404
    ledger.reverse(act=act, who=None, key="back")
    assert client.get(invoice(order, act)).status_code == 404


def test_a_line_is_closed_short_with_a_reason_and_opened_again(client, order, act):
    address = reverse("order-close", args=[order.pk])
    line = order.lines.first().pk
    refused = send(client, address, lines=[line], why="short", reason="")
    assert refused.status_code == 422 and "write what the supplier says" in text(refused)
    send(client, address, lines=[line], why="short", reason="no longer made")
    order.refresh_from_db()
    assert order.status == "received"
    words = page(client, order)
    assert "no longer made" in words and "2 will not come" in words
    assert "closed, 2 short" in text(client.get(reverse("orders")))
    closing = LineClosing.objects.get()
    answer = client.post(reverse("order-reopen", args=[closing.pk]), follow=True)
    assert said(answer) == ["Five boxes is owed again."]
    again = client.post(reverse("order-reopen", args=[closing.pk]), follow=True)
    assert "was opened again already" in said(again)[0]
    assert "owed again from" in page(client, order)


def test_closing_asks_for_a_line_and_knows_only_open_ones(client, order, act):
    address = reverse("order-close", args=[order.pk])
    assert send(client, address, why="cancelled").status_code == 422
    assert send(client, address, why="cancelled", lines=[order.lines.last().pk]).status_code == 422
    assert send(client, address, why="lost", lines=[order.lines.first().pk]).status_code == 422
    assert (
        send(client, address, why="cancelled", lines=[order.lines.first().pk], day="2025-03-01").status_code
        == 422
    )
    assert not LineClosing.objects.exists()


def test_broken_pieces_are_claimed_and_credited(client, order, act):
    address = reverse("order-claim", args=[order.pk, act.pk])
    assert "Claim what came broken" in page(client, order)
    send(client, address, n__0="2")
    claim = Claim.objects.get()
    assert "not answered yet" in page(client, order) and "Claim what came broken" not in page(client, order)
    answer = reverse("order-claim-answer", args=[claim.pk])
    assert send(client, answer, answer="credited", credit="").status_code == 422
    send(client, answer, answer="credited", credit="6.50")
    words = page(client, order)
    assert "6.50 credited" in words or "credited" in words
    assert send(client, answer, answer="refused").status_code == 422


def test_what_is_replaced_is_owed_again(client, order, act):
    send(client, reverse("order-claim", args=[order.pk, act.pk]), n__0="1")
    send(client, reverse("order-claim-answer", args=[Claim.objects.get().pk]), answer="replaced")
    assert "1 broken, to be replaced" in page(client, order)
    assert opened(client, reverse("order-receive", args=[order.pk]))["sound__box-medium-10"] == 3


def test_claiming_nothing_or_too_much_is_refused(client, order, act):
    address = reverse("order-claim", args=[order.pk, act.pk])
    assert "Nothing was given to claim" in text(send(client, address, n__0="0"))
    assert "2 came broken" in text(send(client, address, n__0="3"))
    other = makers.put(makers.make_shed(), {"stand": 1})
    assert client.get(reverse("order-claim", args=[order.pk, other.pk])).status_code == 404
    assert not Claim.objects.exists()


def test_another_part_that_came_instead_is_received(client, order, shed):
    address = reverse("order-receive", args=[order.pk])
    told = {"instead_of": "box-medium-10", "instead": "box-shallow-10", "instead_came": "4"}
    refused = send(client, address, **{"sound__box-medium-10": "6"}, **told)
    assert refused.status_code == 422 and "Tell this too" in text(refused)
    send(client, address, **{"sound__box-medium-10": "6"}, **told, instead_settles="4")
    assert stock.on_hand(shed)[Gear(part="box-shallow-10")] == 4
    assert Substitution.objects.get().settles == 4
    words = page(client, order)
    assert "4 came as another part" in words and "instead of 4 × medium box, 10 frames" in words
    assert "nothing owed" in words
    assert Movement.objects.filter(part__code="box-shallow-10").count() == 1


def test_several_parts_that_came_instead_are_received_in_one_receipt(client, order, shed):
    address = reverse("order-receive", args=[order.pk])
    told = {"instead_of": "box-medium-10", "instead": "box-shallow-10"}
    told |= {"instead_of__2": "box-medium-10", "instead__2": "box-deep-10"}
    told |= {"instead_came": "4", "instead_settles": "4", "instead_came__2": "3"}
    refused = send(client, address, **{"sound__box-medium-10": "3"}, **told)
    assert refused.status_code == 422 and "Tell this too" in text(refused)
    deep = stock.on_hand(shed).get(Gear(part="box-deep-10"), 0)
    send(client, address, **{"sound__box-medium-10": "3"}, **told, instead_settles__2="3")
    there = stock.on_hand(shed)
    assert there[Gear(part="box-shallow-10")] == 4
    assert there[Gear(part="box-deep-10")] == deep + 3
    assert "7 came as another part" in page(client, order)


def test_a_part_of_another_width_is_asked_about_then_booked(client, order, shed):
    address = reverse("order-receive", args=[order.pk])
    told = {"instead_of": "box-medium-10", "instead": "box-medium-8", "sound__box-medium-10": "6"}
    told |= {"instead_came": "4", "instead_settles": "4"}
    asked = send(client, address, **told)
    assert asked.status_code == 422 and "widths never mix" in text(asked)
    assert "It is of another width and stays all the same" in text(asked)
    assert not Substitution.objects.exists()
    send(client, address, **told, width_allowed="on")
    assert Substitution.objects.get().instead.code == "box-medium-8"
