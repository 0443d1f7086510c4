"""Colonies requeened: one act, no gear, the queen's origin kept."""

import datetime as dt

import pytest

from apiary.errors import UnknownWord
from apiary.queens import queen_of
from inventory.errors import ColonyEnded, ColonyNotStarted, FutureDay, Several
from inventory.models import Act
from inventory.yardwork import undo
from inventory.yardwork.refusals import NoColony
from inventory.yardwork.requeening import requeen
from tests import makers

pytestmark = pytest.mark.django_db
JULY = dt.date(2025, 7, 1)


@pytest.fixture
def colony(db):
    return makers.make_colony("A1")


def given(*colonies, queen="bought", day=JULY, key="queen-1", note=""):
    return requeen(colonies=colonies, queen=queen, day=day, who=None, key=key, note=note)


def test_a_colony_has_the_queen_it_was_given(colony):
    assert queen_of(colony) is None
    act = given(colony, note="blue dot")
    assert (queen_of(colony).words, queen_of(colony).since) == ("a mated queen, bought: blue dot", JULY)
    assert not act.movements.exists()


def test_the_latest_day_tells_the_queen_even_when_told_late(colony):
    given(colony, queen="cell")
    given(colony, queen="swarm", day=JULY - dt.timedelta(days=20), key="late")
    assert queen_of(colony).words == "a queen cell given"


def test_many_at_once_resent_and_undone(colony):
    other = makers.make_colony("A2")
    act = given(colony, other)
    assert given(colony, other) == act
    assert Act.objects.count() == 1
    undo(act, who=None, key="back")
    assert queen_of(colony) is queen_of(other) is None


def test_each_refusal_is_told(colony):
    dead = makers.make_dead_colony(tag="D1")
    with pytest.raises(ColonyEnded):
        given(dead)
    with pytest.raises(ColonyNotStarted):
        given(colony, day=makers.DAY - dt.timedelta(days=1))
    with pytest.raises(FutureDay):
        given(colony, day=dt.date(2999, 1, 1))
    with pytest.raises(UnknownWord, match="queen's origin"):
        given(colony, queen="hope")
    with pytest.raises(NoColony):
        given()
    with pytest.raises(Several):
        given(dead, makers.make_dead_colony(tag="D2"))
    given(colony)
    assert Act.objects.count() == 1
