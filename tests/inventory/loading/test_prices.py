"""Price lists of a sheet: exact to the cent, changed prices told, offers no longer listed kept."""

import dataclasses
import datetime as dt
from decimal import Decimal

import pytest

from apiary.models import Yard
from inventory.models import Offer
from inventory.orders import OrderItem, cost_of, place_order
from inventory.sheets import OfferRow, YardRow
from inventory.sheets.examples import example
from tests.inventory.loading.made import DAY, LATER, changed, load, told

pytestmark = pytest.mark.django_db


def test_prices_are_exact_to_the_cent():
    load()
    offer = Offer.objects.get(code="example-box")
    assert [(step.from_packs, step.price_cents) for step in offer.steps.all()] == [(1, 7000), (10, 6450)]
    assert cost_of(offer, 12) == Decimal("774.00")
    assert {line.part.code: line.units for line in Offer.objects.get(code="example-kit").parts.all()} == {
        "floor-10": 1,
        "cover-10": 1,
    }
    assert (offer.supplier.order_fee_cents, offer.supplier.free_from_cents) == (8000, 200000)


def test_a_changed_kit_and_rule_are_told():
    load()
    box, kit = example().offers
    kit = dataclasses.replace(kit, parts={"floor-10": 2}, price_rule="incremental")
    loaded = load(changed(offers=(box, kit)), digest="b")
    assert told(loaded, "prices")[1][2] == "price steps, what a pack holds"


def test_an_offer_the_sheet_has_no_more_stays_and_is_told():
    load()
    loaded = load(changed(offers=example().offers[:1]), digest="b")
    assert told(loaded, "prices")[-1] == (
        "Floor and cover",
        "as it is",
        "not in the sheet, stays: say on Suppliers that the list is complete to close it",
    )


def test_an_offer_that_was_ordered_may_change_its_price():
    load()
    offer = Offer.objects.get(code="example-box")
    order = place_order(offer.supplier, [OrderItem(offer=offer, packs=2)], placed_on=DAY)
    box = dataclasses.replace(example().offers[0], prices=((1, Decimal("99.00")),))
    load(changed(offers=(box,)), digest="b")
    assert order.lines.get().cost_cents == 14000


def test_offers_and_yards_of_other_sheets_are_left_alone():
    load()
    ridge = YardRow(code="ridge", name="Ridge", stands=4)
    other = OfferRow(
        code="other", supplier="example", name="Stand", parts={"stand": 1}, prices=((1, Decimal(9)),)
    )
    load(changed(yards=(ridge,), offers=(other,), flows=(), colonies=(), gear=()), digest="b")
    assert Yard.objects.count() == 3 and Offer.objects.count() == 3


def test_a_list_said_to_be_complete_closes_what_it_has_no_more():
    load()
    supplier = dataclasses.replace(example().suppliers[0], complete=True)
    loaded = load(changed(suppliers=(supplier,), offers=example().offers[:1]), digest="b", day=LATER)
    assert told(loaded, "prices")[-1] == (
        "Floor and cover",
        "changed",
        "no more on the list: holds until 2026-09-30",
    )
    assert Offer.objects.get(code="example-kit").open_until == LATER - dt.timedelta(days=1)
    again = load(changed(suppliers=(supplier,), offers=example().offers[:1]), digest="c", day=LATER)
    assert again.differences == ()


def test_a_closed_offer_that_was_still_to_open_never_opens():
    kit = dataclasses.replace(example().offers[1], open_from=LATER + dt.timedelta(days=30))
    load(changed(offers=(kit,)))
    supplier = dataclasses.replace(example().suppliers[0], complete=True)
    load(changed(suppliers=(supplier,), offers=()), digest="b", day=LATER)
    row = Offer.objects.get(code="example-kit")
    assert row.open_from == row.open_until == LATER - dt.timedelta(days=1)
