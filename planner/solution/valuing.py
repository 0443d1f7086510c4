"""Values a plan's acts afresh, from the problem alone: money by scenario, work by period, and the tightest balance.

Takes a Problem and Acts; gives each scenario's money. Uses nothing of the programme, so it proves it.
"""

from dataclasses import dataclass

from planner.solution.acts import ceil_trips

TOUCH = 1e-6


@dataclass(frozen=True, kw_only=True)
class Ordered:
    """Orders of one kind with their money."""

    costs: dict  # (offer, period) -> cost
    fees: dict  # (supplier, period) -> fee

    @property
    def spend(self):
        return sum(self.costs.values()) + sum(self.fees.values())


@dataclass(frozen=True, kw_only=True)
class Valued:
    """One scenario's own money (here-and-now cost not yet taken off)."""

    own: float
    later: Ordered
    work: tuple
    trips: dict  # (line, period) -> trips
    lowest: float  # least idle of any part, place and period


def costs_of(offer, packs):
    """What an order of so many packs costs: one price, or two where fractions just reach the next all_units step."""
    if packs <= 0:
        return (0.0,)
    starts = [step.from_packs for step in offer.prices]
    if offer.price_rule == "all_units":
        reached = [at for at, start in enumerate(starts) if at == 0 or packs >= start - 1e-9]
        prices = [offer.prices[reached[-1]].price]
        if not offer.is_whole and len(reached) > 1 and abs(packs - starts[reached[-1]]) < TOUCH:
            prices.append(offer.prices[reached[-2]].price)
        return tuple(sorted(packs * price for price in prices))
    cost = 0.0
    for at, step in enumerate(offer.prices):
        top = starts[at + 1] - 1 if at + 1 < len(starts) else float("inf")
        cost += max(min(packs, top) - (step.from_packs - 1), 0.0) * step.price
    return (cost,)


def ordered(problem, packs):
    """Costs and fees of orders {(offer, period): packs}."""
    offers = {offer.code: offer for offer in problem.offers}
    suppliers = {supplier.code: supplier for supplier in problem.suppliers}
    groups: dict[tuple, dict] = {}
    for (code, period), count in packs.items():
        if count > 0:
            groups.setdefault((offers[code].supplier, period), {})[code, period] = costs_of(
                offers[code], count
            )
    costs, fees = {}, {}
    for (code, period), group in groups.items():
        cheapest = _ordered_at(suppliers[code], period, {key: prices[0] for key, prices in group.items()})
        dearest = _ordered_at(suppliers[code], period, {key: prices[-1] for key, prices in group.items()})
        own, fee = min(cheapest, dearest, key=lambda found: sum(found[0].values()) + found[1])
        costs.update(own)
        if fee:
            fees[code, period] = fee
    return Ordered(costs=costs, fees=fees)


def _ordered_at(supplier, period, costs):
    """(costs, fee) of what one supplier gets in one period; a dearer step may earn free delivery."""
    fee = supplier.order_fee
    fee = fee[period] if isinstance(fee, tuple | list) else fee
    waived = supplier.free_from is not None and sum(costs.values()) >= supplier.free_from - TOUCH
    return costs, 0.0 if waived else fee


