"""One load to several drop-offs: one act, many lines, all that is wrong told together."""

import pytest

from inventory import ledger, stock
from inventory.errors import NotAStore, NotEnough, NothingGiven, SamePlace, Several, UnknownPart
from inventory.gear import Gear
from inventory.ledger import Line
from inventory.models import Act
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"box-medium-10": 20, "comb-medium-honey": 100})
    return shed


@pytest.fixture
def yards(db):
    return [makers.make_yard(code) for code in ("fern-hollow", "long-acre")]


def hauled(shed, drops, **changed):
    told = {"source": shed, "day": DAY, "who": None, "key": "load", **changed}
    return ledger.haul(drops=[(ground, [Line(*line) for line in lines]) for ground, lines in drops], **told)


def test_one_load_is_dropped_at_several_yards(shed, yards):
    first, second = yards
    act = hauled(
        shed,
        [(first, [("box-medium-10", 4), ("comb-medium-honey", 36)]), (second, [("box-medium-10", 6)])],
    )
    assert act.movements.count() == 3
    assert stock.on_hand(first) == {Gear(part="box-medium-10"): 4, Gear(part="comb-medium-honey"): 36}
    assert stock.on_hand(second) == {Gear(part="box-medium-10"): 6}
    assert stock.on_hand(shed)[Gear(part="box-medium-10")] == 10


def test_a_drop_of_nothing_is_passed_over_and_a_load_of_nothing_refused(shed, yards):
    assert hauled(shed, [(yards[0], []), (yards[1], [("box-medium-10", 1)])]).movements.count() == 1
    with pytest.raises(NothingGiven):
        hauled(shed, [(yards[0], [])], key="other")


def test_two_drops_together_may_not_take_more_than_there_is(shed, yards):
    drops = [(yard, [("box-medium-10", 12)]) for yard in yards]
    with pytest.raises(NotEnough) as refused:
        hauled(shed, drops)
    assert (refused.value.wanted, refused.value.booked) == (24, 20)
    act = hauled(shed, drops, found_allowed=True)
    assert [row.quantity for row in act.movements.filter(found=True)] == [4]


def test_gear_hauled_to_where_it_is_is_refused(shed):
    with pytest.raises(SamePlace):
        hauled(shed, [(shed, [("box-medium-10", 1)])])


def test_all_that_is_wrong_with_a_load_is_told(shed, yards):
    hive = makers.make_colony(yard=yards[0])
    before = Act.objects.count()
    with pytest.raises(Several) as refused:
        hauled(
            shed,
            [
                (shed, [("box-medium-10", 1)]),
                (hive, [("box-medium-10", 1)]),
                (yards[1], [("no-such-part", 1)]),
            ],
        )
    assert [type(problem) for problem in refused.value.problems] == [SamePlace, NotAStore, UnknownPart]
    assert Act.objects.count() == before


def test_a_resend_hauls_once(shed, yards):
    drops = [(yards[0], [("box-medium-10", 4)])]
    assert hauled(shed, drops) == hauled(shed, drops)
    assert stock.on_hand(yards[0])[Gear(part="box-medium-10")] == 4
