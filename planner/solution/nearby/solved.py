"""One scenario at one order: which other orders it can be told for without solving again.

Takes a scenario's recourse just solved under an order; gives its own money under another order, or None where that
has to be solved. If none of the rows that the changed packs enter is priced, and each has room for the change, then
all else may stay as it is, and by the same prices nothing can be better: the packs bring their own money, no more.
"""

import numpy as np

TIGHT = 1e-9


class Solved:
    def __init__(self, scenario, packs):
        solution, model = scenario.solver.getSolution(), scenario.solver.getLp()
        self.money, self.orders = scenario.block.money, scenario.block.orders
        self.worth = scenario.solver.getInfo().objective_function_value
        self.packs = packs
        activity = np.array(solution.row_value)
        self.below = (activity - np.array(model.row_lower_)).tolist()
        self.above = (np.array(model.row_upper_) - activity).tolist()
        self.prices = solution.row_dual
        self.entries = _entries(scenario.block)

    def own(self, packs):
        """The scenario's own money under other packs, or None."""
        money = self.worth
        changed: dict = {}
        for key in packs.keys() | self.packs.keys():
            step = packs.get(key, 0) - self.packs.get(key, 0)
            if step:
                if key not in self.orders:
                    return None
                column = self.orders[key]
                money += step * self.money.get(column, 0.0)
                for row, coefficient in self.entries[column]:
                    changed[row] = changed.get(row, 0.0) + step * coefficient
        return money if all(self._has_room(row, change) for row, change in changed.items()) else None

    def _has_room(self, row, change):
        room = self.above[row] if change > 0 else self.below[row]
        return abs(self.prices[row]) <= TIGHT and abs(change) <= room - TIGHT


def _entries(block):
    """Of each here-and-now order's column the rows it enters and its coefficients."""
    found: dict = {column: [] for column in block.orders.values()}
    for at, (_, terms, _, _) in enumerate(block.rows):
        for column in found.keys() & terms.keys():
            found[column].append((at, terms[column]))
    return found
