"""A yard fed: the sugar leaves the store once, each colony's share is written, and what makes no sense is refused."""

import datetime as dt

import pytest

from inventory import ledger, stock
from inventory.errors import (
    ColonyEnded,
    ColonyNotStarted,
    FedTwice,
    FutureDay,
    NotAQuantity,
    NotAStore,
    NotEnough,
    NothingGiven,
    Several,
    UnknownWord,
)
from inventory.gear import Gear, Reason
from inventory.models import Act, Feeding, Movement
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
SUGAR = Gear(part="sugar")


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"sugar": 100, "patty": 10})
    return shed


@pytest.fixture
def hives(db):
    yard = makers.make_yard("fern-hollow")
    return [makers.make_colony(f"F-0{number}", yard=yard) for number in (1, 2, 3)]


def fed(shed, portions, **changed):
    told = {"ration": "syrup-2-1", "source": shed, "day": DAY, "who": None, "key": "feed", **changed}
    return ledger.feed(portions=portions, **told)


def test_sugar_of_all_gallons_leaves_the_store_and_each_share_is_written(shed, hives):
    act = fed(shed, [(hives[0], 4), (hives[1], 8), (hives[2], 0)])
    row = Movement.objects.get(act=act)
    assert (row.part.code, row.quantity, row.reason) == ("sugar", 22, Reason.FED)  # 3 gal × 7.38
    assert stock.on_hand(shed)[SUGAR] == 78
    assert [(each.colony.tag, each.feed, each.quantity) for each in act.feedings.all()] == [
        ("F-01", "syrup-2-1", 4),
        ("F-02", "syrup-2-1", 8),
    ]


def test_patties_are_taken_in_pounds(shed, hives):
    fed(shed, [(each, 2) for each in hives], ration="patty")
    assert stock.on_hand(shed)[Gear(part="patty")] == 4


def test_a_resend_feeds_once(shed, hives):
    first = fed(shed, [(hives[0], 4)])
    again = fed(shed, [(hives[0], 4), (hives[1], 4)])
    assert (again, Feeding.objects.count(), stock.on_hand(shed)[SUGAR]) == (first, 1, 93)


def test_more_than_the_book_has_is_found_where_that_is_allowed(shed, hives):
    with pytest.raises(NotEnough):
        fed(shed, [(each, 20) for each in hives])
    assert Feeding.objects.count() == 0
    act = fed(shed, [(each, 20) for each in hives], found_allowed=True)
    assert [row.quantity for row in act.movements.filter(found=True)] == [11]  # 15 gal hold 111 lb
    assert SUGAR not in stock.on_hand(shed)


@pytest.mark.parametrize(
    ("portions", "changed", "refusal"),
    [
        ([], {}, NothingGiven),
        ([(0, 0)], {}, NothingGiven),
        ([(0, -1)], {}, NotAQuantity),
        ([(0, 2.5)], {}, NotAQuantity),
        ([(0, True)], {}, NotAQuantity),
        ([(0, 4), (0, 4)], {}, FedTwice),
        ([(0, 4)], {"ration": "honey"}, UnknownWord),
        ([(0, 4)], {"day": DAY - dt.timedelta(days=1)}, ColonyNotStarted),
        ([(0, 4)], {"day": dt.date(2999, 1, 1)}, FutureDay),
        ([(0, -1), (1, -2)], {}, Several),
    ],
)
def test_what_makes_no_sense_is_refused_and_nothing_is_written(shed, hives, portions, changed, refusal):
    before = Act.objects.count()
    with pytest.raises(refusal):
        fed(shed, [(hives[number], quantity) for number, quantity in portions], **changed)
    assert (Act.objects.count(), Feeding.objects.count()) == (before, 0)


def test_a_dead_colony_is_not_fed_and_sugar_does_not_lie_on_a_hive(shed, hives):
    dead = makers.make_dead_colony(ended=DAY)
    with pytest.raises(ColonyEnded):
        fed(shed, [(dead, 4)])
    with pytest.raises(NotAStore):
        fed(hives[0], [(hives[1], 4)])


def test_a_reversal_brings_the_sugar_back(shed, hives):
    act = fed(shed, [(hives[0], 4)])
    ledger.reverse(act=act, who=None, key="back")
    assert stock.on_hand(shed)[SUGAR] == 100
