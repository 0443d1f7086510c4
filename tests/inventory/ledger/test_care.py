"""Gear marked, mended, scrapped, burnt and used up where it lies."""

import datetime as dt

import pytest

from inventory import ledger, stock
from inventory.errors import (
    ColonyNotStarted,
    HeldBack,
    NotAStore,
    NotEnough,
    SamePlace,
    UnknownCondition,
)
from inventory.gear import Condition, Gear
from inventory.ledger import Line
from tests import makers

pytestmark = pytest.mark.django_db
WHO = {"day": makers.DAY, "who": None}
SOUND = Gear(part="box-deep-10")
BROKEN = Gear(part="box-deep-10", condition=Condition.TO_MEND)
HELD = Gear(part="box-deep-10", condition=Condition.HELD)


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"box-deep-10": 5, "sugar": 100, "jar": 12})
    return shed


def targets(act):
    return [(row.quantity, str(row.target), row.reason) for row in act.movements.all()]


def test_a_broken_box_is_marked_and_mended_again(shed):
    ledger.mark(at=shed, lines=[Line("box-deep-10", 2)], becomes="to mend", key="a", **WHO)
    assert (stock.on_hand(shed)[SOUND], stock.on_hand(shed)[BROKEN]) == (3, 2)
    ledger.mend(at=shed, lines=[Line("box-deep-10", 1)], key="b", **WHO)
    assert (stock.on_hand(shed)[SOUND], stock.on_hand(shed)[BROKEN]) == (4, 1)


def test_more_cannot_be_mended_than_is_to_mend(shed):
    with pytest.raises(NotEnough, match="to mend"):
        ledger.mend(at=shed, lines=[Line("box-deep-10", 1)], key="k", **WHO)


def test_suspected_gear_is_held_back_and_stays_so(shed):
    ledger.mark(at=shed, lines=[Line("box-deep-10", 2)], becomes="held back", key="a", **WHO)
    assert stock.on_hand(shed)[HELD] == 2
    with pytest.raises(HeldBack, match="inspector"):
        ledger.mark(at=shed, lines=[Line("box-deep-10", 2, "held back")], becomes="sound", key="b", **WHO)


def test_gear_on_a_colony_can_be_marked(shed):
    colony = makers.make_colony(gear=True)
    ledger.mark(at=colony, lines=[Line("cover-10", 1)], becomes="to mend", key="k", **WHO)
    assert stock.on_colony(colony)[Gear(part="cover-10", condition=Condition.TO_MEND)] == 1


def test_marking_gear_as_what_it_is_makes_no_sense(shed):
    with pytest.raises(SamePlace):
        ledger.mark(at=shed, lines=[Line("box-deep-10", 2)], becomes="sound", key="k", **WHO)


def test_a_condition_that_is_none_is_refused(shed):
    with pytest.raises(UnknownCondition):
        ledger.mark(at=shed, lines=[Line("box-deep-10", 2)], becomes="mouldy", key="k", **WHO)


def test_scrap_and_ashes_leave_the_books_by_their_own_doors(shed):
    makers.put(shed, {"box-deep-10": 1}, condition="held back")
    scrapped = ledger.scrap(at=shed, lines=[Line("box-deep-10", 2)], key="a", **WHO)
    burnt = ledger.burn(at=shed, lines=[Line("box-deep-10", 1, "held back")], key="b", **WHO)
    assert targets(scrapped) == [(2, "scrap", "scrapped")]
    assert targets(burnt) == [(1, "burnt", "burnt")]
    assert stock.on_hand(shed)[SOUND] == 3
    assert HELD not in stock.on_hand(shed)


def test_scrap_beyond_the_book_is_found_where_that_is_allowed(shed):
    with pytest.raises(NotEnough):
        ledger.scrap(at=shed, lines=[Line("box-deep-10", 6)], key="a", **WHO)
    ledger.scrap(at=shed, lines=[Line("box-deep-10", 6)], key="b", found_allowed=True, **WHO)
    assert SOUND not in stock.on_hand(shed)


def test_gear_of_a_dead_colony_can_be_burnt_where_it_stands(shed):
    colony = makers.make_dead_colony(gear=True)
    act = ledger.burn(
        at=colony, lines=[Line("comb-deep-brood", 20)], day=dt.date(2025, 6, 3), who=None, key="k"
    )
    assert targets(act) == [(20, "burnt", "burnt")]


def test_nothing_is_scrapped_on_a_colony_before_it_started(shed):
    with pytest.raises(ColonyNotStarted):
        ledger.scrap(
            at=makers.make_colony(gear=True),
            lines=[Line("floor-10", 1)],
            day=makers.DAY - dt.timedelta(days=1),
            who=None,
            key="k",
        )


def test_feed_is_fed_and_jars_are_used_up(shed):
    act = ledger.use(at=shed, lines=[Line("sugar", 25), Line("jar", 12)], key="k", **WHO)
    assert [reason for _, _, reason in targets(act)] == ["fed", "used up"]
    assert stock.on_hand(shed)[Gear(part="sugar")] == 75


def test_mending_and_using_up_happen_at_a_store(shed):
    colony = makers.make_colony(gear=True)
    for act in (ledger.mend, ledger.use):
        with pytest.raises(NotAStore):
            act(at=colony, lines=[Line("floor-10", 1)], key="k", **WHO)
