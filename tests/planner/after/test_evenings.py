"""Evenings by earliest due date: published examples, every order tried, breaking off, and the latest start."""

import itertools

from hypothesis import given, settings
from hypothesis import strategies as st

from planner.after.evenings import (
    Job,
    finished,
    latest_starts,
    schedule,
    slots_of,
)


def jobs_of(times, dues, releases=None):
    """Jobs of one piece each, a minute a day, due on days told from 1; a day is a week with one evening of 1 minute."""
    releases = releases or [0] * len(times)
    rows = zip(times, dues, releases, strict=True)
    return [
        Job(code=str(n), units=1, minutes=t, release=r, due=d - 1, order=n)
        for n, (t, d, r) in enumerate(rows)
    ]


def days(count):
    return slots_of(count, 1, 1 / 60)


def greatest_lateness(jobs, done):
    """Weeks by which the latest job is finished after it was due; None where one is never finished."""
    ends = {number: rows[-1][0] for number, rows in finished(jobs, done).items()}
    made = {number: sum(n for _week, n in rows) for number, rows in finished(jobs, done).items()}
    if any(made.get(number, 0) < job.units for number, job in enumerate(jobs)):
        return None
    return max((ends[number] - job.due for number, job in enumerate(jobs)), default=0)


def test_the_greatest_lateness_of_six_requests_is_one_day():
    """Kleinberg and Tardos, Algorithm Design, 2005, section 4.2, scheduling to minimise lateness: times 3 2 1 4 3 2,
    deadlines 6 8 9 9 14 15 as taught with it, greatest lateness 1 (figures from memory)."""
    jobs = jobs_of([3, 2, 1, 4, 3, 2], [6, 8, 9, 9, 14, 15])
    assert greatest_lateness(jobs, schedule(jobs, days(20))) == 1


def test_five_drafting_jobs_are_done_on_the_days_printed():
    """Heizer and Render, Operations Management, sequencing by earliest due date (figures from memory): times 6 2 8 3 9,
    due 8 6 18 15 23: order B A D C E, flow times 2 8 11 19 28 (68 in all), lateness 6 days in all, 5 at most."""
    jobs = jobs_of([6, 2, 8, 3, 9], [8, 6, 18, 15, 23])
    ends = {job: rows[-1][0] + 1 for job, rows in finished(jobs, schedule(jobs, days(40))).items()}
    assert [ends[n] for n in (1, 0, 3, 2, 4)] == [2, 8, 11, 19, 28]
    assert sum(ends.values()) == 68
    assert sum(max(0, ends[n] - job.due - 1) for n, job in enumerate(jobs)) == 6
    assert greatest_lateness(jobs, schedule(jobs, days(40))) == 5


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.tuples(st.integers(1, 4), st.integers(1, 14)), min_size=1, max_size=5),
)
def test_no_order_of_the_jobs_has_a_lesser_greatest_lateness(rows):
    """Jackson 1955: earliest due date is best where all is there; every order of small cases is tried."""
    jobs = jobs_of([t for t, _d in rows], [d for _t, d in rows])
    best = min(
        max(sum(jobs[n].minutes for n in order[: k + 1]) - 1 - jobs[order[k]].due for k in range(len(order)))
        for order in itertools.permutations(range(len(jobs)))
    )
    assert greatest_lateness(jobs, schedule(jobs, days(40))) == best


def best_with_releases(jobs, horizon):
    """The least greatest lateness of any day-by-day plan: tried up by counting what must be done between two days."""
    for late in range(-horizon, horizon):
        fits = all(
            sum(job.work for job in jobs if job.release >= a and job.due + late <= b) <= b - a + 1
            for a in range(horizon)
            for b in range(a, horizon)
        )
        if fits and all(job.release + job.work - 1 <= job.due + late for job in jobs):
            return late
    raise AssertionError("no plan")


