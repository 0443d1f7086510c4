"""One master and one set of warm scenarios for all budgets."""

from itertools import pairwise

import pytest

from planner.sizing.reading import problem_of
from planner.solution.clock import Clock
from planner.solution.nearby.sweep import Sweep
from planner.solution.warm import WarmScenarios
from tests.planner.small_problems import small, years


def sweep(*, gap=0.001, **changes):
    chances = [(1 / 12, units) for units in range(1, 13)]
    problem = problem_of(small(scenarios=years(*chances, **changes.pop("use", {})), **changes))
    return Sweep(problem, WarmScenarios(problem), gap=gap, clock=Clock(60), tell=lambda *told: None)


def test_rising_budgets_buy_more_until_more_is_of_no_use():
    engine = sweep()
    found = [engine.best(money) for money in (0, 25, 60, 500)]
    assert [best.packs for best in found] == [{}, {("boxes", 0): 2}, {("boxes", 0): 6}, {("boxes", 0): 8}]
    assert all(best.bound >= best.objective for best in found)


def test_a_fee_is_paid_for_out_of_the_budget():
    assert sweep(supplier={"order_fee": 7}).best(25).packs == {("boxes", 0): 1}


def test_a_known_order_is_a_beginning_and_never_bettered_by_a_worse_one():
    engine = sweep()
    engine.know({("boxes", 0): 5})
    assert [spend for spend, _, _ in engine.orders] == [50]
    assert engine.best(50).packs == {("boxes", 0): 5}


def test_the_least_money_serves_every_must_use_of_every_scenario():
    assert sweep(use={"must": True}, supplier={"order_fee": 7}).least() == pytest.approx(127)
    assert sweep().least() == 0
    assert sweep(use={"must": True}, offer={"max_packs": 3}).least() is None


def test_a_budget_too_small_for_every_must_use_has_no_order():
    assert sweep(use={"must": True}).best(50).packs is None


def test_the_most_is_about_the_spend_of_the_best_order_without_a_budget():
    assert sweep().most() == pytest.approx(75, abs=15)


def test_in_fractions_the_curve_bends_down_only():
    engine = sweep(gap=1e-5)
    for money in (0, 10, 25, 40, 60):
        engine.best(money)
    worth = engine.in_fractions([0, 20, 40, 60, 80])
    gains = [after - before for before, after in pairwise(worth)]
    assert gains == sorted(gains, reverse=True)


def test_a_point_that_had_no_time_still_tells_an_order_and_a_true_bound():
    engine = sweep()
    engine.know({("boxes", 0): 4})
    hurried, unhurried = engine.best(60, 0.0), sweep().best(60)
    assert hurried.packs is not None
    assert hurried.objective <= unhurried.objective + 1e-6 <= hurried.bound + 1e-6
