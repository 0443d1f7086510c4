"""Bees sold with their gear, and what the buyer brings back: pieces, deposit, swap."""

import datetime as dt

import pytest

from apiary.models import Colony
from inventory import ledger
from inventory.errors import ColonyEnded, FutureDay, HeldBack, NothingGiven
from inventory.gear import Condition
from inventory.ledger import Line
from inventory.models import Act, Sale, SaleReturn
from inventory.proof import prove
from inventory.sales import deposit_left, still_owed
from inventory.stock import found_gear, on_hand, owned
from inventory.yardwork import undo
from inventory.yardwork.refusals import (
    BackTooEarly,
    BroughtBack,
    NoBuyer,
    NoColony,
    NoDayBack,
    NotMoney,
    RefundTooMuch,
    SaleSettled,
    SaleUndone,
    WorkedLater,
)
from inventory.yardwork.selling import Terms, got_back, sell
from tests import makers

pytestmark = pytest.mark.django_db
MAY = dt.date(2025, 5, 10)
JUNE = dt.date(2025, 6, 1)


@pytest.fixture
def creek(db):
    return makers.make_yard("creek")


@pytest.fixture
def nuc(creek):
    return makers.make_colony("N1", yard=creek, hive_set="nuc-5", gear=True)


def terms(**fields):
    usual = {"buyer": "Invented Neighbour", "price_cents": 18000}
    return Terms(**{**usual, **fields})


def box_and_combs(**fields):
    owed = (Line("nuc-box-5", 1), Line("comb-deep-brood", 5))
    return terms(deposit_cents=4000, owed=owed, back_by=JUNE, **fields)


def sold(*colonies, told=None, goes=None, day=MAY, key="sell-1", **fields):
    usual = {"stays_at": colonies[0].yard if colonies else makers.make_shed(), "who": None}
    return sell(colonies=colonies, terms=told or terms(), goes=goes, day=day, key=key, **{**usual, **fields})


def brought(lines, *, day=JUNE, key="back-1", **fields):
    into = fields.pop("into", None) or makers.make_shed()
    return got_back(sale=Sale.objects.get(), into=into, lines=lines, day=day, who=None, key=key, **fields)


def gear(ground):
    return {piece.part: number for piece, number in on_hand(ground).items()}


def test_a_nuc_goes_with_its_box_and_combs(nuc):
    sold(nuc)
    nuc.refresh_from_db()
    assert (nuc.ended_why, nuc.ended_on) == ("sold", MAY)
    assert owned() == {}
    sale = Sale.objects.get()
    assert (sale.buyer, sale.price_cents, sale.day, list(sale.colonies.all())) == (
        "Invented Neighbour",
        18000,
        MAY,
        [nuc],
    )
    assert nuc.events.get(kind="ended").note == "sold: to Invented Neighbour"
    assert prove().faults == ()


def test_what_does_not_go_with_it_stays_with_the_keeper(creek):
    colony = makers.make_colony("A1", yard=creek, gear=True)
    makers.put(colony, {"box-medium-10": 2})
    goes = [Line(code, number) for code, number in makers.gear_of("two-deeps-10").items()]
    sold(colony, goes=goes)
    assert gear(creek) == {"box-medium-10": 2}
    assert gear(colony) == {}


def test_bees_alone_may_be_sold(creek, nuc):
    sold(nuc, goes=[])
    assert gear(creek) == {"comb-deep-brood": 5, "nuc-box-5": 1}


def test_several_nucs_are_one_sale(creek, nuc):
    other = makers.make_colony("N2", yard=creek, hive_set="nuc-5", gear=True)
    act = sold(nuc, other, goes=[Line("nuc-box-5", 1), Line("comb-deep-brood", 10)])
    assert Sale.objects.get().colonies.count() == 2
    assert gear(creek) == {"nuc-box-5": 1}
    assert act.movements.filter(reason="sold").count() == 3


def test_what_goes_beyond_the_book_is_found(nuc):
    sold(nuc, goes=[Line("nuc-box-5", 1), Line("comb-deep-brood", 6)])
    assert {row.part.code: row.quantity for row in found_gear()} == {"comb-deep-brood": 1}


def test_the_box_and_a_swap_of_combs_come_back_in_two_goes(nuc):
    sold(nuc, told=box_and_combs())
    sale, shed = Sale.objects.get(), makers.make_shed()
    assert {part.code: number for part, number in still_owed(sale).items()} == {
        "nuc-box-5": 1,
        "comb-deep-brood": 5,
    }
    brought([Line("nuc-box-5", 1)], refund_cents=4000)
    assert {part.code: number for part, number in still_owed(sale).items()} == {"comb-deep-brood": 5}
    assert deposit_left(sale) == 0
    brought([Line("comb-deep-brood", 5, Condition.TO_MEND)], key="back-2")
    assert still_owed(sale) == {}
    assert gear(shed) == {"comb-deep-brood": 5, "nuc-box-5": 1}
    assert prove().faults == ()


