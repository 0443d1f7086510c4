"""What the plan leaves idle of each part, by scenario and period, and what each line brought to it.

Takes a sizing problem and its plan; gives arrays (scenario × period) under the problem's own balance, all
locations pooled. What is lost of a material is followed through all that is made of it, down to the pieces that
uses would go without: what was made ahead or for its end value alone is not a need. Solves nothing.
"""

from collections import defaultdict
from functools import cached_property

import numpy as np

HALF_A_PIECE = 0.5  # less than this is rounding of a fractional plan, not a shortage


class Flows:
    """The balance of every part in every scenario of one plan."""

    def __init__(self, problem, plan):
        self.problem, self.plan = problem, plan
        self.periods = problem.periods
        self.weights = np.array([scenario.probability for scenario in problem.scenarios])
        self.offers = {offer.code: offer for offer in problem.offers}
        self.recipes = {recipe.code: recipe for recipe in problem.recipes}
        self.solved = {scenario.code: scenario for scenario in plan.scenarios}

    def blank(self):
        return np.zeros((len(self.problem.scenarios), self.periods))

    @cached_property
    def idle(self):
        """Idle at the end of each period, by part: what the order and the season leave lying."""
        moved: dict[str, np.ndarray] = defaultdict(self.blank)
        for part, change in self._supplied().items():
            moved[part] += change
        for number, scenario in enumerate(self.problem.scenarios):
            self._add_scenario(moved, number, scenario)
        for code, begun in self.made.items():
            self._add_recipe(moved, self.recipes[code], begun)
        return {part: np.cumsum(change, axis=1) for part, change in moved.items()}

    @cached_property
    def made(self):
        """Recipe -> how often it is begun, scenario × period."""
        made: dict[str, np.ndarray] = defaultdict(self.blank)
        for number, scenario in enumerate(self.problem.scenarios):
            for begun in self.solved[scenario.code].made:
                made[begun.recipe][number, begun.period] += begun.units
        return dict(made)

    def taken(self, part):
        """Pieces of the part that making other parts has used up by the end of each period."""
        taken = self.blank()
        for code, begun in self.made.items():
            taken += self.recipes[code].takes.get(part, 0.0) * begun
        return np.cumsum(taken, axis=1)

    def brought(self, offer_code, period, packs):
        """Units each part gains by the end of each period from packs of one offer ordered in a period."""
        offer = self.offers[offer_code]
        lands = np.arange(self.periods) >= period + offer.lead_periods
        return {part: lands * float(units * packs) for part, units in offer.parts.items()}

    def missing(self, part, gained):
        """part -> pieces missing (scenario × period) of it and of all that is made of it, had `gained` not come."""
        lost: dict[str, np.ndarray] = defaultdict(self.blank)
        lost[part] = lost[part] + gained
        for code in reversed(products_first(self.recipes.values())):
            if code in self.made and lost.keys() & self.recipes[code].takes.keys():
                unmade = self._unmade(self.recipes[code], lost)
                for product, units in self.recipes[code].makes.items():
                    lost[product] = lost[product] + units * later(unmade, self.recipes[code].lead_periods)
        return {part: self._gap(part, pieces) for part, pieces in lost.items()}

    def _gap(self, part, lost):
        return np.maximum(0.0, lost - self.idle.get(part, self.blank()))

    def _unmade(self, recipe, lost):
        """How much less is made by each period's end: the scarcest material decides, shared by how it was used."""
        unmade = self.blank()
        for part, units in recipe.takes.items():
            if part in lost:
                here = np.cumsum(units * self.made[recipe.code], axis=1)
                whole = np.maximum(self.taken(part), 1e-12)
                unmade = np.maximum(unmade, self._gap(part, lost[part]) * here / whole / units)
        return np.minimum(unmade, np.cumsum(self.made[recipe.code], axis=1))

    def _supplied(self):
        moved: dict[str, np.ndarray] = defaultdict(lambda: np.zeros(self.periods))
        for stock in self.problem.stock:
            moved[stock.part][stock.period] += stock.quantity
        for line in self.plan.here_and_now:
            offer = self.offers[line.offer]
            if line.period + offer.lead_periods < self.periods:
                for part, units in offer.parts.items():
                    moved[part][line.period + offer.lead_periods] += units * line.packs
        return moved

    def _add_scenario(self, moved, number, scenario):
        solved = self.solved[scenario.code]
        for arrival in scenario.arrivals:
            moved[arrival.part][number, arrival.period] += arrival.quantity
        for line in solved.later:
            offer = self.offers[line.offer]
            if line.period + offer.lead_periods < self.periods:
                for part, units in offer.parts.items():
                    moved[part][number, line.period + offer.lead_periods] += units * line.packs
        uses = {use.code: use for use in scenario.uses}
        for served in solved.served:
            use = uses[served.use]
            for part, units in use.spends.items():
                moved[part][number, use.first] -= units * served.units
            for part, units in use.keeps.items():
                moved[part][number, use.first] -= units * served.units
                if use.last + 1 < self.periods:
                    moved[part][number, use.last + 1] += units * served.units

    def _add_recipe(self, moved, recipe, begun):
        for part, units in recipe.takes.items():
            moved[part] -= units * begun
        landed = later(begun, recipe.lead_periods)
        for part, units in recipe.makes.items():
            moved[part] += units * landed


def later(begun, periods):
    """The same amounts so many periods later; what falls past the horizon is dropped."""
    if not periods:
        return begun
    moved = np.zeros_like(begun)
    moved[:, periods:] = begun[:, :-periods]
    return moved


def products_first(recipes):
    """Recipe codes so that a recipe comes after all that take what it makes (circles broken where met)."""
    recipes = {recipe.code: recipe for recipe in recipes}
    takers = defaultdict(list)
    for recipe in recipes.values():
        for part in recipe.takes:
            takers[part].append(recipe.code)
    done, order = set(), []

    def visit(code):
        if code in done:
            return
        done.add(code)
        for part in recipes[code].makes:
            for taker in takers[part]:
                visit(taker)
        order.append(code)

    for code in recipes:
        visit(code)
    return order


def chain_of(part, recipes):
    """The part and all that is made of it, each with how many of `part` go into one of it."""
    chain, waiting = {part: 1.0}, [part]
    while waiting:
        taken = waiting.pop()
        for recipe in recipes:
            for product, made in recipe.makes.items():
                if taken in recipe.takes and product not in chain:
                    chain[product] = chain[taken] * recipe.takes[taken] / made
                    waiting.append(product)
    return chain
