"""Recipes and work as they are meant."""

import pytest

from planner.solution import solve
from tests.planner.small_problems import small_problem

NAILING = {
    "parts": [{"code": "box"}, {"code": "boards"}],
    "offer": {"parts": {"boards": 1}},
}


def nail(**changes):
    return [{"code": "nail", "takes": {"boards": 1}, "makes": {"box": 1}, "work_minutes": 20} | changes]


def made(plan):
    return {(row.recipe, row.period): row.units for row in plan.scenarios[0].made}


def test_work_is_spread_over_periods_each_within_its_minutes():
    problem = small_problem(
        **NAILING,
        periods=6,
        recipes=nail(),
        work={"minutes_per_period": [30, 10, 0, 40, 60, 60]},
        use={"first": 4, "last": 4},
    )
    plan = solve(problem, gap=0)
    work = plan.scenarios[0].work
    assert sum(work) == pytest.approx(80)
    assert all(minutes <= limit + 1e-9 for minutes, limit in zip(work, [30, 10, 0, 40, 60, 60], strict=True))
    assert sum(units for (_, period), units in made(plan).items() if period <= 4) == pytest.approx(4)


def test_too_few_minutes_leave_uses_short_and_cost_nothing():
    problem = small_problem(**NAILING, recipes=nail(), work={"minutes_per_period": [20, 20, 60]})
    plan = solve(problem, gap=0)
    assert plan.here_and_now[0].packs == 2
    assert plan.scenarios[0].short[0].units == 2


def test_work_of_packs_falls_where_they_land_and_is_paid_by_the_hour():
    problem = small_problem(
        offer={"work_minutes": 15, "lead_periods": 1},
        work={"minutes_per_period": [0, 60, 0], "cost_per_hour": 8},
    )
    plan = solve(problem, gap=0)
    assert plan.scenarios[0].work == (0, 60, 0)
    assert plan.objective == pytest.approx(4 * (25 - 10 - 2))


def test_a_recipe_s_lead_is_waited_for():
    late = small_problem(**NAILING, recipes=nail(lead_periods=2))
    assert solve(late, gap=0).objective == 0
    in_time = small_problem(**NAILING, recipes=nail(lead_periods=1, cost=0.5))
    plan = solve(in_time, gap=0)
    assert plan.objective == pytest.approx(4 * (25 - 10 - 0.5))
    assert made(plan) == {("nail", 0): 4}


def test_recipes_chain_within_a_period():
    problem = small_problem(
        parts=[{"code": "box"}, {"code": "boards"}, {"code": "timber"}],
        offer={"parts": {"timber": 1}, "order_periods": [1]},
        recipes=[*nail(), {"code": "saw", "takes": {"timber": 1}, "makes": {"boards": 2}}],
    )
    plan = solve(problem, gap=0)
    assert plan.here_and_now[0].packs == 2
    assert made(plan) == {("nail", 1): 4, ("saw", 1): 2}


def test_recipes_with_a_lead_and_without_share_the_minutes():
    problem = small_problem(
        parts=NAILING["parts"],
        offer={"parts": {"boards": 1}, "whole": False},
        periods=6,
        recipes=[*nail(), {**nail()[0], "code": "slow", "lead_periods": 2, "work_minutes": 5}],
        work={"minutes_per_period": [5, 10, 5, 5, 20, 60]},
        use={"first": 4, "last": 4, "units": 8},
    )
    plan = solve(problem, gap=0)
    assert all(
        m <= limit + 1e-9 for m, limit in zip(plan.scenarios[0].work, [5, 10, 5, 5, 20, 60], strict=True)
    )
    assert plan.scenarios[0].served[0].units == pytest.approx(5.25)  # 4 slow by period 2, 1.25 by hand after
