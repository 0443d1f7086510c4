"""What the programme remembers of its columns."""

from planner.programme import build
from tests.planner.small_problems import small_problem, years


def test_an_order_knows_when_it_lands():
    order = build(small_problem(offer={"lead_periods": 1})).orders[0]
    assert (order.period, order.landing, order.scenario) == (0, 1, None)


def test_stock_of_a_part_is_felt_in_every_row_it_enters():
    programme = build(small_problem(scenarios=years((0.5, 2), (0.5, 8))))
    assert programme.stock_effects == {"box": {"balance_s0_all_box_1": -1.0, "balance_s1_all_box_1": -1.0}}
    assert programme.stock_worth == {"box": 0.0}
