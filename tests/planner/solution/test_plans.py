"""Plans made of acts."""

import pytest

from planner.solution.acts import Acts, ScenarioActs
from planner.solution.plans import no_plan, plan_from
from tests.planner.small_problems import small_problem

NO_PRICES = (None, "not asked for")


def made(served=4.0, packs=4, bound=60.0, gap=0.001, **changes):
    acts = Acts(packs={("boxes", 0): packs}, scenarios=[ScenarioActs(served={"super": served})])
    problem = small_problem(**changes)
    return plan_from(problem, acts, bound=bound, gap=gap, seconds=1.23456, solver="highs", prices=NO_PRICES)


def test_money_is_recomputed_from_whole_packs():
    plan = made(packs=4, bound=999)
    assert (plan.objective, plan.spend, plan.here_and_now[0].cost) == (60, 40, 40)


@pytest.mark.parametrize(("bound", "status"), [(60, "optimal"), (60.05, "within_gap"), (63, "time_limit")])
def test_the_status_follows_the_gap(bound, status):
    assert made(bound=bound).status == status


def test_a_bound_is_never_below_the_objective():
    plan = made(bound=59.999)
    assert plan.bound >= plan.objective
    assert (plan.gap, plan.status) == (0, "optimal")


def test_without_a_bound_nothing_is_proven():
    plan = made(bound=None)
    assert (plan.status, plan.bound, plan.gap) == ("time_limit", None, None)


def test_what_is_short_is_told_beside_what_is_served():
    scenario = made(served=1.5).scenarios[0]
    assert [(row.use, row.units) for row in scenario.served] == [("super", 1.5)]
    assert [(row.use, row.units) for row in scenario.short] == [("super", 2.5)]


def test_acts_that_take_more_than_there_is_are_a_bug_not_a_plan():
    with pytest.raises(AssertionError, match="a balance came out at -3"):
        made(served=4, packs=1)


def test_no_plan_has_all_keys_and_no_order():
    plan = no_plan("infeasible", "why", 0.5, "cbc")
    assert not plan.is_order
    assert (plan.reason, plan.spend, plan.scenarios, plan.packs()) == ("why", None, (), {})
