"""What the second process of a curve finds; its life as a process is tried in test_companion.py."""

import pytest

from planner.sizing.reading import problem_of
from planner.solution.nearby.companion_process import found
from planner.solution.warm import WarmScenarios
from tests.planner.small_problems import small, years


def asked(budgets, packs=None):
    problem = problem_of(small(scenarios=years(*[(1 / 12, units) for units in range(1, 13)])))
    return found(problem, WarmScenarios(problem), budgets, (), gap=0.001, seconds=60.0, packs=packs)


def test_it_finds_the_best_order_of_each_budget():
    best, fractions = asked([25, 60])
    assert [one.packs for one in best.values()] == [{("boxes", 0): 2}, {("boxes", 0): 6}]
    assert list(fractions) == [25, 60]


def test_an_order_known_is_the_least_it_finds():
    best, _ = asked([50], packs={("boxes", 0): 5})
    assert best[50].packs == {("boxes", 0): 5}
    assert best[50].bound == pytest.approx(best[50].objective, rel=0.002)
