"""Fills the shed's books: stock, what is on order, bought now and in season, homecomings, and what the shed itself uses up.

Takes the sizing problem, its plan and the yards' courses; gives a Shed ready to answer wants, and those wants.
"""

import math
from collections import defaultdict

import numpy as np

from planner.after.shed import Made, Shed, Want
from planner.after.targets import MOST, TINY, at_level, whole
from planner.plan.lines import supplier_orders
from planner.plan.needs import chances
from planner.requirement.tokens import TOKENS


def drawn_from(problem):
    """comb -> the framed foundation bees draw it from."""
    found = {}
    for recipe in problem.recipes:
        takes = [part for part in recipe.takes if part not in TOKENS]
        makes = [part for part in recipe.makes if part not in TOKENS]
        if any(token in recipe.takes for token in TOKENS) and len(takes) == len(makes) == 1:
            found[makes[0]] = takes[0]
    return found


def shed_of(operation, problem, plan, homecomings, lands):
    """`homecomings`: [(part, week from which it is free again, pieces)]; `lands`: see weeks_landing."""
    used = {recipe.code for recipe in problem.recipes}
    recipes = {
        part: Made(recipe=facts.code, part=part, takes=dict(facts.takes), minutes=float(facts.minutes))
        for facts in operation.recipes
        if facts.code in used
        for part, pieces in facts.makes.items()
        if pieces == 1
    }
    shed = Shed(recipes=recipes, drawn=drawn_from(problem))
    for part, week, pieces in (
        *stock_at_shed(problem),
        *bought(problem, plan, lands),
        *in_season(problem, plan),
        *homecomings,
    ):
        shed.put(part, week, int(pieces))
    return shed


def stock_at_shed(problem):
    """[(part, week, pieces)] that lie there or are on the way there."""
    home = problem.locations[0]
    return [(row.part, row.period, row.quantity) for row in problem.stock if row.location == home]


def weeks_landing(facts):
    """(offer, period) -> first week by whose beginning it is there, sent on the day the order is to be sent by."""
    found = {}
    for order in supplier_orders(facts):
        for line in order.lines:
            days = (min(line.due_on, order.due_on) - facts.start).days
            found[line.offer, order.period] = math.ceil(days / 7)
    return found


def bought(problem, plan, lands):
    """[(part, week, pieces)] of the order made now, in the week each lands."""
    offers = {offer.code: offer for offer in problem.offers}
    rows = []
    for line in plan.here_and_now:
        week = lands.get((line.offer, line.period), problem.periods)
        if week < problem.periods:
            parts = offers[line.offer].parts
            rows += [(part, week, round(units * line.packs)) for part, units in parts.items()]
    return rows


def in_season(problem, plan):
    """[(part, week, pieces)] bought in most seasons once the year shows its need, in the week each lands."""
    offers = {offer.code: offer for offer in problem.offers}
    rows: dict = defaultdict(lambda: np.zeros((len(problem.scenarios), problem.periods)))
    for number, scenario in enumerate(plan.scenarios):
        for line in scenario.later:
            offer = offers[line.offer]
            for part, units in offer.parts.items():
                rows[part][number, min(problem.periods, line.period + offer.lead_periods) :] += (
                    units * line.packs
                )
    weights = chances(problem.scenarios)
    found = []
    for part, each in sorted(rows.items()):
        by_week = np.floor(at_level(each, weights, MOST) + TINY).astype(int)
        found += [(part, week, int(n)) for week, n in enumerate(np.diff(by_week, prepend=0)) if n > 0]
    return found


def wants_of_yards(courses):
    """What each yard's course brings out, as wants."""
    return [
        Want(yard=course.yard, part=course.part, pieces=pieces, week=week)
        for course in courses.values()
        for week, pieces in enumerate(course.out)
        if pieces
    ]


def wants_of_shed(problem, plan, gear):
    """Gear that the shed itself uses up (old comb renewed, moth): what most seasons take by each week."""
    home = problem.locations[0]
    solved = {scenario.code: scenario for scenario in plan.scenarios}
    spent: dict = defaultdict(lambda: np.zeros((len(problem.scenarios), problem.periods)))
    for number, scenario in enumerate(problem.scenarios):
        served = {line.use: line.units for line in solved[scenario.code].served}
        for use in scenario.uses:
            if use.location == home and served.get(use.code):
                for part, pieces in use.spends.items():
                    if part in gear:
                        spent[part][number, use.first :] += pieces * served[use.code]
    weights = chances(problem.scenarios)
    wants = []
    for part, rows in sorted(spent.items()):
        by_week = whole(at_level(rows, weights, MOST))
        for week, pieces in enumerate(np.diff(by_week, prepend=0)):
            if pieces > 0:
                wants.append(Want(yard=home, part=part, pieces=int(pieces), week=week))
    return wants
