"""What the season asks for of a part and all that is made of it: by week, by yard, in the mean and in most years.

Takes a sizing problem and its plan; gives arrays and the Peak of a line. A piece kept is counted while it is
kept, a piece spent from the week it is spent to the end. Uses that would cost more than they bring, and
alternatives the plan did not choose, ask for nothing.
"""

from collections import defaultdict
from functools import cached_property

import numpy as np

from planner.plan.records import Peak
from planner.plan.words import part_of_month, week_day


class Needs:
    def __init__(self, problem, plan, *, gear):
        """`gear`: codes of the parts that are gear; any other part is a token that only ties uses together."""
        self.problem, self.plan, self.gear = problem, plan, frozenset(gear)
        self.weights = np.array([scenario.probability for scenario in problem.scenarios])

    @cached_property
    def _served(self):
        return [
            {served.use: served.units for served in scenario.served}
            for scenario in sorted(self.plan.scenarios, key=self._place)
        ]

    def _place(self, solved):
        return self._places[solved.code]

    @cached_property
    def _places(self):
        return {scenario.code: number for number, scenario in enumerate(self.problem.scenarios)}

    @cached_property
    def _claims(self):
        """part -> [(scenario number, use, pieces a unit, units asked for, spent?)]."""
        claims = defaultdict(list)
        for number, scenario in enumerate(self.problem.scenarios):
            for use in scenario.uses:
                units = self._asked(number, use)
                if units <= 0:
                    continue
                for part, pieces in use.keeps.items():
                    claims[part].append((number, use, pieces, units, False))
                for part, pieces in use.spends.items():
                    claims[part].append((number, use, pieces, units, True))
        return claims

    def _asked(self, number, use):
        served = self._served[number].get(use.code, 0.0)
        tied = any(part not in self.gear for part in (*use.keeps, *use.spends))
        if use.must:
            return use.units
        return served if tied or use.value <= 0 else use.units

    def only_spent(self, chain):
        return not any(not spent for part in chain for *_, spent in self._claims[part])

    def asked(self, chain):
        """Pieces of the chain asked for, scenario × period."""
        return sum(self.asked_by_yard(chain).values(), self._blank())

    def asked_by_yard(self, chain):
        """yard -> pieces of the chain asked for there, scenario × period."""
        yards = defaultdict(self._blank)
        for part, factor in chain.items():
            for number, use, pieces, units, spent in self._claims[part]:
                until = None if spent else use.last + 1
                yards[use.location][number, use.first : until] += factor * pieces * units
        return dict(yards)

    def _blank(self):
        return np.zeros((len(self.problem.scenarios), self.problem.periods))

    def kinds(self, chain):
        """Kinds of use (the first word of their codes), those that ask for most pieces of the chain first."""
        kinds = defaultdict(float)
        for part, factor in chain.items():
            for number, use, pieces, units, _ in self._claims[part]:
                kinds[use.code.partition("/")[0]] += self.weights[number] * factor * pieces * units
        return tuple(sorted(kinds, key=lambda kind: (-kinds[kind], kind)))

    def starting(self, chain, number, period):
        """The first period from `period` on in which a use of the chain begins in that scenario, and by how
        much at each yard; the period itself and nothing where none begins."""
        yards, first = defaultdict(float), None
        for part, factor in chain.items():
            for claimed, use, pieces, units, _ in self._claims[part]:
                if claimed != number or use.first < period:
                    continue
                if first is None or use.first < first:
                    yards.clear()
                    first = use.first
                if use.first == first:
                    yards[use.location] += factor * pieces * units
        return (period, {}) if first is None else (first, dict(yards))

    def arrived(self, chain):
        """Pieces of the chain that scenarios give back (deadouts), cumulative, scenario × period."""
        arrived = self._blank()
        for number, scenario in enumerate(self.problem.scenarios):
            for arrival in scenario.arrivals:
                if arrival.part in chain:
                    arrived[number, arrival.period :] += chain[arrival.part] * arrival.quantity
        return arrived

    def peak(self, chain, *, start, names):
        """The week of most use in the mean season, what most seasons ask for then, and which yards."""
        yards = self.asked_by_yard(chain)
        asked = sum(yards.values(), self._blank())
        mean = self.weights @ asked
        if not mean.any():
            return None
        spent = self.only_spent(chain)
        week = int(mean.argmax())
        tops = asked.max(axis=1)
        low, high = quantile(tops, self.weights, 0.1), quantile(tops, self.weights, 0.9)
        at_peak = {yard: float(self.weights @ there[:, week]) for yard, there in yards.items()}
        return Peak(
            week=None if spent else week,
            starts_on=None if spent else week_day(start, week),
            words="over the season" if spent else part_of_month(week_day(start, week)),
            mean=round(float(self.weights @ tops)),
            low=round(low),
            high=round(high),
            returned=round(float(self.weights @ self.arrived(chain)[:, week])),
            yards=tuple(
                names.get(yard, yard)
                for yard in sorted(at_peak, key=lambda y: -at_peak[y])
                if at_peak[yard] > 0
            ),
        )


def quantile(values, weights, share):
    """The least value that at least `share` of the weight does not exceed."""
    order = np.argsort(values)
    reached = np.cumsum(weights[order])
    return float(values[order][min(len(values) - 1, int(np.searchsorted(reached, share - 1e-9)))])
