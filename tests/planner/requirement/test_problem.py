"""The sizing problem of a season: valid by the problem file's own rules, and its order is one a keeper would place."""

import datetime as dt
from dataclasses import replace

import pytest

from planner.requirement.problem import extras_on_colonies
from planner.requirement.season_gear import SeasonGear
from planner.season.operation import OnOrder, StockLine
from planner.sizing.reading import problem_of
from planner.sizing.writing import as_json
from planner.solution import solve
from tests.planner.operations import DAY, operation
from tests.planner.projection.test_gear_of_season import in_set


@pytest.mark.parametrize("region", ["north", "southern-short"])
@pytest.mark.parametrize("month", [1, 4, 7, 10])
def test_a_season_from_any_month_is_a_valid_problem(season_problem, month, region):
    problem = season_problem(operation(day=dt.date(2026, month, 15)), count=2, region=region)
    assert problem_of(as_json(problem)) == problem_of(as_json(problem_of(as_json(problem))))


@pytest.mark.parametrize(
    "code", ["three-mediums-10", "deep-and-medium-10", "two-deeps-8", "one-deep-8", "nuc-5"]
)
def test_any_outfit_is_a_valid_problem(season_problem, code):
    problem = problem_of(as_json(season_problem(in_set(code), count=2)))
    assert all(scenario.uses for scenario in problem.scenarios) and problem.offers


def test_the_same_operation_gives_the_same_problem(season_problem):
    assert season_problem(count=3) == season_problem(count=3)


def test_only_parts_of_use_are_named(season_problem):
    codes = {part.code for part in season_problem(count=2).parts}
    assert {"box-medium-10", "comb-medium-honey", "frame-medium-flat", "sugar", "drawing"} <= codes
    assert not {code for code in codes if "shallow" in code or code.endswith("-8")}


def test_stock_is_sound_gear_only_and_treated_comb_is_brood_comb(season_problem):
    lines = (
        StockLine(part="box-medium-10", yard="shed", condition="sound", quantity=5),
        StockLine(part="box-medium-10", yard="shed", condition="held back", quantity=50),
        StockLine(part="box-medium-10", yard="alder", condition="to mend", quantity=50),
        StockLine(part="comb-deep-brood-treated", yard="alder", condition="sound", quantity=7),
    )
    stock = {(s.part, s.location): s.quantity for s in season_problem(operation(stock=lines), count=2).stock}
    assert stock == {("box-medium-10", "shed"): 5, ("comb-deep-brood", "alder"): 7}


def test_what_is_on_order_counts_from_the_week_it_is_due(season_problem):
    due = OnOrder(part="box-medium-10", quantity=30, due=DAY + dt.timedelta(days=20), reference="A1")
    late = OnOrder(part="box-medium-10", quantity=99, due=DAY + dt.timedelta(days=900), reference="A2")
    past = OnOrder(part="floor-10", quantity=3, due=DAY - dt.timedelta(days=9), reference="A3")
    problem = season_problem(operation(stock=(), on_order=(due, late, past)), count=2)
    assert {(s.part, s.quantity, s.period) for s in problem.stock} == {
        ("box-medium-10", 30, 3),
        ("floor-10", 3, 0),
    }


def test_supers_on_living_colonies_are_free_to_be_used(answers):
    whole = operation()
    group = whole.colonies[0]
    sets = {facts.code: facts for facts in whole.sets}
    held = {part: pieces * group.colonies for part, pieces in sets[group.hive_set].gear.items()}
    groups = (replace(group, gear={**held, "box-medium-10": 4, "comb-medium-honey": 36}), *whole.colonies[1:])
    gear = SeasonGear(operation=operation(colonies=groups), assumptions=answers())
    assert list(extras_on_colonies(gear)) == [
        ("box-medium-10", "alder", 4),
        ("comb-medium-honey", "alder", 36),
    ]


def test_a_season_without_colonies_asks_for_nothing(season_problem):
    problem = season_problem(operation(colonies=()), count=2)
    assert problem.parts == ()
    assert problem.offers == ()


def units_of(plan):
    bought = {}
    for line in plan.here_and_now:
        for part, pieces in line.units.items():
            bought[part] = bought.get(part, 0) + pieces
    return bought


def test_moth_takes_its_share_of_the_combs_in_store_at_the_start(season_problem):
    problem = season_problem(count=2, stored_moth_share=0.1)
    for scenario in problem.scenarios:
        (moth,) = [use for use in scenario.uses if use.code.startswith("moth/")]
        assert moth.must and (moth.first, moth.last) == (0, 0)
        # 700 medium combs in the shed and 108 at alder, 60 deep ones in the shed.
        assert moth.spends == pytest.approx({"comb-medium-honey": 80.8, "comb-deep-brood": 6})
    assert not _moths(season_problem(count=1, stored_moth_share=0))
    assert not _moths(season_problem(operation(stock=()), count=1))


