"""What gear and books are narrowed to; the pages' tests show the whole."""

import pytest

from inventory.filters import BooksFilter, GearFilter
from inventory.models import Act, Part
from inventory.stock import by_place
from tests import makers

pytestmark = pytest.mark.django_db


def test_place_and_condition_say_which_rows_of_stock_stay():
    shed, yard = makers.make_shed(), makers.make_yard("fern-hollow")
    makers.put(shed, {"box-deep-10": 8})
    makers.put(yard, {"box-deep-10": 2}, condition="held back")
    asked = GearFilter({"place": "fern-hollow", "condition": "held back"}, queryset=Part.objects.all())
    assert asked.form.is_valid()
    assert [row.quantity for row in by_place() if asked.keeps(row)] == [2]


def test_a_wrong_word_narrows_nothing():
    makers.put(makers.make_shed(), {"box-deep-10": 8})
    asked = GearFilter({"place": "nowhere"}, queryset=Part.objects.all())
    assert not asked.form.is_valid()
    assert asked.keeps(by_place()[0])


def test_a_place_means_its_store_and_its_colonies():
    yard = makers.make_yard("fern-hollow")
    makers.put(makers.make_shed(), {"box-deep-10": 8})
    makers.put(yard, {"box-deep-10": 2})
    makers.put(makers.make_colony("F-01", yard=yard), {"box-deep-10": 1})
    asked = BooksFilter({"place": "fern-hollow"}, queryset=Act.objects.all())
    assert sorted(asked.shown().values_list("quantity", flat=True)) == [1, 2]
    assert asked.qs.count() == 2


def test_what_was_chosen_is_told_in_words():
    makers.make_yard("fern-hollow")
    asked = BooksFilter({"place": "fern-hollow", "since": "2025-05-10"}, queryset=Act.objects.all())
    assert asked.chosen_words == "place Fern Hollow, from day 10 May 2025"
    assert BooksFilter({}, queryset=Act.objects.all()).chosen_words == ""
