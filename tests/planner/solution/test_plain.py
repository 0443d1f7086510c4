"""Plain columns and rows handed to HiGHS."""

import highspy

from planner.programme.here_and_now import order_part
from planner.solution.plain import model_of
from tests.planner.small_problems import small_problem


def solved(part, **settings):
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    solver.passModel(model_of(part, **settings))
    solver.run()
    return solver


def test_rows_bounds_money_and_constant_arrive():
    part = order_part(small_problem(budget=35, offer={"prices": [{"from_packs": 1, "price": -0.0}]}))
    packs = next(iter(part.packs[("boxes", 0)]))
    part.money[packs] = 3.0
    part.rows.append(("most", {packs: 2.0}, -1, 7.0))
    assert solved(part, constant=1.0).getInfo().objective_function_value == 1.0 + 3.0 * 3.5
    assert solved(part, constant=1.0, whole=True).getInfo().objective_function_value == 1.0 + 3.0 * 3.0
    part.rows.append(("exactly", {packs: 1.0}, 0, 2.0))
    assert solved(part).getSolution().col_value[packs.number] == 2.0
