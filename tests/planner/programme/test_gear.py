"""Balance rows: summed or carried, they say the same."""

import random

import pytest

from planner.programme import build, gear
from planner.sizing.reading import problem_of
from planner.solution import highs
from tests.planner.random_problems import random_problem
from tests.planner.small_problems import small_problem


def best(problem):
    answer = highs.solve(highs.matrix_of(build(problem).lp), gap=0)
    return answer.status, answer.objective


@pytest.mark.parametrize("seed", range(25))
def test_carried_rows_and_summed_rows_give_the_same_best(seed, monkeypatch):
    problem = problem_of(random_problem(random.Random(seed)))
    monkeypatch.setattr(gear._PartRows, "write", lambda rows: rows._write_summed(list(rows._stretches())))
    summed = best(problem)
    monkeypatch.setattr(gear._PartRows, "write", lambda rows: rows._write_carried(list(rows._stretches())))
    carried = best(problem)
    assert summed[0] == carried[0]
    if summed[1] is not None:
        assert summed[1] == pytest.approx(carried[1], rel=1e-6, abs=1e-6)


def test_places_are_one_without_hauls_and_apart_with_them():
    places = {"locations": ["shed", "hill"]}
    pooled = gear.Gear(_Drafted(small_problem(**places)), 0)
    apart = gear.Gear(_Drafted(small_problem(**places, hauls=[{"from": "shed", "to": "hill"}])), 0)
    assert (pooled.place("hill"), apart.place("hill"), apart.place(None)) == (None, "hill", "shed")


class _Drafted:
    def __init__(self, problem):
        self.problem = problem
