"""Gear of one scenario by place and part: what comes and goes in each period, and the balance rows.

Takes gains (+) and losses (−) of columns and fixed amounts; adds rows of the family balance. Pooled problems have one
place, None.
"""

from operator import itemgetter

from planner.programme.draft import mark


class Gear:
    """What comes and goes in one scenario."""

    def __init__(self, draft, scenario):
        self.draft = draft
        self.scenario = scenario
        self.pooled = not draft.problem.hauls
        self.periods = draft.problem.periods
        self.columns = {}  # (place, part) -> [(period, column, units)]
        self.fixed = {}  # (place, part) -> [(period, units)]

    def place(self, location):
        if self.pooled:
            return None
        return self.draft.problem.locations[0] if location is None else location

    def count(self, location, part, period, column, units):
        """`units` of a part for each one of the column, from this period on."""
        if units and period < self.periods:
            key = (None if self.pooled else self.place(location)), part
            rows = self.columns.get(key)
            if rows is None:
                rows = self.columns[key] = []
            rows.append((period, column, units))

    def count_fixed(self, location, part, period, units):
        if units and period < self.periods:
            self.fixed.setdefault((self.place(location), part), []).append((period, units))

    def count_given(self):
        """Stock and arrivals, with what they are worth at the end."""
        problem, worth = self.draft.problem, self.draft.worth
        rows = list(problem.stock) + list(problem.scenarios[self.scenario].arrivals)
        for row in rows:
            self.count_fixed(row.location, row.part, row.period, row.quantity)
            self.draft.constants[self.scenario] += row.quantity * worth[row.part][row.period]

    def count_order(self, order):
        for part, units in order.offer.parts.items():
            for column, packs in order.packs.items():
                self.count(order.offer.location, part, order.landing, column, units * packs)


def balance(gear):
    """Balance: gear come so far − gear gone so far ≥ 0, for each place, part and period where it can bind.

    A row can bind only where something goes and, the period after, something comes. The price of a row is what one
    unit more of the part, there and then, would earn; it is zero where gear lies idle.
    """
    for key in sorted(set(gear.columns) | set(gear.fixed), key=lambda pair: (pair[0] or "", pair[1])):
        rows = _PartRows(gear, key, gear.columns.get(key, ()), gear.fixed.get(key, ()))
        if rows.ends:
            rows.write()


class _PartRows:
    """Rows of one part at one place: sums since the start, or carried from row to row where that is shorter."""

    def __init__(self, gear, key, columns, fixed):
        self.gear, self.draft, self.key = gear, gear.draft, key
        self.columns = sorted(columns, key=itemgetter(0))
        self.fixed = sorted(fixed)
        self.ends = self._binding_periods()
        self.slack = None

    def _binding_periods(self):
        """Ends of stretches in which gear only goes, before it next comes."""
        goes = {period for period, _, units in self.columns if units < 0}
        goes.update(period for period, units in self.fixed if units < 0)
        if not goes:
            return []
        comes = {period for period, _, units in self.columns if units > 0}
        comes.update(period for period, units in self.fixed if units > 0)
        ends, waiting = [], None
        for period in sorted(comes | goes):
            if waiting is not None and period in comes:
                ends.append(waiting)
                waiting = None
            if period in goes or waiting is not None:
                waiting = period
        return ends if waiting is None else [*ends, waiting]

    def _slack(self):
        place, part = self.key
        return self.draft.slack("part", self.gear.scenario, (place, part, self.ends[0]), weight=1000.0)

    def write(self):
        self.slack = self._slack()
        rows = list(self._stretches())
        if len(rows) > 1 and self._summed_terms(rows) > 1.5 * (
            sum(len(terms) for _, terms, _ in rows) + 2 * len(rows)
        ):
            self._write_carried(rows)
        else:
            self._write_summed(rows)

    def _summed_terms(self, rows):
        """How many terms the rows would hold as sums since the start."""
        total = 0
        sums: dict = {}
        for _, terms, _ in rows:
            for column, units in terms.items():
                held = sums.get(column, 0.0) + units
                if abs(held) > 1e-12:
                    sums[column] = held
                else:
                    sums.pop(column, None)
            total += len(sums)
        return total

    def _stretches(self):
        """For each binding period: terms and fixed amounts since the one before."""
        at, fixed_at = 0, 0
        columns, fixed = self.columns, self.fixed
        for end in self.ends:
            amount = 0.0
            terms: dict = {}
            while at < len(columns) and columns[at][0] <= end:
                _, column, units = columns[at]
                terms[column] = terms.get(column, 0.0) + units
                at += 1
            while fixed_at < len(fixed) and fixed[fixed_at][0] <= end:
                amount += fixed[fixed_at][1]
                fixed_at += 1
            yield end, terms, amount

    def _write_summed(self, rows):
        """Σ gains and losses up to the period ≥ −fixed amounts up to it."""
        amount = 0.0
        terms: dict = {}
        for end, change, more in rows:
            for column, units in change.items():
                held = terms.get(column, 0.0) + units
                if abs(held) > 1e-12:
                    terms[column] = held
                else:
                    terms.pop(column, None)
            amount += more
            self._row(end, terms, ">=", -amount, counts=True)

    def _write_carried(self, rows):
        """idle before + gains and losses since − idle = −fixed amounts since."""
        place, part = self.key
        idle = None
        for number, (end, change, more) in enumerate(rows):
            terms = dict(change)
            if idle is not None:
                terms[idle] = 1.0
            idle = self.draft.column("idle", mark(self.gear.scenario), place or "all", part, end)
            terms[idle] = -1.0
            self._row(end, terms, "==", -more, counts=number == 0)

    def _row(self, end, terms, sense, bound, *, counts):
        place, part = self.key
        if self.slack is not None and counts:
            terms = {**terms, self.slack: 1.0}
        codes = (mark(self.gear.scenario), place or "all", part, end)
        name = self.draft.row("balance", *codes, terms=terms, sense=sense, bound=bound)
        if counts and (self.gear.pooled or place == self.draft.problem.locations[0]):
            effects = self.draft.programme.stock_effects.setdefault(part, {})
            effects[name] = effects.get(name, 0.0) - 1.0
