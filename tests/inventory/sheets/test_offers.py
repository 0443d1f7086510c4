"""Suppliers, price lines, steps and kits."""

import datetime as dt
from decimal import Decimal

import pytest

from tests.inventory.sheets.workbooks import known, only_fault, read


@pytest.mark.parametrize(
    "changes, sheet, cell, what",
    [
        ({("Suppliers", "order_fee", 2): "free"}, "Suppliers", "C2", "'free' is text, not a number"),
        ({("Suppliers", "order_fee", 2): 9.999}, "Suppliers", "C2", "9.999 has more than 2 decimals"),
        (
            {("Suppliers", "name", 3): "example joinery (invented)"},
            "Suppliers",
            "A3",
            "'example joinery (invented)' stands in row 2 already",
        ),
        ({("Prices", "supplier", 2): "Acme"}, "Prices", "A2", "the supplier 'Acme' is not known"),
        ({("Prices", "part", 2): "quilt"}, "Prices", "D2", "the part 'quilt' is not known"),
        ({("Prices", "units", 2): None}, "Prices", "E2", "how many a pack holds is not said"),
        ({("Prices", "units", 2): 0}, "Prices", "E2", "0 is out of range"),
        ({("Prices", "price_1", 2): None}, "Prices", "F2", "Price is empty"),
        ({("Prices", "price_1", 2): -1}, "Prices", "F2", "-1 is negative"),
        ({("Prices", "price_2", 2): None}, "Prices", "H2", "price step 2 is half said"),
        ({("Prices", "from_2", 2): None}, "Prices", "G2", "price step 2 is half said"),
        (
            {("Prices", "from_3", 2): 10, ("Prices", "price_3", 2): 60},
            "Prices",
            "I2",
            "10 packs is no more than the step before it (10)",
        ),
        (
            {("Prices", "open_from", 2): "2027-02-01"},
            "Prices",
            "Q2",
            "the price ends on 2027-01-31, before it begins on 2027-02-01",
        ),
        ({("Prices", "max_packs", 2): 0}, "Prices", "S2", "0 is out of range"),
        (
            {("Prices", "code", 3): "example-box"},
            "Prices",
            "C3",
            "the code 'example-box' belongs to row 2 already",
        ),
        (
            {("Prices", "part", 3): "floor, 10 frames", ("Prices", "units", 3): 1},
            "Prices",
            "D3",
            "the offer names a part here and a kit on Kits",
        ),
        ({("Kits", "part", 2): "quilt"}, "Kits", "C2", "the part 'quilt' is not known"),
        ({("Kits", "part", 3): "floor, 10 frames"}, "Kits", "C3", "the kit names this part already"),
        ({("Kits", "supplier", 2): "Acme"}, "Kits", "A2", "the supplier 'Acme' is not known"),
        (
            {("Kits", "offer", 2): "Floor and covr"},
            "Kits",
            "B2",
            "this supplier has no 'Floor and covr' on Prices",
        ),
        ({("Kits", "units", 2): "one"}, "Kits", "D2", "'one' is text, not a number"),
    ],
)
def test_what_cannot_be_is_refused_with_its_cell(changes, sheet, cell, what):
    fault = only_fault(changes)
    assert (fault.sheet, fault.cell, fault.what) == (sheet, cell, what)


def test_an_offer_twice_at_one_supplier_is_refused():
    changes = {("Prices", "name", 4): "medium BOXES in pieces, 5", ("Prices", "supplier", 4): "example"}
    changes |= {("Prices", "price_1", 4): 3}
    fault = only_fault(changes)
    assert fault.what == "this supplier's 'medium BOXES in pieces, 5' stands in row 2 already"


def test_an_offer_without_a_part_or_a_kit_is_refused():
    changes = {("Kits", key, row): None for key in ("supplier", "offer", "part", "units") for row in (2, 3)}
    fault = only_fault(changes)
    assert (fault.cell, fault.what) == ("D3", "no part is named, here or on Kits")


def test_a_misspelled_offer_of_a_kit_comes_with_the_nearest():
    assert (
        only_fault({("Kits", "offer", 2): "Floor and covr"}).remedy
        == "Did you mean 'Floor and cover'? Write that"
    )


def test_a_code_of_another_suppliers_offer_in_the_books_is_refused():
    fault = only_fault(of=known(offers={"example-box": ("other", "Boxes")}))
    assert fault.what == "the code 'example-box' belongs to an offer of another supplier in the books"


def test_a_code_left_empty_is_the_books_else_made_of_supplier_and_offer():
    changes = {("Prices", "code", 2): None, ("Prices", "code", 3): None}
    books = known(offers={"fc": ("example", "floor AND cover")})
    assert [offer.code for offer in read(changes, of=books).sheet.offers] == [
        "example-medium-boxes-in-pieces-5",
        "fc",
    ]


def test_prices_are_exact_and_steps_rise():
    changes = {("Prices", "from_3", 2): "20", ("Prices", "price_3", 2): "$61.07"}
    changes[("Prices", "price_rule", 2)] = "only further packs"
    offer = read(changes).sheet.offers[0]
    assert offer.prices == ((1, Decimal("70.00")), (10, Decimal("64.50")), (20, Decimal("61.07")))
    assert (offer.price_rule, offer.open_until) == ("incremental", dt.date(2027, 1, 31))


def test_a_price_that_rises_with_more_packs_is_worth_a_word():
    (note,) = read({("Prices", "price_2", 2): 71}).notes
    assert (note.cell, note.what) == ("H2", "the price rises with more packs")


def test_kits_hold_each_part_with_its_units():
    assert read({("Kits", "units", 3): 2}).sheet.offers[1].parts == {"floor-10": 1, "cover-10": 2}


def test_an_offer_with_a_faulty_kit_is_not_said_to_lack_parts_too():
    assert only_fault({("Kits", "part", 2): "quilt"}).sheet == "Kits"
