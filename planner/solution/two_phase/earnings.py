"""What an order earns over the scenarios, with the cuts that bound every other order's earnings.

Takes the scenarios and the master's orders; gives earnings at packs and cuts by group of scenarios. Bad years are one
more group: the worst share's mean is bounded by its weights at this point. Where uses are merged, earnings are those
of a true plan, and cuts bound what uses served each for itself could earn.
"""

from dataclasses import dataclass

import numpy as np

from planner.solution.valuing import objective_of


@dataclass(frozen=True, kw_only=True)
class Earned:
    """At these packs: each scenario's own money, what it comes to, and (value, slopes) of each group."""

    packs: np.ndarray
    own: np.ndarray
    total: float
    cuts: list
    weights: np.ndarray  # of each scenario's money in the total
    loose: float  # what merged uses may hide of the total


class Earnings:
    def __init__(self, problem, recourse, keys, groups):
        self.problem, self.recourse, self.keys = problem, recourse, keys
        self.chances = np.array([scenario.probability for scenario in problem.scenarios])
        self.weight = problem.bad_years.weight if len(problem.scenarios) > 1 else 0.0
        self.share = problem.bad_years.share
        count = len(problem.scenarios)
        self.expected_groups = min(groups, count)
        self.group_of = np.arange(count) % self.expected_groups
        self.groups = self.expected_groups + (1 if self.weight else 0)

    def at(self, packs):
        """Earnings at these packs. Raises NoRecourse where a scenario cannot be lived."""
        own, slopes = self.recourse.evaluate(self.keys, packs)
        most = own + self.recourse.loose
        total = objective_of(self.problem, own.tolist())
        expected = (1 - self.weight) * self.chances
        cuts = []
        for group in range(self.expected_groups):
            chosen = self.group_of == group
            cuts.append((float(expected[chosen] @ most[chosen]), expected[chosen] @ slopes[chosen]))
        weights = expected
        if self.weight:
            tail = self.weight * self._tail(own)
            cuts.append((float(tail @ most), tail @ slopes))
            weights = weights + tail
        loose = float(weights @ self.recourse.loose)
        return Earned(packs=packs, own=own, total=total, cuts=cuts, weights=weights, loose=loose)

    def look_closer(self, earned, left):
        """Parts merged uses where they hide more than `left` of what was earned last; whether any were parted."""
        return earned.loose > left and self.recourse.part(0.9 * left)

    def of_keys(self, limit):
        """Terms of a limit as the keys go, and its least."""
        terms, least = limit
        return np.array([terms.get(key, 0.0) for key in self.keys]), least

    def _tail(self, own):
        """Weights of the worst share of the scenarios."""
        weights, left = np.zeros(len(own)), self.share
        for number in np.argsort(own, kind="stable"):
            weights[number] = min(left, self.chances[number])
            left -= weights[number]
            if left <= 1e-12:
                break
        return weights / weights.sum()
