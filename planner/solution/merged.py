"""Merged uses of one scenario in its warm HiGHS programme: what they hide at its prices, and how they are parted.

Takes a Merging, the block built of it and the solver that holds it; changes all three alike when groups are parted.
"""

import numpy as np

from planner.programme.columns import Column
from planner.programme.uses import served_by


class MergedUses:
    def __init__(self, merging, block, solver):
        self.merging, self.block, self.solver = merging, block, solver
        place = {name: at for at, (name, _, _, _) in enumerate(block.rows)}
        self.columns = [column for column, _ in block.groups]
        self.links = [None if row is None else place[row] for _, row in block.groups]
        self._gear = _gear(block, self.columns, set(self.links))
        self._note()

    def _note(self):
        self._numbers = np.array([column.number for column in self.columns])
        linked = [number for number, link in enumerate(self.links) if link is not None]
        self._linked = np.array(linked, dtype=int)
        self._rows = np.array([self.links[number] for number in linked], dtype=int)

    def margins(self):
        """What a unit of each group leaves at the last prices, links between uses not counted."""
        solution, merging = self.solver.getSolution(), self.merging
        margins = np.array(solution.col_dual)[self._numbers]
        prices = np.array(solution.row_dual)[self._rows]
        margins[self._linked] += prices
        on = merging.on[self._linked]
        return margins - np.bincount(on, merging.per[self._linked] * prices, minlength=len(margins))

    def loose(self):
        """What uses served each for itself might earn beyond the groups at the last prices."""
        return self.merging.loose(self.margins())

    def part(self, left):
        """Parts groups until no more than `left` is hidden at the last prices; whether any were parted."""
        money = {number: self._worth(number) for number in range(self.merging.count)}
        changed, origins = self.merging.part(self.margins(), left)
        if not origins:
            return False
        first = len(self.columns)
        for number, origin in enumerate(origins, first):
            money[number] = money[origin]
            self._add(number, origin)
        everything = [*changed, *range(first, len(self.columns))]
        for number in everything:
            self._value(number, money[number])
        for number in everything:
            self._link(number)
        self._note()
        return True

    def _worth(self, number):
        """What a unit served is worth beside the uses' own value."""
        return self.block.money.get(self.columns[number], 0.0) - self.merging.group_values[number]

    def _add(self, number, origin):
        """A column that takes the same gear as another's."""
        block, gear = self.block, self._gear[origin]
        name = f"{self.columns[origin].name}__part{number}"
        column = Column(name, len(block.columns), 0.0, 0.0, False)
        block.columns.append(column)
        self.columns.append(column)
        self.links.append(None)
        self._gear.append(gear)
        for row, coefficient in gear:
            block.rows[row][1][column] = coefficient
        rows, coefficients = [row for row, _ in gear], [coefficient for _, coefficient in gear]
        self.solver.addCol(0.0, 0.0, 0.0, len(gear), np.array(rows, dtype=np.int32), np.array(coefficients))

    def _value(self, number, worth):
        """Units and money of a group as they are now."""
        column, units = self.columns[number], float(self.merging.group_units[number])
        column.upBound = units
        self.block.money[column] = money = float(worth + self.merging.group_values[number])
        self.solver.changeColBounds(column.number, 0.0, units)
        self.solver.changeColCost(column.number, money)

    def _link(self, number):
        """served ≤ per × served of what it waits for, as it is now."""
        on = int(self.merging.on[number])
        if on < 0:
            return
        column, other, per = self.columns[number], self.columns[on], float(self.merging.per[number])
        row, terms = self.links[number], {column: 1.0, other: -per}
        if row is None:
            self.links[number] = len(self.block.rows)
            self.block.rows.append((f"needs_use_{column.name}", terms, -1, 0.0))
            numbers = np.array([column.number, other.number], dtype=np.int32)
            self.solver.addRow(-np.inf, 0.0, 2, numbers, np.array([1.0, -per]))
            return
        before = self.block.rows[row][1]
        for gone in set(before) - set(terms):
            self.solver.changeCoeff(row, gone.number, 0.0)
        self.solver.changeCoeff(row, other.number, -per)
        before.clear()
        before.update(terms)

    def tell_served(self):
        """Writes into the block's programme how its columns serve the uses, as the groups are now."""
        programme = self.block.programme
        served = [row for row in programme.served if row.units is None]
        programme.served[:] = [*served, *served_by(self.merging, 0, self.columns)]


def _gear(block, columns, links):
    """Of each column the rows it stands in and its coefficients, links left out."""
    found: dict = {column: [] for column in columns}
    for at, (_, terms, _, _) in enumerate(block.rows):
        if at not in links:
            for column, coefficient in terms.items():
                if column in found:
                    found[column].append((at, coefficient))
    return [found[column] for column in columns]
