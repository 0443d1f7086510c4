"""Fresh seasons in batches, the mean season, and a problem that knows all either knows."""

from dataclasses import replace

import pytest

from planner.projection import project
from planner.requirement import sizing_problem
from planner.season.assumptions import assumptions_of
from planner.season.scenarios import draw
from planner.sizing.reading import problem_of
from planner.sizing.writing import as_json
from planner.trial.seasons import fresh_seasons, mean_problem, mean_season, sizes_of, with_all_of
from tests.planner.operations import operation


@pytest.fixture(scope="module")
def planned():
    """An operation of two yards, its assumptions, six seasons and their problem."""
    whole = operation()
    few = replace(
        whole,
        colonies=tuple(group for group in whole.colonies if group.yard in ("alder", whole.yards[2].code)),
    )
    assumptions = assumptions_of({}, start=whole.day, region="north")
    scenarios = draw(few, assumptions, count=6, seed=1)
    projections = [project(few, assumptions, scenario) for scenario in scenarios]
    return few, assumptions, scenarios, sizing_problem(few, assumptions, projections, budget=None)


@pytest.mark.parametrize(
    ("count", "sizes"), [(300, [30] * 10), (23, [6, 6, 6, 5]), (10, [5, 5]), (3, [3]), (1000, [100] * 10)]
)
def test_seasons_come_in_batches_of_like_size(count, sizes):
    assert sizes_of(count) == sizes


def test_draws_are_put_together_whole_into_fewer_batches(planned):
    few, assumptions, _scenarios, problem = planned
    fresh = fresh_seasons(few, assumptions, problem, count=25, seed=99)
    assert [end - first for first, end in fresh.batches] == [5] * 5
    assert fresh.joined(2).batches == ((0, 10), (10, 25))
    assert fresh.joined(9) == fresh


def test_all_seasons_may_be_one_draw(planned):
    few, assumptions, _scenarios, problem = planned
    assert fresh_seasons(few, assumptions, problem, count=12, seed=99, batches=1).batches == ((0, 12),)


def test_fresh_seasons_are_those_asked_for_equally_likely_and_a_valid_problem(planned):
    few, assumptions, _scenarios, problem = planned
    fresh = fresh_seasons(few, assumptions, problem, count=12, seed=99)
    assert len(fresh.problem.scenarios) == 12
    assert fresh.batches == ((0, 6), (6, 12))
    assert sum(scenario.probability for scenario in fresh.problem.scenarios) == pytest.approx(1)
    assert problem_of(as_json(fresh.problem)) == fresh.problem  # nothing a reader would refuse
    assert [s.code for s in fresh.batch(1).scenarios] == [s.code for s in fresh.problem.scenarios[6:]]


def test_another_seed_draws_other_seasons_and_the_same_seed_the_same(planned):
    few, assumptions, _scenarios, problem = planned
    one, again, other = (
        fresh_seasons(few, assumptions, problem, count=5, seed=seed).problem.scenarios for seed in (9, 9, 10)
    )
    assert one == again
    assert one != other


def test_it_ends_after_a_whole_batch_where_that_is_enough(planned):
    few, assumptions, _scenarios, problem = planned
    fresh = fresh_seasons(few, assumptions, problem, count=20, seed=3, enough=lambda seasons: seasons >= 10)
    assert fresh.batches == ((0, 5), (5, 10))


def test_what_only_one_of_two_problems_knows_is_in_both(planned):
    _few, _assumptions, _scenarios, problem = planned
    lost = next(offer for offer in problem.offers if offer.when == "now")
    part = next(iter(lost.parts))
    fewer = replace(
        problem,
        offers=tuple(offer for offer in problem.offers if offer is not lost),
        parts=tuple(each for each in problem.parts if each.code != part),
        stock=tuple(stock for stock in problem.stock if stock.part != part),
    )
    joined = with_all_of(fewer, problem)
    assert {offer.code for offer in joined.offers} == {offer.code for offer in problem.offers}
    assert {each.code for each in joined.parts} == {each.code for each in problem.parts}
    assert sorted(joined.stock, key=str) == sorted(problem.stock, key=str)


def test_an_offer_of_the_season_may_be_had_in_the_weeks_of_either(planned):
    _few, _assumptions, _scenarios, problem = planned
    later = next(offer for offer in problem.offers if offer.when == "later")
    moved = replace(later, order_periods=(51,))
    other = replace(problem, offers=tuple(moved if o is later else o for o in problem.offers))
    joined = next(o for o in with_all_of(problem, other).offers if o.code == later.code)
    assert set(joined.order_periods) == {*later.order_periods, 51}


def test_the_mean_season_is_the_mean_of_each_figure_counts_rounded(planned):
    scenarios = planned[2]
    mean = mean_season(scenarios)
    assert mean.probability == 1
    assert mean.year_flow == pytest.approx(sum(s.year_flow for s in scenarios) / 6)
    for group, alive in mean.survivors.items():
        assert abs(alive - sum(s.survivors[group] for s in scenarios) / 6) <= 0.5 + 1e-9


def test_the_mean_of_one_season_is_that_season(planned):
    one = replace(planned[2][0], probability=1.0)
    assert mean_season([one]) == replace(one, code="mean")


def test_the_mean_problem_has_that_one_season_and_the_same_prices(planned):
    few, assumptions, scenarios, problem = planned
    mean = mean_problem(few, assumptions, problem, scenarios)
    assert [s.code for s in mean.scenarios] == ["mean"]
    assert {o.code for o in mean.offers} >= {o.code for o in problem.offers}
