"""Solves a sizing problem in this process: programme, solver, whole numbers, money afresh, prices.

Takes a Problem and settings; gives a Plan, also where there is none (its status and reason say so). Writes nothing.
"""

import numpy as np

from planner.programme import build
from planner.solution import cbc, highs
from planner.solution.acts import acts_of
from planner.solution.clock import Clock
from planner.solution.contradiction import contradiction
from planner.solution.machines import money_machines
from planner.solution.plans import no_plan, plan_from
from planner.solution.prices import shadow_prices
from planner.solution.records import INFEASIBLE, TIME_LIMIT, UNBOUNDED
from planner.solution.two_phase import CannotCut, NoOrder, judged, solve_in_two_phases, suits, takes
from planner.solution.warm import NoRecourse

SOLVERS = ("highs", "cbc")
WAYS = ("auto", "direct", "two-phase")
MANY_SCENARIOS = 8
FINE_GAP = 1e-5
IDLE_SECONDS = 20.0


def solve(
    problem, *, solver="highs", gap=0.001, seconds=60.0, packs=None, prices=True, progress=None, way="auto"
):
    """The plan. `packs` {(offer, period): packs} fixes the here-and-now order; progress(stage, bound, gap) is told;
    `way` is direct (one programme), two-phase (cuts, for many scenarios) or auto, which chooses."""
    if solver not in SOLVERS:
        raise ValueError(f"solver must be one of {', '.join(SOLVERS)}, got {solver!r}")
    if way not in WAYS:
        raise ValueError(f"way must be one of {', '.join(WAYS)}, got {way!r}")
    clock = Clock(seconds)
    tell = progress or (lambda stage, bound, gap: None)
    tell("building", None, None)
    machines = money_machines(problem, bounded=False) if packs is None else []
    if machines:
        return _no_order(problem, packs, machines, clock, solver)
    settings = {"solver": solver, "gap": gap, "clock": clock, "packs": packs, "prices": prices, "tell": tell}
    if _in_two_phases(problem, packs, way, solver, gap):
        try:
            if packs is not None:
                return judged(problem, packs, gap=gap, clock=clock, prices=prices)
            plan = solve_in_two_phases(problem, gap=gap, clock=clock, tell=tell, prices=prices)
            if plan.status != TIME_LIMIT or clock.is_over():
                return plan
            return _better(plan, _solve_directly(problem, **settings))
        except (NoOrder, NoRecourse):
            return _no_order(problem, packs, [], clock, solver)
        except CannotCut:
            tell("building", None, None)
    return _solve_directly(problem, **settings)


def _better(plan, other):
    """The better of two plans of one problem: cuts that came to a halt, and the same in one piece."""
    if not other.is_order or (plan.is_order and plan.objective > other.objective):
        return plan
    return other


def by_cuts(problem, gap):
    """Whether cuts are the quick way: possible, many scenarios and a gap cuts reach quickly."""
    return suits(problem) and len(problem.scenarios) >= MANY_SCENARIOS and gap >= FINE_GAP


def _in_two_phases(problem, packs, way, solver, gap):
    """Whether cuts are the way: asked for and possible, or quick."""
    if way == "direct" or solver != "highs" or not suits(problem):
        return False
    if packs is not None:
        return takes(problem, packs) and (way == "two-phase" or len(problem.scenarios) > 1)
    return way == "two-phase" or by_cuts(problem, gap)


def _solve_directly(problem, *, solver, gap, clock, packs, prices, tell):
    programme = build(problem, packs=packs)
    matrix = highs.matrix_of(programme.lp)
    tell("solving", None, None)
    answer = _solve(programme, matrix, solver, gap, clock, tell)
    if answer.status in (highs.INFEASIBLE, highs.UNBOUNDED):
        machines = money_machines(problem, bounded=True) if answer.status == highs.UNBOUNDED else []
        return _no_order(problem, packs, machines, clock, solver)
    if answer.values is None and packs is None:
        answer = _nothing_ordered(matrix, answer, clock)
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


def _nothing_ordered(matrix, answer, clock):
    """Out of time without an order: every whole column at nothing, the rest at its best, is one where it can be."""
    nothing = np.zeros(len(matrix.columns))
    found = highs.solve(matrix, seconds=clock.left(least=IDLE_SECONDS), fixed=nothing)
    if found.status != highs.SOLVED:
        return answer
    return highs.Answer(
        status=highs.STOPPED, values=found.values, objective=found.objective, bound=answer.bound
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
