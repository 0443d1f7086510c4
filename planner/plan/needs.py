"""What the season asks for of a part and all that is made of it, and what the plan puts to use: by week and yard.

Takes a sizing problem and its plan; gives arrays (scenario × period). A piece kept is counted while it is kept, a
piece spent from the week it is spent to the end. Uses that bring nothing ask for no more than the plan serves, and
so do alternatives that share a limit (tied by a token, a part that is no gear): only one of them is wanted.
"""

from collections import defaultdict
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from planner.sizing.records import Use


@dataclass(frozen=True, kw_only=True)
class Claim:
    """One use's hold on one part in one scenario."""

    scenario: int
    use: Use
    pieces: float  # a unit
    asked: float  # units
    served: float
    spent: bool

    @property
    def until(self):
        return None if self.spent else self.use.last + 1


class Needs:
    def __init__(self, problem, plan, *, gear):
        """`gear`: codes of the parts that are gear; any other part is a token."""
        self.problem, self.gear = problem, frozenset(gear)
        self.weights = np.array([scenario.probability for scenario in problem.scenarios])
        self.solved = {scenario.code: scenario for scenario in plan.scenarios}

    @cached_property
    def claims(self):
        """part -> claims on it."""
        claims = defaultdict(list)
        for number, scenario in enumerate(self.problem.scenarios):
            served = {line.use: line.units for line in self.solved[scenario.code].served}
            for use in scenario.uses:
                got = served.get(use.code, 0.0)
                asked = self._asked(use, got)
                if asked <= 0:
                    continue
                for pieces_of, spent in ((use.keeps, False), (use.spends, True)):
                    for part, pieces in pieces_of.items():
                        claims[part].append(
                            Claim(
                                scenario=number,
                                use=use,
                                pieces=pieces,
                                asked=asked,
                                served=got,
                                spent=spent,
                            )
                        )
        return claims

    def _asked(self, use, served):
        tied = any(part not in self.gear for part in (*use.keeps, *use.spends))
        return served if not use.must and (tied or use.value <= 0) else use.units

    def only_spent(self, chain):
        return all(claim.spent for part in chain for claim in self.claims[part])

    def asked(self, chain):
        """Pieces of the chain asked for, scenario × period."""
        return sum(self.asked_by_yard(chain).values(), self.blank())

    def asked_by_yard(self, chain):
        """yard -> pieces of the chain asked for there, scenario × period."""
        yards: dict[str, np.ndarray] = defaultdict(self.blank)
        for part, factor in chain.items():
            for claim in self.claims[part]:
                asked = yards[claim.use.location][claim.scenario]
                asked[claim.use.first : claim.until] += factor * claim.pieces * claim.asked
        return dict(yards)

    def served(self, chain):
        """Pieces of the chain put to use by the plan, scenario × period."""
        served = self.blank()
        for part, factor in chain.items():
            for claim in self.claims[part]:
                row = served[claim.scenario]
                row[claim.use.first : claim.until] += factor * claim.pieces * claim.served
        return served

    def blank(self):
        return np.zeros((len(self.problem.scenarios), self.problem.periods))

    def kinds(self, chain):
        """Kinds of use (the first word of their codes) the plan serves with the chain, most pieces first."""
        kinds: dict[str, float] = defaultdict(float)
        for part, factor in chain.items():
            for claim in self.claims[part]:
                weight = self.weights[claim.scenario] * factor
                kinds[claim.use.code.partition("/")[0]] += weight * claim.pieces * claim.served
        return tuple(
            sorted((kind for kind in kinds if kinds[kind] > 0), key=lambda kind: (-kinds[kind], kind))
        )

    def begins(self, part):
        """Whether a served use of the part begins, scenario × period."""
        begins = self.blank().astype(bool)
        for claim in self.claims[part]:
            if claim.served > 0:
                begins[claim.scenario, claim.use.first] = True
        return begins

    def starting(self, part, number, period):
        """Pieces of the part that uses beginning in that period take, by yard."""
        yards: dict[str, float] = defaultdict(float)
        for claim in self.claims[part]:
            if claim.scenario == number and claim.use.first == period and claim.served > 0:
                yards[claim.use.location] += claim.pieces * claim.served
        return dict(yards)

    def arrived(self, chain):
        """Pieces of the chain that scenarios give back (deadouts), cumulative, scenario × period."""
        arrived = self.blank()
        for number, scenario in enumerate(self.problem.scenarios):
            for arrival in scenario.arrivals:
                if arrival.part in chain:
                    arrived[number, arrival.period :] += chain[arrival.part] * arrival.quantity
        return arrived


def chances(drawn):
    """How likely each scenario or projection is; 1 together."""
    weights = np.array([each.probability for each in drawn])
    return weights / weights.sum()


def quantile(values, weights, share):
    """The least value that at least `share` of the weight does not exceed."""
    order = np.argsort(values)
    reached = np.cumsum(weights[order])
    return float(values[order][min(len(values) - 1, int(np.searchsorted(reached, share - 1e-9)))])
