"""Two colonies made one: bees and what goes on to the hive that stays, all else to a store, both histories told."""

import datetime as dt

import pytest

from apiary.errors import LaterEvent
from apiary.models import Colony
from inventory import ledger
from inventory.errors import ColonyEnded, DoesNotFit, FutureDay, HeldBack, NotAStore
from inventory.ledger import Line
from inventory.proof import prove
from inventory.stock import found_gear, on_hand, owned
from inventory.yardwork import undo
from inventory.yardwork.refusals import ApartInYards, UnitedWithItself, WorkedLater
from inventory.yardwork.uniting import unite
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
SEPTEMBER = dt.date(2025, 9, 10)


@pytest.fixture
def creek(db):
    return makers.make_yard("creek")


@pytest.fixture
def weak(creek):
    return makers.make_colony("W1", yard=creek, hive_set="one-deep-10", gear=True)


@pytest.fixture
def strong(creek):
    return makers.make_colony("S1", yard=creek, gear=True)


def united(weak, strong, goes_on=(), *, day=SEPTEMBER, key="unite-1", **fields):
    usual = {"store_at": weak.yard, "who": None}
    lines = [Line(code, number) for code, number in dict(goes_on).items()]
    return unite(colony=weak, into=strong, goes_on=lines, day=day, key=key, **{**usual, **fields})


def gear(ground):
    return {piece.part: number for piece, number in on_hand(ground).items()}


BROOD_BOX = {"box-deep-10": 1, "comb-deep-brood": 10}


def test_the_box_stays_on_the_other_and_the_rest_goes_home(creek, weak, strong):
    before = owned()
    united(weak, strong, BROOD_BOX)
    weak.refresh_from_db()
    assert (weak.ended_why, weak.ended_on) == ("united", SEPTEMBER)
    assert gear(weak) == {}
    assert gear(creek) == {"cover-10": 1, "floor-10": 1, "inner-cover-10": 1}
    assert gear(strong)["box-deep-10"] == 3
    assert owned() == before
    assert prove().faults == ()


def test_bees_may_be_shaken_in_alone(creek, weak, strong):
    united(weak, strong)
    assert gear(creek) == makers.gear_of("one-deep-10")


def test_both_histories_name_the_other(weak, strong):
    united(weak, strong, note="old queen")
    assert weak.events.get(kind="ended").note == "united: S1: old queen"
    assert strong.events.get(kind="united").note == "W1: old queen"


def test_a_super_the_book_did_not_know_is_found(weak, strong):
    united(weak, strong, {"box-medium-10": 1})
    assert {row.part.code: row.quantity for row in found_gear()} == {"box-medium-10": 1}
    assert gear(strong)["box-medium-10"] == 1


def test_a_resend_unites_once_and_undo_brings_both_back(creek, weak, strong):
    before = gear(creek), gear(weak), gear(strong)
    act = united(weak, strong, BROOD_BOX)
    assert united(weak, strong, BROOD_BOX) == act
    undo(act, who=None, key="back")
    weak.refresh_from_db()
    assert weak.ended_on is None
    assert (gear(creek), gear(weak), gear(strong)) == before
    assert not strong.events.counted().filter(kind="united").exists()


def test_a_box_of_another_width_is_refused_and_nothing_done(creek, strong):
    eight = makers.make_colony("E1", yard=creek, hive_set="one-deep-8", gear=True)
    with pytest.raises(DoesNotFit, match="8 frames wide and the hive takes 10"):
        united(eight, strong, {"box-deep-8": 1, "comb-deep-brood": 8})
    assert Colony.objects.get(pk=eight.pk).ended_on is None
    united(eight, strong)
    assert gear(creek)["box-deep-8"] == 1


def test_a_colony_is_not_united_with_itself_nor_across_yards(weak, strong):
    with pytest.raises(UnitedWithItself):
        united(weak, weak)
    far = makers.make_colony("F1", yard=makers.make_yard("far"))
    with pytest.raises(ApartInYards, match="W1 stands in Creek, F1 in Far"):
        united(weak, far)


def test_neither_may_be_dead(creek, weak, strong):
    dead = makers.make_dead_colony(tag="D1", yard=creek)
    with pytest.raises(ColonyEnded):
        united(dead, strong)
    with pytest.raises(ColonyEnded):
        united(weak, dead)


def test_a_hive_with_gear_held_back_is_not_united(weak, strong):
    ledger.mark(
        at=strong, lines=[Line("comb-deep-brood", 1)], becomes="held back", day=DAY, who=None, key="m"
    )
    with pytest.raises(HeldBack, match="S1"):
        united(weak, strong)


def test_a_colony_that_was_worked_later_cannot_have_been_united(creek, weak, strong):
    makers.put(creek, {"box-medium-10": 1})
    later = SEPTEMBER + dt.timedelta(days=3)
    lines = [Line("box-medium-10", 1)]
    placed = ledger.place(source=creek, colony=weak, lines=lines, day=later, who=None, key="p")
    with pytest.raises(WorkedLater, match="13 September 2025"):
        united(weak, strong)
    undo(placed, who=None, key="back")
    united(weak, strong)
    assert gear(weak) == {}


def test_a_later_event_or_a_day_to_come_is_refused(weak, strong):
    with pytest.raises(FutureDay):
        united(weak, strong, day=dt.date(2999, 1, 1))
    weak.events.create(kind="strength", day=SEPTEMBER + dt.timedelta(days=1), yard=weak.yard)
    with pytest.raises(LaterEvent):
        united(weak, strong)


def test_gear_goes_home_to_a_store_only(weak, strong):
    with pytest.raises(NotAStore):
        united(weak, strong, store_at=strong)
