"""The yard form of a problem with hauls: boxes and covers are told by place, what rides in and on them is not.

Takes a problem whose hauls join places; gives a problem without hauls that can be solved as any other. A box at a
yard is a part of its own there, and bringing it out a recipe that costs its own weight and that of what rides along:
frames in their box, floor and inner cover with the cover. What rides along has one balance for all places, and so the
form can be a little better or worse than one that carries each piece: it is exact where hauling costs nothing.
"""

from dataclasses import replace

from planner.sizing.records import Arrival, Recipe, Stock

AT_YARDS = ("box-", "nuc-box-", "cover-")
BOXES = ("box-", "nuc-box-")
FRAMES = ("comb-", "frame-")


def yard_problem(problem):
    """The same season with yard rows for boxes and covers only."""
    first = problem.locations[0]
    wanted = _told_by_yard(problem)
    riders = {part: _riders(problem, part) for part in wanted}
    weights = {part.code: part.weight_lb for part in problem.parts}
    places = [place for place in problem.locations if place != first]
    ends = {part.code: part for part in problem.parts}
    copies = [replace(ends[part], code=at(part, place)) for part in wanted for place in places]
    recipes = [
        _way(haul, first, part, weights[part] + riders[part]) for haul in problem.hauls for part in wanted
    ]
    rates = _outbound(problem)
    return replace(
        problem,
        parts=(*problem.parts, *copies),
        stock=tuple(_placed(row, Stock, wanted, first) for row in problem.stock),
        recipes=(*problem.recipes, *(recipe for recipe in recipes if recipe is not None)),
        hauls=(),
        scenarios=tuple(
            replace(
                scenario,
                arrivals=tuple(_placed(row, Arrival, wanted, first) for row in scenario.arrivals),
                uses=tuple(_use(use, wanted, first, riders, weights, rates) for use in scenario.uses),
            )
            for scenario in problem.scenarios
        ),
    )


def at(part, place):
    """Code of a part told at a place."""
    return f"{part}@{place}"


def _told_by_yard(problem):
    """Boxes and covers that a use asks for or that lie away from the first place."""
    first, found = problem.locations[0], set()
    for scenario in problem.scenarios:
        for use in scenario.uses:
            found |= {*use.keeps, *use.spends} if use.location != first else set()
        found |= {row.part for row in scenario.arrivals if row.location != first}
    found |= {row.part for row in problem.stock if row.location != first}
    return sorted(part for part in found if part.startswith(AT_YARDS))


def _riders(problem, part):
    """Pounds that ride along with each piece: in every use that keeps the part at least so many."""
    weights = {row.code: row.weight_lb for row in problem.parts}
    least = None
    for scenario in problem.scenarios:
        for use in scenario.uses:
            if use.keeps.get(part):
                pounds = sum(n * weights[rider] for rider, n in _riding(use, part)) / use.keeps[part]
                least = pounds if least is None else min(least, pounds)
    return least or 0.0


def _riding(use, part):
    """Parts of a use that ride in the box or, beside frames, with the cover."""
    for rider, n in use.keeps.items():
        if rider.startswith(AT_YARDS):
            continue
        if rider.startswith(FRAMES) == part.startswith(BOXES):
            yield rider, n


def _way(haul, first, part, pounds):
    """Bringing one piece out or home, with what rides along on the way out."""
    source = part if haul.source == first else at(part, haul.source)
    target = part if haul.target == first else at(part, haul.target)
    if source == target:
        return None
    cost = haul.cost_per_unit + haul.cost_per_lb * pounds
    return Recipe(
        code=f"haul/{part}/{haul.source}/{haul.target}", takes={source: 1}, makes={target: 1}, cost=cost
    )


def _placed(row, kind, wanted, first):
    """Stock or an arrival, told at its yard where its part is."""
    told = row.part in wanted and row.location != first
    part = at(row.part, row.location) if told else row.part
    return kind(part=part, location=first, period=row.period, quantity=row.quantity)


def _use(use, wanted, first, riders, weights, rates):
    """The use with boxes and covers at its yard; what rides with none of them pays its own way out."""
    if use.location == first:
        return use
    pounds = sum(n * weights[part] for part, n in (*use.keeps.items(), *use.spends.items()))
    carried = sum(n * (weights[part] + riders[part]) for part, n in use.keeps.items() if part in wanted)
    carried += sum(n * weights[part] for part, n in use.spends.items() if part in wanted)
    left = max(pounds - carried, 0.0) * rates.get(use.location, 0.0)
    return replace(
        use,
        location=first,
        value=use.value - left,
        keeps=_at_yard(use.keeps, wanted, use.location),
        spends=_at_yard(use.spends, wanted, use.location),
    )


def _at_yard(parts, wanted, place):
    return {at(part, place) if part in wanted else part: n for part, n in parts.items()}


def _outbound(problem):
    """place -> money a pound from the first place, by the cheapest way."""
    first = problem.locations[0]
    rates: dict = {}
    for haul in problem.hauls:
        if haul.source == first:
            rates[haul.target] = min(haul.cost_per_lb, rates.get(haul.target, haul.cost_per_lb))
    return rates
