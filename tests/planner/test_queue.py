"""The Run row as a queue: leases, heartbeats, giving up, and no run worked by two."""

import datetime as dt
import threading

import pytest
from django.db import connection, connections

from planner import queue
from planner.errors import RunStopped, RunTakenOver
from planner.models import Run, Season

NOON = dt.datetime(2027, 1, 15, 12, tzinfo=dt.UTC)
AFTER_LEASE = NOON + dt.timedelta(seconds=queue.LEASE_SECONDS + 1)


def season():
    return Season.objects.get_or_create(name="Winter order 2027", starts_on=dt.date(2027, 1, 15))[0]


def waiting(**fields):
    return Run.objects.create(season=season(), day=dt.date(2027, 1, 15), asked_at=NOON, **fields)


def test_nothing_is_taken_from_an_empty_queue(db):
    assert queue.take("a", NOON) is None


def test_the_oldest_waiting_run_is_taken_first_and_leased(db):
    first, _second = waiting(), waiting()
    run = queue.take("a", NOON)
    assert (run.pk, run.status, run.worker, run.attempts) == (first.pk, Run.Status.WORKING, "a", 1)
    assert run.leased_until == NOON + dt.timedelta(seconds=queue.LEASE_SECONDS)


def test_a_run_under_lease_is_not_taken_again(db):
    waiting()
    assert queue.take("a", NOON)
    assert queue.take("b", NOON + dt.timedelta(seconds=5)) is None


def test_a_run_whose_lease_ran_out_is_taken_up_by_another_worker(db):
    waiting()
    first = queue.take("a", NOON)
    second = queue.take("b", AFTER_LEASE)
    assert (second.pk, second.worker, second.attempts) == (first.pk, "b", 2)


def test_a_run_taken_up_again_says_where_it_broke_off_however_it_came_back(db):
    waiting()
    queue.Beat(queue.take("a", NOON))("choosing packs", 6100.5, 0.02)
    Run.objects.update(leased_until=NOON)
    second = queue.take("b", AFTER_LEASE)
    assert second.message.startswith("The planner broke off while choosing packs.")
    assert (second.stage, second.bound, second.gap_reached) == ("reading the books", None, None)
    queue.Beat(second)("trying the order on fresh seasons", 6100.5, 0.001)
    queue.give_back(second)
    run = Run.objects.get()
    assert run.message.startswith("The planner broke off while trying the order on fresh seasons.")
    assert (run.status, run.bound, run.gap_reached) == (Run.Status.WAITING, None, None)
    assert queue.take("c", AFTER_LEASE).message == run.message


def test_a_run_taken_for_the_first_time_tells_of_nothing_broken(db):
    waiting()
    assert queue.take("a", NOON).message == ""


def test_a_run_that_was_to_stop_is_stopped_though_its_worker_went_before_it_heard(db):
    waiting()
    queue.take("a", NOON)
    Run.objects.update(cancel=True)
    assert queue.take("b", NOON + dt.timedelta(seconds=5)) is None
    assert queue.take("b", AFTER_LEASE) is None
    run = Run.objects.get()
    assert (run.status, run.message) == (Run.Status.CANCELLED, queue.STOPPED)


def test_how_long_a_worker_is_silent_and_when_it_is_given_up(db):
    waiting()
    assert queue.silent_seconds(Run.objects.get(), NOON) == 0
    run = queue.take("a", NOON)
    assert queue.silent_seconds(run, NOON + dt.timedelta(seconds=40)) == 40
    assert not queue.is_abandoned(run, NOON + dt.timedelta(seconds=40))
    assert queue.is_abandoned(run, AFTER_LEASE)


def test_a_worker_that_lost_its_lease_is_told_so_at_its_next_word(db):
    waiting()
    beat = queue.Beat(queue.take("a", NOON))
    queue.take("b", AFTER_LEASE)
    with pytest.raises(RunTakenOver):
        beat("drawing the seasons")


