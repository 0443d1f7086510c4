"""Shadow prices: what one unit more of each limit would earn, whole numbers held.

Takes a Programme and a solved programme without whole columns; gives ShadowPrices, or the reason to withhold them.
"""

import numpy as np

from planner.solution.records import ShadowPrices


def shadow_prices(programme, matrix, answer, fixed):
    """(prices, None) or (None, why they are withheld)."""
    if answer is None or answer.row_prices is None:
        return None, "the programme with whole numbers held could not be solved again"
    proven, why = _proven(matrix, answer, fixed)
    if not proven:
        return None, why
    rows = dict(zip(matrix.rows, (float(price) for price in answer.row_prices), strict=True))
    return _prices(programme, rows), None


def _proven(matrix, answer, fixed):
    """Prices × limits must come to the objective, each price against the limit it can belong to."""
    lower, upper = matrix.lower, matrix.upper
    if fixed is not None:
        lower = np.where(matrix.whole, fixed, lower)
        upper = np.where(matrix.whole, fixed, upper)
    rows, loose_rows = priced(answer.row_prices, matrix.row_lower, matrix.row_upper)
    columns, loose_columns = priced(answer.column_prices, lower, upper)
    total = rows + columns + matrix.offset
    if loose_rows or loose_columns:
        return False, "a price belongs to a limit that does not exist"
    if abs(total - answer.objective) > 1e-5 * max(1.0, abs(answer.objective)):
        return False, f"prices times limits come to {total:.6g}, the objective is {answer.objective:.6g}"
    return True, None


def priced(prices, lower, upper):
    """Σ price × the limit it belongs to; whether some price had none."""
    prices = np.where(np.abs(prices) < 1e-9, 0.0, prices)
    limits = np.where(prices > 0, upper, lower)
    limits = np.where(prices == 0, 0.0, limits)
    lost = np.abs(limits) > 1e29
    loose = bool((np.abs(prices[lost]) > 1e-6).any())
    return float(np.sum(prices * np.where(lost, 0.0, limits))), loose


def _prices(programme, rows):
    problem = programme.problem
    codes = [scenario.code for scenario in problem.scenarios]
    budget = None
    if problem.budget is not None:
        budget = rounded(rows[programme.budget_row]) if programme.budget_row else 0.0
    later = {}
    if problem.later_budget is not None:
        for number, code in enumerate(codes):
            row = programme.later_budget_rows.get(number)
            later[code] = rounded(rows[row]) if row else 0.0
    work = {}
    if problem.work.minutes_per_period is not None:
        for number, code in enumerate(codes):
            found = (programme.work_rows.get((number, period), ()) for period in range(problem.periods))
            work[code] = tuple(rounded(sum(rows[row] for row in names)) for names in found)
    return ShadowPrices(budget=budget, later_budget=later, work=work, parts=_part_prices(programme, rows))


def _part_prices(programme, rows):
    """One unit more in stock from period 0: every balance row it enters, and what it is worth at the end."""
    weight = sum(programme.spread.values()) - sum(rows[row] for row in programme.tail_rows.values())
    prices = {}
    for part in programme.problem.parts:
        effects = programme.stock_effects.get(part.code, {})
        price = sum(rows[row] * effect for row, effect in effects.items())
        prices[part.code] = rounded(price + weight * programme.stock_worth[part.code])
    return prices


def rounded(value):
    return round(value, 9) + 0.0
