"""What waits after colonies died: hives to work, combs to freeze, inspectors to call."""

import datetime as dt

import pytest
from django.utils import timezone

from inventory.deadouts.release import tell_verdict
from inventory.deadouts.waiting import to_call, to_freeze, to_work, worked_deadouts
from inventory.ledger import Piece
from inventory.yardwork import undo
from tests import makers
from tests.inventory.deadouts.conftest import hive_of, work

pytestmark = pytest.mark.django_db
DAY = dt.date(2025, 6, 2)


def test_the_dead_with_gear_wait_to_be_worked(yard, shed):
    makers.make_dead_colony(tag="F-02", yard=yard, gear=True)
    makers.make_dead_colony(tag="F-03", yard=yard)
    makers.make_dead_colony(tag="F-04", yard=yard, gear=True, why="sold")
    assert [colony.tag for colony in to_work(on=DAY)] == ["F-02"]
    assert list(to_work(on=dt.date(2025, 5, 1))) == []


def test_worked_combs_wait_for_care_burnt_ones_do_not(yard, shed):
    kept = work(hive_of("F-01", yard), shed, fate="sound")
    burnt = work(hive_of("F-02", yard), shed, fate="burnt")
    held = work(hive_of("F-03", yard), shed, brood_seen=False)
    assert set(to_freeze()) == {kept, held}
    assert set(worked_deadouts()) == {kept, burnt, held}


def test_combs_of_foulbrood_wait_for_no_freezer(yard, shed):
    work(hive_of("F-01", yard), shed, suspected=True)
    assert to_freeze() == []


def test_a_hive_without_comb_needs_no_care(yard, shed):
    work(hive_of("F-01", yard, {"box-deep-10": 1}), shed, pieces=[Piece(part="box-deep-10", sound=1)])
    assert to_freeze() == []


def test_the_inspector_is_called_until_the_word_is_written_down(yard, shed, keeper):
    row = work(hive_of("F-01", yard), shed, suspected=True)
    assert to_call() == [row]
    word = {"inspector": "R. Alder (invented)", "written_on": DAY, "words": "None found."}
    told = {"day": timezone.localdate(), "who": keeper, "key": "word"}
    tell_verdict(deadout=row, verdict="cleared", **word, **told)
    assert to_call() == []


def test_what_was_undone_waits_for_nothing(yard, shed, keeper):
    row = work(hive_of("F-01", yard), shed, suspected=True)
    undo(row.act, who=keeper, key="undo")
    assert (to_call(), to_freeze(), list(worked_deadouts())) == ([], [], [])
