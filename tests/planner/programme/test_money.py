"""Fees, free delivery and budgets as they are meant."""

import pytest

from planner.solution import solve
from tests.planner.small_problems import small_problem, years


def test_a_fee_is_paid_once_for_all_offers_of_a_supplier_in_a_period():
    two = [
        {"code": code, "supplier": "mill", "parts": {part: 1}, "prices": [{"from_packs": 1, "price": 1}]}
        for code, part in (("boxes", "box"), ("lids", "lid"))
    ]
    problem = small_problem(
        parts=[{"code": "box"}, {"code": "lid"}],
        offers=two,
        supplier={"order_fee": 9},
        use={"keeps": {"box": 1, "lid": 1}},
    )
    plan = solve(problem, gap=0)
    assert [(row.supplier, row.period, row.fee) for row in plan.fees] == [("mill", 0, 9)]
    assert plan.spend == 17


def test_a_fee_too_dear_leaves_the_use_short():
    plan = solve(small_problem(supplier={"order_fee": 61}), gap=0)
    assert (plan.objective, plan.here_and_now, plan.fees) == (0, (), ())


def test_fees_differ_by_period():
    plan = solve(small_problem(supplier={"order_fee": [7, 3, 9]}, offer={"order_periods": [0, 1]}), gap=0)
    assert [(row.period, row.fee) for row in plan.fees] == [(1, 3)]


@pytest.mark.parametrize(("free_from", "fee", "packs"), [(41, 9, 4), (45, 11, 5), (40, 9, 4)])
def test_the_fee_is_waived_from_a_spend_on_and_a_pack_may_be_bought_for_it(free_from, fee, packs):
    plan = solve(small_problem(supplier={"order_fee": fee, "free_from": free_from}), gap=0)
    waived = packs * 10 >= free_from
    assert plan.here_and_now[0].packs == packs
    assert plan.spend == packs * 10 + (0 if waived else fee)


def test_here_and_now_and_later_orders_pay_apart():
    offers = [
        {
            "code": code,
            "supplier": "mill",
            "parts": {"box": 1},
            "prices": [{"from_packs": 1, "price": 10}],
            "when": when,
            "max_packs": 2,
        }
        for code, when in (("boxes", "now"), ("more", "later"))
    ]
    plan = solve(small_problem(offers=offers, supplier={"order_fee": 6}), gap=0)
    assert (plan.fees[0].fee, plan.scenarios[0].fees[0].fee, plan.spend) == (6, 6, 26)


def test_the_budget_holds_packs_and_fees_together():
    plan = solve(small_problem(supplier={"order_fee": 7}, budget=35), gap=0)
    assert (plan.here_and_now[0].packs, plan.spend) == (2, 27)


def test_a_budget_of_nothing_buys_nothing():
    plan = solve(small_problem(budget=0), gap=0)
    assert (plan.status, plan.spend, plan.objective) == ("optimal", 0, 0)
    assert [row.units for row in plan.scenarios[0].short] == [4]


def test_the_later_budget_holds_in_every_year():
    problem = small_problem(scenarios=years((0.5, 2), (0.5, 8)), offer={"when": "later"}, later_budget=35)
    plan = solve(problem, gap=0)
    assert [row.later[0].packs for row in plan.scenarios] == [pytest.approx(2), pytest.approx(3.5)]
