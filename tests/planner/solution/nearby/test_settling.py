"""Which points of a curve are settled, and which too poor to be told."""

import pytest

from planner.solution.nearby.records import BudgetPoint
from planner.solution.nearby.settling import marked


def point(budget, objective, bound):
    return BudgetPoint(
        budget=budget, spend=budget, objective=objective, bound=bound, fractions=bound, packs={}
    )


def marks(*points, gap=0.001, own=None, shown=None):
    """(settled, poor) of each."""
    found = marked(
        {one.budget: one for one in points}, gap=gap, shown=shown or [one.budget for one in points], own=own
    )
    return [(one.settled, one.poor) for one in found.values()]


@pytest.mark.parametrize(
    ("bound", "gap", "settled"), [(101, 0.001, True), (102, 0.001, False), (104, 0.05, True)]
)
def test_a_point_is_settled_within_one_in_a_hundred_or_the_gap_that_was_asked(bound, gap, settled):
    assert marks(point(10, 100, bound), gap=gap) == [(settled, False)]


@pytest.mark.parametrize(
    ("objective", "bound", "poor"), [(0, 300, True), (190, 300, True), (210, 300, False), (0, 9, False)]
)
def test_a_point_that_may_miss_a_third_of_the_most_is_poor_but_ten_are_little(objective, bound, poor):
    assert marks(point(0, 0, 0), point(10, objective, bound))[1] == (False, poor)


def test_what_may_be_missed_is_measured_over_the_smallest_budget_shown():
    """Of 20,100 to 20,300 most is open, though it is less than one in a hundred; beside the curve stands -500."""
    rows = point(0, -500, -500), point(5, 20000, 20000), point(10, 20100, 20300)
    assert marks(*rows, shown=[5, 10])[2] == (False, True)
    assert marks(*rows, shown=[0, 5, 10])[2] == (True, False)


def test_within_the_gap_that_was_asked_no_point_is_poor():
    rows = point(0, 20000, 20000), point(10, 20100, 20300)
    assert marks(*rows, gap=0.01) == [(True, False), (True, False)]


def test_the_order_itself_is_never_called_poor():
    rows = point(0, 0, 0), point(10, 100, 300)
    assert marks(*rows, own=10)[1] == (False, False)
    assert marks(*rows)[1] == (False, True)


def test_points_only_beside_the_curve_are_measured_over_the_smallest_of_them():
    assert marked({}, gap=0.001, shown=[5], own=None) == {}
    assert marks(point(0, 0, 0), point(10, 100, 300), shown=[5])[1] == (False, True)
