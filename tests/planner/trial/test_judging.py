"""Orders judged on the same seasons: the plan's own worths, musts that cannot be met, foresight as a bound."""

import pytest

from planner.sizing.records import BadYears
from planner.solution import solve
from planner.trial.judging import Judge, foresight, value_of
from tests.planner.plan import small


def test_an_order_is_worth_what_the_plan_with_its_packs_held_is_worth_season_by_season():
    problem = small.problem(budget=None)
    for packs in ({}, {("north-box", 0): 2, ("north-sugar", 0): 1}, {("north-sugar", 0): 1}):
        plan = solve(problem, packs=packs, gap=1e-9)
        judged = Judge(problem).worths(packs)
        assert judged == pytest.approx([scenario.objective for scenario in plan.scenarios])


def test_an_order_that_cannot_do_what_must_be_done_is_not_judged():
    data = small.problem_data()
    problem = small.problem(offers=data["offers"][:2])  # no sugar in season
    assert Judge(problem).worths({}) is None


def test_every_block_of_seasons_lets_the_caller_breathe():
    breaths = []
    judge = Judge(small.problem(), breathe=lambda: breaths.append(1))
    judge.worths({})
    assert len(breaths) == 2  # one block made, one judged


def test_who_knows_the_season_earns_at_least_as_much_as_any_order():
    problem = small.problem()
    bounds = foresight(problem)
    best = solve(problem, gap=1e-9)
    assert len(bounds) == 4
    assert all(
        bound >= scenario.objective - 1e-6 for bound, scenario in zip(bounds, best.scenarios, strict=True)
    )


def test_foresight_ends_where_it_is_enough():
    assert len(foresight(small.problem(), enough=lambda seasons: seasons >= 2)) == 2


def test_a_value_weighs_the_mean_against_the_worst_share():
    worths = [0.0, 10.0, 20.0, 30.0]
    assert value_of(worths, BadYears()) == 15
    assert value_of(worths, BadYears(weight=0.5, share=0.25)) == 7.5
    assert value_of([0.0, 10.0], BadYears(weight=1, share=0.2), chances=[0.1, 0.9]) == pytest.approx(5.0)
