"""Hauls and trips as they are meant."""

import pytest

from planner.solution import solve
from tests.planner.small_problems import small_problem

PLACES = {"locations": ["shed", "mill", "hill"], "part": {"weight_lb": 8}}


def line(source, target, **changes):
    return {"from": source, "to": target} | changes


def test_without_hauls_places_do_not_matter():
    plan = solve(small_problem(**PLACES, use={"location": "hill"}), gap=0)
    assert plan.objective == 60
    assert plan.scenarios[0].hauled == ()


def test_gear_is_hauled_on_in_the_same_period_at_the_cost_of_both_lines():
    hauls = [line("shed", "mill", cost_per_unit=1), line("mill", "hill", cost_per_lb=0.25)]
    plan = solve(
        small_problem(**PLACES, hauls=hauls, use={"location": "hill"}, offer={"order_periods": [1]}), gap=0
    )
    assert plan.objective == pytest.approx(4 * (25 - 10 - 1 - 2))
    assert {(row.source, row.target, row.period) for row in plan.scenarios[0].hauled} == {
        ("shed", "mill", 1),
        ("mill", "hill", 1),
    }


def test_where_no_line_leads_a_use_is_left_short():
    plan = solve(small_problem(**PLACES, hauls=[line("hill", "shed")], use={"location": "hill"}), gap=0)
    assert plan.objective == 0


def test_trips_are_whole_and_a_half_empty_one_must_pay():
    hauls = [line("shed", "hill", trip_cost=22, trip_lb=24)]  # three boxes a trip
    plan = solve(small_problem(**PLACES, hauls=hauls, use={"location": "hill"}), gap=0)
    assert plan.objective == pytest.approx(3 * 15 - 22)
    assert [row.trips for row in plan.scenarios[0].trips] == [1]


def test_free_trips_are_counted_all_the_same():
    hauls = [line("shed", "hill", trip_lb=24)]
    plan = solve(small_problem(**PLACES, hauls=hauls, use={"location": "hill"}), gap=0)
    assert sum(row.trips for row in plan.scenarios[0].trips) == 2


def test_parts_of_no_weight_ride_free():
    hauls = [line("shed", "hill", trip_cost=1000, trip_lb=1, cost_per_lb=50)]
    changes = PLACES | {"part": {"weight_lb": 0}}
    plan = solve(small_problem(**changes, hauls=hauls, use={"location": "hill"}), gap=0)
    assert (plan.objective, plan.scenarios[0].trips) == (60, ())
