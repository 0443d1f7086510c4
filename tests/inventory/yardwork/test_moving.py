"""Colonies taken to another yard: their gear stays on them, all go or none."""

import datetime as dt

import pytest

from apiary.colonies import yard_on
from apiary.errors import SameYard
from apiary.models import Colony
from inventory.errors import ColonyEnded, ColonyNotStarted, FutureDay
from inventory.models import Act
from inventory.proof import prove
from inventory.stock import in_yard, on_hand
from inventory.yardwork import undo
from inventory.yardwork.moving import move_colonies
from inventory.yardwork.refusals import NoColony
from tests import makers

pytestmark = pytest.mark.django_db
JUNE = dt.date(2025, 6, 1)


@pytest.fixture
def creek(db):
    return makers.make_yard("creek")


@pytest.fixture
def hill(db):
    return makers.make_yard("hill")


@pytest.fixture
def colonies(creek):
    return [makers.make_colony(tag, yard=creek, gear=True) for tag in ("A1", "A2")]


def taken_to(yard, colonies, *, day=JUNE, key="move-1"):
    return move_colonies(colonies=colonies, yard=yard, day=day, who=None, key=key)


def test_the_gear_of_a_colony_stays_on_it(creek, hill, colonies):
    before = in_yard(creek)
    act = taken_to(hill, colonies)
    assert not act.movements.exists()
    assert {colony.yard for colony in Colony.objects.all()} == {hill}
    assert on_hand(colonies[0])
    assert (in_yard(hill), in_yard(creek)) == (before, {})
    assert prove().faults == ()


def test_some_stay(creek, hill, colonies):
    taken_to(hill, colonies[:1])
    assert [colony.yard for colony in Colony.objects.order_by("tag")] == [hill, creek]


def test_resent_and_undone(creek, hill, colonies):
    act = taken_to(hill, colonies)
    assert taken_to(hill, colonies) == act
    assert colonies[0].events.filter(kind="moved").count() == 1
    undo(act, who=None, key="back")
    assert {colony.yard for colony in Colony.objects.all()} == {creek}
    assert yard_on(colonies[0], JUNE) == creek


def test_the_yard_they_stand_in_is_refused_and_none_moves(creek, hill, colonies):
    there = makers.make_colony("H1", yard=hill)
    with pytest.raises(SameYard, match="H1 stands in Hill already"):
        taken_to(hill, [*colonies, there])
    assert colonies[0].events.filter(kind="moved").count() == 0
    assert not Act.objects.filter(name="move colonies").exists()


def test_each_other_refusal_is_told(creek, hill, colonies):
    with pytest.raises(ColonyEnded):
        taken_to(hill, [makers.make_dead_colony(tag="D1", yard=creek)])
    with pytest.raises(ColonyNotStarted):
        taken_to(hill, colonies[:1], day=makers.DAY - dt.timedelta(days=1))
    with pytest.raises(FutureDay):
        taken_to(hill, colonies, day=dt.date(2999, 1, 1))
    with pytest.raises(NoColony):
        taken_to(hill, [])
