"""Orders under other budgets by a solve each."""

import pytest

from planner.solution.clock import Clock
from planner.solution.nearby.direct import Direct
from tests.planner.small_problems import small_problem


def engine(**changes):
    return Direct(problem=small_problem(**changes), gap=0.0, clock=Clock(30), tell=lambda *told: None)


def test_the_best_order_keeps_to_its_budget():
    best = engine().best(25)
    assert (best.packs, best.objective) == ({("boxes", 0): 2}, pytest.approx(30))
    assert best.bound >= best.objective


def test_in_fractions_half_a_pack_counts():
    assert engine().in_fractions([25, 0, 100]) == pytest.approx([37.5, 0, 60])


def test_the_least_money_serves_every_must_use_fee_and_all():
    assert engine(use={"must": True}, supplier={"order_fee": 7}).least() == pytest.approx(47)
    assert engine().least() == 0
    assert engine(use={"must": True}, offer={"max_packs": 1}).least() is None


def test_a_budget_too_small_for_a_must_use_has_no_order():
    found = engine(use={"must": True}).best(25)
    assert (found.packs, found.bound) == (None, None)


def test_the_most_is_the_spend_of_the_best_order_without_a_budget():
    assert engine(budget=5).most() == pytest.approx(40)
