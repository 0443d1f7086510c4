"""Orders: price steps and limits as they are meant."""

import pytest

from planner.solution import solve
from tests.planner.small_problems import small_problem

STEPS = [{"from_packs": 1, "price": 10}, {"from_packs": 5, "price": 8}, {"from_packs": 8, "price": 5}]


def cost(units, **offer):
    """What it costs to serve a must-use of so many units."""
    plan = solve(small_problem(use={"units": units, "must": True, "value": 0}, offer=offer), gap=0)
    return -plan.objective, [(line.offer, line.packs) for line in plan.here_and_now]


@pytest.mark.parametrize(
    ("units", "paid", "packs"), [(3, 30, 3), (4, 40, 4), (7, 40, 8), (6, 40, 8), (9, 45, 9)]
)
def test_all_packs_cost_the_price_of_the_step_reached_and_more_may_cost_less(units, paid, packs):
    assert cost(units, prices=STEPS) == (pytest.approx(paid), [("boxes", packs)])


@pytest.mark.parametrize(("units", "paid"), [(3, 30), (4, 40), (5, 48), (7, 64), (10, 79)])
def test_each_pack_costs_the_price_of_its_own_step(units, paid):
    assert cost(units, prices=STEPS, price_rule="incremental") == (pytest.approx(paid), [("boxes", units)])


def test_rising_prices_are_not_dodged():
    rising = [{"from_packs": 1, "price": 5}, {"from_packs": 3, "price": 9}]
    assert cost(4, prices=rising)[0] == pytest.approx(36)
    assert cost(4, prices=rising, price_rule="incremental")[0] == pytest.approx(28)


def test_a_step_reaches_up_to_the_next_one_where_packs_are_fractions():
    assert cost(4.75, prices=STEPS[:2], whole=False)[0] == pytest.approx(40)  # 5 packs at 8
    dearer = [{"from_packs": 1, "price": 5}, {"from_packs": 5, "price": 9}]
    assert cost(4.75, prices=dearer, whole=False)[0] == pytest.approx(23.75)


def test_max_packs_bounds_each_order_not_their_sum():
    plan = solve(small_problem(offer={"max_packs": 2, "order_periods": [0, 1]}), gap=0)
    assert [(line.period, line.packs) for line in plan.here_and_now] == [(0, 2), (1, 2)]


def test_max_packs_of_a_later_offer_bounds_each_year():
    changes = {"max_packs": 1, "when": "later"}
    plan = solve(small_problem(offer=changes), gap=0)
    assert [line.packs for line in plan.scenarios[0].later] == [1]