class Valuer:
    """Values the scenarios of one problem."""

    def __init__(self, problem):
        self.problem = problem
        self.offers = {offer.code: offer for offer in problem.offers}
        self.recipes = {recipe.code: recipe for recipe in problem.recipes}
        self.weights = {part.code: part.weight_lb for part in problem.parts}

    def value(self, number, packs, acts):
        """One scenario's money under here-and-now packs and its own acts."""
        later = ordered(self.problem, acts.packs)
        work = self._work(packs, acts)
        hauling, trips = self._hauling(acts)
        money = sum(acts.served.get(use.code, 0.0) * use.value for use in self._uses(number))
        money -= later.spend + hauling
        money -= sum(self.recipes[code].cost * runs for (code, _), runs in acts.made.items())
        money -= sum(work) / 60 * self.problem.work.cost_per_hour
        gear_money, lowest = self._gear(number, packs, acts)
        return Valued(own=money + gear_money, later=later, work=tuple(work), trips=trips, lowest=lowest)

    def _uses(self, number):
        return self.problem.scenarios[number].uses

    def _work(self, packs, acts):
        work = [0.0] * self.problem.periods
        for ordered_packs in (packs, acts.packs):
            for (code, period), count in ordered_packs.items():
                offer = self.offers[code]
                work[period + offer.lead_periods] += count * offer.work_minutes
        for (code, period), runs in acts.made.items():
            work[period] += runs * self.recipes[code].work_minutes
        return work

    def _hauling(self, acts):
        money = 0.0
        loads: dict[tuple, float] = {}
        for (line, part, period), units in acts.hauled.items():
            haul = self.problem.hauls[line]
            money += units * (haul.cost_per_unit + haul.cost_per_lb * self.weights[part])
            loads[line, period] = loads.get((line, period), 0.0) + units * self.weights[part]
        trips = {}
        for (line, period), load in loads.items():
            haul = self.problem.hauls[line]
            count = ceil_trips(load, haul.trip_lb) if haul.trip_lb is not None else 0
            if count:
                trips[line, period] = count
                money += count * haul.trip_cost
        return money, trips

    def _gear(self, number, packs, acts):
        """Holding cost and end value of what lies idle, and the least there is of anything."""
        changes, kept = self._changes(number, packs, acts)
        money = lowest = 0.0
        ends: dict[str, float] = {}
        costs = {part.code: part.holding_cost for part in self.problem.parts}
        for (_, part), change in changes.items():
            idle, holding = 0.0, costs[part]
            for period, step in enumerate(change[: self.problem.periods]):
                idle += step
                lowest = min(lowest, idle)
                money -= idle * (holding[period] if isinstance(holding, tuple | list) else holding)
            ends[part] = ends.get(part, 0.0) + idle
        for part in self.problem.parts:
            money += part.end_value * (ends.get(part.code, 0.0) + kept.get(part.code, 0.0))
        return money, lowest

    def _changes(self, number, packs, acts):
        """Net change of each part, place and period, and what uses still keep after the last period."""
        problem = self.problem
        changes: dict[tuple, list[float]] = {}
        kept: dict[str, float] = {}

        def change(location, part, period, units):
            place = None if not problem.hauls else problem.locations[0] if location is None else location
            row = changes.setdefault((place, part), [0.0] * (problem.periods + 1))
            row[period] += units

        for row in [*problem.stock, *problem.scenarios[number].arrivals]:
            change(row.location, row.part, row.period, row.quantity)
        for ordered_packs in (packs, acts.packs):
            for (code, period), count in ordered_packs.items():
                offer = self.offers[code]
                for part, n in offer.parts.items():
                    change(offer.location, part, period + offer.lead_periods, n * count)
        for (code, period), runs in acts.made.items():
            recipe = self.recipes[code]
            for part, n in recipe.takes.items():
                change(recipe.location, part, period, -n * runs)
            for part, n in recipe.makes.items():
                change(recipe.location, part, period + recipe.lead_periods, n * runs)
        for (line, part, period), units in acts.hauled.items():
            change(problem.hauls[line].source, part, period, -units)
            change(problem.hauls[line].target, part, period, units)
        for use in self._uses(number):
            units = acts.served.get(use.code, 0.0)
            if units:
                self._change_by_use(use, units, change, kept)
        return changes, kept

    def _change_by_use(self, use, units, change, kept):
        for part, n in use.spends.items():
            change(use.location, part, use.first, -n * units)
        for part, n in use.keeps.items():
            change(use.location, part, use.first, -n * units)
            change(use.location, part, use.last + 1, n * units)
            if use.last + 1 == self.problem.periods:
                kept[part] = kept.get(part, 0.0) + n * units


def objective_of(problem, money):
    """(1 − weight) × expected + weight × mean of the worst share, of the scenarios' money."""
    expected = sum(scenario.probability * own for scenario, own in zip(problem.scenarios, money, strict=True))
    weight, share = problem.bad_years.weight, problem.bad_years.share
    if not weight:
        return expected
    left, worst = share, 0.0
    for own, probability in sorted(zip(money, (s.probability for s in problem.scenarios), strict=True)):
        taken = min(left, probability)
        worst += own * taken
        left -= taken
        if left <= 1e-12:
            break
    return (1 - weight) * expected + weight * worst / (share - max(left, 0.0))
