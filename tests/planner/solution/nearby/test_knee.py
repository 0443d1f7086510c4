"""The knee of a budget curve."""

import pytest

from planner.solution.nearby.knee import knee_of


def test_the_knee_is_where_steep_turns_flat():
    assert knee_of([0, 10, 20, 30, 40], [0, 50, 100, 105, 110]) == 2


def test_a_straight_or_level_curve_has_none():
    assert knee_of([0, 10, 20], [0, 10, 20]) is None
    assert knee_of([0, 10, 20], [7, 7, 7]) is None
    assert knee_of([], []) is None


def test_money_and_scale_do_not_move_it():
    budgets, earned = [100, 200, 300, 400], [-5.0, 20.0, 24.0, 25.0]
    scaled = knee_of([5 * money for money in budgets], [3 * worth - 1000 for worth in earned])
    assert knee_of(budgets, earned) == scaled == 1


def test_the_published_curve_of_the_method_has_its_knee_where_its_authors_say():
    """Satopaa and others (2011), figure 2: y = 5 − 1/(x + 0.1) at ten even steps from 0 to 1, knee at x = 0.22 (from
    memory)."""
    xs = [at / 9 for at in range(10)]
    found = knee_of(xs, [5 - 1 / (x + 0.1) for x in xs])
    assert xs[found] == pytest.approx(0.22, abs=0.003)
