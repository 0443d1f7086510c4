"""All that the reasons are read from, in one record: the books, the answers, the problem, its plan.

Takes the records of the stages before; gives names, owned pieces and the flows and needs of the plan.
"""

from collections import defaultdict
from dataclasses import dataclass
from functools import cached_property

from inventory.gear import Condition, Kind
from planner.beliefs.records import BeliefsSection
from planner.plan.flows import Flows, chain_of
from planner.plan.moves import moves_by_line
from planner.plan.needs import Needs
from planner.plan.records import Owned
from planner.plan.words import week_day
from planner.requirement.season_gear import plain
from planner.season.assumptions import Assumptions
from planner.season.operation import Operation
from planner.sizing.records import Problem
from planner.solution.nearby.records import Nearby
from planner.solution.records import Plan

USED_UP = (Kind.FEED, Kind.CONSUMABLE)


@dataclass(frozen=True, kw_only=True)
class Facts:
    """`nearby`: the order's neighbours, `checked`: the beliefs checked, each where the run asked for it."""

    operation: Operation
    assumptions: Assumptions
    problem: Problem
    plan: Plan
    nearby: Nearby | None = None
    checked: BeliefsSection | None = None

    @property
    def money(self):
        return self.operation.money

    @property
    def shed(self):
        return self.operation.shed

    @property
    def start(self):
        return self.operation.day

    def day(self, period):
        return week_day(self.start, period)

    @cached_property
    def parts(self):
        return {part.code: part for part in self.operation.parts}

    @cached_property
    def offers(self):
        return {offer.code: offer for offer in self.problem.offers}

    @cached_property
    def listed_offers(self):
        """The keeper's price list, by offer code."""
        return {offer.code: offer for offer in self.operation.offers}

    @cached_property
    def suppliers(self):
        return {supplier.code: supplier for supplier in self.problem.suppliers}

    @cached_property
    def supplier_names(self):
        return {supplier.code: supplier.name for supplier in self.operation.suppliers}

    @cached_property
    def yard_names(self):
        return {yard.code: yard.name for yard in self.operation.yards}

    @cached_property
    def flows(self):
        return Flows(self.problem, self.plan)

    @cached_property
    def needs(self):
        return Needs(self.problem, self.plan, gear=self.parts)

    @cached_property
    def moves(self):
        """(offer, period) -> one pack more, one fewer."""
        return moves_by_line(self.nearby, self)

    def chain(self, code):
        """The part and what is made of it; what is used up, and tokens that only tie uses, end the chain."""
        if code not in self.parts or self.parts[code].kind in USED_UP:
            return {code: 1.0}
        chain = chain_of(code, self.problem.recipes)
        return {part: factor for part, factor in chain.items() if part in self.parts}

    def used_in_making(self, code):
        """Pieces that making others uses up (paint, nails), of what is used up; nothing of what becomes a part."""
        if code in self.parts and self.parts[code].kind in USED_UP:
            return self.flows.taken(code)
        return self.needs.blank()

    @cached_property
    def _owned(self):
        """part planned as -> where or how -> pieces; combs of treated colonies count as what they are planned as."""
        owned: dict[str, dict[str, float]] = defaultdict(lambda: defaultdict(int))
        for line in self.operation.stock:
            owned[plain(line.part)][line.condition] += line.quantity
        for group in self.operation.colonies:
            for part, quantity in group.gear.items():
                owned[plain(part)]["on colonies"] += quantity
        for coming in self.operation.on_order:
            owned[plain(coming.part)]["on order"] += coming.quantity
        for stock in self.problem.stock:
            if stock.period == 0:
                owned[stock.part]["planned with"] += stock.quantity
        return owned

    def owned(self, code):
        """What the books know of each part of the chain, nothing left out that is not zero."""
        return tuple(
            self._owned_of(part)
            for part in self.chain(code)
            if part == code or any(self._owned[part].values())
        )

    def _owned_of(self, part):
        owned = self._owned[part]
        spare = owned["planned with"] - owned[Condition.SOUND]
        return Owned(
            part=part,
            name=self.parts[part].name,
            sound=owned[Condition.SOUND],
            on_colonies=owned["on colonies"],
            spare_on_colonies=min(max(0, round(spare)), owned["on colonies"]),
            to_mend=owned[Condition.TO_MEND],
            held=owned[Condition.HELD],
            on_order=owned["on order"],
        )

    def due(self, code):
        """The days on which what is on the way of the chain is due."""
        chain = self.chain(code)
        return sorted({line.due for line in self.operation.on_order if line.part in chain})
