"""Scenarios weighed several at a time."""

import numpy as np
import pytest

from planner.sizing.reading import problem_of
from planner.solution.nearby.together import HANDFUL, Together
from planner.solution.warm import NoRecourse, WarmScenarios
from tests.planner.small_problems import small, years

KEYS = [("boxes", 0)]


def scenarios(**use):
    chances = [(1 / 12, units) for units in range(1, 13)]
    return WarmScenarios(problem_of(small(scenarios=years(*chances, **use))))


def test_together_they_earn_what_each_earns_alone():
    warm = scenarios()
    assert len(warm.scenarios) > HANDFUL
    together = Together(warm.scenarios)
    for packs in ([0.0], [2.5], [7.0], [3.0]):
        alone, at_once = warm.evaluate(KEYS, np.array(packs)), together.evaluate(KEYS, np.array(packs))
        assert at_once[0] == pytest.approx(alone[0])


def test_slopes_bound_what_any_other_order_earns():
    together = Together(scenarios().scenarios)
    own, slopes = together.evaluate(KEYS, np.array([4.0]))
    assert slopes.any()
    for packs in (0.0, 3.0, 9.0):
        other, _ = together.evaluate(KEYS, np.array([packs]))
        assert (other <= own + slopes[:, 0] * (packs - 4.0) + 1e-9).all()


def test_a_scenario_that_cannot_be_lived_says_which_orders_it_needs():
    together = Together(scenarios(must=True).scenarios)
    with pytest.raises(NoRecourse) as refused:
        together.evaluate(KEYS, np.array([2.0]))
    terms, least = refused.value.limit
    assert terms[KEYS[0]] * 2.0 < least
    own, _ = together.evaluate(KEYS, np.array([12.0]))
    assert len(own) == 12


def test_nothing_is_merged_and_nothing_hidden():
    together = Together(scenarios().scenarios)
    assert not together.loose.any()
    assert not together.part(0.0)
