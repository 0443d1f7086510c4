"""Shadow prices of the two-phase way: each scenario's own, weighed, and the budget's from the cuts.

Takes the search at its end and the scenarios' programmes under the best order; gives ShadowPrices, or the reason to
withhold them.
"""

import numpy as np

from planner.solution.prices import priced, rounded
from planner.solution.records import ShadowPrices

OPEN = "the cuts about the order did not come to its worth, so its prices are not proven"


def shadow_prices(problem, warm, weights, *, budget):
    """(prices, None) or (None, why they are withheld); `weights` of each scenario's money in the objective."""
    found = [_rows(scenario) for scenario in warm.scenarios]
    for _, why in found:
        if why is not None:
            return None, why
    rows = [dict_of for dict_of, _ in found]
    weights = weights.tolist()
    work = {}
    if problem.work.minutes_per_period is not None:
        for scenario, prices, weight in zip(warm.scenarios, rows, weights, strict=True):
            work[scenario.code] = _work(problem, scenario.block.programme, prices, weight)
    later = {}
    if problem.later_budget is not None:
        for scenario, prices, weight in zip(warm.scenarios, rows, weights, strict=True):
            row = scenario.block.programme.later_budget_rows.get(0)
            later[scenario.code] = rounded(weight * prices[row]) if row else 0.0
    return ShadowPrices(
        budget=budget, later_budget=later, work=work, parts=_parts(problem, warm, rows, weights)
    ), None


def _rows(scenario):
    """({row: price}, None) of one scenario, or why they cannot be believed: prices × limits must come to its money."""
    solution, model = scenario.solver.getSolution(), scenario.solver.getLp()
    rows, columns = np.array(solution.row_dual), np.array(solution.col_dual)
    of_rows, loose_rows = priced(rows, np.array(model.row_lower_), np.array(model.row_upper_))
    of_columns, loose_columns = priced(columns, np.array(model.col_lower_), np.array(model.col_upper_))
    total, money = of_rows + of_columns + model.offset_, scenario.solver.getInfo().objective_function_value
    if loose_rows or loose_columns:
        return None, "a price belongs to a limit that does not exist"
    if abs(total - money) > 1e-5 * max(1.0, abs(money)):
        return None, f"prices times limits come to {total:.6g}, the objective is {money:.6g}"
    names = (name for name, _, _, _ in scenario.block.rows)
    return dict(zip(names, rows.tolist(), strict=True)), None


def _work(problem, programme, prices, weight):
    found = (programme.work_rows.get((0, period), ()) for period in range(problem.periods))
    return tuple(rounded(weight * sum(prices[row] for row in names)) for names in found)


def _parts(problem, warm, rows, weights):
    parts = {}
    for part in problem.parts:
        price = 0.0
        for scenario, prices, weight in zip(warm.scenarios, rows, weights, strict=True):
            effects = scenario.block.programme.stock_effects.get(part.code, {})
            more = sum(prices[row] * effect for row, effect in effects.items())
            price += weight * (more + scenario.block.worth[part.code])
        parts[part.code] = rounded(price)
    return parts
