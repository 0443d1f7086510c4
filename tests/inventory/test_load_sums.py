"""Parts on the keeper's truck: the limits told, what is over in words, and parts as a load sees them."""

from decimal import Decimal

import pytest

from inventory.load_sums import comb_weights, honey_lb, piece_of, truck, weigh
from inventory.models import Part
from tests import makers

pytestmark = pytest.mark.django_db


def test_the_truck_is_the_keepers_or_the_usual_one():
    assert (truck().lb, truck().cubic_ft) == (1000, 50)
    makers.make_keeper(truck_lb=1500, truck_cubic_ft=80)
    assert (truck().lb, truck().cubic_ft) == (1500, 80)


def test_every_part_of_the_catalogue_has_weight_and_room():
    makers.make_catalogue()
    pieces = [piece_of(part) for part in Part.objects.all()]
    assert all(piece.cubic_in > 0 and piece.lb > 0 for piece in pieces)


def test_a_load_within_the_truck_is_one_trip_and_one_over_says_what_is_over():
    makers.make_keeper(truck_lb=100, truck_cubic_ft=50)
    box = makers.part("box-medium-10")
    assert (weigh([(box, 10)]).over, weigh([(box, 10)]).trips_words) == (False, "1 trip")
    heavy = weigh([(box, 41)])
    assert heavy.over
    assert heavy.sentence == (
        "This load is 205 lb where your truck takes 100 and 56 cubic ft where your truck takes 50: that is 3 trips."
    )


def test_honey_is_weighed_for_boxes_that_are_told_full():
    box, combs = makers.part("box-medium-10"), comb_weights()
    assert set(combs) == {"deep", "medium", "shallow"}
    assert honey_lb(box, combs) == Decimal(60) - box.tare_lb - 10 * combs["medium"]
    assert weigh([(box, 2)], full=[(box, 2)]).load.honey_lb == 2 * honey_lb(box, combs)
    assert honey_lb(makers.part("floor-10"), combs) == 0


def test_the_room_between_stacks_is_told_in_per_cent():
    assert weigh([]).spacing == 10
