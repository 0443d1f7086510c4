"""Hauls of one scenario: gear from place to place, by line, part and period, and whole trips.

Takes the haul lines; adds their columns, their gear and rows of the family trips. Nothing where gear goes free.
"""

from planner.programme.draft import add, mark
from planner.programme.record import Hauled


def place_hauls(draft, gear, runs):
    """Columns for all gear that can be at a line's start and can be wanted beyond its end.

    Any part can be at the first place: the price of a part is that of one there.
    """
    problem, scenario = draft.problem, gear.scenario
    if not problem.hauls:
        return
    weights = {part.code: part.weight_lb for part in problem.parts}
    here = {(problem.locations[0], part) for part in weights}
    has = _places(gear, problem, here, forward=True)
    wants = _places(gear, problem, set(), forward=False)
    for line, haul in enumerate(problem.hauls):
        for period in range(problem.periods):
            load: dict = {}
            for part, weight in weights.items():
                if (haul.source, part) in has and (haul.target, part) in wants:
                    cost = haul.cost_per_unit + haul.cost_per_lb * weight
                    column = _haul(draft, gear, (line, haul, part, period), cost)
                    add(load, column, weight)
            if load and haul.trip_cost:
                trips(draft, scenario, line, haul, period, load)


def _haul(draft, gear, what, cost):
    line, haul, part, period = what
    scenario = gear.scenario
    column = draft.column("haul", mark(scenario), line, haul.source, haul.target, part, period)
    gear.count(haul.source, part, period, column, -1.0)
    gear.count(haul.target, part, period, column, 1.0)
    draft.money(scenario, {column: -cost})
    draft.programme.hauled.append(
        Hauled(scenario=scenario, line=line, part=part, period=period, column=column)
    )
    return column


def _places(gear, problem, known, *, forward):
    """(place, part) where the part can come to be, or from where it can get to be wanted."""
    found = set(known)
    for source in (gear.columns, gear.fixed):
        for key, rows in source.items():
            if any((row[-1] > 0) == forward for row in rows):
                found.add(key)
    while True:
        more = set()
        for haul in problem.hauls:
            near, far = (haul.source, haul.target) if forward else (haul.target, haul.source)
            more |= {(far, part) for place, part in found if place == near}
        if more <= found:
            return found
        found |= more


def trips(draft, scenario, line, haul, period, load):
    """Trips: weight hauled on a line in a period ≤ trip_lb × trips, trips whole.

    The price of a row is what a pound more on that trip would cost.
    """
    count = draft.column("trip_count", mark(scenario), line, haul.source, haul.target, period, whole=True)
    terms = {**load, count: -haul.trip_lb}
    draft.row(
        "trips", mark(scenario), line, haul.source, haul.target, period, terms=terms, sense="<=", bound=0
    )
    draft.money(scenario, {count: -haul.trip_cost})
