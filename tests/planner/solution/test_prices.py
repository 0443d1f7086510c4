"""Shadow prices: against what one unit more of each limit does earn."""

from dataclasses import replace

import numpy as np
import pytest

from planner.programme import build
from planner.sizing.records import Stock
from planner.solution import highs, solve
from planner.solution.prices import shadow_prices
from tests.planner.small_problems import small_problem, years

LOOSE = {"offer": {"whole": False}, "scenarios": years((0.5, 2), (0.5, 8))}


def gain(change, base):
    return solve(small_problem(**change), gap=0).objective - solve(small_problem(**base), gap=0).objective


def test_the_budget_s_price_is_what_one_more_unit_of_money_earns():
    base = LOOSE | {"budget": 30}
    prices = solve(small_problem(**base), gap=0).shadow_prices
    assert prices.budget == pytest.approx(gain(base | {"budget": 31}, base))
    assert prices.budget > 0


def test_a_part_s_price_is_what_one_more_in_stock_earns():
    held = [{"part": "box", "location": "shed", "quantity": 1}]
    for changes in (
        {},
        {"budget": 30},
        {"part": {"end_value": 4, "holding_cost": 0.5}},
        {"bad_years": {"weight": 0.5, "share": 0.5}},
    ):
        base = LOOSE | changes
        prices = solve(small_problem(**base), gap=0).shadow_prices
        assert prices.parts["box"] == pytest.approx(gain(base | {"stock": held}, base)), changes


def test_later_budget_and_work_are_priced_by_year():
    base = LOOSE | {
        "offer": {"when": "later", "work_minutes": 10},
        "later_budget": 40,
        "work": {"minutes_per_period": [30, 0, 0]},
    }
    prices = solve(small_problem(**base), gap=0).shadow_prices
    work = gain(base | {"work": {"minutes_per_period": [31, 0, 0]}}, base)
    assert prices.work["year-0"] == (0, 0, 0)
    assert prices.work["year-1"] == (pytest.approx(work), 0, 0)
    assert prices.later_budget == {"year-0": 0, "year-1": 0}
    tight = base | {"later_budget": 25}
    prices = solve(small_problem(**tight), gap=0).shadow_prices
    assert prices.later_budget["year-1"] == pytest.approx(0.5 * (25 - 10) / 10)


def test_limits_that_are_not_there_have_no_price():
    prices = solve(small_problem(), gap=0).shadow_prices
    assert (prices.budget, prices.later_budget, prices.work) == (None, {}, {})


def test_with_whole_packs_held_stock_is_worth_what_it_serves():
    short = small_problem(budget=25)
    assert solve(short, gap=0).shadow_prices.parts["box"] == pytest.approx(25)


def test_prices_that_do_not_add_up_are_withheld_with_the_reason():
    programme = build(small_problem(**LOOSE))
    matrix = highs.matrix_of(programme.lp)
    answer = highs.solve(matrix)
    assert shadow_prices(programme, matrix, answer, None)[1] is None
    false = highs.Answer(
        status=answer.status,
        values=answer.values,
        objective=answer.objective + 1,
        row_prices=answer.row_prices,
        column_prices=answer.column_prices,
    )
    prices, why = shadow_prices(programme, matrix, false, None)
    assert prices is None
    assert why.startswith("prices times limits come to")


def test_a_price_on_a_limit_that_is_not_there_is_not_shown():
    programme = build(small_problem(**LOOSE))
    matrix = highs.matrix_of(programme.lp)
    answer = highs.solve(matrix)
    turned = highs.Answer(
        status=answer.status,
        values=answer.values,
        objective=answer.objective,
        row_prices=-answer.row_prices,
        column_prices=answer.column_prices,
    )
    assert shadow_prices(programme, matrix, turned, None) == (
        None,
        "a price belongs to a limit that does not exist",
    )


def test_without_a_second_solve_there_are_no_prices():
    programme = build(small_problem())
    matrix = highs.matrix_of(programme.lp)
    prices, why = shadow_prices(programme, matrix, None, np.zeros(2))
    assert prices is None
    assert "could not be solved again" in why


def price_and_gain(problem, part):
    """The price of a part, and what a little of it in stock adds when the order is held."""
    plan = solve(problem, gap=0)
    stock = (*problem.stock, Stock(part=part, location="shed", quantity=1e-3))
    more = solve(replace(problem, stock=stock), packs=plan.packs(), gap=0, prices=False)
    return plan.shadow_prices.parts[part], (more.objective - plan.objective) / 1e-3


def test_a_part_that_comes_late_is_priced_as_if_it_were_there_from_the_start():
    """Boards land in period 2; one there sooner could be nailed in a period with minutes to spare."""
    problem = small_problem(
        parts=[{"code": "box"}, {"code": "boards"}],
        offer={"parts": {"boards": 1}, "lead_periods": 1, "order_periods": [1]},
        use={"first": 2, "last": 2, "units": 8},
        recipes=[{"code": "nail", "takes": {"boards": 1}, "makes": {"box": 1}, "work_minutes": 20}],
        work={"minutes_per_period": [40, 0, 60]},
    )
    price, gain = price_and_gain(problem, "boards")
    assert price == pytest.approx(25)
    assert gain == pytest.approx(25, abs=1e-3)


def test_a_part_that_is_nowhere_is_priced_where_it_would_be_hauled_from():
    problem = small_problem(
        parts=[{"code": "box"}, {"code": "comb"}],
        locations=["shed", "hill"],
        hauls=[{"from": "shed", "to": "hill", "cost_per_unit": 2}],
        stock=[{"part": "box", "location": "hill", "quantity": 4}],
        use={"location": "hill", "keeps": {"box": 1, "comb": 1}},
    )
    price, gain = price_and_gain(problem, "comb")
    assert price == pytest.approx(23)
    assert gain == pytest.approx(23, abs=1e-3)
