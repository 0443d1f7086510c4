"""Boxes going on and coming off at random: nothing is lost on the way, and undone from the last on all is as it was."""

import datetime as dt
import random

import pytest

from apiary.models import Colony
from inventory.errors import Refused
from inventory.gear import Kind
from inventory.models import Act, Holding, Movement
from inventory.proof import prove
from inventory.yardwork import undo
from inventory.yardwork.boxes import add_brood_box, super_up
from inventory.yardwork.pulling import pull
from tests import makers

pytestmark = pytest.mark.django_db
SETS = ("two-deeps-10", "one-deep-10", "one-deep-8", "three-mediums-10", "nuc-5")
STOCK = {"box-medium-10": 5, "box-medium-8": 1, "box-deep-10": 2, "comb-medium-honey": 33}


def state():
    """What lies where, and in which set every colony stands."""
    rows = Holding.objects.filter(quantity__gt=0).values_list(
        "location", "part__code", "condition", "quantity"
    )
    return set(rows), dict(Colony.objects.values_list("tag", "hive_set__code"))


def boxes():
    """Boxes inside less those that were found: the same whatever is done."""
    inside = sum(row.quantity for row in Holding.objects.filter(part__kind=Kind.BOX))
    found = Movement.objects.filter(found=True, part__kind=Kind.BOX, act__reverses=None)
    return inside - sum(row.quantity for row in found)


def one_act(chance, hives, yard, number):
    numbers = {hive: chance.randint(0, 2) for hive in chance.sample(hives, 3)}
    fields = {"day": makers.DAY + dt.timedelta(days=number), "who": None, "key": f"act-{number}"}
    act = chance.choice((super_up, super_up, pull, add_brood_box))
    if act is super_up:
        return act(colonies=numbers, source=yard, combs=chance.choice((None, 8)), **fields)
    if act is pull:
        return act(colonies=numbers, target=yard, drawn=chance.random() < 0.5, **fields)
    return act(colonies=numbers, source=yard, **fields)


@pytest.mark.parametrize("seed", range(6))
def test_nothing_is_lost_and_all_can_be_taken_back(seed):
    chance, yard = random.Random(seed), makers.make_yard("creek")
    hives = [makers.make_colony(f"A{n}", yard=yard, hive_set=code, gear=True) for n, code in enumerate(SETS)]
    makers.put(yard, STOCK)
    before, counted, done = state(), boxes(), []
    for number in range(14):
        held = state()
        try:
            done.append(one_act(chance, hives, yard, number))
        except Refused:
            assert state() == held
        assert boxes() == counted
    assert len(done) > 3
    assert prove().faults == ()
    for act in reversed(done):
        undo(act, who=None, key=f"undo-{act.pk}")
    assert state() == before
    assert prove().faults == ()
    assert Act.objects.filter(reverses__isnull=False).count() == len(done)
