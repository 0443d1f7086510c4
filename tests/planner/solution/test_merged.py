"""Merged uses in a scenario's warm programme: parted step by step until nothing is hidden, then as if never merged."""

import random

import numpy as np
import pytest

from planner.sizing.reading import problem_of
from planner.solution.plain import model_of
from planner.solution.warm import ScenarioRecourse
from tests.planner.many_yards import many_yards
from tests.planner.small_problems import small

SUITED = [seed for seed in range(24) if "budget" not in many_yards(random.Random(seed))]


def year(*uses):
    rows = [
        {
            "code": code,
            "location": "shed",
            "first": 1,
            "last": 1,
            "units": units,
            "value": value,
            "keeps": {"box": 1},
        }
        for code, units, value in uses
    ]
    return problem_of(small(scenarios=[{"code": "year", "probability": 1, "uses": rows}]))


def test_a_group_is_served_by_one_column_worth_the_mean():
    recourse = ScenarioRecourse(year(("a", 1, 10), ("b", 3, 30)), 0, merge=True)
    assert recourse.own({("boxes", 0): 2}) == pytest.approx(50)
    assert recourse.loose() == pytest.approx(3 * 5)  # at a price of 25 the better ones leave 5 each
    assert recourse.acts({("boxes", 0): 2}).served == {"b": 2, "a": 0}


def test_parted_uses_earn_what_they_are_worth():
    recourse = ScenarioRecourse(year(("a", 1, 10), ("b", 3, 30)), 0, merge=True)
    recourse.own({("boxes", 0): 2})
    assert recourse.part(1.0)
    assert recourse.own({("boxes", 0): 2}) == pytest.approx(60)
    assert recourse.loose() == 0
    assert not recourse.part(0.0)
    assert recourse.own({("boxes", 0): 4}) == pytest.approx(100)
    assert recourse.acts({("boxes", 0): 4}).served == {"b": 3, "a": 1}


def test_nothing_is_hidden_where_nothing_is_merged():
    recourse = ScenarioRecourse(year(("a", 1, 10), ("b", 3, 30)), 0)
    recourse.own({("boxes", 0): 2})
    assert recourse.loose() == 0
    assert not recourse.part(0.0)


@pytest.mark.parametrize("seed", SUITED)
def test_merged_earns_no_more_and_with_what_it_hides_no_less(seed):
    problem = problem_of(many_yards(random.Random(seed)))
    rnd = random.Random(seed)
    plain, merged = ScenarioRecourse(problem, 0), ScenarioRecourse(problem, 0, merge=True)
    if any(use.must for use in problem.scenarios[0].uses):
        return
    for _ in range(8):
        packs = {key: rnd.randint(0, 9) for key in plain.keys}
        exact = plain.own(packs)
        for left in (20.0, 1.0, 0.0):
            own = merged.own(packs)
            hidden = merged.loose()
            assert own - 1e-6 <= exact <= own + hidden + 1e-6
            merged.part(left)
        while merged.part(1e-9):
            merged.own(packs)
        assert merged.own(packs) == pytest.approx(exact, abs=1e-6)


@pytest.mark.parametrize("seed", SUITED)
def test_the_block_in_python_stays_the_programme_in_the_solver(seed):
    problem = problem_of(many_yards(random.Random(seed)))
    recourse = ScenarioRecourse(problem, 0, merge=True)
    if recourse.merged is None or any(use.must for use in problem.scenarios[0].uses):
        return
    recourse.own(dict.fromkeys(recourse.keys, 3))
    recourse.part(0.0)
    told, held = model_of(recourse.block, recourse.block.constant), recourse.solver.getLp()
    orders = set(recourse.columns.tolist())
    others = [at for at in range(told.num_col_) if at not in orders]
    assert np.allclose(np.array(told.col_cost_), np.array(held.col_cost_))
    assert np.allclose(np.array(told.col_upper_)[others], np.array(held.col_upper_)[others])
    assert np.allclose(np.array(told.row_upper_), np.array(held.row_upper_))
    assert entries(told) == entries(held)


def entries(model):
    matrix, found = model.a_matrix_, {}
    rowwise = "kRowwise" in str(matrix.format_)
    for at in range(model.num_row_ if rowwise else model.num_col_):
        for place in range(matrix.start_[at], matrix.start_[at + 1]):
            key = (at, matrix.index_[place]) if rowwise else (matrix.index_[place], at)
            if abs(matrix.value_[place]) > 1e-12:
                found[key] = pytest.approx(matrix.value_[place])
    return found
