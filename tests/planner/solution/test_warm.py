"""Scenarios kept warm: own money, prices of columns, and what orders a scenario can live with."""

import numpy as np
import pytest

from planner.sizing.reading import problem_of
from planner.solution.warm import NoRecourse, WarmScenarios
from tests.planner.small_problems import small, small_problem, years


def test_own_money_and_slopes_come_by_scenario_and_order():
    told = []
    problem = problem_of(small(scenarios=years((0.5, 2), (0.5, 8))))
    warm = WarmScenarios(problem, started=told.append)
    own, slopes = warm.evaluate([("boxes", 0)], np.array([4.0]))
    assert (own.tolist(), slopes.tolist(), told) == ([50, 100], [[0], [25]], [1, 2])


def test_a_scenario_that_cannot_be_lived_says_which_orders_it_can_live_with():
    scenario = WarmScenarios(small_problem(use={"must": True})).scenarios[0]
    with pytest.raises(NoRecourse) as refused:
        scenario.own({("boxes", 0): 1})
    terms, least = refused.value.limit
    assert least / terms[("boxes", 0)] == pytest.approx(4)
    assert scenario.own({("boxes", 0): 4}) == 100


def test_values_are_of_the_last_order():
    scenario = WarmScenarios(small_problem()).scenarios[0]
    for packs in (3, 1):
        scenario.own({("boxes", 0): packs})
        values = dict(zip([c.name for c in scenario.block.columns], scenario.values(), strict=True))
        assert values["use_s0_super"] == packs
