"""The naive form of a sizing problem: one balance for each part, place, period and scenario, in plain PuLP.

Takes a Problem (with hauls, or pooled: then one place); gives the form with its size. Written from the problem's
meaning alone, sharing with the programme only the most packs a yes-or-no choice may allow: it is what the product's
form is measured by and checked against. Every part has its balances at every place; in the lean form, worth the same and
quicker to check against, a part that is touched at one place only has them there only.
"""

from dataclasses import dataclass, replace

import pulp

from planner.bench.naive_orders import Orders
from planner.sizing.records import Problem


@dataclass(frozen=True, kw_only=True)
class Naive:
    problem: Problem
    lp: pulp.LpProblem
    packs: dict  # (offer, period) -> expression of here-and-now packs

    @property
    def variables(self):
        return len(self.lp.variables())

    @property
    def rows(self):
        return len(self.lp.constraints())


def naive_form(problem, *, packs=None, lean=False):
    """The form; `packs` {(offer, period): packs} fixes the here-and-now order."""
    return _form(problem, places_of(problem, lean=lean), packs)


def naive_size(problem, *, lean=False):
    """(variables, rows) of the form without building the whole: scenarios differ in their uses only."""
    places = places_of(problem, lean=lean)
    bare = replace(problem.scenarios[0], uses=())
    none, one = (_form(replace(problem, scenarios=some), places, None) for some in ((), (bare,)))
    count, uses = len(problem.scenarios), [use for row in problem.scenarios for use in row.uses]
    variables = none.variables + count * (one.variables - none.variables) + len(uses)
    links = sum(1 for use in uses if use.needs_use)
    return variables, none.rows + count * (one.rows - none.rows) + links


def _form(problem, places, packs):
    lp = pulp.LpProblem("naive", pulp.LpMaximize)
    now = Orders(lp, problem, "now", None)
    if problem.budget is not None:
        lp += pulp.lpSum(now.spend()) <= problem.budget
    if packs is not None:
        for key, ordered in now.packs.items():
            lp += ordered == packs.get(key, 0)
    money = [_Scenario(lp, problem, number, now, places).money() for number in range(len(problem.scenarios))]
    expected = pulp.lpSum(row.probability * own for row, own in zip(problem.scenarios, money, strict=True))
    weight, share = problem.bad_years.weight, problem.bad_years.share
    objective = (1 - weight) * expected
    if weight:
        objective += weight * _mean_of_worst(lp, problem, money, share)
    lp.setObjective(objective - pulp.lpSum(now.spend()))
    return Naive(problem=problem, lp=lp, packs=now.packs)


def without_choices(problem):
    """The problem as a plain LP, alike in every form: no fees, packs in fractions at their first step's price."""
    return replace(
        problem,
        suppliers=tuple(replace(row, order_fee=0.0, free_from=None) for row in problem.suppliers),
        offers=tuple(replace(row, prices=row.prices[:1], whole=False) for row in problem.offers),
        whole_uses=False,
    )


def _mean_of_worst(lp, problem, money, share):
    """Mark less the mean shortfall below it over the share: its maximum is the mean of the worst share."""
    level = lp.add_variable("level")
    missing = []
    for number, own in enumerate(money):
        short = lp.add_variable(f"short_{number}", 0)
        lp += short >= level - own
        missing.append(problem.scenarios[number].probability / share * short)
    return level - pulp.lpSum(missing)


def places_of(problem, *, lean=False):
    """part -> places where it has balances: all of them, or (lean) the only one where anything touches it."""
    if not problem.hauls:
        return {part.code: (None,) for part in problem.parts}
    if not lean:
        return {part.code: tuple(problem.locations) for part in problem.parts}
    first = problem.locations[0]
    touched: dict = {part.code: set() for part in problem.parts}
    for row in (*problem.stock, *(a for s in problem.scenarios for a in s.arrivals)):
        touched[row.part].add(row.location)
    for offer in problem.offers:
        for part in offer.parts:
            touched[part].add(offer.location or first)
    for recipe in problem.recipes:
        for part in (*recipe.takes, *recipe.makes):
            touched[part].add(recipe.location or first)
    for use in (use for scenario in problem.scenarios for use in scenario.uses):
        for part in (*use.keeps, *use.spends):
            touched[part].add(use.location)
    return {
        part: tuple(problem.locations) if len(places) > 1 else tuple(places) or (first,)
        for part, places in touched.items()
    }


