"""Warm scenarios weighed several at a time: one HiGHS programme holds a handful of them side by side.

Takes scenarios' recourse whose uses are not merged; gives what WarmScenarios gives, sooner: most of a warm re-solve is
the starting and ending of it.
"""

import highspy
import numpy as np

from planner.solution.plain import model_of, solver_of
from planner.solution.warm import one_by_one

HANDFUL = 10


class Together:
    def __init__(self, scenarios):
        self.loose = np.zeros(len(scenarios))  # nothing is merged, nothing is hidden
        self.handfuls = [Handful(scenarios[at : at + HANDFUL]) for at in range(0, len(scenarios), HANDFUL)]

    def evaluate(self, keys, counts):
        """Arrays: each scenario's own money (cost not taken off), and by scenario and key the slope of it."""
        found = [handful.evaluate(keys, counts) for handful in self.handfuls]
        return np.concatenate([own for own, _ in found]), np.vstack([slopes for _, slopes in found])

    def part(self, left):
        """There is nothing to part."""
        return False


class Handful:
    """A few scenarios' blocks in one programme that keeps its basis from order to order."""

    def __init__(self, scenarios):
        self.scenarios = scenarios
        models = [model_of(scenario.block) for scenario in scenarios]
        self.starts = np.cumsum([0, *(model.num_col_ for model in models)])
        self.constants = np.array([scenario.block.constant for scenario in scenarios])
        model = _side_by_side(models, self.starts)
        self.costs = np.array(model.col_cost_)
        self.solver = solver_of(model)
        # blocks are small: presolve takes longer than the first solve
        self.solver.setOptionValue("presolve", "off")

    def evaluate(self, keys, counts):
        """As Together's. Raises NoRecourse where a scenario cannot be lived."""
        places = np.array([scenario.places(keys) for scenario in self.scenarios])
        columns = (places + self.starts[:-1, None]).astype(np.int32)
        held = np.tile(np.asarray(counts, dtype=float), len(self.scenarios))
        self.solver.changeColsBounds(len(held), columns.ravel(), held, held)
        self.solver.run()
        if self.solver.getModelStatus() != highspy.HighsModelStatus.kOptimal:
            return one_by_one(
                self.scenarios, keys, counts
            )  # one that cannot be lived says which orders it needs
        solution = self.solver.getSolution()
        money = self.costs * np.array(solution.col_value)
        own = np.add.reduceat(money, self.starts[:-1]) + self.constants
        return own, np.array(solution.col_dual)[columns]


def _side_by_side(models, starts):
    """One model of several that share nothing."""
    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = int(starts[-1]), sum(one.num_row_ for one in models)
    for name in ("col_cost_", "col_lower_", "col_upper_", "row_lower_", "row_upper_"):
        setattr(model, name, np.concatenate([getattr(one, name) for one in models]))
    matrices = [one.a_matrix_ for one in models]
    entries = np.cumsum([0, *(matrix.start_[-1] for matrix in matrices)])
    rows = [np.array(m.start_[1:]) + first for m, first in zip(matrices, entries, strict=False)]
    columns = [np.array(m.index_) + first for m, first in zip(matrices, starts, strict=False)]
    model.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    model.a_matrix_.start_ = np.concatenate([[0], *rows]).astype(np.int32)
    model.a_matrix_.index_ = np.concatenate(columns).astype(np.int32)
    model.a_matrix_.value_ = np.concatenate([m.value_ for m in matrices])
    model.sense_ = highspy.ObjSense.kMaximize
    return model
