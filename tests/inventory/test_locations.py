"""Where gear can be: one location for each yard, colony and outside end."""

import pytest
from django.db import transaction

from apiary.models import Colony
from inventory.locations import location_of, outside, place_of, places_of, store_of
from inventory.models import Location
from tests import makers

pytestmark = pytest.mark.django_db


def test_a_yard_has_one_store_and_a_colony_one_place():
    colony = makers.make_colony(yard=makers.make_yard("creek"))
    assert store_of(colony.yard) == location_of(colony.yard) == store_of(colony.yard)
    assert place_of(colony) == location_of(colony)
    assert location_of(place_of(colony)) == place_of(colony)
    assert (str(store_of(colony.yard)), str(place_of(colony))) == ("Creek", colony.tag)
    assert Location.objects.count() == 2


def test_a_location_made_in_vain_is_not_remembered():
    """A refused act rolls its locations back; the yard and the colony in hand find the ones others made afterwards."""
    colony = makers.make_colony(yard=makers.make_yard("creek"))
    with transaction.atomic():
        store_of(colony.yard), place_of(colony)
        transaction.set_rollback(True)
    other = store_of(makers.make_yard("fern-hollow"))
    again = Colony.objects.get(pk=colony.pk)
    place, store = place_of(again), store_of(again.yard)
    assert (colony.yard.store, colony.place) == (store, place)
    assert len({other.pk, place.pk, store.pk}) == Location.objects.count() == 3


@pytest.mark.parametrize("kind", [kind for kind in Location.Kind if kind not in Location.INSIDE])
def test_each_outside_end_is_there_once(kind):
    assert outside(kind) == outside(kind)
    assert not outside(kind).is_inside


@pytest.mark.parametrize("kind", Location.INSIDE)
def test_an_inside_kind_is_no_outside_end(kind):
    with pytest.raises(ValueError, match="outside"):
        outside(kind)


def test_other_things_are_no_ground():
    with pytest.raises(TypeError):
        location_of("shed")


def test_places_of_many_colonies_are_found_or_made_at_once(django_assert_num_queries):
    creek = makers.make_yard("creek")
    bees = [makers.make_colony(yard=creek) for _ in range(4)]
    known = place_of(bees[2])
    with django_assert_num_queries(3):
        places = places_of(bees)
    assert [places[colony.pk].colony for colony in bees] == bees
    assert (places[bees[2].pk], Location.objects.count()) == (known, 4)
    assert places_of([]) == {}
