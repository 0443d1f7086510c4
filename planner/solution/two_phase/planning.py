"""A problem with many scenarios from end to end by the two-phase way.

Takes a Problem that suits it, a gap, a clock and what is told of progress; gives the same Plan the direct way gives.
Raises NoOrder where no order lets every scenario be lived, CannotCut where cuts cannot bound the problem.
"""

import numpy as np

from planner.programme.blocks import linear_recourse
from planner.programme.here_and_now import order_part
from planner.solution.acts import Acts
from planner.solution.plans import no_plan, plan_from
from planner.solution.records import TIME_LIMIT
from planner.solution.two_phase.earnings import Earnings
from planner.solution.two_phase.master import Master
from planner.solution.two_phase.prices import OPEN, shadow_prices
from planner.solution.two_phase.search import CannotCut, Search
from planner.solution.valuing import ordered
from planner.solution.warm import WarmScenarios

GROUPS = 20
COARSE_GAP = 1e-4  # from here on uses are merged across yards
__all__ = ["CannotCut", "Search", "judged", "solve_in_two_phases", "suits", "takes"]
TELL_EACH = 10
GRACE = 1.0  # seconds over the limit in which building may still end, for an order's sake
NOT_ASKED = (None, "not asked for")


class OutOfTime(Exception):
    """Time ran out before all scenarios were built: there is nothing yet an order could be judged by."""


def suits(problem):
    """True where cuts can be had: recourse without whole numbers, and something to order here and now."""
    return linear_recourse(problem) and any(offer.when == "now" for offer in problem.offers)


def solve_in_two_phases(problem, *, gap, clock, tell, prices):
    try:
        warm = WarmScenarios(problem, started=_built(problem, tell, clock), merge=gap >= COARSE_GAP)
    except OutOfTime as fault:
        return no_plan(TIME_LIMIT, str(fault), clock.spent(), "highs")
    part = order_part(problem)
    earnings = Earnings(problem, warm, list(part.packs), GROUPS)
    master = Master(part, earnings.groups)
    search = Search(master, earnings, gap=gap, clock=clock, tell=tell)
    search.run()
    if search.best_columns is None:
        reason = "no order was found within the time limit; allow more seconds"
        bound = search.upper if search.upper < float("inf") else None
        return no_plan(TIME_LIMIT, reason, clock.spent(), "highs", bound=bound)
    tell("pricing", search.upper, search.distance())
    settled = search.settle() if prices else False
    packs = search.best_packs()
    earned = earnings.at(np.array(list(packs.values())))
    found = (None, OPEN)
    if settled:
        found = shadow_prices(problem, warm, earned.weights, budget=search.budget_price())
    return plan_from(
        problem,
        _acts(warm, packs),
        bound=search.upper if search.upper < float("inf") else None,
        gap=gap,
        seconds=clock.spent(),
        solver="highs",
        prices=found if prices else NOT_ASKED,
    )


def takes(problem, packs):
    """True where an order keeps to whole packs, limits and the budget."""
    offers = {offer.code: offer for offer in problem.offers}
    for (code, _), count in packs.items():
        offer = offers.get(code)
        if offer is None or (offer.is_whole and count != round(count)):
            return False
        if offer.max_packs is not None and count > offer.max_packs:
            return False
    return problem.budget is None or ordered(problem, packs).spend <= problem.budget


def judged(problem, packs, *, gap, clock, prices):
    """The plan of a given order. Raises NoRecourse where some scenario cannot be lived under it."""
    try:
        warm = WarmScenarios(problem, started=_built(problem, lambda *told: None, clock))
    except OutOfTime as fault:
        return no_plan(TIME_LIMIT, str(fault), clock.spent(), "highs")
    keys = list(warm.scenarios[0].block.orders)
    unknown = {key: count for key, count in packs.items() if count and key not in keys}
    if unknown:
        warm.scenarios[0].own(unknown)
    earned = Earnings(problem, warm, keys, 1).at(np.array([float(packs.get(key, 0)) for key in keys]))
    found = NOT_ASKED
    if prices:
        budget = None if problem.budget is None else 0.0  # money cannot change an order that is given
        found = shadow_prices(problem, warm, earned.weights, budget=budget)
    bound = earned.total - ordered(problem, packs).spend
    acts = _acts(warm, packs)
    return plan_from(problem, acts, bound=bound, gap=gap, seconds=clock.spent(), solver="highs", prices=found)


def _built(problem, tell, clock):
    """What is told of building, and a stop to it where it goes far over time."""

    def built(count):
        if count % TELL_EACH == 0:
            tell("building", None, None)
            if clock.spent() > clock.seconds + GRACE and count < len(problem.scenarios):
                far = f"{count} of {len(problem.scenarios)} scenarios"
                raise OutOfTime(f"time ran out when {far} were built; allow more seconds")

    return built


def _acts(warm, packs):
    """What is done in each scenario under the order, read off the programmes as they stand."""
    acts = Acts(packs={key: count for key, count in packs.items() if count > 0})
    acts.scenarios.extend(scenario.acts(packs) for scenario in warm.scenarios)
    return acts
