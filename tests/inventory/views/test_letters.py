"""The pages of an order to send and of a supplier: how it reads, its file, its note, refusals."""

import io

import pytest
from django.urls import reverse
from openpyxl import load_workbook

from inventory import ledger
from tests import makers
from tests.inventory.views.sending import said, text

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def signed_in(keeper):
    return keeper


@pytest.fixture
def order():
    seller = makers.make_supplier("mill-end", order_fee_cents=1500)
    boxes = makers.make_offer({"box-medium-10": 5}, supplier=seller, name="Medium, five to a pack")
    return makers.make_order(
        {boxes: 2, makers.make_offer({"sugar": 50}, supplier=seller, steps=((1, 0),)): 1}
    )


def at(name, order, **asked):
    return reverse(name, args=[order.pk], query=asked or None)


def test_the_page_shows_what_the_supplier_will_read_and_what_is_missing(client, order):
    words = text(client.get(at("order-send", order)))
    assert "Medium, five to a pack" in words and "10 medium box, 10 frames" in words
    assert "please quote" in words and "Total, without what is to be quoted 55.00" in words
    assert "Your name and address are not written down yet" in words
    assert "The address of Invented mill-end is not written down yet" in words
    assert words.index("Download for Letter paper") < words.index("Download for A4 paper")


def test_the_orders_page_leads_to_it(client, order):
    assert at("order-send", order) in client.get(at("order", order)).content.decode()


def test_the_file_is_a_workbook_on_the_paper_asked_for(client, order):
    for asked, size in (("A4", 9), ("Letter", 1), ("papyrus", 1)):
        answer = client.get(at("order-file", order, paper=asked))
        assert (
            answer["Content-Disposition"] == f'attachment; filename="order-{order.pk}-invented-mill-end.xlsx"'
        )
        assert load_workbook(io.BytesIO(answer.content)).active.page_setup.paperSize == size


def test_a_note_is_kept_and_stands_on_the_order(client, order):
    answer = client.post(at("order-send", order), {"note": "Ring first."}, follow=True)
    assert said(answer) == ["The note is kept and stands on the order."]
    cells = load_workbook(io.BytesIO(client.get(at("order-file", order)).content)).active.iter_rows(
        values_only=True
    )
    assert "Ring first." in [row[0] for row in cells]


def test_a_note_too_long_is_refused_and_the_old_one_stays(client, order):
    answer = client.post(at("order-send", order), {"note": "x" * 1001})
    order.refresh_from_db()
    assert (answer.status_code, order.note) == (422, "")


def test_a_cancelled_order_is_not_sent_and_says_why(client, order):
    ledger.cancel_order(order, day=makers.DAY)
    for name in ("order-send", "order-file"):
        assert "there is nothing to send" in said(client.get(at(name, order), follow=True))[0]


def test_a_suppliers_address_is_kept(client, order):
    told = {
        "address": "2 Sawmill Road",
        "phone": "",
        "email": "mill@example.org",
        "customer_number": "K-4711",
    }
    answer = client.post(reverse("supplier", args=[order.supplier_id]), told, follow=True)
    assert said(answer) == ["Kept: this stands on every order to Invented mill-end."]
    assert "2 Sawmill Road" in text(client.get(at("order-send", order)))


def test_a_wrong_address_is_told_and_nothing_is_kept(client, order):
    told = {"address": "2 Sawmill Road", "phone": "", "email": "no address", "customer_number": ""}
    answer = client.post(reverse("supplier", args=[order.supplier_id]), told)
    assert (answer.status_code, answer.context["form"].errors["email"]) == (
        422,
        ["Enter a valid email address."],
    )
    order.supplier.refresh_from_db()
    assert order.supplier.address == ""


def test_a_helper_sees_neither_prices_nor_the_paper(client, order, yard):
    client.force_login(makers.make_person("sam", role="helper", yards=[yard]))
    assert {client.get(at(name, order)).status_code for name in ("order-send", "order-file")} == {403}
    assert "Send the order" not in text(client.get(at("order", order)))
