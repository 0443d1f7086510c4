"""The whole study of what lies next door to a solved order, in this process.

Takes a Problem and its Plan; gives a Nearby: moves first, then the curve, its knee and what a little more or less
money would do. What time does not allow is left out, and said.
"""

from contextlib import ExitStack
from functools import partial

from planner.solution.clock import Clock
from planner.solution.nearby.companion import Companion
from planner.solution.nearby.curve import curve
from planner.solution.nearby.halves import pays
from planner.solution.nearby.hasty import bettered
from planner.solution.nearby.judging import Judge
from planner.solution.nearby.knee import knee_of
from planner.solution.nearby.moves import moves
from planner.solution.nearby.records import LessMoney, Nearby
from planner.solution.nearby.settling import marked
from planner.solution.solving import by_cuts

WITHIN = 0.8  # of the seconds allowed: what is begun then still ends in time
HASTY = 0.99  # of them: orders built without a search end then
OUT_OF_TIME = "Time ran out: not all of what lies next to this order is told. Allow more seconds."
UNSETTLED = "Time ran out: at some budgets a better order may be had than the one told. Allow more seconds."


def study(problem, plan, *, budgets=None, more=100.0, less=300.0, gap=0.001, seconds=60.0, progress=None):
    """What lies next door to `plan`; `budgets` are chosen where none are given; progress(stage, bound, gap) is told."""
    clock, last = Clock(WITHIN * seconds), Clock(HASTY * seconds)
    tell = progress or (lambda stage, bound, gap: None)
    if not plan.is_order:
        return nothing(clock.spent(), "There is no order, so nothing lies next to it.")
    with ExitStack() as ending:
        companion = (
            ending.enter_context(Companion(problem)) if by_cuts(problem, gap) and pays(problem) else None
        )
        settings = {"budgets": budgets, "more": more, "less": less, "gap": gap, "clock": clock, "tell": tell}
        return _study(problem, plan, companion, last, **settings)


def _study(problem, plan, companion, last, *, budgets, more, less, gap, clock, tell):
    tell("one pack more or fewer", None, None)
    judge = Judge(problem)
    moved = moves(problem, plan.packs(), partial(judge.worths, clock=clock))
    tell("other budgets", None, None)
    settings = {"budgets": budgets, "more": more, "less": less, "gap": gap, "clock": clock, "tell": tell}
    points, shown = curve(problem, plan, judge.warm, companion=companion, **settings)
    mark = partial(marked, gap=gap, shown=shown, own=problem.budget)
    worth = partial(judge.worth, clock=last)
    points = mark(bettered(problem, plan.packs(), moved, mark(points), worth, last))
    after = () if problem.budget is None else (problem.budget + more,)
    missing = len(moved) < 2 * len(plan.here_and_now) or _lacks(points, (*shown, *after))
    return Nearby(
        moves=moved,
        points=tuple(points[money] for money in shown if money in points),
        **_told(problem, plan, points, shown, more, less),
        budget_price=plan.shadow_prices.budget if plan.shadow_prices else None,
        seconds=round(clock.spent(), 3),
        not_told=OUT_OF_TIME if missing else UNSETTLED if _open(points) else "",
    )


def _lacks(points, wanted):
    """Whether a budget has no point that should: those too small for every must-use are below all that have one."""
    least = min(points, default=0.0)
    return any(money not in points and money >= least for money in wanted)


def _open(points):
    return any(not point.settled for point in points.values())


def nothing(seconds, why):
    """A study that tells only why there is none."""
    return Nearby(
        moves=(),
        points=(),
        knee=None,
        next_budget=None,
        next_earns=None,
        less=None,
        budget_price=None,
        seconds=round(seconds, 3),
        not_told=why,
    )


def _told(problem, plan, points, shown, more, less):
    """The knee, what so much more earns and so much less loses, as far as the points tell."""
    own, curve = problem.budget, [points[money] for money in shown if money in points]
    here = points[own].objective if own in points else plan.objective
    after = points.get(None if own is None else own + more)
    poor = any(point.poor for point in curve)
    return {
        "knee": None
        if poor
        else knee_of([point.budget for point in curve], [point.objective for point in curve]),
        "next_budget": None if after is None else more,
        "next_earns": None if after is None else after.objective - here,
        "less": _less(plan, points.get((plan.spend if own is None else own) - less), here),
    }


def _less(plan, point, here):
    """What the order loses with less money, and which packs change."""
    if point is None or point.poor:
        return None
    before, after = plan.packs(), dict(point.packs)
    keys = sorted({*before, *after}, key=lambda key: (key[1], key[0]))
    rows = ((*key, before.get(key, 0), after.get(key, 0)) for key in keys)
    changes = tuple(row for row in rows if row[2] != row[3])
    return LessMoney(budget=point.budget, lost=max(here - point.objective, 0.0), changes=changes)
