"""Whatever is altered behind the back of the acts on bees is found by the proof of the books."""

import datetime as dt

import pytest
from django.db import connection

from apiary import colonies
from apiary.models import Colony, ColonyEvent
from inventory.proof import prove
from inventory.proof.bees import bees_faults
from inventory.yardwork import together, undo
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


@pytest.fixture
def colony(db):
    return makers.make_colony("A1", yard=makers.make_yard("creek"))


def moved(colony, yard):
    def work(key):
        colonies.move(colony, yard=yard, day=DAY, who=None, act_key=key)
        return []

    return together("move colonies", work, day=DAY, who=None, key="m")


def altered(sql, *values):
    with connection.cursor() as cursor:
        cursor.execute(sql, values)
    return list(bees_faults())


def test_acts_and_their_undoing_leave_no_fault(colony):
    act = moved(colony, makers.make_yard("hill"))
    makers.make_dead_colony(tag="D", yard=colony.yard)
    assert list(bees_faults()) == []
    undo(act, who=None, key="back")
    assert list(bees_faults()) == []
    assert prove().faults == ()


def test_a_mistake_undone_leaves_no_fault(colony):
    def work(key):
        fields = {"yard": colony.yard, "hive_set": colony.hive_set, "day": DAY, "who": None}
        colonies.start(tag="A1a", origin="split", mother=colony, act_key=key, **fields)
        return []

    undo(together("split", work, day=DAY, who=None, key="s"), who=None, key="back")
    assert list(bees_faults()) == []


def test_an_event_without_its_act_is_found(colony):
    colonies.judge(colony, strength="weak", day=DAY, who=None, act_key="nowhere")
    assert list(bees_faults()) == [
        "Colony A1: strength judged on 1 April 2025 was told by an act that is not in the books (nowhere)."
    ]
    assert len(prove().faults) == 1


def test_an_event_that_counts_against_its_act_is_found(colony):
    act = moved(colony, makers.make_yard("hill"))
    (fault,) = [
        one
        for one in altered("UPDATE apiary_colonyevent SET undone = %s WHERE act_key = 'm'", True)
        if "act" in one
    ]
    assert fault == "Colony A1: moved on 1 April 2025 does not count, but its act was not reversed."
    altered("UPDATE apiary_colonyevent SET undone = %s WHERE act_key = 'm'", False)
    undo(act, who=None, key="back")
    faults = altered("UPDATE apiary_colonyevent SET undone = %s WHERE act_key = 'm'", False)
    assert "Colony A1: moved on 1 April 2025 still counts, but its act was reversed." in faults


def test_a_colony_that_stands_elsewhere_than_told_is_found(colony):
    hill = makers.make_yard("hill")
    faults = altered("UPDATE apiary_colony SET yard_id = %s", hill.pk)
    assert faults == ["Colony A1 stands in Hill, its events say Creek."]


def test_a_colony_that_ended_otherwise_than_told_is_found(colony):
    faults = altered("UPDATE apiary_colony SET ended_on = %s, ended_why = 'died'", dt.date(2025, 5, 1))
    assert faults == ["Colony A1 ended on 1 May 2025, its events say it lives."]
    colonies.end(makers.make_colony("B1", yard=colony.yard), why="sold", day=DAY, who=None)
    faults = altered("UPDATE apiary_colony SET ended_on = NULL, ended_why = ''")
    assert faults == ["Colony B1 lives, its events say it ended on 1 April 2025."]


def test_a_colony_without_events_is_left_alone(colony):
    ColonyEvent.objects.all().delete()
    assert Colony.objects.count() == 1
    assert list(bees_faults()) == []
