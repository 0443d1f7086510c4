"""The sizing problem of a season: uses and arrivals of every scenario, stock, offers, recipes, evenings.

Takes the operation, the assumptions and the projections; gives the record that is solved, with only the parts that
some use needs, can be made of, or is sold together with.
"""

import datetime as dt
import math

from planner.projection.colonies import base_gear
from planner.requirement import values
from planner.requirement.arrivals import arrivals_of
from planner.requirement.offers import offers_in_reach, season_offers, suppliers_of, winter_offers
from planner.requirement.prices import end_values
from planner.requirement.season_gear import SeasonGear, plain
from planner.requirement.tokens import TOKENS
from planner.requirement.uses import uses_of
from planner.requirement.workbench import assembly_recipes, closure, drawing_recipes, evenings
from planner.sizing.records import BadYears, Part, Problem, Scenario, Stock, Use

SOUND = "sound"


def sizing_problem(operation, assumptions, projections, *, budget):
    """The problem of these projections; `budget` bounds what is bought here and now (None: no bound)."""
    gear = SeasonGear(operation=operation, assumptions=assumptions)
    scenarios = [
        Scenario(
            code=projection.code,
            probability=projection.probability,
            uses=uses_of(gear, projection),
            arrivals=arrivals_of(gear, projection),
        )
        for projection in projections
    ]
    uses = [use for scenario in scenarios for use in scenario.uses]
    wanted = {part for use in uses for part in (*use.keeps, *use.spends)}
    recipes = [*assembly_recipes(gear), *drawing_recipes(gear, wanted)]
    needed, recipes = closure(wanted, recipes)
    in_reach = offers_in_reach(operation, assumptions.weeks)
    listed = [offer for offer in in_reach if offer.parts.keys() & needed]
    offers = [*winter_offers(gear, listed), *season_offers(gear, listed, needed, uses)]
    known = needed | {part for offer in offers for part in offer.parts}
    moth = tuple(moth_loss(gear, known))
    return Problem(
        periods=assumptions.weeks,
        money=operation.money,
        parts=parts_of(gear, known, listed, recipes),
        locations=_locations(operation),
        stock=tuple(stock_of(gear, known)),
        suppliers=suppliers_of(operation, offers),
        offers=tuple(offers),
        recipes=tuple(recipes),
        work=evenings(assumptions),
        budget=None if budget is None else float(budget),
        bad_years=BadYears(weight=values.BAD_YEARS_WEIGHT[assumptions.sooner], share=values.BAD_YEARS_SHARE),
        scenarios=tuple(_completed(scenario, known, moth) for scenario in scenarios),
    )


def parts_of(gear, known, listed, recipes):
    """The parts with weight and end value, the tokens last and worth nothing."""
    worth = end_values(gear.operation, listed, recipes, gear.assumptions.hour_value)
    found = [
        Part(
            code=part.code,
            end_value=round(worth.get(part.code, 0.0), 4),
            weight_lb=part.weight_lb,
        )
        for part in gear.operation.parts
        if part.code in known
    ]
    return (*found, *(Part(code=token) for token in TOKENS if token in known))


def stock_of(gear, known):
    """Sound gear in stores, gear on colonies beyond their set, and what is on order when it is due."""
    operation = gear.operation
    pieces: dict = {}
    for line in operation.stock:
        if line.condition == SOUND:
            at = (plain(line.part), line.yard, 0)
            pieces[at] = pieces.get(at, 0) + line.quantity
    for part, yard, count in extras_on_colonies(gear):
        pieces[plain(part), yard, 0] = pieces.get((plain(part), yard, 0), 0) + count
    for line in operation.on_order:
        week = max(0, math.ceil((line.due - operation.day) / dt.timedelta(days=7)))
        if week < gear.assumptions.weeks:
            at = (plain(line.part), operation.shed, week)
            pieces[at] = pieces.get(at, 0) + line.quantity
    for (part, yard, week), count in sorted(pieces.items()):
        if part in known and count > 0:
            yield Stock(part=part, location=yard, quantity=count, period=week)


def extras_on_colonies(gear):
    """(part, yard, pieces) that colonies hold beyond their set: supers, feeders and the like, free to be used."""
    for group in gear.operation.colonies:
        base = base_gear(group, gear.sets[group.hive_set])
        for part, pieces in sorted(group.gear.items()):
            if part.endswith("-treated"):
                continue
            extra = pieces - base.get(part, 0)
            if extra > 0:
                yield part, group.yard, extra


def _locations(operation):
    """The shed first: packs and recipes land there."""
    others = [yard.code for yard in operation.yards if yard.code != operation.shed]
    return (operation.shed, *others)


def moth_loss(gear, known):
    """Of the drawn combs that lie in store today, what moth takes in the weeks ahead: a must at the start,
    so that it is seen."""
    lost: dict = {}
    ahead = gear.assumptions.season_weeks / gear.assumptions.weeks
    for line in gear.operation.stock:
        part = plain(line.part)
        if line.condition == SOUND and part.startswith("comb-") and part in known:
            lost[part] = lost.get(part, 0) + line.quantity * gear.assumptions.stored_moth_share * ahead
    lost = {part: pieces for part, pieces in sorted(lost.items()) if pieces}
    if lost:
        shed = gear.operation.shed
        yield Use(
            code=f"moth/{shed}", location=shed, first=0, last=0, units=1, value=0.0, must=True, spends=lost
        )


def _completed(scenario, known, moth):
    return Scenario(
        code=scenario.code,
        probability=scenario.probability,
        uses=(*scenario.uses, *moth),
        arrivals=tuple(arrival for arrival in scenario.arrivals if arrival.part in known),
    )
