"""Solving in a child: the same plan, and nothing left running."""

import os
import signal
import subprocess
import sys
import time

import pytest

from planner.sizing.reading import problem_of
from planner.solution import Cancelled, apart, solve, solve_apart
from planner.solution.processes import ROOT
from tests.planner.small_problems import small, small_problem, years

SLEEPER = [sys.executable, "-c", "import subprocess; subprocess.run(['sleep', '60'])"]


def same(plan, other):
    return all(
        getattr(plan, name) == getattr(other, name)
        for name in ("status", "objective", "bound", "here_and_now", "scenarios", "shadow_prices")
    )


@pytest.mark.parametrize("solver", ["highs", "cbc"])
def test_a_child_gives_the_plan_this_process_gives(solver):
    problem = small_problem(supplier={"order_fee": 7}, budget=40)
    assert same(solve_apart(problem, solver=solver, gap=0), solve(problem, solver=solver, gap=0))
    given = {("boxes", 0): 1}
    assert same(solve_apart(problem, solver=solver, packs=given), solve(problem, solver=solver, packs=given))


def test_progress_comes_through():
    told = []
    solve_apart(small_problem(), progress=lambda stage, bound, gap: told.append(stage))
    assert told[0] == "building"
    assert "solving" in told


def session_of(monkeypatch, command):
    """Starts `command` in place of the child; gives the list its process comes to stand in."""
    started = []

    def start(module, *, stderr, start_new_session):
        started.append(
            subprocess.Popen(
                command,
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                stderr=stderr,
                start_new_session=start_new_session,
            )
        )
        return started[-1]

    monkeypatch.setattr(apart, "started", start)
    return started


def is_session_gone(leader):
    for _ in range(100):
        try:
            os.killpg(leader, 0)
        except ProcessLookupError:
            return True
        time.sleep(0.05)
    return False


def test_cancel_kills_the_child_and_all_it_started(monkeypatch):
    started = session_of(monkeypatch, SLEEPER)
    asked = []

    def cancelled():
        asked.append(1)
        return len(asked) > 3

    with pytest.raises(Cancelled):
        solve_apart(small_problem(), cancelled=cancelled)
    assert is_session_gone(started[0].pid)


def test_overtime_ends_in_a_plan_that_says_so(monkeypatch):
    started = session_of(monkeypatch, SLEEPER)
    monkeypatch.setattr(apart, "GRACE_SECONDS", 0.3)
    plan = solve_apart(small_problem(), seconds=0.2)
    assert (plan.status, plan.objective) == ("time_limit", None)
    assert "was stopped" in plan.reason
    assert is_session_gone(started[0].pid)


def test_a_child_that_breaks_is_an_error_with_its_last_words(monkeypatch):
    session_of(monkeypatch, [sys.executable, "-c", "raise SystemExit('out of honey')"])
    with pytest.raises(RuntimeError, match="without an answer: out of honey"):
        solve_apart(small_problem())


def test_a_child_killed_in_mid_solve_is_told_in_words(monkeypatch):
    session_of(monkeypatch, [sys.executable, "-c", "import os; os.kill(os.getpid(), 9)"])
    with pytest.raises(RuntimeError, match=r"killed from outside \(signal 9\); start it again"):
        solve_apart(small_problem())


def test_a_child_that_ends_in_silence_tells_its_exit_status(monkeypatch):
    session_of(monkeypatch, [sys.executable, "-c", "raise SystemExit(3)"])
    with pytest.raises(RuntimeError, match="exit status 3"):
        solve_apart(small_problem())


def test_many_scenarios_tell_bound_and_gap_from_the_child():
    told = []
    problem = problem_of(small(scenarios=years(*[(1 / 25, units + 1) for units in range(25)])))
    plan = solve_apart(problem, progress=lambda *step: told.append(step))
    assert plan.objective == pytest.approx(solve(problem, way="direct", gap=0).objective, rel=0.001)
    assert solve_apart(problem, way="direct", gap=0).status == "optimal"
    assert told[0] == ("building", None, None)
    assert any(stage == "weighing the seasons" and bound >= plan.objective for stage, bound, _ in told)
    bounds = [bound for _, bound, _ in told if bound is not None]
    assert bounds == sorted(bounds, reverse=True)


def test_a_child_ends_when_its_parent_is_gone(tmp_path):
    """A parent starts the real child, which waits on a slow solve; the parent is killed; the child must go."""
    note = tmp_path / "child"
    parent = subprocess.Popen([sys.executable, "-c", PARENT, str(note)], cwd=ROOT, stdout=subprocess.DEVNULL)
    try:
        for _ in range(200):
            if note.exists() and note.read_text():
                break
            time.sleep(0.05)
        child = int(note.read_text())
    finally:
        parent.send_signal(signal.SIGKILL)
        parent.wait()
    assert is_session_gone(child)


PARENT = """
import os, pickle, subprocess, sys, time
slow = '''
import threading, time
import planner.solution.child as child
child.TASKS["solve"] = (lambda *args, **settings: time.sleep(60)), None
child.main()
'''
process = subprocess.Popen([sys.executable, "-c", slow], stdin=subprocess.PIPE, start_new_session=True)
pickle.dump((os.getpid(), "solve", (), {}), process.stdin)
process.stdin.close()
time.sleep(1.5)
assert process.poll() is None
open(sys.argv[1], "w").write(str(process.pid))
time.sleep(60)
"""
