"""Ways between shed and yards: what they cost comes off the supers' value once, not twice."""

import pytest

from planner.bench.instances import REGION
from planner.requirement.values import trip_share
from planner.season.assumptions import assumptions_of
from planner.yardform import with_hauling


@pytest.fixture
def told():
    return lambda operation: assumptions_of({}, start=operation.day, region=REGION)


def uses_of(problem):
    return {use.code: use for scenario in problem.scenarios[:1] for use in scenario.uses}


def test_every_yard_has_a_way_out_and_a_free_way_home(small_operation, small_season, told):
    operation = small_operation()
    found = with_hauling(operation, told(operation), small_season())
    ways = {(haul.source, haul.target): haul.cost_per_lb for haul in found.hauls}
    assert len(ways) == 4
    assert all((cost > 0) == (source == "shed") for (source, _), cost in ways.items())


def test_a_super_brought_out_is_worth_what_it_was_worth_in_the_pooled_form(
    small_operation, small_season, told
):
    operation, problem = small_operation(), small_season()
    answers = told(operation)
    found = with_hauling(operation, answers, problem)
    weights = {part.code: part.weight_lb for part in problem.parts}
    costs = {haul.target: haul.cost_per_lb for haul in found.hauls if haul.source == "shed"}
    before, after = uses_of(problem), uses_of(found)
    supers = [code for code in before if code.startswith("super/")]
    assert supers
    for code in supers:
        pounds = sum(n * weights[part] for part, n in before[code].keeps.items())
        outbound = costs[before[code].location] * pounds
        assert after[code].value - outbound == pytest.approx(before[code].value)


def test_other_uses_keep_their_value(small_operation, small_season, told):
    operation, problem = small_operation(), small_season()
    before, after = uses_of(problem), uses_of(with_hauling(operation, told(operation), problem))
    others = [code for code in before if not code.startswith("super/")]
    assert others and all(before[code] == after[code] for code in others)


def test_half_the_round_trip_is_the_way_out(small_operation, small_season, told):
    operation, problem = small_operation(), small_season()
    answers = told(operation)
    yard = operation.yards[1]
    before, after = uses_of(problem), uses_of(with_hauling(operation, answers, problem))
    code = next(c for c, use in before.items() if c.startswith("super/") and use.location == yard.code)
    assert after[code].value - before[code].value == pytest.approx(trip_share(answers, yard) / 2)


def test_without_a_share_of_the_cost_every_way_is_free_and_nothing_changes(
    small_operation, small_season, told
):
    operation, problem = small_operation(), small_season()
    found = with_hauling(operation, told(operation), problem, cost_share=0.0)
    assert found.scenarios == problem.scenarios
    assert {haul.cost_per_lb for haul in found.hauls} == {0.0}


def test_feed_rides_free_and_boxes_do_not(small_operation, small_season, told):
    operation = small_operation()
    found = with_hauling(operation, told(operation), small_season())
    weights = {part.code: part.weight_lb for part in found.parts}
    assert weights["sugar"] == 0
    assert weights["box-medium-10"] > 4
