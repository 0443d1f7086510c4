"""Whether the planned trips have room for what each season wants."""

import numpy as np

from planner.after.rooming import HOME, OUT, first_full, trips_words
from tests.planner.after.made import MEDIUM, truck
from tests.planner.after.test_targets import spell, wants

KEY = "creek", MEDIUM


def full(made, trips, lb=130):
    return first_full(made, {}, truck(lb=lb), {"creek": np.array(trips, dtype=float)}, {})


def visits(*weeks):
    return [1 if week in weeks else 0 for week in range(16)]


def test_full_supers_beyond_the_trips_of_their_week_are_told():
    made = wants(pulled={KEY: [spell(6, 6, 2), spell(6, 6, 5)]})  # 57 lb each without combs: two a trip
    assert full(made, visits(0, 2, 4, 6)) == [None, ("creek", HOME, 6, 2)]


def test_gear_may_come_on_the_visits_before():
    made = wants({KEY: [spell(6, 9, 50)]})  # 5 lb each, 26 a trip
    assert full(made, visits(4, 6)) == [None]
    assert full(made, visits(6)) == [("creek", OUT, 0, 1)]


def test_room_counts_beside_weight():
    made = wants({KEY: [spell(6, 9, 50)]})
    assert full(made, visits(6), lb=10**6) == [("creek", OUT, 0, 1)]  # 50 boxes are more than 50 cubic feet


def test_trips_are_counted_in_words():
    assert (trips_words(1), trips_words(2)) == ("1 trip", "2 trips")
