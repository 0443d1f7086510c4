"""The trial of a small invented operation: everyone on the same seasons, and what short time leaves out."""

from dataclasses import replace
from functools import partial

import pytest

from planner.projection import project
from planner.requirement import sizing_problem
from planner.season.assumptions import assumptions_of
from planner.season.scenarios import draw
from planner.solution import solve
from planner.trial.contest import Effort, Pace, compared, trial_of
from planner.trial.records import Contender
from planner.trial.statistics import mean_of
from tests.planner.operations import operation

QUICK = partial(Effort, count=20, seed=1, gap=0.01, seconds=60.0, solve=solve, batches=2)


@pytest.fixture(scope="module")
def planned():
    whole = operation()
    few = replace(whole, colonies=tuple(group for group in whole.colonies if group.yard == "alder"))
    assumptions = assumptions_of({}, start=whole.day, region="north")
    scenarios = draw(few, assumptions, count=4, seed=1)
    projections = [project(few, assumptions, scenario) for scenario in scenarios]
    problem = sizing_problem(few, assumptions, projections, budget=1500)
    return few, assumptions, scenarios, problem, solve(problem, gap=0.01, prices=False)


def tried(planned, **effort):
    few, assumptions, scenarios, problem, plan = planned
    return trial_of(
        few,
        assumptions,
        problem,
        plan.packs(),
        scenarios=scenarios,
        usual={("ok-medium-5", 0): 3},
        effort=QUICK(**effort),
    )


@pytest.fixture(scope="module")
def trial(planned):
    return tried(planned)


def test_every_order_meets_the_same_seasons(trial):
    keys = [each.key for each in trial.contenders]
    assert keys == ["ours", "yours", "rule", "mean", "nothing"]
    assert {len(each.worths) for each in trial.contenders} == {20}
    assert trial.left_out == ()


def test_spends_are_the_orders_bills(trial, planned):
    assert trial.ours.spend == pytest.approx(planned[4].spend)
    assert trial.contender("nothing").spend == 0
    assert all(each.spend <= 1500 + 1e-6 for each in trial.contenders)


def test_knowing_the_future_is_worth_at_least_as_much_as_any_order_in_every_season(trial):
    for each in trial.contenders:
        for bound, worth in zip(trial.foresight.worths, each.worths, strict=True):
            assert bound >= worth - 1e-6 * abs(worth)


def test_no_order_beats_this_one_by_more_than_the_statistical_gap_allows(trial):
    """The limit holds 19 times of 20 of the best order there could be, so of these."""
    for each in trial.contenders[1:]:
        assert each.over(trial.ours).low <= trial.gap.most


def test_another_seed_gives_an_order_set_beside_this_one(trial):
    other = trial.other_seed
    assert 0 <= other.changed <= other.lines
    assert other.spend_more == pytest.approx(other.order.spend - trial.ours.spend)
    assert other.worth_more.count == 20


def test_what_time_does_not_allow_is_left_out_and_named(planned):
    hurried = tried(planned, left=lambda: -1.0)
    assert set(hurried.left_out) == {"other", "gap"}
    assert (hurried.foresight, hurried.other_seed, hurried.gap) == (None, None, None)
    assert hurried.ours.worths == tried(planned, left=lambda: -1.0).ours.worths


def test_seasons_are_cut_short_by_whole_batches(planned):
    hurried = tried(planned, count=100, left=lambda: 30.0)
    assert (hurried.seasons, hurried.asked) == (30, 100)


def test_the_stages_are_told(planned):
    told = []
    tried(planned, tell=lambda stage, bound=None, gap=None: told.append(stage))
    assert list(dict.fromkeys(told))[:2] == ["drawing fresh seasons", "trying the order on fresh seasons"]
    assert all(len(stage) <= 40 for stage in told)


def test_orders_are_compared_pack_by_pack():
    ours = Contender(key="ours", packs={("a", 0): 3, ("b", 0): 1}, spend=40.0, worths=(100.0, 90.0))
    other = Contender(key="other", packs={("a", 0): 5, ("c", 0): 2}, spend=55.0, worths=(101.0, 93.0))
    found = compared(other, ours)
    assert (found.lines, found.changed, found.packs, found.spend_more) == (3, 3, 5, 15.0)
    assert found.worth_more == mean_of([1.0, 3.0])


def test_batches_of_their_own_are_drawn_for_the_gap_alone(trial, planned):
    own = tried(planned, batch_seasons=6, batches=3, other_seed=False)
    assert (own.gap.batches, own.gap.seasons) == (3, 6)
    assert own.seasons == 20
    assert own.ours.worths == trial.ours.worths


def test_a_batch_that_would_not_fit_in_the_time_left_is_not_begun():
    """Two are always tried, each of ten seconds; with eight left a third is not."""
    clock = {"left": 28.0}
    pace = Pace(Effort(seconds=60.0, left=lambda: clock["left"]))
    assert pace.share() == 0.5
    clock["left"] = 18.0
    assert not pace.enough(1)
    assert pace.share() == 1.0
    clock["left"] = 8.0
    assert pace.enough(2)


def test_without_an_end_batches_go_on():
    pace = Pace(Effort())
    assert not any(pace.enough(batches) for batches in range(1, 20))
