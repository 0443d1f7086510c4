"""Bees sold and what comes back: terms told, prices for the keeper alone, what is owed waits on This week."""

import datetime as dt

import pytest
from django.urls import reverse
from django.utils import timezone

from apiary.models import Access, Colony
from inventory.models import Sale
from inventory.sales import deposit_left, still_owed
from inventory.stock import on_hand
from inventory.yardwork import undo
from tests import makers
from tests.inventory.views.sending import faults, said, send, text

pytestmark = pytest.mark.django_db
SELL = reverse("act-sell")


@pytest.fixture
def nucs(yard):
    return [makers.make_colony(tag, yard=yard, hive_set="nuc-5", gear=True) for tag in ("N-1", "N-2")]


def address(*colonies):
    return f"{SELL}?" + "&".join(f"colonies={colony.pk}" for colony in colonies)


def sold(client, *nucs, **changed):
    usual = {"buyer": "Invented Neighbour", "price": "180.00"}
    return send(client, address(*nucs), **{**usual, **changed})


DEPOSIT = {"deposit": "40", "b__nuc-box-5__sound": "1", "b__comb-deep-brood__sound": "5", "weeks": "3"}


def test_a_nuc_is_sold_with_all_on_it(client, keeper, nucs):
    answer = sold(client, nucs[0])
    assert said(answer) == ["Sold N-1 to Invented Neighbour with 6 pieces."]
    sale = Sale.objects.get()
    assert (sale.price_cents, sale.deposit_cents, sale.back_by) == (18000, 0, None)
    assert Colony.objects.get(tag="N-1").ended_why == "sold"


def test_two_nucs_to_one_buyer_and_the_boxes_stay(client, keeper, yard, nucs):
    sold(client, *nucs, **{"n__nuc-box-5__sound": "0"})
    assert Sale.objects.get().colonies.count() == 2
    assert {piece.part: number for piece, number in on_hand(yard).items()} == {"nuc-box-5": 2}


def test_a_deposit_and_a_swap_are_waited_for(client, keeper, nucs):
    answer = sold(client, nucs[0], **DEPOSIT)
    sale, due = Sale.objects.get(), timezone.localdate() + dt.timedelta(weeks=3)
    assert (sale.deposit_cents, sale.back_by) == (4000, due)
    assert f"6 to come back by {due:%-d %B %Y}" in said(answer)[0]
    week = client.get(reverse("home"))
    assert "40.00 of the deposit held" in text(week)
    assert reverse("sale-back", args=[sale.pk]) in week.content.decode()


def test_what_comes_back_is_booked_and_the_deposit_given_back(client, keeper, shed, nucs):
    sold(client, nucs[0], **DEPOSIT)
    sale = Sale.objects.get()
    page = reverse("sale-back", args=[sale.pk])
    answer = send(client, page, refund="40.00", **{"n__comb-deep-brood__sound": "2"})
    assert said(answer) == ["Invented Neighbour brought 3 pieces back, into the store of Shed."]
    assert {part.code: number for part, number in still_owed(sale).items()} == {"comb-deep-brood": 3}
    assert deposit_left(sale) == 0
    send(client, page, settles="on", **{"n__comb-deep-brood__sound": "0"})
    assert still_owed(sale) == {}
    assert "Invented Neighbour" not in text(client.get(reverse("home")))


def test_another_piece_may_come_in_a_swap(client, keeper, shed, nucs):
    sold(client, nucs[0], **DEPOSIT)
    page = reverse("sale-back", args=[Sale.objects.get().pk])
    send(client, page, **{"n__frame-deep-foundation__sound": "5", "n__comb-deep-brood__sound": "0"})
    assert {p.part: n for p, n in on_hand(shed).items()}["frame-deep-foundation"] == 5


@pytest.mark.parametrize(
    ("changed", "field"),
    [
        ({"buyer": ""}, "buyer"),
        ({"price": "-1"}, "price"),
        ({"price": "12,345"}, "price"),
        ({"deposit": "1.234"}, "deposit"),
        ({"weeks": "200"}, "weeks"),
        ({"n__nuc-box-5__sound": "-1"}, "n__nuc-box-5__sound"),
    ],
)
def test_terms_that_make_no_sense_are_marked_and_nothing_sold(client, keeper, nucs, changed, field):
    answer = sold(client, nucs[0], **changed)
    assert answer.status_code == 422
    assert field in answer.context["form"].errors
    assert not Sale.objects.exists()


