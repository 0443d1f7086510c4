"""The workbench told: in time or not, what is late, what more evenings would do."""

from types import SimpleNamespace

from planner.after.bench import Workbench
from planner.after.evenings import Job
from tests.planner.after.made import DAY, week

NAMES = {"box": "assemble a box"}


def bench(*jobs, evenings=1.0, hours=1.0, weeks=20):
    answers = SimpleNamespace(weeks=weeks, evenings_a_week=evenings, evening_hours=hours)
    return Workbench([Job(code="box", order=n, **job) for n, job in enumerate(jobs)], answers)


def job(units, release, due, minutes=60):
    return {"units": units, "release": release, "due": due, "minutes": minutes}


def test_all_in_time_says_so_and_when_to_begin_at_the_latest():
    told = bench(job(4, 2, 9)).told(NAMES, DAY)
    assert told.begin_by == week(6)
    assert (
        told.said
        == "4 hours at the bench, all done in time. Begin in the week of 26 February 2027 at the latest."
    )
    row = told.jobs[0]
    assert (row.pieces, row.gear_there_on, row.wanted_on, row.done_on) == (4, week(2), week(10), week(5))
    assert [(e.week, e.evening, e.pieces) for e in told.evenings] == [
        (2, 1, 1),
        (3, 1, 1),
        (4, 1, 1),
        (5, 1, 1),
    ]


def test_what_cannot_be_done_in_time_is_told_with_what_would_do():
    work = bench(job(4, 2, 3))
    told = work.told(NAMES, DAY)
    assert (work.late(0), told.begin_by, told.jobs[0].late_pieces) == (2, None, 2)
    assert "not all of it can be done in time. 2 pieces are late" in told.said
    assert "2 evenings a week would do." in told.said


def test_where_the_gear_itself_comes_too_late_more_evenings_do_not_help():
    assert "More evenings alone do not help" in bench(job(4, 6, 3)).told(NAMES, DAY).said


def test_pieces_can_be_loaded_the_week_after_they_are_finished():
    assert bench(job(2, 2, 9)).ready(0) == [(3, 1), (4, 1)]


def test_without_evenings_nothing_is_finished():
    work = bench(job(2, 2, 9), evenings=0.0)
    assert work.ready(0) == [] and work.told(NAMES, DAY).jobs[0].done_on is None


def test_nothing_to_assemble_is_said():
    assert bench().told(NAMES, DAY).said == "Nothing is to be assembled."
