"""Which orders a scenario can be told for without solving again."""

import pytest

from planner.solution.nearby.solved import Solved
from planner.solution.warm import WarmScenarios
from tests.planner.small_problems import small_problem


def solved(packs, **changes):
    scenario = WarmScenarios(small_problem(**changes)).scenarios[0]
    order = {("boxes", 0): packs}
    scenario.own(order)
    return Solved(scenario, order), scenario


def test_a_box_too_many_adds_its_end_value_and_no_more():
    stands, scenario = solved(6, part={"end_value": 2})
    for packs in (5, 7):
        told = stands.own({("boxes", 0): packs})
        assert told == pytest.approx(scenario.own({("boxes", 0): packs}))


def test_where_boxes_are_short_or_just_enough_it_has_to_be_solved():
    assert solved(3)[0].own({("boxes", 0): 4}) is None
    assert solved(4)[0].own({("boxes", 0): 3}) is None


def test_an_order_nobody_knows_is_left_to_the_solver_to_refuse():
    assert solved(6)[0].own({("others", 0): 1}) is None
