"""What is measured: sizes, worths and verdicts of each task on a tiny operation."""

import pytest

from planner.bench import tasks
from planner.bench.instances import Size
from planner.bench.tasks import Instance


@pytest.fixture
def tiny(catalogue, market):
    return Instance(catalogue=catalogue, market=market, size=Size(yards=1, colonies=6), scenarios=1)


@pytest.mark.parametrize("solver", ["highs", "cbc"])
def test_either_stock_solver_solves_the_naive_form_and_they_agree(tiny, solver):
    found = tasks.naive(instance=tiny, seconds=120, solver=solver)
    assert found["done"] and found["seconds"] == found["building"] + found["solving"] > 0
    ours = tasks.product(instance=tiny, seconds=60)
    assert found["objective"] == pytest.approx(ours["objective"], rel=0.02)


def test_a_naive_form_stopped_before_its_end_says_so(catalogue, market):
    instance = Instance(catalogue=catalogue, market=market, size=Size(yards=2, colonies=30), scenarios=3)
    assert tasks.naive(instance=instance, seconds=1.0, solver="highs")["done"] is False


def test_a_lean_naive_form_is_worth_as_much(tiny):
    whole, lean = (
        tasks.naive(instance=tiny, seconds=120, solver="highs", lean=lean) for lean in (False, True)
    )
    assert lean["variables"] < whole["variables"]
    assert lean["objective"] == pytest.approx(whole["objective"], rel=2 * tasks.GAP)


@pytest.mark.parametrize("solver", ["highs", "cbc"])
def test_one_direct_solve_of_the_exact_form_agrees_with_the_product(tiny, solver):
    found = tasks.direct(instance=tiny, seconds=60, solver=solver)
    ours = tasks.product(instance=tiny, seconds=60)
    assert found["done"]
    assert found["objective"] == pytest.approx(ours["objective"], rel=2 * tasks.GAP)


def test_a_direct_solve_stopped_before_its_end_says_so(catalogue, market):
    instance = Instance(catalogue=catalogue, market=market, size=Size(yards=2, colonies=30), scenarios=10)
    assert tasks.direct(instance=instance, seconds=1.0, solver="highs", gap=1e-9)["done"] is False


def test_the_product_proves_its_order_or_says_that_it_did_not(tiny):
    found = tasks.product(instance=tiny, seconds=60)
    assert found["done"] and found["bound"] >= found["objective"]
    assert found["bound"] <= found["objective"] * (1 + tasks.GAP) + 1


def test_forms_agree_where_hauling_is_free_and_nearly_where_it_costs(tiny):
    found = tasks.linear_forms(instance=tiny, seconds=60)
    assert found["free_yard"] == pytest.approx(found["free_naive"], rel=1e-6)
    assert found["yard"] == pytest.approx(found["naive"], rel=0.01)


def test_the_pooled_order_is_worth_no_more_in_the_naive_form_than_the_naive_bound(tiny):
    found = tasks.pooled_order_in_naive(instance=tiny, seconds=120)
    assert found["held"] <= found["bound"] + 1e-6
    assert found["held"] > 0.95 * found["bound"]


def test_a_worth_not_proven_in_time_is_no_worth(tiny):
    assert tasks.linear_forms(instance=tiny, seconds=0.0)["naive"] is None
