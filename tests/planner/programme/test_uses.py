"""Uses: kept and spent, linked, whole."""

import pytest

from planner.solution import solve
from tests.planner.small_problems import small_problem, years


def served(plan, number=0):
    return {row.use: row.units for row in plan.scenarios[number].served}


def test_what_is_kept_serves_again_and_what_is_spent_does_not():
    scenarios = years((1, 4), value=6)
    use = scenarios[0]["uses"][0]
    scenarios[0]["uses"].append(use | {"code": "next", "first": 2, "last": 2})
    assert solve(small_problem(scenarios=scenarios), gap=0).objective == 8  # 4 boxes, used twice
    for row in scenarios[0]["uses"]:
        row["spends"] = row.pop("keeps")
    assert solve(small_problem(scenarios=scenarios), gap=0).objective == 0


def test_what_a_use_still_keeps_at_the_end_keeps_its_end_value():
    kept = small_problem(use={"last": 2}, part={"end_value": 7})
    assert solve(kept, gap=0).objective == pytest.approx(4 * (25 + 7 - 10))
    spent = small_problem(use={"last": 2, "keeps": {}, "spends": {"box": 1}}, part={"end_value": 7})
    assert solve(spent, gap=0).objective == pytest.approx(4 * (25 - 10))


def test_a_linked_use_is_held_back_by_the_other():
    scenarios = years((1, 4))
    second = {"code": "second", "location": "shed", "first": 2, "last": 2, "units": 9, "value": 5}
    scenarios[0]["uses"].append(second | {"needs_use": "super", "per": 1.5})
    assert served(solve(small_problem(scenarios=scenarios), gap=0)) == {"super": 4, "second": 6}


def test_a_use_that_costs_money_is_served_for_the_one_it_allows():
    scenarios = years((1, 4), value=-1)
    second = {"code": "second", "location": "shed", "first": 2, "last": 2, "units": 9, "value": 30}
    scenarios[0]["uses"].append(second | {"needs_use": "super"})
    plan = solve(small_problem(scenarios=scenarios), gap=0)
    assert served(plan) == {"super": 4, "second": 4}
    assert plan.objective == pytest.approx(4 * (30 - 1 - 10))


def test_must_uses_are_served_at_a_loss():
    plan = solve(small_problem(use={"must": True, "value": 0}), gap=0)
    assert (plan.objective, served(plan), plan.scenarios[0].short) == (-40, {"super": 4}, ())


def test_fractions_are_served_unless_uses_are_whole():
    changes = {"stock": [{"part": "box", "location": "shed", "quantity": 3.5}], "offers": []}
    assert served(solve(small_problem(**changes), gap=0)) == {"super": 3.5}
    assert served(solve(small_problem(**changes, whole_uses=True), gap=0)) == {"super": 3}


def test_uses_that_take_nothing_are_served_when_they_pay():
    scenarios = years((1, 4), keeps={})
    scenarios[0]["uses"].append(scenarios[0]["uses"][0] | {"code": "loss", "value": -2})
    assert served(solve(small_problem(scenarios=scenarios), gap=0)) == {"super": 4}
