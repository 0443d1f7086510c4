"""The search of the two-phase way (the L-shaped method): in fractions first, then in whole numbers, by cuts.

Takes a Master, Earnings, a gap and a clock; keeps the best order found and a bound proven over all orders, told as
they come. Every step leaves both true, so that it can stop at any time.
"""

from typing import Any

import numpy as np

from planner.solution.prices import rounded
from planner.solution.warm import NoRecourse

STEPS_IN_FRACTIONS = 400
STEPS_NEAR = 4
STEPS_WITH_CHOICES = 6
ROUNDS = 200
STALLED = 3
LEAST_GAP = 1e-9
STEPS_TO_SETTLE = 60
SETTLED = 1e-7
HIDDEN = 0.7


class NoOrder(Exception):
    """No here-and-now order lets every scenario be lived."""


class CannotCut(Exception):
    """Cuts cannot bound this problem; it must be solved in one piece."""


class Search:
    stage = "weighing the seasons"  # told in phase one

    def __init__(self, master, earnings, *, gap, clock, tell):
        self.master, self.earnings, self.gap, self.clock = master, earnings, gap, clock
        self._tell = tell
        self.best: float = -np.inf
        self.best_columns: Any = None
        self.upper, self.ruled_out = np.inf, -np.inf
        self.looked: Any = None  # the best point in fractions
        self.looked_worth: float = -np.inf
        self.hidden, self.fine = HIDDEN, max(0.07 * gap, LEAST_GAP)
        self.priced_at = None

    def run(self):
        self.look_in_fractions()
        if self.master.whole.any() and not self.is_done():
            self.look_near()
            self.look_in_whole_numbers()

    def distance(self):
        if self.best_columns is None or self.upper == np.inf:
            return np.inf
        return max(self.upper - self.best, 0.0) / max(1.0, abs(self.best))

    def is_done(self):
        return self.distance() <= max(self.gap, LEAST_GAP) or self.clock.is_over()

    def tell(self, stage):
        bound = None if self.upper == np.inf else self.upper
        self._tell(stage, bound, None if self.distance() == np.inf else self.distance())

    def worth(self, columns):
        """The worth of an order; cuts at it are kept, and the order itself if it is the best yet."""
        packs, cost = self.master.packs(columns), self.master.cost(columns)
        try:
            earned = self.earnings.at(packs)
            while self.earnings.look_closer(earned, self._hidden(cost + earned.total)):
                earned = self.earnings.at(packs)
        except NoRecourse as fault:
            if fault.limit is None:
                raise CannotCut(str(fault)) from fault
            self.master.needed(*self.earnings.of_keys(fault.limit))
            return -np.inf
        self.master.cuts(earned.cuts, earned.packs)
        worth = cost + earned.total
        whole = columns[self.master.whole]
        if worth > self.best and np.abs(whole - np.round(whole)).max(initial=0.0) < 1e-9:
            self.best, self.best_columns = worth, columns
        return worth

    def _hidden(self, worth):
        """How much merged uses may hide of an order's worth: little of what is not known yet anyway."""
        unknown = self.hidden * (self.upper - worth) if self.hidden else 0.0
        return max(unknown, self.fine * max(1.0, abs(worth)))

    def relaxed(self):
        """The best point in fractions; the bound is kept."""
        found = self.master.relaxed(self.clock.left())
        if found.unbounded:
            raise CannotCut("the order could be made without end")
        if found.infeasible:
            raise NoOrder
        return found

    def look_in_fractions(self):
        """Phase one: cuts at points between the best yet and the master's, until both agree."""
        self.looked = self.master.nothing()
        self.looked_worth = self.worth(self.looked)
        for _ in range(STEPS_IN_FRACTIONS):
            if self.looked_worth > -np.inf or self.clock.is_over():
                break
            self.looked = self.relaxed().columns
            self.looked_worth = self.worth(self.looked)
        if self.looked_worth > -np.inf:
            self._close_in(step=0.5, steps=STEPS_IN_FRACTIONS, near=self._settled())

    def _close_in(self, *, step, steps, near):
        """From the best point in fractions by a step of the way to the master's, until they are `near` each other; out
        of time or not, there is a bound."""
        for turn in range(steps):
            if turn and self.clock.is_over():
                return
            found = self.relaxed()
            if found.bound is None:
                return
            moved = found.bound < self.upper - 0.05 * (self.upper - self.looked_worth)
            step = 0.5 if moved else min(1.0, 1.4 * step)
            self.upper = min(self.upper, found.bound)
            self.tell(self.stage)
            if self.upper - self.looked_worth <= near * max(1.0, abs(self.looked_worth)):
                return
            between = self.looked + step * (found.columns - self.looked)
            here = self.worth(between)
            if here > self.looked_worth:
                self.looked, self.looked_worth = between, here

    def _settled(self):
        """How near phase one must come; where no column is whole it is the last phase."""
        return max(self.gap * (0.1 if self.master.whole.any() else 0.9), LEAST_GAP)

    def look_near(self):
        """Whole orders about the best point in fractions: quickly found, and good."""
        for _ in range(STEPS_NEAR):
            ordered = self.best_columns is not None and bool(self.best_columns.any())
            if ordered and self.is_done():
                return
            about = self.best_columns if ordered else self.looked
            found = self._whole_near(about, max(0.3 * self.gap, LEAST_GAP))
            if found.columns is None:
                return
            before = self.best
            self.worth(found.columns)
            self.tell("choosing packs")
            limit = np.inf if found.bound is None else found.bound
            little = self.best - before < 0.1 * self.gap * abs(before)
            if little and limit - self.best < self.gap * abs(limit):
                break
        if self.best_columns is not None and not self.is_done():
            found = self._whole_near(self.best_columns, max(0.5 * self.gap, LEAST_GAP), full=True)
            if found.columns is not None:
                self.worth(found.columns)

    def _whole_near(self, about, gap, *, choices=None, full=False):
        """A whole order within a pack or two of a point; `choices` holds the yes-or-no columns at another's; `full`
        weighs it by all cuts, which takes longer and finds better."""
        master = self.master
        lowest, highest = master.lowest.copy(), master.highest.copy()
        for packs, terms in zip(master.packs(about), master.part.packs.values(), strict=True):
            for column in terms:
                highest[column.number] = min(highest[column.number], np.ceil(packs) + 1)
                if len(terms) == 1:
                    lowest[column.number] = max(lowest[column.number], np.floor(packs) - 1)
        if choices is not None:
            lowest[master.choices] = highest[master.choices] = np.round(choices[master.choices])
        lowest = np.minimum(lowest, highest)
        seconds = min(max(self.clock.left(), 0.5), 20.0)
        return master.near(gap, seconds, lowest, highest, full=full)

    def look_in_whole_numbers(self):
        """Phase two: the master in whole numbers, cuts where it leads, what cannot be best ruled out."""
        stalled = 0
        for _ in range(ROUNDS):
            if self.is_done() or stalled >= STALLED:
                return
            before = self.upper, self.best
            self.rule_out()
            wanted = max(min(0.01, 0.3 * self.distance(), 0.01 if not self.gap else 1.0), 0.25 * self.gap)
            wanted = LEAST_GAP if stalled else max(wanted if self.gap else 0.1 * wanted, LEAST_GAP)
            found = self.master.in_whole_numbers(
                wanted,
                self.clock.left(),
                start=self.best_columns,
                seed=1 + stalled,
                tell=self._bound_teller(),
            )
            if found.infeasible and self.best_columns is None:
                raise NoOrder
            if found.infeasible:
                self.upper = min(self.upper, max(self.ruled_out, self.best))
                continue
            if found.bound is not None:
                self.upper = min(self.upper, max(found.bound, self.ruled_out, self.best))
            if found.columns is None:
                stalled += 1
                continue
            worth = self.worth(found.columns)
            self.tell("choosing packs")
            if not self.is_done():
                self.look_with_choices(found.columns, worth)
            stalled = stalled + 1 if (self.upper, self.best) == before else 0

    def _bound_teller(self):
        def told(bound):
            upper = min(self.upper, max(bound, self.ruled_out, self.best))
            gap = (upper - self.best) / max(1.0, abs(self.best)) if self.best_columns is not None else None
            self._tell("choosing packs", None if upper == np.inf else upper, gap)

        return told

    def look_with_choices(self, columns, worth):
        """The yes-or-no columns held as in an order found, packs in fractions: exact cuts about it."""
        master, best, bound = self.master, columns, np.inf
        for column in master.choices:
            master.hold(column, columns[column], columns[column])
        for _ in range(STEPS_WITH_CHOICES):
            self.tell("choosing packs")
            found = master.relaxed(self.clock.left())
            if found.columns is None or self.clock.is_over():
                break
            bound = np.inf if found.bound is None else found.bound
            if bound - worth < 0.3 * self.gap * abs(bound) or bound < self.best:
                break
            between = 0.5 * (best + found.columns)
            here = self.worth(between)
            if here > worth:
                worth, best = here, between
        for column in master.choices:
            master.free(column)
        if self.best + 0.3 * self.gap * abs(self.best) < bound < np.inf and not self.is_done():
            found = self._whole_near(best, max(0.2 * self.gap, LEAST_GAP), choices=columns, full=True)
            if found.columns is not None:
                self.worth(found.columns)

    def settle(self):
        """Whole columns held as in the best order, the rest bettered until cuts and worth agree; whether they do."""
        master = self.master
        for column in np.flatnonzero(master.whole):
            master.hold(column, self.best_columns[column], self.best_columns[column])
        master.uncap()
        self.hidden, self.fine = 0.0, 0.1 * SETTLED
        self.worth(self.best_columns)
        for _ in range(STEPS_TO_SETTLE):
            found = master.relaxed(self.clock.left(least=10.0))
            if found.bound is None:
                return False
            if found.bound - self.best <= SETTLED * max(1.0, abs(self.best)):
                return True
            self.worth(np.where(master.whole, self.best_columns, found.columns))
        return False

    def best_packs(self):
        """{(offer, period): packs} of the best order."""
        return self.master.order(self.best_columns)

    def budget_price(self):
        """What one unit of money more would earn, once settled; None without a budget."""
        part = self.master.part.programme
        if part.problem.budget is None:
            return None
        return rounded(self.master.price(part.budget_row)) if part.budget_row else 0.0

    def rule_out(self):
        """Holds choices and narrows packs that no order better than the best by the gap can have."""
        if self.best_columns is None or (self.upper, self.best) == self.priced_at or not self.gap:
            return
        self.priced_at = self.upper, self.best
        wanted = self._enough(0.9)
        for column in self.master.choices:
            if self.master.lowest[column] < self.master.highest[column] and not self.clock.is_over():
                self._rule_out_choice(column, wanted)
        self._narrow_packs(wanted)
        self.ruled_out = max(self.ruled_out, wanted)

    def _enough(self, share):
        """The worth above the best by this share of the gap."""
        return self.best + share * self.gap * max(1.0, abs(self.best))

    def _rule_out_choice(self, column, wanted):
        for value in (0.0, 1.0):
            if self.master.best_worth_holding(column, value, self.clock.left()) < wanted:
                self.master.narrow(column, 1.0 - value, 1.0 - value)
                return

    def _narrow_packs(self, wanted):
        master = self.master
        packs = [column for column in np.flatnonzero(master.whole) if column not in set(master.choices)]
        for column, (lowest, highest) in master.reach(packs, wanted, self.clock.left()).items():
            lowest = master.lowest[column] if lowest is None else np.ceil(lowest - 1e-6)
            highest = master.highest[column] if highest is None else np.floor(highest + 1e-6)
            lowest = max(lowest, master.lowest[column])
            highest = min(highest, master.highest[column])
            if lowest <= highest:
                master.narrow(column, lowest, highest)
