"""A load against the truck's limit, as places along a dimension line. Pure.

Takes pounds or cubic feet; gives shares of the width in per cent, so that a length means an amount on any screen.
"""

import math
from dataclasses import dataclass

INSET = 2.0  # per cent left free at both ends, so that ticks and figures stay on the sheet
STEPS = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000)


@dataclass(frozen=True, kw_only=True)
class LoadLine:
    """Solid from 0 to the load, dashed on to the limit; the scale runs to a round figure past both."""

    amount: int
    limit_amount: int
    until: int
    step: int
    unit: str = "lb"

    @property
    def over(self):
        return self.amount > self.limit_amount

    @property
    def start(self):
        return self.place(0)

    @property
    def load(self):
        return self.place(self.amount)

    @property
    def limit(self):
        return self.place(self.limit_amount)

    @property
    def marks(self):
        """[(per cent, figure)] from 0 on."""
        return [(self.place(at), f"{at:,}") for at in range(0, self.until + 1, self.step)]

    def place(self, amount):
        return round(INSET + (100 - 2 * INSET) * min(amount / self.until, 1), 3)


def load_line(amount, limit, unit="lb"):
    """The line of a load; figures at round steps, five at most beside the zero. A part of a unit counts whole."""
    load, furthest = math.ceil(amount), max(math.ceil(amount), limit, 5)
    step = next((step for step in STEPS if furthest / step <= 5), STEPS[-1])
    until = step * math.ceil(furthest / step)
    return LoadLine(amount=load, limit_amount=limit, until=until, step=step, unit=unit)
