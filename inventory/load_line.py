"""A load against the truck's limit, as places along a dimension line. Pure.

Takes pounds; gives shares of the width in per cent, so that a length means a weight on any screen.
"""

import math
from dataclasses import dataclass
from decimal import Decimal

INSET = 2.0  # per cent left free at both ends, so that ticks and figures stay on the sheet
STEPS = (10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000)


@dataclass(frozen=True, kw_only=True)
class LoadLine:
    """Solid from 0 to the load, dashed on to the limit; the scale runs to a round figure past both."""

    load_lb: int
    limit_lb: int
    until_lb: int
    step_lb: int

    @property
    def over(self):
        return self.load_lb > self.limit_lb

    @property
    def start(self):
        return self.place(0)

    @property
    def load(self):
        return self.place(self.load_lb)

    @property
    def limit(self):
        return self.place(self.limit_lb)

    @property
    def marks(self):
        """[(per cent, figure)] from 0 on."""
        return [(self.place(lb), f"{lb:,}") for lb in range(0, self.until_lb + 1, self.step_lb)]

    def place(self, lb):
        return round(INSET + (100 - 2 * INSET) * min(lb / self.until_lb, 1), 3)


def load_line(load_lb, limit_lb):
    """The line of a load; figures at round steps, five at most beside the zero."""
    load, furthest = math.ceil(load_lb), max(math.ceil(load_lb), limit_lb, 10)
    step = next((step for step in STEPS if furthest / step <= 5), STEPS[-1])
    until = step * math.ceil(furthest / step)
    return LoadLine(load_lb=load, limit_lb=limit_lb, until_lb=until, step_lb=step)


def weight_of(numbers):
    """Pounds of [(weight of one, how many)], empty gear."""
    return sum((weight * quantity for weight, quantity in numbers), Decimal(0))
