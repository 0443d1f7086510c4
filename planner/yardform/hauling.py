"""A season's pooled problem with the ways between shed and yards put in: what a pound costs to bring out.

Takes the operation, the assumptions and their sizing problem; gives the same problem with hauls. Half a super's share
of the round trip is bringing it out: it leaves the supers' value and becomes the price of the haul, so that a super
that lies at its yard saves it. Coming home rides free: the truck goes home anyway, and a super pulled has paid for it.
What is only used up (feed, treatments) rides free on the visit that gives it, as the pooled form has it too.
"""

from dataclasses import replace

from planner.requirement.values import trip_share
from planner.sizing.records import Haul

SUPER = "super/"


def with_hauling(operation, assumptions, problem, *, cost_share=1.0):
    """The problem with hauls; `cost_share` 0 makes every way free, the supers' value as in the pooled form."""
    rates = {
        yard.code: cost_share * trip_share(assumptions, yard) / 2
        for yard in operation.yards
        if yard.code != operation.shed
    }
    weight = _weight_of_a_super(problem)
    hauls = []
    for yard, rate in rates.items():
        hauls.append(Haul(source=operation.shed, target=yard, cost_per_lb=rate / weight))
        hauls.append(Haul(source=yard, target=operation.shed))
    scenarios = tuple(
        replace(scenario, uses=tuple(_without_outbound(use, rates) for use in scenario.uses))
        for scenario in problem.scenarios
    )
    kept = {part for scenario in problem.scenarios for use in scenario.uses for part in use.keeps}
    parts = tuple(part if part.code in kept else replace(part, weight_lb=0.0) for part in problem.parts)
    return replace(problem, parts=parts, hauls=tuple(hauls), scenarios=scenarios)


def _without_outbound(use, rates):
    if not use.code.startswith(SUPER):
        return use
    return replace(use, value=use.value + rates.get(use.location, 0.0))


def _weight_of_a_super(problem):
    """Pounds of the heaviest kind of super asked for; 1 where none is."""
    weights = {part.code: part.weight_lb for part in problem.parts}
    kinds = {
        tuple(sorted(use.keeps.items()))
        for scenario in problem.scenarios
        for use in scenario.uses
        if use.code.startswith(SUPER)
    }
    return max((sum(n * weights[part] for part, n in kind) for kind in kinds), default=1.0) or 1.0
