"""The study of what lies next door to an order: what it tells, and what it cannot."""

from dataclasses import replace

import pytest

from planner.solution import solve
from planner.solution.nearby import study, studying
from tests.planner.small_problems import small_problem

FEE = {"order_fee": 7}


def test_one_more_and_one_fewer_of_four_boxes_are_told_in_money():
    problem = small_problem(supplier=FEE, budget=50)
    plan = solve(problem, gap=0)
    more, fewer = study(problem, plan).moves
    assert (more.offer, more.period, more.packs, more.step) == ("boxes", 0, 4, 1)
    assert (more.cost_change, more.worth_change, more.over_budget) == (10, -10, 7)
    assert (fewer.step, fewer.cost_change, fewer.worth_change, fewer.over_budget) == (-1, -10, -15, 0)


def test_the_curve_rises_to_the_order_that_serves_every_use():
    problem = small_problem(supplier=FEE, budget=27)
    found = study(problem, solve(problem, gap=0), more=10, less=10)
    assert len(found.points) == 12
    objectives = [point.objective for point in found.points]
    assert objectives == sorted(objectives)
    assert found.points[-1].objective == pytest.approx(53)
    assert all(point.spend <= point.budget + 1e-6 for point in found.points)
    assert all(point.objective <= point.bound + 1e-9 for point in found.points)
    assert (found.next_budget, found.next_earns) == (10, 15)
    assert (found.less.budget, found.less.lost) == (17, 15)
    assert found.less.changes == (("boxes", 0, 2, 1),)


def test_without_a_budget_there_is_still_a_curve_and_less_is_measured_from_the_spend():
    problem = small_problem()
    found = study(problem, solve(problem, gap=0), less=10)
    assert (found.next_budget, found.next_earns, found.budget_price) == (None, None, None)
    assert (found.less.budget, found.less.lost) == (30, 15)
    assert found.points[0].budget == 0
    assert found.points[-1].objective == pytest.approx(60)


def test_a_budget_left_out_is_said_whatever_else_is_told_beside_it(monkeypatch):
    """Points beside the order must not count for one the curve lacks; one too small for every must-use is not lacking."""
    problem = small_problem(use={"must": True}, budget=50)
    plan, settings = solve(problem, gap=0), {"budgets": [10, 50, 70], "more": 10, "less": 5}
    assert study(problem, plan, **settings).not_told == ""
    whole = studying.curve

    def hurried(*given, **asked):
        points, shown = whole(*given, **asked)
        return {money: point for money, point in points.items() if money < 70}, shown

    monkeypatch.setattr(studying, "curve", hurried)
    assert study(problem, plan, **settings).not_told == studying.OUT_OF_TIME


def test_points_only_carried_forward_are_bettered_by_the_moves_marked_and_said(monkeypatch):
    """As if the search had left every budget open: nothing found of its own, bounds far above."""
    problem = small_problem(supplier=FEE, budget=50)
    plan, whole = solve(problem, gap=0), studying.curve

    def hurried(*given, **asked):
        points, shown = whole(*given, **asked)
        none = {"objective": 0.0, "spend": 0.0, "packs": {}, "settled": False}
        return {
            money: replace(point, bound=90, **none) if money < 47 else point
            for money, point in points.items()
        }, shown

    whole_study = study(problem, plan, less=40)
    assert whole_study.not_told == "" and None not in (whole_study.knee, whole_study.less)
    monkeypatch.setattr(studying, "curve", hurried)
    found = study(problem, plan, less=40)
    assert found.not_told == studying.UNSETTLED
    carried = [point for point in found.points if point.budget < 47]
    assert carried and not any(point.settled for point in carried)
    assert [point.objective for point in carried] == sorted(point.objective for point in carried)
    assert carried[-1].objective > 0
    assert any(point.poor for point in carried) and (found.knee, found.less) == (None, None)
