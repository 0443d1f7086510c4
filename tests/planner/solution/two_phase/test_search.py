"""The search: a bound and an order at every step, told as they come, and a stop at any time."""

import random

import pytest

from planner.programme.here_and_now import order_part
from planner.sizing.reading import problem_of
from planner.solution.clock import Clock
from planner.solution.two_phase.earnings import Earnings
from planner.solution.two_phase.master import Master
from planner.solution.two_phase.planning import suits
from planner.solution.two_phase.search import NoOrder, Search
from planner.solution.warm import WarmScenarios
from tests.planner.random_problems import random_problem
from tests.planner.small_problems import small, small_problem, years


def search_of(problem, *, gap=0.0, seconds=60.0, tell=lambda stage, bound, gap: None):
    part = order_part(problem)
    earnings = Earnings(problem, WarmScenarios(problem), list(part.packs), 20)
    return Search(Master(part, earnings.groups), earnings, gap=gap, clock=Clock(seconds), tell=tell)


def test_every_step_tells_a_bound_no_higher_than_before():
    for seed in range(60):
        problem = problem_of(random_problem(random.Random(seed)))
        if not suits(problem):
            continue
        told: list = []
        search = search_of(problem, tell=lambda stage, bound, gap, told=told: told.append((bound, gap)))
        try:
            search.run()
        except NoOrder:
            continue
        bounds = [bound for bound, _ in told if bound is not None]
        assert bounds == sorted(bounds, reverse=True)
        assert all(bound >= search.best - 1e-6 for bound in bounds)
        assert all(gap >= 0 for _, gap in told if gap is not None)


def test_in_fractions_the_last_phase_is_the_first():
    problem = problem_of(small(scenarios=years((0.5, 2.5), (0.5, 8)), offer={"whole": False}))
    search = search_of(problem)
    search.run()
    assert (search.best, search.best_packs()) == (pytest.approx(25 * 5.25 - 80), {("boxes", 0): 8})
    assert search.distance() <= 1e-9


def test_out_of_time_leaves_the_order_of_nothing_and_says_so():
    search = search_of(small_problem(), seconds=0.0)
    search.run()
    assert search.best_columns is not None
    assert search.distance() > 0


def test_no_order_at_all():
    with pytest.raises(NoOrder):
        search_of(small_problem(budget=25, use={"must": True})).run()


def test_limits_of_must_uses_lead_to_an_order():
    search = search_of(small_problem(use={"must": True, "value": 1}))
    search.run()
    assert (search.best, search.best_packs()) == (pytest.approx(-36), {("boxes", 0): 4})


def test_settling_proves_the_prices_of_fractions():
    problem = small_problem(budget=20, offer={"whole": False})
    search = search_of(problem)
    search.run()
    assert search.settle()
    assert search.budget_price() == pytest.approx(1.5)
    assert search_of(small_problem()).budget_price() is None


def test_ruling_out_keeps_the_best_order():
    for gap in (0.001, 0.05):
        problem = small_problem(
            supplier={"order_fee": 12, "free_from": 60},
            offer={"prices": [{"from_packs": 1, "price": 10}, {"from_packs": 5, "price": 8}]},
            use={"units": 6},
        )
        search = search_of(problem, gap=gap)
        search.run()
        assert search.best >= (6 * 25 - 6 * 8 - 12) * (1 - gap)
        assert search.upper >= 6 * 25 - 6 * 8 - 12
