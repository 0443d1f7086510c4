"""Colonies written down as no more: one act of the books, undone like any other, their gear left where it is."""

import datetime as dt

import pytest

from apiary.errors import UnknownWord
from inventory.errors import ColonyEnded, ColonyNotStarted, FutureDay, Several
from inventory.models import Act
from inventory.stock import on_hand
from inventory.yardwork import undo
from inventory.yardwork.ending import end_colonies
from inventory.yardwork.refusals import NoColony
from tests import makers

pytestmark = pytest.mark.django_db
NOVEMBER = dt.date(2025, 11, 9)


@pytest.fixture
def colony(db):
    return makers.make_colony("A1", gear=True)


def ended(*colonies, why="died", day=NOVEMBER, key="end-1", note=""):
    return end_colonies(colonies=colonies, why=why, day=day, who=None, key=key, note=note)


def test_a_colony_ends_and_its_gear_stays_on_it(colony):
    before = on_hand(colony)
    act = ended(colony, note="mice in the box")
    colony.refresh_from_db()
    assert (act.name, colony.ended_on, colony.ended_why) == ("end", NOVEMBER, "died")
    assert on_hand(colony) == before and not act.movements.exists()
    assert colony.events.last().note == "died: mice in the box"


def test_a_resend_ends_them_once(colony):
    assert ended(colony) == ended(colony)


def test_an_end_is_undone_and_undone_once(colony):
    act = ended(colony)
    reversal = undo(act, who=None, key="back")
    colony.refresh_from_db()
    assert colony.ended_on is None
    assert undo(act, who=None, key="back") == reversal
    ended(colony, key="end-2")


def test_what_cannot_end_is_told_and_nothing_ends(colony):
    gone = makers.make_dead_colony(tag="A2", yard=colony.yard)
    with pytest.raises(ColonyEnded):
        ended(colony, gone)
    with pytest.raises(Several) as refusal:
        ended(gone, makers.make_dead_colony(tag="A3", yard=colony.yard))
    assert len(refusal.value.problems) == 2
    with pytest.raises(NoColony):
        ended()
    with pytest.raises(UnknownWord):
        ended(colony, why="bored")
    with pytest.raises(ColonyNotStarted):
        ended(colony, day=colony.started_on - dt.timedelta(days=1))
    with pytest.raises(FutureDay):
        ended(colony, day=dt.date.max)
    colony.refresh_from_db()
    assert colony.ended_on is None and not Act.objects.exclude(name="opening stock").exists()
