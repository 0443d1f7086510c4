"""One pack more and one fewer of every here-and-now line bought, in money.

Takes a Problem, the order and a judge (packs -> objective, None where a must-use cannot be served); gives Moved
records. Money is afresh from packs: price steps and fees as they fall.
"""

from planner.solution.nearby.records import Moved
from planner.solution.valuing import ordered

DUST = 1e-9


def moves(problem, packs, judge):
    """Both steps of every line bought, in the problem's order of offers."""
    place = {offer.code: at for at, offer in enumerate(problem.offers)}
    bought = [key for key, count in packs.items() if count > DUST]
    now, spend = None, ordered(problem, packs).spend
    for key in sorted(bought, key=lambda key: (place[key[0]], key[1])):
        if now is None:
            now = judge(packs)
        for step in (1, -1):
            yield _moved(problem, packs, key, step, judge, now, spend)


def _moved(problem, packs, key, step, judge, now, spend):
    offer, period = key
    limit = _limit(problem, key, packs[key], step)
    cost = change = over = 0.0
    worth = now
    if not limit:
        other = {**packs, key: packs[key] + step}
        after = ordered(problem, other).spend
        cost, worth = after - spend, judge(other)
        change = 0.0 if worth is None or now is None else worth - now
        over = _over(problem, after)
    return Moved(
        offer=offer,
        period=period,
        packs=packs[key],
        step=step,
        cost_change=_tidy(cost),
        worth_change=_tidy(change),
        over_budget=_tidy(over),
        served=worth is not None,
        limit=limit,
    )


def _limit(problem, key, packs, step):
    offer = next(offer for offer in problem.offers if offer.code == key[0])
    if step > 0 and offer.max_packs is not None and packs + 1 > offer.max_packs + DUST:
        return "most"
    return "least" if packs + step < -DUST else ""


def _over(problem, spend):
    """Money past the budget; no less than half a cent is any."""
    over = 0.0 if problem.budget is None else spend - problem.budget
    return over if over > 0.005 else 0.0


def _tidy(value):
    return round(value, 9) + 0.0
