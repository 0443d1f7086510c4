"""The smallest fleet for jobs with fixed times, through `size`, against published peaks."""

import pytest

from tests.outside import fleets
from tests.outside.published import case

INTERVALS = (
    # Kleinberg and Tardos, Algorithm Design, 2005, sec. 4.1 (from memory)
    "fleet-kt",
    # Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms, 3rd ed., 2009, sec. 16.1 (table from memory,
    # answer computed)
    "fleet-clrs",
    # teaching notes on interval partitioning (author and year not noted), answer computed
    "fleet-m1m4",
)


@pytest.mark.parametrize("name", INTERVALS)
def test_the_fleet_is_the_greatest_number_of_jobs_at_once(name, solver, sized):
    published = case(name)
    plan = sized(fleets.fleet(published.data), solver)
    assert -plan["objective"] == published.figure("peak")


@pytest.mark.parametrize(("whole", "figure"), [(True, "integer_min"), (False, "lp_min")])
def test_five_day_shifts_cover_the_week(whole, figure, solver, sized):
    """Winston, Operations Research: Applications and Algorithms, 4th ed., 2004, sec. 3.5, Example 7 (from memory):
    23 people, 22 1/3 where people may be split."""
    published = case("fleet-postoffice")
    plan = sized(fleets.shifts(published.data, whole=whole), solver)
    assert -plan["objective"] == published.figure(figure)
