"""What the order leaves open: uses left out, what is bought in season, parts nobody sells, need by week and yard.

Takes the facts of a plan; gives the report's sections as records, means over the seasons by their probability.
"""

from collections import defaultdict

import numpy as np

from planner.plan.flows import HALF_A_PIECE
from planner.plan.gear_words import pieces
from planner.plan.needs import quantile
from planner.plan.records import LaterLine, NoOffer, PartUnits, Requirement, Shortage
from planner.plan.use_words import what_of
from planner.plan.words import cents, day_words, number, of_100, sum_words
from planner.requirement import by_week

PULLED_EARLY = "left-on/"  # a super not left on to the end was pulled in mid-flow: a choice, nothing left out


def shortages(facts):
    """Uses that would pay and are left out, by what they are, dearest first; and at which yards most."""
    tallies: dict[str, Tally] = defaultdict(Tally)
    solved = {scenario.code: scenario for scenario in facts.plan.scenarios}
    for scenario in facts.problem.scenarios:
        short = {item.use: item.units for item in solved[scenario.code].short}
        met = set()
        for use in scenario.uses:
            if use.must or use.value <= 0 or use.code.startswith(PULLED_EARLY):
                continue
            what, units = what_of(use.code), short.get(use.code, 0.0)
            tallies[what].add(scenario.probability, use, units)
            if units >= HALF_A_PIECE and what not in met:
                met.add(what)
                tallies[what].hit += scenario.probability
    rows = [tally.row(what, facts) for what, tally in tallies.items() if tally.hit > 0]
    return tuple(sorted(rows, key=lambda row: (-row.lost, row.what)))


class Tally:
    """Means over the seasons of one kind of use: wanted, left out, its worth, and where."""

    def __init__(self):
        self.wanted = self.left = self.lost = self.hit = 0.0
        self.yards = defaultdict(float)

    def add(self, chance, use, units):
        self.wanted += chance * use.units
        self.left += chance * units
        self.lost += chance * units * use.value
        self.yards[use.location] += chance * units * use.value

    def row(self, what, facts):
        yards = [yard for yard, lost in self.yards.items() if lost > 0 and yard != facts.shed]
        yards.sort(key=lambda yard: (-self.yards[yard], yard))
        return Shortage(
            what=what,
            wanted=round(self.wanted, 1),
            left_out=round(self.left, 1),
            lost=cents(self.lost),
            in_100=of_100(self.hit),
            yards=tuple(facts.yard_names.get(yard, yard) for yard in yards),
        )


def later_lines(facts):
    """Bought once the season has shown its need: mean packs and money, and in how many seasons of 100."""
    packs: dict[str, float] = defaultdict(float)
    cost: dict[str, float] = defaultdict(float)
    hit: dict[str, float] = defaultdict(float)
    chance = {scenario.code: scenario.probability for scenario in facts.problem.scenarios}
    for scenario in facts.plan.scenarios:
        met = set()
        for line in scenario.later:
            packs[line.offer] += chance[scenario.code] * line.packs
            cost[line.offer] += chance[scenario.code] * line.cost
            if line.packs > 1e-6 and line.offer not in met:
                met.add(line.offer)
                hit[line.offer] += chance[scenario.code]
    rows = [_later(code, packs[code], cost[code], hit[code], facts) for code in packs if hit[code] > 0]
    return tuple(sorted(rows, key=lambda row: (-row.cost, row.offer)))


def _later(code, packs, cost, hit, facts):
    offer, listed = facts.offers[code], facts.listed_offers.get(code)
    units = tuple(
        PartUnits(
            part=part, name=facts.parts[part].name, unit=facts.parts[part].unit, units=round(each * packs)
        )
        for part, each in offer.parts.items()
        if part in facts.parts
    )
    name = listed.name if listed else ", ".join(facts.parts[unit.part].name for unit in units) or code
    return LaterLine(offer=code, name=name, units=units, cost=cents(cost), in_100=of_100(hit))


def no_offers(facts):
    """Parts the season asks for that the keeper's list neither sells nor gives the makings of."""
    able = obtainable(facts)
    rows = []
    for code, part in facts.parts.items():
        if code in able or not facts.needs.asked({code: 1.0}).any():
            continue
        missing = facts.needs.asked({code: 1.0}) - _had(code, facts)
        worst = missing.max(axis=1)
        most = quantile(worst, facts.flows.weights, 0.9)
        if most < HALF_A_PIECE:
            continue
        by = facts.day(int(np.argmax((missing >= HALF_A_PIECE).any(axis=0))))
        text = (
            f"No offer for {pieces(part)}: nobody on your price list sells them. "
            f"Up to {number(most)} more are needed, the first by {day_words(by)}; "
            f"{_instead(code, facts)}"
        )
        rows.append(NoOffer(part=code, name=part.name, missing=round(most), by=by, text=text))
    return tuple(rows)


def _instead(code, facts):
    """What was reckoned with where nobody lists a part: bought in season at a guessed price, or done without."""
    offer = in_season(facts).get(code)
    if offer is None:
        return "enter a price for them, or do without."
    price = sum_words(cents(offer.prices[0].price), facts.money, cents_too=True)
    limit = "" if offer.max_packs is None else f", at most {number(offer.max_packs)} an order"
    return f"bought in season they are reckoned at {price} each{limit}. Enter a price for them to order in winter."


def in_season(facts):
    """Part -> the offer by which it is bought singly once the season shows its need."""
    return {
        next(iter(offer.parts)): offer
        for offer in facts.problem.offers
        if offer.code not in facts.listed_offers and len(offer.parts) == 1
    }


def obtainable(facts):
    """Parts on the price list and all that recipes make of them, of what is in store and of tokens."""
    able = {part for offer in facts.operation.offers for part in offer.parts}
    able |= {part.code for part in facts.problem.parts if part.code not in facts.parts}
    grown = True
    while grown:
        before = len(able)
        for recipe in facts.problem.recipes:
            if all(part in able for part in recipe.takes):
                able |= set(recipe.makes)
        grown = len(able) > before
    return able


def _had(code, facts):
    had = facts.needs.arrived({code: 1.0})
    for stock in facts.problem.stock:
        if stock.part == code:
            had[:, stock.period :] += stock.quantity
    return had


def requirement(facts):
    """What is asked for by part, week and yard: all yards together first, then each."""
    rows = []
    for line in by_week(facts.operation, facts.problem):
        part = facts.parts.get(line.part)
        if part is not None:
            rows.append(
                Requirement(
                    part=part.code,
                    name=part.name,
                    unit=part.unit,
                    yard=line.yard,
                    yard_name=facts.yard_names.get(line.yard, line.yard) if line.yard else "all yards",
                    mean=tuple(round(each, 1) for each in line.mean),
                    high=tuple(round(each, 1) for each in line.high),
                )
            )
    return tuple(rows)
