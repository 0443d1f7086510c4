"""Money afresh from what is done."""

import pytest

from planner.solution.acts import ScenarioActs
from planner.solution.valuing import Valuer, costs_of, objective_of, ordered
from tests.planner.small_problems import small_problem, years

STEPS = [{"from_packs": 1, "price": 10}, {"from_packs": 5, "price": 8}]


def offer(**changes):
    return small_problem(offer=changes).offers[0]


def test_packs_cost_their_step():
    assert costs_of(offer(prices=STEPS), 0) == (0,)
    assert costs_of(offer(prices=STEPS), 4) == (40,)
    assert costs_of(offer(prices=STEPS), 5) == (40,)
    assert costs_of(offer(prices=STEPS, price_rule="incremental"), 6) == (56,)
    assert costs_of(offer(prices=STEPS, whole=False), 5) == (40, 50)  # the step before reaches up to 5


def test_a_step_s_edge_is_valued_as_it_pays_with_the_fee():
    rising = [{"from_packs": 1, "price": 5.5}, {"from_packs": 2, "price": 6.6}]
    problem = small_problem(
        offer={"prices": rising, "whole": False}, supplier={"order_fee": 4, "free_from": 12}
    )
    assert ordered(problem, {("boxes", 0): 2}).spend == pytest.approx(13.2)
    plain = small_problem(offer={"prices": rising, "whole": False}, supplier={"order_fee": 4})
    assert ordered(plain, {("boxes", 0): 2}).spend == pytest.approx(15)


def test_holding_end_value_work_and_recipes_are_counted_by_hand():
    problem = small_problem(
        parts=[
            {"code": "box", "end_value": 3, "holding_cost": [1, 2, 4]},
            {"code": "boards", "holding_cost": 0.5},
        ],
        offer={"parts": {"boards": 1}, "work_minutes": 6},
        recipes=[
            {"code": "nail", "takes": {"boards": 1}, "makes": {"box": 1}, "work_minutes": 12, "cost": 0.25}
        ],
        work={"cost_per_hour": 10},
        use={"keeps": {"box": 1}, "first": 1, "last": 1},
    )
    acts = ScenarioActs(served={"super": 2}, made={("nail", 1): 2})
    found = Valuer(problem).value(0, {("boxes", 0): 3}, acts)
    # boards idle 3, 1, 1 at 0.5; boxes idle 0, 0, 2 at 4; end value 2 × 3; work 18 + 24 minutes; cost 2 × 0.25
    assert found.own == pytest.approx(2 * 25 - 2.5 - 8 + 6 - 42 / 60 * 10 - 0.5)
    assert found.work == (18, 24, 0)
    assert found.lowest == 0


def test_more_taken_than_there_is_shows():
    found = Valuer(small_problem()).value(0, {("boxes", 0): 1}, ScenarioActs(served={"super": 3}))
    assert found.lowest == -2


def test_bad_years_are_the_mean_of_the_worst_share():
    problem = small_problem(
        bad_years={"weight": 0.5, "share": 0.3}, scenarios=years((0.2, 1), (0.2, 1), (0.6, 1))
    )
    expected = 0.2 * -10 + 0.2 * 5 + 0.6 * 20
    worst = (0.2 * -10 + 0.1 * 5) / 0.3
    assert objective_of(problem, [-10, 5, 20]) == pytest.approx(0.5 * expected + 0.5 * worst)
    assert objective_of(small_problem(), [7]) == 7
