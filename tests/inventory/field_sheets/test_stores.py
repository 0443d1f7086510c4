"""A count on paper before any count is begun: blind without a figure, beside the book with it, hives by their boxes."""

import pytest

from inventory.field_sheets.stores import places_to_count
from inventory.models import Count
from tests import makers

pytestmark = pytest.mark.django_db


@pytest.fixture
def yard():
    yard = makers.make_yard("fern-hollow")
    makers.put(yard, {"box-medium-10": 14, "sugar": 50})
    makers.make_colony("F-01", yard=yard, gear=True)
    return yard


def told(places):
    return [
        (str(place), [(head, [(row.part.code, row.booked) for row in rows]) for head, rows in heads])
        for place, heads in places
    ]


def test_beside_the_book_each_piece_has_its_figure_under_its_head(yard):
    (place,) = told(places_to_count(yard, day=makers.DAY, blind=False))
    assert place[1] == [
        ("Boxes", [("box-medium-10", 14)]),
        ("Feed and consumables", [("sugar", 50)]),
    ]


def test_blind_also_lists_what_passed_through_and_is_no_longer_there(yard):
    code = "excluder-10"
    makers.put(yard, {code: 2})
    makers.ledger.move(
        source=yard,
        target=makers.make_shed(),
        lines=[makers.Line(code, 2)],
        day=makers.DAY,
        who=None,
        key=makers.fresh_key(),
    )

    def listed(blind):
        (place,) = told(places_to_count(yard, day=makers.DAY, blind=blind))
        return code in {part for _head, rows in place[1] for part, _booked in rows}

    assert (listed(True), listed(False)) == (True, False)


def test_with_colonies_each_hive_follows_with_its_boxes_only(yard):
    places = told(places_to_count(yard, day=makers.DAY, blind=False, with_colonies=True))
    assert len(places) == 2
    assert places[1][1] == [("Boxes", [("box-deep-10", 2)])]


def test_no_count_is_begun_by_it(yard):
    places_to_count(yard, day=makers.DAY, blind=True, with_colonies=True)
    assert Count.objects.count() == 0
