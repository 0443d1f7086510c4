"""HiGHS: the hand-over and what comes back."""

import pulp
import pytest

from planner.programme import build
from planner.solution import highs
from tests.planner.small_problems import small_problem


def test_the_arrays_say_what_the_problem_says():
    programme = build(small_problem(budget=35))
    matrix = highs.matrix_of(programme.lp)
    names = [column.name for column in matrix.columns]
    assert sorted(names) == ["packs_now_boxes_0", "use_s0_super"]
    assert matrix.rows == ["budget", "balance_s0_all_box_1"]
    assert list(matrix.whole) == [name.startswith("packs") for name in names]
    assert matrix.row_upper[0] == 35
    assert matrix.row_lower[1] == 0
    assert list(matrix.starts) == [0, 1, 3]


def test_whole_columns_may_be_held_or_let_go():
    matrix = highs.matrix_of(build(small_problem(budget=35)).lp)
    assert highs.solve(matrix).objective == pytest.approx(45)
    assert highs.solve(matrix, relaxed=True).objective == pytest.approx(52.5)
    fixed = [2.0 if whole else 0.0 for whole in matrix.whole]
    assert highs.solve(matrix, fixed=fixed).objective == pytest.approx(30)


def test_prices_come_only_without_whole_columns():
    matrix = highs.matrix_of(build(small_problem(budget=35)).lp)
    assert highs.solve(matrix).row_prices is None
    assert highs.solve(matrix, relaxed=True).row_prices[0] == pytest.approx(1.5)


def test_infeasible_and_unbounded_are_told_apart_from_solved():
    lp = pulp.LpProblem("small", pulp.LpMaximize)
    x = lp.add_variable("x", 0)
    lp.setObjective(pulp.LpAffineExpression({x: 1}))
    lp.addConstraint(pulp.LpConstraint(pulp.LpAffineExpression({x: 1}), pulp.LpConstraintGE, "row", 1))
    assert highs.solve(highs.matrix_of(lp)).status == highs.UNBOUNDED
    lp.addConstraint(pulp.LpConstraint(pulp.LpAffineExpression({x: 1}), pulp.LpConstraintLE, "other", 0))
    assert highs.solve(highs.matrix_of(lp)).status == highs.INFEASIBLE


def test_a_programme_without_columns_is_solved():
    answer = highs.solve(highs.matrix_of(build(small_problem(offers=[], use={"must": True, "keeps": {}})).lp))
    assert (answer.status, answer.objective) == (highs.SOLVED, 100)
