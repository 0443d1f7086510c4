"""Checks a plan against what the problem file means, from its lines alone: gear, minutes, units, period by period.

Takes a Problem without hauls and its Plan; asserts. Written apart from the programme and from the valuing of plans.
"""

ENOUGH = 1e-6


def assert_true(problem, plan):
    """No part is ever short, no period has more work than minutes, nothing is served or ordered beyond its limit."""
    for scenario, done in zip(problem.scenarios, plan.scenarios, strict=True):
        moves, minutes = _given(problem, scenario), [0.0] * problem.periods
        _orders(problem, (*plan.here_and_now, *done.later), moves, minutes)
        _recipes(problem, done, moves, minutes)
        _uses(scenario, done, moves)
        _nothing_short(problem, moves)
        for period, spent in enumerate(minutes):
            assert abs(spent - done.work[period]) < ENOUGH
            if problem.work.minutes_per_period is not None:
                assert spent <= problem.work.minutes_per_period[period] + ENOUGH, (scenario.code, period)


def _given(problem, scenario):
    return [(row.part, row.period, row.quantity) for row in (*problem.stock, *scenario.arrivals)]


def _orders(problem, lines, moves, minutes):
    offers = {offer.code: offer for offer in problem.offers}
    for line in lines:
        offer = offers[line.offer]
        assert line.period in offer.order_periods
        assert offer.max_packs is None or line.packs <= offer.max_packs + ENOUGH
        landing = line.period + offer.lead_periods
        moves += [(part, landing, n * line.packs) for part, n in offer.parts.items()]
        minutes[landing] += offer.work_minutes * line.packs


def _recipes(problem, done, moves, minutes):
    recipes = {recipe.code: recipe for recipe in problem.recipes}
    for line in done.made:
        recipe = recipes[line.recipe]
        assert line.units > 0
        moves += [(part, line.period, -n * line.units) for part, n in recipe.takes.items()]
        ready = line.period + recipe.lead_periods
        moves += [(part, ready, n * line.units) for part, n in recipe.makes.items()]
        minutes[line.period] += recipe.work_minutes * line.units


def _uses(scenario, done, moves):
    uses = {use.code: use for use in scenario.uses}
    for line in done.served:
        use = uses[line.use]
        assert 0 < line.units <= use.units + ENOUGH
        for part, n in use.keeps.items():
            moves += [(part, use.first, -n * line.units), (part, use.last + 1, n * line.units)]
        moves += [(part, use.first, -n * line.units) for part, n in use.spends.items()]


def _nothing_short(problem, moves):
    for part in problem.parts:
        for period in range(problem.periods):
            idle = sum(units for code, at, units in moves if code == part.code and at <= period)
            assert idle > -ENOUGH, f"{part.code} is {-idle} short in period {period}"