def test_more_than_the_deposit_is_not_given_back(client, keeper, shed, nucs):
    sold(client, nucs[0], **DEPOSIT)
    answer = send(client, reverse("sale-back", args=[Sale.objects.get().pk]), refund="50")
    assert "50.00 of the deposit of Invented Neighbour cannot be given back" in faults(answer)[0]


def test_which_ones_are_sold_is_asked_first(client, keeper, yard, nucs):
    page = client.get(f"{SELL}?yard={yard.code}")
    assert [colony.tag for colony in page.context["colonies"]] == ["N-1", "N-2"]
    assert 'name="colonies"' in page.content.decode()


def test_a_dead_colony_is_not_sold(client, keeper, deadout):
    answer = send(client, address(deadout), buyer="Invented Neighbour")
    assert "ended on 1 June 2025" in faults(answer)[0]


def test_an_undone_sale_has_no_page_to_bring_back(client, keeper, nucs):
    sold(client, nucs[0], **DEPOSIT)
    sale = Sale.objects.get()
    undo(sale.act, who=keeper, key="undo")
    assert client.get(reverse("sale-back", args=[sale.pk])).status_code == 404


def test_a_helper_sees_no_price_and_sells_nothing(client, keeper, shed, yard, nucs):
    sold(client, nucs[0], **DEPOSIT)
    client.force_login(makers.make_person("helper", role=Access.Role.HELPER, yards=[yard]))
    assert client.get(address(nucs[1])).status_code == 403
    week, page = client.get(reverse("home")), reverse("sale-back", args=[Sale.objects.get().pk])
    assert "Invented Neighbour" in text(week)
    assert "deposit" not in text(week)
    shown = client.get(page)
    assert "refund" not in shown.context["form"].fields
    send(client, page, into=yard.code)
    assert still_owed(Sale.objects.get()) == {}


def test_a_sale_from_elsewhere_is_not_a_helper_s_to_see(client, keeper, nucs):
    sold(client, nucs[0], **DEPOSIT)
    elsewhere = makers.make_person("helper", role=Access.Role.HELPER, yards=[makers.make_yard("far")])
    client.force_login(elsewhere)
    assert "Invented Neighbour" not in text(client.get(reverse("home")))
    assert client.get(reverse("sale-back", args=[Sale.objects.get().pk])).status_code == 403


def test_each_page_carries_its_caution(client, keeper, nucs):
    assert "Caution: disease" in text(client.get(address(nucs[0])))
    sold(client, nucs[0], **DEPOSIT)
    assert "foulbrood" in text(client.get(reverse("sale-back", args=[Sale.objects.get().pk])))


def test_all_sales_stand_on_one_page_those_to_bring_back_first(client, keeper, nucs):
    sold(client, nucs[0], **DEPOSIT)
    sold(client, nucs[1], buyer="Invented Orchard", price="150.00")
    page = client.get(reverse("sales"))
    words = text(page)
    assert reverse("sale-back", args=[Sale.objects.first().pk]) in page.content.decode()
    assert "330.00" in words and "40.00 of the deposit held" in words
    assert reverse("sales") in client.get(reverse("books")).content.decode()
    assert reverse("sales") in client.get(reverse("home")).content.decode()


@pytest.mark.parametrize("column", ["buyer", "day", "tags", "price", "deposit", "held", "still", "back_by"])
def test_sales_sort_by_every_column(client, keeper, nucs, column):
    sold(client, nucs[0], **DEPOSIT)
    sold(client, nucs[1], price="")
    for way in ("", "-"):
        answer = client.get(reverse("sales"), {"sort": way + column})
        assert answer.status_code == 200 and "aria-sort" in answer.content.decode()


def test_without_a_sale_the_page_says_so(client, keeper, yard):
    assert "No sale answers to this." in text(client.get(reverse("sales")))
