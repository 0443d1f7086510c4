"""One pack more and one fewer, in money."""

import pytest

from planner.sizing.reading import problem_of
from planner.solution.nearby.moves import moves
from tests.planner.small_problems import small, small_problem


def told(problem, packs, judge):
    return list(moves(problem, packs, lambda orders: [judge(order) for order in orders]))


def test_price_steps_and_fees_are_counted_as_they_fall():
    steps = [{"from_packs": 1, "price": 10}, {"from_packs": 5, "price": 7}]
    problem = small_problem(offer={"prices": steps}, supplier={"order_fee": 7, "free_from": 40})
    more, fewer = told(problem, {("boxes", 0): 4}, lambda packs: 0.0)
    assert more.cost_change == pytest.approx(35 + 7 - 40)  # all five cheaper, free delivery lost
    assert fewer.cost_change == pytest.approx(30 + 7 - 40)


def test_the_last_pack_takes_the_fee_with_it():
    problem = small_problem(supplier={"order_fee": 7})
    _, fewer = told(problem, {("boxes", 0): 1}, lambda packs: 0.0)
    assert fewer.cost_change == -17


def test_most_packs_and_no_pack_left_to_take_off_are_limits():
    problem = small_problem(offer={"max_packs": 4, "whole": False})
    more, _ = told(problem, {("boxes", 0): 4}, lambda packs: 0.0)
    _, fewer = told(problem, {("boxes", 0): 0.4}, lambda packs: 0.0)
    assert (more.limit, fewer.limit) == ("most", "least")
    assert (more.worth_change, fewer.cost_change) == (0, 0)


def test_a_move_past_the_budget_says_by_how_much():
    more, fewer = told(small_problem(budget=45), {("boxes", 0): 4}, lambda packs: 0.0)
    assert (more.over_budget, fewer.over_budget) == (5, 0)


def test_a_move_that_leaves_a_must_use_unserved_says_so():
    _, fewer = told(small_problem(), {("boxes", 0): 4}, lambda packs: None if packs["boxes", 0] < 4 else 1.0)
    assert (fewer.served, fewer.worth_change) == (False, 0)


def test_lines_come_in_the_problems_order_and_nothing_bought_has_none():
    two = small()
    two["offers"].append({**two["offers"][0], "code": "others"})
    problem = problem_of(two)
    packs = {("others", 0): 1, ("boxes", 0): 0}
    assert [moved.offer for moved in told(problem, packs, lambda packs: 0.0)] == ["others", "others"]
    assert told(problem, {}, lambda packs: 0.0) == []


def test_what_a_judge_had_no_time_for_is_left_out():
    found = moves(small_problem(), {("boxes", 0): 4}, lambda orders: [10.0, 7.0])
    assert [(moved.step, moved.worth_change) for moved in found] == [(1, -3.0)]
