"""Seasons at the edge: any start, either hemisphere, nothing alive, nothing sold, nothing dear. None breaks the planner."""

import datetime as dt
from dataclasses import replace
from decimal import Decimal

import pytest

from planner.requirement import describe
from planner.season.operation import SetFacts, WindowFacts
from planner.sizing.reading import problem_of
from planner.sizing.writing import as_json
from planner.solution import solve
from tests.planner.operations import DAY, operation
from tests.planner.projection.test_gear_of_season import in_set
from tests.planner.projection.test_homes import mixed


def solved(problem):
    plan = solve(problem, gap=0.01, prices=False)
    assert plan.is_order, plan.reason
    return plan


def with_windows(*windows, day=DAY):
    return operation(day=day, yards=tuple(replace(yard, windows=windows) for yard in operation().yards))


@pytest.mark.parametrize("week", range(52))
def test_any_week_of_the_year_may_be_the_start(season_problem, week):
    day = DAY + dt.timedelta(weeks=week)
    for region in ("north", "southern-ordinary"):
        problem = season_problem(operation(day=day), count=1, region=region)
        assert problem_of(as_json(problem)).periods == 52
        for use in problem.scenarios[0].uses:
            assert 0 <= use.first <= use.last < 52
            assert use.units > 0
            assert describe(use.code)


@pytest.mark.parametrize("month", [2, 5, 8, 11])
def test_a_season_of_either_hemisphere_can_be_solved_from_any_quarter(season_problem, month):
    for region in ("middle", "southern-short"):
        solved(season_problem(operation(day=dt.date(2026, month, 9)), count=2, region=region))


def test_a_flow_over_the_new_year_gets_its_supers(season_problem):
    # A southern summer flow: ISO weeks 50 to 4, seen from an order of August.
    flow = WindowFacts(name="Bush", first_week=50, last_week=4, gain_lb=70, spread=0.3)
    whole = with_windows(flow, day=dt.date(2026, 8, 3))
    problem = season_problem(whole, count=2, region="southern-ordinary")
    supers = [use for use in problem.scenarios[0].uses if use.code.startswith("super/")]
    assert supers
    # ISO week 50 of 2026 is period 18 or 19 of a season that starts on 3 August.
    assert {use.first for use in supers if "/1" in use.code} <= {18, 19}
    assert all(use.last > 22 for use in supers)
    solved(problem)


@pytest.mark.parametrize("day", [DAY, dt.date(2026, 6, 22)])
def test_yards_without_a_flow_ask_for_hives_and_feed_but_no_super(season_problem, day):
    problem = season_problem(with_windows(day=day), count=2)
    kinds = {use.code.split("/")[0] for scenario in problem.scenarios for use in scenario.uses}
    assert {"feed", "consumable"} <= kinds
    assert not kinds & {"super", "excluder", "left-on"}
    solved(problem)


@pytest.mark.parametrize("survival", [0, 1])
@pytest.mark.parametrize("summer", [0, 1])
def test_winters_and_summers_that_take_none_or_all(season_problem, survival, summer):
    problem = season_problem(count=2, survival_share=survival, summer_loss_share=summer)
    plan = solved(problem)
    for scenario in problem.scenarios:
        attempts = sum(use.units for use in scenario.uses if use.code.startswith("split/"))
        assert attempts == 0 if survival == 0 else attempts >= 0
    if survival == 0:
        assert not [line for line in plan.here_and_now if line.offer.startswith(("th-medium", "ok-medium"))]


def test_no_stock_is_a_larger_order_and_no_offers_none(season_problem):
    bare = solved(season_problem(operation(stock=()), count=2))
    stocked = solved(season_problem(count=2))
    assert bare.spend > stocked.spend
    none = solved(season_problem(operation(offers=()), count=2))
    assert none.here_and_now == ()


def test_offers_all_closed_leave_only_what_is_bought_in_season(season_problem):
    closed = tuple(replace(offer, open_until=DAY - dt.timedelta(days=1)) for offer in operation().offers)
    plan = solved(season_problem(operation(offers=closed), count=2))
    assert plan.here_and_now == ()
    assert all(line.offer.startswith("in-season/") for scenario in plan.scenarios for line in scenario.later)


def test_prices_of_nothing_are_no_money_machine(season_problem):
    free = tuple(
        replace(offer, prices=tuple((packs, Decimal(0)) for packs, _price in offer.prices))
        for offer in operation().offers
    )
    parts = tuple(replace(part, list_price=Decimal(0)) for part in operation().parts)
    plan = solved(season_problem(operation(offers=free, parts=parts), count=2))
    assert plan.status in ("optimal", "within_gap")


