"""Solves a sizing problem in this process: programme, solver, whole numbers, money afresh, prices.

Takes a Problem and settings; gives a Plan, also where there is none (its status and reason say so). Writes nothing.
"""

import time

import numpy as np

from planner.programme import build
from planner.solution import cbc, highs
from planner.solution.acts import acts_of
from planner.solution.contradiction import contradiction
from planner.solution.machines import money_machines
from planner.solution.plans import no_plan, plan_from
from planner.solution.prices import shadow_prices
from planner.solution.records import INFEASIBLE, TIME_LIMIT, UNBOUNDED

SOLVERS = ("highs", "cbc")


def solve(problem, *, solver="highs", gap=0.001, seconds=60.0, packs=None, prices=True, progress=None):
    """The plan. `packs` {(offer, period): packs} fixes the here-and-now order; progress(stage, bound, gap) is told."""
    if solver not in SOLVERS:
        raise ValueError(f"solver must be one of {', '.join(SOLVERS)}, got {solver!r}")
    clock = _Clock(seconds)
    tell = progress or (lambda stage, bound, gap: None)
    tell("building", None, None)
    machines = money_machines(problem, bounded=False) if packs is None else []
    if machines:
        return _no_order(problem, packs, machines, clock, solver)
    programme = build(problem, packs=packs)
    matrix = highs.matrix_of(programme.lp)
    tell("solving", None, None)
    answer = _solve(programme, matrix, solver, gap, clock, tell)
    if answer.status in (highs.INFEASIBLE, highs.UNBOUNDED):
        machines = money_machines(problem, bounded=True) if answer.status == highs.UNBOUNDED else []
        return _no_order(problem, packs, machines, clock, solver)
    if answer.values is None:
        reason = "no order was found within the time limit; allow more seconds"
        return no_plan(TIME_LIMIT, reason, clock.spent(), solver, bound=answer.bound)
    tell("pricing", answer.bound, None)
    values, priced, fixed = _hold_whole(matrix, answer, clock, wanted=prices)
    acts = acts_of(programme, dict(zip(matrix.columns, values.tolist(), strict=True)))
    found = (None, "not asked for")
    if prices:
        found = shadow_prices(programme, matrix, priced, fixed)
    return plan_from(
        problem, acts, bound=answer.bound, gap=gap, seconds=clock.spent(), solver=solver, prices=found
    )


class _Clock:
    """Seconds spent and left."""

    def __init__(self, seconds):
        self.began, self.seconds = time.monotonic(), seconds

    def spent(self):
        return time.monotonic() - self.began

    def left(self, least=1.0):
        return max(self.seconds - self.spent(), least)


def _solve(programme, matrix, solver, gap, clock, tell):
    if solver == "highs":
        return highs.solve(matrix, gap=gap, seconds=clock.left(), progress=tell)
    if not matrix.whole.any():
        return cbc.solve(programme.lp, matrix, seconds=clock.left())
    loose = cbc.solve(programme.lp, matrix, seconds=clock.left(), relaxed=True)
    if loose.status in (highs.INFEASIBLE, highs.UNBOUNDED):
        return loose
    answer = cbc.solve(programme.lp, matrix, gap=gap, seconds=clock.left())
    bounds = [bound for bound in (loose.bound, answer.bound) if bound is not None]
    if answer.status in (highs.INFEASIBLE, highs.UNBOUNDED) or not bounds:
        return answer
    return highs.Answer(
        status=answer.status, values=answer.values, objective=answer.objective, bound=min(bounds)
    )


def _hold_whole(matrix, answer, clock, *, wanted):
    """Values with whole columns rounded and the rest solved again: (values, the priced answer, what was held)."""
    if not matrix.whole.any() and answer.row_prices is not None:
        return answer.values, answer, None
    rounded = np.where(matrix.whole, np.round(answer.values), answer.values)
    exact = np.abs(rounded - answer.values).max(initial=0.0) < 1e-12
    if exact and not wanted and answer.objective is not None and matrix.whole.any():
        return answer.values, None, None
    again = highs.solve(matrix, seconds=clock.left(least=20.0), fixed=rounded)
    if again.status != highs.SOLVED:
        return answer.values, None, None
    return again.values, again, rounded


def _no_order(problem, packs, machines, clock, solver):
    """Why there is no order: a contradiction first, else a money machine."""
    reason = contradiction(problem, packs=packs)
    if reason is not None:
        return no_plan(INFEASIBLE, reason, clock.spent(), solver)
    reason = "; ".join(machines) or "some offer, recipe or haul makes money without end"
    return no_plan(UNBOUNDED, reason, clock.spent(), solver)
