"""Gear lent and got back: who has it, what came back how, and never more than is out."""

import datetime as dt

import pytest

from inventory import ledger, loans, stock
from inventory.errors import (
    BackBeforeLent,
    DueBeforeLent,
    HeldBack,
    LoanCameBack,
    MoreThanLent,
    NoBorrower,
    NotEnough,
    NothingGiven,
    NotLent,
    NotWhole,
    Several,
    UnknownCondition,
    UnknownPart,
)
from inventory.gear import Condition, Gear
from inventory.ledger import Line, Return
from inventory.models import Act, Loan, Location, Movement
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY
LATER = DAY + dt.timedelta(days=30)
BOX, MEND = Gear(part="box-medium-10"), Gear(part="box-medium-10", condition=Condition.TO_MEND)


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"box-medium-10": 10, "excluder-10": 4})
    return shed


def lent(shed, number=6, **changed):
    told = {
        "source": shed,
        "to": "Invented Neighbour",
        "due_on": LATER,
        "day": DAY,
        "who": None,
        "key": "lend",
    }
    lines = changed.pop("lines", [Line("box-medium-10", number)])
    return ledger.lend(lines=lines, **{**told, **changed})


def back(loan, shed, returns=None, **changed):
    told = {"loan": loan, "into": shed, "day": LATER, "who": None, "key": "back", **changed}
    return ledger.take_back(returns=returns or [Return(part="box-medium-10", sound=6)], **told)


def test_lent_gear_leaves_the_store_and_it_is_known_who_has_it_until_when(shed):
    act = lent(shed, to="  Invented   Neighbour ")
    assert stock.on_hand(shed)[BOX] == 4
    assert (act.loan.to, act.loan.due_on) == ("Invented Neighbour", LATER)
    assert Movement.objects.get(act=act).target.kind == Location.Kind.LENT


def test_pieces_come_back_sound_to_mend_or_not_at_all(shed):
    loan = lent(shed).loan
    act = back(loan, shed, [Return(part="box-medium-10", sound=3, to_mend=2, lost=1)])
    assert (stock.on_hand(shed)[BOX], stock.on_hand(shed)[MEND]) == (7, 2)
    assert Movement.objects.get(act=act, target__kind=Location.Kind.LOST).quantity == 1
    assert loans.out_of(loan) == {}


def test_a_loan_comes_back_in_several_goes_and_never_more_than_is_out(shed):
    loan = lent(shed).loan
    back(loan, shed, [Return(part="box-medium-10", sound=4)], key="first")
    with pytest.raises(MoreThanLent) as refused:
        back(loan, shed, [Return(part="box-medium-10", sound=2, lost=1)], key="second")
    assert (refused.value.out, refused.value.wanted) == (2, 3)
    back(loan, shed, [Return(part="box-medium-10", sound=2)], key="third")
    assert stock.on_hand(shed)[BOX] == 10


def test_what_was_lent_to_mend_may_come_back_mended(shed):
    makers.put(shed, {"box-medium-10": 2}, condition="to mend")
    loan = lent(shed, lines=[Line("box-medium-10", 2, Condition.TO_MEND)]).loan
    back(loan, shed, [Return(part="box-medium-10", condition=Condition.TO_MEND, sound=1, to_mend=1)])
    assert (stock.on_hand(shed)[BOX], stock.on_hand(shed)[MEND]) == (11, 1)


def test_a_resend_lends_and_gets_back_once(shed):
    first = lent(shed)
    assert (lent(shed), Loan.objects.count()) == (first, 1)
    assert back(first.loan, shed) == back(first.loan, shed)
    assert (first.loan.backs.count(), stock.on_hand(shed)[BOX]) == (1, 10)


def test_more_than_the_book_has_is_lent_as_found(shed):
    with pytest.raises(NotEnough):
        lent(shed, 12)
    assert not Loan.objects.exists()
    assert lent(shed, 12, found_allowed=True).movements.filter(found=True).get().quantity == 2


@pytest.mark.parametrize(
    ("changed", "refusal"),
    [
        ({"to": "   "}, NoBorrower),
        ({"to": "x" * 81}, NoBorrower),
        ({"due_on": DAY - dt.timedelta(days=1)}, DueBeforeLent),
        ({"lines": []}, NothingGiven),
        ({"lines": [Line("box-medium-10", 1, Condition.HELD)]}, HeldBack),
    ],
)
def test_a_loan_that_makes_no_sense_is_refused(shed, changed, refusal):
    before = Act.objects.count()
    with pytest.raises(refusal):
        lent(shed, **changed)
    assert (Act.objects.count(), Loan.objects.count()) == (before, 0)


@pytest.mark.parametrize(
    ("returns", "changed", "refusal"),
    [
        ([Return(part="box-medium-10")], {}, NothingGiven),
        ([Return(part="no-such", sound=1)], {}, UnknownPart),
        ([Return(part="box-medium-10", sound=-1)], {}, NotWhole),
        ([Return(part="box-medium-10", condition="wet", sound=1)], {}, UnknownCondition),
        ([Return(part="excluder-10", sound=1)], {}, MoreThanLent),
        ([Return(part="box-medium-10", sound=7)], {}, MoreThanLent),
        ([Return(part="box-medium-10", sound=4), Return(part="box-medium-10", lost=4)], {}, MoreThanLent),
        ([Return(part="no-such", sound=1), Return(part="box-medium-10", sound=7)], {}, Several),
        (None, {"day": DAY - dt.timedelta(days=1)}, BackBeforeLent),
    ],
)
def test_a_return_that_makes_no_sense_is_refused(shed, returns, changed, refusal):
    loan = lent(shed).loan
    before = Act.objects.count()
    with pytest.raises(refusal):
        back(loan, shed, returns, **changed)
    assert (Act.objects.count(), loan.backs.count()) == (before, 0)


def test_a_loan_is_undone_only_before_something_of_it_came_back(shed):
    act = lent(shed)
    returned = back(act.loan, shed, [Return(part="box-medium-10", sound=1)])
    with pytest.raises(LoanCameBack):
        ledger.reverse(act=act, who=None, key="undo")
    ledger.reverse(act=returned, who=None, key="undo-back")
    assert loans.out_of(act.loan)[makers.part("box-medium-10"), "sound"] == 6
    ledger.reverse(act=act, who=None, key="undo")
    assert stock.on_hand(shed)[BOX] == 10
    with pytest.raises(NotLent):
        back(act.loan, shed, key="late")
