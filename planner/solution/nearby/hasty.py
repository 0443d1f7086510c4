"""Orders for other budgets where the search had no time for its own: built from the order and its moves.

Takes a Problem, the order, its moves and a Judge; betters unsettled points of a curve by what such orders are really
worth, every scenario's recourse re-solved. Proves nothing: what was not settled stays marked.
"""

import math
from dataclasses import replace

from planner.solution.valuing import ordered

DUST = 1e-6


def bettered(problem, packs, moved, points, worth, clock):
    """`points` with a better order where one is built; `worth`: order -> objective or None; ends with the clock."""
    found = dict(points)
    for money in halving([budget for budget, point in points.items() if not point.settled]):
        for order in orders_within(problem, packs, moved, money):
            if clock.is_over():
                return found
            told = worth(order)
            if told is not None:
                found = _carried(found, told, ordered(problem, order).spend, order)
    return found


def halving(budgets):
    """The middle one first, then those of either half: with little time they lie apart."""
    waiting, told = [sorted(budgets)], []
    while waiting:
        row = waiting.pop(0)
        if row:
            middle = len(row) // 2
            told.append(row[middle])
            waiting += [row[:middle], row[middle + 1 :]]
    return told


def orders_within(problem, packs, moved, money):
    """Up to two orders the money pays for: the best earning for their money kept or added, and a like share of all."""
    if ordered(problem, packs).spend <= money + DUST:
        rows = [_added(problem, packs, moved, money)]
    else:
        rows = [_shared(problem, packs, money), _dropped(problem, packs, moved, money)]
    return [order for order in rows if order is not None and order != packs]


def _added(problem, packs, moved, money):
    """A pack more of what earns, the most for its money first, as far as the money goes."""
    wanted = [row for row in moved if row.step > 0 and row.served and not row.limit and row.worth_change > 0]
    order = dict(packs)
    for row in sorted(wanted, key=lambda row: -row.worth_change / max(row.cost_change, DUST)):
        key = row.offer, row.period
        tried = {**order, key: order.get(key, 0) + 1}
        if ordered(problem, tried).spend <= money + DUST:
            order = tried
    return order


def _dropped(problem, packs, moved, money):
    """What loses least for the money it frees goes first, pack by pack; what a must-use needs stays."""
    wanted = [row for row in moved if row.step < 0 and row.served and not row.limit]
    order = dict(packs)
    for row in sorted(wanted, key=lambda row: -row.worth_change / max(-row.cost_change, DUST)):
        key = row.offer, row.period
        while order.get(key, 0) >= 1 and ordered(problem, order).spend > money + DUST:
            order[key] -= 1
    return _of_some(order) if ordered(problem, order).spend <= money + DUST else None


def _shared(problem, packs, money):
    """The same share of every line, in whole packs: what is used together stays together."""
    for share in range(99, 0, -1):
        order = {key: math.floor(count * share / 100 + DUST) for key, count in packs.items()}
        if ordered(problem, order).spend <= money + DUST:
            return _of_some(order)
    return None


def _of_some(order):
    return {key: count for key, count in order.items() if count > DUST}


def _carried(points, worth, spend, order):
    """Every point it fits into and betters, with this order."""
    return {
        money: replace(
            point,
            spend=spend,
            objective=worth,
            bound=max(point.bound, worth),
            fractions=max(point.fractions, worth),
            packs=order,
        )
        if spend <= money + DUST and worth > point.objective + DUST
        else point
        for money, point in points.items()
    }
