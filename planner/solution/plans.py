"""Makes the Plan record: money afresh from the acts, lists in order, status by gap.

Takes a Problem, Acts, a bound and prices; gives a Plan. Solves nothing.
"""

from planner.solution import records
from planner.solution.valuing import Valuer, objective_of, ordered

SHORT = 1e-6


def no_plan(status, reason, seconds, solver, *, bound=None):
    """A plan without an order."""
    return records.Plan(
        status=status,
        reason=reason,
        objective=None,
        bound=bound,
        gap=None,
        seconds=round(seconds, 3),
        solver=solver,
        here_and_now=(),
        fees=(),
        spend=None,
        scenarios=(),
        shadow_prices=None,
        shadow_prices_withheld="there is no order",
    )


def plan_from(problem, acts, *, bound, gap, seconds, solver, prices):
    """The plan of what is done; `bound` is what no plan can beat (None where unknown)."""
    now = ordered(problem, acts.packs)
    valuer = Valuer(problem)
    valued = [valuer.value(number, acts.packs, own) for number, own in enumerate(acts.scenarios)]
    _prove(problem, valued)
    money = [row.own - now.spend for row in valued]
    objective = objective_of(problem, money)
    scenarios = tuple(
        _scenario(problem, number, acts.scenarios[number], valued[number], money[number])
        for number in range(len(problem.scenarios))
    )
    bound = None if bound is None else max(bound, objective)
    distance = None if bound is None else (bound - objective) / max(1.0, abs(objective))
    return records.Plan(
        status=_status(distance, gap),
        reason=None,
        objective=_tidy(objective),
        bound=None if bound is None else max(_tidy(bound), _tidy(objective)),
        gap=distance,
        seconds=round(seconds, 3),
        solver=solver,
        here_and_now=_pack_lines(problem, acts.packs, now),
        fees=_fee_lines(now),
        spend=_tidy(now.spend),
        scenarios=scenarios,
        shadow_prices=prices[0],
        shadow_prices_withheld=prices[1],
    )


def _prove(problem, valued):
    """No balance below zero: else the programme and the meaning of the problem disagree, which is a bug."""
    largest = max((use.units for scenario in problem.scenarios for use in scenario.uses), default=1.0)
    lowest = min((row.lowest for row in valued), default=0.0)
    assert lowest >= -1e-4 * max(1.0, largest), f"a balance came out at {lowest}"


def _status(distance, gap):
    if distance is None:
        return records.TIME_LIMIT
    if distance <= 1e-6:
        return records.OPTIMAL
    return records.WITHIN_GAP if distance <= gap + 1e-9 else records.TIME_LIMIT


def _tidy(value):
    return round(value, 9) + 0.0


def _packs(offer, packs):
    return round(packs) if offer.is_whole else _tidy(packs)


def _pack_lines(problem, packs, now):
    offers = {offer.code: offer for offer in problem.offers}
    place = {code: at for at, code in enumerate(offers)}
    lines = []
    for code, period in sorted(packs, key=lambda key: (place[key[0]], key[1])):
        count = _packs(offers[code], packs[code, period])
        units = {part: _tidy(n * count) for part, n in offers[code].parts.items()}
        cost = _tidy(now.costs[code, period])
        lines.append(records.PackLine(offer=code, period=period, packs=count, units=units, cost=cost))
    return tuple(lines)


def _fee_lines(orders):
    return tuple(
        records.FeeLine(supplier=supplier, period=period, fee=_tidy(fee))
        for (supplier, period), fee in sorted(orders.fees.items())
    )


def _scenario(problem, number, acts, valued, money):
    scenario = problem.scenarios[number]
    offers = {offer.code: offer for offer in problem.offers}
    later = tuple(
        records.LaterLine(
            offer=code,
            period=period,
            packs=_packs(offers[code], packs),
            cost=_tidy(valued.later.costs[code, period]),
        )
        for (code, period), packs in sorted(acts.packs.items())
    )
    served, short = _served(scenario, acts)
    return records.ScenarioPlan(
        code=scenario.code,
        objective=_tidy(money),
        later=later,
        fees=_fee_lines(valued.later),
        served=served,
        short=short,
        made=tuple(
            records.MadeLine(recipe=recipe, period=period, units=_tidy(runs))
            for (recipe, period), runs in sorted(acts.made.items())
        ),
        hauled=_hauled(problem, acts),
        trips=tuple(
            records.TripLine(
                source=problem.hauls[line].source,
                target=problem.hauls[line].target,
                period=period,
                trips=count,
            )
            for (line, period), count in sorted(valued.trips.items())
        ),
        work=tuple(_tidy(minutes) for minutes in valued.work),
    )


def _served(scenario, acts):
    served, short = [], []
    for use in scenario.uses:
        units = acts.served.get(use.code, 0.0)
        if units > 0:
            served.append(records.UseLine(use=use.code, units=_tidy(units)))
        if use.units - units > SHORT:
            short.append(records.UseLine(use=use.code, units=_tidy(use.units - units)))
    return tuple(served), tuple(short)


def _hauled(problem, acts):
    lines = []
    for (line, part, period), units in sorted(
        acts.hauled.items(), key=lambda row: (row[0][2], row[0][0], row[0][1])
    ):
        haul = problem.hauls[line]
        lines.append(
            records.HauledLine(
                source=haul.source, target=haul.target, period=period, part=part, units=_tidy(units)
            )
        )
    return tuple(lines)
