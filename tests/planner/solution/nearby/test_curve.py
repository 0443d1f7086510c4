"""The curve over budgets."""

import pytest

from planner.sizing.reading import problem_of
from planner.solution import solve
from planner.solution.clock import Clock
from planner.solution.nearby.curve import curve
from planner.solution.nearby.judging import Judge
from tests.planner.small_problems import small, small_problem, years

SETTINGS = {"budgets": None, "more": 10, "less": 10, "tell": lambda *told: None}


def told(problem, *, seconds=60, gap=0.001, plan_gap=0, **changes):
    plan = solve(problem, gap=plan_gap)
    warm = Judge(problem).warm
    return plan, *curve(problem, plan, warm, **{**SETTINGS, "gap": gap, "clock": Clock(seconds), **changes})


def many_years(**changes):
    chances = [(1 / 12, units) for units in range(1, 13)]
    return problem_of(small(scenarios=years(*chances), supplier={"order_fee": 7}, **changes))


def test_an_order_cheaper_than_its_budget_is_carried_to_all_larger_ones():
    _, points, shown = told(small_problem(), budgets=[40, 45, 60])
    assert [points[money].objective for money in shown] == pytest.approx([60, 60, 60])
    assert [points[money].spend for money in shown] == [40, 40, 40]


def test_the_plan_itself_is_the_least_its_own_budget_earns():
    problem = small_problem(budget=35)
    plan, points, _ = told(problem)
    assert points[35].objective >= plan.objective - 1e-9


def test_budgets_too_small_for_every_must_use_have_no_point():
    _, points, shown = told(small_problem(use={"must": True}), budgets=[10, 40, 50])
    assert sorted(points) == [40, 50]
    assert shown == [10, 40, 50]


def test_chosen_budgets_begin_where_every_must_use_can_be_served():
    _, points, shown = told(small_problem(use={"must": True}))
    assert min(shown) >= 40
    assert set(shown) <= set(points)


def test_out_of_time_the_larger_budgets_are_missing():
    _, points, shown = told(small_problem(), budgets=[10, 20], seconds=0)
    assert (points, shown) == ({}, [10, 20])


@pytest.mark.parametrize("gap", [0.001, 0.005])
def test_many_scenarios_by_shared_cuts_and_each_alone_agree_within_the_gap(gap):
    problem = many_years(budget=60)
    _, points, shown = told(problem, gap=gap)
    assert len(shown) == 12
    for money in shown:
        alone = solve(many_years(budget=money), way="direct", gap=0)
        point = points[money]
        assert point.bound >= alone.objective - 1e-6
        assert point.objective >= alone.objective - gap * max(1, abs(alone.objective)) - 1e-6
        assert point.spend <= money + 1e-6


def test_without_an_end_to_what_is_worth_buying_each_budget_is_solved_alone():
    """More gear is worth more at the end than it costs: only a budget holds the order back."""
    problem = many_years(budget=60, part={"end_value": 12})
    _, points, _ = told(problem)
    assert points[60].objective == pytest.approx(solve(problem, gap=0).objective, rel=0.001)
