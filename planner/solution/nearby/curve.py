"""The curve over budgets: the best order known and what none can beat, at each.

Takes a Problem, its Plan and warm scenarios where it has them; gives {budget: BudgetPoint}, of the budgets shown and of
the little more and less beside the order, and which are shown. Cheaper orders are carried forward, bounds back, so that
neither ever falls as the budget rises.
"""

from dataclasses import replace

from planner.solution.nearby.budgets import round_budgets
from planner.solution.nearby.direct import Direct
from planner.solution.nearby.halves import Halves
from planner.solution.nearby.records import BudgetPoint
from planner.solution.solving import FINE_GAP, MANY_SCENARIOS
from planner.solution.two_phase import CannotCut, suits
from planner.solution.valuing import ordered

DUST = 1e-6
SURE = 0.01  # a point is settled where no order can be worth more than it by this, or by the gap asked for


def curve(problem, plan, warm, *, budgets, more, less, gap, clock, tell, companion=None):
    """({budget: point}, budgets shown); fewer points than shown where time ran out. `companion`: see halves.py."""
    settings = {"gap": gap, "clock": clock, "tell": tell}
    asked = {"budgets": budgets, "more": more, "less": less}
    direct = Direct(problem=problem, **settings)
    if by_cuts(problem, gap):
        try:
            halves = Halves(problem, warm, packs=plan.packs(), companion=companion, **settings)
            return _curve(problem, plan, halves, gap, **asked)
        except CannotCut:
            pass
    return _curve(problem, plan, direct, gap, **asked)


def by_cuts(problem, gap):
    """Whether cuts are the way: possible, many scenarios and a gap cuts reach quickly."""
    return suits(problem) and len(problem.scenarios) >= MANY_SCENARIOS and gap >= FINE_GAP


def _curve(problem, plan, engine, gap, *, budgets, more, less):
    own = problem.budget
    least = engine.least() or 0.0
    if budgets is None:
        most = engine.most()
        most = 2 * (plan.spend if own is None else own) if most is None else most
        budgets = round_budgets(least=least, most=most, own=own)
    beside = [plan.spend - less] if own is None else [own - less, own, own + more]
    wanted = sorted({*budgets, *(money for money in beside if money >= least - DUST)})
    found, fractions = engine.points(wanted, beside)
    points = _points(problem, plan, found, fractions)
    return {money: marked(point, gap) for money, point in points.items()}, sorted(budgets)


def marked(point, gap):
    """The point, told whether it is settled: its order proven near the best, wherever that order was found."""
    open_by = (point.bound - point.objective) / max(1.0, abs(point.objective))
    return replace(point, settled=open_by <= max(SURE, gap))


def _points(problem, plan, found, fractions):
    orders = [(plan.spend, plan.objective, plan.packs())]
    for best in found.values():
        if best.packs is not None:
            orders.append((ordered(problem, best.packs).spend, best.objective, best.packs))
    points, upper, lowest = {}, float("inf"), float("inf")
    for money in sorted(found, reverse=True):
        within = [order for order in orders if order[0] <= money + DUST]
        if not within:
            continue
        spend, objective, packs = max(within, key=lambda order: order[1])
        lowest = min(lowest, found[money].bound if fractions[money] is None else fractions[money])
        upper = max(min(upper, found[money].bound, lowest), objective)
        point = BudgetPoint(
            budget=money, spend=spend, objective=objective, bound=upper, fractions=lowest, packs=packs
        )
        points[money] = replace(point, fractions=max(lowest, objective))
    return points
