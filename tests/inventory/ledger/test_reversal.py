"""A mistake undone, once, and never into debt."""

import datetime as dt

import pytest

from apiary import colonies
from inventory import ledger, stock
from inventory.errors import AlreadyReversed, CannotBeReversed, NotEnough, ReversedTooEarly
from inventory.gear import Gear
from inventory.ledger import Line, Piece
from inventory.proof import prove
from inventory.yardwork import together
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
LATER = DAY + dt.timedelta(days=5)


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"stand": 10})
    return shed


@pytest.fixture
def moved(shed):
    return ledger.move(
        source=shed, target=makers.make_yard("creek"), lines=[Line("stand", 4)], day=DAY, who=None, key="m"
    )


def test_a_reversal_restores_what_was_on_every_day(shed, moved):
    act = ledger.reverse(act=moved, who=None, key="r")
    assert (act.reverses, act.day) == (moved, DAY)
    assert stock.on_hand(shed) == stock.on_hand(shed, as_of=DAY) == {Gear(part="stand"): 10}
    assert prove().faults == ()


def test_a_reversal_on_a_later_day_leaves_the_days_between(shed, moved):
    ledger.reverse(act=moved, day=LATER, who=None, key="r")
    assert stock.on_hand(shed, as_of=DAY) == {Gear(part="stand"): 6}
    assert stock.on_hand(shed) == {Gear(part="stand"): 10}


def test_an_act_is_reversed_once_only(shed, moved):
    first = ledger.reverse(act=moved, who=None, key="r")
    assert ledger.reverse(act=moved, who=None, key="r") == first
    with pytest.raises(AlreadyReversed):
        ledger.reverse(act=moved, who=None, key="again")


def test_a_reversal_is_not_reversed(shed, moved):
    back = ledger.reverse(act=moved, who=None, key="r")
    with pytest.raises(CannotBeReversed):
        ledger.reverse(act=back, who=None, key="again")


def test_an_act_is_not_reversed_before_its_day(shed, moved):
    with pytest.raises(ReversedTooEarly):
        ledger.reverse(act=moved, day=DAY - dt.timedelta(days=1), who=None, key="r")


def test_gear_that_went_on_meanwhile_cannot_be_taken_back(shed, moved):
    creek = moved.movements.get().target
    ledger.scrap(at=creek, lines=[Line("stand", 3)], day=LATER, who=None, key="s")
    with pytest.raises(NotEnough) as refused:
        ledger.reverse(act=moved, who=None, key="r")
    assert (refused.value.day, refused.value.wanted, refused.value.booked) == (LATER, 4, 1)


def test_found_pieces_go_back_where_they_came_from(shed):
    yard = makers.make_yard()
    act = ledger.move(
        source=shed,
        target=yard,
        lines=[Line("stand", 12)],
        day=DAY,
        who=None,
        key="m",
        found_allowed=True,
    )
    ledger.reverse(act=act, who=None, key="r")
    assert stock.on_hand(shed) == {Gear(part="stand"): 10}
    assert list(stock.found_gear()) == []


def test_a_salvage_with_changed_conditions_goes_back_whole(shed):
    colony = makers.make_dead_colony(gear=True)
    before = stock.on_colony(colony)
    act = ledger.salvage(
        colony=colony,
        into=shed,
        pieces=[Piece(part="comb-deep-brood", sound=5, held=10, lost=5), Piece(part="floor-10", to_mend=1)],
        day=dt.date(2025, 6, 2),
        who=None,
        key="s",
    )
    ledger.reverse(act=act, who=None, key="r")
    assert stock.on_colony(colony) == before
    assert stock.on_hand(shed) == {Gear(part="stand"): 10}


def test_reversing_the_gear_alone_of_an_act_that_told_of_bees_is_a_bug(shed):
    colony = makers.make_colony()

    def work(key):
        colonies.judge(colony, strength="weak", day=makers.DAY, who=None, act_key=key)
        return []

    act = together("look", work, day=makers.DAY, who=None, key="look")
    with pytest.raises(AssertionError, match=r"yardwork\.undo takes it back"):
        ledger.reverse(act=act, who=None, key="back")