def test_all_combs_may_be_lost_to_moth(season_problem):
    plan = solve(season_problem(count=2, stored_moth_share=1), gap=0.01)
    assert plan.is_order


def _moths(problem):
    return [use for use in problem.scenarios[0].uses if use.code.startswith("moth/")]


@pytest.mark.parametrize(("sooner", "weight"), [("idle", 0), ("either", 0.25), ("short", 0.8)])
def test_sooner_short_or_idle_says_how_much_bad_years_weigh(season_problem, sooner, weight):
    bad = season_problem(count=1, sooner=sooner).bad_years
    assert (bad.weight, bad.share) == (weight, 0.1)


def test_who_would_sooner_be_short_buys_less_and_fares_better_in_bad_years(season_problem):
    orders = {}
    for sooner in ("idle", "short"):
        problem = season_problem(count=10, sooner=sooner)
        in_fractions = tuple(replace(offer, whole=False) for offer in problem.offers)
        plan = solve(replace(problem, offers=in_fractions), gap=0.002, prices=False)
        earned = [scenario.objective for scenario in plan.scenarios]
        orders[sooner] = plan.spend, min(earned), sum(earned) / 10
    assert orders["short"][0] < orders["idle"][0]
    assert orders["short"][1] > orders["idle"][1]
    assert orders["short"][2] <= orders["idle"][2] * 1.005


def test_a_season_s_drawing_is_never_begun_in_a_dearth(season_problem):
    problem = season_problem(operation(stock=()), count=2)
    plan = solve(problem, gap=0.01, prices=False)
    # Build-up from period 20, splits and flows until period 41 (ISO week 38): none before, none after.
    drawn = {
        line.period
        for scenario in plan.scenarios
        for line in scenario.made
        if line.recipe.startswith("draw-") and line.units > 1e-6
    }
    assert drawn
    assert all(20 <= period <= 41 for period in drawn)


def test_the_order_is_one_a_keeper_would_place(season_problem):
    plan = solve(season_problem(count=6), gap=0.005)
    bought = units_of(plan)
    # 110 colonies: no part in absurd numbers, supers and sugar in plausible ones.
    assert 2000 <= bought["sugar"] <= 5000
    assert bought.get("box-medium-10", 0) + bought.get("box-medium-10-flat", 0) <= 150
    assert bought.get("box-deep-10", 0) + bought.get("box-deep-10-flat", 0) <= 100
    assert bought.get("nuc-box-5", 0) <= 80
    assert bought.get("feeder-10", 0) <= 30
    assert 5000 < plan.spend < 20000


def test_a_budget_holds_and_of_zero_buys_nothing_yet_feeds_all(season_problem):
    plan = solve(season_problem(count=4, budget=1500), gap=0.005)
    assert plan.spend <= 1500
    none = solve(season_problem(count=4, budget=0), gap=0.005)
    assert none.here_and_now == ()
    assert none.spend == 0
    assert none.objective < plan.objective
    short = {short.use.split("/")[0] for scenario in none.scenarios for short in scenario.short}
    assert not short & {"feed", "consumable"}


def test_more_stock_means_a_smaller_order(season_problem):
    plenty = tuple(
        StockLine(part=part, yard="shed", condition="sound", quantity=3000)
        for part in (
            "box-medium-10",
            "comb-medium-honey",
            "box-deep-10",
            "comb-deep-brood",
            "foundation-deep",
        )
    )
    little = solve(season_problem(operation(stock=()), count=3), gap=0.005)
    much = solve(season_problem(operation(stock=plenty), count=3), gap=0.005)
    assert much.spend < little.spend
    assert not units_of(much).keys() & {"box-medium-10", "box-deep-10-flat", "frame-deep-foundation"}


def test_a_keepers_own_winters_change_what_the_season_asks_for(season_problem):
    def hives(winters):
        problem = season_problem(count=12, winters=winters, target_colonies=120)
        units = sum(u.units for s in problem.scenarios for u in s.uses if u.code.startswith("hive/"))
        back = sum(a.quantity for s in problem.scenarios for a in s.arrivals if a.part == "box-deep-10")
        return units, back

    mild, hard = hives("100/92, 110/101, 105/96"), hives("100/52, 110/58, 105/50")
    assert hard[0] > 1.3 * mild[0]  # more splits to hive after hard winters
    assert hard[1] > 1.4 * mild[1]  # and more boxes back from deadouts to hive them in


def test_a_drawn_comb_is_worth_more_than_its_frame_and_no_more_than_frame_and_honey(season_problem):
    problem = season_problem(count=2)
    worth = {part.code: part.end_value for part in problem.parts}
    drawing = next(recipe for recipe in problem.recipes if recipe.code == "draw-medium")
    assert worth["frame-medium-foundation"] < worth["comb-medium-honey"]
    assert worth["comb-medium-honey"] <= worth["frame-medium-foundation"] + drawing.cost
