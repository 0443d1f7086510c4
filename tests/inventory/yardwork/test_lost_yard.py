"""A whole yard lost: colonies end, gear is written off but what was saved, or stays to be worked."""

import datetime as dt

import pytest

from apiary.models import Colony
from inventory import ledger
from inventory.errors import (
    ColonyEnded,
    FutureDay,
    SamePlace,
    Several,
    UnknownCondition,
    UnknownWord,
)
from inventory.gear import Condition
from inventory.ledger import Line
from inventory.models import Act, Movement
from inventory.proof import prove
from inventory.stock import ended_with_gear, found_gear, on_hand, owned
from inventory.yardwork import undo
from inventory.yardwork.lost_yard import lose_yard
from inventory.yardwork.refusals import ElsewhereThatDay, NoColony, WorkedLater
from tests import makers

pytestmark = pytest.mark.django_db
JUNE = dt.date(2025, 6, 1)


@pytest.fixture
def creek(db):
    yard = makers.make_yard("creek")
    makers.put(yard, {"box-medium-10": 3})
    return yard


@pytest.fixture
def hill(db):
    return makers.make_yard("hill")


@pytest.fixture
def hives(creek):
    return [makers.make_colony(tag, yard=creek, hive_set="one-deep-10", gear=True) for tag in ("A1", "A2")]


def lost(creek, hill, hives, *, cause="flood", day=JUNE, key="lost-1", **fields):
    usual = {"yard": creek, "colonies": hives, "into": hill, "who": None}
    return lose_yard(cause=cause, day=day, key=key, **{**usual, **fields})


def gear(ground):
    return {(piece.part, piece.condition): number for piece, number in on_hand(ground).items()}


def test_all_of_it_is_lost(creek, hill, hives):
    lost(creek, hill, hives, store_too=True)
    assert set(Colony.objects.values_list("ended_why", flat=True)) == {"lost"}
    assert owned() == {}
    assert set(Movement.objects.filter(day=JUNE).values_list("reason", flat=True)) == {"lost"}
    assert not found_gear()
    assert prove().faults == ()


def test_some_hives_and_the_store_may_stay(creek, hill, hives):
    lost(creek, hill, hives[:1])
    assert gear(creek) == {("box-medium-10", "sound"): 3}
    assert Colony.objects.alive(on=JUNE).get() == hives[1]
    assert gear(hives[0]) == {}
    assert gear(hives[1])


def test_what_was_saved_goes_to_a_store_as_it_is(creek, hill, hives):
    saved = [Line("box-deep-10", 2), Line("box-medium-10", 2)]
    lost(creek, hill, hives, store_too=True, saved=saved, saved_as=Condition.TO_MEND)
    assert gear(hill) == {("box-deep-10", "to mend"): 2, ("box-medium-10", "to mend"): 2}
    assert owned() == on_hand(hill)
    assert prove().faults == ()


def test_more_saved_than_the_book_had_is_found(creek, hill, hives):
    lost(creek, hill, hives, saved=[Line("box-deep-10", 5)])
    assert {row.part.code: row.quantity for row in found_gear()} == {"box-deep-10": 3}
    assert gear(hill) == {("box-deep-10", "sound"): 5}


def test_held_back_gear_is_saved_as_held_back(creek, hill, hives):
    lines = [Line("box-deep-10", 1)]
    ledger.mark(at=hives[0], lines=lines, becomes="held back", day=JUNE, who=None, key="mark")
    lost(creek, hill, hives, saved=[Line("box-deep-10", 1, Condition.HELD)])
    assert gear(hill) == {("box-deep-10", "held back"): 1}


def test_gear_that_still_stands_waits_to_be_worked(creek, hill, hives):
    lost(creek, hill, hives, cause="bear", why="died", gear_stands=True, store_too=True)
    assert [colony.tag for colony in ended_with_gear(on=JUNE)] == ["A1", "A2"]
    assert gear(creek) == {}
    assert hives[0].events.get(kind="ended").note == "died: bear"


def test_the_store_alone_may_be_lost(creek, hill):
    lost(creek, hill, [], cause="theft", store_too=True)
    assert owned() == {}


def test_resent_and_undone(creek, hill, hives):
    before = gear(creek), gear(hives[0]), gear(hives[1])
    act = lost(creek, hill, hives, store_too=True, saved=[Line("box-deep-10", 1)])
    assert lost(creek, hill, hives, store_too=True, saved=[Line("box-deep-10", 1)]) == act
    undo(act, who=None, key="back")
    assert (gear(creek), gear(hives[0]), gear(hives[1])) == before
    assert Colony.objects.alive(on=JUNE).count() == 2


def test_a_store_loss_told_late_takes_only_what_was_not_moved_since(creek, hill):
    later = JUNE + dt.timedelta(days=5)
    ledger.move(source=creek, target=hill, lines=[Line("box-medium-10", 1)], day=later, who=None, key="m")
    lost(creek, hill, [], store_too=True)
    assert gear(creek) == {}
    assert gear(hill) == {("box-medium-10", "sound"): 1}
    assert not found_gear()


def test_each_refusal_is_told_and_nothing_done(creek, hill, hives):
    elsewhere = makers.make_colony("H1", yard=hill)
    dead = makers.make_dead_colony(tag="D1", yard=creek, ended=dt.date(2025, 5, 1))
    with pytest.raises(ElsewhereThatDay, match="H1 did not stand in Creek"):
        lost(creek, hill, [*hives, elsewhere])
    with pytest.raises(ColonyEnded):
        lost(creek, hill, [dead])
    with pytest.raises(Several):
        lost(creek, hill, [dead, elsewhere])
    with pytest.raises(FutureDay):
        lost(creek, hill, hives, day=dt.date(2999, 1, 1))
    with pytest.raises(UnknownWord, match="cause"):
        lost(creek, hill, hives, cause="bad luck")
    with pytest.raises(UnknownWord, match="colony's end"):
        lost(creek, hill, hives, why="mistake")
    with pytest.raises(NoColony):
        lost(creek, hill, [])
    with pytest.raises(SamePlace):
        lost(creek, creek, hives, store_too=True)
    with pytest.raises(UnknownCondition):
        lost(creek, hill, hives, saved=[Line("box-deep-10", 1)], saved_as="wet")
    assert Colony.objects.alive(on=JUNE).count() == 3
    assert not Act.objects.filter(name="lose a yard").exists()


def test_a_hive_worked_later_was_not_lost_that_day(creek, hill, hives):
    later = JUNE + dt.timedelta(days=5)
    lines = [Line("box-medium-10", 1)]
    ledger.place(source=creek, colony=hives[0], lines=lines, day=later, who=None, key="p")
    with pytest.raises(WorkedLater, match="written off"):
        lost(creek, hill, hives)
