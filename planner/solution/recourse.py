"""What many here-and-now orders are worth on one set of scenarios, each scenario's recourse doing its best.

Takes a Problem once, then orders {(offer, period): packs}; gives each scenario's contribution, the order's cost taken
off. One warm HiGHS programme a scenario, whose here-and-now columns are held at the order's packs.
"""

import highspy
import numpy as np

from planner.programme.blocks import block, linear_recourse
from planner.solution.records import INFEASIBLE
from planner.solution.solving import solve
from planner.solution.valuing import ordered


class NoRecourse(Exception):
    """A scenario's must-uses cannot be served under an order."""

    def __init__(self, scenario, packs):
        self.scenario, self.packs = scenario, packs
        super().__init__(f'under this order the must-uses of scenario "{scenario}" cannot be served')


def worths(problem, packs):
    """Each scenario's contribution under the order, in the problem's order of scenarios."""
    return Recourse(problem).worths(packs)


class Recourse:
    """The scenarios of one problem, ready to judge one order after another."""

    def __init__(self, problem):
        self.problem = problem
        self.linear = linear_recourse(problem)
        count = len(problem.scenarios)
        self.scenarios = [ScenarioRecourse(problem, number) for number in range(count)] if self.linear else []

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


class ScenarioRecourse:
    """One scenario's block as a HiGHS programme that keeps its basis from order to order."""

    def __init__(self, problem, number):
        self.code = problem.scenarios[number].code
        self.block = block(problem, number)
        self.keys = list(self.block.orders)
        self.columns = np.array([column.number for column in self.block.orders.values()], dtype=np.int32)
        self.held = np.zeros(len(self.keys))
        self.solver = highspy.Highs()
        self.solver.setOptionValue("output_flag", False)
        self.solver.passModel(_model(self.block))
        self._hold(self.held)

    def own(self, packs):
        """The scenario's own money under the order, its cost not taken off."""
        self._hold(self._packs(packs))
        self._run(packs)
        return self.solver.getInfo().objective_function_value

    def own_and_slopes(self, packs):
        own = self.own(packs)
        prices = self.solver.getSolution().col_dual
        return own, {key: prices[at] for key, at in zip(self.keys, self.columns.tolist(), strict=True)}

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
            raise NoRecourse(self.code, packs)
        if status != highspy.HighsModelStatus.kOptimal:
            raise RuntimeError(f'scenario "{self.code}" could not be judged: {status.name}')


def _model(found):
    """The block as HiGHS takes it, in one piece."""
    model, infinite = highspy.HighsLp(), highspy.kHighsInf
    model.num_col_, model.num_row_ = len(found.columns), len(found.rows)
    costs = np.zeros(len(found.columns))
    for column, money in found.money.items():
        costs[column.number] = money
    starts, indices, coefficients = [0], list[int](), list[float]()
    for _, terms, _, _ in found.rows:
        indices.extend(column.number for column in terms)
        coefficients.extend(terms.values())
        starts.append(len(indices))
    senses = np.array([sense for _, _, sense, _ in found.rows], dtype=int)
    bounds = np.array([bound for _, _, _, bound in found.rows], dtype=float)
    model.col_cost_, model.offset_ = costs, found.constant
    model.col_lower_ = np.array([_or(c.lowBound, -infinite) for c in found.columns], dtype=float)
    model.col_upper_ = np.array([_or(c.upBound, infinite) for c in found.columns], dtype=float)
    model.row_lower_ = np.where(senses < 0, -infinite, bounds)
    model.row_upper_ = np.where(senses > 0, infinite, bounds)
    model.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    model.a_matrix_.start_ = np.array(starts, dtype=np.int32)
    model.a_matrix_.index_ = np.array(indices, dtype=np.int32)
    model.a_matrix_.value_ = np.array(coefficients, dtype=float)
    model.sense_ = highspy.ObjSense.kMaximize
    return model


def _or(bound, otherwise):
    return otherwise if bound is None else bound
