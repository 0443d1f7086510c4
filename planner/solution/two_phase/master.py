"""The master: the here-and-now order with cuts for what it earns, as an LP kept warm and as a programme in whole
numbers.

Takes an OrderPart and cuts; gives points (values of the order's columns) and bounds. Knows no scenario.
"""

import time
from dataclasses import dataclass

import highspy
import numpy as np

from planner.solution.plain import model_of, solver_of

LARGE = 1e29
TINY = 1e-11
PLACING_SECONDS = 5.0
WITHIN = ("mip_heuristic_run_rins", "mip_heuristic_run_rens", "mip_heuristic_run_root_reduced_cost")
KINDS = (highspy.HighsVarType.kContinuous, highspy.HighsVarType.kInteger)


@dataclass(frozen=True, kw_only=True)
class Found:
    """A point of the master and the bound that came with it; `columns` None where none was found."""

    columns: np.ndarray | None
    bound: float | None
    infeasible: bool = False
    unbounded: bool = False


class Master:
    """Order columns first, then one column of earnings a group of scenarios."""

    def __init__(self, part, groups):
        self.part, self.groups = part, groups
        self.keys = list(part.packs)
        self.count = len(part.columns)
        self.shares = np.zeros((len(self.keys), self.count))
        for at, terms in enumerate(part.packs.values()):
            for column, share in terms.items():
                self.shares[at, column.number] = share
        self.costs = np.zeros(self.count)
        for column, money in part.money.items():
            self.costs[column.number] = money
        self.whole = np.array([column.whole for column in part.columns], dtype=bool)
        self.solver = solver_of(model_of(part))
        self.lowest, self.highest = self._limits()
        self.choices = np.flatnonzero(self.whole & (self.highest == 1) & (self.shares.sum(axis=0) == 0))
        for _ in range(groups):
            self.solver.addCol(1.0, 0.0, 0.0, 0, [], [])
        self.silent = True  # earnings are held at nothing until a first cut bounds them
        self.rough = self.copy()  # the same with one cut a point for all groups: small, for a quick look
        self.rough.deleteCols(groups - 1, np.arange(self.count + 1, self.count + groups, dtype=np.int32))
        self.rough.changeColBounds(self.count, -highspy.kHighsInf, highspy.kHighsInf)

    def _limits(self):
        """Bounds of the order's columns, packs no more than can be of use."""
        columns = self.part.columns
        lowest = np.array([column.lowBound or 0.0 for column in columns])
        highest = np.array([LARGE if column.upBound is None else column.upBound for column in columns])
        for key, terms in self.part.packs.items():
            for column in terms:
                highest[column.number] = min(highest[column.number], self.part.most[key])
        highest = np.where(highest < LARGE, highest, highspy.kHighsInf)
        for at in range(len(columns)):
            self.solver.changeColBounds(at, lowest[at], highest[at])
        return lowest, highest

    def uncap(self):
        """Fractions of packs up to their own limits only: a cap drawn from the budget would take its price."""
        for column in self.part.columns:
            if not column.whole:
                highest = highspy.kHighsInf if column.upBound is None else column.upBound
                self.hold(column.number, column.lowBound or 0.0, highest)

    def packs(self, columns):
        """Packs of each order, as the keys go."""
        return self.shares @ columns[: self.count]

    def order(self, columns):
        """{(offer, period): packs} of a point, whole columns rounded."""
        columns = columns[: self.count]
        columns = np.where(self.whole, np.round(columns), columns)
        return dict(zip(self.keys, self.packs(columns).tolist(), strict=True))

    def columns_of(self, packs):
        """The cheapest columns of an order, steps and fees as they fall; None where it cannot be placed."""
        if {key for key, count in packs.items() if count} - set(self.keys):
            return None
        solver = self.copy()
        earnings = np.arange(self.count, self.count + self.groups, dtype=np.int32)
        solver.changeColsCost(self.groups, earnings, np.zeros(self.groups))
        for key, shares in zip(self.keys, self.shares, strict=True):
            where = np.flatnonzero(shares).astype(np.int32)
            count = float(packs.get(key, 0))
            solver.addRow(count, count, len(where), where, shares[where])
        return self._whole(solver.getLp(), {"time_limit": PLACING_SECONDS, "mip_rel_gap": 0.0}).columns

    def copy(self):
        """A programme in fractions of its own, to be changed and thrown away."""
        return solver_of(self.solver.getLp())

    def cost(self, columns):
        """Money of the order alone, not positive."""
        return float(self.costs @ columns[: self.count])

    def nothing(self):
        """The order of nothing."""
        return np.zeros(self.count)

    def hold(self, column, lowest, highest):
        """Narrows one column's bounds."""
        self.solver.changeColBounds(int(column), float(lowest), float(highest))

    def free(self, column):
        """Gives a column its own bounds back."""
        self.hold(column, self.lowest[column], self.highest[column])

    def narrow(self, column, lowest, highest):
        """Narrows one column's bounds for good."""
        self.lowest[column], self.highest[column] = lowest, highest
        self.free(column)

    def cut(self, group, value, slopes, packs):
        """Earnings of a group ≤ value + slopes · (packs ordered − packs)."""
        if self.silent:
            for at in range(self.count, self.count + self.groups):
                self.hold(at, -highspy.kHighsInf, highspy.kHighsInf)
            self.silent = False
        self._add_cut(self.solver, group, value, slopes, packs)

    def cuts(self, cuts, packs):
        """Each group's cut at these packs, and all of them in one for the quick look."""
        for group, (value, slopes) in enumerate(cuts):
            self.cut(group, value, slopes, packs)
        slopes = np.sum([slopes for _, slopes in cuts], axis=0)
        self._add_cut(self.rough, 0, sum(value for value, _ in cuts), slopes, packs)

    def _add_cut(self, solver, group, value, slopes, packs):
        terms = -(slopes @ self.shares)
        where = np.flatnonzero(np.abs(terms) > TINY)
        solver.addRow(
            -highspy.kHighsInf,
            value - float(slopes @ packs),
            len(where) + 1,
            np.append(where, self.count + group).astype(np.int32),
            np.append(terms[where], 1.0),
        )

    def needed(self, terms, least):
        """terms · packs ≥ least: some scenario's must-uses cannot be served otherwise."""
        columns = terms @ self.shares
        where = np.flatnonzero(np.abs(columns) > TINY)
        for solver in (self.solver, self.rough):
            solver.addRow(least, highspy.kHighsInf, len(where), where.astype(np.int32), columns[where])

    def relaxed(self, seconds):
        """The best point in fractions; its worth is the bound."""
        self.solver.setOptionValue("time_limit", self.solver.getRunTime() + max(seconds, 0.1))
        self.solver.run()
        return self._found(self.solver)

    def price(self, row):
        """Price of a row of the order's own, by name, at the last point in fractions."""
        number = next(at for at, (name, _, _, _) in enumerate(self.part.rows) if name == row)
        return self.solver.getSolution().row_dual[number]

    def near(self, gap, seconds, lowest, highest, *, full=False):
        """A good point in whole numbers within narrower bounds, by one cut a point or by all (`full`): its bound holds
        within them."""
        model = self._model() if full else self.rough.getLp()
        ends = np.array(model.col_lower_), np.array(model.col_upper_)
        ends[0][: self.count], ends[1][: self.count] = lowest, highest
        model.col_lower_, model.col_upper_ = ends
        return self._whole(model, {"time_limit": max(seconds, 0.1), "mip_rel_gap": gap})

    def in_whole_numbers(self, gap, seconds, *, start=None, seed=1, tell=None):
        """A good point in whole numbers and a bound over all of them. Only the bound is sought: HiGHS's own search for
        points, programmes within the programme, takes longer than the proof. It ends once tell(bound) is true."""
        options = {"time_limit": max(seconds, 0.1), "mip_rel_gap": gap, "random_seed": seed}
        options |= dict.fromkeys(WITHIN, False)
        return self._whole(self._model(), options, start=start, tell=tell)

    def _model(self):
        """What is asked in whole numbers, before its columns are whole."""
        return self.solver.getLp()

    def _whole(self, model, options, *, start=None, tell=None):
        earnings = [False] * (model.num_col_ - self.count)
        model.integrality_ = [KINDS[whole] for whole in (*self.whole.tolist(), *earnings)]
        solver = solver_of(model)
        options = {"mip_abs_gap": 1e-9, "mip_feasibility_tolerance": 1e-7, "random_seed": 1, **options}
        for option, value in options.items():
            solver.setOptionValue(option, value)
        if start is not None:
            solver.setSolution(len(start), np.arange(len(start), dtype=np.int32), start)
        if tell is not None:
            _report_bounds(solver, tell)
        solver.run()
        return self._found(solver, whole=bool(self.whole.any()))

    def best_worth_holding(self, column, value, seconds):
        """The bound in fractions with one yes-or-no column held."""
        self.hold(column, value, value)
        found = self.relaxed(seconds)
        self.free(column)
        return -np.inf if found.infeasible else np.inf if found.bound is None else found.bound

    def reach(self, columns, worth, seconds):
        """Least and most of each column in fractions, over all points worth at least `worth`."""
        solver, width = self.solver, self.count + self.groups
        every = np.arange(width, dtype=np.int32)
        costs = np.append(self.costs, np.ones(self.groups))
        where = np.flatnonzero(costs)
        solver.addRow(worth, highspy.kHighsInf, len(where), where.astype(np.int32), costs[where])
        solver.changeColsCost(width, every, np.zeros(width))
        found, until = {}, time.monotonic() + seconds
        for column in columns:
            ends = []
            for sign in (-1.0, 1.0):
                solver.changeColCost(int(column), sign)
                point = self.relaxed(until - time.monotonic())
                ends.append(None if point.bound is None else sign * point.bound)
            solver.changeColCost(int(column), 0.0)
            if time.monotonic() > until:
                break
            found[int(column)] = tuple(ends)
        solver.changeColsCost(width, every, costs)
        solver.deleteRows(1, np.array([solver.getNumRow() - 1], dtype=np.int32))
        return found

    def _found(self, solver, *, whole=False):
        status, info, kinds = solver.getModelStatus(), solver.getInfo(), highspy.HighsModelStatus
        if status == kinds.kInfeasible:
            return Found(columns=None, bound=None, infeasible=True)
        if status in (kinds.kUnbounded, kinds.kUnboundedOrInfeasible):
            return Found(columns=None, bound=None, unbounded=True)
        solved = status == kinds.kOptimal
        bound = info.mip_dual_bound if whole else info.objective_function_value if solved else None
        bound = bound if bound is not None and abs(bound) < LARGE else None
        if info.primal_solution_status != 2:
            return Found(columns=None, bound=bound)
        columns = np.array(solver.getSolution().col_value)[: self.count]
        columns = np.where(self.whole, np.round(columns), columns) if whole else columns
        return Found(columns=columns, bound=bound)


def _report_bounds(solver, tell):
    def report(kind, message, found, given, user):
        if abs(found.mip_dual_bound) < LARGE and tell(found.mip_dual_bound):
            given.user_interrupt = True

    solver.setCallback(report, None)
    solver.startCallback(highspy.cb.HighsCallbackType.kCallbackMipInterrupt)
