"""Supers in gear: left on to the end or pulled in mid-flow, whichever earns more."""

from dataclasses import replace

import pytest

from planner.projection.records import SuperNeed
from planner.requirement.super_uses import merged, super_uses
from planner.requirement.values import early_pull_cost, super_value
from planner.season.operation import StockLine
from planner.sizing.records import Part, Problem, Scenario, Stock
from planner.solution import solve
from tests.planner.operations import operation

PLAIN = {
    "yard": "alder",
    "window": "Clover",
    "strength": "strong",
    "width": 10,
    "number": 1,
    "first": 26,
    "last": 33,
    "colonies": 8,
    "honey_lb": 38.0,
}


def need(**changes):
    return SuperNeed(**{**PLAIN, **changes})


@pytest.fixture
def uses(season_gear, projected):
    """Makes the uses of these needs."""
    projection = projected(count=1)[0]

    def make(*needs, **given):
        return list(super_uses(season_gear(**given), replace(projection, supers=needs), 2.5, []))

    return make


EARLY, LATE = need(early_last=28), need(number=2, first=30, honey_lb=30.0)


def test_a_super_full_before_another_goes_on_may_be_pulled_early(uses, season_gear):
    first, left_on, second = uses(EARLY, LATE)
    cost = early_pull_cost(season_gear().assumptions, operation().yards[1], 8)
    assert (first.code, first.first, first.last) == ("super/alder/clover/strong/1", 26, 28)
    assert (left_on.code, left_on.first, left_on.last) == ("left-on/alder/clover/strong/1", 29, 33)
    assert left_on.needs_use == first.code
    assert left_on.units == first.units == 8
    assert left_on.keeps == first.keeps
    assert left_on.value == pytest.approx(cost)
    whole = super_value(season_gear().assumptions, operation().yards[1], 38.0, 2.5)
    assert first.value + left_on.value == pytest.approx(whole)
    assert second.code == "super/alder/clover/strong/2"


def test_where_no_super_goes_on_in_the_weeks_gained_it_stays(uses):
    assert [use.code for use in uses(EARLY)] == ["super/alder/clover/strong/1"]
    assert len(uses(EARLY, need(number=2, first=28))) == 2


def test_only_the_largest_lot_of_a_yard_and_flow_is_offered_twice(uses):
    small = need(strength="weak", number=1, colonies=3, honey_lb=20.0, early_last=28)
    codes = [use.code for use in uses(EARLY, small, LATE)]
    assert [code for code in codes if code.startswith("left-on/")] == ["left-on/alder/clover/strong/1"]


def test_splits_are_pulled_once(uses):
    assert not [
        use for use in uses(need(strength="split", early_last=28), LATE) if use.code.startswith("left")
    ]


def test_alike_supers_are_early_only_if_all_of_them_are():
    rows = list(merged([need(early_last=28), need(strength="fair", early_last=None)]))
    assert [row[0].early_last for row in rows] == [None]
    rows = list(merged([need(early_last=28), need(strength="fair", early_last=30)]))
    assert [row[0].early_last for row in rows] == [30]


@pytest.mark.parametrize(("boxes", "left_on"), [(8, 0), (16, 8), (11, 3)])
def test_few_boxes_are_pulled_early_and_plenty_left_on(uses, boxes, left_on):
    # Eight first supers and eight second ones: with eight boxes each must serve twice, with sixteen none.
    asked = uses(EARLY, LATE)
    parts = {part for use in asked for part in use.keeps}
    problem = Problem(
        periods=52,
        parts=tuple(Part(code=code) for code in sorted(parts)),
        locations=("shed", "alder"),
        stock=tuple(
            Stock(part=code, location="shed", quantity=boxes * pieces)
            for code, pieces in sorted(asked[0].keeps.items())
        ),
        scenarios=(Scenario(code="s", probability=1, uses=tuple(asked)),),
    )
    served = {line.use: line.units for line in solve(problem).scenarios[0].served}
    assert served["super/alder/clover/strong/1"] == pytest.approx(8)
    assert served["super/alder/clover/strong/2"] == pytest.approx(8)
    assert served.get("left-on/alder/clover/strong/1", 0) == pytest.approx(left_on)


def test_a_keeper_who_never_pulls_early_is_not_asked_to(projected):
    assert any(need.early_last for p in projected(count=5) for need in p.supers)
    assert not any(need.early_last for p in projected(count=5, pull_early=False) for need in p.supers)


def test_early_is_after_it_is_full_and_two_weeks_before_the_end(projected):
    early = [need for p in projected(count=10) for need in p.supers if need.early_last is not None]
    assert all(need.first < need.early_last <= need.last - 2 for need in early)


def test_an_excluder_lies_under_a_first_super_or_nowhere(season_problem):
    few = (StockLine(part="excluder-10", yard="shed", condition="sound", quantity=500),)
    problem = season_problem(operation(stock=few), count=3)
    for scenario in problem.scenarios:
        by_code = {use.code: use for use in scenario.uses}
        excluders = [use for use in scenario.uses if use.code.startswith("excluder/")]
        assert excluders
        for use in excluders:
            under = by_code[use.needs_use]
            assert under.code.startswith(f"super/{use.location}/") and "/1" in under.code
            assert use.per * under.units == pytest.approx(use.units)


@pytest.mark.parametrize(("dearer", "early"), [({}, True), ({"pull_early_minutes": 120}, False)])
def test_hours_decide_whether_a_round_in_mid_flow_is_offered(uses, dearer, early):
    # 38 lb at 2.50 less handling and the trip are some 85; two hours a super at 60 an hour are more.
    asked = uses(EARLY, LATE, hour_value=60 if dearer else 18, **dearer)
    assert any(use.code.startswith("left-on/") for use in asked) is early


@pytest.mark.parametrize(("miles", "early"), [(6.5, True), (400, False)])
def test_a_trip_that_costs_more_than_its_few_supers_hold_is_not_offered(season_gear, projected, miles, early):
    yards = tuple(replace(y, miles=miles) if y.code == "alder" else y for y in operation().yards)
    few, late = replace(EARLY, colonies=3), replace(LATE, colonies=3)
    projection = replace(projected(count=1)[0], supers=(few, late))
    asked = super_uses(season_gear(operation(yards=yards)), projection, 2.5, [])
    assert any(use.code.startswith("left-on/") for use in asked) is early
