"""The order's own part of the programme: the whole programme's rows and columns of the order, and no others."""

import random

from planner.programme import build
from planner.programme.here_and_now import order_part
from planner.sizing.reading import problem_of
from tests.planner.random_problems import random_problem
from tests.planner.small_problems import small_problem


def test_it_has_the_rows_and_columns_of_the_order():
    for seed in range(30):
        problem = problem_of(random_problem(random.Random(seed)))
        part, whole = order_part(problem), build(problem).lp
        rows = {row.name: (row.sense, -row.constant) for row in whole.constraints()}
        assert {name: (sense, bound) for name, _, sense, bound in part.rows} == {
            name: rows[name] for name, _, _, _ in part.rows
        }
        ours = {name for name in rows if "_s0" not in name and "_s1" not in name and "_s2" not in name}
        assert ours <= {name for name, _, _, _ in part.rows}


def test_its_money_is_what_the_order_costs():
    part = order_part(small_problem(supplier={"order_fee": 7, "free_from": 90}, part={"end_value": 4}))
    assert sorted(part.money.values()) == [-10, -7, 7]
    assert part.most == {("boxes", 0): 9}


def test_an_unlimited_problem_has_no_budget_row():
    assert order_part(small_problem()).programme.budget_row is None
    assert order_part(small_problem(budget=5)).programme.budget_row == "budget"
