"""One end weighed: figures that agree with a plain solve, nothing where nothing is touched, a reason where it fails."""

from dataclasses import replace

import pytest

from planner.beliefs.ends import problem_at
from planner.checking.check import task_of
from planner.checking.task import ends_of, weighed
from planner.solution import solve
from tests.planner.checking.small import GAP, doubts


def task(planned, *keys):
    whole, told, problem, plan = planned
    return task_of(whole, told, problem, plan, seed=1, gap=GAP, doubts=doubts(*keys))


def test_both_ends_of_a_doubt_stand_together(planned):
    whole, told, _problem, _plan = planned
    ends = ends_of(doubts("survival_share", "honey_price"), whole, told)
    assert [(doubt.key, other.side) for doubt, other in ends] == [
        ("survival_share", "low"),
        ("survival_share", "high"),
        ("honey_price", "low"),
        ("honey_price", "high"),
    ]


def test_the_order_as_it_stands_is_judged_as_a_plain_solve_judges_it(planned):
    asked = task(planned, "survival_share")
    found = weighed(asked, 0)
    problem = problem_at(asked.ends[0][1].beliefs, asked.problem, seed=1)
    held = solve(problem, packs=planned[3].packs(), prices=False)
    assert found["held"] == pytest.approx(held.objective, rel=1e-3)
    assert found["held"] <= found["best"] <= found["bound"]
    packs = {(offer, period): count for offer, period, count in found["packs"]}
    best = solve(problem, packs=packs, prices=False)
    assert found["best"] == pytest.approx(best.objective, rel=1e-3)
    assert found["spend"] == pytest.approx(best.spend)


def test_an_answer_that_touches_nothing_is_not_solved(planned):
    asked = task(planned, "honey_price")
    doubt, other = asked.ends[0]
    beliefs = replace(other.beliefs, assumptions=planned[1])
    assert weighed(replace(asked, ends=((doubt, replace(other, beliefs=beliefs)),)), 0) == {"same": True}


def test_an_order_past_the_budget_is_judged_as_it_stands(planned):
    asked = task(planned, "honey_price")
    poor = replace(asked, problem=replace(asked.problem, budget=10.0))
    found = weighed(poor, 0)
    assert "why" in found or found["best"] >= found["held"]
