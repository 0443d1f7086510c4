"""The judge: a pooled order on fresh scenarios, in both forms."""

from decimal import Decimal

import pytest

from planner.bench.instances import REGION
from planner.season.assumptions import assumptions_of
from planner.solution import solve
from planner.yardform import judge
from planner.yardform.judge import NotJudged, worth_of, worths_of
from tests.planner.small_problems import small_problem, years

BUDGET = Decimal(660)


@pytest.fixture
def season(small_operation):
    operation = small_operation()
    return operation, assumptions_of({}, start=operation.day, region=REGION)


def test_both_forms_tell_about_the_same_worth_on_the_same_fresh_scenarios(season, small_season):
    packs = solve(small_season(), prices=False, gap=0.01).packs()
    judged = judge(*season, packs, budget=BUDGET, count=12, seed=77)
    assert judged.scenarios == 12
    assert judged.gap == pytest.approx(
        (judged.pooled - judged.by_yard) / max(1.0, abs(judged.by_yard)), rel=1e-9
    )
    assert abs(judged.gap) < 0.05


def test_the_same_seed_judges_the_same_and_another_seed_otherwise(season, small_season):
    packs = solve(small_season(), prices=False, gap=0.01).packs()
    judgements = [judge(*season, packs, budget=BUDGET, count=6, seed=seed) for seed in (5, 5, 6)]
    assert judgements[0] == judgements[1] != judgements[2]


def test_a_worth_is_the_expectation_over_scenarios_less_what_was_paid():
    problem = small_problem(scenarios=years((0.25, 2), (0.75, 8)))
    assert worth_of(problem, {("boxes", 0): 4}) == pytest.approx(0.25 * 2 * 25 + 0.75 * 4 * 25 - 40)


def test_time_that_ends_after_a_block_leaves_the_judgement_of_the_seasons_so_far(season, small_season):
    packs = solve(small_season(), prices=False, gap=0.01).packs()
    judged = judge(*season, packs, budget=BUDGET, count=24, seed=77, enough=lambda seasons: seasons >= 10)
    assert judged.scenarios == 10


def test_without_any_time_nothing_is_judged(season):
    with pytest.raises(NotJudged, match="the time allowed ran out"):
        judge(*season, {}, budget=BUDGET, count=6, enough=lambda _seasons: True)


def test_time_that_ends_while_the_seasons_are_drawn_leaves_nothing_judged(season):
    asked = iter((False, True))
    with pytest.raises(NotJudged, match="the time allowed ran out"):
        judge(*season, {}, budget=BUDGET, count=2, enough=lambda _seasons: next(asked))


def test_work_may_be_stopped_between_blocks(season):
    def stop():
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        judge(*season, {}, budget=BUDGET, count=6, breathe=stop)


def test_an_order_under_which_a_must_stays_undone_is_not_judged():
    must = small_problem(use={"must": True})
    with pytest.raises(NotJudged, match="leaves undone what must be done"):
        worths_of(must, {})


def test_an_order_of_what_no_season_asks_for_is_refused_by_name():
    with pytest.raises(NotJudged, match="asks for what is ordered as anvils"):
        worth_of(small_problem(), {("anvils", 0): 1})
