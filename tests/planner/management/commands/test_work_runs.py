"""`work_runs`: works what waits, leaves when told to, and gives back what it had in hand."""

import os
import signal
import subprocess
import sys
import time

import pytest
from django.core.management import call_command

from planner import runs
from planner.management.commands.work_runs import Command, Leaving
from planner.models import Run
from tests.planner import made, outfit

ONE_RUN = """
import django; django.setup()
from django.utils import timezone
from planner import runs
from tests.planner import outfit
outfit.make_outfit()
season = outfit.make_season()
print(runs.ask(season, who=None, now=timezone.now(), scenarios={scenarios}, seconds=300, trial=20).pk)
"""
STATE = """
import django; django.setup()
from planner.models import Run
run = Run.objects.get()
print(run.status, run.attempts, run.stage, sep="|")
"""


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


def script(text, env):
    answer = subprocess.run([sys.executable, "-c", text], env=env, capture_output=True, text=True, check=True)
    return answer.stdout.strip()


def solvers():
    """Process ids of all solver children on this machine and their data folder."""
    found = set()
    for name in os.listdir("/proc"):
        if name.isdigit():
            try:
                with open(f"/proc/{name}/cmdline") as file:
                    words = file.read().split("\0")
                with open(f"/proc/{name}/environ") as file:
                    found.update({(name, file.read())} if "planner.solution.child" in words else ())
            except OSError:
                continue
    return found


def waits_until(condition, seconds=60):
    deadline = time.monotonic() + seconds
    while time.monotonic() < deadline:
        if found := condition():
            return found
        time.sleep(0.2)
    raise AssertionError("waited in vain")


def test_a_real_worker_told_to_leave_stops_its_solver_and_gives_the_run_back(tmp_path):
    env = {**os.environ, "DATA_DIR": str(tmp_path), "DJANGO_SETTINGS_MODULE": "apiary.settings"}
    env.pop("DATABASE_URL", None)
    subprocess.run([sys.executable, "manage.py", "migrate", "-v0"], env=env, check=True)
    script(ONE_RUN.format(scenarios=60), env)

    def ours():
        return {pid for pid, environ in solvers() if f"DATA_DIR={tmp_path}" in environ}

    worker = subprocess.Popen([sys.executable, "manage.py", "work_runs"], env=env, stdout=subprocess.PIPE)
    try:
        waits_until(ours)
        worker.send_signal(signal.SIGTERM)
        out, _ = worker.communicate(timeout=20)
    finally:
        worker.kill()
    assert b"told to by SIGTERM" in out
    assert not ours()
    assert script(STATE, env) == "waiting|0|waiting again"
