"""Solving: status, bound, prices, given orders, and reasons where there is no order."""

import random

import pytest

from planner.sizing.reading import problem_of
from planner.solution import solve
from planner.solution import solving as solving_module
from planner.solution.highs import STOPPED, Answer
from tests.planner.random_problems import random_problem
from tests.planner.small_problems import small_problem, years

BOTH = pytest.mark.parametrize("solver", ["highs", "cbc"])


@BOTH
def test_a_small_order_is_proven_best(solver):
    plan = solve(small_problem(), solver=solver, gap=0)
    assert (plan.status, plan.objective, plan.bound, plan.gap, plan.solver) == ("optimal", 60, 60, 0, solver)
    assert (plan.reason, plan.spend) == (None, 40)
    line = plan.here_and_now[0]
    assert (line.offer, line.period, line.packs, line.units, line.cost) == ("boxes", 0, 4, {"box": 4}, 40)


@BOTH
def test_whole_packs_are_whole_numbers(solver):
    plan = solve(small_problem(use={"units": 3.5}), solver=solver, gap=0)
    assert isinstance(plan.here_and_now[0].packs, int)


def test_both_solvers_agree_on_random_problems():
    for seed in range(500, 530):
        problem = problem_of(random_problem(random.Random(seed)))
        highs, cbc = solve(problem, gap=0), solve(problem, gap=0, solver="cbc")
        assert highs.status == cbc.status
        if highs.is_order:
            assert highs.objective == pytest.approx(cbc.objective, rel=1e-6, abs=1e-6)


@BOTH
def test_an_infeasible_must_use_is_told_in_words(solver):
    plan = solve(small_problem(budget=25, use={"must": True}), solver=solver)
    assert (plan.status, plan.objective, plan.here_and_now) == ("infeasible", None, ())
    assert '"super", 4 asked, 2 possible' in plan.reason
    assert "15.00 USD more budget than 25.00" in plan.reason
    assert plan.shadow_prices is None


@BOTH
def test_a_money_machine_is_named(solver):
    plan = solve(small_problem(part={"end_value": 11}), solver=solver)
    assert plan.status == "unbounded"
    assert 'offer "boxes" is a money machine' in plan.reason
    assert plan.objective is None


def test_a_contradiction_is_told_before_a_money_machine():
    problem = small_problem(
        part={"end_value": 11}, use={"must": True, "first": 0}, offer={"order_periods": [1]}
    )
    assert solve(problem).status == "infeasible"


def test_the_gap_asked_for_is_kept_and_told():
    plan = solve(small_problem(), gap=0.5)
    assert plan.bound >= plan.objective
    assert plan.gap <= 0.5
    assert plan.gap == pytest.approx((plan.bound - plan.objective) / max(1, abs(plan.objective)))


@BOTH
def test_out_of_time_without_an_order_says_so(solver, monkeypatch):
    module = solving_module.highs if solver == "highs" else solving_module.cbc
    monkeypatch.setattr(module, "solve", lambda *args, **kwargs: Answer(status=STOPPED))
    plan = solve(small_problem(use={"must": True}), solver=solver)
    assert (plan.status, plan.objective, plan.bound) == ("time_limit", None, None)
    assert "allow more seconds" in plan.reason


def test_out_of_time_at_once_orders_nothing_and_tells_the_bound(monkeypatch):
    real = solving_module.highs.solve

    def stopped(matrix, *, fixed=None, **kwargs):
        return Answer(status=STOPPED, bound=75.0) if fixed is None else real(matrix, fixed=fixed, **kwargs)

    monkeypatch.setattr(solving_module.highs, "solve", stopped)
    plan = solve(small_problem(stock=[{"part": "box", "location": "shed", "quantity": 1}]))
    assert (plan.status, plan.here_and_now, plan.objective) == ("time_limit", (), 25)
    assert (plan.bound, plan.gap) == (75, 2.0)


def test_out_of_time_with_an_order_tells_how_far_the_bound_is(monkeypatch):
    real = solving_module.highs.solve

    def stopped(matrix, *, fixed=None, **kwargs):
        answer = real(matrix, fixed=fixed, **kwargs)
        if fixed is not None:
            return answer
        return Answer(status=STOPPED, values=answer.values, objective=answer.objective, bound=90.0)

    monkeypatch.setattr(solving_module.highs, "solve", stopped)
    plan = solve(small_problem())
    assert (plan.status, plan.objective, plan.bound, plan.gap) == ("time_limit", 60, 90, 0.5)


def test_an_unknown_solver_is_refused():
    with pytest.raises(ValueError, match="solver must be one of highs, cbc"):
        solve(small_problem(), solver="abacus")


@BOTH
def test_a_given_order_is_valued_as_it_is(solver):
    problem = small_problem(scenarios=years((0.5, 2), (0.5, 8)))
    plan = solve(problem, solver=solver, packs={("boxes", 0): 5}, gap=0)
    assert plan.packs() == {("boxes", 0): 5}
    assert plan.objective == pytest.approx(0.5 * 2 * 25 + 0.5 * 5 * 25 - 50)
    assert solve(problem, solver=solver, packs={}, gap=0).spend == 0


def test_the_best_order_valued_again_is_worth_the_same():
    for seed in range(40):
        problem = problem_of(random_problem(random.Random(seed)))
        plan = solve(problem, gap=0)
        if plan.is_order:
            again = solve(problem, packs=plan.packs(), gap=0)
            assert again.objective == pytest.approx(plan.objective, rel=1e-6, abs=1e-6)


def test_a_given_order_that_breaks_the_budget_is_refused_in_words():
    plan = solve(small_problem(budget=25), packs={("boxes", 0): 3})
    assert plan.status == "infeasible"
    assert "5.00 USD more budget than 25.00" in plan.reason


def test_one_scenario_is_the_same_as_two_alike():
    one = solve(small_problem(), gap=0)
    two = solve(small_problem(scenarios=years((0.3, 4), (0.7, 4))), gap=0)
    assert one.objective == pytest.approx(two.objective)


def test_bad_years_weigh_in():
    chances = years((0.8, 6), (0.2, 0))
    plain = solve(small_problem(scenarios=chances), gap=0)
    wary = solve(small_problem(scenarios=chances, bad_years={"weight": 1, "share": 0.2}), gap=0)
    assert (plain.here_and_now[0].packs, wary.here_and_now) == (6, ())
    half = solve(small_problem(scenarios=chances, bad_years={"weight": 0.25, "share": 0.5}), gap=0)
    # 6 boxes: 0.75 (0.8 × 150 − 60) + 0.25 ((0.3 × 90 − 0.2 × 60) / 0.5)
    assert half.objective == pytest.approx(0.75 * 60 + 0.25 * (0.3 * 90 - 0.2 * 60) / 0.5)


def test_progress_is_told_by_stage():
    told = []
    solve(small_problem(), progress=lambda stage, bound, gap: told.append(stage))
    assert told[0] == "building"
    assert told[-1] == "pricing"
    assert "solving" in told


def test_prices_are_left_out_where_they_are_not_wanted():
    plan = solve(small_problem(), prices=False)
    assert (plan.shadow_prices, plan.shadow_prices_withheld) == (None, "not asked for")
    assert plan.objective == 60
