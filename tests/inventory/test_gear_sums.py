"""Gear gathered by part: places, conditions, sums and value."""

from decimal import Decimal

import pytest

from inventory.gear_sums import by_part, sums_of
from inventory.models import Part
from inventory.stock import by_place
from tests import makers

pytestmark = pytest.mark.django_db


@pytest.fixture
def rows():
    shed, yard = makers.make_shed(), makers.make_yard("fern-hollow")
    makers.put(shed, {"box-deep-10": 8, "sugar": 50})
    makers.put(shed, {"box-deep-10": 2}, condition="to mend")
    makers.put(yard, {"cover-10": 1}, condition="held back")
    makers.put(makers.make_colony("F-01", yard=yard), {"box-deep-10": 2})
    return by_part(by_place(), Part.objects.all())


def test_a_part_knows_its_places_and_its_sum(rows):
    deep = rows[0]
    assert [(place.yard, place.on_colonies, place.quantity) for place in deep.places] == [
        ("shed", False, 10),
        ("fern-hollow", True, 2),
    ]
    assert (deep.in_stores, deep.on_colonies, deep.quantity) == (10, 2, 12)
    assert (deep.name, deep.unsound) == ("Deep box, 10 frames", "2 to mend")
    assert [place.words for place in deep.places] == ["of them 2 to mend", ""]


def test_a_place_where_nothing_is_sound_says_so(rows):
    cover = next(row for row in rows if row.part.code == "cover-10")
    assert [place.words for place in cover.places] == ["held back"]


def test_only_parts_that_lie_somewhere_are_listed_in_the_order_of_a_hive(rows):
    assert [row.part.code for row in rows] == ["box-deep-10", "cover-10", "sugar"]


def test_value_is_pieces_times_list_price_and_sums_leave_other_units_out(rows):
    assert rows[0].value == 12 * Decimal("26.00")
    sums = sums_of(rows)
    assert (sums.in_stores, sums.on_colonies, sums.pieces) == (11, 2, 13)
    assert sums.value == sum(row.value for row in rows)


def test_no_rows_sum_to_nothing():
    assert sums_of([]).value == 0
