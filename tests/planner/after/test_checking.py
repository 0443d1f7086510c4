"""The plan held against seasons: enough, in time, and where it fails first by how much."""

import numpy as np

from planner.after.checking import check
from tests.planner.after.made import DAY, week
from tests.planner.after.test_targets import BOX, spell, wants

KEY = "creek", BOX


def checked(made, brought, fulls=None, own=None):
    return check(
        made,
        own or {},
        {key: np.array(rows, dtype=float) for key, rows in brought.items()},
        fulls or [None] * len(made.weights),
        kind=lambda part: part,
        names=lambda part: "medium box",
        yard_names={"creek": "Creek"},
        day=DAY,
    )


def test_a_season_that_gets_all_it_wants_has_enough():
    found = checked(wants({KEY: [spell(3, 6, 8)]}), {KEY: spell(3, 6, 8)})
    assert (found.as_loaded_in_100, found.on_time_share, found.short) == (100, 1.0, ())


def test_where_a_season_runs_short_first_is_told_with_how_much():
    made = wants({KEY: [spell(3, 6, 8), spell(5, 6, 20)]})
    found = checked(made, {KEY: spell(3, 6, 8)})
    assert (found.seasons, found.as_loaded_in_100) == (2, 50)
    (row,) = found.short
    assert (row.yard_name, row.day, row.in_100, row.missing) == ("Creek", week(5), 50, 12)
    assert found.on_time_share == 1 - 24 / 72


def test_less_than_a_tenth_is_not_short_and_the_yards_own_counts():
    assert checked(wants({KEY: [spell(3, 6, 20)]}), {KEY: spell(3, 6, 19)}).as_loaded_in_100 == 100
    assert checked(wants({KEY: [spell(3, 6, 20)]}), {}, own={KEY: 20}).as_loaded_in_100 == 100


def test_trips_too_small_are_told_by_yard_and_week():
    made = wants({KEY: [spell(3, 6, 8), spell(3, 6, 8)]})
    found = checked(made, {KEY: spell(3, 6, 8)}, fulls=[None, ("creek", "full supers to take home", 7, 2)])
    assert found.enough_in_100 == 50
    (row,) = found.full
    assert (row.yard_name, row.what, row.week, row.in_100, row.trips) == (
        "Creek",
        "full supers to take home",
        7,
        50,
        2,
    )