@settings(max_examples=40, deadline=None)
@given(st.lists(st.tuples(st.integers(1, 3), st.integers(1, 10), st.integers(0, 5)), min_size=1, max_size=5))
def test_with_gear_that_comes_later_breaking_off_is_best_too(rows):
    """Horn 1974: preemptive earliest due date with release dates, against the demand bound over all intervals."""
    jobs = jobs_of([t for t, _d, _r in rows], [d for _t, d, _r in rows], [r for _t, _d, r in rows])
    assert greatest_lateness(jobs, schedule(jobs, days(40))) == best_with_releases(jobs, 25)


def test_nothing_is_assembled_before_its_gear_is_there():
    jobs = [Job(code="box", units=4, minutes=10, release=3, due=9, order=0)]
    assert {act.slot.week for act in schedule(jobs, slots_of(8, 2, 1))} == {3}


def test_no_evening_is_longer_than_it_is():
    jobs = [Job(code="box", units=40, minutes=14, release=0, due=2, order=0)]
    spent: dict = {}
    for act in schedule(jobs, slots_of(10, 2, 1.5)):
        spent[act.slot] = spent.get(act.slot, 0) + act.minutes
    assert max(spent.values()) <= 90


def test_half_an_evening_a_week_is_a_shorter_one():
    assert [slot.minutes for slot in slots_of(1, 1.5, 2)] == [120, 60]


def test_whole_pieces_are_told_in_the_week_they_are_finished():
    jobs = [Job(code="box", units=5, minutes=40, release=0, due=2, order=0)]
    done = schedule(jobs, slots_of(4, 1, 1))
    assert finished(jobs, done)[0] == [(0, 1), (1, 2), (2, 1), (3, 1)]


def test_what_no_evening_is_left_for_is_never_finished():
    jobs = [Job(code="box", units=9, minutes=60, release=0, due=2, order=0)]
    done = schedule(jobs, slots_of(4, 1, 1))
    assert greatest_lateness(jobs, done) is None
    assert sum(n for _week, n in finished(jobs, done)[0]) == 4


def test_the_latest_start_leaves_just_enough_evenings():
    jobs = [
        Job(code="box", units=4, minutes=60, release=0, due=9, order=0),
        Job(code="frame", units=2, minutes=60, release=0, due=7, order=1),
    ]
    starts = latest_starts(jobs, slots_of(12, 1, 1))
    assert starts == {0: 4, 1: 6} or starts == {0: 6, 1: 4}
    held = [Job(**{**vars(job), "release": min(starts.values())}) for job in jobs]
    assert greatest_lateness(held, schedule(held, slots_of(12, 1, 1))) <= 0


def test_gear_that_comes_late_and_is_wanted_soon_has_the_last_evenings_before_it_is_due():
    jobs = jobs_of([2, 2], [10, 9], [0, 7])
    assert latest_starts(jobs, days(12)) == {0: 6, 1: 7}


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.integers(1, 3), st.integers(1, 12), st.integers(0, 6)), min_size=1, max_size=5))
def test_a_latest_start_is_told_of_every_job_just_where_all_can_be_in_time(rows):
    """Against the demand bound over all intervals; begun no sooner than told, earliest due date still has all in time."""
    jobs = jobs_of([t for t, _d, _r in rows], [d for _t, d, _r in rows], [r for _t, _d, r in rows])
    starts = latest_starts(jobs, days(40))
    in_time = best_with_releases(jobs, 25) <= 0
    assert (None not in starts.values()) == in_time
    if in_time:
        held = [Job(**{**vars(job), "release": starts[n]}) for n, job in enumerate(jobs)]
        assert greatest_lateness(held, schedule(held, days(40))) <= 0


def test_a_job_that_cannot_be_in_time_has_no_latest_start():
    jobs = [Job(code="box", units=4, minutes=60, release=3, due=4, order=0)]
    assert latest_starts(jobs, slots_of(12, 1, 1)) == {0: None}