def test_honey_worth_nothing_asks_for_no_super(season_problem):
    problem = season_problem(count=2, honey_price=0, honey_price_more=0)
    assert not [
        use for scenario in problem.scenarios for use in scenario.uses if use.code.startswith("super/")
    ]
    solved(problem)


def test_a_yard_of_each_outfit_asks_for_its_own_boxes(season_problem):
    problem = season_problem(mixed(), count=3, survival_share=0.5)
    kept = {}
    for scenario in problem.scenarios:
        for use in scenario.uses:
            if use.code.startswith("hive/"):
                kept.setdefault(use.location, {}).update(use.keeps)
    assert kept["alder"]["comb-medium-brood"] == 10 and "box-deep-10" not in kept["alder"]
    assert kept["birch"]["box-deep-8"] == 1 and kept["birch"]["comb-deep-brood"] == 8
    assert {"floor-8", "cover-8", "inner-cover-8"} <= kept["birch"].keys()
    assert kept["dogwood"]["box-deep-10"] == 1
    solved(problem)


def test_all_splits_alike_when_the_keeper_wants_it_so(season_problem):
    problem = season_problem(mixed(), count=2, survival_share=0.5, split_home="all")
    bundles = {
        tuple(sorted(use.keeps.items()))
        for scenario in problem.scenarios
        for use in scenario.uses
        if use.code.startswith("hive/")
    }
    assert len(bundles) == 1


def test_hives_on_four_way_pallets_under_migratory_covers(season_problem):
    gear = {"box-deep-10": 2, "comb-deep-brood": 20, "pallet-4": 1, "cover-migratory-10": 1}
    pallet = SetFacts(code="on-pallet", name="two deeps on a pallet", width=10, boxes={"deep": 2}, gear=gear)
    whole = in_set("two-deeps-10")
    groups = tuple(replace(group, hive_set="on-pallet") for group in whole.colonies)
    problem = season_problem(operation(sets=(*whole.sets, pallet), colonies=groups), count=2)
    parts = {part.code for part in problem.parts}
    assert {"pallet-4", "cover-migratory-10"} <= parts
    asked = {part for use in problem.scenarios[0].uses for part in (*use.keeps, *use.spends)}
    assert not asked & {"floor-10", "inner-cover-10", "cover-10"}  # sold in a kit, but asked for by no hive
    hive = next(use for use in problem.scenarios[0].uses if use.code.startswith("hive/"))
    assert hive.keeps["pallet-4"] == 0.25
    solved(problem)


@pytest.mark.parametrize(
    "code",
    ["one-deep-10", "three-mediums-10", "deep-and-medium-10", "two-deeps-8", "one-deep-8", "nuc-5"],
)
def test_any_outfit_can_be_solved(season_problem, code):
    solved(season_problem(in_set(code), count=2))


def test_splits_that_die_in_a_winter_of_the_year_give_their_hives_back(season_problem):
    problem = season_problem(operation(day=dt.date(2026, 4, 6)), count=3, target_colonies=130)
    found = [use for s in problem.scenarios for use in s.uses if use.code.startswith("hive-till-winter/")]
    assert found
    for use in found:
        assert use.last < 51
        assert describe(use.code).startswith("hives of splits that die in the winter at")
        # 0.85 of a deadout's gear is fit to use again; combs suffer from moth and culling as well.
        assert use.keeps["floor-10"] == pytest.approx(0.85)
        assert use.keeps["floor-10"] + use.spends["floor-10"] == pytest.approx(1)
        assert use.keeps["comb-deep-brood"] < 8.5
    solved(problem)


def test_second_boxes_of_splits_that_die_in_a_winter_of_the_year_come_free_when_they_are_found(
    season_problem,
):
    problem = season_problem(operation(day=dt.date(2026, 4, 6)), count=3, target_colonies=130)
    uses = {use.code: use for s in problem.scenarios for use in s.uses}
    found = [use for code, use in uses.items() if code.startswith("second-box-till-winter/")]
    assert found
    for use in found:
        hive = uses[use.needs_use]
        assert hive.code.startswith("hive-till-winter/") and hive.location == use.location
        assert use.last <= hive.last < 51
        assert use.keeps["box-deep-10"] == pytest.approx(0.85)
        assert use.keeps["box-deep-10"] + use.spends["box-deep-10"] == pytest.approx(1)
        assert describe(use.code).startswith("second brood box of splits that die in the winter at")
