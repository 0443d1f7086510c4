"""What is lent to whom, as of any day; reversed acts count for nothing."""

import datetime as dt

import pytest

from inventory import ledger, loans
from inventory.ledger import Line, Return
from tests import makers

pytestmark = pytest.mark.django_db
DAY = makers.DAY


def days(number):
    return DAY + dt.timedelta(days=number)


@pytest.fixture
def shed(db):
    shed = makers.make_shed()
    makers.put(shed, {"box-medium-10": 10, "excluder-10": 4})
    return shed


def lent(shed, to, due, **lines):
    told = [Line(code.replace("_", "-"), number) for code, number in lines.items()]
    act = ledger.lend(source=shed, to=to, due_on=due, lines=told, day=DAY, who=None, key=makers.fresh_key())
    return act.loan


def test_loans_due_first_stand_first_and_open_ended_ones_last(shed):
    open_ended = lent(shed, "A", None, excluder_10=1)
    late, soon = lent(shed, "B", days(30), excluder_10=1), lent(shed, "C", days(3), excluder_10=1)
    assert [row.loan for row in loans.lent_out(on=days(1))] == [soon, late, open_ended]
    assert [row.loan for row in loans.due_back(on=days(3))] == [soon]
    assert [row.overdue for row in loans.lent_out(on=days(4))] == [True, False, False]


def test_what_is_out_is_told_by_piece_as_of_the_day(shed):
    loan = lent(shed, "A", None, box_medium_10=6, excluder_10=2)
    ledger.take_back(
        loan=loan,
        into=shed,
        returns=[Return(part="box-medium-10", sound=5, lost=1)],
        day=days(5),
        who=None,
        key="back",
    )
    (row,) = loans.lent_out(on=days(4))
    assert [(part.code, number) for part, _, number in row.pieces] == [
        ("box-medium-10", 6),
        ("excluder-10", 2),
    ]
    (row,) = loans.lent_out(on=days(5))
    assert (row.number, row.due) == (2, False)
    assert loans.lent_out(on=DAY - dt.timedelta(days=1)) == []


def test_a_loan_taken_back_as_a_mistake_is_not_out(shed):
    loan = lent(shed, "A", DAY, excluder_10=1)
    assert not loans.came_back(loan.act)
    ledger.reverse(act=loan.act, who=None, key="undo")
    assert loans.standing_loans() == []
    assert loans.due_back(on=days(9)) == []


def test_the_questions_cost_the_same_however_many_loans_there_are(shed, django_assert_num_queries):
    for number in range(4):
        lent(shed, f"N{number}", None, excluder_10=1)
    with django_assert_num_queries(4):
        assert len(loans.lent_out(on=DAY)) == 4


def test_only_what_was_lent_from_given_yards_is_told(shed):
    yard = makers.make_yard("creek")
    makers.put(yard, {"box-medium-10": 4})
    here, away = lent(shed, "A", days(3), excluder_10=1), lent(yard, "B", days(3), box_medium_10=2)
    assert [row.loan for row in loans.lent_out(on=days(3), yards={shed.pk})] == [here]
    assert [row.loan for row in loans.due_back(on=days(3), yards={yard.pk})] == [away]
    assert len(loans.lent_out(on=days(3))) == 2
