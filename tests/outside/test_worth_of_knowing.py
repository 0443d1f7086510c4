"""Wait and see, the stochastic order and the mean scenario's order, each judged as the trial judges, as published."""

from dataclasses import replace

import pytest

from planner.sizing.reading import problem_of
from planner.solution import solve
from planner.trial.judging import Judge, foresight
from tests.outside import two_stage
from tests.outside.published import case

PLANTS = tuple(f"plant-{i}" for i in range(4))
PROGRAMMES = {
    # Birge and Louveaux, Introduction to Stochastic Programming, 1997, sec. 1.1 and 4.2
    "sp-farmer": (two_stage.farm, tuple(f"plant-{crop}" for crop in two_stage.CROPS)),
    # Birge and Louveaux, Introduction to Stochastic Programming, 1997, ch. 5, Example 1
    "sp-bl-simple": (two_stage.two_machines, ("x1", "x2")),
    # Louveaux and Smeers, Optimal Investments for Electricity Generation, 1988
    "sp-lands": (two_stage.three_loads, PLANTS),
    # Higle, INFORMS TutORials, 2005 (from memory)
    "sp-dakota": (two_stage.assemble, ("resource-0", "resource-1", "resource-2")),
    # Bertsimas and Freund, Data, Models and Decisions, 2000, sec. 7.2 (answer from memory)
    "sp-gemstone": (two_stage.assemble, ("resource-0",)),
}
EARNED = ("sp-dakota", "sp-gemstone")  # published as a profit, the others as a cost


def mean(problem, worths):
    return sum(s.probability * worth for s, worth in zip(problem.scenarios, worths, strict=True))


@pytest.mark.parametrize("name", PROGRAMMES)
def test_each_is_worth_what_is_published_and_they_stand_in_that_order(name):
    encode, offers = PROGRAMMES[name]
    published, sign = case(name), 1 if name in EARNED else -1
    problem = problem_of(encode(published.data))
    judge = Judge(problem)
    knowing = mean(problem, foresight(problem))
    best = mean(problem, judge.worths(solve(problem, gap=0.0).packs()))
    by_mean = dict(zip(((offer, 0) for offer in offers), published.answer["x_ev"], strict=True))
    naive = mean(problem, judge.worths(by_mean))
    assert knowing == published.figure("WS", sign=sign, slack=1e-3)
    assert best == published.figure("RP", sign=sign, slack=1e-3)
    assert naive == published.figure("EEV", sign=sign, slack=1e-2)
    assert knowing >= best >= naive


@pytest.mark.parametrize("name", PROGRAMMES)
def test_of_one_scenario_knowing_it_is_worth_nothing(name):
    """The two-stage programme of a single scenario is the deterministic one."""
    encode, _offers = PROGRAMMES[name]
    problem = problem_of(encode(case(name).data))
    alone = replace(problem, scenarios=(replace(problem.scenarios[0], probability=1.0),))
    plan = solve(alone, gap=0.0)
    assert foresight(alone)[0] == pytest.approx(plan.objective, rel=1e-9)
    assert Judge(alone).worths(plan.packs())[0] == pytest.approx(plan.objective, rel=1e-9)
