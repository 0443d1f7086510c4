"""The most packs of an order that can be of any use: what ties packs to yes-or-no choices (fees, price steps).

Takes a problem; gives bounds that cut off no best plan. A pack more than all uses and recipes could ever ask for
earns at most its end value; a price step or free delivery may ask for more, the budget may allow no more.
"""

import math
from functools import lru_cache

INFINITE = float("inf")


class Most:
    """Answers `packs(offer, period)`; keeps what it has worked out."""

    def __init__(self, problem, *, limits_give=False):
        self.problem = problem
        self.limits_give = limits_give  # budgets and max_packs may be overstepped
        self.suppliers = {supplier.code: supplier for supplier in problem.suppliers}
        self.supply = _supply(problem)
        self.gain = _gain(problem)
        self.asked = [_asked(scenario) for scenario in problem.scenarios]
        self.wanted_from = lru_cache(maxsize=None)(self._wanted_from)
        self.wanted_beyond_stock = self._wanted_from(0, _lying(problem))

    def packs(self, offer, period):
        """No best plan orders more packs of this offer in this period."""
        wanted, beyond = self.wanted_from(period + offer.lead_periods), self.wanted_beyond_stock
        most = max((min(wanted[part], beyond[part]) / n for part, n in offer.parts.items() if n), default=0.0)
        lowest = min(step.price for step in offer.prices)
        most = max(most, offer.prices[-1].from_packs)
        free_from = self.suppliers[offer.supplier].free_from
        if free_from and lowest > 0:
            most = max(most, free_from / lowest)
        pays = sum(n * self.gain[part] for part, n in offer.parts.items()) > lowest
        if pays and offer.max_packs is not None:
            most = max(most, offer.max_packs)
        budget = self.problem.budget if offer.when == "now" else self.problem.later_budget
        if budget is not None and lowest > 0 and not self.limits_give:
            most = budget / lowest if pays else min(most, budget / lowest)
        most = math.ceil(most - 1e-9) if offer.is_whole else most
        return most if offer.max_packs is None or self.limits_give else min(most, offer.max_packs)

    def _wanted_from(self, landing, stock=None):
        """Units of each part that uses begun from this period on, and recipes for them, can ask for beyond stock."""
        problem, stock = self.problem, stock or {}
        asked = dict.fromkeys((part.code for part in problem.parts), 0.0)
        for spent, kept in self.asked:
            for part, units in _most_at_once(spent, kept, landing).items():
                asked[part] = max(asked[part], units)
        wanted = {part: max(units - stock.get(part, 0.0), 0.0) for part, units in asked.items()}
        for _ in range(len(problem.recipes) + 1):
            before, gross = wanted, dict(asked)
            for recipe in problem.recipes:
                runs = max((before[part] / n for part, n in recipe.makes.items() if n), default=0.0)
                runs += self._runs_for_gain(recipe)
                for part, n in recipe.takes.items():
                    gross[part] += n * runs
            wanted = {part: max(units - stock.get(part, 0.0), 0.0) for part, units in gross.items()}
            if wanted == before:
                break
        return wanted

    def _runs_for_gain(self, recipe):
        """Runs worth while for the end value alone: as many as the scarcest part or the work allows."""
        made = sum(n * self.gain[part] for part, n in recipe.makes.items())
        if made <= recipe.cost:
            return 0.0
        limits = [self.supply[part] / n for part, n in recipe.takes.items() if n]
        minutes = self.problem.work.minutes_per_period
        if minutes is not None and recipe.work_minutes:
            limits.append(sum(minutes) / recipe.work_minutes)
        runs = min(limits)
        return runs if runs < INFINITE else 0.0


def _lying(problem):
    """Units of each part there from the start, where gear goes anywhere free."""
    lying: dict[str, float] = {}
    for row in problem.stock:
        if row.period == 0 and not problem.hauls:
            lying[row.part] = lying.get(row.part, 0.0) + row.quantity
    return lying


def _asked(scenario):
    """What a scenario's uses spend, by part and first period, and keep, by part, first period and period of return."""
    spent: dict[tuple, float] = {}
    kept: dict[tuple, float] = {}
    for use in scenario.uses:
        for part, n in use.spends.items():
            spent[part, use.first] = spent.get((part, use.first), 0.0) + n * use.units
        for part, n in use.keeps.items():
            key = part, use.first, use.last + 1
            kept[key] = kept.get(key, 0.0) + n * use.units
    return spent, kept


def _most_at_once(spent, kept, landing):
    """part -> units that uses begun from this period on spend, and the most they keep at one time."""
    asked: dict[str, float] = {}
    for (part, first), units in spent.items():
        if first >= landing:
            asked[part] = asked.get(part, 0.0) + units
    changes: dict[str, dict[int, float]] = {}
    for (part, first, back), units in kept.items():
        if first >= landing:
            change = changes.setdefault(part, {})
            change[first] = change.get(first, 0.0) + units
            change[back] = change.get(back, 0.0) - units
    for part, change in changes.items():
        held = peak = 0.0
        for period in sorted(change):
            held += change[period]
            peak = max(peak, held)
        asked[part] = asked.get(part, 0.0) + peak
    return asked


def _supply(problem):
    """Units of each part there can be at all, infinite where an offer sells any number."""
    supply = dict.fromkeys((part.code for part in problem.parts), 0.0)
    for row in problem.stock:
        supply[row.part] += row.quantity
    for scenario in problem.scenarios:
        for row in scenario.arrivals:
            supply[row.part] += row.quantity
    for offer in problem.offers:
        orders = INFINITE if offer.max_packs is None else offer.max_packs * len(offer.order_periods)
        for part, n in offer.parts.items():
            supply[part] += n * orders if n and orders else 0.0
    for _ in problem.recipes:
        grown = dict(supply)
        for recipe in problem.recipes:
            runs = min(supply[part] / n for part, n in recipe.takes.items() if n)
            for part, n in recipe.makes.items():
                grown[part] += n * runs if n and runs else 0.0
        supply = grown
    return supply


def _gain(problem):
    """Money a unit of each part can come to at the end, itself or through recipes."""
    gain = {part.code: max(part.end_value, 0.0) for part in problem.parts}
    for _ in problem.recipes:
        for recipe in problem.recipes:
            made = sum(n * gain[part] for part, n in recipe.makes.items()) - recipe.cost
            for part, n in recipe.takes.items():
                if n:
                    gain[part] = max(gain[part], made / n)
    return gain
