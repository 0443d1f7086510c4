"""Earnings of an order over the scenarios, and the cuts that bound all others."""

import numpy as np
import pytest

from planner.sizing.reading import problem_of
from planner.solution.two_phase.earnings import Earnings
from planner.solution.warm import WarmScenarios
from tests.planner.small_problems import small, years

KEYS = [("boxes", 0)]


def earnings_of(groups=2, **changes):
    problem = problem_of(small(scenarios=years((0.25, 2), (0.25, 4), (0.5, 8)), **changes))
    return Earnings(problem, WarmScenarios(problem), KEYS, groups)


def test_groups_of_scenarios_add_up():
    earned = earnings_of().at(np.array([3.0]))
    assert earned.own.tolist() == [50, 75, 75]
    assert earned.total == sum(value for value, _ in earned.cuts) == 0.25 * 50 + 0.75 * 75
    assert sum(float(slopes[0]) for _, slopes in earned.cuts) == 0.75 * 25
    assert earned.weights.tolist() == [0.25, 0.25, 0.5]


def test_bad_years_are_a_group_by_themselves():
    earnings = earnings_of(bad_years={"weight": 0.4, "share": 0.5})
    assert earnings.groups == 3
    earned = earnings.at(np.array([8.0]))
    assert earned.own.tolist() == [50, 100, 200]
    assert earned.total == pytest.approx(0.6 * 137.5 + 0.4 * 75)
    assert earned.cuts[-1][0] == pytest.approx(0.4 * 75)
    assert earned.weights.tolist() == pytest.approx([0.15 + 0.2, 0.15 + 0.2, 0.3])


def test_cuts_bound_earnings_everywhere():
    for bad_years in ({"weight": 0}, {"weight": 0.7, "share": 0.3}):
        earnings = earnings_of(bad_years=bad_years)
        points = [earnings.at(np.array([float(packs)])) for packs in range(10)]
        for here in points:
            for there in points:
                promised = sum(v + float(s[0]) * float(there.packs[0] - here.packs[0]) for v, s in here.cuts)
                assert there.total <= promised + 1e-9


def test_a_limit_is_told_as_the_orders_go():
    terms, least = earnings_of().of_keys(({("boxes", 0): 2.0}, 3.0))
    assert (terms.tolist(), least) == ([2.0], 3.0)


def test_cuts_bound_what_merged_uses_hide_and_parting_shows_it():
    scenarios = years((0.5, 2), (0.5, 4))
    for row in scenarios:
        row["uses"].append(row["uses"][0] | {"code": "other", "value": 75})
    problem = problem_of(small(scenarios=scenarios))
    plain = Earnings(problem, WarmScenarios(problem), KEYS, 2)
    merged = Earnings(problem, WarmScenarios(problem, merge=True), KEYS, 2)
    packs = np.array([3.0])
    true, found = plain.at(packs), merged.at(packs)
    assert (true.total, true.loose) == (0.5 * (2 * 75 + 25) + 0.5 * 3 * 75, 0)
    assert found.total == 0.5 * 3 * 50 + 0.5 * 3 * 50
    for ordered in range(10):
        promised = sum(value + float(slopes[0]) * (ordered - 3) for value, slopes in found.cuts)
        assert plain.at(np.array([float(ordered)])).total <= promised + 1e-9
    assert not merged.look_closer(found, found.loose + 1)
    assert merged.look_closer(found, 1.0)
    again = merged.at(packs)
    assert (again.total, again.loose) == (true.total, 0)
