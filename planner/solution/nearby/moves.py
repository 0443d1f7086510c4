"""One pack more and one fewer of every here-and-now line bought, in money.

Takes a Problem, the order and a judge (orders -> objectives, None where a must-use cannot be served); gives Moved
records. Money is afresh from packs: price steps and fees as they fall.
"""

from planner.solution.nearby.records import Moved
from planner.solution.valuing import ordered

DUST = 1e-9


def moves(problem, packs, judge):
    """Both steps of every line bought, in the problem's order of offers; fewer where the judge's time ran out."""
    offers = {offer.code: at for at, offer in enumerate(problem.offers)}
    bought = sorted(
        (key for key, count in packs.items() if count > DUST), key=lambda key: (offers[key[0]], key[1])
    )
    steps = [(key, step) for key in bought for step in (1, -1)]
    limits = {(key, step): _limit(problem.offers[offers[key[0]]], packs[key], step) for key, step in steps}
    orders = [{**packs, key: packs[key] + step} for key, step in steps if not limits[key, step]]
    now, *worths = judge([packs, *orders]) if orders else [None]
    asked, spend, found = iter(zip(orders, worths, strict=False)), ordered(problem, packs).spend, []
    for key, step in steps:
        if limits[key, step]:
            found.append(_moved(key, packs[key], step, limit=limits[key, step]))
            continue
        order, worth = next(asked, (None, None))
        if order is None:
            break
        after = ordered(problem, order).spend
        change = 0.0 if worth is None else worth - now
        over, served = _over(problem, after), worth is not None
        found.append(_moved(key, packs[key], step, after - spend, change, over, served=served))
    return tuple(found)


def _moved(key, packs, step, cost=0.0, change=0.0, over=0.0, *, served=True, limit=""):
    return Moved(
        offer=key[0],
        period=key[1],
        packs=packs,
        step=step,
        cost_change=_tidy(cost),
        worth_change=_tidy(change),
        over_budget=_tidy(over),
        served=served,
        limit=limit,
    )


def _limit(offer, packs, step):
    if step > 0 and offer.max_packs is not None and packs + 1 > offer.max_packs + DUST:
        return "most"
    return "least" if packs + step < -DUST else ""


def _over(problem, spend):
    """Money past the budget; less than half a cent is none."""
    over = 0.0 if problem.budget is None else spend - problem.budget
    return over if over > 0.005 else 0.0


def _tidy(value):
    return round(value, 9) + 0.0
