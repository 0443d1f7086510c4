"""The master of all budgets."""

import numpy as np
import pytest

from planner.programme.here_and_now import order_part
from planner.solution.nearby.cut_master import NEAR, WIDER, CutMaster
from tests.planner.small_problems import small_problem


def master(**changes):
    found = CutMaster(order_part(small_problem(**changes)), 1)
    found.begin_at(None)
    return found


def test_the_budget_is_the_right_side_of_one_row():
    found = master()
    found.cuts([(0.0, np.array([25.0]))], np.zeros(1))
    for budget, worth in ((20, 30.0), (30, 45.0), (10, 15.0)):
        found.begin_at(budget)
        assert found.relaxed(5).bound == pytest.approx(worth)


def test_narrowing_ends_with_its_budget():
    found = master()
    found.cuts([(0.0, np.array([25.0]))], np.zeros(1))
    found.narrow(0, 0, 1)
    found.begin_at(30)
    assert found.relaxed(5).bound == pytest.approx(45)


def test_cuts_far_from_binding_are_left_out_and_the_bound_stays_true():
    found = master()
    for value, slope, at in ((0.0, 25.0, 0.0), (1000.0, 25.0, 0.0), (75.0, 5.0, 3.0)):
        found.cuts([(value, np.array([slope]))], np.array([at]))
    found.begin_at(40, [np.array([3.0])])
    assert found._matter(0.01).tolist() == [True, False, True]
    assert found.in_whole_numbers(1e-6, 5).bound == pytest.approx(45)


def test_the_cheapest_order_keeps_to_what_is_needed():
    found = master(supplier={"order_fee": 7})
    found.needed(np.array([1.0]), 2.5)
    columns = found.cheapest(5)
    assert (found.packs(columns).tolist(), found.spend(columns)) == ([3], pytest.approx(37))


def test_asked_again_without_progress_it_takes_cuts_further_from_binding(monkeypatch):
    found, shares = master(), []
    found.cuts([(0.0, np.array([25.0]))], np.zeros(1))
    monkeypatch.setattr(found, "_matter", lambda share: shares.append(share) or np.ones(1, dtype=bool))
    for seed in (1, 2, 3):
        found.in_whole_numbers(1e-6, 5, seed=seed)
    assert shares == pytest.approx([NEAR, NEAR * WIDER, NEAR * WIDER**2])
