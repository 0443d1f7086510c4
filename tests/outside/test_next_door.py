"""What lies next door to an order, against published newsvendors and SciPy's own MILP routine.

A pack more or fewer of a newsvendor earns (underage + overage) × P(demand beyond) − overage, the critical-ratio
argument of Hadley and Whitin, Analysis of Inventory Systems, 1963; several items under one budget share its price.
"""

import random
from dataclasses import replace
from itertools import pairwise

import pytest

from planner.sizing.reading import problem_of
from planner.solution import solve
from planner.solution.nearby import study
from tests.outside import newsvendors
from tests.outside.plain_milp import Plain
from tests.outside.published import case
from tests.planner.random_problems import random_problem

COUNTED = (
    # Nahmias, Production and Operations Analysis, ch. 5, Examples 5.1-5.3 (histogram from memory)
    "nv-macs",
    # Hillier and Lieberman, Introduction to Operations Research, stochastic single-period problems
    "nv-freddie",
    # Snyder and Shen, Fundamentals of Supply Chain Theory, 2nd ed., 2019, Problem 4.7(b)
    "nv-snyder-4.7b",
)


@pytest.mark.parametrize("name", COUNTED)
def test_one_more_and_one_fewer_earn_what_the_critical_ratio_says(name):
    data = case(name).data
    price, cost, salvage = newsvendors.prices(data)
    problem = problem_of(newsvendors.single(data))
    plan = solve(problem, gap=0)
    bought = plan.here_and_now[0].packs
    wanted = newsvendors.outcomes(data)
    found = study(problem, plan, budgets=[cost * bought]).moves
    for moved in found:
        least = bought + max(moved.step, 0)  # the piece in question is the last of so many
        sold = sum(probability for probability, units in wanted if units >= least)
        assert moved.worth_change == pytest.approx(
            moved.step * ((price - salvage) * sold - (cost - salvage)), abs=1e-6
        )
        assert moved.worth_change <= 1e-9
        assert moved.cost_change == pytest.approx(moved.step * cost)


def test_four_items_under_one_budget_earn_its_published_price_on_either_side():
    """Constructed from published items by the rule of Hadley and Whitin, 1963."""
    published = case("nv-budget")
    price = published.answer["lambda"]
    problem = problem_of(newsvendors.shared_budget(published.data))
    plan = solve(problem, gap=1e-5)
    budgets = [1600, 1800, 2000, 2200, 2400]
    found = study(problem, plan, budgets=budgets, more=100, less=300, gap=1e-5)
    gains = [(b.objective - a.objective) / (b.budget - a.budget) for a, b in pairwise(found.points)]
    assert gains == sorted(gains, reverse=True)
    assert gains[2] < price < gains[1]
    assert found.budget_price == pytest.approx(price, rel=0.02)
    assert found.next_earns / 100 == pytest.approx(price, rel=0.06)
    assert 300 * price < found.less.lost < 330 * price
    for moved in found.moves:  # a piece swapped for its price in the shared budget earns no more than that
        assert moved.worth_change <= moved.cost_change * price + 1e-6 * abs(plan.objective)


@pytest.mark.parametrize("seed", range(60))
def test_the_curve_of_a_random_problem_is_that_of_scipy(seed):
    problem = problem_of(random_problem(random.Random(seed)))
    plan = solve(problem, gap=0)
    if not plan.is_order or not plan.here_and_now:
        return
    budgets = [0, 10, 25, 60]
    found = study(problem, plan, budgets=budgets, more=5, less=5, gap=1e-6)
    points = {point.budget: point for point in found.points}
    for budget in budgets:
        best = Plain(replace(problem, budget=budget)).best()
        assert (budget in points) == (best is not None)
        if best is not None:
            assert points[budget].objective == pytest.approx(best, rel=1e-5, abs=1e-5)
            assert points[budget].spend <= budget + 1e-6
