"""A curve's budgets in two halves."""

import os

import pytest

from planner.sizing.reading import problem_of
from planner.solution import solve
from planner.solution.clock import Clock
from planner.solution.nearby import halves
from planner.solution.nearby.companion import Companion
from planner.solution.nearby.halves import TWO_FROM, Halves, pays
from planner.solution.warm import WarmScenarios
from tests.planner.small_problems import small, years

BUDGETS = [20, 60, 120, 200]


def problem_of_years(count, **changes):
    chances = [(1 / count, 1 + number % 12) for number in range(count)]
    return problem_of(small(scenarios=years(*chances), supplier={"order_fee": 7}, **changes))


def engine(problem, **changes):
    settings = {"gap": 0.001, "clock": Clock(60), "tell": lambda *told: None}
    return Halves(problem, WarmScenarios(problem), **{**settings, **changes})


def plain(found):
    best, fractions = found
    return {money: (one.packs, one.objective) for money, one in best.items()}, fractions


def test_a_second_process_and_this_one_alone_tell_the_same():
    problem = problem_of_years(TWO_FROM)
    with Companion(problem) as companion:
        there = engine(problem, companion=companion).points(BUDGETS, ())
    here = engine(problem).points(BUDGETS, ())
    assert list(there[0]) == BUDGETS
    assert plain(there)[0] == plain(here)[0]
    assert there[1] == pytest.approx(here[1])


def test_each_budget_of_both_halves_is_as_good_as_solved_alone():
    problem = problem_of_years(TWO_FROM)
    with Companion(problem) as companion:
        found, _ = engine(problem, companion=companion).points(BUDGETS, ())
    for money in BUDGETS:
        alone = solve(problem_of_years(TWO_FROM, budget=money), way="direct", gap=0)
        assert found[money].bound >= alone.objective - 1e-6
        assert found[money].objective >= alone.objective - 0.001 * abs(alone.objective) - 1e-6


def test_where_the_second_process_broke_its_half_is_done_here():
    problem = problem_of_years(TWO_FROM)
    with Companion(problem) as companion:
        companion.process.kill()
        companion.process.wait()
        found, fractions = engine(problem, companion=companion).points(BUDGETS, ())
    assert list(found) == list(fractions) == BUDGETS


def test_out_of_time_no_budget_is_told():
    problem = problem_of_years(TWO_FROM)
    with Companion(problem) as companion:
        assert engine(problem, companion=companion, clock=Clock(0)).points(BUDGETS, ()) == ({}, {})


def test_a_second_process_pays_with_many_scenarios_and_two_cores(monkeypatch):
    monkeypatch.setattr(os, "sched_getaffinity", lambda process: {0, 1}, raising=False)
    assert pays(problem_of_years(TWO_FROM))
    assert not pays(problem_of_years(TWO_FROM - 1))
    monkeypatch.setattr(os, "sched_getaffinity", lambda process: {0}, raising=False)
    assert not pays(problem_of_years(TWO_FROM))


def test_where_processes_cannot_be_asked_for_their_cores_the_machine_is(monkeypatch):
    monkeypatch.delattr(os, "sched_getaffinity", raising=False)
    monkeypatch.setattr(halves.os, "cpu_count", lambda: 1)
    assert not pays(problem_of_years(TWO_FROM))
