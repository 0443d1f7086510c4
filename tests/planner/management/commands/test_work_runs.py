"""`work_runs`: works what waits, leaves when told to, and gives back what it had in hand."""

import os
import signal
import time

import pytest
from django.core.management import call_command

from planner import runs
from planner.management.commands.work_runs import Command, Leaving
from planner.models import Run
from tests.planner import made, outfit
from tests.processes import PATIENCE, waits_until


def test_what_waits_is_worked_and_then_it_ends(db, capsys):
    outfit.make_outfit()
    run = runs.ask(outfit.make_season(), who=None, now=made.timezone.now(), scenarios=3, trial=20)
    call_command("work_runs", "--once")
    run.refresh_from_db()
    assert run.status == Run.Status.DONE
    assert f"Run {run.pk} is done" in capsys.readouterr().out


def test_a_run_that_breaks_off_is_tried_three_times_and_then_fails(db, monkeypatch, capsys):
    run = made.make_run()

    def broken(*args, **kwargs):
        raise ZeroDivisionError("a bug")

    monkeypatch.setattr(runs, "plan_order", broken)
    call_command("work_runs", "--once")
    run.refresh_from_db()
    assert (run.status, run.attempts) == (Run.Status.FAILED, 3)
    assert "broke off 3 times" in run.message
    assert capsys.readouterr().err.count("ZeroDivisionError: a bug") == 3


def test_told_to_leave_in_the_midst_of_a_run_it_gives_the_run_back_uncounted(db, monkeypatch, capsys):
    run = made.make_run()

    def told(*args, **kwargs):
        os.kill(os.getpid(), signal.SIGTERM)
        time.sleep(5)

    monkeypatch.setattr(runs, "plan_order", told)
    before = signal.getsignal(signal.SIGTERM)
    call_command("work_runs", "--once")
    run.refresh_from_db()
    assert (run.status, run.attempts, run.worker) == (Run.Status.WAITING, 0, "")
    assert "Leaving: told to by SIGTERM" in capsys.readouterr().out
    assert signal.getsignal(signal.SIGTERM) == before


def test_it_leaves_when_the_program_that_started_it_is_gone(monkeypatch):
    command = Command()
    command.parent = os.getppid()
    command._leave_if_orphaned()
    command.parent = -1
    with pytest.raises(Leaving, match="is gone"):
        command._leave_if_orphaned()


def test_a_real_worker_told_to_leave_stops_its_solver_and_gives_the_run_back(books):
    (run,) = books.ask(scenarios=60, seconds=300, trial=20)
    worker = books.worker()
    waits_until(books.solvers)
    worker.send_signal(signal.SIGTERM)
    told, _ = worker.communicate(timeout=PATIENCE)
    assert "told to by SIGTERM" in told
    assert not books.solvers()
    row = books.run(run)
    assert (row["status"], row["attempts"]) == ("waiting", 0)
    assert row["message"].startswith("The planner was stopped while")
