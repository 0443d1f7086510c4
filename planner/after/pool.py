"""All the gear there is by week, season by season: wherever it lies, on colonies or not. Gear is one pool.

Takes a sizing problem and its plan; gives part -> pieces (season × week): stock, gear of lost colonies, what is bought now
and in season, what the bench makes, less what it takes and what the shed uses up. What yards use up stays in it.
"""

from collections import defaultdict

import numpy as np

from planner.after.targets import MOST, TINY, at_level


def pool_of(problem, plan, gear, *, kind=lambda part: part):
    """`gear`: codes of the parts that travel; `kind`: part -> what it is counted as."""
    shape = len(problem.scenarios), problem.periods
    found: dict = defaultdict(lambda: np.zeros(shape))

    def put(row, part, week, pieces):
        if part in gear:
            found[kind(part)][row, week:] += pieces

    offers = {offer.code: offer for offer in problem.offers}
    for stock in problem.stock:
        put(slice(None), stock.part, stock.period, stock.quantity)
    for line in plan.here_and_now:
        _buy(put, slice(None), offers[line.offer], line)
    solved = {scenario.code: scenario for scenario in plan.scenarios}
    for row, scenario in enumerate(problem.scenarios):
        for arrival in scenario.arrivals:
            put(row, arrival.part, arrival.period, arrival.quantity)
        for line in solved[scenario.code].later:
            _buy(put, row, offers[line.offer], line)
        _make(put, row, problem.recipes, solved[scenario.code].made)
        _use_up(put, row, problem.locations[0], scenario.uses, solved[scenario.code].served)
    return dict(found)


def _buy(put, row, offer, line):
    for part, units in offer.parts.items():
        put(row, part, line.period + offer.lead_periods, units * line.packs)


def _make(put, row, recipes, made):
    by_code = {recipe.code: recipe for recipe in recipes}
    for line in made:
        recipe = by_code[line.recipe]
        for part, pieces in recipe.takes.items():
            put(row, part, line.period, -pieces * line.units)
        for part, pieces in recipe.makes.items():
            put(row, part, line.period + recipe.lead_periods, pieces * line.units)


def _use_up(put, row, shed, uses, served):
    units = {line.use: line.units for line in served}
    for use in uses:
        if use.location == shed and units.get(use.code):
            for part, pieces in use.spends.items():
                put(row, part, use.first, -pieces * units[use.code])


def exists_of(pool, wants, own, kind):
    """kind -> whole pieces beyond what lies at the yards and what deadouts free there, in most seasons' reach by week."""
    there: dict = defaultdict(float)
    for (_yard, part), rows in (*wants.found.items(), *own.items()):
        there[kind(part)] = there[kind(part)] + rows
    return {
        part: np.floor(at_level(rows - there[part], wants.weights, MOST) + TINY).astype(int)
        for part, rows in pool.items()
    }
