"""Orders of the naive form: steps, fees, limits, each by what it costs."""

import pulp
import pytest

from planner.bench.naive_orders import Orders
from planner.solution import highs
from tests.planner.small_problems import small_problem


def cheapest(packs, **changes):
    """The least money for exactly so many packs; None where they cannot be had."""
    lp = pulp.LpProblem("orders", pulp.LpMaximize)
    orders = Orders(lp, small_problem(**changes), "now", None)
    lp += orders.packs["boxes", 0] == packs
    lp.setObjective(-1 * pulp.lpSum(orders.spend()))
    found = highs.solve(highs.matrix_of(lp), gap=1e-9).objective
    return None if found is None else -found


STEPS = [{"from_packs": 1, "price": 10}, {"from_packs": 3, "price": 8}]


@pytest.mark.parametrize(("packs", "money"), [(0, 0), (1, 10), (2, 20), (3, 24), (4, 32)])
def test_all_units_of_an_order_cost_the_price_of_its_step(packs, money):
    assert cheapest(packs, offer={"prices": STEPS}) == pytest.approx(money)


@pytest.mark.parametrize(("packs", "money"), [(0, 0), (2, 20), (3, 28), (4, 36)])
def test_each_pack_costs_the_price_of_its_own_step(packs, money):
    assert cheapest(packs, offer={"prices": STEPS, "price_rule": "incremental"}) == pytest.approx(money)


@pytest.mark.parametrize(("packs", "money"), [(0, 0), (1, 17), (3, 37), (4, 40)])
def test_a_fee_is_paid_once_and_waived_from_its_spend_on(packs, money):
    assert cheapest(packs, supplier={"order_fee": 7, "free_from": 40}) == pytest.approx(money)


def test_no_order_goes_over_its_limit():
    assert cheapest(2, offer={"max_packs": 2}) == pytest.approx(20)
    assert cheapest(3, offer={"max_packs": 2}) is None


def test_half_a_pack_is_sold_only_where_packs_need_not_be_whole():
    assert cheapest(1.5) is None
    assert cheapest(1.5, offer={"whole": False}) == pytest.approx(15)
