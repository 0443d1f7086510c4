"""CBC: its verdict is believed, its printed figures only where they can be true."""

import pytest

from planner.programme import build
from planner.solution import cbc, highs
from tests.planner.small_problems import small_problem


def solved(problem, **settings):
    lp = build(problem).lp
    return cbc.solve(lp, highs.matrix_of(lp), **settings)


def test_it_solves_whole_and_relaxed():
    assert solved(small_problem(budget=35)).objective == pytest.approx(45)
    assert solved(small_problem(budget=35), relaxed=True).objective == pytest.approx(52.5)


def test_a_constant_in_the_objective_is_part_of_value_and_bound():
    answer = solved(small_problem(use={"must": True}))
    assert (answer.objective, answer.bound) == (pytest.approx(60), pytest.approx(60))


def test_infeasible_is_told():
    assert solved(small_problem(use={"must": True}, budget=5)).status == highs.INFEASIBLE
    assert solved(small_problem(use={"must": True}, offers=[])).status == highs.INFEASIBLE


def test_a_bound_below_the_objective_is_not_believed():
    text = "Result - Optimal solution found\nUpper bound:   50.0\n"
    assert cbc._bound(text, 60.0, 0.0, solved=True, gap=0.0, pure=False) == 60
    assert cbc._bound(text, 60.0, 0.0, solved=False, gap=0.0, pure=False) is None
    assert cbc._bound(text, 40.0, 0.0, solved=False, gap=0.0, pure=False) == 50
    assert cbc._bound(text, 40.0, 5.0, solved=False, gap=0.0, pure=False) == 55


def test_a_solve_that_ends_without_a_solution_gives_no_values(monkeypatch):
    monkeypatch.setattr(cbc, "_run", lambda lp, solver: None)
    answer = solved(small_problem())
    assert (answer.status, answer.values) == (highs.STOPPED, None)
