"""Trips within the truck, on visits where they may be; the extra ones against a whole-number programme; conservation."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from planner.after.loads import Lot, TooLarge, trips_of
from planner.after.records import EXTRA
from tests.planner.after.made import COMB, MEDIUM, truck

BOX = (MEDIUM, False)
FULL = (MEDIUM, True)
SMALL = truck(lb=50)  # ten empty boxes


def lot(pieces, release, due, key=BOX):
    return Lot(cargo={key: pieces}, release=release, due=due)


def plan(lots, visits, **home):
    return trips_of(SMALL, visits, lots, full=home.get("full", {}), spare=home.get("spare", {}))


def extra(trips):
    return sum(trip.rides == EXTRA for trip in trips)


def least_extra(lots, visits, capacity):
    """scipy's whole-number programme: pieces of each lot by week, extra trips by week, as few as may be."""
    weeks = sorted({*visits, *(week for each in lots for week in range(each[1], each[2] + 1))})
    pairs = [(n, week) for n, each in enumerate(lots) for week in weeks if each[1] <= week <= each[2]]
    size = len(pairs) + len(weeks)
    cost = np.r_[np.zeros(len(pairs)), np.ones(len(weeks))]
    brought = np.zeros((len(lots), size))
    room = np.zeros((len(weeks), size))
    for column, (number, week) in enumerate(pairs):
        brought[number, column] = 1
        room[weeks.index(week), column] = 1
    for row in range(len(weeks)):
        room[row, len(pairs) + row] = -capacity
    there = np.array([capacity if week in visits else 0 for week in weeks])
    wanted = np.array([each[0] for each in lots])
    found = milp(
        cost,
        constraints=[LinearConstraint(brought, wanted, wanted), LinearConstraint(room, -np.inf, there)],
        integrality=np.ones(size),
        bounds=Bounds(0, np.inf),
    )
    return round(found.fun)


ROWS = st.lists(st.tuples(st.integers(1, 25), st.integers(0, 8), st.integers(0, 4)), min_size=1, max_size=5)


@settings(max_examples=60, deadline=None)
@given(ROWS, st.sets(st.integers(0, 12), min_size=1, max_size=5))
def test_no_plan_has_fewer_extra_trips(rows, visits):
    lots = [(pieces, release, release + window) for pieces, release, window in rows]
    trips, _left = plan([lot(*each) for each in lots], visits)
    assert extra(trips) == least_extra(lots, visits, capacity=10)


@settings(max_examples=60, deadline=None)
@given(ROWS, st.sets(st.integers(0, 12), min_size=1, max_size=5))
def test_all_that_can_be_brought_is_brought_within_its_weeks_and_within_the_truck(rows, visits):
    lots = [lot(pieces, release, release + window) for pieces, release, window in rows]
    trips, _left = plan(lots, visits)
    assert sum(trip.out.get(BOX, 0) for trip in trips) == sum(pieces for pieces, *_ in rows)
    assert all(SMALL.takes(trip.out) and SMALL.takes(trip.home) for trip in trips)
    for week in range(13):  # by each week at least what is due then is there, and never what is not ready
        there = sum(trip.out.get(BOX, 0) for trip in trips if trip.week <= week)
        assert there >= sum(p for p, release, window in rows if release + window <= week)
        assert there <= sum(p for p, release, _window in rows if release <= week)


def test_gear_rides_on_the_last_visit_that_is_in_time():
    trips, _left = plan([lot(8, 0, 5)], [0, 2, 4, 6])
    assert [(trip.week, trip.rides, trip.out) for trip in trips] == [(4, "visit", {BOX: 8})]


def test_what_a_visit_has_no_room_for_rides_on_the_one_before():
    trips, _left = plan([lot(14, 0, 4)], [0, 2, 4])
    assert [(trip.week, trip.out[BOX]) for trip in trips] == [(2, 4), (4, 10)]


def test_an_extra_trip_is_made_only_where_no_visit_fits():
    trips, _left = plan([lot(14, 3, 4)], [0, 2, 4])
    assert [(trip.week, trip.rides, trip.out[BOX]) for trip in trips] == [
        (4, "visit", 10),
        (4, "extra trip", 4),
    ]
    trips, _left = plan([lot(4, 3, 3)], [0, 2, 4])
    assert [(trip.week, trip.rides) for trip in trips] == [(3, "extra trip")]


def test_full_supers_come_home_the_week_they_are_pulled_and_their_trips_bring_gear_out():
    carrier = truck(lb=130)  # two full mediums: 60 lb each, from memory
    trips, _left = trips_of(carrier, [0, 2], [lot(40, 1, 2)], full={2: {FULL: 5}}, spare={})
    assert [trip.home[FULL] for trip in trips if trip.home] == [2, 2, 1]
    assert {trip.week for trip in trips} == {2}
    assert extra(trips) == 2  # the trips for the supers carry the boxes too


def test_empty_gear_comes_home_as_room_allows_and_the_rest_stays():
    trips, left = plan([], [0, 2], spare={1: {BOX: 14}})
    assert [(trip.week, trip.home[BOX]) for trip in trips] == [(2, 10)]
    assert left == {BOX: 4}


def test_frames_travel_with_their_boxes():
    carrier = truck(lb=100)
    both = Lot(cargo={BOX: 10, (COMB, False): 90}, release=0, due=2)
    trips, _left = trips_of(carrier, [0, 2], [both], full={}, spare={})
    assert sum(trip.out[COMB, False] for trip in trips) == 90
    assert all(abs(trip.out[COMB, False] - 9 * trip.out[BOX]) <= 9 for trip in trips)


def test_a_piece_the_truck_never_takes_is_refused_by_name():
    with pytest.raises(TooLarge, match="one piece of box-medium-10 is more than the truck takes"):
        trips_of(truck(lb=4), [0], [lot(1, 0, 0)], full={}, spare={})
