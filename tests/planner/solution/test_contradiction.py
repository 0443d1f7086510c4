"""Contradictions in words."""

from planner.solution.contradiction import contradiction
from tests.planner.small_problems import small_problem, years


def reason(**changes):
    return contradiction(small_problem(**changes))


MUST = {"must": True}


def test_a_problem_with_a_plan_has_none():
    assert reason() is None
    assert reason(use=MUST) is None


def test_a_part_nobody_sells_is_named():
    words = reason(use=MUST, offers=[])
    assert '"super", 4 asked, 0 possible' in words
    assert '4 more of part "box" by about period 1, which no offer sells and no recipe makes' in words


def test_a_part_that_lands_too_late_is_named_without_blaming_the_supplier():
    words = reason(use=MUST, offer={"order_periods": [2]})
    assert '4 more of part "box" by about period 1' in words
    assert "no offer sells" not in words


def test_the_limit_that_is_too_tight_is_named_with_how_much_is_missing():
    assert "15.00 USD more budget than 25.00" in reason(use=MUST, budget=25)
    assert '1 more packs than max_packs of offer "boxes" in period 0' in reason(
        use=MUST, offer={"max_packs": 3}
    )
    later = reason(use=MUST, offer={"when": "later"}, later_budget=25)
    assert "15.00 USD more later_budget than 25.00" in later
    work = {"offer": {"work_minutes": 10}, "work": {"minutes_per_period": [30, 60, 60]}}
    assert "10 more minutes of work in period 0" in reason(use=MUST, **work)


def test_the_year_is_named_where_there_are_several():
    words = reason(scenarios=years((0.5, 2), (0.5, 8), must=True), offer={"max_packs": 5})
    assert '"super" in scenario "year-1", 8 asked, 5 possible' in words


def test_a_place_is_named_where_gear_must_be_hauled():
    words = reason(
        locations=["shed", "hill"], hauls=[{"from": "hill", "to": "shed"}], use=MUST | {"location": "hill"}
    )
    assert 'part "box" at "hill"' in words


def test_a_link_that_holds_a_must_use_back_is_named():
    scenarios = years((1, 4))
    second = {
        "code": "second",
        "location": "shed",
        "first": 2,
        "last": 2,
        "units": 9,
        "value": 5,
        "must": True,
    }
    scenarios[0]["uses"].append(second | {"needs_use": "super"})
    words = reason(scenarios=scenarios)
    assert '"second", 9 asked, 4 possible' in words
    assert 'use "second" served without the use it needs' in words


def test_many_contradictions_are_counted_not_all_told():
    scenarios = years((1, 4), must=True)
    use = scenarios[0]["uses"][0]
    scenarios[0]["uses"] = [
        use | {"code": f"use-{n}", "value": n, "units": 1, "last": 1 + n % 2} for n in range(9)
    ]
    words = reason(
        scenarios=[
            scenarios[0]
            | {"uses": [row | {"keeps": {f"box-{n}": 1}} for n, row in enumerate(scenarios[0]["uses"])]}
        ],
        parts=[{"code": "box"}, *({"code": f"box-{n}"} for n in range(9))],
    )
    assert "and 5 more of the kind" in words


def test_a_given_order_is_judged_as_given():
    problem = small_problem(use=MUST)
    assert contradiction(problem, packs={("boxes", 0): 4}) is None
    assert '2 more of part "box"' in contradiction(problem, packs={("boxes", 0): 2})
    over = small_problem(offer={"max_packs": 2})
    assert "1 more packs than max_packs" in contradiction(over, packs={("boxes", 0): 3})
