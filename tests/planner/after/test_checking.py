"""The plan held against seasons: enough when trips carry all and nobody waits in vain; where it fails first."""

import numpy as np

from planner.after.checking import check
from planner.after.living import Lived
from tests.planner.after.made import DAY, MEDIUM, week


def checked(*, waits=(None, None), fulls=(None, None), late=(0, 0), prompt=(True, True)):
    lived = Lived(
        wanted=np.array([50.0, 30.0]),
        late=np.array(late, dtype=float),
        prompt=np.array(prompt),
        waits=list(waits),
        out={},
    )
    return check(
        np.array([0.5, 0.5]),
        lived,
        list(fulls),
        names=lambda part: "medium box",
        yard_names={"creek": "Creek"},
        day=DAY,
    )


def test_a_season_whose_trips_carry_all_and_whose_yards_are_served_in_turn_has_enough():
    found = checked()
    assert (found.seasons, found.enough_in_100, found.trips_in_100, found.in_turn_in_100) == (
        2,
        100,
        100,
        100,
    )
    assert (found.as_loaded_in_100, found.on_time_share, found.short, found.full) == (100, 1.0, (), ())


def test_the_plan_is_enough_only_where_both_hold():
    found = checked(waits=[("creek", MEDIUM, 6, 3.0), None], fulls=[None, ("creek", "gear to bring", 4, 1)])
    assert (found.enough_in_100, found.trips_in_100, found.in_turn_in_100) == (0, 50, 50)


def test_where_a_yard_waits_first_is_told_with_how_much():
    (row,) = checked(waits=[("creek", MEDIUM, 6, 3.0), ("creek", MEDIUM, 6, 6.0)]).short
    assert (row.yard_name, row.name, row.day, row.in_100, row.missing) == (
        "Creek",
        "medium box",
        week(6),
        100,
        4,
    )


def test_trips_too_few_are_told_by_yard_and_week():
    (row,) = checked(fulls=[None, ("creek", "full supers to take home", 7, 2)]).full
    assert (row.yard_name, row.what, row.week, row.in_100, row.trips) == (
        "Creek",
        "full supers to take home",
        7,
        50,
        2,
    )


def test_pieces_in_time_are_a_share_of_all_that_is_wanted():
    found = checked(late=(5, 3), prompt=(False, True))
    assert (found.on_time_share, found.as_loaded_in_100) == (0.9, 50)
