"""The study in a child: the same answers, and nothing left running."""

import sys
from dataclasses import replace

import pytest

from planner.solution import Cancelled, apart, solve
from planner.solution.nearby import study, study_apart
from tests.planner.small_problems import small_problem
from tests.planner.solution.test_apart import SLEEPER, is_session_gone, session_of


def test_a_child_tells_what_this_process_tells():
    problem = small_problem(supplier={"order_fee": 7}, budget=27)
    plan = solve(problem, gap=0)
    here, there = study(problem, plan, more=10, less=10), study_apart(problem, plan, more=10, less=10)
    assert replace(here, seconds=0) == replace(there, seconds=0)


def test_cancel_kills_the_child_and_all_it_started(monkeypatch):
    problem = small_problem()
    plan = solve(problem)
    started, asked = session_of(monkeypatch, SLEEPER), []

    def cancelled():
        asked.append(1)
        return len(asked) > 3

    with pytest.raises(Cancelled):
        study_apart(problem, plan, cancelled=cancelled)
    assert is_session_gone(started[0].pid)


def test_overtime_ends_in_a_study_that_says_so(monkeypatch):
    problem = small_problem()
    plan = solve(problem)
    started = session_of(monkeypatch, SLEEPER)
    monkeypatch.setattr(apart, "GRACE_SECONDS", 0.3)
    found = study_apart(problem, plan, seconds=0.2)
    assert (found.moves, found.points) == ((), ())
    assert "not worked out in time" in found.not_told
    assert is_session_gone(started[0].pid)


def test_a_child_that_breaks_is_an_error(monkeypatch):
    problem = small_problem()
    plan = solve(problem)
    session_of(monkeypatch, [sys.executable, "-c", "raise SystemExit('out of honey')"])
    with pytest.raises(RuntimeError, match="out of honey"):
        study_apart(problem, plan)


def test_progress_comes_through():
    problem = small_problem()
    told = []
    study_apart(problem, solve(problem), progress=lambda stage, bound, gap: told.append(stage))
    assert told[0] == "one pack more or fewer"
    assert "other budgets" in told
