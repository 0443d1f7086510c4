"""What many here-and-now orders are worth on one set of scenarios, each scenario's recourse doing its best.

Takes a Problem once, then orders {(offer, period): packs}; gives each scenario's contribution, the order's cost taken
off. One warm HiGHS programme a scenario, whose here-and-now columns are held at the order's packs.
"""

from planner.programme.blocks import linear_recourse
from planner.solution.records import INFEASIBLE
from planner.solution.solving import solve
from planner.solution.valuing import ordered
from planner.solution.warm import NoRecourse, WarmScenarios

__all__ = ["NoRecourse", "Recourse", "worths"]


def worths(problem, packs):
    """Each scenario's contribution under the order, in the problem's order of scenarios."""
    return Recourse(problem).worths(packs)


class Recourse:
    """The scenarios of one problem, ready to judge one order after another."""

    def __init__(self, problem):
        self.problem = problem
        self.linear = linear_recourse(problem)
        self.scenarios = WarmScenarios(problem).scenarios if self.linear else []

    def worths(self, packs):
        """Each scenario's contribution, here-and-now packs and fees taken off."""
        if not self.linear:
            return self._worths_of_plan(packs)
        spend = ordered(self.problem, packs).spend
        return [scenario.own(packs) - spend for scenario in self.scenarios]

    def worths_and_slopes(self, packs):
        """Worths, and for each scenario {(offer, period): own money one pack more would earn}, its price not taken
        off."""
        if not self.linear:
            raise ValueError("slopes need recourse without whole numbers")
        spend = ordered(self.problem, packs).spend
        found = [scenario.own_and_slopes(packs) for scenario in self.scenarios]
        return [own - spend for own, _ in found], [slopes for _, slopes in found]

    def _worths_of_plan(self, packs):
        plan = solve(self.problem, packs=packs, gap=1e-6, prices=False)
        if plan.status == INFEASIBLE:
            raise NoRecourse(self.problem.scenarios[0].code, packs)
        if not plan.is_order:
            raise RuntimeError(f"the order could not be judged: {plan.reason}")
        return [scenario.objective for scenario in plan.scenarios]
