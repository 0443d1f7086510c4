"""The invented spring: what was split, hived, sold and moved is where it was said to be."""

import pytest

from apiary.models import Colony, ColonyEvent
from inventory.models import Act, Sale
from inventory.sales import is_settled
from inventory.stock import on_colony

pytestmark = pytest.mark.django_db


def test_splits_have_mothers_in_two_deeps_and_stand_in_one_deep_of_their_own(lived):
    daughters = Colony.objects.filter(tag__endswith="-a")
    assert 3 <= daughters.count() <= 7
    for daughter in daughters.alive(on=lived.order_day):
        combs = sum(n for gear, n in on_colony(daughter).items() if gear.part == "comb-deep-brood")
        assert daughter.mother.hive_set.code == "two-deeps-10"
        assert combs == 10


def test_nucs_sold_in_a_swap_came_back_as_gear_and_the_sale_is_settled(lived):
    swap = Sale.objects.order_by("day").first()
    assert {colony.ended_why for colony in swap.colonies.all()} == {Colony.Ended.SOLD}
    assert is_settled(swap)
    assert "invented" in swap.buyer


def test_hived_nucs_stand_in_a_full_hive_and_moved_colonies_in_their_new_yard(lived):
    hived = ColonyEvent.objects.filter(act_key__in=keys("hive a nuc"), kind=ColonyEvent.Kind.SET)
    assert {event.colony.hive_set.is_nuc for event in hived} == {False}
    moved = ColonyEvent.objects.filter(act_key__in=keys("move colonies"))
    assert moved.count() == 2
    assert {event.colony.yard_id for event in moved} == {event.yard_id for event in moved}


def keys(name):
    return list(Act.objects.filter(name=name).values_list("key", flat=True))
