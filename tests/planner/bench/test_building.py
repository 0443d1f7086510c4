"""Building either way: the same rows, and the same best plan whichever way it was handed over."""

import highspy
import pytest

from planner.bench.building import Copy, building, hand_over
from planner.bench.instances import Size
from planner.bench.tasks import Instance
from planner.programme import build
from planner.solution import highs
from tests.planner.small_problems import small_problem, years


@pytest.fixture
def lp():
    problem = small_problem(supplier={"order_fee": 3}, budget=60, scenarios=years((0.5, 2), (0.5, 8)))
    return build(problem).lp


def test_either_way_of_writing_the_rows_says_the_same_programme(lp):
    wanted = highs.solve(highs.matrix_of(lp), gap=1e-9).objective
    for write in (Copy.rows_of_dicts, Copy.rows_of_sums):
        copy = Copy(lp)
        write(copy)
        assert len(copy.lp.constraints()) == len(lp.constraints())
        assert highs.solve(highs.matrix_of(copy.lp), gap=1e-9).objective == pytest.approx(wanted)


def test_what_is_handed_over_is_the_whole_programme(lp):
    matrix = highs.matrix_of(lp)
    solver = hand_over(matrix)
    assert (solver.getNumCol(), solver.getNumRow()) == (len(matrix.columns), len(matrix.rows))
    solver.run()
    assert solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
    wanted = highs.solve(matrix, gap=1e-9).objective
    assert solver.getInfo().objective_function_value == pytest.approx(wanted)


def test_both_ways_are_timed_on_as_many_rows(catalogue, market):
    instance = Instance(catalogue=catalogue, market=market, size=Size(yards=1, colonies=6), scenarios=1)
    found = building(instance=instance)
    assert found["rows"] > 50
    assert min(found[key] for key in ("product", "plain", "product_rows", "plain_rows")) > 0
