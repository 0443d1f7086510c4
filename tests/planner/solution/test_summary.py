"""The summary a keeper reads."""

from dataclasses import replace

from planner.solution import solve
from planner.solution.plans import no_plan
from planner.solution.summary import summary
from tests.planner.small_problems import small_problem, years


def text(gap=0, **changes):
    problem = small_problem(**changes)
    return summary(problem, solve(problem, gap=gap))


def test_an_order_is_shown_with_packs_units_and_money():
    lines = text(supplier={"order_fee": 7}, budget=60).splitlines()
    assert lines[0] == "This is the best order there is."
    assert lines[2].split() == ["Order", "now", "period", "packs", "units", "USD"]
    assert lines[3].split() == ["boxes", "0", "4", "4", "box", "40.00"]
    assert lines[4].split() == ["fee", "of", "mill", "0", "7.00"]
    assert "Spend: 47.00 USD of a budget of 60.00." in lines
    assert "Worth in the one scenario: 53.00 USD, costs taken off." in lines
    assert "Every use is served in full." in lines


def test_an_empty_order_and_what_is_short_are_told():
    shown = text(scenarios=years((0.5, 2), (0.5, 8)), budget=0)
    assert "Order now: nothing." in shown
    assert "super: 5, 100 %" in shown
    assert "over 2 scenarios" in shown


def test_many_short_uses_are_cut_to_the_worst():
    scenarios = years((1, 4))
    use = scenarios[0]["uses"][0]
    scenarios[0]["uses"] = [use | {"code": f"use-{n}", "units": n + 1} for n in range(12)]
    shown = text(scenarios=scenarios, offers=[])
    assert "use-11: 12, 100 %" in shown
    assert "and 4 more uses." in shown
    assert "use-0:" not in shown


def test_what_the_budget_would_earn_is_told():
    assert "One USD more of budget would earn about 1.50." in text(budget=25, offer={"whole": False})


def test_reasons_stand_where_there_is_no_order():
    shown = text(budget=0, use={"must": True})
    assert shown.startswith("No order can serve what must be served.\nReason: must-uses")
    assert text(part={"end_value": 11}).startswith("No best order exists")
    late = no_plan("time_limit", "allow more", 60, "highs")
    assert summary(small_problem(), late).startswith(
        "Time ran out before any order was found.\nReason: allow more."
    )


def test_out_of_time_the_order_is_called_the_best_so_far_with_what_is_known_of_a_better_one():
    problem = small_problem()
    plan = replace(solve(problem), status="time_limit", gap=0.034)
    assert summary(problem, plan).startswith(
        "Time ran out: this is the best order found so far; a better one could be worth up to 3.4 % more."
    )
    for gap in (None, 4e7):
        told = summary(problem, replace(plan, gap=gap))
        assert told.startswith(
            "Time ran out: this is the best order found so far; how much better one could be is not known."
        )
