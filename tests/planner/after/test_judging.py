"""The planned loads of the small order held against its seasons; days to keep free come from those planned with alone."""

from planner.after.judging import Judged, syrup_by_week, trips_by_week
from planner.after.records import EXTRA


def test_visits_and_extra_trips_are_counted_by_week(after):
    counts = trips_by_week(after)
    extra = sum(trip.rides == EXTRA for _yard, trip in after.trips)
    visits = sum(len(after.visits(yard)) for yard in counts)
    assert sum(count.sum() for count in counts.values()) == visits + extra


def test_syrup_weighs_on_the_visits_it_is_fed_on(after):
    pounds = syrup_by_week(after)
    for row in after.feed:
        assert pounds[row.yard][row.week] >= 10 * row.gallons


def test_fresh_seasons_are_judged_by_the_days_kept_free_for_those_planned_with(followed, section):
    after, (problem, plan) = followed
    free = after.judged(after.facts.problem, after.facts.plan).free()
    assert section.fresh == Judged(after=after, problem=problem, plan=plan).check(free)


def test_more_days_kept_free_never_make_the_plan_worse(after):
    judged = after.judged(after.facts.problem, after.facts.plan)
    free = judged.free()
    more = {key: trips + 1 for key, trips in free.items()}
    assert judged.check({}).trips_in_100 <= judged.check(free).trips_in_100 <= judged.check(more).trips_in_100


def test_a_day_to_keep_free_is_told_with_how_often_it_is_needed(after):
    judged = after.judged(after.facts.problem, after.facts.plan)
    rows = judged.free_rows({("alder", 30): 1})
    (row,) = rows
    assert (row.yard_name, row.week, row.trips) == ("Alder", 30, 1)
    assert 0 <= row.in_100 <= 100
