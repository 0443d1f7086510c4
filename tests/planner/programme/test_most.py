"""The most packs an order can use."""

import pytest

from planner.programme.most import Most
from tests.planner.small_problems import small_problem


def most(**changes):
    problem = small_problem(**changes)
    return Most(problem).packs(problem.offers[0], problem.offers[0].order_periods[0])


def test_no_more_than_uses_ask_for():
    assert most() == 4
    assert most(offer={"parts": {"box": 3}}) == 2  # whole packs


def test_stock_is_netted_off():
    assert most(stock=[{"part": "box", "location": "shed", "quantity": 3}]) == 1


def test_uses_begun_before_the_packs_land_ask_for_nothing():
    assert most(offer={"order_periods": [2]}) == 1  # the first price step's start


def test_a_price_step_or_free_delivery_may_ask_for_more():
    steps = [{"from_packs": 1, "price": 10}, {"from_packs": 20, "price": 8}]
    assert most(offer={"prices": steps}) == 20
    assert most(supplier={"free_from": 300, "order_fee": 5}) == 30


def test_the_budget_and_max_packs_allow_no_more():
    assert most(budget=25) == 3
    assert most(offer={"max_packs": 2}) == 2


def test_packs_worth_their_price_at_the_end_are_bound_by_money_alone():
    assert most(budget=1000, part={"end_value": 12}) == 100
    assert most(offer={"max_packs": 50}, part={"end_value": 12}) == 50


def test_recipes_ask_for_what_they_take():
    changes = {
        "parts": [{"code": "box"}, {"code": "boards"}],
        "offer": {"parts": {"boards": 1}},
        "recipes": [{"code": "nail", "takes": {"boards": 6}, "makes": {"box": 1}}],
    }
    assert most(**changes) == 24
    assert most(**changes, stock=[{"part": "box", "location": "shed", "quantity": 3}]) == 6


def test_recipes_that_pay_by_themselves_are_bound_by_their_scarcest_part():
    changes = {
        "parts": [{"code": "box", "end_value": 30}, {"code": "boards"}, {"code": "nails"}],
        "offer": {"parts": {"boards": 1}},
        "recipes": [{"code": "nail", "takes": {"boards": 1, "nails": 1}, "makes": {"box": 1}}],
        "stock": [{"part": "nails", "location": "shed", "quantity": 70}],
    }
    assert most(**changes) == 74  # 4 for the use, 70 for the end


@pytest.mark.parametrize("limit", ["budget", "later_budget"])
def test_limits_that_may_give_bind_nothing(limit):
    problem = small_problem(
        **{limit: 0}, offer={"max_packs": 1, "when": "now" if limit == "budget" else "later"}
    )
    assert Most(problem, limits_give=True).packs(problem.offers[0], 0) == 4
