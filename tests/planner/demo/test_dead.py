"""Deadouts of the invented year: worked, salvaged, held back, released on a written word, and one that waits."""

import pytest

from apiary.models import Colony, Yard
from inventory.deadouts import waiting
from inventory.gear import Condition
from inventory.models import Act, Deadout, Part
from inventory.stock import on_hand

pytestmark = pytest.mark.django_db


def test_a_colony_that_ended_holds_nothing_but_the_one_still_to_be_worked(lived):
    holding = Colony.objects.filter(ended_on__isnull=False, place__holdings__quantity__gt=0).distinct()
    assert list(holding) == list(waiting.to_work(on=lived.order_day))
    assert holding.count() == 1


def test_combs_nobody_looked_at_are_held_back_and_others_were_released_on_the_word(lived):
    held = {
        gear.part: n
        for gear, n in on_hand(Yard.objects.get(is_shed=True)).items()
        if gear.condition == Condition.HELD and n
    }
    assert held
    assert set(Part.objects.filter(code__in=held).values_list("comb", flat=True)) == {"drawn"}
    assert Deadout.objects.filter(brood_seen=False).count() == 2
    word = Act.objects.get(name="inspector's word").inspector_word
    assert "invented" in word.inspector and "invented" in word.words
    assert Act.objects.get(name="release").day > word.written_on


def test_the_combs_of_one_deadout_still_wait_for_the_freezer(lived):
    assert [row.brood_seen for row in waiting.to_freeze()] == [False]