def test_progress_is_written_and_renews_the_lease(db):
    waiting()
    later = NOON + dt.timedelta(seconds=100)
    beat = queue.Beat(queue.take("a", NOON), clock=lambda: later)
    beat("looking for the best order", 6100.5, 0.02)
    run = Run.objects.get()
    assert (run.stage, run.bound, run.gap_reached) == ("looking for the best order", 6100.5, 0.02)
    assert run.leased_until == later + dt.timedelta(seconds=queue.LEASE_SECONDS)


def test_the_same_stage_is_not_written_again_within_a_second(db, django_assert_num_queries):
    waiting()
    beat = queue.Beat(queue.take("a", NOON), every_seconds=3600)
    beat("looking for the best order", 6100.5, 0.02)
    with django_assert_num_queries(0):
        beat("looking for the best order", 6000.0, 0.01)


def test_a_stop_asked_for_ends_the_work_at_the_next_beat(db):
    waiting()
    beat = queue.Beat(queue.take("a", NOON), every_seconds=0)
    assert beat.cancelled() is False
    Run.objects.update(cancel=True)
    assert beat.cancelled() is True
    with pytest.raises(RunStopped):
        beat("writing down the reasons")


def test_a_run_that_breaks_off_three_times_fails_with_a_message(db):
    waiting()
    for attempt in range(queue.LAST_ATTEMPT):
        run = queue.take("a", NOON + dt.timedelta(hours=attempt))
        queue.Beat(run)("working out season 3 of 10")
        Run.objects.update(leased_until=NOON + dt.timedelta(hours=attempt))
    assert queue.take("a", NOON + dt.timedelta(hours=9)) is None
    run = Run.objects.get()
    assert run.status == Run.Status.FAILED
    assert "broke off 3 times, the last time while working out season 3 of 10" in run.message
    assert "untouched" in run.message


def test_a_run_given_back_waits_again_and_the_attempt_counts_only_where_it_broke_off(db):
    waiting()
    queue.give_back(queue.take("a", NOON), counted=False)
    run = Run.objects.get()
    assert run.attempts == 0
    assert (
        run.message
        == "The planner was stopped while reading the books. The run is taken up again, from the start."
    )
    queue.give_back(queue.take("a", NOON))
    run = Run.objects.get()
    assert (run.status, run.attempts, run.worker, run.leased_until) == (Run.Status.WAITING, 1, "", None)


def test_a_run_taken_over_is_not_given_back_by_the_worker_before(db):
    waiting()
    lost = queue.take("a", NOON)
    queue.take("b", AFTER_LEASE)
    queue.give_back(lost)
    assert Run.objects.get().worker == "b"


@pytest.mark.parametrize("status", [Run.Status.DONE, Run.Status.FAILED, Run.Status.CANCELLED])
def test_a_run_that_is_over_is_never_taken(db, status):
    waiting(status=status)
    assert queue.take("a", NOON) is None


@pytest.mark.django_db(transaction=True)
def test_many_workers_at_once_never_take_the_same_run():
    if connection.vendor == "sqlite" and connection.is_in_memory_db():
        two_in_step()
        return
    for _ in range(6):
        waiting()
    taken, start = [], threading.Barrier(4)

    def worker(name):
        start.wait()
        while run := queue.take(name, NOON):
            taken.append(run.pk)
        connections.close_all()

    threads = [threading.Thread(target=worker, args=(f"w{number}",)) for number in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert sorted(taken) == sorted(Run.objects.values_list("pk", flat=True))


def two_in_step():
    """SQLite in memory has one connection: the second worker takes the run after the first has looked at it."""
    waiting()
    both_looked = list(Run.objects.filter(status=Run.Status.WAITING))
    winner = queue.take("a", NOON)
    assert [run.pk for run in both_looked] == [winner.pk]
    assert queue.lease(both_looked[0], "b", NOON) is None
    assert Run.objects.get().worker == "a"
