"""The rule of thumb a keeper could work out on an envelope, and what an order costs.

Takes the operation, the assumptions and a sizing problem; gives {(offer, period): packs}: full hives for the target
less the expected survivors, a super a colony, the season's usual feed and consumables, less what is in store, in
whole packs at the cheapest suppliers, all lines cut alike to the budget. That the dead leave their hives, it does not
see: the keeper who counts on them no longer orders by thumb.
"""

import math
from collections import defaultdict
from decimal import Decimal

from planner.plan.pricing import priced
from planner.plan.words import cents
from planner.projection import home_set
from planner.trial.envelope import Envelope


def rule_of_thumb(operation, assumptions, problem):
    """(offer, period) -> packs, within the problem's budget."""
    wanted, owned = _wanted(operation, assumptions, problem), _owned(problem)
    instead = _combs_for_frames(operation)

    def shop(suppliers):
        """(pieces nobody of them sells, bill and evenings, packs)"""
        envelope = Envelope(
            problem, owned, hour_value=assumptions.hour_value, instead=instead, suppliers=suppliers
        )
        for part, pieces in wanted.items():
            envelope.want(part, pieces)
        packs = envelope.packs()
        evenings = envelope.minutes * assumptions.hour_value / 60
        return envelope.missing, float(bill_of(problem, packs)) + evenings, packs

    return cut_alike(problem, _fewest_fees(shop, {supplier.code for supplier in problem.suppliers}))


def _fewest_fees(shop, suppliers):
    """Packs from all suppliers, then from one fewer as long as that saves more in shipping than it costs in goods."""
    best = shop(suppliers)
    while len(suppliers) > 1:
        fewer = min(
            ((shop(suppliers - {code}), code) for code in sorted(suppliers)), key=lambda way: way[0][:2]
        )
        if fewer[0][:2] >= best[:2]:
            break
        best, suppliers = fewer[0], suppliers - {fewer[1]}
    return best[2]


def _owned(problem):
    """Pieces in store and on order. What the dead will leave, an envelope does not see."""
    owned: dict[str, float] = defaultdict(float)
    for stock in problem.stock:
        owned[stock.part] += stock.quantity
    return owned


def _combs_for_frames(operation):
    """frame with foundation -> the drawn combs of its depth, which serve as well."""
    combs: dict[str, list[str]] = defaultdict(list)
    for part in operation.parts:
        frame = operation.find_part(kind="frame", depth=part.depth, comb="foundation")
        if part.comb == "drawn" and frame:
            combs[frame.code].append(part.code)
    return combs


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
