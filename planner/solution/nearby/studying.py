"""The whole study of what lies next door to a solved order, in this process.

Takes a Problem and its Plan; gives a Nearby: moves first, then the curve, its knee and what a little more or less
money would do. What time does not allow is left out, and said.
"""

from dataclasses import replace

from planner.solution.clock import Clock
from planner.solution.nearby.budgets import round_budgets
from planner.solution.nearby.direct import Direct
from planner.solution.nearby.knee import knee_of
from planner.solution.nearby.moves import moves
from planner.solution.nearby.records import BudgetPoint, LessMoney, Nearby
from planner.solution.valuing import ordered


def study(problem, plan, *, budgets=None, more=100.0, less=300.0, gap=0.001, seconds=60.0, progress=None):
    """What lies next door to `plan`; `budgets` are chosen where none are given; progress(stage, bound, gap) is told."""
    clock, tell = Clock(seconds), progress or (lambda stage, bound, gap: None)
    if not plan.is_order:
        return _nothing(clock, "There is no order, so nothing lies next to it.")
    engine = Direct(problem=problem, gap=gap, clock=clock, tell=tell)
    tell("one pack more or fewer", None, None)
    moved = tuple(moves(problem, plan.packs(), engine.worth))
    tell("other budgets", None, None)
    least = engine.least() or 0.0
    own = problem.budget
    around = [plan.spend - less] if own is None else [own - less, own, own + more]
    if budgets is None:
        free = engine.best(None)
        most = ordered(problem, free.packs).spend if free.packs is not None else 2 * (own or plan.spend)
        budgets = round_budgets(least=least, most=most, own=own)
    wanted = sorted({*budgets, *(money for money in around if money >= least)})
    points = _curve(problem, plan, engine, wanted)
    shown = tuple(points[money] for money in sorted(budgets) if money in points)
    here = plan.objective if own is None else points[own].objective
    return Nearby(
        moves=moved,
        points=shown,
        knee=knee_of([point.budget for point in shown], [point.objective for point in shown]),
        next_budget=None if own is None else more,
        next_earns=None if own is None or own + more not in points else points[own + more].objective - here,
        less=_less(plan, points.get(around[0]), here),
        budget_price=plan.shadow_prices.budget if plan.shadow_prices else None,
        seconds=round(clock.spent(), 3),
        not_told="",
    )


def _nothing(clock, why):
    return Nearby(
        moves=(),
        points=(),
        knee=None,
        next_budget=None,
        next_earns=None,
        less=None,
        budget_price=None,
        seconds=round(clock.spent(), 3),
        not_told=why,
    )


def _curve(problem, plan, engine, wanted):
    """The best order known and its bound at each budget: cheaper orders carried forward, bounds carried back."""
    found = {money: engine.best(money) for money in wanted}
    fractions = dict(zip(wanted, engine.in_fractions(wanted), strict=True))
    orders = [(plan.spend, plan.objective, plan.packs())]
    orders += [
        (ordered(problem, row.packs).spend, row.objective, row.packs)
        for row in found.values()
        if row.packs is not None
    ]
    points, upper = {}, float("inf")
    for money in wanted:
        within = [order for order in orders if order[0] <= money + 1e-6]
        if within:
            spend, objective, packs = max(within, key=lambda order: order[1])
            points[money] = BudgetPoint(
                budget=money,
                spend=spend,
                objective=objective,
                bound=found[money].bound,
                fractions=fractions[money],
                packs=packs,
            )
    for money in reversed(list(points)):
        point = points[money]
        upper = max(min(upper, point.bound, point.fractions), point.objective)
        points[money] = replace(point, bound=upper, fractions=max(point.fractions, point.objective))
    return points


def _less(plan, point, here):
    """What the order loses with less money, and which packs change."""
    if point is None:
        return None
    before, after = plan.packs(), dict(point.packs)
    keys = sorted({*before, *after}, key=lambda key: (key[1], key[0]))
    changes = tuple(
        (*key, before.get(key, 0), after.get(key, 0))
        for key in keys
        if before.get(key, 0) != after.get(key, 0)
    )
    return LessMoney(budget=point.budget, lost=max(here - point.objective, 0.0), changes=changes)
