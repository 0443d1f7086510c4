"""An act on bees and gear is taken back whole, or refused with what rests on it."""

import datetime as dt

import pytest

from apiary import colonies
from apiary.errors import MoreRestsOnIt
from apiary.models import Colony, ColonyEvent
from inventory import ledger
from inventory.errors import AlreadyReversed, CannotBeReversed, LaterWork, NotEnough, ReversedTooEarly
from inventory.gear import Gear, Reason
from inventory.ledger import Line
from inventory.ledger.field import _carried
from inventory.locations import place_of, store_of
from inventory.models import Act, Part
from inventory.stock import on_hand
from inventory.yardwork import together, undo
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
LATER = DAY + dt.timedelta(days=5)
BOX = Gear(part="box-medium-10")


@pytest.fixture
def creek(db):
    yard = makers.make_yard("creek")
    makers.put(yard, {"box-medium-10": 4})
    return yard


def line(number=1):
    return Line(Part.objects.get(code="box-medium-10"), number)


@pytest.fixture
def split(creek):
    """A daughter is started and gets a box; its mother is judged weak."""
    mother = makers.make_colony("A1", yard=creek)

    def work(key):
        daughter = colonies.start(
            tag="A1a",
            yard=creek,
            hive_set=mother.hive_set,
            day=DAY,
            who=None,
            origin="split",
            mother=mother,
            act_key=key,
        )
        colonies.judge(mother, strength="weak", day=DAY, who=None, act_key=key)
        return _carried([line()], store_of(creek), place_of(daughter), Reason.PLACED)

    return together("split", work, day=DAY, who=None, key="split-1")


def back(act, **fields):
    return undo(act, who=None, key=f"reverse-{act.pk}", **fields)


def test_bees_and_gear_go_back_together(creek, split):
    reversal = back(split)
    assert (reversal.name, reversal.reverses, reversal.day) == ("reverse", split, DAY)
    mother, daughter = Colony.objects.order_by("pk")
    assert (mother.strength, daughter.ended_why) == ("fair", "mistake")
    assert on_hand(creek) == {BOX: 4}
    assert on_hand(daughter) == {}
    assert set(ColonyEvent.objects.filter(act_key="split-1").values_list("undone", flat=True)) == {True}


def test_undoing_twice_changes_nothing(creek, split):
    reversal = back(split)
    assert back(split) == reversal
    with pytest.raises(AlreadyReversed):
        undo(split, who=None, key="another")
    with pytest.raises(CannotBeReversed):
        undo(reversal, who=None, key="back again")


def test_an_act_of_gear_alone_is_undone_too(creek):
    colony = makers.make_colony(yard=creek)
    act = ledger.place(source=creek, colony=colony, lines=[line()], day=DAY, who=None, key="p")
    back(act)
    assert on_hand(creek) == {BOX: 4}


def test_an_act_of_bees_alone_is_undone_too(creek):
    colony = makers.make_colony(yard=creek)

    def work(key):
        colonies.end(colony, why="lost", day=DAY, who=None, act_key=key)
        return []

    back(together("lost", work, day=DAY, who=None, key="lost-1"))
    assert Colony.objects.get().ended_on is None


def test_gear_that_has_gone_on_is_not_undone(creek):
    colony = makers.make_colony(yard=creek)
    act = ledger.place(source=creek, colony=colony, lines=[line()], day=DAY, who=None, key="p")
    ledger.take_off(colony=colony, target=creek, lines=[line()], day=LATER, who=None, key="t")
    with pytest.raises(NotEnough):
        back(act)


def test_a_colony_that_was_worked_since_is_not_made_a_mistake(creek, split):
    daughter = Colony.objects.get(tag="A1a")
    placed = ledger.place(source=creek, colony=daughter, lines=[line()], day=LATER, who=None, key="p")
    with pytest.raises(LaterWork, match="A1a"):
        back(split)
    assert Colony.objects.get(pk=daughter.pk).ended_on is None
    back(placed)
    back(split)
    assert on_hand(creek) == {BOX: 4}


def test_an_end_is_not_undone_once_the_hive_was_salvaged(creek):
    colony = makers.make_colony(yard=creek)
    ledger.place(source=creek, colony=colony, lines=[line()], day=DAY, who=None, key="p")

    def work(key):
        colonies.end(colony, why="died", day=LATER, who=None, act_key=key)
        return []

    act = together("died", work, day=LATER, who=None, key="died-1")
    pieces = [ledger.Piece(part="box-medium-10", sound=1)]
    ledger.salvage(colony=colony, into=creek, pieces=pieces, day=LATER, who=None, key="s")
    with pytest.raises(LaterWork):
        back(act)


def test_later_events_of_a_colony_keep_the_act(creek, split):
    colonies.judge(Colony.objects.get(tag="A1a"), strength="weak", day=LATER, who=None)
    with pytest.raises(MoreRestsOnIt):
        back(split)
    assert on_hand(creek) == {BOX: 3}
    assert not Act.objects.filter(reverses=split).exists()


def test_an_undoing_is_not_before_the_act(split):
    with pytest.raises(ReversedTooEarly):
        back(split, day=DAY - dt.timedelta(days=1))


def test_a_kill_in_the_middle_of_an_undoing_leaves_the_act(creek, split, monkeypatch):
    monkeypatch.setattr("inventory.ledger.posting._carry", lambda changes: 1 / 0)
    with pytest.raises(ZeroDivisionError):
        back(split)
    assert Colony.objects.get(tag="A1a").ended_on is None
    assert not ColonyEvent.objects.filter(undone=True).exists()
    assert on_hand(creek) == {BOX: 3}
