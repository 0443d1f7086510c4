"""The curve over budgets: the best order known and what none can beat, at each.

Takes a Problem, its Plan and warm scenarios where it has them; gives {budget: BudgetPoint}, of the budgets shown and of
the little more and less beside the order, and which are shown. Cheaper orders are carried forward, bounds back, so that
neither ever falls as the budget rises.
"""

from planner.solution.nearby.budgets import round_budgets
from planner.solution.nearby.direct import Direct
from planner.solution.nearby.halves import Halves
from planner.solution.nearby.records import BudgetPoint
from planner.solution.solving import by_cuts
from planner.solution.two_phase import CannotCut
from planner.solution.valuing import ordered

DUST = 1e-6


def curve(problem, plan, warm, *, budgets, more, less, gap, clock, tell, companion=None):
    """({budget: point}, budgets shown); fewer points than shown where time ran out. `companion`: see halves.py."""
    settings = {"gap": gap, "clock": clock, "tell": tell}
    asked = {"budgets": budgets, "more": more, "less": less}
    direct = Direct(problem=problem, **settings)
    if by_cuts(problem, gap):
        try:
            halves = Halves(problem, warm, packs=plan.packs(), companion=companion, **settings)
            return _curve(problem, plan, halves, **asked)
        except CannotCut:
            pass
    return _curve(problem, plan, direct, **asked)


def _curve(problem, plan, engine, *, budgets, more, less):
    own = problem.budget
    least = engine.least() or 0.0
    if budgets is None:
        most = engine.most()
        most = 2 * (plan.spend if own is None else own) if most is None else most
        budgets = round_budgets(least=least, most=most, own=own)
    beside = [plan.spend - less] if own is None else [own - less, own, own + more]
    wanted = sorted({*budgets, *(money for money in beside if money >= least - DUST)})
    found, fractions = engine.points(wanted, beside)
    return _points(problem, plan, found, fractions), sorted(budgets)


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
        points[money] = BudgetPoint(
            budget=money,
            spend=spend,
            objective=objective,
            bound=upper,
            fractions=max(lowest, objective),
            packs=packs,
        )
    return points
