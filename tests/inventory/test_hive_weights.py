"""A hive between its empty gear and all its boxes full."""

from decimal import Decimal

import pytest

from inventory.hive_weights import hive_weights
from tests import makers

pytestmark = pytest.mark.django_db


def test_a_hive_weighs_its_tare_and_at_most_its_full_boxes():
    hive = makers.make_colony(gear=True)
    (weight,) = hive_weights([hive]).values()
    # two deep boxes 14.46, twenty combs 17.80, floor 6.50, inner cover 3.00, cover 7.50 lb by the catalogue's tares
    assert weight.empty_lb == 50
    # two full deeps at 90 lb (common extension teaching, from memory), floor and covers 17 lb, brood combs 4.4 lb heavier
    # than honey combs; an average two-storey colony weighs 165 to 200 lb (Tew, 2016)
    assert weight.full_lb == 202


def test_a_hive_takes_the_room_of_its_boxes_floor_and_covers():
    hive = makers.make_colony(gear=True)
    # two deeps 19.875 by 16.25 by 9.625 in (width and height published, see the catalogue), floor and covers as the
    # catalogue has them; a tenth between stacks. A two-deep ten-frame hive is about 5 cubic ft, common practice, no source
    room = hive_weights([hive])[hive.pk].cubic_ft
    boxes = 2 * Decimal("19.875") * Decimal("16.25") * Decimal("9.625") / 12**3 * Decimal("1.1")
    assert boxes < room < boxes * Decimal("1.5")


def test_a_hive_without_gear_in_the_books_weighs_nothing():
    hive = makers.make_colony()
    weight = hive_weights([hive])[hive.pk]
    assert (weight.full_lb, weight.cubic_ft) == (0, 0)


def test_one_question_for_all(django_assert_num_queries):
    hives = [makers.make_colony(gear=True) for _ in range(3)]
    with django_assert_num_queries(2):
        assert len(hive_weights(hives)) == 3
