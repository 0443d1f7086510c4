"""The invented autumn ends with something of each kind for this week's sheet to ask about."""

import pytest

from apiary.models import Colony
from inventory import counting
from inventory.catching_up.posting import acts_of
from inventory.loans import out_of
from inventory.models import Act, Count, Loan, Movement

pytestmark = pytest.mark.django_db


def test_a_piece_found_still_asks_where_it_came_from(lived):
    (found,) = counting.unanswered()
    assert found.part.code == "guard-10"


def test_yards_are_due_to_be_counted_but_the_shed_was_and_a_draft_is_open(lived):
    due = {row.yard.is_shed for row in counting.due(on=lived.order_day)}
    assert due == {False}
    assert sorted(Count.objects.values_list("status", flat=True)) == [
        Count.Status.DRAFT,
        Count.Status.POSTED,
    ]


def test_the_count_of_the_shed_took_the_two_missing_excluders_off_the_book_and_nothing_else(lived):
    rows = Movement.objects.filter(act__name="correct")
    assert [(row.part.code, row.quantity, row.target.kind) for row in rows] == [
        ("excluder-10", 2, "correction")
    ]


def test_one_loan_is_overdue(lived):
    overdue = [loan for loan in Loan.objects.filter(due_on__lt=lived.order_day) if any(out_of(loan).values())]
    assert [loan.to for loan in overdue] == ["Bee school (invented)"]


def test_an_evening_was_caught_up_in_one_table(lived):
    key = next(act.key for act in Act.objects.all() if act.key.endswith(":1")).rpartition(":")[0]
    assert [act.name for act in acts_of(key)] == ["feed", "use", "mark"]


def test_a_weak_colony_was_united_and_the_slip_was_undone(lived):
    assert Colony.objects.filter(ended_why=Colony.Ended.UNITED).count() == 1
    slip = Act.objects.get(note="a slip")
    assert slip.reversed_by.name == "reverse"
