"""What one pack more or fewer would do, and what other budgets would, in a report: figures and sentences.

Money is Decimal to the cent. moves.py and budget.py make them; json_form.py writes and reads them; pages, workbook and
text show them.
"""

from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True, kw_only=True)
class Move:
    """A line with one pack more or fewer, all other lines as they are, every season answered anew."""

    step: int  # 1 or -1
    cost: Decimal  # of packs and shipping; above 0: dearer
    earned: Decimal  # before that cost; below 0: lost
    over_budget: Decimal  # by which it breaks the budget; 0 where it keeps it
    can_be: bool  # False: what must be done is left undone, or there is no such pack; then without figures
    head: str  # "One pack of 5 more"
    said: str  # what follows the head: "costs $71 and should earn $40, so leave it"

    @property
    def gain(self):
        return self.earned - self.cost

    @property
    def sentence(self):
        return f"{self.head} {self.said}."


@dataclass(frozen=True, kw_only=True)
class BudgetPoint:
    """The best order known within a budget."""

    budget: Decimal
    spend: Decimal
    gain: Decimal  # a season, over the smallest budget of the curve
    most: Decimal  # proven: no order within this budget gains more
    chosen: bool  # the budget of this order
    knee: bool


@dataclass(frozen=True, kw_only=True)
class PacksChanged:
    offer: str
    name: str
    before: int
    after: int
    said: str  # "drop 2 of 12"

    @property
    def is_less(self):
        return self.after < self.before


@dataclass(frozen=True, kw_only=True)
class LessBudget:
    """The best order known within a smaller budget, by what it changes."""

    budget: Decimal
    less: Decimal  # by which it is smaller than the budget, or than what is spent where there is none
    lost: Decimal  # a season
    changes: tuple[PacksChanged, ...]
    said: str


@dataclass(frozen=True, kw_only=True)
class BudgetSection:
    """`mark` is where this order stands on the curve: at its budget, or at what it spends where there is none."""

    seasons: int
    mark: Decimal
    points: tuple[BudgetPoint, ...] = ()
    next_money: Decimal | None = None
    next_earns: Decimal | None = None
    price: float | None = None  # what one more of the money's unit earns where packs could be parted
    less: LessBudget | None = None
    sentences: tuple[str, ...] = ()
    not_told: str = ""

    @property
    def at_knee(self):
        return next((point for point in self.points if point.knee), None)
