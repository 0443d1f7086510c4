"""The master of all budgets: one store of cuts, only the budget row's right side changes from point to point.

Takes an OrderPart made without a budget; gives points in fractions and in whole numbers as the two-phase master does.
In whole numbers only cuts near to binding about the points weighed last are asked; the bound is as true without the
rest. Packs are capped by what the budget at hand can pay for.
"""

import highspy
import numpy as np

from planner.solution.two_phase.master import Master

NEAR, WIDE = 0.002, 0.03  # of what all earn: cuts further from binding are left out, whole and in fractions
WIDER = 5
RECENT = 16  # points weighed last


class CutMaster(Master):
    def __init__(self, part, groups, near=NEAR):
        self.slopes, self.values = np.zeros((0, len(part.packs))), np.zeros(0)
        self.of_group, self.rows = np.zeros(0, dtype=int), np.zeros(0, dtype=np.int32)
        self.recent: list = []
        self.near_share = self.share = near
        self.origin = np.zeros(len(part.packs))
        super().__init__(part, groups)
        self.own_limits = self.lowest.copy(), self.highest.copy()
        self.ties = _ties(part, set(self.choices.tolist()))
        self.budget_row = self.solver.getNumRow()
        where = np.flatnonzero(self.costs)
        for solver in (self.solver, self.rough):
            numbers = len(where), where.astype(np.int32), -self.costs[where]
            solver.addRow(-highspy.kHighsInf, highspy.kHighsInf, *numbers)

    def begin_at(self, budget, points=()):
        """All that is asked from now on keeps to this budget (None: to none); earlier narrowing is undone."""
        limit = highspy.kHighsInf if budget is None else budget
        for solver in (self.solver, self.rough):
            solver.changeRowBounds(self.budget_row, -highspy.kHighsInf, limit)
        self.lowest, self.highest = (limits.copy() for limits in self.own_limits)
        for column in range(self.count):
            self.free(column)
        self._tie()
        self.recent = [self.packs(columns) for columns in points]
        self._hold_cuts(self._matter(WIDE) if points else np.ones(len(self.rows), dtype=bool))

    def cap(self, budget):
        """No more packs than the budget can pay for, and choices tied to those: tighter, the whole orders the same."""
        for column in np.flatnonzero(self.costs < 0):
            if column not in self.choices:
                most = budget / -self.costs[column]
                most = np.floor(most + 1e-9) if self.whole[column] else most
                if most < self.highest[column]:
                    self.narrow(column, min(self.lowest[column], most), most)
        self._tie()

    def _tie(self):
        """packs ≤ most · choice, the most as it is now."""
        for row, column, choice, most in self.ties:
            for solver in (self.solver, self.rough):
                solver.changeCoeff(row, choice, -float(min(most, self.highest[column])))

    def _hold_cuts(self, wanted):
        """The programme in fractions keeps these cuts and no others."""
        self._drop_cuts(self.solver)
        self.rows = np.full(len(wanted), -1, dtype=np.int32)
        for at in np.flatnonzero(wanted).tolist():
            self.rows[at] = self.solver.getNumRow()
            self._add_cut(self.solver, self.of_group[at], self.values[at], self.slopes[at], self.origin)

    def cuts(self, cuts, packs):
        first = self.solver.getNumRow()
        super().cuts(cuts, packs)
        slopes = np.array([slopes for _, slopes in cuts])
        self.slopes = np.vstack([self.slopes, slopes])
        self.values = np.append(self.values, [value - float(slope @ packs) for value, slope in cuts])
        self.of_group = np.append(self.of_group, np.arange(len(cuts)))
        self.rows = np.append(self.rows, np.arange(first, first + len(cuts), dtype=np.int32))
        self.recent = [*self.recent[-RECENT:], packs]

    def _drop_cuts(self, solver):
        held = self.rows[self.rows >= 0]
        solver.deleteRows(len(held), held)

    def spend(self, columns):
        """Money of the order alone."""
        return -self.cost(columns)

    def in_whole_numbers(self, gap, seconds, *, start=None, seed=1, tell=None):
        """As any master's; asked again without progress (a higher seed), with cuts further from binding too."""
        self.share = self.near_share * WIDER ** (seed - 1)
        found = super().in_whole_numbers(gap, seconds, start=start, seed=seed, tell=tell)
        self.share = self.near_share
        return found

    def _model(self):
        """The programme without the cuts that do not matter about the points weighed last."""
        solver = self.copy()
        gone = self.rows[~self._matter(self.share) & (self.rows >= 0)]
        solver.deleteRows(len(gone), gone)
        return solver.getLp()

    def _matter(self, share):
        """By cut, whether it is near to the one of its group that binds at some point weighed last."""
        says = self.values[:, None] + self.slopes @ np.array(self.recent).T
        least = np.full((self.groups, says.shape[1]), np.inf)
        np.minimum.at(least, self.of_group, says)
        near = share * np.abs(least.sum(axis=0)).max() / self.groups
        return (says - least[self.of_group] <= near).any(axis=1)

    def cheapest(self, seconds):
        """The columns of the cheapest whole order that keeps to all that is known to be needed; None without one."""
        solver = self.copy()
        width = self.count + self.groups
        every = np.arange(width, dtype=np.int32)
        self._drop_cuts(solver)
        solver.changeColsCost(width, every, np.append(self.costs, np.zeros(self.groups)))
        return self._whole(solver.getLp(), {"time_limit": max(seconds, 0.1), "mip_rel_gap": 1e-6}).columns

    def thrifty(self, least, seconds):
        """Spend in fractions of the order that buys what earns at least so much for each unit of money."""
        every = np.arange(self.count, dtype=np.int32)
        self.solver.changeColsCost(self.count, every, (1 + least) * self.costs)
        found = self.relaxed(seconds)
        self.solver.changeColsCost(self.count, every, self.costs)
        return None if found.columns is None else self.spend(found.columns)


def _ties(part, choices):
    """(row, packs, choice, most) of the rows packs ≤ most · choice of one column of packs."""
    found = []
    for row, (_, terms, sense, bound) in enumerate(part.rows):
        if sense < 0 and not bound and len(terms) == 2:
            numbers = sorted((value, column.number) for column, value in terms.items())
            (most, choice), (one, packs) = numbers
            if one == 1 and most < 0 and choice in choices and packs not in choices:
                found.append((row, packs, choice, -most))
    return found
