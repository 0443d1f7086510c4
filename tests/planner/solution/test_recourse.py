"""Recourse: orders judged scenario by scenario, against the same order solved as a whole programme."""

import random

import pytest

from planner.programme.blocks import linear_recourse
from planner.sizing.reading import problem_of
from planner.solution import solve
from planner.solution.recourse import NoRecourse, Recourse, worths
from planner.solution.valuing import objective_of
from tests.planner.random_problems import random_problem
from tests.planner.small_problems import small, small_problem, years

RANDOM = [problem_of(random_problem(random.Random(seed))) for seed in range(700, 790)]


def mean(problem, worths):
    return sum(row.probability * worth for row, worth in zip(problem.scenarios, worths, strict=True))


def test_worths_of_a_best_order_come_to_its_objective():
    checked = 0
    for problem in RANDOM:
        plan = solve(problem, gap=0)
        if plan.is_order:
            checked += 1
            found = worths(problem, plan.packs())
            assert objective_of(problem, found) == pytest.approx(plan.objective, rel=1e-6, abs=1e-6)
    assert checked > 40


def test_one_recourse_judges_order_after_order():
    problem = problem_of(small(scenarios=years((0.5, 2), (0.5, 8))))
    recourse = Recourse(problem)
    assert recourse.linear
    for packs in (8, 0, 2, 5, 8):
        order = {("boxes", 0): packs}
        assert recourse.worths(order) == [25 * min(units, packs) - 10 * packs for units in (2, 8)]


def test_fees_of_the_order_are_taken_off():
    problem = small_problem(supplier={"order_fee": 7, "free_from": 30})
    assert worths(problem, {("boxes", 0): 2}) == [2 * 25 - 20 - 7]
    assert worths(problem, {("boxes", 0): 3}) == [3 * 25 - 30]


def test_slopes_are_what_one_pack_more_earns_in_each_scenario():
    problem = problem_of(small(scenarios=years((0.5, 2), (0.5, 8))))
    found, slopes = Recourse(problem).worths_and_slopes({("boxes", 0): 4})
    assert found == [50 - 40, 100 - 40]
    assert slopes == [{("boxes", 0): 0.0}, {("boxes", 0): 25.0}]


def test_slopes_never_promise_too_little():
    """A scenario's own money is concave in the order, so its slope at one order bounds every other."""
    rnd, checked = random.Random(3), 0
    for problem in RANDOM:
        if not linear_recourse(problem):
            continue
        recourse = Recourse(problem)
        keys = recourse.scenarios[0].keys
        there, other = ({key: rnd.randint(0, 4) for key in keys} for _ in range(2))
        for scenario in recourse.scenarios:
            try:
                own, slopes = scenario.own_and_slopes(there)
                reached = scenario.own(other)
            except NoRecourse:
                continue
            promised = own + sum(slopes[key] * (other[key] - there[key]) for key in keys)
            assert reached <= promised + 1e-6 * max(1.0, abs(promised))
            checked += 1
    assert checked > 10


def test_an_order_that_serves_no_must_use_is_refused():
    problem = small_problem(use={"must": True})
    with pytest.raises(NoRecourse, match='scenario "year" cannot be served'):
        worths(problem, {("boxes", 0): 3})
    whole = small_problem(use={"must": True}, whole_uses=True)
    with pytest.raises(NoRecourse, match='scenario "year" cannot be served'):
        worths(whole, {("boxes", 0): 3})


def test_an_order_that_cannot_be_placed_is_refused():
    with pytest.raises(ValueError, match='"boxes" can be placed in period 2'):
        worths(small_problem(), {("boxes", 2): 3})


def test_recourse_in_whole_numbers_is_judged_as_a_whole():
    problem = small_problem(whole_uses=True, offer={"parts": {"box": 2}})
    assert worths(problem, {("boxes", 0): 1}) == [2 * 25 - 10]
    with pytest.raises(ValueError, match="whole numbers"):
        Recourse(problem).worths_and_slopes({})