class _Scenario:
    """One scenario's variables and rows, gathered in `flows`: what is added to each balance."""

    def __init__(self, lp, problem, number, now, places):
        self.lp, self.problem, self.number = lp, problem, number
        self.facts = problem.scenarios[number]
        self.places = places
        self.flows: dict = {
            (part, place, period): []
            for part, places in self.places.items()
            for place in places
            for period in range(problem.periods)
        }
        self.terms: list = []
        self.minutes: list = [[] for _ in range(problem.periods)]
        self._given()
        later = Orders(lp, problem, "later", number)
        self._orders(now)
        self._orders(later)
        self.terms += [-1 * cost for cost in later.spend()]
        if problem.later_budget is not None:
            lp += pulp.lpSum(later.spend()) <= problem.later_budget
        self._uses()
        self._recipes()
        self._hauls()
        self._balances()
        self._work()

    def money(self):
        return pulp.lpSum(self.terms)

    def _variable(self, name, highest=None, whole=False):
        category = pulp.LpInteger if whole else pulp.LpContinuous
        return self.lp.add_variable(f"{name}_{self.number}", 0, highest, category)

    def _flow(self, part, location, period, amount):
        if period < self.problem.periods:
            place = (location or self.problem.locations[0]) if self.problem.hauls else None
            self.flows[part, place, period].append(amount)

    def _given(self):
        for row in (*self.problem.stock, *self.facts.arrivals):
            self._flow(row.part, row.location, row.period, row.quantity)

    def _orders(self, orders):
        for (code, period), packs in orders.packs.items():
            offer = orders.offers[code]
            landing = period + offer.lead_periods
            for part, units in offer.parts.items():
                self._flow(part, offer.location, landing, units * packs)
            if offer.work_minutes:
                self.minutes[landing].append(offer.work_minutes * packs)

    def _uses(self):
        served = {}
        ends = {part.code: part.end_value for part in self.problem.parts}
        for at, use in enumerate(self.facts.uses):
            variable = self._variable(f"use_{at}", use.units, self.problem.whole_uses)
            variable.lowBound = use.units if use.must else 0
            served[use.code] = variable
            worth = use.value
            for part, n in use.keeps.items():
                self._flow(part, use.location, use.first, -n * variable)
                self._flow(part, use.location, use.last + 1, n * variable)
                worth += n * ends[part] if use.last + 1 == self.problem.periods else 0
            for part, n in use.spends.items():
                self._flow(part, use.location, use.first, -n * variable)
            self.terms.append(worth * variable)
        for use in self.facts.uses:
            if use.needs_use:
                self.lp += served[use.code] <= use.per * served[use.needs_use]

    def _recipes(self):
        for at, recipe in enumerate(self.problem.recipes):
            for period in range(self.problem.periods - recipe.lead_periods):
                runs = self._variable(f"runs_{at}_{period}")
                for part, n in recipe.takes.items():
                    self._flow(part, recipe.location, period, -n * runs)
                for part, n in recipe.makes.items():
                    self._flow(part, recipe.location, period + recipe.lead_periods, n * runs)
                self.minutes[period].append(recipe.work_minutes * runs)
                self.terms.append(-recipe.cost * runs)

    def _hauls(self):
        everywhere = [part for part in self.problem.parts if len(self.places[part.code]) > 1]
        for line, haul in enumerate(self.problem.hauls):
            for period in range(self.problem.periods):
                load = []
                for at, part in enumerate(everywhere):
                    hauled = self._variable(f"haul_{line}_{at}_{period}")
                    self._flow(part.code, haul.source, period, -1 * hauled)
                    self._flow(part.code, haul.target, period, hauled)
                    cost = haul.cost_per_unit + haul.cost_per_lb * part.weight_lb
                    self.terms.append(-cost * hauled)
                    load.append(part.weight_lb * hauled)
                if haul.trip_lb is not None:
                    trips = self._variable(f"trips_{line}_{period}", whole=True)
                    self.lp += pulp.lpSum(load) <= haul.trip_lb * trips
                    self.terms.append(-haul.trip_cost * trips)

    def _balances(self):
        """idle at the end of t = idle at the end of t−1 + all that comes − all that goes."""
        last = self.problem.periods - 1
        for at, part in enumerate(self.problem.parts):
            holding = part.holding_cost
            for spot, place in enumerate(self.places[part.code]):
                before = None
                for period in range(self.problem.periods):
                    idle = self._variable(f"idle_{at}_{spot}_{period}")
                    comes = self.flows[part.code, place, period]
                    self.lp += idle == pulp.lpSum(comes if before is None else [before, *comes])
                    cost = holding[period] if isinstance(holding, tuple | list) else holding
                    self.terms.append((part.end_value * (period == last) - cost) * idle)
                    before = idle

    def _work(self):
        work = self.problem.work
        for period, minutes in enumerate(self.minutes):
            if work.minutes_per_period is not None:
                self.lp += pulp.lpSum(minutes) <= work.minutes_per_period[period]
            self.terms.append(-work.cost_per_hour / 60 * pulp.lpSum(minutes))
