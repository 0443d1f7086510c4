"""The hive of an ended colony taken apart: each piece to where it belongs."""

import datetime as dt

import pytest

from inventory import ledger, stock
from inventory.errors import (
    ColonyAlive,
    NotEnough,
    NothingGiven,
    NotWhole,
    Several,
    UnknownCondition,
    UnknownPart,
)
from inventory.gear import Condition, Gear
from inventory.ledger import Piece
from inventory.proof import prove
from tests import makers

pytestmark = pytest.mark.django_db
FOUND = dt.date(2025, 6, 2)


@pytest.fixture
def shed(db):
    return makers.make_shed()


@pytest.fixture
def colony(db):
    return makers.make_dead_colony(gear=True, ended=dt.date(2025, 6, 1))


def salvage(colony, shed, *pieces, key="k", day=FOUND, **options):
    return ledger.salvage(colony=colony, into=shed, pieces=pieces, day=day, who=None, key=key, **options)


def test_each_piece_goes_where_it_belongs(colony, shed):
    salvage(
        colony,
        shed,
        Piece(part="box-deep-10", sound=1, to_mend=1),
        Piece(part="comb-deep-brood", held=12, scrapped=5, burnt=2, lost=1),
        Piece(part="cover-10", sound=1),
    )
    assert stock.on_hand(shed) == {
        Gear(part="box-deep-10"): 1,
        Gear(part="box-deep-10", condition=Condition.TO_MEND): 1,
        Gear(part="comb-deep-brood", condition=Condition.HELD): 12,
        Gear(part="cover-10"): 1,
    }
    assert stock.on_colony(colony) == {Gear(part="floor-10"): 1, Gear(part="inner-cover-10"): 1}
    assert prove().faults == ()


def test_what_is_gone_leaves_with_its_reason(colony, shed):
    act = salvage(colony, shed, Piece(part="comb-deep-brood", scrapped=5, burnt=2, lost=1))
    rows = [(row.quantity, str(row.target), row.reason) for row in act.movements.all()]
    assert rows == [(5, "scrap", "scrapped"), (2, "burnt", "burnt"), (1, "lost", "lost")]


def test_a_hive_may_be_taken_apart_in_several_goes(colony, shed):
    for number in range(2):
        salvage(colony, shed, Piece(part="box-deep-10", sound=1), key=f"k{number}")
    assert stock.on_hand(shed) == {Gear(part="box-deep-10"): 2}


def test_gear_held_back_on_the_colony_never_comes_off_sound(colony, shed):
    ledger.mark(
        at=colony,
        lines=[ledger.Line("box-deep-10", 2)],
        becomes="held back",
        day=FOUND,
        who=None,
        key="mark",
    )
    salvage(colony, shed, Piece(part="box-deep-10", condition="held back", sound=2))
    assert stock.on_hand(shed) == {Gear(part="box-deep-10", condition=Condition.HELD): 2}


def test_a_living_colony_is_not_salvaged(shed):
    colony = makers.make_colony(gear=True)
    with pytest.raises(ColonyAlive):
        salvage(colony, shed, Piece(part="box-deep-10", sound=1))


def test_a_colony_is_not_salvaged_before_it_ended(colony, shed):
    with pytest.raises(ColonyAlive):
        salvage(colony, shed, Piece(part="box-deep-10", sound=1), day=dt.date(2025, 5, 31))


def test_more_than_the_book_has_is_refused_or_found(colony, shed):
    with pytest.raises(NotEnough):
        salvage(colony, shed, Piece(part="box-deep-10", sound=2, scrapped=1))
    salvage(colony, shed, Piece(part="box-deep-10", sound=2, scrapped=1), found_allowed=True)
    assert stock.on_hand(shed) == {Gear(part="box-deep-10"): 2}


def test_pieces_that_make_no_sense_are_all_told(colony, shed):
    with pytest.raises(Several) as refused:
        salvage(
            colony,
            shed,
            Piece(part="throne", sound=1),
            Piece(part="stand", lost=0.5),
            Piece(part="stand", condition="haunted", sound=1),
        )
    assert [type(problem) for problem in refused.value.problems] == [UnknownPart, NotWhole, UnknownCondition]


def test_salvaging_nothing_is_refused(colony, shed):
    with pytest.raises(NothingGiven):
        salvage(colony, shed, Piece(part="box-deep-10"))
