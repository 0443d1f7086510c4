"""What a sheet changes is told by kind and name, what stays as it is too."""

import dataclasses
from decimal import Decimal

import pytest

from apiary.models import Keeper, Yard
from inventory import loading
from inventory.models import Movement, Offer
from inventory.sheets.examples import example
from tests.inventory.loading.made import DAY, changed, everything, load, told

pytestmark = pytest.mark.django_db


def test_another_file_with_the_same_content_changes_nothing():
    load()
    before = [row.pk for row in Movement.objects.all()]
    loaded = load(digest="b")
    assert loaded.posted and [row.pk for row in Movement.objects.all()] == before
    assert {change.becomes for change in loaded.changes} == {"as it is"} and loaded.differences == ()
    assert loaded.sentence == "Posted: nothing new."


def test_a_dry_run_into_empty_books_leaves_them_empty():
    before = everything()
    assert loading.dry_run(example(), day=DAY).counts == (
        ("keeper", 1, 0, 0),
        ("yards", 2, 0, 0),
        ("flows", 2, 0, 0),
        ("colonies", 2, 0, 0),
        ("gear", 3, 0, 0),
        ("suppliers", 1, 0, 0),
        ("prices", 2, 0, 0),
        ("winters", 2, 0, 0),
    )
    assert everything() == before


def test_a_changed_sheet_brings_yards_prices_and_suppliers_up_to_date():
    load()
    shed, mill = example().yards
    box, kit = example().offers
    sheet = changed(
        keeper=dataclasses.replace(example().keeper, truck_lb=1500),
        yards=(shed, dataclasses.replace(mill, stands=20, gate="0815")),
        suppliers=(dataclasses.replace(example().suppliers[0], free_from=None),),
        offers=(dataclasses.replace(box, prices=((1, Decimal("71.25")),)), kit),
    )
    loaded = load(sheet, digest="b")
    assert told(loaded, "yards")[1] == ("Mill Field (invented)", "changed", "stands, gate")
    assert told(loaded, "keeper") == [("Example keeper (invented)", "changed", "truck's load, lb")]
    assert told(loaded, "suppliers")[0][2] == "shipping free from, cents"
    assert told(loaded, "prices") == [
        (
            "Example Joinery (invented): Medium boxes in pieces, 5",
            "changed",
            "price 70.00 / 64.50 from 10 becomes 71.25",
        ),
        ("Example Joinery (invented): Floor and cover", "as it is", ""),
    ]
    assert Yard.objects.get(code="mill-field").stands == 20 and Keeper.objects.get().truck_lb == 1500
    assert Offer.objects.get(code="example-box").steps.get().price_cents == 7125