def test_coming_back_is_resent_and_undone(nuc):
    sold(nuc, told=box_and_combs())
    act = brought([Line("nuc-box-5", 1)], refund_cents=1000)
    assert brought([Line("nuc-box-5", 1)], refund_cents=1000) == act
    assert SaleReturn.objects.count() == 1
    undo(act, who=None, key="undo")
    assert sum(still_owed(Sale.objects.get()).values()) == 6
    assert deposit_left(Sale.objects.get()) == 4000
    assert owned() == {}


def test_a_deposit_may_be_kept_for_a_box_that_never_comes(nuc):
    sold(nuc, told=box_and_combs())
    act = brought([], settles=True, note="kept the deposit")
    assert not act.movements.exists()
    assert still_owed(Sale.objects.get()) == {}
    with pytest.raises(SaleSettled):
        brought([Line("nuc-box-5", 1)], key="late")


def test_a_sale_is_resent_and_undone(nuc):
    before = gear(nuc)
    act = sold(nuc, told=box_and_combs())
    assert sold(nuc, told=box_and_combs()) == act
    assert Sale.objects.count() == 1
    undo(act, who=None, key="undo")
    assert gear(nuc) == before
    assert Colony.objects.alive(on=MAY).get() == nuc
    assert not Sale.objects.standing().exists()
    with pytest.raises(SaleUndone):
        brought([Line("nuc-box-5", 1)])
    sold(nuc, key="again")
    assert Sale.objects.standing().count() == 1


def test_a_sale_of_which_something_came_back_is_not_undone_before_that(nuc):
    act = sold(nuc, told=box_and_combs())
    back = brought([Line("nuc-box-5", 1)])
    with pytest.raises(BroughtBack, match="Invented Neighbour"):
        undo(act, who=None, key="undo")
    undo(back, who=None, key="undo-back")
    undo(act, who=None, key="undo-2")
    assert gear(nuc) == {"comb-deep-brood": 5, "nuc-box-5": 1}


def test_a_hive_with_gear_held_back_is_not_sold(nuc):
    lines = [Line("comb-deep-brood", 1)]
    ledger.mark(at=nuc, lines=lines, becomes="held back", day=MAY, who=None, key="mark")
    with pytest.raises(HeldBack, match="sold"):
        sold(nuc)
    with pytest.raises(HeldBack):
        sold(nuc, goes=[Line("nuc-box-5", 1)])


@pytest.mark.parametrize(
    ("told", "refusal"),
    [
        ({"buyer": "  "}, NoBuyer),
        ({"buyer": "x" * 81}, NoBuyer),
        ({"price_cents": -1}, NotMoney),
        ({"price_cents": 12.5}, NotMoney),
        ({"deposit_cents": -1}, NotMoney),
        ({"owed": (Line("nuc-box-5", 1),)}, NoDayBack),
        ({"owed": (Line("nuc-box-5", 1),), "back_by": MAY - dt.timedelta(days=1)}, BackTooEarly),
    ],
)
def test_terms_that_make_no_sense_are_refused_and_nothing_sold(nuc, told, refusal):
    with pytest.raises(refusal):
        sold(nuc, told=terms(**told))
    assert not Sale.objects.exists()
    assert Colony.objects.alive(on=MAY).get() == nuc


def test_each_other_refusal_is_told(creek, nuc):
    with pytest.raises(NoColony):
        sold()
    with pytest.raises(ColonyEnded):
        sold(makers.make_dead_colony(tag="D1", yard=creek, ended=dt.date(2025, 5, 1)))
    with pytest.raises(FutureDay):
        sold(nuc, day=dt.date(2999, 1, 1))
    makers.put(creek, {"frame-deep-foundation": 1})
    lines = [Line("frame-deep-foundation", 1)]
    ledger.place(source=creek, colony=nuc, lines=lines, day=JUNE, who=None, key="place")
    with pytest.raises(WorkedLater, match="cannot be sold on 10 May 2025"):
        sold(nuc)
    assert not Act.objects.filter(name="sell").exists()


def test_a_coming_back_that_makes_no_sense_is_refused(nuc):
    sold(nuc, told=box_and_combs())
    with pytest.raises(NothingGiven):
        brought([])
    with pytest.raises(BackTooEarly, match="before the sale"):
        brought([Line("nuc-box-5", 1)], day=MAY - dt.timedelta(days=1))
    with pytest.raises(RefundTooMuch, match="of the deposit of Invented Neighbour"):
        brought([Line("nuc-box-5", 1)], refund_cents=5000)
    with pytest.raises(NotMoney):
        brought([Line("nuc-box-5", 1)], refund_cents=-1)
    assert not SaleReturn.objects.exists()


def test_a_sale_with_nothing_to_come_is_settled_at_once(nuc):
    sold(nuc)
    with pytest.raises(SaleSettled):
        brought([Line("nuc-box-5", 1)])
