"""What given orders are worth."""

import pytest

from planner.sizing.reading import problem_of
from planner.solution.clock import Clock
from planner.solution.nearby.judging import Judge
from tests.planner.small_problems import small, small_problem, years


def worths(problem, *packs, seconds=30):
    return Judge(problem).worths([{("boxes", 0): count} for count in packs], Clock(seconds))


def test_an_order_is_worth_what_its_uses_bring_less_its_cost_whatever_the_budget():
    assert worths(small_problem(budget=5), 3, 5, 0) == pytest.approx([45, 50, 0])


def test_an_order_under_which_a_must_use_is_short_has_no_worth():
    assert worths(small_problem(use={"must": True}), 3, 4) == [None, pytest.approx(60)]


def test_whole_uses_are_judged_by_a_programme_an_order():
    problem = small_problem(whole_uses=True, use={"keeps": {"box": 2}})
    assert worths(problem, 3, 4) == pytest.approx([-5, 10])


def test_out_of_time_the_last_orders_are_left_out():
    assert worths(small_problem(whole_uses=True), 3, 4, seconds=0) == []


def test_bad_years_weigh_as_the_problem_says():
    found = small(scenarios=years((0.5, 0), (0.5, 4)), bad_years={"weight": 1, "share": 0.5})
    assert worths(problem_of(found), 2) == pytest.approx([-20])
