"""Uses merged across yards in the two-phase way: true plans, bounds that hold for uses served each for itself."""

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.sizing.reading import problem_of
from planner.solution import solve
from planner.solution.two_phase import planning, suits
from planner.solution.valuing import objective_of
from planner.solution.warm import WarmScenarios
from tests.planner.many_yards import many_yards
from tests.planner.true_plans import assert_true


@pytest.fixture(autouse=True)
def _merged_at_any_gap(monkeypatch):
    monkeypatch.setattr(planning, "COARSE_GAP", 0.0)


def close(worth):
    return 1e-6 * max(1.0, abs(worth))


def assert_uses_true(problem, plan):
    """Links hold, musts are served, served and short come to all units."""
    for scenario, done in zip(problem.scenarios, plan.scenarios, strict=True):
        served = {line.use: line.units for line in done.served}
        short = {line.use: line.units for line in done.short}
        for use in scenario.uses:
            units = served.get(use.code, 0.0)
            assert units + short.get(use.code, 0.0) == pytest.approx(use.units, abs=1e-5)
            assert use.needs_use is None or units <= use.per * served.get(use.needs_use, 0.0) + 1e-6
            assert not use.must or units == pytest.approx(use.units)


@settings(max_examples=30, deadline=None, derandomize=True)
@given(seed=st.integers(0, 10**6), gap=st.sampled_from([0.0, 0.001, 0.05]))
def test_the_plan_is_true_and_the_best_lies_between_its_worth_and_its_bound(seed, gap):
    problem = problem_of(many_yards(random.Random(seed)))
    if not suits(problem):
        return
    best = solve(problem, gap=0, way="direct", prices=False)
    plan = solve(problem, gap=gap, way="two-phase", prices=False)
    assert plan.is_order == best.is_order
    if best.is_order:
        assert plan.objective - close(best.objective) <= best.objective <= plan.bound + close(best.objective)
        assert plan.gap <= max(gap, 1e-6)
        assert_true(problem, plan)
        assert_uses_true(problem, plan)
        money = [scenario.objective for scenario in plan.scenarios]
        assert objective_of(problem, money) == pytest.approx(plan.objective, abs=1e-6)


def suited(count, *, yards=6):
    found = [problem_of(many_yards(random.Random(seed), yards=yards)) for seed in range(3 * count)]
    return [problem for problem in found if suits(problem)][:count]


def test_prices_are_those_of_uses_served_each_for_itself():
    compared = 0
    for problem in [*suited(12), *suited(8, yards=25)]:
        plan = solve(problem, gap=0.05, way="two-phase")
        if not plan.is_order:
            continue
        compared += 1
        prices = plan.shadow_prices
        assert prices is not None, plan.shadow_prices_withheld
        packs = plan.packs()
        held = solve(problem, packs=packs, way="direct", prices=False)
        assert plan.objective == pytest.approx(held.objective, rel=1e-6)
        assert set(prices.parts) == {part.code for part in problem.parts}
        assert all(price >= -1e-6 for price in prices.parts.values())
    assert compared > 10


def test_merged_and_parted_uses_take_fewer_columns_than_uses_by_themselves():
    problem = problem_of(many_yards(random.Random(3), yards=30))
    plain, merged = WarmScenarios(problem), WarmScenarios(problem, merge=True)
    count = [sum(len(scenario.block.columns) for scenario in warm.scenarios) for warm in (plain, merged)]
    assert count[1] < 0.5 * count[0]


def test_fine_gaps_and_given_orders_tell_every_use_by_itself(monkeypatch):
    monkeypatch.setattr(planning, "COARSE_GAP", 1e-4)
    asked = []

    class Watched(WarmScenarios):
        def __init__(self, *arguments, merge=False, **more):
            asked.append(merge)
            super().__init__(*arguments, merge=merge, **more)

    monkeypatch.setattr(planning, "WarmScenarios", Watched)
    problem = suited(1)[0]
    plans = [solve(problem, gap=gap, way="two-phase", prices=False) for gap in (1e-5, 0.001)]
    solve(problem, packs=plans[0].packs(), way="two-phase", prices=False)
    assert asked == [False, True, False]
