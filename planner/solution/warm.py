"""Scenarios' recourse as HiGHS programmes kept warm: one block a scenario, its here-and-now packs held.

Takes a Problem with linear recourse; gives each scenario's own money under an order, and the prices of its columns.
"""

import highspy
import numpy as np

from planner.programme.blocks import block
from planner.programme.merging import merging_of
from planner.solution.acts import acts_of
from planner.solution.merged import MergedUses
from planner.solution.plain import model_of, solver_of


class NoRecourse(Exception):
    """A scenario's must-uses cannot be served under an order; `limit` ({order: term}, least) says which orders can."""

    def __init__(self, scenario, packs, limit=None):
        self.scenario, self.packs, self.limit = scenario, packs, limit
        super().__init__(f'under this order the must-uses of scenario "{scenario}" cannot be served')


class WarmScenarios:
    """The scenarios of one problem, each with its programme; `merge` has uses alike across yards share columns."""

    def __init__(self, problem, started=None, *, merge=False):
        self.scenarios = []
        for number in range(len(problem.scenarios)):
            self.scenarios.append(ScenarioRecourse(problem, number, merge=merge))
            if started is not None:
                started(number + 1)
        self.loose = np.zeros(len(self.scenarios))  # at the last order: what merging may hide, by scenario

    def evaluate(self, keys, counts):
        """Arrays: each scenario's own money (cost not taken off), and by scenario and key the slope of it."""
        found = one_by_one(self.scenarios, keys, counts)
        self.loose = np.array([scenario.loose() for scenario in self.scenarios])
        return found

    def part(self, left):
        """Parts merged uses of scenarios that hide more than `left` at the last order; whether any were."""
        hiding = np.flatnonzero(self.loose > left)
        parted = [self.scenarios[at].part(left) for at in hiding]
        return any(parted)


def one_by_one(scenarios, keys, counts):
    """Arrays of these scenarios: each one's own money, and by scenario and key the slope of it."""
    own, slopes = np.zeros(len(scenarios)), np.zeros((len(scenarios), len(keys)))
    packs = dict(zip(keys, counts.tolist(), strict=True))
    for at, scenario in enumerate(scenarios):
        own[at], prices = scenario.own_and_prices(packs)
        slopes[at] = prices[scenario.places(keys)]
    return own, slopes


class ScenarioRecourse:
    """One scenario's block as a HiGHS programme that keeps its basis from order to order."""

    def __init__(self, problem, number, *, merge=False):
        self.code = problem.scenarios[number].code
        merging = merging_of(problem, number) if merge else None
        self.block = block(problem, number, merging)
        self.keys = list(self.block.orders)
        self.columns = np.array([column.number for column in self.block.orders.values()], dtype=np.int32)
        self.held = np.zeros(len(self.keys))
        self.solver = solver_of(model_of(self.block, self.block.constant))
        self._hold(self.held)
        self.merged = None if merging is None else MergedUses(merging, self.block, self.solver)

    def loose(self):
        """What the scenario may earn beyond what merged uses do: at the last order, and beyond its cut at any other."""
        return 0.0 if self.merged is None else self.merged.loose()

    def part(self, left):
        """Parts merged uses until at the last order's prices no more than `left` is hidden; whether any were."""
        return self.merged is not None and self.merged.part(left)

    def acts(self, packs):
        """What is done under the last order, {(offer, period): packs}."""
        if self.merged is not None:
            self.merged.tell_served()
        values = dict(zip(self.block.columns, self.values(), strict=True))
        return acts_of(self.block.programme, values, packs).scenarios[0]

    def own(self, packs):
        """The scenario's own money under the order, its cost not taken off."""
        self._hold(self._packs(packs))
        self._run(packs)
        return self.solver.getInfo().objective_function_value

    def own_and_slopes(self, packs):
        """Own money and {(offer, period): what one pack more would add to it}."""
        own, prices = self.own_and_prices(packs)
        return own, {key: float(prices[at]) for key, at in zip(self.keys, self.columns.tolist(), strict=True)}

    def own_and_prices(self, packs):
        """Own money and the prices of all columns."""
        own = self.own(packs)
        return own, np.array(self.solver.getSolution().col_dual)

    def values(self):
        """Values of all columns under the last order."""
        return list(self.solver.getSolution().col_value)

    def places(self, keys):
        """Where the columns of these orders stand."""
        return [self.block.orders[key].number for key in keys]

    def _packs(self, packs):
        unknown = [key for key, count in packs.items() if count and key not in self.block.orders]
        if unknown:
            offer, period = unknown[0]
            raise ValueError(f'no here-and-now order of offer "{offer}" can be placed in period {period}')
        return np.array([float(packs.get(key, 0)) for key in self.keys])

    def _hold(self, counts):
        self.held = counts
        if len(counts):
            self.solver.changeColsBounds(len(counts), self.columns, counts, counts)

    def _run(self, packs):
        self.solver.run()
        status = self.solver.getModelStatus()
        if status == highspy.HighsModelStatus.kInfeasible:
            raise NoRecourse(self.code, packs, self._limit(packs))
        if status != highspy.HighsModelStatus.kOptimal:
            raise RuntimeError(f'scenario "{self.code}" could not be judged: {status.name}')

    def _limit(self, packs):
        """Terms on the orders and their least sum, from the proof that this order cannot be lived; None without one."""
        _, exists, ray = self.solver.getDualRay()  # type: ignore[attr-defined]
        if not exists:
            return None
        model = self.solver.getLp()
        lower, upper = np.array(model.row_lower_), np.array(model.row_upper_)
        ours = set(self.columns.tolist())
        for proof in (ray, -ray):
            terms = np.zeros(model.num_col_)
            for weight, (_, row, _, _) in zip(proof, self.block.rows, strict=True):
                for column, coefficient in row.items() if weight else ():
                    terms[column.number] += weight * coefficient
            least = _sum(np.maximum(proof, 0.0), lower) - _sum(np.maximum(-proof, 0.0), upper)
            for column in self.block.columns:
                if column.number not in ours:
                    term = terms[column.number] if abs(terms[column.number]) > 1e-9 else 0.0
                    highest = np.inf if column.upBound is None else column.upBound
                    lowest = -np.inf if column.lowBound is None else column.lowBound
                    least -= term * (highest if term > 0 else lowest) if term else 0.0
            found = {key: terms[at] for key, at in zip(self.keys, self.columns.tolist(), strict=True)}
            if np.isfinite(least) and sum(found[key] * packs.get(key, 0) for key in found) < least - 1e-9:
                return found, least
        return None


def _sum(weights, limits):
    """Σ weight × limit, weights without a limit at -infinity."""
    return float(sum(weight * limit for weight, limit in zip(weights, limits, strict=True) if weight > 1e-12))
