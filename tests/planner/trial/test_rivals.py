"""What the rule of thumb and nothing are worth on the seasons planned with, and the best order without a budget."""

from decimal import Decimal

from planner.plan.words import cents
from planner.solution import solve
from planner.trial import bill_of, rivals, without_budget
from tests.planner.plan import small


def test_no_other_order_is_worth_more_than_the_proven_best():
    """All are judged by the same problem: the optimum is never beaten, and each spend is its own bill."""
    whole = small.problem(budget=None)
    best = solve(whole, gap=0.0)
    others = rivals(small.operation(), small.assumptions(), whole, best, solve=solve)
    assert [each.name for each in others] == ["a rule of thumb", "buying nothing now"]
    for other in others:
        assert other.gain >= 0
        assert other.worth + other.gain == cents(best.objective)
        assert other.spend == bill_of(whole, {(code, 0): count for code, count in other.packs.items()})
    assert others[1].packs == {} and others[1].spend == 0


def test_a_rival_that_cannot_do_what_must_be_done_is_left_out():
    data = small.problem_data()
    data["offers"] = data["offers"][:2]  # no sugar in season: buying nothing is no order at all
    whole = small.problem(offers=data["offers"], budget=None)
    best = solve(whole)
    others = rivals(small.operation(), small.assumptions(), whole, best, solve=solve)
    assert "buying nothing now" not in [each.name for each in others]


def test_the_best_without_a_budget_is_worth_at_least_as_much():
    bound = small.problem(budget=40)  # a bag and its shipping are 55
    free = without_budget(bound, solve=solve)
    assert free.worth >= cents(solve(bound).objective)
    assert free.spend == Decimal("55.00")


def test_no_order_without_a_budget_is_no_comparison():
    assert without_budget(small.problem(offers=[], budget=0), solve=solve) is None
