"""Blocks: one scenario's programme is the whole programme's, word for word, but for the order."""

import random

from planner.programme import build
from planner.programme.blocks import block, linear_recourse
from planner.sizing.reading import problem_of
from tests.planner.random_problems import random_problem
from tests.planner.small_problems import small_problem


def rows_of(problem, number):
    return {
        (row.name, row.sense, -row.constant)
        for row in build(problem).lp.constraints()
        if f"_s{number}_" in f"{row.name}_"
    }


def test_a_block_has_the_rows_of_its_scenario():
    checked = 0
    for seed in range(40):
        problem = problem_of(random_problem(random.Random(seed)))
        if linear_recourse(problem) and len(problem.scenarios) == 1:
            found = block(problem, 0)
            assert {(name, sense, bound) for name, _, sense, bound in found.rows} == rows_of(problem, 0)
            checked += 1
    assert checked > 3


def test_here_and_now_orders_are_open_and_unpaid():
    problem = small_problem(supplier={"order_fee": 5}, offer={"order_periods": [0, 1]}, budget=10)
    found = block(problem, 0)
    assert list(found.orders) == [("boxes", 0), ("boxes", 1)]
    assert all(column.upBound is None and not column.whole for column in found.orders.values())
    assert all(found.money.get(column, 0) == 0 for column in found.orders.values())


def test_recourse_in_whole_numbers_is_told():
    assert linear_recourse(small_problem())
    assert not linear_recourse(small_problem(whole_uses=True))
    assert not linear_recourse(small_problem(offer={"when": "later", "whole": True}))
    assert not linear_recourse(small_problem(offer={"when": "later"}, supplier={"order_fee": 1}))
    assert not linear_recourse(small_problem(offer={"when": "later"}, supplier={"order_fee": [0, 1, 0]}))
    free = small_problem(offer={"when": "later"}, supplier={"order_fee": 1, "free_from": 0})
    assert linear_recourse(free)
    haul = {"from": "shed", "to": "hill", "trip_cost": 2, "trip_lb": 5}
    assert not linear_recourse(small_problem(locations=["shed", "hill"], hauls=[haul]))
