"""Measurements next door to a solved order: a pack more or fewer of every line, and the curve over budgets.

Takes an Instance; gives plain numbers. The curve's seconds cover all it builds; the cold one solves each budget anew.
"""

from contextlib import ExitStack
from dataclasses import replace
from functools import partial

from apiary.bench.measuring import timed
from planner.solution import solve
from planner.solution.clock import Clock
from planner.solution.nearby.companion import Companion
from planner.solution.nearby.halves import Halves, pays
from planner.solution.nearby.judging import Judge
from planner.solution.nearby.moves import moves
from planner.solution.threads import keep_to_one_thread
from planner.solution.warm import WarmScenarios

BUDGETS = 12
PLAN_GAP = 0.005
UP_TO = 1.5  # of the problem's own budget


def budgets_of(problem):
    """Twelve even budgets up to half again the problem's own."""
    return [UP_TO * problem.budget * (at + 1) / BUDGETS for at in range(BUDGETS)]


def pack_by_pack(*, instance, seconds):
    """Seconds of all moves with the scenarios at hand, and of building those."""
    problem = instance.problem()
    plan = solve(problem, gap=PLAN_GAP, seconds=seconds, prices=False)
    if not plan.is_order:
        return {"seconds": 0.0, "building": 0.0, "moves": 0, "done": False}
    judge, building = timed(lambda: Judge(problem))
    found, spent = timed(lambda: moves(problem, plan.packs(), partial(judge.worths, clock=Clock(seconds))))
    lines = len(plan.here_and_now)
    return {"seconds": spent, "building": building, "moves": len(found), "done": len(found) == 2 * lines}


def curve_by_one_master(*, instance, seconds, gap):
    """Twelve budgets by shared cuts: seconds, and whether each is proven."""
    problem = instance.problem()
    keep_to_one_thread()
    found, spent = timed(lambda: _curve(problem, gap, seconds))
    proven = [_is_proven(best.objective, best.bound, gap) for best in found.values()]
    return {"seconds": spent, "done": all(proven) and len(proven) == BUDGETS}


def _curve(problem, gap, seconds):
    settings = {"gap": gap, "clock": Clock(seconds), "tell": lambda stage, bound, gap: None}
    with ExitStack() as ending:
        companion = ending.enter_context(Companion(problem)) if pays(problem) else None
        halves = Halves(problem, WarmScenarios(problem), companion=companion, **settings)
        return halves.points(budgets_of(problem), ())[0]


def curve_by_cold_solves(*, instance, seconds, gap):
    """The same twelve budgets, each solved as if nothing were known; stopped where time is up."""
    problem, clock = instance.problem(), Clock(seconds)
    done = True
    for budget in budgets_of(problem):
        plan = solve(replace(problem, budget=budget), gap=gap, seconds=clock.left(), prices=False)
        done = done and _is_proven(plan.objective, plan.bound, gap)
        if clock.is_over():
            return {"seconds": clock.spent(), "done": False}
    return {"seconds": clock.spent(), "done": done}


def _is_proven(objective, bound, gap):
    if objective is None or bound is None:
        return False
    return bound - objective <= gap * max(1.0, abs(objective)) + 1e-6
