"""The sizing problem written out period by period for scipy.optimize.milp: the plainest form, nothing merged.

Takes a Problem; gives its best objective, or None where it is infeasible. Shares no line with planner/programme.
"""

import numpy as np
from scipy.optimize import LinearConstraint, milp

MOST = 400.0  # more packs than any random problem can use


class Plain:
    """Columns and rows of one problem, gathered in lists."""

    def __init__(self, problem):
        self.p = problem
        self.lower, self.upper, self.whole, self.rows = [], [], [], []
        self.now = {}
        self.own = [{} for _ in problem.scenarios]

    def column(self, lower=0.0, upper=np.inf, whole=False):
        self.lower.append(lower)
        self.upper.append(upper)
        self.whole.append(int(whole))
        return len(self.lower) - 1

    def row(self, terms, lower, upper):
        self.rows.append((dict(terms), lower, upper))

    def orders(self, when, money):
        """[(offer, period, packs column)], fees and spend terms."""
        placed, spend, by_order = [], {}, {}
        for offer in self.p.offers:
            if offer.when != when:
                continue
            for period in offer.order_periods:
                if period + offer.lead_periods >= self.p.periods:
                    continue
                top = MOST if offer.max_packs is None else offer.max_packs
                packs = self.column(0, top, offer.is_whole)
                cost = self.steps(offer, packs)
                placed.append((offer, period, packs))
                by_order.setdefault((offer.supplier, period), []).append((packs, cost))
                for column, price in cost.items():
                    money[column] = money.get(column, 0) - price
                    spend[column] = spend.get(column, 0) + price
        for (supplier, period), rows in by_order.items():
            self.fee(supplier, period, rows, money, spend)
        return placed, spend

    def steps(self, offer, packs):
        """Cost terms of an order, by the price rule."""
        cost, parts, choices = {}, {packs: -1.0}, {}
        for at, step in enumerate(offer.prices):
            last = at + 1 == len(offer.prices)
            after = MOST if last else offer.prices[at + 1].from_packs
            inside, chosen = self.column(), self.column(0, 1, True)
            parts[inside] = 1.0
            cost[inside] = step.price
            choices[chosen] = 1.0
            if offer.price_rule == "all_units":
                low = step.from_packs if at else 0
                high = after if last or not offer.is_whole else after - 1
                self.row({inside: 1, chosen: -low}, 0, np.inf)
                self.row({inside: 1, chosen: -high}, -np.inf, 0)
            else:
                length = MOST if last else after - step.from_packs
                self.row({inside: 1, chosen: -length}, -np.inf, 0)
                if at:
                    self.row({before: 1, chosen: -full}, 0, np.inf)  # noqa: F821
                before, full = inside, length  # noqa: F841
        if offer.price_rule == "all_units":
            self.row(choices, 0, 1)
        self.row(parts, 0, 0)
        return cost

    def fee(self, code, period, rows, money, spend):
        supplier = next(s for s in self.p.suppliers if s.code == code)
        fee = supplier.order_fee
        fee = fee[period] if isinstance(fee, tuple) else fee
        placed, free = self.column(0, 1, True), self.column(0, 1, True)
        for packs, _ in rows:
            self.row({packs: 1, placed: -MOST}, -np.inf, 0)
        self.row({free: 1, placed: -1}, -np.inf, 0)
        if supplier.free_from is None:
            self.row({free: 1}, 0, 0)
        else:
            terms = {free: -supplier.free_from}
            for _, cost in rows:
                terms.update(cost)
            self.row(terms, 0, np.inf)
        for table, sign in ((money, -1), (spend, 1)):
            table[placed] = sign * fee
            table[free] = -sign * fee

    def scenario(self, number, now):
        p, money = self.p, self.own[number]
        later, spend = self.orders("later", money)
        if p.later_budget is not None:
            self.row(spend, -np.inf, p.later_budget)
        pooled = not p.hauls
        spots = [None] if pooled else list(p.locations)

        def at(location):
            return None if pooled else location or p.locations[0]

        change = {(l, q.code, t): ({}, [0.0]) for l in spots for q in p.parts for t in range(p.periods)}

        def move(location, part, period, column, n):
            if period < p.periods:
                terms = change[at(location), part, period][0]
                terms[column] = terms.get(column, 0) + n

        given = [*p.stock, *p.scenarios[number].arrivals]
        for row in given:
            change[at(row.location), row.part, row.period][1][0] += row.quantity
        work = [{} for _ in range(p.periods)]
        for offer, period, packs in [*now, *later]:
            landing = period + offer.lead_periods
            for part, n in offer.parts.items():
                move(offer.location, part, landing, packs, n)
            work[landing][packs] = offer.work_minutes
        kept_last = self.recipes_and_uses(number, move, work, money)
        self.hauls(move, money)
        self.work(work, money)
        self.balances(change, kept_last, money)

    def recipes_and_uses(self, number, move, work, money):
        p, kept_last = self.p, []
        for recipe in p.recipes:
            for t in range(p.periods - recipe.lead_periods):
                runs = self.column()
                for part, n in recipe.takes.items():
                    move(recipe.location, part, t, runs, -n)
                for part, n in recipe.makes.items():
                    move(recipe.location, part, t + recipe.lead_periods, runs, n)
                work[t][runs] = recipe.work_minutes
                money[runs] = -recipe.cost
        served = {}
        for use in p.scenarios[number].uses:
            column = served[use.code] = self.column(use.units if use.must else 0, use.units, p.whole_uses)
            money[column] = use.value
            for part, n in use.spends.items():
                move(use.location, part, use.first, column, -n)
            for part, n in use.keeps.items():
                move(use.location, part, use.first, column, -n)
                move(use.location, part, use.last + 1, column, n)
                if use.last + 1 == p.periods:
                    kept_last.append((part, column, n))
        for use in p.scenarios[number].uses:
            if use.needs_use:
                self.row({served[use.code]: 1, served[use.needs_use]: -use.per}, -np.inf, 0)
        return kept_last

    def hauls(self, move, money):
        for haul in self.p.hauls:
            for t in range(self.p.periods):
                load = {}
                for part in self.p.parts:
                    column = self.column()
                    move(haul.source, part.code, t, column, -1)
                    move(haul.target, part.code, t, column, 1)
                    money[column] = -(haul.cost_per_unit + haul.cost_per_lb * part.weight_lb)
                    load[column] = part.weight_lb
                if haul.trip_lb is not None:
                    trips = self.column(whole=True)
                    money[trips] = -haul.trip_cost
                    self.row({**load, trips: -haul.trip_lb}, -np.inf, 0)

    def work(self, work, money):
        limits = self.p.work.minutes_per_period
        for t, terms in enumerate(work):
            for column, minutes in terms.items():
                money[column] = money.get(column, 0) - minutes / 60 * self.p.work.cost_per_hour
            if limits is not None:
                self.row(terms, -np.inf, limits[t])

    def balances(self, change, kept_last, money):
        parts = {part.code: part for part in self.p.parts}
        idle = {key: self.column() for key in change}
        for (location, part, t), (terms, fixed) in change.items():
            terms[idle[location, part, t]] = -1.0
            if t:
                terms[idle[location, part, t - 1]] = 1.0
            self.row(terms, -fixed[0], -fixed[0])
            holding = parts[part].holding_cost
            money[idle[location, part, t]] = -(holding[t] if isinstance(holding, tuple) else holding)
            if t + 1 == self.p.periods:
                money[idle[location, part, t]] += parts[part].end_value
        for part, column, n in kept_last:
            money[column] += n * parts[part].end_value

    def best(self):
        now, spend = self.orders("now", self.now)
        if self.p.budget is not None:
            self.row(spend, -np.inf, self.p.budget)
        for number in range(len(self.p.scenarios)):
            self.scenario(number, now)
        costs = self.objective()
        matrix = np.zeros((len(self.rows), len(self.lower)))
        for at, (terms, _, _) in enumerate(self.rows):
            for column, n in terms.items():
                matrix[at, column] = n
        low, high = [row[1] for row in self.rows], [row[2] for row in self.rows]
        found = milp(
            -costs,
            constraints=LinearConstraint(matrix, low, high),
            integrality=self.whole,
            bounds=(self.lower, self.upper),
            options={"mip_rel_gap": 1e-9},
        )
        assert found.status in (0, 2), found.message
        return None if found.status == 2 else -found.fun

    def objective(self):
        weight, share = self.p.bad_years.weight, self.p.bad_years.share
        level = self.column(-np.inf)
        total = {column: money * (1 - weight) for column, money in self.now.items()}
        for scenario, own in zip(self.p.scenarios, self.own, strict=True):
            for column, money in own.items():
                total[column] = total.get(column, 0) + (1 - weight) * scenario.probability * money
            below = self.column()
            row = {level: -1.0, below: 1.0}
            for table in (self.now, own):
                for column, money in table.items():
                    row[column] = row.get(column, 0) + money
            self.row(row, 0, np.inf)
            total[below] = -weight * scenario.probability / share
        total[level] = weight
        costs = np.zeros(len(self.lower))
        for column, money in total.items():
            costs[column] += money
        return costs
