"""The statistical gap from batches: the limit's formula, a solve that stopped early, too few batches."""

import math
from dataclasses import replace

import pytest
from scipy import stats

from planner.sizing.records import BadYears
from planner.solution import solve
from planner.solution.plans import no_plan
from planner.trial.judging import Judge
from planner.trial.replications import Batch, StatisticalGap, limit_of, statistical_gap
from planner.trial.seasons import Fresh
from tests.planner.plan import small


@pytest.fixture(scope="module")
def fresh():
    """Two batches of two of the small problem's seasons."""
    return Fresh(problem=small.problem(), batches=((0, 2), (2, 4)))


def with_nothing_bought(fresh):
    worths = Judge(fresh.problem).worths({})
    return [
        Batch(problem=fresh.batch(number), worths=worths[first:end])
        for number, (first, end) in enumerate(fresh.batches)
    ]


def test_the_limit_is_the_mean_and_students_t_times_its_error():
    mean, most = limit_of([2.0, 4.0, 9.0])
    assert mean == 5
    assert most == pytest.approx(5 + stats.t.ppf(0.95, 2) * stats.sem([2.0, 4.0, 9.0]))


def test_of_one_batch_no_limit_is_known():
    assert limit_of([3.0]) == (3.0, math.inf)


def test_each_batch_is_solved_for_itself_and_the_order_judged_on_it(fresh):
    found = statistical_gap(with_nothing_bought(fresh), solve=solve)
    by_hand = []
    for number in (0, 1):
        batch = fresh.batch(number)
        nothing = solve(batch, packs={}).objective
        by_hand.append(solve(batch).bound - nothing)
    assert (found.mean, found.most) == pytest.approx(limit_of(by_hand))
    assert (found.batches, found.seasons) == (2, 2)
    assert found.mean > 0


def test_the_weight_on_bad_years_counts_in_the_gap_too(fresh):
    weighed = replace(fresh, problem=replace(fresh.problem, bad_years=BadYears(weight=0.5, share=0.5)))
    found = statistical_gap(with_nothing_bought(weighed), solve=solve)
    by_hand = [solve(weighed.batch(n)).bound - solve(weighed.batch(n), packs={}).objective for n in (0, 1)]
    assert found.mean == pytest.approx(sum(by_hand) / 2)


def test_a_solve_that_stopped_early_makes_the_gap_larger_never_smaller(fresh):
    batches = with_nothing_bought(fresh)

    def stopped(batch, **settings):
        plan = solve(batch, **settings)
        return replace(plan, bound=plan.bound + 100)

    sure = statistical_gap(batches, solve=solve)
    assert statistical_gap(batches, solve=stopped).mean == pytest.approx(sure.mean + 100)


def test_without_two_batches_there_is_no_gap_to_tell(fresh):
    batches = with_nothing_bought(fresh)
    assert statistical_gap(batches, solve=solve, enough=lambda batches: batches >= 1) is None
    assert statistical_gap(batches[:1], solve=solve) is None
    assert (
        statistical_gap(batches, solve=lambda batch, **settings: no_plan("time_limit", "", 1, "highs"))
        is None
    )


def test_the_gap_as_a_share_of_a_worth():
    gap = StatisticalGap(mean=10, most=20, batches=5, seasons=30)
    assert gap.share_of(4000) == 0.005
