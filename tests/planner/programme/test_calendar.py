"""Periods merged into stretches."""

from planner.programme.calendar import stretches


def test_nothing_that_changes_leaves_one_stretch():
    assert stretches(5, comes=set(), goes=set(), alone=set()) == [(0, 4)]


def test_gear_comes_at_a_stretch_s_first_period_and_goes_at_its_last():
    assert stretches(6, comes={2}, goes={3}, alone=set()) == [(0, 1), (2, 3), (4, 5)]


def test_a_period_alone_has_a_stretch_of_its_own():
    assert stretches(5, comes=set(), goes=set(), alone={2}) == [(0, 1), (2, 2), (3, 4)]
    assert stretches(2, comes={0}, goes={1}, alone={0, 1}) == [(0, 0), (1, 1)]
