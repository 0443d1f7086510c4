"""When recipes have to run: by hand on small seasons, and by the naive form and true plans on random workshops."""

import random

import pytest

from planner.bench.naive import naive_form
from planner.programme import build
from planner.programme.blocks import linear_recourse
from planner.sizing.reading import problem_of
from planner.solution import highs, solve
from tests.planner.small_problems import small_problem
from tests.planner.true_plans import assert_true
from tests.planner.workshops import workshop

NAIL = {"code": "nail", "takes": {"boards": 1}, "makes": {"box": 1}, "work_minutes": 20}
PARTS = [{"code": "box"}, {"code": "boards"}, {"code": "timber"}]
USE = {"location": "shed", "units": 4, "value": 25, "keeps": {"box": 1}}


def spans(problem, code):
    return [(run.first, run.last) for run in build(problem).runs if run.recipe.code == code]


def season(*, uses, **changes):
    """Twelve periods of nailing boards, the box used in periods `uses`: (first, last)."""
    rows = [USE | {"code": f"use-{at}", "first": a, "last": b} for at, (a, b) in enumerate(uses)]
    changes = {"work": {"minutes_per_period": [30] * 12}, "recipes": [NAIL]} | changes
    return small_problem(
        parts=PARTS,
        periods=12,
        offer={"parts": {"boards": 1}},
        scenarios=[{"code": "year", "probability": 1, "uses": rows, **changes.pop("scenario", {})}],
        **changes,
    )


def test_work_is_due_when_what_it_makes_goes_and_never_after():
    assert spans(season(uses=[(3, 5), (8, 9)]), "nail") == [(0, 3), (0, 8)]


def test_gear_coming_back_asks_for_no_runs_of_its_own():
    assert spans(season(uses=[(3, 3), (8, 8)]), "nail") == spans(season(uses=[(3, 7), (8, 10)]), "nail")


def test_what_is_taken_and_comes_later_cuts_the_season_in_two():
    late = {"arrivals": [{"part": "boards", "location": "shed", "period": 5, "quantity": 2}]}
    assert spans(season(uses=[(3, 5), (8, 9)], scenario=late), "nail") == [(0, 3), (0, 4), (5, 8)]


def test_a_run_that_pays_by_itself_may_be_done_to_the_end():
    parts = [{"code": "box", "end_value": 2}, *PARTS[1:]]
    problem = small_problem(
        parts=parts,
        periods=12,
        offer={"parts": {"boards": 1}},
        recipes=[NAIL],
        work={"minutes_per_period": [30] * 12},
        use={"first": 3, "last": 5},
    )
    assert spans(problem, "nail") == [(0, 3), (0, 11)]


def test_recipes_without_work_run_in_the_period_their_product_goes():
    assert spans(season(uses=[(3, 5), (8, 9)], recipes=[NAIL | {"work_minutes": 0}]), "nail") == [
        (3, 3),
        (8, 8),
    ]
    assert spans(season(uses=[(3, 5)], work={}), "nail") == [(3, 3)]


def test_recipes_that_wait_begin_their_lead_before():
    slow = NAIL | {"work_minutes": 0, "lead_periods": 4}
    assert spans(season(uses=[(3, 5), (8, 9)], recipes=[slow]), "nail") == [(4, 4)]


def test_a_recipe_with_a_lead_and_limited_minutes_is_told_by_period():
    slow = NAIL | {"lead_periods": 2}
    assert spans(season(uses=[(3, 5)], recipes=[slow]), "nail") == [(at, at) for at in range(10)]


def test_what_feeds_a_recipe_is_due_when_that_one_is():
    saw = {"code": "saw", "takes": {"timber": 1}, "makes": {"boards": 2}}
    problem = season(uses=[(3, 5), (8, 9)], recipes=[NAIL, saw])
    assert spans(problem, "saw") == spans(problem, "nail") == [(0, 3), (0, 8)]


def test_recipes_in_a_ring_are_due_together():
    back = {"code": "back", "takes": {"box": 1}, "makes": {"boards": 1}}
    problem = season(uses=[(3, 5), (8, 9)], recipes=[NAIL | {"work_minutes": 0}, back])
    assert spans(problem, "back") == spans(problem, "nail") == [(3, 3), (8, 8)]


def test_a_holding_cost_keeps_every_period_apart():
    parts = [{"code": "box", "holding_cost": 1}, *PARTS[1:]]
    problem = small_problem(
        parts=parts,
        offer={"parts": {"boards": 1}},
        recipes=[NAIL],
        work={"minutes_per_period": [30] * 3},
        use={"first": 2, "last": 2},
    )
    assert spans(problem, "nail") == [(0, 0), (1, 1), (2, 2)]


def test_hauls_keep_every_period_apart():
    ways = {"locations": ["shed", "hill"], "hauls": [{"from": "shed", "to": "hill"}]}
    problem = season(uses=[(3, 5)], **ways)
    assert spans(problem, "nail") == [(at, at) for at in range(12)]


def best(lp):
    answer = highs.solve(highs.matrix_of(lp), gap=1e-9)
    return answer.status, answer.objective


@pytest.mark.parametrize("hundreds", range(3))
def test_random_workshops_are_worth_what_the_naive_form_says(hundreds):
    merged = 0
    for seed in range(100 * hundreds, 100 * hundreds + 100):
        problem = problem_of(workshop(random.Random(seed)))
        programme = build(problem)
        (status, worth), (naive_status, naive_worth) = best(programme.lp), best(naive_form(problem).lp)
        assert status == naive_status == "solved"
        assert worth == pytest.approx(naive_worth, rel=1e-6, abs=1e-6), seed
        merged += sum(1 for run in programme.runs if run.first < run.last)
    assert merged > 100


def test_plans_of_random_workshops_can_be_carried_out_as_they_stand():
    told_apart = 0
    for seed in range(300, 450):
        problem = problem_of(workshop(random.Random(seed)))
        plan = solve(problem, gap=0, prices=False)
        assert_true(problem, plan)
        told_apart += sum(len(done.made) for done in plan.scenarios)
    assert told_apart > 150


def test_plans_found_by_cuts_can_be_carried_out_too():
    tried = 0
    for seed in range(40):
        problem = problem_of(workshop(random.Random(seed)))
        if linear_recourse(problem) and any(offer.work_minutes for offer in problem.offers):
            plan = solve(problem, gap=1e-6, prices=False, way="two-phase")
            assert_true(problem, plan)
            tried += plan.is_order
    assert tried > 5
