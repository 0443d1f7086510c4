"""The bad-years curve of a small problem against every order there is; monotone; what time leaves out."""

import itertools

import pytest

from planner.sizing.records import BadYears
from planner.solution import solve
from planner.trial.bad_years import CurveEffort, bad_years_curve
from planner.trial.judging import Judge, value_of
from planner.trial.statistics import worst_mean
from tests.planner.small_problems import small_problem, years

CHANCES = (0.4, 0.3, 0.2, 0.1)


@pytest.fixture(scope="module")
def problem():
    """Boxes wanted by few or many; those left over are worth little, so bad years want fewer."""
    wanted = tuple(zip(CHANCES, (9, 6, 3, 0), strict=True))
    return small_problem(
        scenarios=years(*wanted), part={"end_value": 3}, bad_years={"weight": 0.4, "share": 0.3}
    )


def curve(problem, **effort):
    plan = solve(problem, gap=0.0)
    return bad_years_curve(problem, plan, effort=CurveEffort(gap=0.0, solve=solve, **effort))


def test_each_point_is_the_best_of_every_order_there_is(problem):
    judge = Judge(problem)
    orders = {count: judge.worths({("boxes", 0): count}) for count in range(11)}
    for point in curve(problem).points:
        wanted = BadYears(weight=point.weight, share=0.3)
        best = max(value_of(worths, wanted, CHANCES) for worths in orders.values())
        ours = (1 - point.weight) * float(point.mean) + point.weight * float(point.bad_years)
        assert ours == pytest.approx(best, abs=0.01)


def test_along_the_curve_the_mean_never_rises_and_bad_years_never_fall(problem):
    points = curve(problem).points
    assert [point.weight for point in points] == [0, 0.2, 0.4, 0.6, 0.8, 0.95]
    for before, after in itertools.pairwise(points):
        assert after.mean <= before.mean and after.bad_years >= before.bad_years
    assert points[-1].bad_years > points[0].bad_years  # there is something to choose


def test_the_weight_planned_with_is_marked(problem):
    assert [point.weight for point in curve(problem).points if point.chosen] == [0.4]


def test_a_season_tells_what_bad_years_gain_and_the_mean_loses(problem):
    section = curve(problem)
    gained = section.points[-1].bad_years - section.points[0].bad_years
    assert f"${gained:,.0f}" in section.sentences[0] and "mean season" in section.sentences[0]
    assert "weighs them 40" in section.sentences[1]


def test_where_nothing_helps_bad_years_it_says_so():
    always = small_problem(scenarios=years((0.5, 4), (0.5, 4)))
    assert "buys nothing here" in curve(always).sentences[0]
    assert "gives bad years no weight" in curve(always).sentences[1]


def test_without_time_for_two_weights_there_is_no_curve(problem):
    assert curve(problem, left=lambda: 1.0) is None


def test_weights_that_time_did_not_allow_are_counted(problem):
    left = iter([60.0, 60.0, 0.0, 0.0, 0.0, 0.0])
    section = curve(problem, left=lambda: next(left))
    assert len(section.points) == 3
    assert section.sentences[-1] == "3 weights could not be tried in the time allowed."


def test_the_mean_of_the_worst_share_is_by_chance():
    assert worst_mean([9.0, 1.0], 0.3, CHANCES[:0] or [0.8, 0.2]) == pytest.approx((0.2 * 1 + 0.1 * 9) / 0.3)
