"""The rule of thumb a keeper could work out on an envelope, and what an order costs.

Takes the operation, the assumptions and a sizing problem; gives {(offer, period): packs}: full hives for the target
less the expected survivors, a super a colony, the season's usual feed and consumables, less what is in store, in
whole packs at the cheapest offers, all lines cut alike to the budget.
"""

import math
from collections import defaultdict
from decimal import Decimal

from planner.plan.pricing import priced
from planner.plan.words import cents
from planner.projection import home_set


def rule_of_thumb(operation, assumptions, problem):
    """(offer, period) -> packs, within the problem's budget."""
    store = _Store(operation, assumptions, problem)
    for part, pieces in _wanted(operation, assumptions, problem).items():
        store.want(part, pieces)
    packs = {offer: math.ceil(units / size - 1e-9) for (offer, size), units in store.packs_of().items()}
    packs = {(offer, store.offers[offer].order_periods[0]): count for offer, count in packs.items() if count}
    return cut_alike(problem, packs)


def _wanted(operation, assumptions, problem):
    """Finished pieces a keeper would count up on an envelope."""
    wanted: dict[str, float] = defaultdict(float)
    colonies = sum(group.colonies for group in operation.colonies)
    survivors = round(colonies * assumptions.survival_share)
    target = colonies if assumptions.target_colonies is None else assumptions.target_colonies
    home = home_set(operation)
    if home is not None:
        for part, pieces in home.gear.items():
            wanted[_as_bought(operation, part)] += pieces * max(0, target - survivors)
        box = operation.find_part(kind="box", depth=assumptions.super_depth, width=home.width)
        frame = operation.find_part(kind="frame", depth=assumptions.super_depth, comb="foundation")
        if box and frame:
            wanted[box.code] += colonies
            wanted[frame.code] += colonies * home.width
    used_up = {part.code for part in operation.parts if part.kind in ("feed", "consumable")}
    for scenario in problem.scenarios:
        for use in scenario.uses:
            for part, pieces in use.spends.items():
                if use.must and part in used_up:
                    wanted[part] += scenario.probability * use.units * pieces
    return wanted


def _as_bought(operation, code):
    """A drawn comb is bought as a frame with foundation; all else as itself."""
    part = operation.part(code)
    if part.comb != "drawn":
        return code
    frame = operation.find_part(kind="frame", depth=part.depth, comb="foundation")
    return frame.code if frame else code


class _Store:
    """Nets what is wanted of what is in store and on order, explodes the rest, notes what to buy of whom."""

    def __init__(self, operation, assumptions, problem):
        self.hour_value = assumptions.hour_value
        self.left: dict[str, float] = defaultdict(float)
        for stock in problem.stock:
            self.left[stock.part] += stock.quantity
        self.offers = {
            offer.code: offer
            for offer in problem.offers
            if offer.when == "now" and len(offer.parts) == 1 and offer.order_periods
        }
        self.recipes = problem.recipes
        self.combs = defaultdict(list)
        for part in operation.parts:
            frame = operation.find_part(kind="frame", depth=part.depth, comb="foundation")
            if part.comb == "drawn" and frame:
                self.combs[frame.code].append(part.code)
        self.bought = defaultdict(float)

    def want(self, code, pieces):
        for owned in (*self.combs[code], code):
            used = min(pieces, self.left[owned])
            self.left[owned] -= used
            pieces -= used
        if pieces <= 1e-9:
            return
        _cost, offer, recipe = self.cheapest(code)
        if recipe is not None:
            for taken, units in recipe.takes.items():
                self.want(taken, units * pieces / recipe.makes[code])
        elif offer is not None:
            self.bought[offer.code] += pieces

    def cheapest(self, code, above=()):
        """(cost a piece, the offer, or the recipe) that gives the part most cheaply; (inf, None, None) if none."""
        best = (math.inf, None, None)
        for offer in self.offers.values():
            if code in offer.parts:
                each = min(step.price for step in offer.prices) / offer.parts[code]
                best = min(best, (each, offer, None), key=lambda way: way[0])
        for recipe in self.recipes:
            if code in recipe.makes and code not in above:
                work = recipe.work_minutes * self.hour_value / 60
                takes = sum(
                    units * self.cheapest(taken, (*above, code))[0] for taken, units in recipe.takes.items()
                )
                each = (takes + work + recipe.cost) / recipe.makes[code]
                best = min(best, (each, None, recipe), key=lambda way: way[0])
        return best

    def packs_of(self):
        """(offer, units a pack) -> units to buy."""
        sizes = {code: next(iter(self.offers[code].parts.values())) for code in self.bought}
        return {(code, sizes[code]): units for code, units in self.bought.items()}


def cut_alike(problem, packs):
    """The same share of every line, in whole packs, that the budget and the offers' limits allow."""
    limits = {offer.code: offer.max_packs for offer in problem.offers}
    packs = {
        key: count if limits[key[0]] is None else min(count, math.floor(limits[key[0]]))
        for key, count in packs.items()
    }
    if problem.budget is None or bill_of(problem, packs) <= cents(problem.budget):
        return {key: count for key, count in packs.items() if count}
    low, high = 0.0, 1.0
    for _ in range(30):
        middle = (low + high) / 2
        fits = bill_of(problem, _share(packs, middle)) <= cents(problem.budget)
        low, high = (middle, high) if fits else (low, middle)
    return {key: count for key, count in _share(packs, low).items() if count}


def _share(packs, share):
    return {key: math.floor(count * share + 0.5) for key, count in packs.items()}


def bill_of(problem, packs):
    """Goods and shipping of an order, to the cent."""
    offers = {offer.code: offer for offer in problem.offers}
    spent: dict[tuple[str, int], Decimal] = defaultdict(Decimal)
    for (code, period), count in packs.items():
        if count:
            spent[offers[code].supplier, period] += priced(offers[code], count, problem.money).cost
    suppliers = {supplier.code: supplier for supplier in problem.suppliers}
    return sum(
        (goods + _fee(suppliers[code], period, goods) for (code, period), goods in spent.items()), Decimal(0)
    )


def _fee(supplier, period, goods):
    if supplier.free_from is not None and goods >= cents(supplier.free_from):
        return Decimal(0)
    fee = supplier.order_fee
    return cents(fee if isinstance(fee, int | float) else fee[period])
