"""Orders under other budgets by a solve each: for problems that cuts cannot bound, and small ones.

Takes a Problem; answers which order is best under a budget. Every answer is a fresh programme.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from planner.programme import build
from planner.sizing.records import Problem
from planner.solution import highs
from planner.solution.clock import Clock
from planner.solution.nearby.bests import Best, bests
from planner.solution.solving import solve
from planner.solution.valuing import ordered

FINE = 1e-6


@dataclass(kw_only=True)
class Direct:
    problem: Problem
    gap: float
    clock: Clock
    tell: Callable

    def best(self, budget, seconds=None, *, closely=False):
        """The Best under a budget (None: without one) within so many seconds; `closely` to a finer gap."""
        seconds = self.clock.left() if seconds is None else seconds
        limited, gap = replace(self.problem, budget=budget), self.gap / (10 if closely else 1)
        plan = solve(limited, gap=gap, seconds=seconds, prices=False, progress=self.tell)
        packs = plan.packs() if plan.is_order else None
        return Best(packs=packs, objective=plan.objective, bound=plan.bound)

    def most(self):
        """The money beyond which more is of no use; None where there is no end to it."""
        best = self.best(None)
        return None if best.packs is None else ordered(self.problem, best.packs).spend

    def points(self, budgets, closely):
        """See bests.py."""
        return bests(self, budgets, closely)

    def in_fractions(self, budgets):
        """The objective under each budget where nothing has to be whole; None where nothing serves every must-use."""
        programme = build(replace(self.problem, budget=max(budgets)))
        matrix = highs.matrix_of(programme.lp)
        row = matrix.rows.index(programme.budget_row) if programme.budget_row else None
        found = []
        for budget in budgets:
            upper = np.array(matrix.row_upper)
            if row is not None:
                upper[row] = budget
            answer = highs.solve(
                replace(matrix, row_upper=upper), relaxed=True, seconds=self.clock.left(least=5.0)
            )
            found.append(answer.objective if answer.status == highs.SOLVED else None)
        return found

    def least(self):
        """The least money that serves every must-use; None where no money does."""
        programme = build(replace(self.problem, budget=None))
        matrix = highs.matrix_of(programme.lp)
        place = {id(column): at for at, column in enumerate(matrix.columns)}
        costs = np.zeros(len(matrix.columns))
        for terms in [
            *(row.cost for row in _now(programme.orders)),
            *(row.terms for row in _now(programme.fees)),
        ]:
            for column, money in terms.items():
                costs[place[id(column)]] -= money
        answer = highs.solve(replace(matrix, costs=costs, offset=0.0), gap=FINE, seconds=self.clock.left())
        return None if answer.objective is None else max(-answer.objective, 0.0)


def _now(rows):
    return [row for row in rows if row.scenario is None]
