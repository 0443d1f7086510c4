"""Trips missing by season, the fewest to keep free, and the first still missing."""

import numpy as np
import pytest

from planner.after.rooming import (
    HOME,
    OUT,
    PLANNED_FOR,
    Missing,
    first_full,
    kept_free,
    missing_trips,
    trips_words,
)
from tests.planner.after.made import MEDIUM, truck
from tests.planner.after.test_targets import spell, wants

KEY = "creek", MEDIUM


def visits(*weeks):
    return [1 if week in weeks else 0 for week in range(16)]


def missing(pulled=None, out=None, trips=None, lb=130, cubic_ft=50):
    made = wants(pulled={KEY: pulled or [[0] * 16]})
    out = {KEY: np.array(out or [[0] * 16], dtype=float)}
    return missing_trips(
        made, out, truck(lb, cubic_ft), {"creek": np.array(trips or visits(0, 2, 4, 6), dtype=float)}, {}
    )["creek"]


def test_full_supers_beyond_the_trips_of_their_week_are_missing():
    found = missing([spell(6, 6, 2), spell(6, 6, 5)])  # 57 lb each without combs: two a trip
    assert found.trips[:, 6].tolist() == [0, 2] and found.trips.sum() == 2
    assert found.what(1, 6) == HOME


def test_gear_beyond_the_trips_of_its_week_is_missing_by_weight_or_room():
    assert missing(out=[spell(6, 6, 26)]).trips.sum() == 0  # 5 lb each, 26 a trip
    found = missing(out=[spell(6, 6, 27)])
    assert (found.trips[0, 6], found.what(0, 6)) == (1, OUT)
    assert missing(out=[spell(6, 6, 50)], lb=10**6).trips[0, 6] == 1  # 50 boxes are more than 50 cubic feet


def test_one_trip_carries_both_ways():
    assert missing([spell(6, 6, 4)], [spell(6, 6, 40)]).trips[0, 6] == 1


def test_what_the_truck_never_takes_asks_for_no_trips():
    assert missing([spell(6, 6, 2)], [spell(6, 6, 2)], lb=4).trips.sum() == 0


def lacking(*seasons):
    """Season -> trips missing in week 3 at one yard."""
    rows = np.zeros((len(seasons), 8), dtype=int)
    rows[:, 3] = seasons
    return Missing(trips=rows, home=np.full(rows.shape, True))


def test_no_day_is_kept_free_where_every_season_has_its_trips():
    assert kept_free({"creek": lacking(0, 0)}, np.full(2, 0.5)) == {}


def test_each_yards_own_nine_seasons_of_ten_are_kept_free_for():
    rows = [0] * 8 + [1] + [3]
    assert kept_free({"creek": lacking(*rows)}, np.array([0.1] * 8 + [0.16, 0.04]))["creek", 3] == 1


def test_yards_that_fail_in_turn_get_the_fewest_more_until_enough_seasons_are_covered():
    """Ten yards, each short in one season of twenty of its own: each alone has its nine of ten, together half fail."""
    many = {f"yard-{n}": lacking(*[int(season == n) * (n + 1) for season in range(20)]) for n in range(10)}
    weights = np.full(20, 0.05)
    free = kept_free(many, weights)
    enough = [found is None for found in first_full(many, free, 20)]
    assert weights[enough].sum() >= PLANNED_FOR - 1e-9
    assert free == {(f"yard-{n}", 3): n + 1 for n in range(9)}  # the dearest season is the one left out


def test_the_first_trip_still_missing_is_told():
    assert first_full({"creek": lacking(0, 2)}, {("creek", 3): 1}, 2) == [None, ("creek", HOME, 3, 1)]


@pytest.mark.parametrize(("trips", "words"), [(1, "1 trip"), (2, "2 trips")])
def test_trips_are_counted_in_words(trips, words):
    assert trips_words(trips) == words
