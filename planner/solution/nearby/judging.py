"""What given orders are worth, every scenario's recourse re-solved, whatever they cost.

Takes a Problem, then orders {(offer, period): packs}; gives each one's objective, None where a must-use cannot be
served under it. One warm programme a scenario where recourse is linear; else a whole programme an order.
"""

from dataclasses import replace

from planner.programme.blocks import linear_recourse
from planner.solution.nearby.solved import Solved
from planner.solution.records import INFEASIBLE
from planner.solution.solving import solve
from planner.solution.valuing import objective_of, ordered
from planner.solution.warm import NoRecourse, WarmScenarios

FINE = 1e-6


class Judge:
    def __init__(self, problem):
        self.problem = replace(problem, budget=None)
        self.warm = WarmScenarios(self.problem) if linear_recourse(problem) else None

    def worths(self, orders, clock):
        """The objective of each order; where each takes a programme the last ones are left out when time runs out."""
        return (
            self._by_programmes(orders, clock)
            if self.warm is None
            else self._by_scenarios(self.warm.scenarios, orders)
        )

    def worth(self, order, clock):
        """The objective of one order, None where a must-use is not served or time runs out."""
        found = self.worths([order], clock)
        return found[0] if found else None

    def _by_scenarios(self, scenarios, orders):
        """All orders in one scenario after another: each starts where the one before ended, or is told by the first."""
        owns: list[list] = [[] for _ in orders]
        for scenario in scenarios:
            first = None
            for own, packs in zip(owns, orders, strict=True):
                told = None if first is None else first.own(packs)
                try:
                    own.append(scenario.own(packs) if told is None else told)
                    first = first or Solved(scenario, packs)
                except NoRecourse:
                    own.append(None)
        return [self._objective(own, packs) for own, packs in zip(owns, orders, strict=True)]

    def _objective(self, own, packs):
        if None in own:
            return None
        spend = ordered(self.problem, packs).spend
        return objective_of(self.problem, [money - spend for money in own])

    def _by_programmes(self, orders, clock):
        found: list = []
        for packs in orders:
            if clock.is_over():
                break
            held = {key: count for key, count in packs.items() if count}
            plan = solve(self.problem, packs=held, gap=FINE, seconds=clock.left(), prices=False)
            if plan.status != INFEASIBLE and (not plan.is_order or plan.gap is None or plan.gap > 10 * FINE):
                break
            found.append(plan.objective)
        return found
