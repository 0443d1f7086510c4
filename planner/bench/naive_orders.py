"""Orders in the naive form: packs by offer and period, price steps and fees, in plain PuLP.

Takes the problem and whether orders are here-and-now or one scenario's later ones; adds their variables and rows.
"""

from itertools import pairwise

import pulp

from planner.programme.most import Most


class Orders:
    """`packs` (offer, period) -> expression of packs; spend() gives all money terms, fees included."""

    def __init__(self, lp, problem, when, scenario):
        self.lp, self.problem = lp, problem
        self.mark = when if scenario is None else f"s{scenario}"
        self.most = Most(problem)
        self.offers = {offer.code: offer for offer in problem.offers if offer.when == when}
        self.packs: dict = {}
        self.costs: dict = {}
        self.fees: list = []
        for at, offer in enumerate(self.offers.values()):
            for period in offer.order_periods:
                if period + offer.lead_periods < problem.periods:
                    self._order(at, offer, period)
        self._fees()

    def spend(self):
        return [*self.costs.values(), *self.fees]

    def _variable(self, name, whole, highest=None):
        category = pulp.LpInteger if whole else pulp.LpContinuous
        return self.lp.add_variable(f"{name}_{self.mark}", 0, highest, category)

    def _order(self, at, offer, period):
        most = self.most.packs(offer, period)
        steps, columns = offer.prices, []
        for number in range(len(steps)):
            columns.append(self._variable(f"packs_{at}_{period}_{number}", offer.is_whole))
        if len(steps) > 1:
            rule = self._all_units if offer.price_rule == "all_units" else self._incremental
            rule(f"{at}_{period}", offer, columns, most)
        packs = pulp.lpSum(columns)
        if offer.max_packs is not None:
            self.lp += packs <= offer.max_packs
        self.packs[offer.code, period] = packs
        self.costs[offer.code, period] = pulp.lpSum(
            step.price * column for step, column in zip(steps, columns, strict=True)
        )

    def _all_units(self, name, offer, columns, most):
        chosen = [self._variable(f"step_{name}_{n}", True, 1) for n in range(len(columns))]
        for number, (step, column, choice) in enumerate(zip(offer.prices, columns, chosen, strict=True)):
            following = offer.prices[number + 1].from_packs if number + 1 < len(columns) else None
            top = most if following is None else following - (1 if offer.is_whole else 0)
            self.lp += column <= top * choice
            if number:
                self.lp += column >= step.from_packs * choice
        self.lp += pulp.lpSum(chosen) <= 1

    def _incremental(self, name, offer, columns, most):
        """A step's packs begin when the step before is full."""
        starts = [step.from_packs - 1 for step in offer.prices]
        lengths = [after - start for start, after in pairwise(starts)]
        for number, length in enumerate(lengths):
            opened = self._variable(f"open_{name}_{number}", True, 1)
            self.lp += columns[number] <= length
            self.lp += columns[number] >= length * opened
            self.lp += columns[number + 1] <= max(most - starts[number + 1], 0) * opened

    def _fees(self):
        for supplier in self.problem.suppliers:
            for period in sorted({t for code, t in self.packs if self._sells(supplier, code)}):
                fee = supplier.order_fee
                fee = fee[period] if isinstance(fee, tuple | list) else fee
                if fee and supplier.free_from != 0:
                    self._fee(supplier, period, fee)

    def _sells(self, supplier, code):
        return self.offers[code].supplier == supplier.code

    def _fee(self, supplier, period, fee):
        name = f"{supplier.code}_{period}"
        ordered = [key for key in self.packs if key[1] == period and self._sells(supplier, key[0])]
        placed = self._variable(f"placed_{name}", True, 1)
        for key in ordered:
            self.lp += self.packs[key] <= self.most.packs(self.offers[key[0]], period) * placed
        free = 0
        if supplier.free_from is not None:
            free = self._variable(f"free_{name}", True, 1)
            self.lp += pulp.lpSum(self.costs[key] for key in ordered) >= supplier.free_from * free
            self.lp += free <= placed
        self.fees.append(fee * (placed - free))
