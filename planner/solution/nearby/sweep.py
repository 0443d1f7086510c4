"""Orders under many budgets by one master and one set of warm scenarios: cuts found at one budget hold at all.

Takes a Problem that suits cuts and its warm scenarios; gives the best order and bound under each budget. Points are
taken by rising budget: each begins where the one before ended, whose orders it can afford.
"""

from dataclasses import replace

import numpy as np

from planner.programme.here_and_now import order_part
from planner.solution.clock import Clock
from planner.solution.nearby.bests import Best, bests
from planner.solution.nearby.cut_master import NEAR, CutMaster
from planner.solution.nearby.together import Together
from planner.solution.two_phase.earnings import Earnings
from planner.solution.two_phase.search import NoOrder, Search
from planner.solution.valuing import ordered
from planner.solution.warm import NoRecourse

FINE, COARSE = 10, 20  # groups of scenarios: fewer make whole numbers easier to prove, more take fewer points
FINE_BELOW = 0.002
NEAR_FINE = 0.006  # a fine gap needs more of the cuts in whole numbers: else most proofs lead astray
STEPS_NEAR, NEAR_SHARE = 4, 0.2
LITTLE = 0.05
CLOSE_GAP, CLOSE_STEPS = 5e-5, 3
STEPS = 80
FIRST_STEP = (
    0.8  # towards the master's point: its cuts are good already, the point of a smaller budget is far
)
DUST = 1e-6


class Sweep:
    def __init__(self, problem, warm, *, gap, clock, tell):
        self.problem, self.gap, self.clock, self.tell = problem, gap, clock, tell
        free = replace(problem, budget=None)
        part = order_part(free)
        self.earnings = Earnings(
            free, Together(warm.scenarios), list(part.packs), FINE if gap < FINE_BELOW else COARSE
        )
        self.master = CutMaster(part, self.earnings.groups, NEAR_FINE if gap < FINE_BELOW else NEAR)
        self.last = None
        self.orders: list = []  # (spend, objective, columns) of every best order

    def know(self, packs):
        """Keeps a given order to begin from."""
        columns = self.master.columns_of(packs)
        if columns is not None:
            search = self._search(None)
            worth = search.worth(columns)
            if worth > -np.inf:
                self.orders.append((self._spend(columns), worth, columns))

    def least(self):
        """The least money that serves every must-use; None where no money does."""
        master = self.master
        master.begin_at(None)
        while True:
            found = master.cheapest(self.clock.left())
            if found is None:
                return None
            try:
                self.earnings.at(master.packs(found))
                return self._spend(found)
            except NoRecourse as fault:
                if fault.limit is None or self.clock.is_over():
                    return None
                master.needed(*self.earnings.of_keys(fault.limit))

    def most(self):
        """About the money beyond which more earns little: less than LITTLE for each unit of it."""
        search = self._search(None)
        search.look_in_fractions()
        self.last = None
        return self.master.thrifty(LITTLE, self.clock.left())

    def best(self, budget, seconds=None, *, closely=False):
        """The Best order under a budget (None: without one), asked after all smaller ones, within so many seconds;
        `closely` looks on among orders a pack or two away, past the gap: for what a little more money would earn."""
        search = self._search(budget, seconds)
        try:
            search.look_in_fractions()
            if self.master.whole.any() and not search.is_done():
                search.look_near()
                search.look_in_whole_numbers()
            if closely:
                search.look_closely()
        except NoOrder:
            return Best(packs=None, objective=None, bound=None)
        self.last = search
        bound = search.upper if search.upper < np.inf else None
        if search.best_columns is None:
            return Best(packs=None, objective=None, bound=bound)
        packs, spend = self._packs(search.best_columns), self._spend(search.best_columns)
        objective = search.best + self.master.spend(search.best_columns) - spend
        self.orders.append((spend, search.best, search.best_columns))
        return Best(packs=packs, objective=objective, bound=None if bound is None else max(bound, objective))

    def points(self, budgets, closely, *, after=0):
        """See bests.py."""
        return bests(self, budgets, closely, after=after)

    def in_fractions(self, budgets):
        """The objective under each budget where nothing has to be whole, by all cuts found: never too low."""
        found = []
        for budget in budgets:
            self.master.begin_at(budget)
            found.append(self.master.relaxed(self.clock.left(least=5.0)).bound)
        return found

    def _search(self, budget, seconds=None):
        clock = self.clock if seconds is None else Clock(min(seconds, self.clock.left()))
        search = BudgetSearch(self.master, self.earnings, gap=self.gap, clock=clock, tell=self.tell)
        if self.last is not None:
            search.looked, search.looked_worth = self.last.looked, self.last.looked_worth
        for spend, worth, columns in self.orders:
            if (budget is None or spend <= budget + DUST) and worth > search.best:
                search.best, search.best_columns = worth, columns
        self.master.begin_at(budget, [x for x in (search.looked, search.best_columns) if x is not None])
        if budget is not None:
            self.master.cap(budget)
        return search

    def _packs(self, columns):
        return {key: count for key, count in self.master.order(columns).items() if count > DUST}

    def _spend(self, columns):
        return ordered(self.problem, self._packs(columns)).spend


class BudgetSearch(Search):
    """The search at one budget, begun at the best point in fractions of a smaller one."""

    stage = "other budgets"

    def look_in_fractions(self):
        if self.looked is None:
            super().look_in_fractions()
            return
        near = (2 if self.master.whole.any() else 1) * self._settled()
        self._close_in(step=FIRST_STEP, steps=STEPS, near=near)

    def look_near(self):
        """Whole orders about the best point in fractions and then about the best found, weighed by all near cuts."""
        for turn in range(STEPS_NEAR):
            about = self.looked if not turn or self.best_columns is None else self.best_columns
            if self.is_done():
                return
            found, before = self._whole_near(about, NEAR_SHARE * self.gap, full=True), self.best
            if found.columns is None:
                return
            self.worth(found.columns)
            if turn and self.best <= before:
                return

    def _narrow_packs(self, wanted):
        """Left out: it takes more time than it saves here."""

    def _bound_teller(self):
        """Also ends the proof once the bound is near enough."""
        told, enough = super()._bound_teller(), self._enough(0.95)

        def tell(bound):
            told(bound)
            return bound <= enough

        return tell

    def look_closely(self):
        """Betters the best order pack by pack until no order near it seems better."""
        for _ in range(CLOSE_STEPS):
            if self.best_columns is None or self.clock.is_over() or not self.master.whole.any():
                return
            found = self._whole_near(self.best_columns, CLOSE_GAP, full=True)
            if found.columns is None or found.bound is None or found.bound - self.best <= self._least():
                return
            self.worth(found.columns)

    def _least(self):
        return CLOSE_GAP * max(1.0, abs(self.best))
