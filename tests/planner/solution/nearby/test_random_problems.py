"""Studies of random problems: moves as a direct solve says, curves that rise, bounds and budgets that hold."""

import random
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planner.sizing.reading import problem_of
from planner.sizing.records import BadYears
from planner.solution import solve
from planner.solution.nearby import study
from planner.solution.recourse import Recourse
from tests.planner.random_problems import random_problem
from tests.planner.small_problems import small, years

GAP = 0.001
SLOW = settings(max_examples=4, deadline=None, suppress_health_check=list(HealthCheck))


def direct(problem, packs):
    held = {key: count for key, count in packs.items() if count}
    return solve(replace(problem, budget=None), packs=held, gap=0, way="direct", prices=False)


def check_moves(problem, plan, found):
    here = direct(problem, plan.packs()).objective
    lines = [(line.offer, line.period) for line in plan.here_and_now]
    assert [(moved.offer, moved.period) for moved in found.moves[::2]] == lines
    for moved in found.moves:
        if moved.limit:
            continue
        key = moved.offer, moved.period
        held = direct(problem, {**plan.packs(), key: plan.packs()[key] + moved.step})
        assert moved.served == held.is_order
        if moved.served:
            assert moved.worth_change == pytest.approx(held.objective - here, rel=1e-5, abs=1e-5)
            assert moved.cost_change == pytest.approx(held.spend - plan.spend, abs=1e-6)
        if problem.budget is not None and held.is_order:
            assert moved.over_budget == pytest.approx(max(held.spend - problem.budget, 0), abs=0.006)


def check_curve(problem, plan, found, gap):
    for point in found.points:
        assert point.spend <= point.budget + 1e-6
        assert point.objective <= point.bound + 1e-9 <= point.fractions + 1e-6 + gap * abs(point.bound)
        assert point.bound - point.objective <= gap * max(1, abs(point.objective)) + 1e-6
    for before, after in pairwise(found.points):
        assert before.objective <= after.objective + 1e-9
        assert before.bound <= after.bound + 1e-9
    slopes = [(b.fractions - a.fractions) / (b.budget - a.budget) for a, b in pairwise(found.points)]
    for before, after in pairwise(slopes):
        assert after <= before + 1e-5 * max(1, abs(before))
    own = [point for point in found.points if point.budget == problem.budget]
    assert all(point.objective >= plan.objective - 1e-6 for point in own)


@SLOW
@given(seed=st.integers(0, 10_000))
def test_problems_of_every_feature(seed):
    problem = problem_of(random_problem(random.Random(seed)))
    plan = solve(problem, gap=0)
    if plan.is_order:
        found = study(problem, plan, more=5, less=5, gap=GAP)
        assert found.not_told == ""
        check_moves(problem, plan, found)
        check_curve(problem, plan, found, GAP)


@st.composite
def many_scenarios(draw):
    """Twelve years of two parts, a fee and price steps: what cuts are for."""
    number = st.integers(0, 9)
    count = 12
    scenarios = years(*[(1 / count, draw(number)) for _ in range(count)], value=draw(st.integers(8, 30)))
    for scenario in scenarios:
        scenario["uses"].append(
            {**scenario["uses"][0], "code": "hive", "units": draw(number), "keeps": {"box": 1, "lid": 1}}
        )
        scenario["uses"][1]["value"] = draw(st.integers(10, 45))
    data = small(scenarios=scenarios, supplier={"order_fee": draw(st.integers(0, 9))})
    data["parts"].append({"code": "lid", "end_value": 1})
    steps = [{"from_packs": 1, "price": 6}, {"from_packs": draw(st.integers(2, 5)), "price": 5}]
    data["offers"].append({**data["offers"][0], "code": "lids", "parts": {"lid": 2}, "prices": steps})
    data["offers"][0]["whole"] = draw(st.booleans())
    data["budget"] = draw(st.sampled_from([20, 47, 90]))
    data["bad_years"] = {"weight": draw(st.sampled_from([0, 0.4])), "share": 0.25}
    return problem_of(data)


@SLOW
@given(problem=many_scenarios())
def test_problems_of_many_scenarios(problem):
    plan = solve(problem, gap=GAP)
    found = study(problem, plan, more=10, less=10, gap=GAP)
    check_moves(problem, plan, found)
    check_curve(problem, plan, found, GAP)
    assert found.not_told == ""


@SLOW
@given(problem=many_scenarios())
def test_shadow_prices_and_one_more_agree_within_the_pack(problem):
    """What a pack more earns lies between the price of the pack before it is bought and after: worth is concave."""
    problem = replace(problem, bad_years=BadYears())
    plan = solve(problem, gap=GAP)
    found = study(problem, plan, budgets=[0], gap=GAP)
    judge, chances = Recourse(problem), [scenario.probability for scenario in problem.scenarios]
    for moved in found.moves:
        key = moved.offer, moved.period
        ends = [plan.packs(), {**plan.packs(), key: plan.packs()[key] + moved.step}]
        if moved.limit:
            continue
        slopes = [judge.worths_and_slopes(packs)[1] for packs in ends]
        here, there = (sum(p * own[key] for p, own in zip(chances, row, strict=True)) for row in slopes)
        earned = (moved.worth_change + moved.cost_change) * moved.step
        assert min(here, there) - 1e-6 <= earned <= max(here, there) + 1e-6
