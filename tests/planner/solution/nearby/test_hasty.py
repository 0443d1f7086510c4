"""Orders built without a search: within the money, really worth what is told, and better than carrying one forward."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from planner.solution import solve
from planner.solution.clock import Clock
from planner.solution.nearby import study
from planner.solution.nearby.hasty import bettered, halving, orders_within
from planner.solution.nearby.judging import Judge
from planner.solution.nearby.records import BudgetPoint
from planner.solution.valuing import ordered
from tests.planner.small_problems import small_problem

FEE = {"order_fee": 7}


def point(budget, objective, *, settled=False):
    return BudgetPoint(
        budget=budget, spend=0, objective=objective, bound=60, fractions=60, packs={}, settled=settled
    )


def solved(**changed):
    problem = small_problem(supplier=FEE, **changed)
    plan = solve(problem, gap=0)
    return problem, plan.packs(), study(problem, plan).moves


def run(problem, packs, moved, points, *, clock=None):
    judge, clock = Judge(problem), clock or Clock(60)
    return bettered(problem, packs, moved, points, lambda order: judge.worth(order, clock), clock)


def test_an_unsettled_point_gets_an_order_it_can_pay_for_at_what_that_order_is_really_worth():
    problem, packs, moved = solved(budget=50)
    found = run(problem, packs, moved, {money: point(money, 0) for money in (10, 20, 30)})
    assert found[10] == point(10, 0)  # not one pack and the fee
    assert [found[money].spend <= money for money in (20, 30)] == [True, True]
    for money in (20, 30):
        free = replace(problem, budget=money)
        exact = solve(free, packs=found[money].packs, gap=0)
        assert 0 < found[money].objective == exact.objective <= solve(free, gap=0).objective


def test_a_settled_point_is_left_to_itself_and_nothing_is_called_settled_by_it():
    problem, packs, moved = solved(budget=50)
    known = point(20, 60, settled=True)
    assert run(problem, packs, moved, {20: known})[20] == known
    assert not run(problem, packs, moved, {30: point(30, 0)})[30].settled


def test_with_no_time_left_no_order_is_built():
    problem, packs, moved = solved(budget=50)
    points = {30: point(30, 0)}
    assert run(problem, packs, moved, points, clock=Clock(0)) == points


def test_more_money_adds_a_pack_that_earns_and_less_drops_what_earns_least():
    problem, packs, moved = solved(budget=17)
    (added,) = orders_within(problem, packs, moved, 30)
    assert sum(added.values()) == sum(packs.values()) + 1
    assert all(sum(order.values()) < sum(packs.values()) for order in orders_within(problem, packs, moved, 8))


@given(st.lists(st.integers(0, 99), unique=True))
def test_every_budget_comes_once_and_the_middle_one_first(budgets):
    told = halving(budgets)
    assert sorted(told) == sorted(budgets)
    if budgets:
        assert told[0] == sorted(budgets)[len(budgets) // 2]


@given(st.integers(0, 60))
def test_no_order_built_costs_more_than_the_money(money):
    problem, packs, moved = SOLVED
    for order in orders_within(problem, packs, moved, money):
        assert ordered(problem, order).spend <= money + 1e-6
        assert all(count == round(count) > 0 for count in order.values())


SOLVED = solved(budget=50)
