"""The naive form as an oracle: it and the product's exact form agree, written apart from one another."""

import random
from dataclasses import replace

import pytest

from planner.bench.naive import naive_form, naive_size, places_of, without_choices
from planner.programme import build
from planner.sizing.reading import problem_of
from planner.sizing.records import BadYears, Haul
from planner.solution import highs, solve
from tests.planner.random_problems import random_problem
from tests.planner.small_problems import small_problem, years


def naive_worth(problem, **settings):
    return highs.solve(highs.matrix_of(naive_form(problem, **settings).lp), gap=1e-9).objective


def joined(problem, *, out, home=0.0):
    """The problem with ways between the first place and each other, at so much a pound."""
    first, *others = problem.locations
    hauls = []
    for place in others:
        hauls.append(Haul(source=first, target=place, cost_per_lb=out))
        hauls.append(Haul(source=place, target=first, cost_per_lb=home))
    return replace(problem, hauls=tuple(hauls))


@pytest.mark.parametrize("seed", range(60))
def test_on_random_problems_it_agrees_with_the_exact_form(seed):
    problem = problem_of(random_problem(random.Random(1000 + seed)))
    plan = solve(problem, gap=1e-7, prices=False)
    worth = naive_worth(problem, lean=seed % 2 == 0)
    if plan.is_order:
        assert worth == pytest.approx(plan.objective, rel=1e-5, abs=1e-5)
    else:
        assert worth is None


@pytest.mark.parametrize("seed", [1, 2])
def test_on_a_season_it_agrees_with_the_exact_form_with_hauls(small_season, seed):
    problem = joined(small_season(seed=seed, scenarios=1, yards=1, colonies=6), out=0.05)
    plan = solve(problem, gap=1e-6, prices=False, seconds=120)
    assert naive_worth(problem, lean=True) == pytest.approx(plan.objective, rel=1e-5)


def test_on_a_season_where_gear_goes_free_it_agrees_with_the_pooled_form(small_season):
    problem = small_season(scenarios=2)
    plan = solve(problem, gap=1e-6, prices=False, seconds=120)
    packs = plan.packs()
    assert naive_worth(joined(problem, out=0.0), packs=packs, lean=True) == pytest.approx(
        plan.objective, rel=1e-6
    )


def test_ways_that_cost_make_an_order_worth_no_more_than_the_pooled_form_says(small_season):
    problem = small_season(scenarios=2)
    packs = solve(problem, gap=1e-3, prices=False, seconds=120).packs()
    worths = [naive_worth(joined(problem, out=cost), packs=packs, lean=True) for cost in (0.0, 0.2, 1.0)]
    assert worths[0] > worths[1] > worths[2]


def test_an_order_given_is_held_and_what_is_not_named_not_ordered():
    problem = small_problem()
    assert naive_worth(problem) == pytest.approx(4 * 25 - 4 * 10)
    assert naive_worth(problem, packs={("boxes", 0): 1}) == pytest.approx(25 - 10)
    assert naive_worth(problem, packs={}) == pytest.approx(0)


def test_bad_years_weigh_as_the_mean_of_the_worst_share():
    problem = replace(
        small_problem(scenarios=years((0.5, 0), (0.5, 8))), bad_years=BadYears(weight=1.0, share=0.5)
    )
    assert naive_worth(problem) == pytest.approx(0)  # nothing bought: no year is bad
    assert naive_worth(problem, packs={("boxes", 0): 2}) == pytest.approx(-20)


def test_its_size_is_one_balance_a_part_place_period_and_scenario(small_season):
    problem = joined(small_season(scenarios=2), out=0.1)
    balances = len(problem.parts) * len(problem.locations) * problem.periods * len(problem.scenarios)
    form = naive_form(problem)
    assert form.rows > balances > 5000
    assert form.variables > balances


def test_the_lean_form_tells_a_part_only_where_anything_touches_it(small_season):
    problem = joined(small_season(scenarios=2), out=0.1)
    places = places_of(problem, lean=True)
    assert places["paint"] == ("shed",)
    assert set(places["box-medium-10"]) == set(problem.locations)
    assert naive_form(problem, lean=True).rows < naive_form(problem).rows


def test_without_choices_a_problem_is_a_plain_lp_in_every_form(small_season):
    problem = without_choices(joined(small_season(), out=0.1))
    for lp in (naive_form(problem).lp, build(problem).lp):
        assert not highs.matrix_of(lp).whole.any()


@pytest.mark.parametrize("lean", [True, False])
def test_its_size_is_told_without_building_it(small_season, lean):
    problem = joined(small_season(scenarios=3), out=0.1)
    problem = replace(problem, bad_years=BadYears(weight=0.3, share=0.2))
    form = naive_form(problem, lean=lean)
    assert naive_size(problem, lean=lean) == (form.variables, form.rows)
