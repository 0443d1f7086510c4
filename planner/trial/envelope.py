"""What is missing, bought as a keeper buys with pencil and envelope: own gear first, then whole packs where cheapest.

Takes pieces wanted, pieces owned and the offers of the order; gives {(offer, period): packs}. Gear in pieces is nailed
and fitted where that saves money, an evening's hour at its price. No budget here.
"""

import math
from collections import defaultdict
from decimal import Decimal

from planner.plan.pricing import priced

NEAR = 1e-9
OWN, BOUGHT = "own", "bought"


class Envelope:
    """Nets pieces one part after another, then turns what is to buy into packs of the suppliers allowed."""

    def __init__(self, problem, owned, *, hour_value, instead, suppliers):
        self.money, self.recipes, self.hour_value = problem.money, problem.recipes, hour_value
        self.offers = [
            offer
            for offer in problem.offers
            if offer.when == "now" and offer.order_periods and offer.supplier in suppliers
        ]
        self.instead = instead  # part -> owned parts that serve as well
        self.left = defaultdict(float, owned)
        self.to_buy: dict[str, float] = defaultdict(float)
        self.minutes = 0.0
        self.missing = 0.0  # pieces nobody sells

    def want(self, code, pieces):
        """So many pieces in the cheapest way; a way that uses own gear ends where that gear does."""
        while pieces > NEAR:
            cost, leaves, minutes = self.way(code)
            if cost == math.inf:
                self.missing += pieces
                return
            owned = {part: units for (kind, part), units in leaves.items() if kind == OWN}
            taken = min([pieces, *(self.left[part] / units for part, units in owned.items())])
            for (kind, part), units in leaves.items():
                if kind == OWN:
                    self.left[part] -= taken * units
                else:
                    self.to_buy[part] += taken * units
            self.minutes += taken * minutes
            pieces -= taken

    def way(self, code, above=()):
        """(cost, {(own or bought, part): units}, minutes of work) of the next piece; what is owned costs nothing."""
        for part in (*self.instead.get(code, ()), code):
            if self.left[part] > NEAR:
                return 0.0, {(OWN, part): 1.0}, 0.0
        best = min((self._each(offer) for offer in self._sellers(code)), default=math.inf)
        found = best, {(BOUGHT, code): 1.0}, 0.0
        for recipe in self.recipes:
            if code in recipe.makes and code not in above:
                found = min(found, self._made(recipe, code, above), key=lambda way: way[0])
        return found

    def _made(self, recipe, code, above):
        made = recipe.makes[code]
        cost = recipe.cost + recipe.work_minutes * self.hour_value / 60
        leaves: dict[tuple[str, str], float] = defaultdict(float)
        minutes = recipe.work_minutes
        for taken, units in recipe.takes.items():
            each, parts, work = self.way(taken, (*above, code))
            cost += units * each
            minutes += units * work
            for leaf, pieces in parts.items():
                leaves[leaf] += units * pieces
        return cost / made, {leaf: pieces / made for leaf, pieces in leaves.items()}, minutes / made

    def _sellers(self, code):
        return [offer for offer in self.offers if list(offer.parts) == [code]]

    @staticmethod
    def _each(offer):
        return min(step.price for step in offer.prices) / next(iter(offer.parts.values()))

    def packs(self):
        """Sets of several parts where they cost less than their parts, the rest by the part."""
        packs: dict[tuple[str, int], int] = defaultdict(int)
        left = dict(self.to_buy)
        for offer in self.offers:
            count = math.floor(min(left.get(part, 0.0) / units for part, units in offer.parts.items()) + NEAR)
            if len(offer.parts) > 1 and count >= 1:
                less = {part: left[part] - count * units for part, units in offer.parts.items()}
                saved = sum(
                    self._cheapest(part, left[part])[0] - self._cheapest(part, less[part])[0] for part in less
                )
                if priced(offer, count, self.money).cost < saved:
                    packs[offer.code, offer.order_periods[0]] += count
                    left.update(less)
        for part, units in left.items():
            _cost, offer, count = self._cheapest(part, units)
            if count:
                packs[offer.code, offer.order_periods[0]] += count
        return dict(packs)

    def _cheapest(self, part, units):
        """(cost, offer, packs) of so many pieces in whole packs of one offer, its price steps applied."""
        best = (Decimal(0), None, 0) if units <= NEAR else (Decimal("Infinity"), None, 0)
        for offer in self._sellers(part):
            count = math.ceil(units / offer.parts[part] - NEAR)
            if count > 0:
                best = min(
                    best, (priced(offer, count, self.money).cost, offer, count), key=lambda way: way[0]
                )
        return best
