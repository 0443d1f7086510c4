"""The plan's records."""

from planner.solution import solve
from tests.planner.small_problems import small_problem


def test_a_plan_s_packs_fix_the_same_order_again():
    plan = solve(small_problem(), gap=0)
    assert plan.packs() == {("boxes", 0): 4}
    assert plan.is_order
