"""The whole report: sums to the cent, budgets, plans without an order, parts nobody sells. Figures by hand."""

from dataclasses import replace
from decimal import ROUND_HALF_UP, Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.plan import report_of
from planner.sizing.reading import problem_of
from planner.solution import solve
from planner.solution.valuing import ordered
from planner.trial import WithoutBudget
from tests.planner.plan import small


def report(operation=None, problem=None, plan=None, **others):
    return report_of(
        operation or small.operation(),
        small.assumptions(),
        problem or small.problem(),
        plan or small.plan(),
        **others,
    )


def test_it_sums_lines_and_fees_to_what_the_plan_spends():
    made = report()
    assert [line.cost for line in made.lines] == [Decimal("145.00"), Decimal("31.00")]
    assert made.orders[0].goods == Decimal("176.00")
    assert made.orders[0].fee == Decimal("24.00")
    assert made.spend == Decimal("200.00")


def test_the_headline_says_lines_supplier_sum_what_is_left_and_by_when():
    said = report().headline
    assert "2 lines from North Woodware (invented) for $200.00, shipping included" in said
    assert "$50.00 under the budget" in said
    assert "Order by 31 January 2027" in said


def test_a_plan_that_spends_something_else_than_its_lines_is_a_bug():
    with pytest.raises(AssertionError):
        report(plan=small.plan(spend=210.0))


def test_an_order_of_part_of_a_pack_is_a_bug():
    lines = [{"offer": "north-box", "period": 0, "packs": 1.5, "units": {}, "cost": 120.0}]
    with pytest.raises(AssertionError):
        report(plan=small.plan(here_and_now=lines, fees=[], spend=120.0))


def test_an_infeasible_plan_says_so_and_orders_nothing():
    made = report(plan=no_plan("infeasible", "must-use feed asks for 60 lb, 50 can be had"))
    assert not made.lines and made.spend == 0
    assert made.headline == "No order can do what must be done. must-use feed asks for 60 lb, 50 can be had"
    assert made.assumptions


def test_a_money_machine_is_named():
    made = report(plan=no_plan("unbounded", "north-sugar"))
    assert "money be made without end. north-sugar" in made.headline


def test_a_plan_out_of_time_with_an_order_says_how_far_it_may_be_from_the_best():
    made = report(plan=small.plan(status="time_limit", gap=0.034))
    assert made.lines
    assert "Time ran out" in made.standing.said and "3.40\N{NO-BREAK SPACE}%" in made.standing.said


def test_a_plan_out_of_time_without_an_order_says_so():
    made = report(plan=no_plan("time_limit", "no order was found within the time limit"))
    assert "no order was found" in made.headline.lower()
    assert "best order found so far" not in made.headline


def no_plan(status, reason):
    return small.plan(
        status=status,
        reason=reason,
        objective=None,
        bound=None,
        gap=None,
        here_and_now=[],
        fees=[],
        spend=None,
        scenarios=[],
    )


def test_a_budget_of_zero_says_what_buying_nothing_costs():
    problem = small.problem(budget=0)
    plan = solve(problem)
    free = solve(replace(problem, budget=None))
    beside = WithoutBudget(spend=Decimal("200.00"), worth=Decimal(str(round(free.objective, 2))))
    made = report(problem=problem, plan=plan, without_budget=beside)
    lost = beside.worth - made.standing.worth
    assert not made.lines
    assert lost > 0
    assert made.headline.startswith("Nothing to order: the budget is 0.")
    assert f"costs about ${lost:,.0f} a season" in made.headline


def test_assumptions_tell_own_answers_apart():
    made = report_of(small.operation(), small.assumptions(survival_share=0.55), small.problem(), small.plan())
    row = next(row for row in made.assumptions if row.key == "survival_share")
    assert row.own and row.value == "55\N{NO-BREAK SPACE}%" and row.default == "70\N{NO-BREAK SPACE}%"
    assert "Steinhauer" in row.source
    assert not next(row for row in made.assumptions if row.key == "circuit_days").own


@settings(deadline=None, max_examples=40)
@given(
    prices=st.lists(st.integers(1, 20_000), min_size=1, max_size=4),
    packs=st.tuples(st.integers(0, 60), st.integers(0, 60)),
    incremental=st.booleans(),
    fee=st.integers(0, 9_999),
)
def test_every_order_adds_up_to_the_cent(prices, packs, incremental, fee):
    """Any packs at any prices in cents: lines, fees and totals are what the solution says the plan spends."""
    data = small.problem_data(budget=None)
    data["suppliers"][0] |= {"order_fee": fee / 100, "free_from": 300}
    steps = [{"from_packs": 1 + 7 * i, "price": cent / 100} for i, cent in enumerate(sorted(prices)[::-1])]
    for offer in data["offers"][:2]:
        offer |= {"prices": steps, "price_rule": "incremental" if incremental else "all_units"}
    problem = problem_of(data)
    codes = ("north-box", "north-sugar")
    bought = ordered(problem, {(code, 0): count for code, count in zip(codes, packs, strict=True) if count})
    lines = [
        {"offer": code, "period": 0, "packs": count, "units": {}, "cost": bought.costs[code, 0]}
        for code, count in zip(codes, packs, strict=True)
        if count
    ]
    fees = [{"supplier": code, "period": 0, "fee": charged} for (code, _), charged in bought.fees.items()]
    plan = small.plan(here_and_now=lines, fees=fees, spend=bought.spend)
    made = report(problem=problem, plan=plan)
    paid = sum((line.cost for line in made.lines), Decimal(0))
    paid += sum((order.fee for order in made.orders), Decimal(0))
    assert made.spend == paid == sum((order.total for order in made.orders), Decimal(0))
    assert made.spend == Decimal(bought.spend).quantize(Decimal("0.01"), ROUND_HALF_UP)
    for line in made.lines:
        assert sum(each.packs for each in line.bill) == line.packs
        assert sum(each.packs * each.price for each in line.bill) == line.cost
